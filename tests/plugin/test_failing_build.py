"""A build that fails leaves the last good site as it is, to the byte, and says where to look."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import demo

pytestmark = pytest.mark.slow

Snapshot = dict[str, tuple[bytes, int]]


def snapshot(site: Path) -> Snapshot:
    """Content and time of change of every file."""
    return {
        path.relative_to(site).as_posix(): (path.read_bytes(), path.stat().st_mtime_ns)
        for path in site.rglob("*")
        if path.is_file()
    }


@pytest.fixture(scope="module")
def good(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Snapshot]:
    """A copy of the demo with its site, built by the command."""
    root = demo.copy_demo(tmp_path_factory.mktemp("failing"))
    done = demo.mkdocs(root, "build")
    assert done.returncode == 0, done.stderr
    return root, snapshot(root / "site")


@pytest.fixture
def root(good: tuple[Path, Snapshot]) -> Iterator[Path]:
    """The copy, to be spoilt; afterwards its site must be what it was, and it is mended."""
    root, before = good
    kept = {
        path: path.read_bytes()
        for top in ("programs", "handbook", "mkdocs.yml")
        for path in [root / top, *(root / top).rglob("*")]
        if path.is_file()
    }
    yield root
    assert snapshot(root / "site") == before
    for path, content in kept.items():
        path.write_bytes(content)


def place_of(file: Path, text: str) -> str:
    """Line and column of a text, as in a message."""
    before, _, _ = file.read_text(encoding="utf-8").partition(text)
    return f"{before.count(chr(10)) + 1}:{len(before) - before.rfind(chr(10))}"


def fails(root: Path) -> str:
    """The message of a build that must fail."""
    done = demo.mkdocs(root, "build")
    assert done.returncode == 1
    assert "Traceback" not in done.stderr
    assert "the last good site is untouched" in done.stderr
    return done.stderr


def test_the_same_files_give_the_same_bytes_in_another_process_and_folder(
    good: tuple[Path, Snapshot], demo_site: Path
) -> None:
    _, before = good
    here = {name: content for name, (content, _) in snapshot(demo_site).items()}
    assert {name: content for name, (content, _) in before.items()} == here


def test_a_wrong_word_in_a_dose_is_named_with_its_place(root: Path) -> None:
    wave = root / "programs/winter/1-brakes.yml"
    demo.change(wave, "tempo 3-1-X-0", "tempo 3-1")
    message = fails(root)
    assert f"programs/winter/1-brakes.yml:{place_of(wave, '3-1, ')}: error tempo:" in message


def test_all_problems_of_all_files_come_at_once_and_are_counted(root: Path) -> None:
    demo.change(root / "programs/room.yml", "units: kg", "unitz: kg")
    demo.change(root / "programs/exercises/step-down.yml", "pattern: single-leg", "pattern: legs")
    (root / "programs/exercises/towel-hang.yml").write_text("name: [\n", encoding="utf-8")
    message = fails(root)
    for name in ("room.yml:4:1", "exercises/step-down.yml:3:10", "exercises/towel-hang.yml:1:7"):
        assert f"programs/{name}: error" in message
    number = len(re.findall(r"^ *programs/\S+:\d+:\d+: error ", message, re.MULTILINE))
    assert number >= 3
    assert f"{number} errors: nothing was built" in message


def test_a_missing_room_is_a_message_too(root: Path) -> None:
    room = root / "programs/room.yml"
    room.rename(root / "room.kept")
    message = fails(root)
    (root / "room.kept").rename(room)
    assert "programs/room.yml:1:1: error no-file:" in message


def test_a_wrong_mark_in_a_handwritten_page_is_found_before_anything_is_built(root: Path) -> None:
    page = root / "handbook/safety.md"
    demo.change(page, "<!-- handbook:emergency -->", "Call:\n\n  <!-- handbook:emergancy -->")
    message = fails(root)
    place = place_of(page, "<!-- handbook:emergancy")
    assert f"handbook/safety.md:{place}: error unknown-part:" in message
    assert "did you mean 'emergency'?" in message


def test_other_addresses_than_folders_are_refused(root: Path) -> None:
    config = root / "mkdocs.yml"
    config.write_text(config.read_text("utf-8") + "\nuse_directory_urls: false\n", "utf-8")
    done = demo.mkdocs(root, "build")
    assert done.returncode == 1
    assert "delete 'use_directory_urls: false'" in done.stderr
    assert "Traceback" not in done.stderr
