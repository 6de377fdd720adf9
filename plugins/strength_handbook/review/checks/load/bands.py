"""Do this room's bands give what is asked of them?"""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from strength_handbook.model.methods import BandsOn
from strength_handbook.plan.on_top import served
from strength_handbook.plan.variable import OnTop
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.words import number

MOST_SHARE = 60
"""No larger share of the best is offered."""


@check(
    "bands-coarse",
    Family.LOAD,
    Severity.WARN,
    what="Pull at the top of the nearest pair of bands that may hang together, against the written "
    "share of the best, for every example lifter, in points of the best.",
    why="The bands are too few or too far apart for this lifter, who lifts against another pull "
    "than planned.",
    rules=("bands-off",),
    source="arithmetic on the room's own readings; the limit is common practice, no source",
)
def bands_coarse(this: Check, desk: Desk) -> Iterator[Finding]:
    """Pairs of bands far from the share they are meant to give."""
    most = desk.rule("bands-off")
    for at in desk.slots:
        off = _off(at.slot.on_top, _tested_kg(desk, at), most)
        if not off or at.slot.on_top is None:
            continue
        wanted = number(at.slot.on_top.top_share or 0.0)
        told = ", ".join(f"{name} {number(share)} % from {what}" for name, share, what in off)
        text = (
            f"bands of {wanted} % of the best at the top: {told}; at most {number(most)} points off"
        )
        yield this.finds(at, text, spot=at.spot_of("bands"), change=_nearer(desk, at, most))


def _tested_kg(desk: Desk, at: SlotAt) -> dict[str, float]:
    """Tested value of the example lifters who lift this with bands."""
    base = at.slot.base_id
    return {
        name: desk.book.lifters[name].bases[base].grams / 1000
        for name in at.slot.variable
        if base is not None
    }


def _off(
    asked: OnTop | None, tested_kg: Mapping[str, float], most: float
) -> list[tuple[str, float, str]]:
    """Lifter, percent of the best that the bands pull at the top, and their numbers."""
    if asked is None or asked.top_share is None:
        return []
    found = []
    for name, best in tested_kg.items():
        pair = asked.nearest_pair(best)
        share = 100 * pair.top_pull / best
        if round(abs(share - asked.top_share), 2) > most:
            found.append((name, round(share, 1), f"{pair.left} and {pair.right}"))
    return found


def _nearer(desk: Desk, at: SlotAt, most: float) -> Mending:
    """The nearest share that this room has for all example lifters."""
    slot = at.slot
    asked = slot.dose.said.bands
    wanted = (asked.top_share if asked is not None else None) or 20.0
    for share in sorted(range(5, MOST_SHARE + 1), key=lambda one: (abs(one - wanted), one)):
        bands = BandsOn.model_validate({"top-share": f"{share} %"})
        dose = replace(slot.dose, said=slot.dose.said.model_copy(update={"bands": bands}))
        other = served(desk.book.room, slot.exercise.load, dose)
        if other is not None and not _off(other, _tested_kg(desk, at), most):
            edits = at.rewritten(bands={"top-share": f"{share} %"})
            return Mending(f"write 'bands {share} % at top'", edits)
    return Mending("read and number a pair of bands between those there are, or use chains")
