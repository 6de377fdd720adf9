"""The paper that a gym prints on: its sheet, and the smaller one of the cards at the stations."""

from dataclasses import dataclass

MM = 72 / 25.4
"""Points in a millimetre: 72 of them are an inch, as in PDF (ISO 32000-1, 8.3.2.3)."""
INCH = 72.0
"""Points in an inch."""


@dataclass(frozen=True, slots=True)
class Size:
    """A sheet upright.

    Attributes:
        width, height: points.
    """

    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Paper:
    """One system of paper.

    Attributes:
        key: as `room.yml` and the page's class name it.
        name: of the sheet, as pages say it.
        sheet: its size.
        card_name: of a card's paper.
        card: its size.
        larger: what to take where the print on one sheet is too small.
    """

    key: str
    name: str
    sheet: Size
    card_name: str
    card: Size
    larger: str


A4 = Paper(
    "A4", "A4", Size(210 * MM, 297 * MM), "A5", Size(148 * MM, 210 * MM), larger="A3"
)  # fmt: skip
"""ISO 216: A4 is 210 mm × 297 mm, A5 is 148 mm × 210 mm, and A3 is two of A4."""
LETTER = Paper(
    "letter", "Letter", Size(8.5 * INCH, 11 * INCH),
    "half-Letter", Size(5.5 * INCH, 8.5 * INCH), larger="11 × 17 inches",
)  # fmt: skip
"""ANSI/ASME Y14.1: size A, called Letter, is 8.5 in × 11 in, and size B 11 in × 17 in. Half of a
sheet, cut across, has no name of its own there: common practice, no source."""
PAPERS = {paper.key: paper for paper in (A4, LETTER)}
