"""`strength-handbook check --since`: what changed since an earlier publication, and what is said
of a file that can't be compared."""

import json
import re
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

import demo
from strength_handbook import cli
from tiny import write_tiny

CHANGE = re.compile(r"[^:\s]+:\d+:\d+: change [a-z-]+: .+")


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The smallest handbook with its published data beside it, in the current folder."""
    monkeypatch.chdir(tmp_path)
    write_tiny(tmp_path)
    assert run("export", "out").exit_code == 0
    (tmp_path / "published").mkdir()
    shutil.copy(tmp_path / "out/data/spring.json", tmp_path / "published")
    return tmp_path


def run(*words: str) -> Result:
    result = CliRunner().invoke(cli.main, words)
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def since(where: str) -> list[str]:
    """Lines that are there only because of the comparison."""
    plain = run("check").stdout.splitlines()
    result = run("check", "--since", where)
    assert result.exit_code == 0, result.output
    return [line for line in result.stdout.splitlines() if line not in plain]


@pytest.mark.parametrize("where", ["published", "published/spring.json"])
def test_nothing_changed_and_nothing_is_said(root: Path, where: str) -> None:
    kept = (root / "published/spring.json").read_bytes()
    assert since(where) == []
    assert (root / "published/spring.json").read_bytes() == kept


@pytest.mark.parametrize("where", ["published", "published/spring.json"])
def test_changes_are_lines_with_their_place_and_the_sums_stay_last(root: Path, where: str) -> None:
    demo.change(root / "programs/spring/1-start.yml", "2: 3x8", "2: 4x8")
    demo.change(root / "programs/spring/program.yml", '"1"', '"2"')
    lines = since(where)
    assert all(CHANGE.fullmatch(line) for line in lines)
    assert lines[0] == (
        "programs/spring/1-start.yml:14:11: change dose: "
        "week 2, a-squat A chair-squat: 4 sets instead of 3"
    )
    assert run("check", "--since", where).stdout.splitlines()[-1].startswith("programs: ")


def test_what_was_taken_out_is_shown_where_it_was(root: Path) -> None:
    demo.change(root / "programs/spring/1-start.yml", "          2: 3x8\n", "")
    demo.change(root / "programs/spring/1-start.yml", "weeks: 1-2", "weeks: 1-1")
    gone = [line for line in since("published") if " change week-gone: " in line]
    assert gone == ["programs/spring/program.yml:2:1: change week-gone: week 2: taken out"]


def test_changes_of_the_room_the_group_and_the_goals_point_where_they_are(root: Path) -> None:
    demo.change(root / "programs/room.yml", "{name: clear floor}", "{name: clear floor, count: 2}")
    demo.change(root / "programs/room.yml", "kit:", "plates:\n  - {mass: 5 kg, pairs: 2}\nkit:")
    demo.change(root / "programs/room.yml", "address: 1 Mill Lane", "address: 2 Mill Lane")
    program = root / "programs/spring/program.yml"
    demo.change(program, "need:", "group: {members: 2, starts: 2, apart: 30 min}\nneed:")
    demo.change(program, "Ten squats", "Twelve squats")
    demo.change(root / "programs/spring/1-start.yml", "wave: Start", "wave: Begin")
    found = [line for line in since("published") if " change " in line]
    assert [line for line in found if " change room: " in line] == [
        "programs/room.yml:6:1: change room: room emergency panel: other words",
        "programs/room.yml:5:3: change room: room kit floor: count 2 instead of 1",
        "programs/room.yml:2:1: change room: room plates: new",
    ]
    (line,) = [line for line in found if " change program: " in line]
    assert line == (
        "programs/spring/program.yml:4:1: change program: program: minutes between start groups "
        "30 instead of 0, members 2 instead of 1, start groups 2 instead of 1, test of 'Stand up "
        "with a box': Twelve squats without a pause instead of Ten squats without a pause"
    )
    (line,) = [line for line in found if " change week: " in line]
    assert line.endswith("weeks 1-2: wave name Begin instead of Start")


def test_a_version_that_was_not_raised_is_a_warning(root: Path) -> None:
    demo.change(root / "programs/spring/1-start.yml", "2: 3x8", "2: 4x8")
    (warning,) = [line for line in since("published") if " warn " in line]
    assert warning.startswith("programs/spring/program.yml:2:10: warn same-version: ")
    assert "version is still 1, but " in warning
    assert warning.endswith("raise it, printed cards can't be told apart")
    assert since("published")[-1].startswith("programs: 0 errors, ")  # the sums count it


def test_json_has_every_value_and_the_lines_for_members(root: Path) -> None:
    demo.change(root / "programs/spring/1-start.yml", "2: 3x8", "2: 4x8")
    data = json.loads(run("check", "--since", "published", "--format", "json").stdout)
    first = data["changes"][0]
    assert (first["program"], first["kind"], first["weeks"]) == ("spring", "dose", [2])
    assert first["at"] == "week 2, a-squat A chair-squat"
    assert (first["file"], first["line"]) == ("programs/spring/1-start.yml", 14)
    assert {"key": "sets", "before": 3, "after": 4} in first["values"]
    assert data["members"] == {"spring": ["Week 2: chair squat: 4 sets instead of 3."]}
    assert [one["slug"] for one in data["findings"] if one["slug"] == "same-version"]


def test_on_a_terminal_the_lines_for_members_come_first(
    root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(cli, "on_terminal", lambda: True)
    assert "Nothing." in run("check", "--since", "published").stdout
    demo.change(root / "programs/spring/1-start.yml", "2: 3x8", "2: 4x8")
    text = run("check", "--since", "published").stdout
    assert "since version 1, published/spring.json" in text
    assert text.index("Week 2: chair squat: 4 sets instead of 3.") < text.index("Doses")
    assert "      4 sets instead of 3\n" in text


@pytest.mark.parametrize(
    ("content", "says"),
    [
        ("{", "1:2: warn since-file: the file is not whole JSON"),
        ("[]", "1:1: warn since-file: this is not a data file of the handbook"),
        ('{"schema": 2}', "1:1: warn since-file: its schema is 2"),
        (
            '{"schema": 1, "program": "winter", "weeks": []}',
            (
                "1:1: warn since-file: nothing to compare: it is about 'winter'; "
                "the programs are 'spring'"
            ),
        ),
    ],
)
def test_a_file_that_cannot_be_compared_is_a_plain_message(
    root: Path, content: str, says: str
) -> None:
    (root / "old.json").write_text(content, encoding="utf-8")
    assert any(line.startswith(f"old.json:{says}") for line in since("old.json"))


def test_an_empty_folder_and_a_choice_between_files(root: Path) -> None:
    (root / "empty").mkdir()
    assert any("there is no .json file in it" in line for line in since("empty"))
    shutil.copy(root / "published/spring.json", root / "published/older.json")
    assert since("published") == []  # the one with the program's name is taken
    (root / "published/spring.json").rename(root / "published/newer.json")
    assert any(
        "2 files are about 'spring'; call the last one" in line for line in since("published")
    )


def test_files_of_other_programs_in_the_folder_are_left_alone(root: Path) -> None:
    other = '{"schema": 1, "program": "winter", "weeks": []}'
    (root / "published/winter.json").write_text(other, encoding="utf-8")
    assert since("published") == []


def test_files_with_errors_are_compared_too_and_unreadable_ones_not(root: Path) -> None:
    (root / "programs/room.yml").write_text("gim: x\n", encoding="utf-8")
    result = run("check", "--since", "published")
    assert result.exit_code == 1
    assert " change " not in result.stdout
