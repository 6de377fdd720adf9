"""Doors worked out: dose and load of every alternative, for the week and the lifter."""

from pathlib import Path
from typing import Any

import pytest

from books import BAR, EFFORT, KG_ROOM, base, exercise, slot, slots_of, work
from demo import PROGRAMS
from strength_handbook.dose.printing import notation
from strength_handbook.plan.doors import DoorPlan, slot_doors
from strength_handbook.plan.work_out import work_out
from strength_handbook.reading.book import read_book

BELT = {"kind": "body-weight", "carrier": "belt"}
CABLE = {"kind": "stack", "stack": "cable"}
ROOM: dict[str, Any] = {
    **KG_ROOM,
    "carriers": {"belt": {"name": "belt"}},
    "stacks": {
        "cable": {
            "name": "cable", "pins": {"from": "5 kg", "to": "90 kg", "by": "5 kg"},
            "add-on": "2.5 kg",
        }
    },
    "machines": {"press": {"name": "press", "to": 400, "by": 2}},
}  # fmt: skip
STAY = {"how": "As it is."}


def door(
    root: Path,
    dose: Any,
    easier: dict[str, Any],
    *,
    load: Any = BAR,
    other: dict[str, Any] | None = None,
    week: int = 1,
    **more: Any,
) -> DoorPlan:
    """The easier door of a lift whose best is 100 kg, done by somebody of 72 kg."""
    doors = dict.fromkeys(("harder", "hurts", "taken", "no-partner"), STAY)
    lift = exercise(load=load, doors=doors | {"easier": {"how": "Less."} | easier})
    kind = "system" if load == BELT else "1RM"
    worked = work(
        root,
        room=ROOM,
        exercises={"lift": lift, "other": exercise("Other") | (other or {})},
        sessions={"a": [slot("A", "lift", dose, base="best", **more)]},
        bases={"best": base(kind=kind), "other-best": base("other")},
        lifters={"P1": {"bodyweight": "72 kg", "bases": {"best": "100 kg", "other-best": "80 kg"}}},
    )
    bases = worked.programs[0].program.bases
    today = slots_of(worked, week=week)["A"]
    found = slot_doors(worked.book, bases, worked.scales, today)
    assert [one.key for one in found] == ["easier", "harder", "hurts", "taken", "no-partner"]
    return found[0]


def kg(plan: DoorPlan) -> float | None:
    grams = plan.loads["P1"].actual_g
    return None if grams is None else grams / 1000


def dose_of(plan: DoorPlan) -> str:
    assert plan.dose is not None
    return notation(plan.dose).replace("\u00a0", " ")


def test_a_share_of_todays_load(tmp_path: Path) -> None:
    plan = door(tmp_path, "4x5 @ 78 %, tempo 4-0-X-0, RIR 2", {"load": "90 %"})
    # Of the 78 kg that are planned, not of the 77.5 that can be put on: 70.2.
    assert plan.loads["P1"].planned_g == 70_200
    assert kg(plan) == 70
    assert dose_of(plan) == "4 × 5 · 4-0-X-0 · RIR 2"
    assert not plan.changed


def test_plates_for_the_share(tmp_path: Path) -> None:
    step = door(tmp_path, "4x5 @ 60 kg", {"load": "90 %"}).loads["P1"].step
    assert step is not None
    assert (step.grams, step.parts) == (52_500, (15_000, 1_250))  # 54 kg


def test_a_share_of_body_and_plates(tmp_path: Path) -> None:
    plan = door(tmp_path, "3x5 @ BW+10 kg", {"load": "90 %"}, load=BELT)
    # Nine tenths of 72 + 10 are 73.8 kg, 1.8 on the belt. Nine tenths of the belt would be 9.
    assert plan.loads["P1"].planned_g == pytest.approx(1_800)
    assert kg(plan) == 1.25


def test_a_share_of_body_less_help(tmp_path: Path) -> None:
    plan = door(tmp_path, "3x5 @ 70 % system", {"load": "90 %"}, load=BELT)
    # 63 of 72 kg: nine kilograms of help.
    assert kg(plan) == -9
    percent = plan.loads["P1"].actual_percent
    assert percent == pytest.approx(63)


