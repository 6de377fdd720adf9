"""Warm-up steps: plates only go on, and a member without a profile can read them off."""

from pathlib import Path
from typing import Any

import pytest

from books import BAR, KG_ROOM, base, exercise, slot, slots_of, work
from strength_handbook.calc.plates import PlateSize, load_table
from strength_handbook.plan.ramps import Ramp, Ramps, ramp_to, slot_ramps
from strength_handbook.plan.scales import bar_table
from strength_handbook.plan.worked import Worked

P1 = {"P1": {"bodyweight": "72 kg", "bases": {"best": "140 kg"}}}


def worked(root: Path, dose: str, room: Any = KG_ROOM, **more: Any) -> Worked:
    return work(
        root,
        room=room,
        exercises={"lift": exercise(**more)},
        sessions={"a": [slot("A", "lift", dose, base="best")]},
        bases={"best": base()},
        lifters=P1,
    )


def ramps(root: Path, dose: str, **more: Any) -> Ramps | None:
    found = worked(root, dose, **more)
    return slot_ramps(found.book.room, slots_of(found)["A"])


def only_adds(ramp: Ramp) -> None:
    before: tuple[int, ...] = ()
    for step in ramp:
        assert step.off == ()
        assert step.parts == before + step.added
        before = step.parts


def test_plates_only_go_on_and_the_last_step_is_todays_load(tmp_path: Path) -> None:
    found = ramps(tmp_path, "4x5 @ 75 %")
    assert found is not None
    assert not found.to_top
    ramp = found.by_lifter["P1"]
    only_adds(ramp)
    assert ramp[-1].grams == 105_000  # 75 % of 140
    assert ramp[-1].reps == 0
    # The last jump is at most 15 % of the load (common practice, no source).
    assert ramp[-1].grams - ramp[-2].grams <= 0.15 * 105_000
    assert [step.reps for step in ramp[:-1]] == sorted(
        (step.reps for step in ramp[:-1]), reverse=True
    )


def test_every_load_of_a_bar_has_steps(tmp_path: Path) -> None:
    book = worked(tmp_path, "4x5 @ 75 %").book
    loading = book.exercises["lift"].load
    assert loading.kind == "bar"
    table = bar_table(book.room, loading)
    for load in table.loads:
        ramp = ramp_to(table, load.total_g)
        assert ramp[-1].grams == load.total_g
        grams = [step.grams for step in ramp]
        assert grams == sorted(set(grams))
        assert all(step.grams == 20_000 + 2 * sum(step.parts) for step in ramp)


def test_where_adding_alone_does_not_lead_there_plates_come_off() -> None:
    # 20, 50, 60 and 90 kg. From 50 (83 % of 60) the last jump is too large, and 60 has no other
    # inner part than the empty bar.
    table = load_table(20_000, (PlateSize(20_000, 1), PlateSize(15_000, 1)))
    ramp = ramp_to(table, 60_000)
    assert [step.grams for step in ramp] == [20_000, 50_000, 60_000]
    assert (ramp[2].off, ramp[2].added) == ((15_000,), (20_000,))


def test_every_fourth_row_of_the_look_up_strip(tmp_path: Path) -> None:
    found = ramps(tmp_path, "4x5 @ 75 %")
    assert found is not None
    # 20, 40, 60 … of 20 to 200 by 5; three quarters of 20 are lighter than the bar.
    assert [value for value, _ in found.rows] == [kg * 1000 for kg in range(40, 201, 20)]
    for value, ramp in found.rows:
        only_adds(ramp)
        assert ramp[-1].grams <= 0.75 * value


def test_a_top_set_is_ramped_to_where_it_is_expected(tmp_path: Path) -> None:
    found = ramps(tmp_path, "ramp to 5RM, 2x5 @ 90 % of top")
    assert found is not None
    assert found.to_top
    # Five repetitions go with 87 % (Sheppard and Triplett 2016): 121.8 of 140 kg.
    assert found.by_lifter["P1"][-1].grams == 120_000


def test_a_load_that_is_the_same_for_all(tmp_path: Path) -> None:
    found = ramps(tmp_path, "3x5 @ 61 kg")
    assert found is not None
    assert found.everybody[-1].grams == 60_000
    assert not found.by_lifter


@pytest.mark.parametrize(
    ("dose", "more"),
    [
        ("3x5 @ 75 %", {"role": "assistance"}),
        ("3x5, RIR 2", {}),
        ("test 3RM in 4 attempts", {}),  # it has a ladder of its own
        ("ISO 3x20 s", {}),
        ("4 -> 40 m @ 25 % BM", {"load": {**BAR, "hands": 2}}),
    ],
)
def test_other_slots_have_none(tmp_path: Path, dose: str, more: dict[str, Any]) -> None:
    assert ramps(tmp_path, dose, **more) is None
