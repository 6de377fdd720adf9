"""`strength-handbook new room`: a room where there is none, such as after a move."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

import demo
from strength_handbook.checked import check_folder
from strength_handbook.cli import main


def new_room(programs: Path, *words: str) -> Result:
    command = ["new", "room", *words, "--programs", str(programs)]
    result = CliRunner().invoke(main, command)
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


@pytest.fixture
def moved(tmp_path: Path) -> Path:
    """A gym that has left its room behind."""
    root = tmp_path / "gym"
    made = CliRunner().invoke(main, ["init", str(root), "--yes"])
    assert made.exit_code == 0, made.output
    (root / "programs" / "room.yml").unlink()
    return root / "programs"


def test_a_new_room_builds_with_the_exercises_that_are_there(moved: Path) -> None:
    done = new_room(moved, "--yes", "--gym", "Mill Lane", "--units", "lb", "--bars", "3x45")
    assert done.exit_code == 0, done.output
    text = (moved / "room.yml").read_text(encoding="utf-8")
    assert 'gym: "Mill Lane"' in text
    assert "units: lb" in text
    assert 'bar-45: {name: "45 lb bar", mass: 45 lb, count: 3}' in text
    assert check_folder(moved).desk is None  # the exercises still name the old bar
    named = [one.text for one in check_folder(moved).problems if "bar-20" in one.text]
    assert named
    for path in moved.glob("exercises/*.yml"):
        path.write_text(path.read_text(encoding="utf-8").replace("bar-20", "bar-45"), "utf-8")
    assert check_folder(moved).worked is not None


def test_a_room_that_is_there_stays(moved: Path) -> None:
    kept = moved / "room.yml"
    kept.write_text("gym: Ours\n", encoding="utf-8")
    done = new_room(moved, "--yes")
    assert done.exit_code == 2
    assert "room.yml is there already; move it away first" in done.output
    assert kept.read_text(encoding="utf-8") == "gym: Ours\n"


def test_a_wrong_answer_writes_nothing(moved: Path) -> None:
    done = new_room(moved, "--yes", "--racks", "many", "--units", "stone")
    assert done.exit_code == 2
    assert "--racks: " in done.output
    assert "--units: " in done.output
    assert not (moved / "room.yml").exists()


def test_nobody_to_ask_is_said(moved: Path) -> None:
    done = new_room(moved)
    assert done.exit_code == 2
    assert "nobody can be asked here; add --yes" in done.output
    assert not (moved / "room.yml").exists()


def test_the_demo_has_a_room(tmp_path: Path) -> None:
    assert new_room(demo.copy_demo(tmp_path) / "programs", "--yes").exit_code == 2
