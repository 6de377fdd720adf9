"""The floor of every session of a desk, worked out once for all checks that look at it."""

from dataclasses import dataclass
from functools import cached_property

from strength_handbook.floor.advice import alone
from strength_handbook.floor.floor import (
    FloorClock,
    Plan,
    session_clock,
    session_floor,
    written_plan,
)
from strength_handbook.floor.use import Floor
from strength_handbook.plan.remembered import remembered
from strength_handbook.review.desk import Desk, SessionAt, SlotAt
from strength_handbook.review.finding import Spot


@dataclass(frozen=True, eq=False)
class FloorAt:
    """A session with its real group.

    Attributes:
        at: the session.
        slots: its slots, by their order.
        clock: minutes of its letters.
        plan: how the group comes.
        floor: who uses what when.
    """

    at: SessionAt
    slots: dict[str, SlotAt]
    clock: FloorClock
    plan: Plan
    floor: Floor

    @cached_property
    def own(self) -> Floor:
        """The same with one start group."""
        if self.plan.starts == 1:
            return self.floor
        return session_floor(self.clock, alone(self.plan))


@remembered(1)
def floors(desk: Desk) -> tuple[FloorAt, ...]:
    """Every session of every week, in order of time."""
    found = []
    for at, slots in desk.slots_by_session():
        clock = session_clock(desk.book, at.program.program, at.session)
        plan = written_plan(at.program.program, at.session)
        by_order = {slot.slot.order: slot for slot in slots}
        found.append(FloorAt(at, by_order, clock, plan, clock.written))
    return tuple(found)


def by_session(desk: Desk) -> tuple[tuple[FloorAt, ...], ...]:
    """The sessions of each wave, each in all of its weeks."""
    found: dict[tuple[str, str, str], list[FloorAt]] = {}
    for one in floors(desk):
        key = (one.at.program.id, one.at.week.wave_id, one.at.session.id)
        found.setdefault(key, []).append(one)
    return tuple(map(tuple, found.values()))


def exercise_spot(at: SlotAt) -> Spot:
    """The slot's exercise: the same place in all weeks."""
    return Spot(at.wave, (*at.path, "exercise"))
