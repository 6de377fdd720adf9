"""What the handbook knows of one house rule: its own value, unit, limits and source."""

from dataclasses import dataclass

COMMON = "common practice, no source"


@dataclass(frozen=True, slots=True)
class RuleKind:
    """A rule the handbook knows.

    Attributes:
        default: the value where the coach has set none.
        unit: the unit it is written in, ``""`` for a plain number.
        what: what it decides, in one sentence.
        least: the smallest value that makes sense.
        most: the largest.
        source: where the default comes from.
    """

    default: float
    unit: str
    what: str
    least: float
    most: float
    source: str = COMMON
