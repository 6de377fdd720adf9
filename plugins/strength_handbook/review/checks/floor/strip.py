"""Can a bar tip out of its rack while its plates are taken off?"""

from collections.abc import Iterator
from dataclasses import dataclass

from strength_handbook.floor.unloading import WorstStep, racked, worst_step
from strength_handbook.model.length import length_text
from strength_handbook.model.loading import OnBar
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import At, Edit, Finding, Mending
from strength_handbook.review.words import number, weight


@dataclass(frozen=True, eq=False)
class _Tips:
    """The worst step of one slot."""

    at: SlotAt
    rack: str
    lifter: str
    worst: WorstStep


@check(
    "strip-tips",
    Family.FLOOR,
    Severity.ERROR,
    what="Margin against tipping after every plate that is taken off a bar in its rack, in the "
    "order this rack says, for the load of every example lifter. Where the page asks for somebody "
    "to hold the bar, the step is not counted, unless the lift may be done alone.",
    why="A bar with one bare side swings up and throws its plates.",
    rules=("strip-margin",),
    source="statics with the bar 5 cm off-centre; the factor for a yank is common practice, "
    "no source",
)
def strip_tips(this: Check, desk: Desk) -> Iterator[Finding]:
    """Bars that come too near to tipping while they are stripped."""
    least = desk.rule("strip-margin")
    worst: dict[tuple[str, str], list[_Tips]] = {}
    for found in _worst_steps(desk):
        alone = found.at.slot.exercise.spotting.alone == "fine"
        if found.worst.margin < least and (not found.worst.held or alone):
            worst.setdefault((found.at.program.id, found.rack), []).append(found)
    for (_, rack_id), several in worst.items():
        one = min(several, key=lambda found: found.worst.margin)
        weeks = tuple(sorted({found.at.number for found in several}))
        spot = desk.room_spot("racks", rack_id, _key(desk, rack_id))
        yield this.finds(
            one.at, _text(desk, one, least), spot=spot, at=At(f"room {rack_id}", weeks),
            change=_change(desk, rack_id),
        )  # fmt: skip


def _worst_steps(desk: Desk) -> Iterator[_Tips]:
    """The worst step of each load on a racked bar; a load that comes again is worked out once."""
    room = desk.book.room
    known: dict[tuple[str, str, tuple[int, ...]], WorstStep] = {}
    for at in desk.slots:
        place = racked(room, at.slot)
        if place is None or not isinstance(at.slot.exercise.load, OnBar):
            continue
        rack_id, rack = place
        bar_id = at.slot.exercise.load.bar
        for lifter, planned in at.slot.loads.items():
            if planned.step is None or not planned.step.parts:
                continue
            key = (bar_id, rack_id, planned.step.parts)
            if key not in known:
                bar = room.bars[bar_id]
                known[key] = worst_step(bar, rack, room.plates, planned.step.parts)
            yield _Tips(at, rack_id, lifter, known[key])


def _text(desk: Desk, one: _Tips, least: float) -> str:
    rack, side = desk.book.room.racks[one.rack], one.worst.side_g
    planned = one.at.slot.loads[one.lifter]
    units = desk.book.room.units
    load, plate = weight(planned.actual_g or 0, units), weight(one.worst.plate_g, units)
    how = "one side first" if rack.unload == "one-side" else "one plate a side in turn"
    return (
        f"{load} of {one.at.session.id} {one.at.slot.order} {one.at.slot.exercise_id} "
        f"({one.lifter}, {weight(sum(side), units)} a side) stripped {how}: at plate "
        f"{one.worst.step}, the {plate}, the margin is {number(one.worst.margin)} on hooks "
        f"{length_text(rack.hook_spacing)} apart; at least {number(least)}"
    )


def _key(desk: Desk, rack: str) -> str:
    written = desk.room_spot("racks", rack, "unload")
    return "unload" if written.path in written.source.marks else "hook-spacing"


def _change(desk: Desk, rack: str) -> Mending:
    if desk.book.room.racks[rack].unload == "alternate":
        return Mending(
            "have a second person hold the bar: write 'alone: changed' in the exercise, and how"
        )
    file = desk.room_spot("racks", rack).source.file
    return Mending(
        "write 'unload: alternate'", (Edit(file, ("racks", rack, "unload"), "alternate"),)
    )
