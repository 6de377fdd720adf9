"""What holds for the checks of loads whatever a coach writes."""

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import desks
from strength_handbook.checked import Checked
from strength_handbook.review.catalogue import CHECKS, review
from strength_handbook.review.desk import Desk

pytestmark = pytest.mark.slow  # whole programs are read and checked for every example

WAVE = "brook/1-slow.yml"
LIFT = "sessions.a-lift.slots.0"

percents = st.integers(130, 200).map(lambda halves: halves / 2)
tempos = st.sampled_from(["2-0-X-0", "3-1-X-0", "4-0-X-0", "5-1-X-0", "2-2-X-0"])


def checked(edits: desks.Edits) -> Checked:
    with TemporaryDirectory() as folder:
        return desks.check(desks.edited(edits), Path(folder))


@cache
def week_three(dose: str) -> Checked:
    return checked({WAVE: {f"{LIFT}.weeks.3": dose}})


def desk_of(one: Checked) -> Desk:
    assert one.desk is not None, one.problems
    return one.desk


def fired(one: Checked, slug: str) -> list[str]:
    return [finding.at.text for finding in review(desk_of(one), [CHECKS[slug]])]


@settings(max_examples=12, deadline=None)
@given(percent=percents, reps=st.integers(1, 14), left=st.integers(0, 4), tempo=tempos)
def test_as_many_as_offered_can_be_done_and_not_one_more(
    percent: float, reps: int, left: int, tempo: str
) -> None:
    one = week_three(f"3x{reps} @ {percent:g} %, tempo {tempo}, RIR {left}")
    for finding in review(desk_of(one), [CHECKS["reps-impossible"]]):
        edit = finding.edits[0] if finding.edits else None
        if edit is None or edit.path[-1] != "reps":
            continue
        offered = int(str(edit.value))
        assert 1 <= offered < reps
        for more, silent in ((0, True), (1, False)):
            dose = f"3x{offered + more} @ {percent:g} %, tempo {tempo}, RIR {left}"
            again = fired(week_three(dose), "reps-impossible")
            assert (again == []) is silent


@settings(max_examples=12, deadline=None)
@given(percent=percents, heavier=st.integers(1, 10), reps=st.integers(1, 10), tempo=tempos)
def test_a_heavier_or_longer_set_is_never_more_possible(
    percent: float, heavier: int, reps: int, tempo: str
) -> None:
    more = min(100.0, percent + heavier / 2)
    light = fired(week_three(f"3x{reps} @ {percent:g} %, tempo {tempo}"), "reps-impossible")
    heavy = fired(week_three(f"3x{reps} @ {more:g} %, tempo {tempo}"), "reps-impossible")
    longer = fired(week_three(f"3x{reps + 1} @ {percent:g} %, tempo {tempo}"), "reps-impossible")
    assert set(light) <= set(heavy)
    assert set(light) <= set(longer)


@settings(max_examples=12, deadline=None)
@given(kilos=st.integers(8, 40).map(lambda steps: steps * 2.5 + 25))
def test_a_percentage_that_is_on_the_bar_is_never_too_coarse(kilos: float) -> None:
    percent = round(100 * kilos / 200, 4)
    lifters = {f"lifters.P{n}.bases.trap-bar-1rm": "200 kg" for n in (1, 2, 3)}
    one = checked({WAVE: {f"{LIFT}.weeks.3": f"3x1 @ {percent:g} %"}, "lifters.yml": lifters})
    assert [at for at in fired(one, "plates-coarse") if at.startswith("week 3, a-lift A")] == []


@settings(max_examples=10, deadline=None)
@given(steps=st.lists(st.integers(0, 6), min_size=2, max_size=2), start=st.integers(130, 160))
def test_progress_is_lost_only_where_no_lifter_steps(steps: list[int], start: int) -> None:
    plan = [start / 2, (start + steps[0]) / 2, (start + sum(steps)) / 2]
    weeks = {f"{LIFT}.weeks.{n}": f"3x3 @ {p:g} %" for n, p in enumerate(plan, start=1)}
    one = checked({WAVE: weeks})
    found = review(desk_of(one), [CHECKS["progress-lost"]])
    told = {name for finding in found for name in ("P1", "P2", "P3") if f"{name}:" in finding.text}
    # 140, 95 and 180 kg; the trap bar of 25 kg goes up by 2.5 kg.
    for name, best in (("P1", 140), ("P2", 95), ("P3", 180)):
        on_bar = {(best * p / 100 - 25 + 1e-9) // 2.5 for p in plan}
        rising = plan[0] < plan[1] < plan[2]
        assert (name in told) == (rising and len(on_bar) == 1)
