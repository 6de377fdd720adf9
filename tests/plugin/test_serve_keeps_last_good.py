"""`mkdocs serve` goes on with the last good pages while a file has errors, and says so."""

import logging
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import Abort

import demo
from tiny import write_tiny

Rebuild = Callable[[], None]

NBSP = "\u00a0"


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The smallest handbook, in the current folder."""
    monkeypatch.chdir(tmp_path)
    return write_tiny(tmp_path)


@pytest.fixture
def serve(root: Path) -> Rebuild:
    """What `mkdocs serve` does: one start, then a build for each change."""
    address = "http://127.0.0.1:8000/"

    def rebuild() -> None:
        config = load_config(str(root / "mkdocs.yml"), site_dir=str(root / "site"))
        config.site_url = address
        build(config, serve_url=address)

    first = load_config(str(root / "mkdocs.yml"), site_dir=str(root / "site"))
    first.plugins.on_startup(command="serve", dirty=False)
    return rebuild


def page(root: Path, address: str) -> str:
    return (root / "site" / address / "index.html").read_text(encoding="utf-8")


WAVE = "programs/spring/1-start.yml"


def test_the_last_good_pages_stay_under_a_banner_until_the_file_is_mended(
    root: Path, serve: Rebuild, caplog: pytest.LogCaptureFixture
) -> None:
    serve()
    assert "alert" not in page(root, "spring/week-01")
    good = page(root, "spring/week-01/a-squat")

    demo.change(root / WAVE, "2x8", "2x8 <b>often</b>")
    with caplog.at_level(logging.ERROR, "mkdocs"):
        serve()
    assert f"{WAVE}:13:18: error dose:" in caplog.text
    for address in ("spring", "spring/week-01/a-squat", "exercises/chair-squat", "note"):
        html = page(root, address)
        assert len(re.findall(r'role="?alert\b', html)) == 1
        assert f"{WAVE}:13:18" in html
        assert "&lt;b&gt;often" in html.replace("&lt;b>", "&lt;b&gt;")
        assert "<b>often" not in html
    spoilt = page(root, "spring/week-01/a-squat")
    assert good.split("<article", 1)[1] == spoilt.split("<article", 1)[1]

    demo.change(root / WAVE, "2x8 <b>often</b>", "2x9")
    serve()
    assert 'role="alert"' not in page(root, "note")
    assert f"2{NBSP}×{NBSP}9" in page(root, "spring/week-01/a-squat")


def test_a_handwritten_page_may_change_while_a_file_is_broken(root: Path, serve: Rebuild) -> None:
    serve()
    demo.change(root / WAVE, "2x8", "2x")
    demo.change(root / "handbook/note.md", "A note", "Another note")
    serve()
    html = page(root, "note")
    assert "Another note" in html
    assert "1 Mill Lane" in html  # the part it takes in


def test_one_broken_file_holds_no_other_back(root: Path, serve: Rebuild) -> None:
    serve()
    demo.change(root / WAVE, "2x8", "2x")
    demo.change(root / "programs/room.yml", "gym: The Shed", "gym: The Barn")
    serve()
    html = page(root, "spring/week-01/a-squat")
    assert f"2{NBSP}×{NBSP}8" in html
    assert "The Barn" in html
    assert len(re.findall(r'role="?alert\b', html)) == 1
    assert "1 error: programs/spring/1-start.yml stands here as before the error" in html
    assert html.count(f"{WAVE}:13:14") == 1

    # What was good in between is what is shown of a file that breaks next.
    demo.change(root / WAVE, "1: 2x\n", "1: 2x9\n")
    serve()
    assert "alert" not in page(root, "note")
    demo.change(root / "programs/room.yml", "gym: The Barn", "gim: The Barn")
    demo.change(root / WAVE, "1: 2x9\n", "1: 2x10\n")
    serve()
    html = page(root, "spring/week-01/a-squat")
    assert f"2{NBSP}×{NBSP}10" in html
    assert "The Barn" in html


def test_a_new_file_that_cannot_be_read_yet_holds_no_other_back(root: Path, serve: Rebuild) -> None:
    serve()
    (root / "programs/exercises/bridge.yml").write_text("name: Bridge\nloud: [", encoding="utf-8")
    demo.change(root / WAVE, "2x8", "2x9")
    serve()
    assert f"2{NBSP}×{NBSP}9" in page(root, "spring/week-01/a-squat")
    assert "programs/exercises/bridge.yml stands here as before the error, or not yet" in page(
        root, "note"
    )
    assert not (root / "site/exercises/bridge").exists()

    # Where another file leads to it, that one waits for it.
    demo.change(root / WAVE, "exercise: chair-squat", "exercise: bridge")
    serve()
    assert f"2{NBSP}×{NBSP}9" in page(root, "spring/week-01/a-squat")


def test_files_that_do_not_go_together_show_the_last_state_of_all(
    root: Path, serve: Rebuild
) -> None:
    serve()
    (root / "programs/exercises/chair-squat.yml").unlink()
    demo.change(root / "programs/room.yml", "gym: The Shed", "gym: The Barn")
    serve()
    html = page(root, "spring/week-01/a-squat")
    assert "The Shed" in html
    assert "you see the last state without errors" in html


def test_a_file_broken_from_the_start_gives_one_page_with_the_problems(
    root: Path, serve: Rebuild
) -> None:
    demo.change(root / "programs/room.yml", "gym:", "gim:")
    serve()
    html = page(root, "")
    assert html.count('role="alert"') == 1
    assert "programs/room.yml:1:1" in html
    assert sorted(path.parent.name for path in (root / "site").rglob("index.html")) == ["site"]

    demo.change(root / "programs/room.yml", "gim:", "gym:")
    serve()
    assert "The Shed" in page(root, "")
    assert "Chair squat" in page(root, "exercises/chair-squat")


def test_a_wrong_mark_does_not_keep_the_other_pages_from_changing(
    root: Path, serve: Rebuild
) -> None:
    serve()
    demo.change(root / "handbook/note.md", "handbook:emergency", "handbook:emergancy")
    demo.change(root / WAVE, "2x8", "2x9")
    serve()
    assert f"2{NBSP}×{NBSP}9" in page(root, "spring/week-01/a-squat")
    assert "handbook/note.md:3:1" in page(root, "note")
    assert "alert" not in page(root, "note")
    assert "handbook/note.md" not in page(root, "spring")


def test_a_new_start_knows_nothing_of_the_one_before(root: Path, serve: Rebuild) -> None:
    serve()
    demo.change(root / WAVE, "2x8", "2x")
    config = load_config(str(root / "mkdocs.yml"), site_dir=str(root / "other"))
    config.plugins.on_startup(command="serve", dirty=False)
    build(config, serve_url="http://127.0.0.1:8000/")
    assert len(list((root / "other").rglob("index.html"))) == 1

    config = load_config(str(root / "mkdocs.yml"), site_dir=str(root / "other"))
    config.plugins.on_startup(command="build", dirty=False)
    with pytest.raises(Abort):
        build(config)
