"""Ranges of loads and lengths as the trade writes them, and in the house's notation."""

import re

from strength_handbook.dose.line_words import NUMBER
from strength_handbook.dose.spelled_units import (
    LENGTHS,
    MASSES,
    any_of,
    house_unit,
    number_and_unit,
    quantity,
)

_TO = r"(?:\s*[-–]\s*|\s+to\s+)"
MASS = rf"{NUMBER}\s*{any_of(MASSES)}"
PERCENT_SIGN = r"(?:%|pct\.?|percent|per\s+cent)"
PERCENT = rf"{NUMBER}\s*{PERCENT_SIGN}"
SEVERAL_SHARES = rf"{NUMBER}(?:\s*%)?(?:[-–]|\s+to\s+){PERCENT}"
SEVERAL_MASSES = rf"{NUMBER}(?:\s*{any_of(MASSES)})?{_TO}{MASS}"
SEVERAL_LENGTHS = rf"{NUMBER}(?:\s*{any_of(LENGTHS)})?{_TO}{NUMBER}\s*{any_of(LENGTHS)}"


def house_percent(text: str) -> str:
    """A percentage in the house's notation."""
    return f"{number_and_unit(text)[0]} %"


def house_shares(text: str) -> str:
    """A range of percent.

    >>> house_shares("70 to 75 percent"), house_shares("70%–75%")
    ('70-75 %', '70-75 %')
    """
    low, high = re.split(r"[-–]|\s+to\s+", text)
    return f"{number_and_unit(low)[0]}-{house_percent(high)}"


def house_masses(text: str) -> str:
    """A range of masses; a number alone has the unit of the other.

    >>> house_masses("60 to 65 kilos"), house_masses("135lb–155 lbs")
    ('60-65 kg', '135-155 lb')
    """
    low, high = re.split(r"\s*[-–]\s*|\s+to\s+", text)
    number, written = number_and_unit(low)
    heavy = quantity(MASSES)(high)
    other = house_unit(written, MASSES) if written else heavy.split()[1]
    return f"{number}{'' if heavy.endswith(other) else f' {other}'}-{heavy}"


def house_lengths(text: str) -> str:
    """A range of lengths; a number alone has the unit of the other.

    >>> house_lengths("20 to 30 metres"), house_lengths("20yd-30 yards")
    ('20-30 m', '20-30 yd')
    """
    low, high = re.split(r"\s*[-–]\s*|\s+to\s+", text)
    number, written = number_and_unit(low)
    far = quantity(LENGTHS)(high)
    other = house_unit(written, LENGTHS) if written else far.split()[1]
    return f"{number}{'' if far.endswith(f' {other}') else f' {other}'}-{far}"
