"""Does a printed card say until when it holds?"""

from collections.abc import Iterator
from datetime import date, timedelta

from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Edit, Finding, Mending


@check(
    "end-date",
    Family.WORDS,
    Severity.WARN,
    what="The day until which a program is valid, against its last week.",
    why="A card without a day to take it down hangs at the station for years.",
)
def end_date(this: Check, desk: Desk) -> Iterator[Finding]:
    """Programs without an end, or with one before their last week is over."""
    for program in desk.worked.programs:
        until, last = program.program.valid_until, _last_day(program)
        if until is not None and (last is None or until >= last):
            continue
        spot = desk.program_spot(program.id, "version" if until is None else "valid-until")
        if until is None:
            text = "no 'valid-until', so cards and pages print no day to take them down"
        else:
            week = program.weeks[-1].week
            text = f"valid until {until}, and week {week} ends on {last}"
        if last is None:
            change = Mending("write 'valid-until:' and the day after which no card may hang")
        else:
            edit = Edit(spot.source.file, ("valid-until",), last.isoformat())
            change = Mending(f"write 'valid-until: {last}'", (edit,))
        yield this.finds_in(spot, "program", text, change=change, program=program.id)


def _last_day(program: WorkedProgram) -> date | None:
    start = program.program.start
    if start is None or not program.weeks:
        return None
    return start + timedelta(weeks=program.weeks[-1].week, days=-1)
