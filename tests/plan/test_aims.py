"""Paces and watts of tested bests: what a strip says, and how it is made."""

from pathlib import Path
from typing import Any

import pytest
from pydantic import ValidationError

from books import LB_ROOM, exercise, slot, slots_of, work
from strength_handbook.model.best import Best
from strength_handbook.model.printed import split
from strength_handbook.model.span import ends
from strength_handbook.pages.lookup import slot_lookup
from strength_handbook.plan.aims import AimStrip
from strength_handbook.plan.worked import WorkedSlot
from strength_handbook.workings.aim import aim_lines

EXERCISES = {
    "rower": exercise("Rower", {"kind": "endurance", "of": "row"}, pattern="endurance"),
    "run": exercise("Run", {"kind": "endurance", "of": "run", "per": "1 mile"}),
    "bike": exercise("Bike", {"kind": "endurance", "of": "ride", "base": "ride-20"}),
}
ROW = {"name": "2 km row", "exercise": "rower", "over": "2 km"}
RUN = {"name": "5 km run", "exercise": "run", "over": "5 km"}
RIDE = {"name": "20 min ride", "exercise": "bike", "over": "20 min"}
BESTS: dict[str, Any] = {
    "row-2k": {**ROW, "from": "6:00", "to": "10:00", "by": "10 s"},
    "run-5k": {**RUN, "from": "15:00", "to": "40:00", "by": "30 s"},
    "ride-20": {**RIDE, "from": "80 W", "to": "400 W", "by": "10 W"},
}  # fmt: skip


def slot_of(root: Path, exercise_id: str, dose: str, base: str | None) -> WorkedSlot:
    own = {} if base is None else {"base": base}
    sessions = {"a": [slot("A", exercise_id, dose, **own)]}
    worked = work(root, exercises=EXERCISES, sessions=sessions, room=LB_ROOM, bests=BESTS)
    return slots_of(worked)["A"]


def strip_of(root: Path, exercise_id: str, dose: str, base: str | None) -> AimStrip:
    strip = slot_of(root, exercise_id, dose, base).aims
    assert strip is not None
    return strip


@pytest.mark.parametrize(
    ("exercise_id", "dose", "base", "result", "pace", "piece", "watts"),
    [
        # 7:40 over 2 km are 1:55 for 500 m, and 8 s more 2:03; 2.80 ÷ 0.246³ W.
        ("rower", "6x500 m @ pace +8 s, rest 2:00", "row-2k", "7:40", "2:03", "0:00", 188),
        ("rower", "4x1 km @ pace -1 s, rest 4:00", "row-2k", "8:00", "1:59", "3:58", 208),
        # 80 % of the speed of 2:00 takes 2:30.
        ("rower", "1x30 min @ 80 %", "row-2k", "8:00", "2:30", "0:00", 104),
        # 5 km in 25:00 are 8:02.8 for a mile.
        ("run", "3x1 mi @ pace, rest 3:00", "run-5k", "25:00", "8:02.8", "0:00", 0),
        ("run", "5 miles @ pace +60 s", "run-5k", "25:00", "9:02.8", "45:14", 0),
        ("bike", "1x20 min @ 75 %", None, "240 W", "0:00", "0:00", 180),
    ],
)
def test_a_row_of_the_strip(
    exercise_id: str, dose: str, base: str | None, result: str, pace: str, piece: str, watts: int,
    tmp_path: Path,
) -> None:  # fmt: skip
    strip = strip_of(tmp_path, exercise_id, dose, base)
    aim = {one.label: found for one, found in strip.rows}[result]
    assert (split(aim.pace_s), split(aim.piece_s), round(aim.watts)) == (pace, piece, watts)


def test_a_range_has_both_ends_the_faster_first(tmp_path: Path) -> None:
    strip = strip_of(tmp_path, "rower", "6x500 m @ pace +5-8 s, rest 2:00", "row-2k")
    aim = {one.label: found for one, found in strip.rows}["8:00"]
    assert split(aim.pace_s) == "2:05–2:08"
    low, high = ends(aim.watts)
    assert (round(low), round(high)) == (167, 179)
    share = strip_of(tmp_path / "share", "rower", "1x20 min @ 75-80 %", "row-2k")
    assert split({one.label: found for one, found in share.rows}["8:00"].pace_s) == "2:30–2:40"


def test_every_row_of_every_best_is_there_and_rises(tmp_path: Path) -> None:
    for key, exercise_id, rows in (("row-2k", "rower", 25), ("run-5k", "run", 51)):
        strip = strip_of(tmp_path / key, exercise_id, "1x20 min @ 85 %", key)
        paces = [aim.pace_s for _, aim in strip.rows]
        assert len(paces) == rows
        assert paces == sorted(paces)
    watts = [aim.watts for _, aim in strip_of(tmp_path / "w", "bike", "1x20 min @ 75 %", None).rows]
    assert len(watts) == 33
    assert watts == sorted(watts)


def test_the_page_has_the_strip_and_how_it_is_made(tmp_path: Path) -> None:
    found = slot_of(tmp_path, "rower", "4x1 km @ pace +8 s, rest 3:00", "row-2k")
    look = slot_lookup(found, "lb")
    assert look.sentence.startswith("Find your best in the first column.")
    for text in (
        "best, 2\u00a0km",
        "for\u00a0500\u00a0m",
        "each 1\u00a0km",
        ">W<",
        "7:40",
        "2:03",
        "4:06",
    ):
        assert text in look.table
    lines = [line.text.replace("\u00a0", " ") for line in aim_lines(found)]
    assert lines == [
        "2 km row: 8:00, say",
        "8:00 ÷ 2000 m × 500 m = 2:00 for 500 m",
        "2:00 +8 s = 2:08",
        "1000 m at that pace: 4:16",
        "2:08 for 500 m: 167 W",
    ]


def test_without_a_best_there_is_no_strip(tmp_path: Path) -> None:
    found = slot_of(tmp_path, "rower", "6x500 m, RPE 8, rest 2:00", None)
    assert found.aims is None
    assert slot_lookup(found, "lb").table == ""


@pytest.mark.parametrize(
    "change",
    [
        {"over": "2 kg"},
        {"over": "50 m"},
        {"over": "5 s"},
        {"from": "120 W"},
        {"from": "460"},
        {"over": "20 min"},
        {"from": "10:00", "to": "6:00"},
        {"by": "1 s"},
        {"from": "0:20"},
        {"to": "59:00"},
    ],
)
def test_a_best_that_nobody_has_is_refused(change: dict[str, str]) -> None:
    with pytest.raises(ValidationError):
        Best.model_validate({**ROW, "from": "6:00", "to": "10:00", "by": "10 s"} | change)
