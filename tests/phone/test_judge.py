"""The verdict on a retest: the phone compares whole numbers, the build's formula decides."""

import random
from math import ceil

import pytest

from strength_handbook.calc.retest import (
    judge_change,
    near_certain_change,
    smallest_believable_change,
)
from tools_page import tools_page

pytestmark = pytest.mark.browser


def limits(cv: float) -> tuple[int, int]:
    return (
        ceil(smallest_believable_change(cv) * 1_000_000 - 1e-6),
        ceil(near_certain_change(cv) * 1_000_000 - 1e-6),
    )


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
    with tools_page("test-day") as page:
        found = page.evaluate(
            "all => all.map(one => strengthHandbook.judge(...one))",
            [[before, after, *limits(cv)] for before, after, cv in cases],
        )
    assert found == [judge_change(before, after, cv).value for before, after, cv in cases]
    assert len(set(found)) == 5


def test_a_change_of_just_the_limit_is_clear() -> None:
    # 2.8 × 2.5 % is 7 % exactly; binary fractions would miss 107 of 100.
    with tools_page("test-day") as page:
        found = page.evaluate(
            """limits => [107000, 106999, 93000].map(
                one => strengthHandbook.judge(100000, one, ...limits))""",
            list(limits(2.5)),
        )
    assert found == ["clearly up", "probably up", "clearly down"]
