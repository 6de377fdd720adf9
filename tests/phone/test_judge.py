"""The verdict on a retest: the phone compares whole numbers, the build's formula decides."""

import random

import pytest

from strength_handbook.calc.retest import (
    judge_change,
    near_certain_change,
    smallest_believable_change,
)
from strength_handbook.pages.goal_results_html import believable_limits
from tools_page import tools_page

pytestmark = pytest.mark.browser


def limits(cv: float) -> tuple[int, int]:
    likely, sure = (round(limit * 1_000_000) for limit in believable_limits(cv))
    return likely, sure


def expected(before: int, after: int, cv: float) -> str:
    """The formula's verdict; between its limit and the printed one above it the lower one."""
    change = 100 * abs(after / before - 1)
    likely, sure = believable_limits(cv)
    if smallest_believable_change(cv) <= change < likely - 1e-9:
        return "can't tell"
    if near_certain_change(cv) <= change < sure - 1e-9:
        return "probably up" if after > before else "probably down"
    return judge_change(before, after, cv).value


def test_the_same_verdict_as_the_formula() -> None:
    rng = random.Random(3)
    cases: list[tuple[int, int, float]] = []
    while len(cases) < 3000:
        cv = rng.choice((4.2, 2.5, 1.0, 6.3))
        before = rng.randrange(1_000, 500_000, rng.choice((1, 50, 1250, 2500)))
        after = max(0, round(before * (1 + rng.gauss(0, 3 * cv) / 100)))
        cases.append((before, after, cv))
    # Around every limit, a gram below and above.
    for before in (60_000, 100_000, 142_500):
        for cv in (4.2, 2.5):
            for limit in limits(cv):
                for sign in (1, -1):
                    edge = before + sign * round(before * limit / 1e8)
                    cases += [(before, edge + gram, cv) for gram in (-1, 1)]
            cases.append((before, before, cv))
    with tools_page("tools/test-day") as page:
        found = page.evaluate(
            "all => all.map(one => strengthHandbook['tools/test-day'].judge(...one))",
            [[before, after, *limits(cv)] for before, after, cv in cases],
        )
    assert found == [expected(*case) for case in cases]
    assert len(set(found)) == 5


def test_a_change_of_just_the_limit_is_clear() -> None:
    # 2.8 × 2.5 % is 7 % exactly; binary fractions would miss 107 of 100.
    with tools_page("tools/test-day") as page:
        found = page.evaluate(
            """limits => [107000, 106999, 93000].map(
                one => strengthHandbook['tools/test-day'].judge(100000, one, ...limits))""",
            list(limits(2.5)),
        )
    assert found == ["clearly up", "probably up", "clearly down"]


def test_what_is_printed_agrees_with_its_verdict() -> None:
    """Limits are half points, rounded against a change; a change is cut to tenths."""
    cases = [(100_000, 100_000 + grams) for grams in range(-13_000, 13_000, 7)]
    with tools_page("tools/test-day") as page:
        found = page.evaluate(
            """([all, limits]) => {
                const { changed, judge } = strengthHandbook['tools/test-day'];
                return all.map(one => [changed(...one), judge(...one, ...limits)]); }""",
            [cases, list(limits(4.2))],
        )
    for printed, verdict in found:
        size = abs(float(printed.removesuffix(" %").replace("−", "-")))
        word = "can't tell" if size < 6 else "probably" if size < 12 else "clearly"
        assert verdict.startswith(word), printed
