"""What a retest says, given the noise of the test."""

from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.retest import (
    ONE_REP_MAX_CV_PERCENT,
    Verdict,
    judge_change,
    near_certain_change,
    smallest_believable_change,
)

ORDER = [
    Verdict.CLEARLY_DOWN,
    Verdict.PROBABLY_DOWN,
    Verdict.CANNOT_TELL,
    Verdict.PROBABLY_UP,
    Verdict.CLEARLY_UP,
]


def test_limits_for_a_1rm() -> None:
    # Grgic 2020, Sports Med Open 6:31: median CV of 1RM tests 4.2 %. √2 × 4.2 = 5.94.
    assert ONE_REP_MAX_CV_PERCENT == 4.2
    assert smallest_believable_change() == pytest.approx(5.94, abs=0.005)
    assert near_certain_change() == pytest.approx(11.76, abs=0.005)


@pytest.mark.parametrize(
    ("after", "verdict"),
    [
        (112, Verdict.CLEARLY_UP),
        (111, Verdict.PROBABLY_UP),
        (106, Verdict.PROBABLY_UP),
        (105, Verdict.CANNOT_TELL),
        (102, Verdict.CANNOT_TELL),
        (100, Verdict.CANNOT_TELL),
        (95, Verdict.CANNOT_TELL),
        (94, Verdict.PROBABLY_DOWN),
        (89, Verdict.PROBABLY_DOWN),
        (88, Verdict.CLEARLY_DOWN),
    ],
)
def test_verdicts_at_4_2_percent(after: float, verdict: Verdict) -> None:
    assert judge_change(100, after, 4.2) is verdict


def test_a_perfect_test_believes_every_change_but_none() -> None:
    assert judge_change(100, 100.1, 0) is Verdict.CLEARLY_UP
    assert judge_change(100, 99.9, 0) is Verdict.CLEARLY_DOWN
    assert judge_change(100, 100, 0) is Verdict.CANNOT_TELL


def test_noise_alone_is_rarely_called_clear() -> None:
    # 1.96 × √2 = 2.77: two tests without any training differ by more in 5 % of cases, and by
    # more than √2 × CV in 32 %.
    random = Random(1)
    verdicts = [
        judge_change(100 + random.gauss(0, 2), 100 + random.gauss(0, 2), 2.0) for _ in range(20_000)
    ]
    clear = sum(v in (Verdict.CLEARLY_UP, Verdict.CLEARLY_DOWN) for v in verdicts)
    nothing = sum(v is Verdict.CANNOT_TELL for v in verdicts)
    assert clear / len(verdicts) == pytest.approx(0.05, abs=0.01)
    assert nothing / len(verdicts) == pytest.approx(0.68, abs=0.02)


@pytest.mark.parametrize(
    ("after", "verdict"),
    # CV 2.5 %: believable from √2 × 2.5 = 3.536 %, nearly certain from 2.8 × 2.5 = 7 %.
    [
        (107.05, Verdict.CLEARLY_UP),
        (106.95, Verdict.PROBABLY_UP),
        (103.55, Verdict.PROBABLY_UP),
        (103.52, Verdict.CANNOT_TELL),
        (96.48, Verdict.CANNOT_TELL),
        (96.45, Verdict.PROBABLY_DOWN),
        (93.05, Verdict.PROBABLY_DOWN),
        (92.95, Verdict.CLEARLY_DOWN),
    ],
)
def test_limits_are_sharp(after: float, verdict: Verdict) -> None:
    assert judge_change(100, after, 2.5) is verdict


def test_a_change_of_just_the_certain_size_is_clear() -> None:
    # A quarter more, exactly 2.8 × CV.
    assert judge_change(100, 125, 25 / 2.8) is Verdict.CLEARLY_UP


@given(st.floats(1, 400), st.floats(0, 400), st.floats(0, 100), st.floats(0, 20))
def test_a_better_result_never_gets_a_worse_verdict(
    before: float, after: float, better: float, cv: float
) -> None:
    verdict, improved = judge_change(before, after, cv), judge_change(before, after + better, cv)
    assert ORDER.index(improved) >= ORDER.index(verdict)


@given(st.floats(1, 400), st.floats(0, 400), st.floats(0, 15), st.floats(0, 15))
def test_a_noisier_test_says_less(before: float, after: float, cv: float, more: float) -> None:
    sure = ORDER.index(judge_change(before, after, cv))
    unsure = ORDER.index(judge_change(before, after, cv + more))
    assert abs(unsure - 2) <= abs(sure - 2)
