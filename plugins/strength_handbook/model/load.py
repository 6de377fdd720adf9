"""What a dose may say about its load: ``70 %``, ``60 kg``, ``25 % BM``, ``BW+10 kg``, ``8RM`` …

One small frozen type per way of saying it. What it comes to in kilos is worked out in `plan`.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Annotated, Any

from pydantic import BeforeValidator, WithJsonSchema

from strength_handbook.model.pace import PACE, PaceOfBest, read_slower
from strength_handbook.model.quantities import NUMBER, Mass, in_unit
from strength_handbook.model.samples import sample, unit
from strength_handbook.model.shape import refuse, shown
from strength_handbook.model.span import between, ends, read_share


@dataclass(frozen=True, slots=True)
class PercentOfBase:
    """Percent of a tested value, the slot's base; of a range its middle counts, here and below."""

    percent: float

    @property
    def text(self) -> str:
        """As written in the trade."""
        return f"{self.percent:g} %"


@dataclass(frozen=True, slots=True)
class PercentOfSystem:
    """Percent of the best total of a body-weight lift: the lifter's share plus what was added."""

    percent: float

    @property
    def text(self) -> str:
        """As written in the trade."""
        return f"{self.percent:g} % system"


@dataclass(frozen=True, slots=True)
class PercentOfBodyMass:
    """Percent of body mass: for carries per hand, for packs in all."""

    percent: float

    @property
    def text(self) -> str:
        """As written in the trade."""
        return f"{self.percent:g} % BM"