def test_the_doors_dose_over_todays(tmp_path: Path) -> None:
    plan = door(tmp_path, "4x5 @ 78 %, tempo 4-0-X-0, RIR 2", {"dose": "tempo 2-2-1-0, rest 1:00"})
    assert dose_of(plan) == "4 × 5 · 2-2-1-0 · RIR 2 · rest 1:00"
    # Nobody said what the pause does to the load.
    assert plan.loads == {}
    assert plan.changed


@pytest.mark.parametrize(
    ("today", "expected"),
    [("ISO 2x30 s", "2 × 30 s hold"), ("3x40 s", "3 × 40 s"), ("4x5", "4 × 5 · 5-1-1-0")],
)
def test_a_tempo_is_no_part_of_what_is_held_or_timed(
    tmp_path: Path, today: str, expected: str
) -> None:
    plan = door(tmp_path / "same", today, {"dose": "tempo 5-1-1-0"})
    assert dose_of(plan) == expected
    other = {"load": EFFORT, "dose": "rest 1:00"}
    plan = door(tmp_path / "b", today, {"to": "other", "dose": "tempo 5-1-1-0"}, other=other)
    assert dose_of(plan) == f"{expected} · rest 1:00"


def test_nothing_harder_than_as_many_as_possible_until_the_time_is_up(tmp_path: Path) -> None:
    doors = dict.fromkeys(("easier", "hurts", "taken", "no-partner"), STAY)
    doors["harder"] = {"how": "Slower.", "dose": "tempo 5-1-1-0"}
    worked = work(
        tmp_path,
        exercises={"lift": exercise(load=EFFORT, doors=doors)},
        sessions={"a": [slot("A", "lift", "30 s AMRAP")]},
    )
    found = slot_doors(worked.book, {}, worked.scales, slots_of(worked)["A"])
    harder = next(one for one in found if one.key == "harder")
    assert harder.dose is None
    assert harder.how == "More good ones in the same time are the harder version."


def test_a_hold_takes_the_place_of_repetitions(tmp_path: Path) -> None:
    plan = door(tmp_path, "4x5, RIR 2", {"dose": {"hold": "10 s", "rpe": 5}})
    assert dose_of(plan) == "4 × 10 s hold · effort 5"


def test_other_sets_take_the_place_of_the_top(tmp_path: Path) -> None:
    plan = door(tmp_path, "ramp to 5RM, 2x5 @ 90 % of top", {"dose": "3x8", "load": "80 %"})
    # A five goes with 87 %; 80 of 90 of 87 % are 62.6 kg.
    assert dose_of(plan) == "3 × 8"
    assert kg(plan) == 62.5


def test_fewer_sets_take_the_place_of_the_top_too(tmp_path: Path) -> None:
    plan = door(tmp_path, "ramp to 5RM, 3x5 @ 90 % of top", {"dose": "sets 2", "load": "80 %"})
    assert dose_of(plan) == "2 × 5"


def test_another_exercise_with_its_own_percentage(tmp_path: Path) -> None:
    easier = {"to": "other", "dose": "3x6 @ 60 %, RIR 4"}
    plan = door(tmp_path, "4x5 @ 78 %", easier, other={"load": {**BAR, "base": "other-best"}})
    assert (plan.to, plan.exercise.name) == ("other", "Other")
    assert kg(plan) == 47.5  # 48 of 80
    assert not plan.look_up


def test_another_exercise_by_effort(tmp_path: Path) -> None:
    easier = {"to": "other", "dose": "3x6, RIR 4"}
    plan = door(tmp_path, "4x5 @ 78 %", easier, other={"load": {**BAR, "base": "other-best"}})
    # Six with four left are a load for ten, 75 % (Sheppard and Triplett 2016) of 80 kg.
    assert plan.estimate
    assert kg(plan) == 60


