"""A dose put together from week, slot and exercise."""

import re
from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from strength_handbook.model.count import Count, parse_count
from strength_handbook.model.dose import (
    Clock,
    ClusterSet,
    Distance,
    Dose,
    DosePart,
    Hold,
    IncompleteDoseError,
    Reps,
    complete,
)
from strength_handbook.model.lighter import lighter
from strength_handbook.model.load import PercentOfBase
from strength_handbook.model.tempo import Tempo


def part(**keys: Any) -> DosePart:
    return DosePart.model_validate({key.replace("_", "-"): value for key, value in keys.items()})


WEEK = part(reps=3, load="75 %", rest="2:00")
SLOT = part(sets=4, reps=5, load="70 %", tempo="3-1-X-0", rir=2, rest="2:30", note="Quietly.")
EXERCISE = part(sets=2, reps=8, tempo="2-0-1-0", each_side=True, top="5RM")


def test_the_week_comes_before_the_slot_and_the_slot_before_the_exercise() -> None:
    dose = complete(WEEK, SLOT, EXERCISE)
    assert dose.work == Reps(Count(3, 3))
    assert dose.sets == Count(4, 4)
    assert dose.load == PercentOfBase(75)
    assert dose.tempo == Tempo(3, 1, None, 0)
    assert dose.rest == 120
    assert dose.reserve == 2
    assert dose.top == 5
    assert dose.each_side is True
    assert dose.said.note == "Quietly."


def test_what_nobody_says_stays_open() -> None:
    dose = complete(part(sets=3, reps=5))
    assert dose == Dose(Count(3, 3), Reps(Count(5, 5)), said=part(sets=3, reps=5))


@pytest.mark.parametrize(
    ("week", "work"),
    [
        ({"hold": "30 s"}, Hold(30)),
        ({"time": "40 s"}, Clock(40)),
        ({"distance": "20 m"}, Distance(20)),
    ],
)
def test_another_kind_of_work_replaces_the_repetitions(
    week: Mapping[str, Any], work: object
) -> None:
    dose = complete(part(**week), SLOT, EXERCISE)
    assert dose.work == work
    assert dose.reps is None


def test_a_cluster_has_the_repetitions_of_its_parts() -> None:
    dose = complete(part(cluster={"parts": [3, 2, 1], "pause": "20 s"}), SLOT)
    assert isinstance(dose.work, ClusterSet)
    assert dose.reps == Count(6, 6)


@pytest.mark.parametrize(
    ("week", "rest", "every"),
    [({"every": "60 s"}, None, 60), ({"rest": "1:00"}, 60, None), ({}, 150, None)],
)
def test_rest_and_interval_replace_each_other(
    week: Mapping[str, Any], rest: float | None, every: float | None
) -> None:
    dose = complete(part(**week), SLOT)
    assert (dose.rest, dose.every) == (rest, every)


@pytest.mark.parametrize(("week", "reserve"), [({"rpe": 7.5}, 2.5), ({"rir": 4}, 4), ({}, 2)])
def test_effort_in_either_way_replaces_the_other(week: Mapping[str, Any], reserve: float) -> None:
    assert complete(part(**week), SLOT).reserve == reserve


def test_a_week_takes_back_the_top_set_and_one_sided_work() -> None:
    dose = complete(part(top="none", each_side=False), SLOT, EXERCISE)
    assert dose.top is None
    assert dose.each_side is False


def test_an_exercise_for_each_side_needs_no_word_in_the_dose() -> None:
    assert complete(SLOT, each_side=True).each_side is True
    assert complete(part(each_side=False), SLOT, each_side=True).each_side is False


@pytest.mark.parametrize(
    ("keys", "missing"),
    [
        ({}, ["sets", "reps (or hold, distance or time)"]),
        ({"sets": 3}, ["reps (or hold, distance or time)"]),
        ({"reps": 5}, ["sets"]),
    ],
)
def test_what_is_missing_is_named(keys: Mapping[str, Any], missing: list[str]) -> None:
    with pytest.raises(IncompleteDoseError) as caught:
        complete(part(**keys), part(rest="1:00"))
    assert caught.value.missing == missing


FIELDS: Mapping[str, st.SearchStrategy[Any]] = {
    "sets": st.integers(1, 50),
    "rir": st.integers(0, 9),
    "rest": st.integers(0, 1800).map("{} s".format),
    "load": st.sampled_from(("70 %", "60 kg", "BW", "8RM")),
    "tempo": st.sampled_from(("3-0-1-0", "2-0-X-0")),
    "each-side": st.booleans(),
    "reps": st.integers(1, 200),
}
PARTS = st.fixed_dictionaries({}, optional=dict(FIELDS)).map(DosePart.model_validate)


@given(PARTS, PARTS, PARTS)
def test_laying_parts_on_each_other_is_associative(
    one: DosePart, two: DosePart, three: DosePart
) -> None:
    base = part(sets=1, reps=1)
    below = complete(two, three, base).said
    assert complete(one, two, three, base) == complete(one, below)


@given(PARTS)
def test_an_empty_part_changes_nothing(one: DosePart) -> None:
    base = part(sets=1, reps=1)
    assert complete(DosePart(), one, base) == complete(one, base) == complete(one, DosePart(), base)


@pytest.mark.parametrize(
    "keys",
    [
        {"reps": 5, "hold": "30 s"},
        {"time": "30 s", "distance": "30 m"},
        {"rir": 2, "rpe": 8},
        {"rest": "60 s", "every": "60 s"},
        {"last-set": {"floor": 5, "cap": 4, "rir": 1}},
        {"sets": 51},
        {"reps": 201},
        {"hold": "41 min"},
        {"time": "4.1 h"},
        {"rate": 4},
        {"rate": "300 spm"},
        {"talk": "sing"},
        {"distance": "101 km"},
        {"rest": "31 min"},
        {"top": "21RM"},
    ],
)
def test_a_part_refuses(keys: Mapping[str, Any]) -> None:
    with pytest.raises(ValidationError):
        DosePart.model_validate(keys)


@pytest.mark.parametrize(("text", "top"), [("5RM", "5RM"), ("5 rm", "5RM"), ("None", "none")])
def test_a_top_set_in_other_spellings(text: str, top: str) -> None:
    assert part(top=text).top == top


@given(st.integers(1, 200), st.integers(-1, 199))
def test_a_count_is_read_as_it_is_written(low: int, more: int) -> None:
    count = Count(low, low, open=True) if more < 0 else Count(low, min(200, low + more))
    assert parse_count(count.text) == count
    assert count.low <= count.middle <= count.high


@pytest.mark.parametrize("text", ["0", "-5", "5.5", "five", "12-8", "201", "5-", "5++", "1e3", ""])
def test_what_is_no_count(text: str) -> None:
    with pytest.raises(ValueError, match=f"'{re.escape(text)}'"):
        parse_count(text)


def test_a_deload_keeps_a_share_of_everything_and_never_no_set() -> None:
    dose = complete(part(last_set={"floor": 5, "cap": 9, "rir": 1}), SLOT)
    less = lighter(dose, keep_sets=60, keep_load=90, keep_hold=50)
    assert less.sets == Count(2, 2)
    assert less.load == PercentOfBase(63)
    assert less.last_set is None
    assert lighter(dose, keep_sets=10, keep_load=90, keep_hold=50).sets == Count(1, 1)
    held = lighter(complete(part(hold="32 s"), SLOT), keep_sets=60, keep_load=90, keep_hold=50)
    assert held.work == Hold(15)
