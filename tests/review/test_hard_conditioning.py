"""Hard rowing asks for its caution, easy rowing does not; and a dose says how hard it is."""

from datetime import date
from pathlib import Path

import pytest

from books import exercise, slot, write_files
from strength_handbook.checked import check_folder

BEST = {"name": "2 km row", "exercise": "rower", "over": "2 km"}
BESTS = {"row-2k": {**BEST, "from": "6:00", "to": "10:00", "by": "10 s"}}
ROW = {"kind": "endurance", "of": "row", "base": "row-2k"}
FIRST = "4x500 m, RPE 7, 24-26 spm, rest 2:00"


def found(root: Path, dose: str, hazards: list[str]) -> set[str]:
    rower = exercise("Rower", ROW, pattern="endurance", hazards=hazards)
    sessions = {"a": [slot("A", "rower", dose)]}
    folder = write_files(root, exercises={"rower": rower}, sessions=sessions, bests=BESTS)
    checked = check_folder(folder, "programs", date(2026, 12, 1))
    assert checked.desk is not None, checked.problems
    return {one.slug for one in checked.findings}


@pytest.mark.parametrize(
    ("dose", "hard"),
    [
        (FIRST, True),
        ("4x500 m, RPE 6-7, rest 2:00", True),
        ("4x500 m, RPE 6, rest 2:00", False),
        ("4x500 m, cannot talk, rest 2:00", True),
        ("20 min, can talk", False),
        ("4x500 m @ pace +8 s, rest 2:00", True),
        ("4x500 m @ pace +9-12 s, rest 2:00", True),
        ("4x500 m @ pace +15 s, rest 2:00", False),
        ("4x500 m @ 80-85 %, rest 2:00", True),
        ("4x500 m @ 75 %, rest 2:00", False),
    ],
)
def test_hard_work_needs_its_caution(dose: str, hard: bool, tmp_path: Path) -> None:  # noqa: FBT001  # a row of a table
    assert ("hazard-missing" in found(tmp_path / "without", dose, [])) == hard
    assert "hazard-missing" not in found(tmp_path / "with", dose, ["hard-conditioning"])


@pytest.mark.parametrize(
    ("dose", "says"),
    [("4x500 m, rest 2:00", False), ("4x500 m, 24 spm, rest 2:00", False), (FIRST, True)],
)
def test_a_dose_says_how_hard_it_is(dose: str, says: bool, tmp_path: Path) -> None:  # noqa: FBT001  # a row of a table
    assert ("load-missing" not in found(tmp_path, dose, ["hard-conditioning"])) == says
