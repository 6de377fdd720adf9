"""Is anything used after the day by which it must be looked over or thrown away?"""

from collections.abc import Iterator
from datetime import date

from strength_handbook.floor.needs import slot_needs
from strength_handbook.model.loading import BodyWeightLift
from strength_handbook.model.room import Room
from strength_handbook.plan.help import help_bands
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import At, Finding, Mending

_TAKE_OUT = "look it over and write the next date, or take it out of room.yml and out of use"


@check(
    "kit-expired",
    Family.FLOOR,
    Severity.ERROR,
    what="The day written as 'until' for bands, chains and whatever is inspected, against the day "
    "of use: the session's date, else the last day of the program, else today. What no program "
    "uses is a note.",
    why="An old band, strap or cable breaks without warning, and a band that breaks hits the eyes.",
    source="makers give a date; reports of eye injuries from elastic bands",
)
def kit_expired(this: Check, desk: Desk) -> Iterator[Finding]:
    """Things that are used after their date, and past ones that lie about."""
    dates = _dates(desk.book.room)
    used: set[str] = set()
    for at in desk.slots:
        day = at.day or desk.last_use(at.program) or desk.today
        for thing in _things(desk, at):
            if thing not in dates:
                continue
            used.add(thing)
            section, until = dates[thing]
            if until < day:
                text = f"its date is {until}, and {at.session.id} uses it {_when(desk, at, day)}"
                yield this.finds(
                    at, text, spot=desk.room_spot(section, thing, "until"),
                    at=At(f"room {thing}", (at.number,)), change=Mending(_TAKE_OUT),
                )  # fmt: skip
    for thing, (section, until) in dates.items():
        if thing not in used and until < desk.today:
            text = f"its date, {until}, is past; no program uses it"
            yield this.finds_in(
                desk.room_spot(section, thing, "until"), f"room {thing}", text,
                change=Mending("take it out of room.yml and out of the gym"),
                severity=Severity.NOTE,
            )  # fmt: skip


def _dates(room: Room) -> dict[str, tuple[str, date]]:
    """Section and date of everything that has one."""
    # Written one by one: what is in these sections has a date, and nothing else in common.
    dated: list[tuple[str, str, date | None]] = [
        *(("racks", key, one.until) for key, one in room.racks.items()),
        *(("carriers", key, one.until) for key, one in room.carriers.items()),
        *(("stacks", key, one.until) for key, one in room.stacks.items()),
        *(("machines", key, one.until) for key, one in room.machines.items()),
        *(("bands", key, one.until) for key, one in room.bands.items()),
        *(("chains", key, one.until) for key, one in room.chains.items()),
        *(("pivots", key, one.until) for key, one in room.pivots.items()),
        *(("kit", key, one.until) for key, one in room.kit.items()),
    ]
    return {key: (section, until) for section, key, until in dated if until is not None}


def _things(desk: Desk, at: SlotAt) -> Iterator[str]:
    """Everything that a slot takes, or that its page names as one to take."""
    slot, room = at.slot, desk.book.room
    yield from slot_needs(desk.book, slot, 0, 1).things
    if slot.on_top is not None:
        yield from sorted({band for pair in slot.on_top.pairs for band in (pair.left, pair.right)})
    load = slot.exercise.load
    helped = any(planned.help_g for planned in slot.loads.values())
    if helped and isinstance(load, BodyWeightLift) and load.help and slot.assisted is None:
        # The page names a band for every amount of help.
        yield from (band.number for band in help_bands(room.bands))


def _when(desk: Desk, at: SlotAt, day: date) -> str:
    if at.day is not None:
        return f"on {day}"
    return f"until {day}" if desk.last_use(at.program) else f"today, {day}"
