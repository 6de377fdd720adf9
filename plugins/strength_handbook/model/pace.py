"""A pace as a dose asks for it: that of a tested best, and so many seconds slower or faster."""

from dataclasses import dataclass

from strength_handbook.model.span import between, ends

_NUMBER = r"(\d{1,3}(?:[.,]\d)?)"
PACE = rf"pace(?:\s*([+\-−–])\s*{_NUMBER}(?:\s*[-–]\s*{_NUMBER})?\s*s)?"
"""How it is written: ``pace``, ``pace +8 s``, ``pace +5-8 s``, ``pace -2 s``."""


@dataclass(frozen=True, slots=True)
class PaceOfBest:
    """So many seconds slower than the pace of a tested best; less than 0 is faster."""

    seconds: float

    @property
    def text(self) -> str:
        """As written in the trade."""
        low, high = sorted(abs(end) for end in ends(self.seconds))
        if high == 0:
            return "pace"
        many = f"{low:g}" if low == high else f"{low:g}–{high:g}"
        return f"pace {'+' if self.seconds > 0 else '−'}{many} s"


def read_slower(sign: str | None, least: str | None, most: str | None) -> float:
    """Seconds slower than a pace, or a range of them, from the parts of `PACE`.

    >>> f"{read_slower('+', '5', '8'):g}", read_slower("-", "2", None)
    ('5–8', -2.0)

    Raises:
        ValueError: where the range runs backwards, or is of nothing.
    """
    if sign is None or least is None:
        return 0.0
    low, high = (float(one.replace(",", ".")) for one in (least, most or least))
    if high < low or (most is not None and high == low):
        raise ValueError(f"'{least}-{most}' runs backwards; write the smaller number first")
    return between(low, high) if sign == "+" else between(-high, -low)
