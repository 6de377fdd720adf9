"""A long `mkdocs serve` keeps one handbook in memory: the one that the pages show."""

import gc
import weakref
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config

import demo
from strength_handbook.checked import check_folder
from strength_handbook.pages.coach.drafts import coach_pages
from strength_handbook.pages.site import write_pages
from strength_handbook.plan.worked import Worked
from tiny import write_tiny

pytestmark = pytest.mark.slow


def alive() -> int:
    gc.collect()
    return sum(isinstance(one, Worked) for one in gc.get_objects())


def test_five_rebuilds_leave_one_handbook(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    root = write_tiny(tmp_path)
    address = "http://127.0.0.1:8000/"
    wave = root / "programs/spring/1-start.yml"
    config = load_config(str(root / "mkdocs.yml"), site_dir=str(root / "site"))
    config.plugins.on_startup(command="serve", dirty=False)
    before = alive()
    for repetitions in range(8, 13):
        config = load_config(str(root / "mkdocs.yml"), site_dir=str(root / "site"))
        config.site_url = address
        build(config, serve_url=address)
        demo.change(wave, f"2x{repetitions}", f"2x{repetitions + 1}")
    # The tests that ran before may have left one, which is forgotten by now.
    assert alive() <= max(before, 1)


def test_nothing_of_the_demo_is_held_when_the_next_is_read(tmp_path: Path) -> None:
    """Every kind of page, of a program that uses everything, asks for what is remembered."""
    programs = demo.copy_demo(tmp_path) / "programs"
    checked = check_folder(programs)
    assert checked.worked is not None
    assert write_pages(checked.worked, {}, "").pages
    assert coach_pages(checked, {})
    worked, book = weakref.ref(checked.worked), weakref.ref(checked.worked.book)
    del checked
    check_folder(tmp_path / "nothing-there")
    gc.collect()
    assert worked() is None
    assert book() is None