@dataclass(frozen=True, slots=True)
class FixedLoad:
    """The same mass for everybody.

    Attributes:
        mass: the mass to plan with; of a range its middle.
        both: the least and the most, where it is a range.
    """

    mass: Mass
    both: tuple[Mass, Mass] | None = None

    @property
    def ends(self) -> tuple[Mass, Mass]:
        """The least and the most."""
        return self.both or (self.mass, self.mass)

    @property
    def text(self) -> str:
        """As written in the trade."""
        low, high = self.ends
        if low == high:
            return self.mass.label
        return f"{in_unit(low.grams, low.unit)}–{high.label}"

    @classmethod
    def between(cls, low: Mass, high: Mass) -> "FixedLoad":
        """A range of masses, or the one mass where both are the same.

        >>> FixedLoad.between(Mass(60_000), Mass(65_000)).mass.label
        '62.5 kg'
        """
        if low == high:
            return cls(low)
        return cls(Mass((low.grams + high.grams) // 2, high.unit), (low, high))


@dataclass(frozen=True, slots=True)
class BodyWeight:
    """Body weight with something added (positive) or taken off (negative grams)."""

    change: Mass
    sign: int = 1

    @property
    def text(self) -> str:
        """As written in the trade."""
        if self.change.grams == 0:
            return "BW"
        return f"BW{'+' if self.sign > 0 else '−'}{self.change.label}"


@dataclass(frozen=True, slots=True)
class RepMax:
    """The heaviest load for so many repetitions, or a share of it."""

    reps: int
    percent: float = 100.0

    @property
    def text(self) -> str:
        """As written in the trade."""
        share = "" if self.percent == 100 else f"{self.percent:g} % of "
        return f"{share}{self.reps}RM"


@dataclass(frozen=True, slots=True)
class PercentOfEffort:
    """Percent of the load that the dose's repetitions and those left ask for.

    Nobody writes it: an easy week or a variant makes it of a dose that has only an effort.
    """

    percent: float
    reserve: float

    @property
    def text(self) -> str:
        """For a board."""
        return f"{self.percent:g} % of the load for RIR {self.reserve:g}"


@dataclass(frozen=True, slots=True)
class PercentOfTop:
    """Percent of the heaviest set of the same day."""

    percent: float

    @property
    def text(self) -> str:
        """As written in the trade."""
        return f"{self.percent:g} % of top"


@dataclass(frozen=True, slots=True)
class PercentOfTrainingMax:
    """Percent of a training max, itself a share of the tested value."""

    percent: float

    @property
    def text(self) -> str:
        """As written in the trade."""
        return f"{self.percent:g} % TM"


@dataclass(frozen=True, slots=True)
class Setting:
    """A number on a machine that is no kilogram."""

    value: float

    @property
    def text(self) -> str:
        """As written in the trade."""
        return f"{self.value:g} units"


Load = (
    PercentOfBase
    | PercentOfSystem
    | PercentOfBodyMass
    | FixedLoad
    | BodyWeight
    | RepMax
    | PercentOfTop
    | PercentOfTrainingMax
    | PercentOfEffort
    | PaceOfBest
    | Setting
)


def scaled(load: Load, factor: float) -> Load:
    """A share of a load, said in the same way; body weight alone stays as it is.

    What is taken off a body grows as much as what is added would shrink.
    """
    match load:
        case FixedLoad():
            low, high = load.ends
            return FixedLoad.between(
                *(Mass(round(end.grams * factor), end.unit) for end in (low, high))
            )
        case Setting(value):
            return Setting(round(value * factor, 1))
        case PaceOfBest():
            return load  # an easy week has less of it, at the same pace
        case BodyWeight(change, sign):
            share = factor if sign > 0 else 1 / factor
            return BodyWeight(Mass(round(change.grams * share), change.unit), sign)
        case _:
            share = between(*(round(end * factor, 1) for end in ends(load.percent)))
            return replace(load, percent=share)


def heaviness(load: Load) -> float:
    """A number that grows with the load, to tell which of several of one kind is the heaviest.

    >>> heaviness(RepMax(3)) > heaviness(RepMax(5)) > heaviness(RepMax(5, 90))
    True
    """
    match load:
        case FixedLoad():
            return load.ends[1].grams
        case BodyWeight(change, sign):
            return sign * change.grams
        case Setting(value):
            return value
        case PaceOfBest(seconds):
            return -seconds
        case RepMax(reps, percent):
            # Common practice, no source: a share is less than a repetition more, as a rule.
            return percent * (1 - reps / 40)
        case _:
            return load.percent


WIDEST_MASS = 2
"""The heavier end of a range of masses is at most so many times the lighter: what is wider is no
one load. Common practice, no source."""


def _masses(found: re.Match[str]) -> FixedLoad:
    """A range of masses.

    Raises:
        ValueError: where it runs backwards, has two units, or is too wide to plan with its middle.
    """
    high = Mass.parse(found[3])
    low = Mass.parse(f"{found[1]} {found[2] or re.sub(r'[^a-z]', '', found[3].lower())}")
    if low.unit != high.unit:
        raise ValueError(f"{shown(found[0])} has two units; write both ends in one")
    if low.grams >= high.grams:
        raise ValueError(f"{shown(found[0])} runs backwards; write the smaller number first")
    if high.grams > WIDEST_MASS * low.grams:
        raise ValueError(f"{shown(found[0])} is too wide to plan with; write one of them")
    return FixedLoad.between(low, high)


_SHARE = r"(\d+(?:[.,]\d+)?(?:\s*%?\s*[-–]\s*\d+(?:[.,]\d+)?)?)\s*%"
"""A percentage, or a range of one."""

_PATTERNS: tuple[tuple[str, Callable[[re.Match[str]], Load]], ...] = (
    (_SHARE, lambda m: PercentOfBase(read_share(m[1]))),
    (rf"{_SHARE}\s*(?:of\s+)?system", lambda m: PercentOfSystem(read_share(m[1]))),
    (rf"{_SHARE}\s*(?:of\s+)?BM(?:\s*/\s*hand)?", lambda m: PercentOfBodyMass(read_share(m[1]))),
    (rf"{_SHARE}\s*(?:of\s+)?(?:the\s+)?top", lambda m: PercentOfTop(read_share(m[1]))),
    (rf"{_SHARE}\s*(?:of\s+)?TM", lambda m: PercentOfTrainingMax(read_share(m[1]))),
    (rf"({NUMBER}\s*(?:kgs?|lbs?|g))", lambda m: FixedLoad(Mass.parse(m[1]))),
    (rf"{NUMBER}\s*(kgs?|lbs?|g)?\s*[-–]\s*({NUMBER}\s*(?:kgs?|lbs?|g))", _masses),
    (r"BW", lambda _: BodyWeight(Mass(0))),
    (
        rf"BW\s*([+\-−–])\s*({NUMBER}\s*(?:kgs?|lbs?|g))",
        lambda m: BodyWeight(Mass.parse(m[2]), 1 if m[1] == "+" else -1),
    ),
    (r"(\d{1,2})\s*RM", lambda m: RepMax(int(m[1]))),
    (
        # Not of a 1RM: that is what a percentage alone is of.
        rf"{_SHARE}\s*(?:of\s+)?(?!1\s*RM)(\d{{1,2}})\s*RM",
        lambda m: RepMax(int(m[2]), read_share(m[1])),
    ),
    (PACE, lambda m: PaceOfBest(read_slower(m[1], m[2], m[3]))),
    (rf"{NUMBER}\s*units?", lambda m: Setting(_number(m[1]))),
)

MOST_PERCENT = 150
MOST_ALIKE = 100
"""A number above it that lacks its unit is no percentage."""
MOST_UNITS = 10_000

HOW_TO_WRITE = "'70 %', '70 % system', '25 % BM', '60 kg', 'BW+10 kg', '8RM' or '90 % of top'"


def _number(text: str) -> float:
    return float(text.replace(",", "."))


def bare_load(number: str, before: str = "") -> str:
    """What to write for a load without its unit: the room's unit; a percentage only below 100.

    Args:
        number: as it was written.
        before: what stands before it.

    >>> bare_load("60"), bare_load("225", "@ ")
    ("'60 kg' or '60 %'", "'@ 225 kg'")
    """
    masses = f"'{before}{number} {unit()}'"
    return f"{masses} or '{before}{number} %'" if _number(number) <= MOST_ALIKE else masses


def parse_load(text: str) -> Load:
    """Read one load.

    >>> parse_load("25 % BM")
    PercentOfBodyMass(percent=25.0)

    Raises:
        ValueError: where the text is no load; the message says what to write.
    """
    cleaned = text.strip()
    for pattern, build in _PATTERNS:
        found = re.fullmatch(pattern, cleaned, flags=re.IGNORECASE)
        if found:
            load = build(found)
            if isinstance(load, RepMax) and not 1 <= load.reps <= 20:
                raise ValueError(f"{shown(text)}: an RM has 1 to 20 repetitions, such as '8RM'")
            if isinstance(load, Setting) and load.value > MOST_UNITS:
                raise ValueError(f"{shown(text)} is too large; the most is {MOST_UNITS} units")
            low, high = ends(getattr(load, "percent", MOST_PERCENT))
            if low <= 0 or high > MOST_PERCENT:
                limits = f"above 0 and at most {MOST_PERCENT} %"
                raise ValueError(f"{shown(text)}: a percentage of a load is {limits}")
            return load
    if re.fullmatch(NUMBER, cleaned):
        number = cleaned if len(cleaned) < 10 else "20"
        raise ValueError(f"{shown(text)} has no unit; write {bare_load(number)}")
    raise ValueError(f"{shown(text)} is not a load; write it like {sample(HOW_TO_WRITE)}")


def _read(value: Any) -> Load:
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise refuse("load", f"a load is expected here, such as {sample(HOW_TO_WRITE)}")
    try:
        return parse_load(str(value))
    except ValueError as error:
        raise refuse("load", str(error)) from None


LoadText = Annotated[
    Load,
    BeforeValidator(_read),
    WithJsonSchema({"type": "string", "examples": ["70 %", "60 kg", "25 % BM", "BW+10 kg", "8RM"]}),
]
"""A load as a coach writes it."""
