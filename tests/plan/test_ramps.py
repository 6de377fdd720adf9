"""Warm-up steps lead to the plates of the table; without a profile they are read off rows."""

from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from books import BAR, KG_ROOM, base, exercise, slot, slots_of, work
from demo import PROGRAMS
from strength_handbook.calc.plates import PlateSize, load_table
from strength_handbook.model.lifter import Lifter
from strength_handbook.model.quantities import Mass
from strength_handbook.plan.ramps import Ramp, Ramps, ramp_to, slot_ramps
from strength_handbook.plan.scales import bar_table
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book

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


def climbs(ramp: Ramp) -> None:
    """Each step follows from the one before; plates are exchanged once at most."""
    before: tuple[int, ...] = ()
    for step in ramp:
        kept = before[: len(before) - len(step.off)]
        assert step.off == before[len(kept) :][::-1]
        assert step.parts == kept + step.added
        before = step.parts
    assert sum(bool(step.off) for step in ramp) <= 1


def test_steps_climb_to_todays_load(tmp_path: Path) -> None:
    found = ramps(tmp_path, "4x5 @ 75 %")
    assert found is not None
    assert not found.to_top
    ramp = found.by_lifter["P1"]
    climbs(ramp)
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
        assert (ramp[-1].grams, ramp[-1].parts) == (load.total_g, load.side_g)
        climbs(ramp)
        grams = [step.grams for step in ramp]
        assert grams == sorted(set(grams))
        assert all(step.grams == 20_000 + 2 * sum(step.parts) for step in ramp)


def test_plates_that_are_no_part_of_the_load_come_off_again() -> None:
    # 20, 50, 60 and 90 kg: 60 has no inner part but the empty bar.
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
        climbs(ramp)
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


def test_light_first_steps_and_small_jumps_in_every_week_of_the_demo() -> None:
    """In points of the best single, 20 at most: common practice, no source."""
    book = read_book(PROGRAMS).book
    assert book is not None
    bases = {key for one in book.programs for key in one.program.bases}
    people = {
        str(grams): Lifter.model_construct(
            bodyweight=Mass(75_000), bases=dict.fromkeys(bases, Mass(grams))
        )
        for grams in range(40_000, 240_001, 2_500)
    }
    worked = work_out(replace(book, lifters=people))
    large = checked = 0
    for program in worked.programs:
        for week in program.weeks:
            for one in (one for session in week.sessions for one in session.slots):
                found = slot_ramps(book.room, one)
                for best, ramp in found.by_lifter.items() if found else ():
                    grams = [step.grams for step in ramp]
                    if len(ramp) < 2:
                        continue
                    checked += 1
                    assert not ramp[0].parts or grams[0] <= 0.6 * grams[-1], (best, grams)
                    jump = max(b - a for a, b in pairwise(grams))
                    assert jump <= 0.25 * int(best), (best, grams)
                    large += jump > 0.2 * int(best)
    assert checked > 1000
    # Near the empty bar two plates are all there is between it and the load.
    assert large <= 0.02 * checked
