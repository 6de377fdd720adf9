"""What comes off at each strip of a strip set: a share of the present load, a mass, or plates."""

import re
from dataclasses import dataclass
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, WithJsonSchema

from strength_handbook.model.quantities import Mass, read_percent
from strength_handbook.model.shape import refuse, shown

MOST_PLATES = 4
LEAST_SHARE, MOST_SHARE = 5.0, 50.0
LEAST_MASS, MOST_MASS = Mass.parse("500 g"), Mass.parse("200 kg")

_PLATES = re.compile(r"(\d{1,2})\s*plates?", re.IGNORECASE)
_EXAMPLES = "'20 %', '10 kg' or '1 plate'"


@dataclass(frozen=True, slots=True)
class Drop:
    """What each strip takes off.

    Attributes:
        kind: ``share`` of the present load, ``mass`` in all, or ``plates`` from each end.
        amount: percent, grams, or plates.
        text: as it is written.
    """

    kind: Literal["share", "mass", "plates"]
    amount: float
    text: str


def drop_share(percent: float) -> Drop:
    """A share of the present load, in percent.

    >>> drop_share(20)
    Drop(kind='share', amount=20, text='20 %')
    """
    return Drop("share", percent, f"{percent:g} %")


def parse_drop(text: str) -> Drop:
    """Read ``20 %``, ``10 kg`` or ``1 plate``.

    >>> parse_drop("10 kg").amount, parse_drop("2 plates")
    (10000, Drop(kind='plates', amount=2, text='2 plates'))

    Raises:
        ValueError: where the text is none of them, or out of range; the message says what to write.
    """
    text = text.strip()
    if found := _PLATES.fullmatch(text):
        count = int(found[1])
        if not 1 <= count <= MOST_PLATES:
            raise ValueError(f"{shown(text)}: a strip takes off 1 to {MOST_PLATES} plates")
        return Drop("plates", count, f"{count} plate{'s' if count > 1 else ''}")
    if text.endswith("%"):
        percent = read_percent(text)
        if not LEAST_SHARE <= percent <= MOST_SHARE:
            raise ValueError(
                f"{shown(text)}: a strip takes off {LEAST_SHARE:g} % to {MOST_SHARE:g} % of the "
                "present load"
            )
        return drop_share(percent)
    try:
        mass = Mass.parse(text)
    except ValueError:
        raise ValueError(
            f"{shown(text)} does not say what comes off each time; write {_EXAMPLES}"
        ) from None
    if not LEAST_MASS.grams <= mass.grams <= MOST_MASS.grams:
        raise ValueError(
            f"{shown(text)}: a strip takes off {LEAST_MASS.label} to {MOST_MASS.label}"
        )
    return Drop("mass", mass.grams, mass.label)


def _read(value: Any) -> Drop:
    if isinstance(value, Drop):
        return value
    if not isinstance(value, str):
        text = f"{shown(value)} does not say what comes off each time; write {_EXAMPLES}"
        raise refuse("drop", text)
    try:
        return parse_drop(value)
    except ValueError as error:
        raise refuse("drop", str(error)) from None


DropText = Annotated[
    Drop,
    BeforeValidator(_read),
    WithJsonSchema(
        {
            "type": "string",
            "pattern": r"^\s*\d+([.,]\d+)?\s*(%|kgs?|lbs?|g|plates?)\s*$",
            "examples": ["20 %", "10 kg", "1 plate"],
        }
    ),
]
"""What comes off each time: ``20 %`` of the present load, ``10 kg`` in all, or ``1 plate``: from
each end of a bar, else from what hangs or lies there."""
