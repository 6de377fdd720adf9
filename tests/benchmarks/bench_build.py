"""How long a large handbook takes, and how much of that is this project's own code.

    python tests/benchmarks/bench_build.py [--exercises 300] [--programs 2] [--runs 3] [--keep DIR]

Run by hand; nothing here is a test. Two 12-week programs with two sessions a week make 74 program,
week and session pages.

Measured
- read, work out, write pages: CPU seconds of this project's functions, the best of the runs.
- whole build: CPU seconds of `mkdocs.commands.build.build` in this process, with this plugin,
  Material and the plugins of mkdocs.yml (search, tags), loading the configuration left out.
- own share: CPU seconds inside this plugin's hooks, whatever they call, as part of the whole build.
- plain build: CPU seconds of the same call for the same pages written as Markdown (pipe tables, no
  pictures), theme `mkdocs`, plain MkDocs' own plugins and extensions, that is the built-in search
  and toc, tables and fenced code. Same `nav`: leaf pages are not in it, in either build.

Aims: own share at most 10 %, whole build at most 0.6 of the plain build.
"""

import argparse
import functools
import gc
import json
import logging
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeVar

from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.plugins import CombinedEvent

# Run as a script, outside pytest's path.
sys.path.insert(0, str(Path(__file__).parents[1]))

from benchmarks.generated_programs import generate
from benchmarks.html_to_markdown import markdown
from strength_handbook.pages.page import Site, url_of
from strength_handbook.pages.site import write_pages
from strength_handbook.plan.work_out import work_out
from strength_handbook.plugin import HandbookPlugin
from strength_handbook.reading.book import read_book

T = TypeVar("T")
OWN_SHARE_AIM = 0.10
RATIO_AIM = 0.6


@dataclass
class Stopwatch:
    """Seconds gathered over many calls; calls inside a timed call are not counted twice."""

    seconds: float = 0.0
    running: bool = False

    def timed(self, function: Callable[..., T]) -> Callable[..., T]:
        @functools.wraps(function)
        def call(*args: Any, **more: Any) -> T:
            if self.running:
                return function(*args, **more)
            self.running, start = True, time.process_time()
            try:
                return function(*args, **more)
            finally:
                self.seconds += time.process_time() - start
                self.running = False

        return call


@contextmanager
def timed_hooks(watch: Stopwatch) -> Iterator[None]:
    """This plugin's hooks on a stopwatch, for configurations loaded inside."""
    hooks = {name: hook for name, hook in vars(HandbookPlugin).items() if name.startswith("on_")}
    for name, hook in hooks.items():
        several = isinstance(hook, CombinedEvent)
        timed = CombinedEvent(*map(watch.timed, hook.methods)) if several else watch.timed(hook)
        setattr(HandbookPlugin, name, timed)
    try:
        yield
    finally:
        for name, hook in hooks.items():
            setattr(HandbookPlugin, name, hook)


def build_seconds(config_file: Path, site: Path) -> tuple[float, list[Any]]:
    """CPU seconds of one build, and the `nav` it ended up with."""
    config = load_config(str(config_file), site_dir=str(site))
    config.plugins.on_startup(command="build", dirty=False)
    gc.collect()
    start = time.process_time()
    build(config)
    seconds = time.process_time() - start
    config.plugins.on_shutdown()
    return seconds, list(config.nav or [])


def best_of(runs: int, function: Callable[[], T]) -> tuple[float, T]:
    """Fewest CPU seconds of several runs, and the last result."""
    times = []
    for _ in range(runs):
        gc.collect()
        start = time.process_time()
        result = function()
        times.append(time.process_time() - start)
    return min(times), result


def write_plain(root: Path, handbook: Path, site: Site, nav: list[Any]) -> Path:
    """The same pages as Markdown, with a configuration for plain MkDocs; gives its file back."""
    docs = root / "docs"
    by_hand = {path.name: path.read_text(encoding="utf-8") for path in handbook.glob("*.md")}
    uris = [page.uri for page in site.pages]
    sources = {url_of(uri): uri for uri in (*uris, *by_hand)}
    texts = {page.uri: markdown(page, sources) for page in site.pages} | by_hand
    for uri, text in texts.items():
        path = docs / uri
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    config = {
        "site_name": site.title,
        "docs_dir": "docs",
        "theme": "mkdocs",
        "nav": nav,
        "validation": {"omitted_files": "ignore"},
    }
    file = root / "mkdocs.yml"
    file.write_text(json.dumps(config), encoding="utf-8")
    return file


def report(rows: list[tuple[str, str, str]]) -> None:
    """A small table."""
    widths = [max(len(row[column]) for row in rows) for column in range(3)]
    for name, value, aim in rows:
        print(f"{name:<{widths[0]}}  {value:>{widths[1]}}  {aim}".rstrip())


def measure(root: Path, exercises: int, programs: int, runs: int) -> None:
    """Generate, measure, print."""
    handbook = generate(root / "handbook", exercises, programs)
    read_s, reading = best_of(runs, lambda: read_book(handbook / "programs"))
    book = reading.book
    if book is None:
        raise SystemExit("\n".join(map(str, reading.problems)))
    work_s, worked = best_of(runs, lambda: work_out(book))
    write_s, site = best_of(runs, lambda: write_pages(worked))
    whole_s, own_s = float("inf"), 0.0
    for _ in range(runs):
        watch = Stopwatch()
        with timed_hooks(watch):
            seconds, nav = build_seconds(handbook / "mkdocs.yml", root / "site")
        if seconds < whole_s:
            whole_s, own_s = seconds, watch.seconds
    plain = write_plain(root / "plain", handbook / "handbook", site, nav)
    plain_s = min(build_seconds(plain, root / "plain-site")[0] for _ in range(runs))
    leaves = sum(1 for page in site.pages if page.url.startswith("exercises/")) - 1
    report(
        [
            ("pages", str(len(site.pages)), f"{leaves} exercises, {programs} programs"),
            ("read", f"{read_s:.2f} s", "CPU, best of the runs"),
            ("work out", f"{work_s:.2f} s", ""),
            ("write pages", f"{write_s:.2f} s", ""),
            ("whole build", f"{whole_s:.2f} s", ""),
            ("  in this plugin's hooks", f"{own_s:.2f} s", ""),
            ("plain build", f"{plain_s:.2f} s", ""),
            ("own share", f"{own_s / whole_s:.1%}", f"aim: at most {OWN_SHARE_AIM:.0%}"),
            ("whole ÷ plain", f"{whole_s / plain_s:.2f}", f"aim: at most {RATIO_AIM}"),
        ]
    )


def main() -> None:
    """Read the options and measure."""
    options = argparse.ArgumentParser(description="Time the build of a large handbook.")
    options.add_argument("--exercises", type=int, default=300)
    options.add_argument("--programs", type=int, default=2)
    options.add_argument("--runs", type=int, default=3)
    options.add_argument("--keep", type=Path, help="an empty folder to keep the files in")
    chosen = options.parse_args()
    logging.getLogger("mkdocs").setLevel(logging.ERROR)
    if chosen.keep:
        measure(chosen.keep, chosen.exercises, chosen.programs, chosen.runs)
        return
    with tempfile.TemporaryDirectory() as folder:
        measure(Path(folder), chosen.exercises, chosen.programs, chosen.runs)


if __name__ == "__main__":
    main()
