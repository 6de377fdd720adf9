"""House rules: numbers that are nobody's finding but the coach's choice, each with its owner.

`RULES` lists every rule the handbook knows, with the value used where `house-rules.yml` is silent:
those that numbers are worked out with, and the thresholds of the checks.
"""

import re
from typing import Annotated

from pydantic import Field

from strength_handbook.model.marks import Compared, Label, NotProse
from strength_handbook.model.plain import Name
from strength_handbook.model.quantities import NUMBER, LimitError
from strength_handbook.model.rule_kind import RuleKind
from strength_handbook.model.shape import Shape, shown
from strength_handbook.model.thresholds import THRESHOLDS
from strength_handbook.model.weeks import DateText

COMPUTING: dict[str, RuleKind] = {
    "seconds-per-rep": RuleKind(
        3, "s", "Time of one repetition where no tempo is written.", 1, 15,
        "best fit to ten published session times; 2.5 to 4 s were tried",
    ),
    "walking-speed": RuleKind(1, "m/s", "Speed of a carry, for session minutes.", 0.3, 5),
    "change-time": RuleKind(60, "s", "Time to move from one exercise to the next.", 0, 900),
    "swap-time": RuleKind(
        15, "s", "Time to swap between paired exercises or between partners.", 0, 900
    ),
    "plate-time": RuleKind(
        5, "s", "Time to move one plate between partners, one of them at each side.", 0, 60
    ),
    "band-time": RuleKind(
        10, "s", "Time to take bands or chains off a bar, or to hang them.", 0, 300
    ),
    "ramp-sets": RuleKind(
        4, "sets", "Sets on the way up to today's top set, for session minutes.", 0, 20
    ),
    "ramp-rest": RuleKind(
        60, "s", "Rest between those sets, and between warm-up steps of a later lift.", 0, 900
    ),
    "step-reps": RuleKind(
        3, "reps", "Repetitions of a warm-up step, for session minutes.", 1, 10,
    ),
    "training-max": RuleKind(90, "%", "A training max as a share of the tested value.", 70, 100),
    "strip-time": RuleKind(10, "s", "Time to take plates off in a strip set.", 0, 120),
    "slow-lowering": RuleKind(4, "s", "A lowering this long or longer counts as slow.", 0, 60),
    "long-pause": RuleKind(2, "s", "A pause this long or longer counts as long.", 0, 60),
    "slow-factor": RuleKind(
        0.7, "", "Share of the usual repetitions that slow lowering or a long pause leaves.", 0.1, 1
    ),
    "hard-set-reserve": RuleKind(
        4, "reps", "A set that leaves more repetitions than this is not counted as hard.", 0, 20
    ),
    "hard-hold-effort": RuleKind(
        7, "RPE", "A hold below this effort is not counted as hard.", 1, 10
    ),
    "test-noise": RuleKind(
        4.2, "%", "How much a test differs by itself from day to day.", 0.5, 20,
        "median coefficient of variation of one-repetition maximum tests, Grgic and others 2020",
    ),
    "first-attempt": RuleKind(
        95, "%", "The first attempt at a test, as a share of the expected result.", 70, 100,
        "common practice, no source: one good attempt is sure to stand, and four of them still "
        "reach ten per cent above what was expected",
    ),
    "attempt-step-least": RuleKind(
        2, "%", "Smallest step up after a good attempt.", 0.5, 20,
        "common practice, no source",
    ),
    "attempt-step-most": RuleKind(
        5, "%", "Largest step up after a good attempt.", 0.5, 20,
        "common practice, no source: half the textbook's smallest step for the warm-up of the legs "
        "and its smallest for the arms (Sheppard and Triplett 2016, ch. 17)",
    ),
    "teaching-time": RuleKind(
        4, "min", "Time to show a new exercise, or a new way to do a known one.", 0, 60
    ),
    "show-planned-from": RuleKind(
        1, "%", "Print the planned load too when plates miss it by more than this.", 0, 100
    ),
}  # fmt: skip
"""Rules that the loads, minutes and volumes are worked out with."""

RULES: dict[str, RuleKind] = {**COMPUTING, **THRESHOLDS}
"""Every rule, by its name in `house-rules.yml`."""


RuleName = Annotated[Name, NotProse("one of the handbook's own words, or refused")]


class Rule(Shape):
    """One rule as this house has set it."""

    value: Annotated[
        Name, NotProse("a number with its unit, checked against the rule"), Compared("rules")
    ]
    """The number with its unit."""
    why: Name | None = None
    """The reason, in one sentence."""


class HouseRules(Shape):
    """`house-rules.yml`: the coach's own numbers, with an owner and a date."""

    owner: Annotated[Name, Label("a role")]
    """The role that may change them."""
    date: DateText
    """When they were last looked at."""
    rules: Annotated[dict[RuleName, Rule], Compared("rules")] = Field(default_factory=dict)
    """The numbers that differ from the handbook's own, by name."""


def read_value(text: str, kind: RuleKind) -> float:
    """A rule's number, checked against the unit and the limits it must have.

    >>> read_value("60 s", RULES["change-time"])
    60.0

    Raises:
        ValueError: where the number or the unit is not right; the message says what to write.
        LimitError: where the number is too small or too large.
    """
    found = re.fullmatch(rf"{NUMBER}\s*(.*)", text.strip())
    if not found:
        example = _written(f"{kind.default:g}", kind.unit)
        raise ValueError(f"{shown(text)} is not a number; write it like {example}")
    number, unit = found[1], found[2]
    if unit != kind.unit:
        wrong = "the wrong unit" if unit else "no unit"
        raise ValueError(f"{shown(text)} has {wrong}; write {_written(number, kind.unit)}")
    value = float(number.replace(",", "."))
    if value < kind.least:
        least = f"{kind.least:g} {kind.unit}".strip()
        raise LimitError(f"{shown(text)} is too small; the least is {least}")
    if value > kind.most:
        most = f"{kind.most:g} {kind.unit}".strip()
        raise LimitError(f"{shown(text)} is too large; the most is {most}")
    return value


def _written(number: str, unit: str) -> str:
    return shown(f"{number} {unit}".strip())
