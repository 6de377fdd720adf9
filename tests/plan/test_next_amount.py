"""Rules that ask for more of the same: longer, further, more of it, or faster."""

from pathlib import Path
from typing import Any

import pytest

from books import EFFORT, LB_ROOM, exercise, slot, slots_of, work
from strength_handbook.model.printed import split
from strength_handbook.plan.aims import aim_strip
from strength_handbook.plan.next_written import what_follows
from strength_handbook.plan.progress import NextTarget, next_target
from strength_handbook.plan.worked import WorkedSlot

EXERCISES = {
    "lift": exercise("Lift", EFFORT),
    "row": exercise("Row", {"kind": "endurance", "of": "row"}, pattern="endurance"),
    "run": exercise("Run", {"kind": "endurance", "of": "run", "per": "1 mile"}),
    "ride": exercise("Ride", {"kind": "endurance", "of": "ride"}),
}
BESTS: dict[str, Any] = {
    "row-2k": {"name": "2 km row", "exercise": "row", "over": "2 km",
               "from": "6:20", "to": "9:20", "by": "10 s"},
    "ride-20": {"name": "20 min ride", "exercise": "ride", "over": "20 min",
                "from": "100 W", "to": "400 W", "by": "10 W"},
}  # fmt: skip
NONE_SLOWER = "Every piece done, the last no slower than the first"


def target(
    root: Path, exercise_id: str, rule: str, *doses: str, base: str | None = None
) -> tuple[WorkedSlot, NextTarget]:
    weeks = {str(number): dose for number, dose in enumerate(doses, start=1)}
    own = {"progress": rule} | ({"base": base} if base else {})
    found = work(
        root, room=LB_ROOM, exercises=EXERCISES, bests=BESTS,
        sessions={"a": [slot("A", exercise_id, weeks, **own)]},
    )  # fmt: skip
    today, program = slots_of(found)["A"], found.programs[0]
    after = what_follows(program, program.weeks[0].sessions[0], today)
    goal = next_target(today, after=after, units="lb")
    assert goal is not None
    return today, goal


@pytest.mark.parametrize(
    ("exercise_id", "rule", "dose", "when", "then"),
    [
        ("lift", "reps +1 to 12", "3x8", "Every set done", "9 repetitions."),
        ("lift", "reps +2 to 12", "3x8-11", "Every set done", "10–12 repetitions."),
        (
            "lift", "reps +1 to 12", "3x12", "Every set done",
            "12 repetitions are enough: more load, and begin lower.",
        ),
        ("lift", "reps +1", "8, 6, 4", "Every set done", "1 repetition more."),
        (
            "lift", "sets +1", "3x8, RIR 2", "Every set done, at or under the planned effort",
            "4 sets.",
        ),
        (
            "lift", "time +10 s to 60 s", "3x55 s", "Every set done to the end of its time",
            "1 min.",
        ),
        ("row", "sets +1 to 8", "6x500 m, rest 2:00", NONE_SLOWER, "7 pieces."),
        (
            "row", "sets +1 to 6", "6x500 m, rest 2:00", NONE_SLOWER,
            "6 pieces are enough: go faster, and begin with fewer.",
        ),
        ("row", "distance +1 km to 6 km", "5 km",
         "Done, the end no slower than the beginning", "6 km."),
        ("run", "distance +0.5 mi to 5 mi", "3 mi",
         "Done, the end no slower than the beginning", "3.5 mi."),
        (
            "ride", "time +5 min to 60 min", "1x40 min, can talk",
            "Done, the end no slower than the beginning", "45 min.",
        ),
        (
            "ride", "time +5 min to 40 min", "1x40 min, can talk",
            "Done, the end no slower than the beginning",
            "40 min is enough: go faster, and begin shorter.",
        ),
        (
            "run", "pace -5 s", "3x1 mi, RPE 8, rest 3:00",
            "Every piece at its pace, the last no slower than the first",
            "5 s faster for 1 mile.",
        ),
    ],
)  # fmt: skip
def test_more(exercise_id: str, rule: str, dose: str, when: str, then: str, tmp_path: Path) -> None:
    _, goal = target(tmp_path, exercise_id, rule, dose)
    assert (goal.outcomes[0].when, goal.outcomes[0].then) == (when, then)
    assert goal.outcomes[1].then == "The same again."


@pytest.mark.parametrize(
    ("exercise_id", "rule", "base", "doses", "then", "best", "next_"),
    [
        # 8:00 over 2 km are 2:00 for 500 m; 8 s more, less 1 s.
        ("row", "pace -1 s", "row-2k", ("6x500 m @ pace +8 s, rest 2:00",), "Pace +7 s.",
         "8:00", "2:07"),
        ("row", "pace -0.5 s", "row-2k", ("6x500 m @ pace, rest 2:00",), "Pace −0.5 s.",
         "8:00", "1:59.5"),
        ("row", "pace -1 s", "row-2k", ("6x500 m @ pace +5-8 s, rest 2:00",), "Pace +4–7 s.",
         "8:00", "2:04–2:07"),
        # The next week has the last word.
        ("row", "pace -1 s", "row-2k",
         ("6x500 m @ pace +8 s, rest 2:00", "6x500 m @ pace +6 s, rest 2:00"),
         "Pace +6 s, as the next week is written.", "8:00", "2:06"),
        # 82 % of the speed of 2:00: 120 ÷ 0.82 s.
        ("row", "speed +2 %", "row-2k", ("1x30 min @ 80 %",), "82 %.", "8:00", "2:26.3"),
        ("ride", "speed +2 %", "ride-20", ("1x30 min @ 80 %",), "82 %.", "250 W", "205"),
    ],
)  # fmt: skip
def test_a_pace_that_comes_next(
    exercise_id: str, rule: str, base: str, doses: tuple[str, ...], then: str, best: str,
    next_: str, tmp_path: Path,
) -> None:  # fmt: skip
    today, goal = target(tmp_path, exercise_id, rule, *doses, base=base)
    first = goal.outcomes[0]
    assert first.then == then
    assert first.dose is not None
    strip = aim_strip(today.best, first.dose)
    assert strip is not None
    aim = {one.label: found for one, found in strip.rows}[best]
    assert (split(aim.pace_s) if aim.pace_s else f"{aim.watts:g}") == next_


def test_the_weeks_own_number_comes_before_the_rules(tmp_path: Path) -> None:
    doses = ("3x8", "3x10")
    _, goal = target(tmp_path, "lift", "reps +1 to 12", *doses)
    assert goal.outcomes[0].then == "10 repetitions, as the next week is written."
