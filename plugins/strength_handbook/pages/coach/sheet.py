"""The whole program on one sheet across: weeks as columns, slots as rows."""

from collections.abc import Sequence
from typing import Any

from strength_handbook.model.paper import Paper
from strength_handbook.pages.coach.frame import coach_page, coach_uri, head_of
from strength_handbook.pages.coach.sheet_rows import Sheet, SlotRow, by_wave, sheet_of
from strength_handbook.pages.coach.sheet_size import (
    LEAST,
    READABLE,
    SIZES,
    first_column_lines,
    inside_of,
    lines_of,
    room_for,
)
from strength_handbook.pages.page import Page
from strength_handbook.plan.worked import WorkedProgram, WorkedWeek

SUMS = (
    ("Lower, s", "eccentric_s"),
    ("Hold, s", "isometric_s"),
    ("Fast", "fast_reps"),
)


def sheet_page(program: WorkedProgram, paper: Paper) -> Page:
    """The program on one page; a page for each wave where it does not fit on one."""
    sheets = fitting_sheets(program, paper)
    return coach_page(
        coach_uri("one-page", program.id),
        "On one page",
        "coach_sheet.html",
        head_of(program)
        | {"sheets": [_view(sheet, size) for sheet, size in sheets], "paper": paper},
        says=f"The whole program on one {paper.name} sheet, to print across",
    )  # fmt: skip


def fitting_sheets(program: WorkedProgram, paper: Paper) -> list[tuple[Sheet, float]]:
    """Sheets with their size of print in points: one, or one for each wave."""
    whole = sheet_of(program.weeks)
    size = _size(whole, paper)
    if size is not None:
        return [(whole, size)]
    parts = [sheet_of(weeks) for weeks in by_wave(program.weeks)]
    return [(part, _size(part, paper) or LEAST) for part in parts]


def _size(sheet: Sheet, paper: Paper) -> float | None:
    """The largest print with which a sheet stays on one page, or None."""
    columns, inside = len(sheet.weeks), inside_of(paper)
    sessions = [(one.title, [_texts(row) for row in one.rows]) for one in sheet.sessions]
    fixed = len(SUMS) + 6
    rows = fixed + sum(2 * len(texts) for _, texts in sessions)
    for size in SIZES:
        height = sum(
            max(
                first_column_lines(title, size),
                sum(lines_of(row, columns, size, inside.width) for row in texts),
            )
            for title, texts in sessions
        )
        if height + fixed <= room_for(size, inside.height, rows=rows):
            return size
    return None


def _texts(row: SlotRow) -> list[list[tuple[str, int]]]:
    """The two lines of cells of a row, each text with the number of columns it has."""
    names = [(name.text, name.weeks) for name in row.names]
    return [names, [(text, 1) for text in row.doses]]


def _view(sheet: Sheet, size: float) -> dict[str, Any]:
    return {
        "size": f"{size:g}",
        "small": size < READABLE,
        "waves": sheet.waves,
        "weeks": [
            {
                "number": week.week,
                "deload": week.deload,
                "test": week.week in week.wave.tests,
            }
            for week in sheet.weeks
        ],
        "sessions": sheet.sessions,
        "minutes": [week_minutes(week) for week in sheet.weeks],
        "sums": [
            (title, [f"{getattr(week.volume, name):.0f}" for week in sheet.weeks])
            for title, name in SUMS
        ],
        "optional": any(one.session.optional for week in sheet.weeks for one in week.sessions),
    }


def week_minutes(week: WorkedWeek) -> str:
    """Minutes of a week, and those of its optional sessions besides."""
    planned = sum(one.minutes.total for one in week.sessions if not one.session.optional)
    optional = sum(one.minutes.total for one in week.sessions if one.session.optional)
    return f"{planned:.0f}" + (f" + {optional:.0f}" if optional else "")


def week_range(weeks: Sequence[WorkedWeek]) -> str:
    """First and last week of several.

    >>> week_range([])
    ''
    """
    if not weeks:
        return ""
    first, last = weeks[0].week, weeks[-1].week
    return f"week {first}" if first == last else f"weeks {first} to {last}"
