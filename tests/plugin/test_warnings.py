"""Warnings that nobody accepted stop a strict build before it touches the last site, and no other
build; notes stop none."""

import logging
from pathlib import Path
from typing import Any

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import Abort

import demo
import desks
from strength_handbook.checked import Checked, check_folder
from strength_handbook.reading.problem import Problem, Severity
from tiny import MKDOCS

SHORT_REST: desks.Edits = {"brook/1-slow.yml": {"sessions.a-lift.slots.0.rest": "1:50"}}
ENTRY = {
    "finding": "rest-short",
    "at": "week 3, a-lift A trap-bar-deadlift",
    "reason": "The bar is carried back by two.",
}


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A handbook with one warning, and a site that was built before, in the current folder."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1796083200")  # 2026-12-01, the day of the checks
    desks.write(desks.edited(SHORT_REST), tmp_path / "programs")
    for name, text in {
        "mkdocs.yml": MKDOCS, "handbook/note.md": "# A note\n", "site/old.html": "The old site"
    }.items():  # fmt: skip
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text(text, encoding="utf-8")
    return tmp_path


def make(root: Path, *, strict: bool, command: str = "build") -> None:
    config = load_config(str(root / "mkdocs.yml"), site_dir=str(root / "site"), strict=strict)
    config.plugins.on_startup(command=command, dirty=False)  # type: ignore[arg-type]
    build(config, serve_url="http://127.0.0.1:8000/" if command == "serve" else None)


def logged(caplog: pytest.LogCaptureFixture, level: int) -> list[str]:
    return [
        record.getMessage()
        for record in caplog.records
        if record.name.startswith("mkdocs.plugins.strength_handbook.") and record.levelno == level
    ]


def test_a_strict_build_stops_before_the_old_site_is_touched(
    root: Path, caplog: pytest.LogCaptureFixture
) -> None:
    with pytest.raises(Abort):
        make(root, strict=True)
    assert [path.name for path in (root / "site").rglob("*")] == ["old.html"]
    (record,) = [one for one in caplog.records if "rest-short" in one.getMessage()]
    message = record.getMessage()
    assert "The files have warnings." in message
    assert "warn rest-short: week 3, a-lift A trap-bar-deadlift: " in message
    assert "1 warning: nothing was built, the last good site is untouched." in message
    assert "accept it with a reason in program.yml" in message


def test_the_real_command_says_it_too_and_ends_with_1(root: Path) -> None:
    done = demo.mkdocs(root, "build", "--strict")
    assert done.returncode == 1
    assert "1 warning: nothing was built" in done.stderr
    assert "Traceback" not in done.stderr
    assert (root / "site/old.html").is_file()


def test_a_plain_build_logs_the_warning_and_goes_on(
    root: Path, caplog: pytest.LogCaptureFixture
) -> None:
    make(root, strict=False)
    (message,) = logged(caplog, logging.WARNING)
    assert "warn rest-short: week 3, a-lift A trap-bar-deadlift: " in message
    assert (root / "site/brook/index.html").is_file()


def test_a_warning_with_a_reason_stops_nothing(
    root: Path, caplog: pytest.LogCaptureFixture
) -> None:
    accepted = {"brook/program.yml": {"accepted": [ENTRY]}}
    desks.write(desks.edited({**SHORT_REST, **accepted}), root / "programs")
    make(root, strict=False)
    assert logged(caplog, logging.WARNING) == []
    assert (root / "site/brook/index.html").is_file()


def test_an_entry_that_no_longer_holds_stops_a_strict_build(root: Path) -> None:
    accepted = {"brook/program.yml": {"accepted": [ENTRY | {"until": "2026-11-30"}]}}
    desks.write(desks.edited({**SHORT_REST, **accepted}), root / "programs")
    with pytest.raises(Abort):
        make(root, strict=True)
    assert (root / "site/old.html").is_file()


def test_notes_are_logged_for_information_only(
    root: Path, caplog: pytest.LogCaptureFixture, monkeypatch: pytest.MonkeyPatch
) -> None:
    def only_a_note(folder: Path, **options: Any) -> Checked:
        found = check_folder(folder, **options)
        note = Problem("programs/room.yml", 1, 1, "a-note", "look at this", Severity.NOTE)
        return Checked(found.worked, (note,), found.desk)

    monkeypatch.setattr("strength_handbook.plugin.check_folder", only_a_note)
    with caplog.at_level(logging.INFO, "mkdocs"):
        make(root, strict=False)
    assert logged(caplog, logging.WARNING) == []
    said = "programs/room.yml:1:1: note a-note: look at this"
    assert any(message.endswith(said) for message in logged(caplog, logging.INFO))


def test_serve_shows_the_pages_whatever_the_warnings(root: Path) -> None:
    make(root, strict=False, command="serve")
    assert (root / "site/brook/index.html").is_file()
