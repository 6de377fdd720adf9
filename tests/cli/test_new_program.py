"""`strength-handbook new program`: files that build at once, whole or not at all."""

import re
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

import demo
from strength_handbook.checked import check_folder, errors_in
from strength_handbook.cli import main
from tiny import write_tiny


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The smallest handbook, in the current folder."""
    monkeypatch.chdir(tmp_path)
    return write_tiny(tmp_path)


def begin(*words: str) -> Result:
    result = CliRunner().invoke(main, ["new", "program", *words])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def test_it_builds_at_once_with_its_weeks_waves_and_days(root: Path) -> None:
    result = begin("Winter water", "--weeks", "6", "--waves", "4+2", "--days", "fri,Mon,wednesday")
    assert result.exit_code == 0, result.output
    names = sorted(path.name for path in (root / "programs/winter-water").iterdir())
    assert names == ["1-first.yml", "2-second.yml", "program.yml"]
    site = demo.build_site(root, root / "site")
    for week in range(1, 7):
        for session in ("a-monday", "b-wednesday", "c-friday"):
            assert (site / f"winter-water/week-0{week}/{session}/index.html").is_file()
    assert not (site / "winter-water/week-07").exists()
    assert "Winter water" in (site / "winter-water/index.html").read_text(encoding="utf-8")


def test_what_is_left_to_do_stops_a_strict_build(root: Path) -> None:
    assert begin("Winter", "--weeks", "2").exit_code == 0
    checked = check_folder(root / "programs")
    own = [str(one) for one in checked.problems if one.slug == "not-filled-in"]
    # Need, goal and test; the wave's promise; the purpose of each of two sessions.
    assert len(own) == 6
    assert all(line.startswith("programs/winter/") for line in own)


@pytest.mark.parametrize("weeks", ["1", "5", "32"])
def test_every_number_of_weeks_has_no_error(root: Path, weeks: str) -> None:
    assert begin("Long", "--weeks", weeks, "--days", "sun").exit_code == 0
    assert errors_in(check_folder(root / "programs").problems) == []


def test_in_the_demo_it_has_no_error(tmp_path: Path) -> None:
    programs = Path(shutil.copytree(demo.PROGRAMS, tmp_path / "programs"))
    assert begin("Second", "--programs", str(programs), "--days", "tue,thu,sat").exit_code == 0
    assert errors_in(check_folder(programs).problems) == []


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["Spring"], "spring' is there already; choose another name"),
        (["Room"], "the site needs the name 'room' itself; give the program another"),
        (["深"], "has no letter from a to z; give the program a name in words"),
        (["X", "--waves", "4,x"], "--waves: can't read '4,x'; write weeks of each, such as 4+2"),
        (["X", "--weeks", "8", "--waves", "4+2"], "4+2 are 6 weeks and not 8; leave --weeks out"),
        (["X", "--weeks", "0"], "--weeks: write a number from 1 to 32"),
        (["X", "--waves", "1+1+1+1+1+1+1+1+1"], "--waves: at most 8 waves and 60 weeks"),
        (["X", "--days", "mon,t"], "--days: 't' is no weekday; write them like mon,wed,fri"),
        (["X", "--days", ","], "--days: write at least one, such as mon"),
    ],
)
def test_what_to_write_instead(root: Path, words: list[str], says: str) -> None:
    before = sorted(root.rglob("*"))
    result = begin(*words)
    assert result.exit_code == 2
    assert says in re.sub(r"\s+", " ", result.output)
    assert sorted(root.rglob("*")) == before


def test_all_slips_are_told_at_once(root: Path) -> None:  # noqa: ARG001  # current folder
    output = begin("Room", "--waves", "x", "--days", "someday").output
    assert all(word in output for word in ("'room'", "--waves", "--days"))


def test_a_room_without_exercises_says_how_to_get_one(root: Path) -> None:
    (root / "programs/exercises/chair-squat.yml").unlink()
    assert "run: strength-handbook new exercise NAME" in begin("X").output