def test_another_exercise_without_a_percentage_has_its_own_table(tmp_path: Path) -> None:
    start = {"at": "75 kg", "shares": {"new": "20 %"}}
    other = {"load": {**BAR, "start": start}, "dose": "rest 1:30"}
    plan = door(tmp_path, "4x5 @ 78 %", {"to": "other", "dose": "3x8, RIR 3"}, other=other)
    assert dose_of(plan) == "3 × 8 · RIR 3 · rest 1:30"
    assert plan.look_up
    assert plan.loads == {}


def test_nothing_to_look_up_where_effort_decides(tmp_path: Path) -> None:
    easier = {"to": "other", "dose": "3x8, RIR 3"}
    assert not door(tmp_path, "4x5 @ 78 %", easier, other={"load": EFFORT}).look_up


def test_another_exercise_without_a_dose_takes_over_the_sets(tmp_path: Path) -> None:
    other = {"dose": "rest 1:30", "sides": "each", "load": EFFORT}
    plan = door(tmp_path, "4x5 @ 78 %, RIR 2, rest 3:00", {"to": "other"}, other=other)
    assert dose_of(plan) == "4 × 5 each side · RIR 2 · rest 1:30"


def test_a_load_that_carries_over_to_another_lift(tmp_path: Path) -> None:
    easier = {"to": "other", "load": "60 %", "dose": "3x8"}
    plan = door(tmp_path, "3x5 @ BW+10 kg", easier, load=BELT, other={"load": CABLE})
    # Three fifths of 82 kg are 49.2: pin 45 and the small weight.
    assert kg(plan) == 47.5


def test_units_of_a_machine(tmp_path: Path) -> None:
    machine = {"kind": "machine", "machine": "press"}
    plan = door(tmp_path, "3x10 @ 120 units", {"load": "80 %"}, load=machine)
    assert dose_of(plan) == "3 × 10 @ 96 units"


def test_a_deload_is_what_a_door_starts_from(tmp_path: Path) -> None:
    weeks = {"1": "4x5 @ 80 %, RIR 2", "2": "deload of 1, sets 50 %, load 85 %"}
    plan = door(tmp_path, weeks, {"load": "90 %"}, week=2)
    assert plan.dose is not None
    assert plan.dose.sets.high == 2
    assert kg(plan) == 60  # 90 of 85 of 80 %: 61.2


def test_a_slots_own_words_replace_the_door(tmp_path: Path) -> None:
    own = {"easier": "Sit down and rest."}
    plan = door(tmp_path, "4x5 @ 78 %", {"load": "90 %", "to": "other"}, doors=own)
    assert (plan.how, plan.to, plan.dose, plan.loads) == ("Sit down and rest.", None, None, {})


def test_every_door_of_the_demo_says_what_to_do() -> None:
    book = read_book(PROGRAMS).book
    assert book is not None
    worked = work_out(book)
    for key, uses in worked.uses.items():
        for use in uses:
            if use.slot.dose.said.test is not None:
                continue  # nothing takes the place of a test
            bases = use.program.program.bases
            for plan in slot_doors(book, bases, worked.scales, use.slot):
                if use.slot.easy and plan.key == "harder":
                    continue  # an easy week has none
                assert plan.dose is not None or plan.key == "stop", (key, plan.key)
                for load in plan.loads.values():
                    # Where nothing can be put on, it is because the bar alone is heavier.
                    lightest = plan.scale.lightest_g if plan.scale else 0
                    assert load.actual_g is not None or load.planned_g < lightest, (key, plan.key)


