"""Lengths in metres that remember the unit a coach wrote them in."""

from typing import Literal, Self

Metric = Literal["m", "cm", "mm"]

METRES_IN = {
    "m": 1.0, "cm": 0.01, "mm": 0.001, "km": 1000.0,
    "ft": 0.3048, "in": 0.0254, "yd": 0.9144, "mi": 1609.344,
}  # fmt: skip
"""Exact by definition: international yard and pound agreement, 1959."""

_METRIC = ("m", "cm", "mm")


class Length(float):
    """A length in metres, to be counted with as one, and its unit.

    Sums and differences are plain metres again.

    >>> Length.of(100, "ft"), Length.of(100, "ft").unit
    (30.48, 'ft')
    """

    __slots__ = ("unit",)
    unit: str

    def __new__(cls, metres: float, unit: str = "m") -> Self:
        """A number of metres, written in a unit."""
        one = super().__new__(cls, metres)
        one.unit = unit
        return one

    @classmethod
    def of(cls, amount: float, unit: str) -> Self:
        """So many of a unit."""
        return cls(round(amount * METRES_IN[unit], 6), unit)

    def __getnewargs__(self) -> tuple[float, str]:  # type: ignore[override]  # a unit belongs to it
        """For copies."""
        return float(self), self.unit


def own_unit(length: float) -> str:
    """The unit of a length that was written in any but m, cm and mm; "" for those."""
    unit: str = getattr(length, "unit", "m")  # of a range that of its longer end
    return "" if unit in _METRIC else unit


def amount_in(length: float, unit: str, digits: int = 2) -> str:
    """A length as a number of a unit, without needless zeros.

    >>> amount_in(Length.of(43, "in"), "in"), amount_in(0.45, "cm"), amount_in(1.125, "cm")
    ('43', '45', '112.5')
    """
    text = f"{length / METRES_IN[unit]:.{digits}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def length_text(
    length: float, metric: Metric = "m", *, like: float | None = None, gap: str = " "
) -> str:
    """A length with its unit: as written in feet, inches, yards, miles or km, else metric.

    Args:
        length: metres.
        metric: the unit where a length was written in metric units.
        like: another length whose unit is to be taken; for sums, which have none.
        gap: what stands before the unit.

    >>> length_text(Length.of(100, "ft")), length_text(1.09), length_text(Length.of(45, "cm"), "cm")
    ('100 ft', '1.09 m', '45 cm')
    >>> length_text(45.72, like=Length.of(100, "ft")), length_text(Length.of(1.75, "in"), "mm")
    ('150 ft', '1.75 in')
    """
    unit = own_unit(length if like is None else like) or metric
    return f"{amount_in(length, unit)}{gap}{unit}"


def span_text(low: float, high: float) -> str:
    """From one height to another, in centimetres or as written.

    >>> span_text(0.3, 1.1), span_text(Length.of(10, "in"), Length.of(40, "in"))
    ('30 to 110 cm', '10 to 40 in')
    """
    unit = own_unit(low) or own_unit(high) or "cm"
    return f"{amount_in(low, unit)} to {amount_in(high, unit)} {unit}"
