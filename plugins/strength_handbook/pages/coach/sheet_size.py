"""How large the print may be for a table to stay on one A4 landscape.

An estimate on the safe side: how many letters go into a column, and so how many lines a cell has.
"""

from collections.abc import Sequence
from math import ceil
from textwrap import wrap

SIZES = (9.0, 8.5, 8.0, 7.5, 7.0, 6.5, 6.0, 5.5, 5.0, 4.75, 4.5)
"""Sizes of print in points, the largest first."""
LEAST = SIZES[-1]
READABLE = 7.0
"""Points below which a larger sheet is asked for. Common practice, no source."""

WIDTH_MM, HEIGHT_MM = 285.0, 198.0
"""A4 across, less a margin of 6 mm all round."""
FIRST_MM = 11.0
"""The column of the sessions and of the names of the sums."""
POINT_MM = 25.4 / 72
LETTER = 0.52
"""Mean width of a letter as a share of the print's size."""
LINE = 1.2
"""Height of a line as a share of the print's size."""
SIDE_MM = 0.4
"""Left and right of the text of a cell."""
PADDING_MM = 0.55
"""Above and below the text of a row, and its line."""


def room_for(size: float, *, rows: int) -> float:
    """How many lines of print there is room for, with so many rows."""
    return (HEIGHT_MM - rows * PADDING_MM) / (size * LINE * POINT_MM)


def lines_of(cells: Sequence[Sequence[tuple[str, int]]], columns: int, size: float) -> int:
    """Lines that some rows of a table take, each as many as its fullest cell.

    >>> lines_of([[("4×5 @74% RIR 2", 1), ("4×5", 1)]], 2, 9.0)
    1

    Args:
        cells: for each row its texts, with the number of columns that each may take.
        columns: how many columns there are.
        size: of the print, in points.
    """
    return sum(
        max((_lines(text, span, columns, size) for text, span in row if text), default=0)
        for row in cells
    )


def first_column_lines(title: str, size: float) -> int:
    """Lines of a session's title beside its rows."""
    return _wrapped(title, FIRST_MM, size)


def _lines(text: str, span: int, columns: int, size: float) -> int:
    return _wrapped(text, (WIDTH_MM - FIRST_MM) / columns * span, size)


def _wrapped(text: str, width_mm: float, size: float) -> int:
    letters = max(1, int((width_mm - 2 * SIDE_MM) / (size * LETTER * POINT_MM)))
    lines = wrap(text, letters, break_long_words=False)
    return sum(ceil(len(line) / letters) for line in lines)
