"""How large the print may be for a table to stay on one sheet across.

An estimate on the safe side: how many letters go into a column, and so how many lines a cell has.
"""

from collections.abc import Sequence
from math import ceil
from textwrap import wrap

from strength_handbook.model.paper import MM, Paper, Size

SIZES = (9.0, 8.5, 8.0, 7.5, 7.0, 6.5, 6.0, 5.5, 5.0, 4.75, 4.5)
"""Sizes of print in points, the largest first."""
LEAST = SIZES[-1]
READABLE = 7.0
"""Points below which a larger sheet is asked for. Common practice, no source."""

MARGIN = 6 * MM
"""All round the sheet, points."""
FIRST = 11 * MM
"""The column of the sessions and of the names of the sums."""
LETTER = 0.52
"""Mean width of a letter as a share of the print's size."""
LINE = 1.2
"""Height of a line as a share of the print's size."""
SIDE = 0.4 * MM
"""Left and right of the text of a cell."""
PADDING = 0.55 * MM
"""Above and below the text of a row, and its line."""


def inside_of(paper: Paper) -> Size:
    """A sheet across, less its margins."""
    return Size(paper.sheet.height - 2 * MARGIN, paper.sheet.width - 2 * MARGIN)


def room_for(size: float, high: float, *, rows: int) -> float:
    """How many lines of print there is room for in some height, with so many rows."""
    return (high - rows * PADDING) / (size * LINE)


def lines_of(
    cells: Sequence[Sequence[tuple[str, int]]], columns: int, size: float, wide: float
) -> int:
    """Lines that some rows of a table take, each as many as its fullest cell.

    >>> lines_of([[("4×5 @74% RIR 2", 1), ("4×5", 1)]], 2, 9.0, 800)
    1

    Args:
        cells: for each row its texts, with the number of columns that each may take.
        columns: how many columns there are.
        size: of the print, in points.
        wide: the whole table, in points.
    """
    return sum(
        max((_lines(text, span, columns, size, wide) for text, span in row if text), default=0)
        for row in cells
    )


def first_column_lines(title: str, size: float) -> int:
    """Lines of a session's title beside its rows."""
    return _wrapped(title, FIRST, size)


def _lines(text: str, span: int, columns: int, size: float, wide: float) -> int:
    return _wrapped(text, (wide - FIRST) / columns * span, size)


def _wrapped(text: str, wide: float, size: float) -> int:
    letters = max(1, int((wide - 2 * SIDE) / (size * LETTER)))
    lines = wrap(text, letters, break_long_words=False)
    return sum(ceil(len(line) / letters) for line in lines)
