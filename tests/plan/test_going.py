"""Rowing, running and the like in a small club in pounds: minutes, sums and what is asked for."""

from pathlib import Path
from typing import Any

import pytest
from pydantic import ValidationError

from books import LB_ROOM, exercise, slot, work
from strength_handbook.floor.floor import session_clock, session_floor
from strength_handbook.model.loading import Endurance
from strength_handbook.plan.carries import carry_plan
from strength_handbook.plan.worked import Worked, WorkedSession
from strength_handbook.workings.minutes import minutes_working

ROW = {"kind": "endurance", "of": "row", "typical": "2:00-2:40"}
RUN = {"kind": "endurance", "of": "run", "per": "1 mile", "typical": "9:00"}
STEP = {"kind": "endurance", "of": "step"}
EXERCISES = {
    "rower": exercise("Rowing machine", ROW, pattern="endurance"),
    "run": exercise("Run", RUN, pattern="endurance", hazards=["impact"]),
    "stair": exercise("Stair climber", STEP, pattern="endurance"),
}


def session(
    root: Path, exercise_id: str, dose: str, **program: Any
) -> tuple[Worked, WorkedSession]:
    sessions = {"a": [slot("A", exercise_id, dose)]}
    worked = work(root, exercises=EXERCISES, sessions=sessions, room=LB_ROOM, **program)
    return worked, worked.programs[0].weeks[0].sessions[0]


@pytest.mark.parametrize(
    ("exercise_id", "dose", "minutes"),
    [
        # 500 m take 140 s, the middle: 6 × 140 s and 5 × 120 s of rest.
        ("rower", "6x500 m, RPE 8, rest 2:00", (6 * 140 + 5 * 120) / 60),
        # 5 km are ten times 500 m.
        ("rower", "5 km, can talk", 10 * 140 / 60),
        ("rower", "8x40 s, RPE 9, rest 20 s", (8 * 40 + 7 * 20) / 60),
        ("run", "3 miles, can talk", 3 * 9),
        # A mile is 1.609344 km by definition.
        ("run", "5 km, can talk", 9 * 5 / 1.609344),
        ("stair", "20-30 min, RPE 5", 25),
        ("stair", "1x150 min, can talk", 150),
    ],
)
def test_minutes_are_work_and_rest(
    exercise_id: str, dose: str, minutes: float, tmp_path: Path
) -> None:
    worked, one = session(tmp_path, exercise_id, dose)
    assert one.minutes.total == pytest.approx(minutes)
    lines = minutes_working(worked.book, worked.programs[0].program, one).lines
    assert lines


def test_the_working_of_a_distance_says_the_pace_and_its_spread(tmp_path: Path) -> None:
    worked, one = session(tmp_path, "rower", "5 km, can talk")
    working = minutes_working(worked.book, worked.programs[0].program, one)
    texts = [line.text.replace("\u00a0", " ") for line in working.lines]
    assert "A: 5000 m at 2:00–2:40 for 500 m, at its middle = 1400 s a set" in texts


@pytest.mark.parametrize("dose", ["6x500 m, RPE 9, rest 60 s", "6x40 s, RPE 9, rest 60 s"])
def test_no_muscle_counts_a_set_and_nothing_is_carried_or_lands(dose: str, tmp_path: Path) -> None:
    for exercise_id in ("rower", "run"):
        worked, one = session(tmp_path / exercise_id, exercise_id, dose)
        (found,) = one.slots
        assert found.volume.hard_sets == {}
        assert found.volume.contacts == 0
        assert found.loads == {}
        assert carry_plan(worked.book, found) is None


def test_each_of_those_who_share_a_machine_waits_for_the_other(tmp_path: Path) -> None:
    worked, one = session(
        tmp_path, "rower", "6x500 m, RPE 8, rest 2:00", group={"sharing": 2, "members": 2}
    )
    # 140 s of work and 15 s to change places, twice, are more than 140 s and 120 s of rest.
    assert one.minutes.total == pytest.approx((5 * 2 * 155 + 140 + 155) / 60)
    clock = session_clock(worked.book, worked.programs[0].program, one)
    assert session_floor(clock).shortages == ()


def test_more_members_than_machines_are_too_many(tmp_path: Path) -> None:
    worked, one = session(tmp_path, "rower", "5 km, can talk", group={"members": 21})
    clock = session_clock(worked.book, worked.programs[0].program, one)
    (short,) = session_floor(clock).shortages
    assert (short.thing, short.needed, short.owned) == ("floor", 21, 20)


@pytest.mark.parametrize(
    ("load", "per", "pace"),
    [
        ({"of": "row"}, "500 m", (120, 160)),
        ({"of": "run", "per": "1 mile"}, "1 mile", (459, 652)),
        ({"of": "swim"}, "100 m", (105, 165)),
    ],
)
def test_what_is_left_out_is_usual(load: Any, per: str, pace: tuple[float, float]) -> None:
    going = Endurance.model_validate({"kind": "endurance", **load}).going
    assert (going.per, (going.pace.low, going.pace.high)) == (per, pace)  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    "load",
    [
        {"of": "fly"},
        {"of": "step", "per": "1 km"},
        {"of": "step", "typical": "2:00"},
        {"of": "row", "typical": "10 s"},
        {"of": "row", "typical": "59:00"},
        {"of": "row", "typical": "2:10/500 m"},
        {"of": "row", "per": "2 km"},
    ],
)
def test_what_nobody_does_is_refused(load: Any) -> None:
    with pytest.raises(ValidationError):
        Endurance.model_validate({"kind": "endurance", **load})
