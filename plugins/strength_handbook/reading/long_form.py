"""The values of a line in the long form, as keys would say them."""

from collections.abc import Iterable

from pydantic import ValidationError

from strength_handbook.dose.clause import Found
from strength_handbook.model.dose_part import DosePart
from strength_handbook.reading.source import Plain


def stored(found: Iterable[Found]) -> dict[str, Plain]:
    """All values of a line in the long form."""
    long: dict[str, Plain] = {}
    for value in found:
        if value.key:
            store(long, value)
    return long


def store(long: dict[str, Plain], value: Found) -> None:
    """Put one value of a line into its place in the long form.

    >>> dose: dict[str, Plain] = {}
    >>> store(dose, Found(("sets",), "3", 0))
    >>> store(dose, Found(("cluster", "parts", 0), "4", 3))
    >>> store(dose, Found(("cluster", "parts", 1), "2", 5))
    >>> dose
    {'sets': '3', 'cluster': {'parts': ['4', '2']}}
    >>> for key, text in (("reps", "5"), ("load", "65 %")):
    ...     store(dose, Found(("series", 0, key), text, 0))
    >>> dose["series"]
    [{'reps': '5', 'load': '65 %'}]
    """
    inner: Plain = long
    for part, following in zip(value.key, (*value.key[1:], None), strict=True):
        step: Plain = value.value
        if following is not None:
            step = [] if isinstance(following, int) else {}
        if isinstance(inner, dict):
            inner = inner.setdefault(str(part), step)
        elif isinstance(inner, list) and isinstance(part, int):  # values of a list come in order
            if part == len(inner):
                inner.append(step)
            inner = inner[part]


def part_of(found: Iterable[Found]) -> DosePart | None:
    """The dose that the values of a line make; None where one of them can't be."""
    try:
        return DosePart.model_validate(stored(found))
    except ValidationError:
        return None
