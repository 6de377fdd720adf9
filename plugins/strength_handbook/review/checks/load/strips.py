"""Can the strips of a strip set be taken off here?"""

from collections.abc import Iterator
from dataclasses import replace

from strength_handbook.model.dose import StripSet
from strength_handbook.model.drop import drop_share
from strength_handbook.model.loading import OnMachine
from strength_handbook.model.methods import Strip
from strength_handbook.plan.slot_strips import slot_strips
from strength_handbook.plan.strip_lifters import lifter_strips
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.words import listed, number, weight

SHARES = (20, 25, 15, 30, 35, 40, 10, 50)
"""Shares to offer instead, the usual first. Common practice, no source."""


@check(
    "strip-impossible",
    Family.LOAD,
    Severity.WARN,
    what="Strip sets, from today's load of every example lifter: what should come off, against "
    "what can come off here. Plates only come off, within five points of a share or a quarter of "
    "a mass.",
    why="The page has no loads for this lifter, who guesses in the middle of a hard set.",
    source="search over every stack of plates; exact",
)
def strip_impossible(this: Check, desk: Desk) -> Iterator[Finding]:
    """Strips that nobody can take off."""
    for at in desk.slots:
        work = at.slot.dose.work
        if not isinstance(work, StripSet):
            continue
        asked = work.strip
        whose = [
            f"{name} from {weight(at.slot.loads[name].actual_g or 0, desk.book.room.units)}"
            for name, loads in at.slot.strips.items()
            if loads is None
        ]
        if not whose and _without_settings(desk, at, asked):
            whose = ["this machine's units"]
        if not whose:
            continue
        text = f"{asked.loads} loads with {asked.drop.text} off each time can't be made here: "
        change = _other(desk, at, asked)
        yield this.finds(at, text + listed(whose), spot=at.spot_of("strip"), change=change)


def _without_settings(desk: Desk, at: SlotAt, asked: Strip) -> bool:
    """True for a machine with units of its own, which has no kilograms and no plates."""
    on_machine = isinstance(at.slot.exercise.load, OnMachine)
    plan = slot_strips(desk.book, at.slot)
    return on_machine and asked.drop.kind != "share" and plan is not None


def _other(desk: Desk, at: SlotAt, asked: Strip) -> Mending:
    """Another share, or fewer loads, with which every example lifter's plates come off."""
    slot = at.slot
    for loads in range(asked.loads, 1, -1):
        for share in SHARES:
            strip = asked.model_copy(update={"loads": loads, "drop": drop_share(share)})
            dose = replace(slot.dose, work=StripSet(strip))
            found = lifter_strips(desk.book, slot.exercise, dose, slot.scale, slot.loads)
            if found and all(one is not None for one in found.values()):
                return Mending(f"write 'strip {loads} loads -{number(share)} %'")
    return Mending("put smaller plates at the rack, or let several plates lie there ('plates: 3')")
