"""Whether a retest shows a change or only the noise of testing.

A test repeated without training varies by its coefficient of variation (CV). The difference of
two tests varies by √2 as much.
"""

from enum import StrEnum
from math import sqrt

from strength_handbook.calc.registry import Evidence, formula

ONE_REP_MAX_CV_PERCENT = 4.2
"""Median CV of 1RM tests, Grgic 2020; a gym's own value is better once known."""

NEAR_CERTAIN_FACTOR = 2.8
"""About 1.96 × √2: nineteen times in twenty the noise alone stays below it."""

_SUBJECT = "Retest"
_SOURCE = (
    "two tests with independent errors: definition; CV of 1RM tests 4.2 %: "
    "Grgic, Lazinica, Schoenfeld and Pedisic 2020. Sports Med Open 6:31"
)
_CV_RANGE = {"cv_percent": (0.0, 30.0)}


class Verdict(StrEnum):
    """What the difference of two tests says."""

    CLEARLY_UP = "clearly up"
    PROBABLY_UP = "probably up"
    CANNOT_TELL = "can't tell"
    PROBABLY_DOWN = "probably down"
    CLEARLY_DOWN = "clearly down"


@formula(
    subject=_SUBJECT,
    title="Smallest change worth believing",
    equation="√2 × CV",
    inputs={
        "cv_percent": "CV = spread of one lifter's repeated tests, %",
    },
    output="% of the first result",
    ranges=_CV_RANGE,
    source=_SOURCE,
    evidence=Evidence.ARITHMETIC,
)
def smallest_believable_change(cv_percent: float = ONE_REP_MAX_CV_PERCENT) -> float:
    """Change in percent below which nothing can be said.

    >>> smallest_believable_change(4.2)
    5.94
    """
    return sqrt(2) * cv_percent


@formula(
    subject=_SUBJECT,
    title="Change that is nearly certain",
    equation="2.8 × CV",
    inputs={
        "cv_percent": "CV = spread of one lifter's repeated tests, %",
    },
    output="% of the first result",
    ranges=_CV_RANGE,
    source=_SOURCE,
    evidence=Evidence.ARITHMETIC,
)
def near_certain_change(cv_percent: float = ONE_REP_MAX_CV_PERCENT) -> float:
    """Change in percent that testing noise alone hardly ever makes.

    >>> near_certain_change(4.2)
    11.76
    """
    return NEAR_CERTAIN_FACTOR * cv_percent


@formula(
    subject=_SUBJECT,
    title="Verdict on a retest",
    equation="change = 100 × (after ÷ before − 1); clear from 2.8 × CV, probable from √2 × CV",
    inputs={
        "before": "before = first result, any unit",
        "after": "after = second result, same unit",
        "cv_percent": "CV = spread of one lifter's repeated tests, %",
    },
    output="clearly up, probably up, can't tell, probably down or clearly down",
    ranges={"before": (1e-9, 1e9), "after": (0, 1e9), **_CV_RANGE},
    source=_SOURCE,
    evidence=Evidence.ARITHMETIC,
    error="The test itself must not have changed in between.",
)
def judge_change(
    before: float, after: float, cv_percent: float = ONE_REP_MAX_CV_PERCENT
) -> Verdict:
    """What can be said about a result after training; no change at all says nothing.

    >>> judge_change(100, 104).value, judge_change(100, 108).value, judge_change(100, 115).value
    ("can't tell", 'probably up', 'clearly up')
    """
    change = 100 * (after / before - 1)
    if change == 0 or abs(change) < smallest_believable_change(cv_percent):
        return Verdict.CANNOT_TELL
    clearly = abs(change) >= near_certain_change(cv_percent)
    if change > 0:
        return Verdict.CLEARLY_UP if clearly else Verdict.PROBABLY_UP
    return Verdict.CLEARLY_DOWN if clearly else Verdict.PROBABLY_DOWN
