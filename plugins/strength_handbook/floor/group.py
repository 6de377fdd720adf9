"""How many the room holds at a time, and what more at a station would come to."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from strength_handbook.floor.advice import alone, own_shortages
from strength_handbook.floor.floor import FloorClock, session_clock, session_floor, written_plan

MOST_SHARING = 4
"""As many as may share a station; more stand about."""


@dataclass(frozen=True, slots=True)
class Shared:
    """More at a station than is written.

    Attributes:
        sharing: how many.
        minutes: the longest session with them, door to door.
        short: what is short all the same.
    """

    sharing: int
    minutes: float
    short: tuple[str, ...]


def members_that_fit(clocks: Sequence[FloorClock]) -> int:
    """The most members of a start group for whom nothing is short in any session; 0 for none.

    Args:
        clocks: sessions of one program.
    """
    low, high = 0, written_plan(clocks[0].program, clocks[0].session).members
    while high - low > 1:
        middle = (low + high) // 2
        plans = [replace(written_plan(one.program, one.session), members=middle) for one in clocks]
        if any(own_shortages(one, plan) for one, plan in zip(clocks, plans, strict=True)):
            high = middle
        else:
            low = middle
    return low


def one_more_sharing(clocks: Sequence[FloorClock]) -> Shared | None:
    """What one more at each station comes to; None where that would be too many.

    Args:
        clocks: sessions of one program.
    """
    sharing = clocks[0].program.group.sharing + 1
    if sharing > MOST_SHARING:
        return None
    short: dict[str, None] = {}
    longest = 0.0
    for clock in clocks:
        group = clock.program.group.model_copy(update={"sharing": sharing})
        program = clock.program.model_copy(update={"group": group})
        other = session_clock(clock.book, program, clock.session)
        floor = session_floor(other, alone(written_plan(program, clock.session)))
        short |= dict.fromkeys(one.thing for one in floor.shortages)
        longest = max(longest, floor.minutes)
    return Shared(sharing, longest, tuple(short))
