"""Fail where a built site lacks a page that the program files ask for.

    count_pages.py PROGRAMS SITE

It reads the files by itself and knows nothing of the plugin: a site builder that passes over
plugins builds an all but empty site and reports success, and only a count from outside notices.
"""

import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import yaml

FIXED = ("", "cards/", "cards/room/", "exercises/", "numbers/", "room/", "safety/", "words/")


def expected(programs: Path) -> Iterator[str]:
    """Address of every page that must be there."""
    yield from FIXED
    for file in programs.glob("exercises/*.yml"):
        yield f"exercises/{file.stem}/"
    for program in programs.glob("*/program.yml"):
        name = program.parent.name
        yield f"{name}/"
        for wave in program.parent.glob("[0-9]*-*.yml"):
            yield from _of_wave(name, yaml.load(wave.read_bytes(), yaml.BaseLoader))  # noqa: S506  # plain texts only


def _of_wave(program: str, wave: dict[str, Any]) -> Iterator[str]:
    first, _, last = wave["weeks"].partition("-")
    for week in range(int(first), int(last or first) + 1):
        yield f"{program}/week-{week:02d}/"
        for key, session in wave["sessions"].items():
            if any(str(week) in slot["weeks"] for slot in session["slots"]):
                yield f"{program}/week-{week:02d}/{key}/"
                yield f"{program}/week-{week:02d}/{key}/loads/"


def main(programs: str, site: str) -> int:
    """Compare, report, and give the exit code."""
    pages = sorted(expected(Path(programs)))
    missing = [page for page in pages if not (Path(site) / page / "index.html").is_file()]
    for page in missing:
        print(f"missing: /{page}", file=sys.stderr)
    print(f"{len(pages)} pages asked for, {len(pages) - len(missing)} there")
    return 1 if missing else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
