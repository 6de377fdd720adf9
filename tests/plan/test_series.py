"""Sets that differ: loads by hand, and sums that are those of their parts written one by one."""

from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from books import KG_PLATES, base, exercise, slot, slots_of, work
from strength_handbook.calc.duration import Block, block_seconds, gap_seconds
from strength_handbook.plan.efforts import open_set
from strength_handbook.plan.ramps import slot_ramps
from strength_handbook.plan.series import series_plan
from strength_handbook.plan.worked import Worked, WorkedSlot

P1 = {"P1": {"bodyweight": "70 kg", "bases": {"best": "100 kg"}}}


def book(root: Path, *doses: str, **more: Any) -> Worked:
    """One session of one lift, a slot for each dose."""
    slots = [slot("ABCDEFGH"[n], "lift", dose, base="best") for n, dose in enumerate(doses)]
    return work(
        root,
        exercises={"lift": exercise()},
        sessions={"a": slots},
        bases={"best": base()},
        lifters=P1,
        **more,
    )


def worked_slot(root: Path, dose: str, **more: Any) -> WorkedSlot:
    return slots_of(book(root, dose, **more))["A"]


def loadable(target: float) -> float:
    """The heaviest load on a bar of 20 kg that is no more than a target, by trying all plates.

    An oracle of its own: every number of pairs of every plate there is.
    """
    sides = {0.0}
    for plate in KG_PLATES:
        size = float(plate["mass"].split()[0])
        sides |= {side + n * size for side in sides for n in range(1, plate["pairs"] + 1)}
    return max(20 + 2 * side for side in sides if 20 + 2 * side <= target + 1e-9)


@pytest.mark.parametrize("best", [40, 62.5, 100, 137.5, 181, 240])
def test_each_set_has_the_load_that_can_be_put_on(tmp_path: Path, best: float) -> None:
    lifters = {"P1": {"bodyweight": "70 kg", "bases": {"best": f"{best} kg"}}}
    found = slots_of(
        work(
            tmp_path,
            exercises={"lift": exercise()},
            sessions={"a": [slot("A", "lift", "5 @ 65 %, 3 @ 75 %, 1+ @ 85 %", base="best")]},
            bases={"best": base()},
            lifters=lifters,
        )
    )["A"]
    plan = series_plan(found, "kg")
    assert plan is not None
    loads = [(one.load.actual_g or 0) / 1000 for one in plan.by_lifter["P1"]]
    assert loads == [loadable(best * share / 100) for share in (65, 75, 85)]
    # Plates of one side: what came off and went on leads from each load to the next.
    stack: list[int] = []
    for one in plan.by_lifter["P1"]:
        assert one.load.step is not None
        if stack or one.off or one.on:
            assert list(one.off) == stack[len(stack) - len(one.off) :][::-1]
            stack = [*stack[: len(stack) - len(one.off)], *one.on]
            assert tuple(stack) == one.load.step.parts
        stack = list(one.load.step.parts)


def test_loads_in_kilograms_are_everybody_s(tmp_path: Path) -> None:
    # 100 = 20 + 2 × (25 + 15); 110 = 20 + 2 × (25 + 20): the 15 comes off, the 20 goes on.
    plan = series_plan(worked_slot(tmp_path, "5 @ 100 kg, 3 @ 110 kg"), "kg")
    assert plan is not None
    first, second = plan.everybody
    assert (first.load.actual_g, second.load.actual_g) == (100_000, 110_000)
    assert (second.off, second.on) == ((15_000,), (20_000,))


@pytest.mark.parametrize("dose", ["3x5 @ 70 %", "10, 8, 6 @ 70 %"])
def test_one_load_for_all_sets_has_no_loads_in_order(tmp_path: Path, dose: str) -> None:
    assert series_plan(worked_slot(tmp_path, dose), "kg") is None


