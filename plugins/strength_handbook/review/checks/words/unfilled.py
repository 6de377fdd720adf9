"""Is a place of a new gym's files still open?"""

from collections.abc import Iterator

from strength_handbook.reading.problem import Severity
from strength_handbook.reading.unfilled import asking, unfilled
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.texts import all_texts


@check(
    "not-filled-in",
    Family.WORDS,
    Severity.WARN,  # it can be looked at; `build --strict` refuses it
    what="Places that say 'Not yet filled in (…)'.",
    why="A new gym's files leave them open, and only somebody who is there knows the answer. "
    "Members would look for the ambulance's door and find a blank.",
    source="the files that 'strength-handbook init' writes",
)
def not_filled_in(this: Check, desk: Desk) -> Iterator[Finding]:
    """Texts with a sign in them."""
    for one in all_texts(desk):
        for _, what in unfilled(one.text):
            change = Mending(asking(what))
            where = f"'{one.key}' is not yet filled in"
            yield this.finds_in(one.spot, one.what, where, change=change, program=one.program)
