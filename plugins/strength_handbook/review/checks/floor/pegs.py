"""Is there something in this room that bands on a bar may hang from?"""

from collections.abc import Iterator

from strength_handbook.floor.pegs import pegged
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending


@check(
    "pegs-unrated",
    Family.FLOOR,
    Severity.WARN,
    what="Lifts with bands on a bar, against racks and kit with two pegs or more that are rated "
    "for bands.",
    why="A peg that is not made for it bends or slips, and the stretched band flies.",
    source="common practice, no source; the maker's word decides",
)
def pegs_unrated(this: Check, desk: Desk) -> Iterator[Finding]:
    """Bands on a bar, and no peg that is said to be rated."""
    if pegged(desk.book.room):
        return
    for at in desk.slots:
        if at.slot.dose.said.bands is not None:
            text = "bands hang on the bar, and nothing in the room has pegs rated for bands"
            change = Mending(
                "ask the maker which pegs are rated, and write their number in room.yml under the "
                "rack or thing that has them, such as 'band-pegs: 2'; or take chains"
            )
            yield this.finds(at, text, spot=at.spot_of("bands"), change=change)
