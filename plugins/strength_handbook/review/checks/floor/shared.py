"""Can those who share a bar keep the interval, with all that changes on it?"""

from collections.abc import Iterator
from math import ceil

from strength_handbook.plan.one_bar import longest, rounds
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.words import clock, number

WHOLE = 10
"""An interval is offered in steps of so many seconds."""


@check(
    "bar-each",
    Family.FLOOR,
    Severity.WARN,
    what="A round of all who share a bar, each with a set and with the plates, bands and chains "
    "that change for the next one, against the interval from start to start. The example lifters "
    "share it, those who need longest.",
    why="Whoever hurries with plates and bands lets one of them go, or lifts another's load.",
    rules=("swap-time", "plate-time", "band-time"),
    source="counting; seconds for each change are common practice, no source",
)
def bar_each(this: Check, desk: Desk) -> Iterator[Finding]:
    """Doses on a shared bar whose interval is too short for the changes."""
    for at in desk.slots:
        slot, people = at.slot, at.program.program.group.sharing
        every = slot.dose.every
        if every is None:
            continue
        slowest = longest(rounds(desk.book, slot, people))
        if slowest is None or slowest.seconds <= every:
            continue
        text = (
            f"{clock(slowest.seconds)} until {people} example lifters have lifted on one bar "
            f"({slowest.plates} plates a side"
            + (f", bands or chains {number(slowest.hung)} times" if slowest.hung else "")
            + f"); a set starts every {clock(every)}"
        )
        enough = clock(WHOLE * ceil(slowest.seconds / WHOLE))
        change = Mending(
            f"write 'every {enough}', or give everybody a bar", at.rewritten(every=enough)
        )
        yield this.finds(at, text, spot=at.spot_of("every"), change=change)