parts_of_series = st.lists(
    st.builds(
        "{}x{} @ {} %".format, st.integers(1, 4), st.integers(1, 12), st.sampled_from([60, 72, 85])
    ),
    min_size=2,
    max_size=4,
    unique_by=lambda line: line.split("x")[1],
)
behind = st.sampled_from(["", ", RIR 2", ", tempo 3-1-X-0, RIR 1", ", RIR 5", " ES, RIR 2"])


@given(parts_of_series, behind)
@settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_volume_is_that_of_the_parts_written_as_slots(
    tmp_path_factory: pytest.TempPathFactory, parts: list[str], behind: str
) -> None:
    together = book(tmp_path_factory.mktemp("one"), ", ".join(parts) + behind)
    apart = book(tmp_path_factory.mktemp("several"), *(part + behind for part in parts))
    one, other = (found.programs[0].week(1).volume for found in (together, apart))
    for name in ("sets", "reps", "eccentric_s", "isometric_s", "fast_reps", "contacts"):
        assert getattr(one, name) == pytest.approx(getattr(other, name)), name
    assert one.hard_sets == pytest.approx(other.hard_sets)
    assert one.tonnage_kg == pytest.approx(other.tonnage_kg)


@given(
    st.lists(
        st.tuples(st.integers(1, 4), st.integers(1, 12), st.integers(1, 9)),
        min_size=2,
        max_size=4,
        unique_by=lambda one: one[1],
    ),
    st.integers(1, 3),
)
@settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_minutes_are_those_of_the_parts_with_their_rests_between(
    tmp_path_factory: pytest.TempPathFactory, parts: list[tuple[int, int, int]], sharing: int
) -> None:
    """Each part, its rest, the next part: plates are no change of station."""
    lines = [f"{sets}x{reps} @ {60 + place} %" for place, (sets, reps, _) in enumerate(parts)]
    line = ", ".join(
        f"{one}, rest {rest} min" for one, (_, _, rest) in zip(lines, parts, strict=True)
    )
    worked = book(
        tmp_path_factory.mktemp("one"), line, rules={"swap-time": "20 s", "seconds-per-rep": "3 s"},
        group={"members": 6, "sharing": sharing},
    )  # fmt: skip
    # By hand: repetitions of three seconds; who shares lifts in turn.
    blocks = [
        Block(sets, (3.0 * reps,), rest_s=60.0 * rest, people=sharing, swap_s=20.0)
        for sets, reps, rest in parts
    ]
    seconds = sum(map(block_seconds, blocks)) + sum(map(gap_seconds, blocks[:-1]))
    minutes = worked.programs[0].week(1).sessions[0].minutes
    assert minutes.training == pytest.approx(seconds / 60)


def test_steps_lead_to_the_first_of_sets_that_differ(tmp_path: Path) -> None:
    bar = exercise(load={"kind": "bar", "bar": "bar"})

    def first_work(root: Path, dose: str) -> int:
        worked = work(
            root,
            exercises={"lift": bar},
            sessions={"a": [slot("A", "lift", dose, base="best")]},
            bases={"best": base()},
            lifters=P1,
        )
        ramps = slot_ramps(worked.book.room, slots_of(worked)["A"])
        assert ramps is not None
        return ramps.by_lifter["P1"][-1].grams

    found = first_work(tmp_path / "1", "5 @ 65 %, 3 @ 85 %")
    assert found == first_work(tmp_path / "2", "1x5 @ 65 %")
    assert found != first_work(tmp_path / "3", "1x3 @ 85 %")


def test_an_open_set_without_a_cap_shows_six_results(tmp_path: Path) -> None:
    worked = work(
        tmp_path,
        exercises={"lift": exercise()},
        sessions={"a": [slot("A", "lift", "3x5+ @ 70 %", base="best")]},
        bases={"best": base()},
        lifters={"P1": {"bodyweight": "70 kg", "bases": {"best": "100 kg"}}},
    )
    plan = open_set(slots_of(worked)["A"])
    assert plan is not None
    assert [row.reps for row in plan.rows] == [5, 6, 7, 8, 9, 10]
