"""Units and times as the trade writes them, and in the house's notation.

All of it is common practice, no source.
"""

import re
from collections.abc import Callable, Mapping

from strength_handbook.dose.line_words import NUMBER

MASSES = {
    "kg": ("kilograms", "kilogram", "kilos", "kilo", "kgs", "kg"),
    "lb": ("pounds", "pound", "lbs", "lb", "#"),
}
TIMES = {
    "s": ("seconds", "second", "secs", "sec", "s", '"', "″", "''"),
    "min": ("minutes", "minute", "mins", "min", "'", "′"),
}
LENGTHS = {
    "m": ("metres", "metre", "meters", "meter", "m"),
    "yd": ("yards", "yard", "yds", "yd"),
    "ft": ("feet", "foot", "ft"),
    "mi": ("miles", "mile", "mi"),
    "km": ("kilometres", "kilometers", "km", "k"),
}
HEIGHTS = {
    "cm": ("centimetres", "centimeters", "cm"),
    "in": ("inches", "inch", "in", '"', "″"),
    "ft": LENGTHS["ft"],
}
"""Each unit of the house with all its spellings, longest first."""


UNITS: Mapping[str, tuple[str, ...]] = {**MASSES, **TIMES, **LENGTHS, **HEIGHTS}
"""All of them."""


def any_of(*units: Mapping[str, tuple[str, ...]]) -> str:
    """A pattern for one of several units; those of letters may end in a full stop."""
    several = [one for unit in units for spelled in unit.values() for one in spelled]
    dotted = (re.escape(one) + (r"\.?" if one.isalpha() else "") for one in several)
    return f"(?:{'|'.join(dotted)})"


def house_unit(text: str, units: Mapping[str, tuple[str, ...]]) -> str:
    """The house's word for a unit."""
    plain = text.lower().rstrip(".")
    return next(unit for unit, spelled in units.items() if plain in spelled)


def quantity(units: Mapping[str, tuple[str, ...]]) -> Callable[[str], str]:
    """From a number with a unit to the same in the house's unit."""

    def house(text: str) -> str:
        number, unit = number_and_unit(text)
        return f"{number} {house_unit(unit, units)}"

    return house


def number_and_unit(text: str) -> tuple[str, str]:
    """A number and what stands behind it."""
    found = re.match(rf"({NUMBER})\s*(.*)", text, re.DOTALL)
    if found is None:
        raise AssertionError(text)
    return found[1], found[2].strip()


MINUTES = any_of({"min": TIMES["min"]})
SECONDS = any_of({"s": TIMES["s"]})
_SHORT = rf"{NUMBER}\s*{any_of(TIMES)}|\d{{1,2}}:\d{{2}}|:\d{{2}}"
_BOTH = rf"\d{{1,2}}\s*(?:{MINUTES}|m)\s*[0-5]?\d(?:\s*{SECONDS})?"
TIME = rf"(?:{_BOTH}|{_SHORT})"


def house_time(text: str) -> str:
    """Minutes and seconds as on a clock, all others with their unit.

    >>> [house_time(one) for one in ("1'30", '90"', "2 minutes", "1m30s", ":45", "2m")]
    ['1:30', '90 s', '2 min', '1:30', '45 s', '2 min']
    """
    if both := re.fullmatch(rf"(\d+)\s*(?:{MINUTES}|m)\s*(\d+)(?:\s*{SECONDS})?", text, re.I):
        return f"{both[1]}:{int(both[2]):02d}"
    if ":" in text:
        return text if text[0] != ":" else f"{int(text[1:])} s"
    number, unit = number_and_unit(text)
    return f"{number} min" if unit.lower() == "m" else f"{number} {house_unit(unit, TIMES)}"


def house_resting(text: str) -> str:
    """A time, or a range of one; a number alone has the unit of the other.

    >>> [house_resting(one) for one in ("60-90 s", "2 to 3 minutes", "1:30–2:00", "2-2:30")]
    ['60-90 s', '2-3 min', '1:30-2:00', '2 min-2:30']
    """
    *before, last = re.split(r"\s*(?:-|–|to)\s*", text.strip())
    high = house_time(last)
    unit = " min" if ":" in high else ""
    both = [f"{one}{unit}" if re.fullmatch(NUMBER, one) else house_time(one) for one in before]
    return "-".join([*both, high])


FROM = rf"(?:(?:{TIME}|{NUMBER}(?:\s*m\b)?)\s*(?:-|–|to)\s*)?"
"""The lower end of a range of times, where there is one."""

_WORDS = {unit: tuple(filter(str.isalpha, spelled)) for unit, spelled in TIMES.items()}
LONG = (
    rf"(?:(?:[2-9]\d|\d{{3}})\s*{any_of({'s': _WORDS['s']})}"
    rf"|(?:[7-9]\d|\d{{3}})\s*{SECONDS}"
    rf"|{NUMBER}\s*{any_of({'min': _WORDS['min']})}|\d\s*[\'′]|\d{{1,2}}:\d{{2}})"
)
"""A time of at least 20 s; with a sign that is one of inches too, more than a box has inches."""
