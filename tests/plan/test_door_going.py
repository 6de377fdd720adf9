"""Doors of what is rowed, run or ridden: the same time on another machine, never nonsense."""

from pathlib import Path
from typing import Any

import pytest

from books import EFFORT, LB_ROOM, exercise, slot, slots_of, work
from strength_handbook.dose.printing import notation
from strength_handbook.plan.doors import DoorPlan, doors_of

STAY = {"how": "As it is."}
KINDS: dict[str, dict[str, Any]] = {
    "row": {"kind": "endurance", "of": "row"},
    "row-2": {"kind": "endurance", "of": "row"},
    "run": {"kind": "endurance", "of": "run", "per": "1 mile"},
    "ride": {"kind": "endurance", "of": "ride"},
    "step": {"kind": "endurance", "of": "step"},
    "lift": EFFORT,
    "swing": EFFORT,
}


def taken(root: Path, own: str, dose: str, to: str, door: dict[str, Any] | None = None) -> DoorPlan:
    """The door of a taken station."""
    found = {key: exercise(key, load) for key, load in KINDS.items()}
    doors = dict.fromkeys(("easier", "harder", "hurts", "no-partner"), STAY)
    found[own]["doors"] = doors | {"taken": {"how": "Elsewhere.", "to": to} | (door or {})}
    worked = work(root, room=LB_ROOM, exercises=found, sessions={"a": [slot("A", own, dose)]})
    plans = doors_of(worked, worked.programs[0], slots_of(worked)["A"])
    return next(plan for plan in plans if plan.key == "taken")


@pytest.mark.parametrize(
    ("own", "dose", "to", "expected"),
    [
        # 500 m of rowing take 140 s, the middle of 2:00 and 2:40.
        ("row", "6x500 m, RPE 8, 26 spm, rest 2:00", "ride", "6 × 2:20 · effort 8 · rest 2:00"),
        ("row", "6x500 m, RPE 8, rest 2:00", "step", "6 × 2:20 · effort 8 · rest 2:00"),
        # 5 km of it are 23 min 20 s, said as 23 min.
        ("row", "5 km, can talk", "run", "1 × 23:00 · can talk"),
        # A mile of running takes 285 to 405 s for 1 km: 555.2 s, said to 10 s.
        ("run", "3x1 mi, RPE 8, rest 3:00", "row", "3 × 9:20 · effort 8 · rest 3:00"),
        # The same way to go covers the same way.
        ("row", "6x500 m, RPE 8, rest 2:00", "row-2", "6 × 500 m · effort 8 · rest 2:00"),
        ("ride", "8x40 s, RPE 9, 90 rpm, rest 20 s", "swing", "8 × 40 s · effort 9 · rest 20 s"),
        ("swing", "6x40 s, RPE 8, rest 60 s", "ride", "6 × 40 s · effort 8 · rest 1:00"),
    ],
)
def test_the_same_time(own: str, dose: str, to: str, expected: str, tmp_path: Path) -> None:
    plan = taken(tmp_path, own, dose, to)
    assert plan.dose is not None
    assert notation(plan.dose).replace("\u00a0", " ") == expected


@pytest.mark.parametrize(
    ("own", "dose", "to"),
    [
        ("row", "6x500 m, RPE 8, rest 2:00", "lift"),
        ("row", "5 km, can talk", "lift"),
        ("ride", "1x30 min, can talk", "swing"),
        ("ride", "4x4 min, RPE 8, rest 3:00", "swing"),
        ("lift", "3x8, RIR 2", "row"),
        ("lift", "ISO 3x30 s, RPE 6", "row"),
        ("lift", "3 -> 40 m", "run"),
    ],
)
def test_what_nobody_can_do_instead_is_left_to_the_words(
    own: str, dose: str, to: str, tmp_path: Path
) -> None:
    plan = taken(tmp_path, own, dose, to)
    assert plan.dose is None
    assert plan.how == "Elsewhere."


def test_a_door_with_a_dose_of_its_own_keeps_it(tmp_path: Path) -> None:
    plan = taken(tmp_path, "row", "5 km, can talk", "lift", {"dose": "3x12, RIR 3"})
    assert plan.dose is not None
    assert notation(plan.dose).replace("\u00a0", " ") == "3 × 12 · RIR 3"
