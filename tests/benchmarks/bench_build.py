"""How long a large handbook takes to build, beside two sites that do less.

    python tests/benchmarks/bench_build.py [--exercises 300] [--programs 2] [--runs 5] [--keep DIR]

Run by hand; nothing here is a test. Two 12-week programs with two sessions a week make 74 program,
week and session pages.

Every figure is a whole process, `python -m mkdocs build`, start-up counted: seconds of CPU, user
and system. The three sites take turns, so that a busy machine slows
all alike, and each ratio is made within one round. Medians, with the least and the most in
brackets.

- ours: this plugin, Material and the plugins of mkdocs.yml (search, tags).
- empty: the same addresses and titles with nothing in them, built without this plugin, by the same
  theme, plugins and extensions. What no handbook on this theme can save.
- plain: the same pages as Markdown (pipe tables, no pictures) by the theme `mkdocs` and no plugin
  at all, not even the search.

The pages of all three stand in the same `nav`; leaf pages are not in it.
"""

import argparse
import json
import os
import statistics
import subprocess
import sys
import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

import yaml
from mkdocs.commands.build import build
from mkdocs.config import load_config

# Run as a script, outside pytest's path.
sys.path.insert(0, str(Path(__file__).parents[1]))

from benchmarks.generated_programs import generate
from benchmarks.html_to_markdown import markdown
from strength_handbook.checked import check_folder
from strength_handbook.pages.page import Site, url_of
from strength_handbook.pages.site import write_pages

RATIO_AIMS = {"empty": 1.09, "plain": 0.6}


def seconds(config: Path, site: Path) -> float:
    """Seconds of CPU that a process needs to build a site.

    Raises:
        SystemExit: where the build fails.
    """
    command = [sys.executable, "-m", "mkdocs", "build", "-q", "-f", str(config), "-d", str(site)]
    process = subprocess.Popen(command, env=os.environ | {"NO_MKDOCS_2_WARNING": "1"})
    _, status, used = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode:
        raise SystemExit(f"the build of {config} failed")
    return used.ru_utime + used.ru_stime


def write_others(root: Path, handbook: Path) -> dict[str, Path]:
    """The configurations of all three sites, by name."""
    checked = check_folder(handbook / "programs")
    if checked.worked is None:
        raise SystemExit("\n".join(map(str, checked.problems)))
    site, nav = write_pages(checked.worked), built_nav(handbook, root / "first")
    docs = handbook / "handbook"
    by_hand = {
        path.relative_to(docs).as_posix(): path.read_text(encoding="utf-8")
        for path in docs.rglob("*.md")
    }
    return {
        "ours": handbook / "mkdocs.yml",
        "empty": write_empty(root / "empty", handbook, site, by_hand, nav),
        "plain": write_plain(root / "plain", site, by_hand, nav),
    }


def built_nav(handbook: Path, site: Path) -> list[Any]:
    """The `nav` that a build ends up with; of mkdocs.yml's own pages and the programs'."""
    config = load_config(str(handbook / "mkdocs.yml"), site_dir=str(site))
    config.plugins.on_startup(command="build", dirty=False)
    try:
        build(config)
    finally:
        config.plugins.on_shutdown()
    return list(config.nav or [])


def write_empty(
    root: Path, handbook: Path, site: Site, by_hand: Mapping[str, str], nav: Sequence[Any]
) -> Path:
    """Titles only, under the handbook's own theme, plugins and extensions."""
    config = yaml.safe_load((handbook / "mkdocs.yml").read_text(encoding="utf-8"))
    config["plugins"] = [one for one in config["plugins"] if "strength-handbook" not in one]
    config["theme"].pop("favicon", None)  # the plugin brings it
    config |= {"docs_dir": "docs", "nav": nav, "watch": []}
    titles = {page.uri: page.title for page in site.pages} | {uri: uri for uri in by_hand}
    texts = {uri: f"---\ntitle: {json.dumps(title)}\n---\n" for uri, title in titles.items()}
    return _written(root, config, texts)


def write_plain(root: Path, site: Site, by_hand: Mapping[str, str], nav: Sequence[Any]) -> Path:
    """Everything as Markdown, under plain MkDocs without plugins."""
    sources = {url_of(uri): uri for uri in (*(page.uri for page in site.pages), *by_hand)}
    texts = {page.uri: markdown(page, sources) for page in site.pages} | dict(by_hand)
    config = {"site_name": site.title, "docs_dir": "docs", "theme": "mkdocs", "nav": nav,
              "plugins": []}  # fmt: skip
    return _written(root, config, texts)


def _written(root: Path, config: Mapping[str, Any], texts: Mapping[str, str]) -> Path:
    for uri, text in texts.items():
        path = root / "docs" / uri
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    # The words of missing links and pages are not what is measured.
    quiet = {"nav": {"omitted_files": "ignore"}, "links": {"not_found": "ignore"}}
    file = root / "mkdocs.yml"
    file.write_text(json.dumps({**config, "validation": quiet}), encoding="utf-8")
    return file


def middle(values: Sequence[float]) -> str:
    """A median with the least and the most."""
    return f"{statistics.median(values):.2f} ({min(values):.2f} to {max(values):.2f})"


def measure(root: Path, exercises: int, programs: int, runs: int) -> None:
    """Generate, measure in turns, print."""
    handbook = generate(root / "handbook", exercises, programs)
    configs = write_others(root, handbook)
    load = os.getloadavg()[0]
    rounds = [
        {name: seconds(file, root / f"site-{name}") for name, file in configs.items()}
        for _ in range(runs)
    ]
    pages = len(list((root / "site-ours").rglob("index.html")))
    print(f"{pages} pages, {exercises} exercises, {programs} programs; {runs} rounds; "
          f"load of the machine {load:.1f}")  # fmt: skip
    for name in configs:
        print(f"{name:<6} {middle([one[name] for one in rounds])} s of CPU")
    for name, aim in RATIO_AIMS.items():
        ratios = [one["ours"] / one[name] for one in rounds]
        print(f"ours ÷ {name:<6} {middle(ratios)}, aim: at most {aim}")


def main() -> None:
    """Read the options and measure."""
    options = argparse.ArgumentParser(description="Time the build of a large handbook.")
    options.add_argument("--exercises", type=int, default=300)
    options.add_argument("--programs", type=int, default=2)
    options.add_argument("--runs", type=int, default=5)
    options.add_argument("--keep", type=Path, help="an empty folder to keep the files in")
    chosen = options.parse_args()
    if chosen.keep:
        measure(chosen.keep, chosen.exercises, chosen.programs, chosen.runs)
        return
    with tempfile.TemporaryDirectory() as folder:
        measure(Path(folder), chosen.exercises, chosen.programs, chosen.runs)


if __name__ == "__main__":
    main()
