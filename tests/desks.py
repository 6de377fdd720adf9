"""The base folder of the review tests, edits of it, and what the checks then say.

An edit is a path in a file and a new value: ``sessions.a-lift.slots.0.rest: "1:00"``. The word
``REMOVE`` takes a key out; a path that ends in ``.+`` adds to a list.
"""

import copy
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

from strength_handbook.checked import Checked, check_folder
from strength_handbook.reading.yaml_source import read_source
from strength_handbook.review.finding import Edit, Finding

BASE = Path(__file__).parent / "review" / "base"
CASES = Path(__file__).parent / "review" / "cases"
SHOWN = "gym"
TODAY = date(2026, 12, 1)
"""The day on which the review tests happen."""

Files = dict[str, Any]
Edits = Mapping[str, Mapping[str, Any]]
Check = Callable[[Files], Checked]


@dataclass(frozen=True)
class Case:
    """One edit of the base and what one check says of it.

    Attributes:
        slug: the check.
        kind: ``fires``, ``just-not`` or ``threshold``.
        edits: by file.
        rules: house rules set besides.
        silent: nothing is found.
        at: what the finding is about.
        spot: file and path that the finding points at.
        severity: of the finding.
        says: words that stand in its text.
        today: the day of the check.
    """

    slug: str
    kind: str
    edits: Edits = field(default_factory=dict)
    rules: Mapping[str, str] = field(default_factory=dict)
    silent: bool = False
    at: str = ""
    spot: str = ""
    severity: str = ""
    says: str = ""
    today: date = TODAY


def read_cases() -> list[Case]:
    """All cases of all files; each file is named after its check."""
    cases = []
    for path in sorted(CASES.glob("*.yml")):
        for kind, several in _read(path).items():
            for one in several:
                silent = one.pop("silent", kind == "just-not")
                day = date.fromisoformat(one.pop("today", TODAY.isoformat()))
                cases.append(Case(path.stem, kind, silent=silent, today=day, **one))
    return cases


def _read(path: Path) -> Any:
    """A file as the product reads it: `2:30` is text."""
    source, problems = read_source(path.read_bytes(), path.name)
    assert source is not None, problems
    return source.data


@cache
def _base() -> str:
    """All files in one text: taken apart again, it is a copy that may be changed."""
    paths = sorted(BASE.rglob("*.yml"))
    return json.dumps({path.relative_to(BASE).as_posix(): _read(path) for path in paths})


def edited(edits: Edits, rules: Mapping[str, str] | None = None) -> Files:
    """The base folder's files with some values made different."""
    files: Files = json.loads(_base())
    for name, changes in edits.items():
        for path, value in changes.items():
            if not path:
                files[name] = value
            else:
                put(files[name], path.split("."), value, remove=value == "REMOVE")
    for slug, value in (rules or {}).items():
        files["house-rules.yml"]["rules"][slug] = {"value": value, "why": "A test asks for it."}
    return files


def put(data: Any, path: list[Any], value: Any, *, remove: bool = False) -> None:
    """Write one value into plain data, or take it out."""
    *way, last = path
    for key in way:
        if isinstance(data, list):
            data = data[int(key)]
        else:
            data = data[key] if data.get(key) is not None else data.setdefault(key, {})
    if isinstance(data, list):
        if last == "+":
            data.append(value)
        elif remove:
            del data[int(last)]
        else:
            data[int(last)] = value
        return
    if remove:
        data.pop(last, None)
    else:
        data[last] = value


def write(files: Files, folder: Path) -> Path:
    """Write files into a folder; returns it."""
    for name, data in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(_on_lines(json.dumps(data)), encoding="utf-8")
    return folder


@lru_cache(maxsize=256)  # most files are as in the base
def _on_lines(text: str) -> str:
    """The same with a line for each value; JSON is YAML too."""
    return json.dumps(json.loads(text), indent=1, ensure_ascii=False)


def check(files: Files, folder: Path, today: date = TODAY) -> Checked:
    """Write files and check them."""
    return check_folder(write(files, folder), SHOWN, today)


def findings(checked: Checked, slug: str) -> list[Finding]:
    """What one check found, accepted or not."""
    every = (*checked.findings, *(one for one, _ in checked.accepted))
    return [finding for finding in every if finding.slug == slug]


def with_changes(files: Files, checked: Checked, edits: tuple[Edit, ...]) -> Files:
    """The files with a finding's own edits made, one-line doses in their long form."""
    assert checked.desk is not None
    written = checked.desk.written
    sources = [file.source for file in written.exercises.values()]
    sources += [file.source for file in written.programs.values()]
    sources += [wave.source for several in written.waves.values() for wave in several]
    if written.room and written.rules and written.lifters:
        sources += [written.room.source, written.rules.source, written.lifters.source]
    data = {source.file: source.data for source in sources}
    changed = dict(files)
    for edit in edits:
        name = edit.file.removeprefix(f"{SHOWN}/")
        if changed[name] is files[name]:
            changed[name] = copy.deepcopy(data[edit.file])
        put(changed[name], list(edit.path), edit.value, remove=edit.remove)
    return changed
