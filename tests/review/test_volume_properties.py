"""What holds for the volume checks whatever a coach writes."""

import tempfile
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import desks
from strength_handbook.review.desk import Desk
from strength_handbook.review.emphasis import MEASURES, wave_emphases

FEW = settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
"""Each example is a whole folder."""

sets = st.integers(1, 6)
reps = st.integers(1, 10)
lower = st.integers(1, 6)


def checked(edits: desks.Edits, rules: dict[str, str] | None = None) -> tuple[Desk, set[str]]:
    """The desk, and the places at which something of a check stands."""
    with tempfile.TemporaryDirectory() as folder:
        found = desks.check(desks.edited(edits, rules), Path(folder))
    assert found.desk is not None, found.problems
    return found.desk, {f"{one.slug} {one.at.text}" for one in found.findings}


def squats(week_2: tuple[int, int, int], week_3: tuple[int, int, int]) -> desks.Edits:
    doses = {
        f"sessions.b-squat.slots.0.weeks.{week}": f"{n}x{r} @ 60 %, tempo {down}-0-X-0, RIR 3"
        for week, (n, r, down) in ((2, week_2), (3, week_3))
    }
    return {"brook/1-slow.yml": doses}


@FEW
@given(sets, reps, lower, sets, reps, lower)
def test_shares_of_two_waves_are_each_others_inverse(
    n_2: int, r_2: int, d_2: int, n_3: int, r_3: int, d_3: int
) -> None:
    desk, _ = checked(squats((n_2, r_2, d_2), (n_3, r_3, d_3)))
    one, other = wave_emphases(desk.worked.programs[0])
    for measure in MEASURES:
        mine, theirs = one.shares[measure], other.shares[measure]
        assert mine is not None
        assert theirs is not None
        assert abs(mine * theirs - 1) < 1e-9


@FEW
@given(sets, reps, st.integers(5, 100), st.integers(5, 100))
def test_a_laxer_limit_never_finds_more(n: int, r: int, strict: int, lax: int) -> None:
    strict, lax = sorted((strict, lax))
    edits = squats((4, 5, 4), (n, r, 4))
    most = {"volume-jump-most": "500 %"}
    _, few = checked(edits, {"volume-jump-warn": f"{lax} %", **most})
    _, many = checked(edits, {"volume-jump-warn": f"{strict} %", **most})
    assert {one for one in few if one.startswith("volume-jump")} <= many


@FEW
@given(sets, reps)
def test_the_same_week_again_is_no_jump(n: int, r: int) -> None:
    _, found = checked(squats((n, r, 4), (n, r, 4)))
    assert not {one for one in found if one.startswith(("volume-jump week 3", "sets-jump week 3"))}
