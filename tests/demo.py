"""The demo handbook of this repository, for tests: where it is, copies of it, and builds of it."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from mkdocs.commands.build import build
from mkdocs.config import load_config

ROOT = Path(__file__).parent.parent
PROGRAMS = ROOT / "programs"
PACKAGE = ROOT / "plugins" / "strength_handbook"

EXERCISES = tuple(sorted(path.stem for path in (PROGRAMS / "exercises").glob("*.yml")))


def copy_demo(folder: Path) -> Path:
    """A copy of everything a site is built from; returns its root."""
    root = folder / "demo"
    for part in ("handbook", "programs"):
        shutil.copytree(ROOT / part, root / part)
    shutil.copy(ROOT / "mkdocs.yml", root)
    return root


def build_site(root: Path, out: Path) -> Path:
    """Build a site in this process, as `mkdocs build` does; returns its folder."""
    config = load_config(str(root / "mkdocs.yml"), site_dir=str(out))
    config.plugins.on_startup(command="build", dirty=False)
    try:
        build(config)
    finally:
        config.plugins.on_shutdown()
    return out


def build_drafts(root: Path, out: Path) -> Path:
    """The same as `mkdocs serve` does once, with the pages for the coach."""
    config = load_config(str(root / "mkdocs.yml"), site_dir=str(out))
    config.plugins.on_startup(command="serve", dirty=False)
    try:
        build(config, serve_url="http://127.0.0.1:8000/")
    finally:
        config.plugins.on_shutdown()
    return out


def mkdocs(root: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """Run the real `mkdocs` command in a folder."""
    # Material's note on its end of life says nothing about our build.
    return _run(root, "mkdocs", *words, NO_MKDOCS_2_WARNING="1")


def handbook(folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """Run the real `strength-handbook` command in a folder."""
    return _run(folder, "strength_handbook.cli", *words)


def _run(folder: Path, module: str, *words: str, **more: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", module, *words],
        cwd=folder,
        env=os.environ | more,
        stdin=subprocess.DEVNULL,
        capture_output=True,
        encoding="utf-8",
        check=False,
    )


def change(file: Path, old: str, new: str) -> None:
    """Replace a text that must be in the file."""
    text = file.read_text(encoding="utf-8")
    assert old in text, f"{old!r} is not in {file}"
    file.write_text(text.replace(old, new, 1), encoding="utf-8")
