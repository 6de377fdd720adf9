"""House rules: numbers that are nobody's finding but the coach's choice, each with its owner.

`RULES` lists every rule the handbook knows, with the value used where `house-rules.yml` is silent.
"""

from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from strength_handbook.model.program import DateText
from strength_handbook.model.shape import Shape

COMMON = "common practice, no source"


@dataclass(frozen=True, slots=True)
class RuleKind:
    """A rule the handbook knows.

    Attributes:
        default: the value where the coach has set none.
        unit: the unit it is written in, ``""`` for a plain number.
        what: what it decides, in one sentence.
        source: where the default comes from.
    """

    default: float
    unit: str
    what: str
    source: str = COMMON


RULES: dict[str, RuleKind] = {
    "seconds-per-rep": RuleKind(
        3, "s", "Time of one repetition where no tempo is written.",
        "best fit to ten published session times; 2.5 to 4 s were tried",
    ),
    "walking-speed": RuleKind(1, "m/s", "Speed of a carry, for session minutes."),
    "change-time": RuleKind(60, "s", "Time to move from one exercise to the next."),
    "swap-time": RuleKind(15, "s", "Time to swap between paired exercises or between partners."),
    "ramp-sets": RuleKind(4, "sets", "Sets on the way up to today's top set, for session minutes."),
    "ramp-rest": RuleKind(60, "s", "Rest between those sets."),
    "slow-lowering": RuleKind(4, "s", "A lowering this long or longer counts as slow."),
    "long-pause": RuleKind(2, "s", "A pause this long or longer counts as long."),
    "slow-factor": RuleKind(
        0.7, "", "Share of the usual repetitions that slow lowering or a long pause leaves."
    ),
    "hard-set-reserve": RuleKind(
        4, "reps", "A set that leaves more repetitions than this is not counted as hard."
    ),
    "hard-hold-effort": RuleKind(7, "RPE", "A hold below this effort is not counted as hard."),
    "show-planned-from": RuleKind(
        1, "%", "Print the planned load too when plates miss it by more than this."
    ),
}  # fmt: skip


class Rule(Shape):
    """One rule as this house has set it."""

    value: str
    """The number with its unit."""
    why: str | None = None
    """The reason, in one sentence."""


class HouseRules(Shape):
    """`house-rules.yml`: the coach's own numbers, with an owner and a date."""

    owner: str
    """The role that may change them."""
    date: DateText
    """When they were last looked at."""
    rules: Annotated[dict[str, Rule], Field(default_factory=dict)]


def read_value(text: str, unit: str) -> float:
    """A rule's number, checked against the unit it must have.

    >>> read_value("60 s", "s")
    60.0

    Raises:
        ValueError: where the number or the unit is not right; the message says what to write.
    """
    number, _, written = text.strip().partition(" ")
    try:
        value = float(number.replace(",", "."))
    except ValueError:
        raise ValueError(f"'{text}' is not a number; write it like '{_example(1, unit)}'") from None
    if value < 0:
        raise ValueError(f"'{text}': a rule's number is not negative")
    if written.strip() != unit:
        raise ValueError(f"'{text}' has the wrong unit; write '{_example(value, unit)}'")
    return value


def _example(value: float, unit: str) -> str:
    return f"{value:g} {unit}".strip()
