"""Is what may stand looked at again in time?"""

from collections.abc import Iterator
from datetime import timedelta

from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.words import number


@check(
    "accepted-long",
    Family.COMPLETE,
    Severity.WARN,
    what="The day under 'until' of each accepted finding, against the longest time for which this "
    "house lets one stand without looking.",
    why="Who accepted it has left by then, and nobody knows whether the reason still holds.",
    rules=("accept-longest",),
)
def accepted_long(this: Check, desk: Desk) -> Iterator[Finding]:
    """Entries of `accepted` whose last day is far away."""
    weeks = desk.rule("accept-longest")
    last = desk.today + timedelta(weeks=weeks)
    for program in desk.worked.programs:
        for index, entry in enumerate(program.program.accepted):
            if entry.until is None or entry.until <= last:
                continue
            spot = desk.program_spot(program.id, "accepted", index, "until")
            text = (
                f"it may stand until {entry.until}, more than {number(weeks)} weeks from now; "
                f"at most until {last}"
            )
            edit = Edit(spot.source.file, spot.path, str(last))
            change = Mending(f"write 'until: {last}', or an earlier day", (edit,))
            at = f"accepted {entry.finding}, {entry.at}"
            yield this.finds_in(spot, at, text, change=change, program=program.id)
