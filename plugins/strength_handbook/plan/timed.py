"""Slots as the clock sees them, with the warm-up steps that no warm-up of the session holds."""

from collections.abc import Iterable, Sequence
from statistics import median_high

from strength_handbook.model.book import Book
from strength_handbook.model.room import Room
from strength_handbook.plan.minutes import TimedSlot
from strength_handbook.plan.one_bar import Round, rounds
from strength_handbook.plan.ramps import slot_ramps
from strength_handbook.plan.worked import WorkedSlot

TEST_STEPS = 3
"""Sets on the way up to a test: Sheppard and Triplett 2016, ch. 17."""
ROUNDS = 24
"""Of the example lifters that may meet at a bar so many groups are looked at for the one in the
middle: all pairs of seven, and of many lifters enough."""


def timed_slots(book: Book, people: int, slots: Iterable[WorkedSlot]) -> list[TimedSlot]:
    """Slots of a session for its clock, with what changes on a bar that several share.

    The steps of the first lift that has some are part of the session's warm-up; a way to today's
    top is counted by itself.

    Args:
        book: room, rules and example lifters.
        people: how many share a station.
        slots: what is done, in order.
    """
    found, in_warm_up = [], False
    for slot in slots:
        steps = _steps(book.room, slot)
        own = steps if in_warm_up and slot.dose.top is None else 0
        in_warm_up = in_warm_up or steps > 0
        usual = _usual(rounds(book, slot, people, ROUNDS))
        plates, hung = (usual.plates, usual.hung) if usual is not None else (0, 0)
        found.append(TimedSlot(slot.order, slot.exercise, slot.dose, own, plates, hung))
    return found


def _usual(found: Sequence[Round]) -> Round | None:
    """The round in the middle of all that the example lifters make with each other."""
    in_order = sorted(found, key=lambda one: one.seconds)
    return in_order[len(in_order) // 2] if in_order else None


def _steps(room: Room, slot: WorkedSlot) -> int:
    """Warm-up steps: those of the example lifters, or of the rows of the table, in the middle."""
    if slot.dose.said.test is not None:
        return TEST_STEPS
    ramps = slot_ramps(room, slot)
    if ramps is None:
        return 0
    ways = list(ramps.by_lifter.values()) or [way for _, way in ramps.rows]
    if ramps.everybody:
        ways = [ramps.everybody]
    # The last of them is the load itself.
    return median_high(len(way) - 1 for way in ways)
