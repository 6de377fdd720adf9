"""What a day asks of muscles, joints and hands, by hand; and what grip and joints are told from.

No published values: the tables are common practice, no source. Hard sets count whole where a muscle
works directly and half where it helps (Pelland and others 2025).
"""

import dataclasses
from pathlib import Path
from typing import Any

import pytest

from books import BAR, EFFORT, KG_ROOM, base, exercise, slot, work
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.words import Muscle
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.review.grip import grip_class
from strength_handbook.review.joints import Joint, joints_of
from strength_handbook.review.stress import week_stress

DUMBBELLS = {"kind": "hands", "weight": "dumbbell", "hands": 2}
ROOM: dict[str, Any] = {
    **KG_ROOM,
    "hand-weights": {
        "dumbbell": {"name": "dumbbell", "masses": [{"from": "4 kg", "to": "20 kg", "by": "2 kg"}]}
    },
    "stacks": {"cable": {"name": "cable", "pins": {"from": "5 kg", "to": "50 kg", "by": "5 kg"}}},
}
DEADLIFT = exercise(
    pattern="hinge",
    hazards=["heavy-pull", "heavy-eccentric"],
    muscles={"direct": ["glutes", "hamstrings"], "helping": ["forearms"]},
)
ROW = exercise(
    load={"kind": "stack", "stack": "cable"},
    pattern="horizontal-pull",
    role="assistance",
    muscles={"direct": ["lats"], "helping": ["biceps"]},
)
WALK = exercise(
    load=DUMBBELLS,
    pattern="carry",
    role="assistance",
    hazards=["carry"],
    muscles={"direct": ["obliques", "forearms"]},
)
JUMP = exercise(
    load=EFFORT,
    pattern="jump",
    hazards=["impact"],
    muscles={"direct": ["quads", "calves"]},
)
EXERCISES = {"deadlift": DEADLIFT, "row": ROW, "walk": WALK, "jump": JUMP}
LIFT = {
    "day": "monday",
    "slots": [
        slot(
            "A", "deadlift",
            {"1": "3x5 @ 70 %, tempo 4-0-1-0, RIR 3, rest 3:00",
             "2": "3x5 @ 70 %, tempo 3-0-1-0, RIR 3, rest 3:00"},
            base="deadlift-1rm",
        ),
        slot("B", "row", {"1": "2x8, tempo 2-0-1-0, RIR 2, rest 1:30"}),
        slot("C", "walk", {"1": "2 -> 30 m @ 10 kg, RPE 7, rest 1:00"}),
    ],
}  # fmt: skip
QUICK = {
    "day": "saturday",
    "optional": True,
    "slots": [slot("A", "jump", {"1": "3x4, rest 1:30"})],
}
LOOSE = {"slots": [slot("A", "row", {"1": "1x8, RIR 5, rest 1:30"})]}


@pytest.fixture(name="program")
def _program(tmp_path: Path) -> tuple[Any, WorkedProgram]:
    worked = work(
        tmp_path,
        exercises=EXERCISES,
        sessions={"lift": LIFT, "quick": QUICK, "loose": LOOSE},
        room=ROOM,
        bases={"deadlift-1rm": base("deadlift")},
    )
    return worked.book, worked.programs[0]


def test_a_week_by_hand(program: tuple[Any, WorkedProgram]) -> None:
    monday, saturday, loose = week_stress(*program, 1)
    assert (monday.day, monday.sessions, monday.optional) == ("monday", ("lift",), False)
    # Deadlift 3 hard sets, row 2, walk 2 at RPE 7; forearms 3 × 0.5 + 2.
    assert monday.hard_sets == {
        "forearms": 3.5, "glutes": 3, "hamstrings": 3, "lats": 2, "obliques": 2, "biceps": 1,
    }  # fmt: skip
    assert list(monday.hard_sets) == [
        "forearms", "glutes", "hamstrings", "lats", "obliques", "biceps",
    ]  # fmt: skip
    # 4 s of lowering is slow; the row is no main lift and leaves 2; the walk is neither.
    assert monday.joints == {Joint.HIP: ("deadlift",), Joint.LOWER_BACK: ("deadlift",)}
    assert monday.grip_slots == 1
    # Deadlift 3 × 25 s × 2, row 2 × 24 s × 2, walk 2 × 30 s × 3.
    assert monday.grip_seconds == 150 + 96 + 180
    assert monday.hours_to_next == 5 * 24
    assert (saturday.optional, saturday.joints) == (
        True, {Joint.ANKLE: ("jump",), Joint.KNEE: ("jump",)},
    )  # fmt: skip
    # To the Monday of week 2.
    assert saturday.hours_to_next == 2 * 24
    assert (loose.day, loose.hours_to_next, loose.hard_sets) == ("", None, {})


