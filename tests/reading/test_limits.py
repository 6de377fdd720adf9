"""Folders and files that are unreadable, empty or huge: said, never silent and never slow."""

import os
from pathlib import Path

import pytest

import base_folder
from strength_handbook.checked import current_day
from strength_handbook.publish.starter import StarterError, new_exercise
from strength_handbook.reading import files
from strength_handbook.reading.problem import Severity
from strength_handbook.reading.raw_text import MAX_BYTES
from strength_handbook.reading.yaml_build import next_free


def test_a_folder_that_cannot_be_read_is_an_error(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = base_folder.copy_base(tmp_path)
    real = os.scandir

    def scandir(path: str) -> object:
        if Path(path).name == "harbour":
            raise PermissionError(13, "Permission denied", str(path))
        return real(path)

    monkeypatch.setattr(os, "scandir", scandir)
    reading = base_folder.read(folder)
    assert reading.book is None
    (error,) = [str(one) for one in reading.problems if one.severity is Severity.ERROR]
    assert error == (
        "gym/harbour:1:1: error no-file: the folder can't be read: Permission denied; make it "
        "readable, or delete it"
    )


def test_a_room_without_a_program_is_said_with_the_next_step(tmp_path: Path) -> None:
    folder = base_folder.copy_base(tmp_path)
    for path in (folder / "harbour").iterdir():
        path.unlink()
    (folder / "lifters.yml").unlink()
    reading = base_folder.read(folder)
    notes = [one.text for one in reading.problems if one.slug == "no-program"]
    assert len(notes) == 1
    assert "write <name>/program.yml" in notes[0]


def test_tested_values_of_no_program_are_said_once(tmp_path: Path) -> None:
    folder = base_folder.copy_base(tmp_path)
    for path in (folder / "harbour").iterdir():
        path.unlink()
    notes = [one for one in base_folder.read(folder).problems if one.slug == "unknown-base"]
    assert [(one.file, one.severity) for one in notes] == [("gym/lifters.yml", Severity.NOTE)]
    assert notes[0].text.startswith("no program has 'chin-up-total' or 'squat-1rm'; write")


def test_a_huge_file_is_not_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = base_folder.copy_base(tmp_path)
    huge = folder / "exercises/push-up.yml"
    with huge.open("wb") as file:
        file.truncate(MAX_BYTES + 1)
    real = Path.read_bytes

    def read_bytes(path: Path) -> bytes:
        assert path != huge
        return real(path)

    monkeypatch.setattr(Path, "read_bytes", read_bytes)
    (text,) = [one.text for one in base_folder.read(folder).problems if one.slug == "too-large"]
    assert text.endswith(f"the limit is {MAX_BYTES:,}: split it")


def test_more_files_than_any_gym_has_are_counted_and_left(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = base_folder.copy_base(tmp_path)
    number = len(list((folder / "exercises").iterdir()))
    monkeypatch.setattr(files, "MOST", {files.FileKind.EXERCISE: number - 1})
    found = files.list_folder(folder, "gym")
    assert [one.text for one in found.problems] == [
        f"{number} exercise files are too many; the most is {number - 1}"
    ]
    assert len([one for one in found.files if one.kind is files.FileKind.EXERCISE]) == number - 1


class Counting(dict[str, int]):
    """Keys that count how often they are asked for."""

    asked = 0

    def __contains__(self, key: object) -> bool:
        self.asked += 1
        return super().__contains__(key)


def test_a_week_written_thousands_of_times_is_looked_up_a_few_times_each() -> None:
    many, taken, passed = 5000, Counting({"1": 1}), dict[int, int]()
    for _ in range(many):
        free = next_free(2, taken, passed)
        taken[str(free)] = 1
    assert len(taken) == many + 1
    assert taken.asked < 5 * many


def test_more_than_a_hundred_wrong_lines_are_counted(tmp_path: Path) -> None:
    folder = base_folder.copy_base(tmp_path)
    wave = folder / "harbour/1-climb.yml"
    slots = "".join(
        f"      - {{order: A{n}, exercise: push-up, weeks: {{1: 3x5 @ nonsense}}}}\n"
        for n in range(1, 141)
    )
    wave.write_text(
        "wave: Climb\nemphasis: general\npromise: More.\nweeks: 1-3\nsessions:\n  up:\n"
        f"    title: Up\n    purpose: Up.\n    slots:\n{slots}",
        encoding="utf-8",
    )
    problems = base_folder.read(folder).problems
    dose = [one for one in problems if one.slug == "dose"]
    more = [one.text for one in problems if one.slug == "too-many"]
    assert len(dose) == 100
    assert "there are 40 more problems in this file; fix the others first" in more


def test_a_number_in_quotes_is_told_so(tmp_path: Path) -> None:
    folder = base_folder.copy_base(tmp_path)
    path = folder / "exercises/handle-walk.yml"
    text = path.read_text("utf-8")
    assert "hands: 2" in text
    path.write_text(text.replace("hands: 2", 'hands: "2"'), encoding="utf-8")
    assert any(
        one.text == "'2' is a number here; write 2 without quotes"
        for one in base_folder.read(folder).problems
    )


def test_a_day_beyond_all_calendars_says_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "9" * 30)
    assert current_day().year < 5000


def test_a_name_that_is_no_text_begins_no_file(tmp_path: Path) -> None:
    folder = base_folder.copy_base(tmp_path)
    before = sorted(folder.rglob("*"))
    with pytest.raises(StarterError, match="no letter"):
        new_exercise("Step\udcff down", folder)
    assert sorted(folder.rglob("*")) == before