def test_a_test_has_no_doors_with_loads(tmp_path: Path) -> None:
    """A share of a test is no test, and four sets on another machine are none either."""
    doors = {name: {"how": "Less.", "load": "90 %"} for name in ("easier", "harder", "taken")}
    doors |= {
        "no-partner": {"how": "As it is."},
        "hurts": {"to": "other", "how": "Gently.", "dose": "2x5"},
    }
    worked = work(
        tmp_path,
        room=ROOM,
        exercises={"lift": exercise(doors=doors), "other": exercise("Other")},
        sessions={"a": [slot("A", "lift", "test 3RM in 4 attempts", base="best")]},
        bases={"best": base()},
        lifters={"P1": {"bodyweight": "72 kg", "bases": {"best": "100 kg"}}},
    )
    today = slots_of(worked)["A"]
    found = slot_doors(worked.book, worked.programs[0].program.bases, worked.scales, today)
    assert [one.key for one in found] == ["easier", "harder", "hurts", "taken", "no-partner"]
    assert all(one.share is None and not one.loads for one in found)
    assert [one.key for one in found if one.dose is not None] == ["hurts"]
    # Never test alone: the textbook has a spotter at every test (Sheppard and Triplett 2016).
    assert "alone" in found[4].how


PARTS = {
    "stop": "A sudden pull? Stop for today.",
    "knee": {"how": "Less deep.", "load": "50 %"},
    "back": {"to": "other", "how": "The other one.", "dose": "2x8"},
}


def pain(root: Path, hurts: dict[str, Any], **more: Any) -> list[DoorPlan]:
    """What a slot of 4x5 at 70 % has for pain, and what is written for it in the slot itself."""
    doors = dict.fromkeys(("easier", "harder", "taken", "no-partner"), STAY) | {"hurts": hurts}
    worked = work(
        root,
        room=ROOM,
        exercises={"lift": exercise(load=BAR, doors=doors), "other": exercise("Other")},
        sessions={"a": [slot("A", "lift", "4x5 @ 70 %", base="best", **more)]},
        bases={"best": base()},
        lifters={"P1": {"bodyweight": "72 kg", "bases": {"best": "100 kg"}}},
    )
    bases = worked.programs[0].program.bases
    found = slot_doors(worked.book, bases, worked.scales, slots_of(worked)["A"])
    assert [one.key for one in found[:2]] == ["easier", "harder"]
    assert [one.key for one in found[-2:]] == ["taken", "no-partner"]
    return list(found[2:-2])


def test_parts_of_the_body_have_doors_of_their_own(tmp_path: Path) -> None:
    stop, back, knee = pain(tmp_path, PARTS)
    assert (stop.key, stop.name, stop.how) == (
        "stop", "Stop for today", "A sudden pull? Stop for today.",
    )  # fmt: skip
    assert stop.dose is None
    assert (back.key, back.name, back.to) == ("hurts-back", "It hurts: back", "other")
    assert knee.loads["P1"].planned_g == pytest.approx(35_000)


def test_a_door_for_everything_else_stands_before_the_parts(tmp_path: Path) -> None:
    found = pain(tmp_path, PARTS | {"how": "A light bar.", "load": "40 %"})
    assert [one.key for one in found] == ["stop", "hurts", "hurts-back", "hurts-knee"]
    assert found[1].loads["P1"].planned_g == pytest.approx(28_000)


def test_words_of_the_slot_take_their_place_but_not_that_of_the_stop(tmp_path: Path) -> None:
    found = pain(tmp_path, PARTS, doors={"hurts": "Sit down and tell the coach."})
    assert [one.key for one in found] == ["stop", "hurts"]
    assert found[1].how == "Sit down and tell the coach."


@pytest.mark.parametrize("to", [{}, {"to": "other"}])
def test_a_hold_has_no_tempo_of_repetitions(tmp_path: Path, to: dict[str, str]) -> None:
    dose = "3x8 @ 60 %, tempo 3-0-1-0, pause 2 s at the knee"
    plan = door(tmp_path, dose, {"dose": "ISO 2x15 s, RPE 6"} | to)
    assert plan.dose is not None
    assert plan.dose.tempo is None
    assert "3-0-1-0" not in notation(plan.dose)
    assert "pause" not in notation(plan.dose)


def test_other_repetitions_keep_their_tempo(tmp_path: Path) -> None:
    plan = door(tmp_path, "3x8 @ 60 %, tempo 3-0-1-0", {"dose": "2x6"})
    assert plan.dose is not None
    assert "3-0-1-0" in notation(plan.dose)
