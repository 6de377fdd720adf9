"""In which unit messages give their examples: the room's, so that nobody copies 225 as kilograms.

Examples are written in kilograms where they stand in the code. While the files of a room in pounds
are read or talked about, `sample` gives them in pounds.
"""

import re
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar

_POUNDS: ContextVar[bool] = ContextVar("samples in pounds", default=False)
_KG = re.compile(r"(\d+(?:\.\d+)?) kg\b")
_POUNDS_PER_KG = 2.2046


@contextmanager
def samples_in(units: str) -> Iterator[None]:
    """Give examples in these units for a while: ``kg`` or ``lb``."""
    before = _POUNDS.set(units == "lb")
    try:
        yield
    finally:
        _POUNDS.reset(before)


def unit() -> str:
    """The unit of examples now."""
    return "lb" if _POUNDS.get() else "kg"


def other_unit() -> str:
    """The unit that may be written as well."""
    return "kg" if _POUNDS.get() else "lb"


def sample(text: str) -> str:
    """A text of ours with its examples in the unit of the room; never for what a coach has written.

    >>> sample("such as '60 kg' or 'BW+10 kg'")
    "such as '60 kg' or 'BW+10 kg'"
    >>> with samples_in("lb"):
    ...     sample("such as '60 kg', '2.5 kg' or 'BW+10 kg'")
    "such as '130 lb', '5 lb' or 'BW+20 lb'"
    """
    return _KG.sub(lambda found: f"{_pounds(float(found[1]))} lb", text) if _POUNDS.get() else text


def _pounds(kilograms: float) -> int:
    """Pounds that a gym has, near enough for an example."""
    return max(5, 5 * round(kilograms * _POUNDS_PER_KG / 5))