def test_the_last_day_has_no_next(program: tuple[Any, WorkedProgram]) -> None:
    (monday,) = week_stress(*program, 2)
    assert monday.hours_to_next is None
    assert monday.joints == {}


def test_no_such_week(program: tuple[Any, WorkedProgram]) -> None:
    with pytest.raises(KeyError):
        week_stress(*program, 3)


def test_the_days_add_up_to_the_week(program: tuple[Any, WorkedProgram]) -> None:
    days = week_stress(*program, 1)
    whole = program[1].week(1).volume.hard_sets
    for muscle, sets in whole.items():
        assert sum(day.hard_sets.get(muscle, 0) for day in days) == pytest.approx(sets)


HELD = {"kind": "plate", "limit": "20 kg"}
STACK = {"kind": "stack", "stack": "cable"}


@pytest.mark.parametrize(
    ("expected", "data"),
    [
        (3, WALK),
        (3, exercise(load=DUMBBELLS, pattern="carry")),
        (3, exercise(load=HELD, pattern="isolated", muscles={"direct": ["forearms"]})),
        (2, DEADLIFT),
        (2, exercise(load=BAR, pattern="hinge", muscles={"direct": ["hamstrings"]})),
        (2, ROW),
        (2, exercise(load=EFFORT, pattern="trunk", hazards=["hanging"])),
        (1, exercise(load=BAR, pattern="vertical-push", muscles={"direct": ["shoulders"]})),
        (1, exercise(load=DUMBBELLS, pattern="single-leg")),
        (1, exercise(load=STACK, pattern="trunk", muscles={"direct": ["obliques"]})),
        (0, exercise(load=BAR, pattern="squat", hazards=["bar-on-back"])),
        (0, exercise(load=EFFORT, pattern="hinge", muscles={"direct": ["hamstrings"]})),
        (0, JUMP),
    ],
)
def test_grip(expected: int, data: dict[str, Any]) -> None:
    assert grip_class(Exercise.model_validate(data)) == expected


@pytest.mark.parametrize("data", [ROW, JUMP, WALK, DEADLIFT, exercise(load=HELD, pattern="trunk")])
def test_forearms_never_make_the_grip_weaker(data: dict[str, Any]) -> None:
    plain = Exercise.model_validate(data | {"muscles": {"direct": ["quads"]}})
    helping = plain.muscles.model_copy(update={"helping": [Muscle.FOREARMS]})
    direct = plain.muscles.model_copy(update={"direct": [Muscle.FOREARMS]})
    classes = [
        grip_class(plain.model_copy(update={"muscles": muscles}))
        for muscles in (plain.muscles, helping, direct)
    ]
    assert classes == sorted(classes)
    assert classes[-1] == 3


@pytest.mark.parametrize(
    ("expected", "data"),
    [
        ("knee hip lower-back", exercise(pattern="squat", hazards=["bar-on-back"])),
        ("knee hip", exercise(load=EFFORT, pattern="squat")),
        ("hip lower-back", exercise(load=BAR, pattern="hinge")),
        ("hip", exercise(load=EFFORT, pattern="hinge")),
        ("ankle knee", JUMP),
        ("ankle knee hip", exercise(load=EFFORT, pattern="single-leg", hazards=["impact"])),
        ("shoulder", exercise(pattern="vertical-push", hazards=["overhead"])),
        ("elbow", ROW),
        (
            "lower-back",
            exercise(load=HELD, pattern="trunk", muscles={"direct": ["back-extensors"]}),
        ),
        ("", exercise(load=EFFORT, pattern="trunk", muscles={"direct": ["abs", "obliques"]})),
        ("ankle", exercise(load=EFFORT, pattern="isolated", muscles={"direct": ["calves"]})),
        ("wrist", WALK),
    ],
)
def test_joints(expected: str, data: dict[str, Any]) -> None:
    found = joints_of(Exercise.model_validate(data))
    assert " ".join(joint.value.replace(" ", "-") for joint in found) == expected


def test_days_are_frozen(program: tuple[Any, WorkedProgram]) -> None:
    day = week_stress(*program, 1)[0]
    with pytest.raises(dataclasses.FrozenInstanceError):
        day.grip_slots = 0  # type: ignore[misc]
