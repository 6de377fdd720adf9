"""How a figure came about: what went in, what came out, by which formula and how sure that is.

A working is a list of lines with the actual numbers in them. What a formula is called, where it
comes from and how far off it can be is looked up in the list of formulas, never written again.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from strength_handbook.calc.registry import Evidence, Formula, all_formulas
from strength_handbook.calc.repetitions import (
    TRUSTED_ABOVE_PERCENT,
    TRUSTED_BELOW_REPS,
    RepBand,
)
from strength_handbook.model.book import Book
from strength_handbook.model.house_rules import RULES
from strength_handbook.model.quantities import GRAMS_PER_POUND
from strength_handbook.plan.scale import Scale

NBSP = "\u00a0"


@dataclass(frozen=True, slots=True)
class Line:
    """One step of a working.

    Attributes:
        text: the step with its numbers.
        formula: its entry in the list of formulas, or empty.
        evidence: what kind of knowledge it is, a value of `Evidence`.
        source: where it comes from.
        error: how far off it can be, where that is stated.
    """

    text: str
    formula: str
    evidence: str
    source: str
    error: str = ""


@dataclass(frozen=True, slots=True)
class Working:
    """How one figure, or a few that belong together, was worked out.

    Attributes:
        title: whose figures they are.
        lines: the steps, in order.
        rounding: how the result was rounded, or empty.
    """

    title: str
    lines: tuple[Line, ...]
    rounding: str = ""


@cache
def formulas() -> Mapping[str, Formula]:
    """The list of formulas by id."""
    return {entry.id: entry for entry in all_formulas()}


def by_formula(name: str, text: str) -> Line:
    """A step by a formula of the list.

    Raises:
        KeyError: where the list has no such formula.
    """
    entry = formulas()[name]
    return Line(text, name, entry.evidence.value, entry.source, entry.error)


def by_adding(text: str) -> Line:
    """A step that is nothing but a sum."""
    return Line(text, "", Evidence.ARITHMETIC.value, "a plain sum")


def by_looking(text: str) -> Line:
    """A step that only looks a load up among those that exist."""
    return Line(text, "", Evidence.ARITHMETIC.value, "the loads of this room, in order")


def by_rule(book: Book, slug: str, text: str = "") -> Line:
    """A house rule that a step leans on, with what this house has made of it.

    Args:
        book: for the rule.
        slug: its name.
        text: what it comes to here; without it the rule and its value.
    """
    kind, own = RULES[slug], book.rules.rules.get(slug)
    value = f"{book.rule(slug):g}{NBSP}{kind.unit}".strip()
    if own is None:
        source = kind.source
    else:
        why = f": {own.why}" if own.why else ""
        source = f"set by the {book.rules.owner.lower()}, {book.rules.date}{why}".rstrip(".")
    said = f"{slug.replace('-', ' ').capitalize()}: {value}. {kind.what}".rstrip(".")
    return Line(text or said, "", Evidence.HOUSE_RULE.value, source)


def as_tested(text: str) -> Line:
    """A value that somebody measured."""
    return Line(text, "", Evidence.MEASURED.value, "tested or weighed")


def as_written(text: str) -> Line:
    """A value that the coach has chosen."""
    return Line(text, "", Evidence.HOUSE_RULE.value, "the coach's choice in the program")


def amount(grams: float, units: str) -> str:
    r"""A mass, no finer than ten grams or a tenth of a pound.

    >>> amount(109_200, "kg"), amount(-13_200, "kg"), amount(20_412, "lb")
    ('109.2\xa0kg', '−13.2\xa0kg', '45\xa0lb')
    """
    return f"{bare(grams, units)}{NBSP}{units}"


def bare(grams: float, units: str) -> str:
    """The same without the unit."""
    if units == "lb":
        return number(grams / GRAMS_PER_POUND, 1)
    return number(grams / 1000, 2)


def number(value: float, decimals: int = 1) -> str:
    """A number without needless zeros, with a proper minus.

    >>> number(28.5), number(-3.0), number(8.667), number(69.6, 0)
    ('28.5', '−3', '8.7', '70')
    """
    text = f"{round(value, decimals) + 0.0:.{decimals}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return text.replace("-", "−")


def equals(*values: float, decimals: int = 1) -> str:
    """``=`` where all figures are printed as they are, ``≈`` where one of them is rounded.

    >>> equals(28.5, 3), equals(8.667), equals(76.79 * 2, decimals=0)
    ('=', '≈', '≈')
    """
    exact = all(abs(value - round(value, decimals)) < 1e-6 for value in values)
    return "=" if exact else "≈"


def equals_mass(*grams: float, units: str) -> str:
    """The same for masses as `amount` prints them.

    A pound is kept in whole grams: that is no rounding of ours.

    >>> equals_mass(109_200, units="kg"), equals_mass(8_874, units="kg")
    ('=', '≈')
    """
    unit, decimals, slack = (GRAMS_PER_POUND, 1, 3e-3) if units == "lb" else (1000, 2, 1e-6)
    values = [one / unit for one in grams]
    exact = all(abs(value - round(value, decimals)) < slack for value in values)
    return "=" if exact else "≈"


def percent(value: float) -> str:
    r"""A percentage, whole or half.

    >>> percent(27.5), percent(76.79), percent(69.6)
    ('27.5\xa0%', '77\xa0%', '70\xa0%')
    """
    half = value == round(value * 2) / 2
    return f"{number(value) if half else number(value, 0)}{NBSP}%"


def times(count: float, what: str) -> str:
    """How many of a thing.

    >>> times(1, "set"), times(2.5, "set")
    ('1 set', '2.5 sets')
    """
    return f"{number(count)} {what}{'' if count == 1 else 's'}"


def share_of(grams: float, points: float, units: str) -> str:
    r"""A percentage of a mass; says so where the percentage is printed rounded.

    >>> share_of(140_000, 78, "kg"), share_of(90_000, 88.6, "kg")
    ('140\xa0kg × 78\xa0% = 109.2\xa0kg', '90\xa0kg × about 89\xa0% ≈ 79.74\xa0kg')
    """
    exact = abs(points * 2 - round(points * 2)) < 1e-9
    result = grams * points / 100
    about, sign = ("", equals_mass(grams, result, units=units)) if exact else ("about ", "≈")
    return f"{amount(grams, units)} × {about}{percent(points)} {sign} {amount(result, units)}"


def seconds(value: float) -> str:
    r"""Seconds, tenths only where a mean of two counts makes them.

    >>> seconds(28.5), seconds(640)
    ('28.5\xa0s', '640\xa0s')
    """
    return f"{number(value)}{NBSP}s"


def outward(low: float, high: float) -> tuple[int, int]:
    """A range in whole numbers that leaves nothing of it out.

    >>> outward(4.25, 7.89), outward(7.0, 13.000000001)
    ((4, 8), (7, 13))
    """
    return math.floor(round(low, 6)), math.ceil(round(high, 6))


def reps_text(band: RepBand) -> str:
    """The repetitions that most people can do.

    >>> reps_text(RepBand(4.25, 6.07, 7.89, trusted=True))
    '4 to 8'
    """
    low, high = outward(band.low, band.high)
    return f"{low} to {high}"


def rough_text(band: RepBand | None) -> str:
    """What is added where the load lies outside what the chart's own source trusts.

    >>> rough_text(RepBand(10.5, 15, 19.5, trusted=False))
    ' (roughly: the chart holds above 75 % and below 10 repetitions)'
    """
    if band is None or band.trusted:
        return ""
    above, below = TRUSTED_ABOVE_PERCENT, TRUSTED_BELOW_REPS
    return f" (roughly: the chart holds above {above:g} % and below {below:g} repetitions)"


def rounding_rule(scale: Scale) -> str:
    """How a load is taken from those that exist."""
    rounded = {
        "down": "rounded down to",
        "nearest": "rounded to the nearest of",
        "up": "rounded up to",
    }[scale.rounding]
    what = {
        "bar": f"what the plates at a rack make on the {scale.on}",
        "fixed": f"the {scale.on}s that exist",
        "hung": f"what the plates make on the {scale.on}",
        "pin": f"the pins of the {scale.on}",
        "plate": "the single plates that exist",
        "pivot": f"what the plates make on the end of the {scale.on}",
    }[scale.kind]
    return f"Loads are {rounded} {what}."
