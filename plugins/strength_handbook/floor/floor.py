"""Who uses what at which minute: one session of one week with the real group on the floor.

Minute 0 is the door time of the first start group. Every pair follows the clock of the session;
pairs of a start group do the letters of a rotation in turn, each beginning with another one, and
wait there until their station is free. A letter that a whole team does together is never rotated.
Between start groups nobody waits: what is then short is reported.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import ceil

from strength_handbook.calc.duration import block_seconds, gap_seconds
from strength_handbook.calc.floor import least_minutes_held_often
from strength_handbook.floor.needs import (
    Needs,
    Units,
    most,
    pool_units,
    room_units,
    slot_needs,
)
from strength_handbook.floor.queue import Job, line_up
from strength_handbook.floor.use import HAIR, Bottleneck, Floor, Stay, stays
from strength_handbook.model.book import Book
from strength_handbook.model.program import Program
from strength_handbook.plan.minutes import session_blocks
from strength_handbook.plan.timed import timed_slots
from strength_handbook.plan.worked import WorkedSession, WorkedSlot


@dataclass(frozen=True, slots=True)
class Plan:
    """How a group comes and goes: as written, or as it might be.

    Attributes:
        members: in one start group.
        sharing: at one station.
        starts: start groups.
        apart: minutes between their starts.
        rotate: letters that are done in turn.
    """

    members: int
    sharing: int
    starts: int
    apart: float
    rotate: tuple[str, ...]

    @property
    def pairs(self) -> int:
        """Pairs in a start group."""
        return ceil(self.members / self.sharing)


@dataclass(frozen=True, eq=False)
class FloorClock:
    """What the plan of a session does not change: the minutes of its letters.

    Attributes:
        book: room, rules and example lifters.
        program: warm-up and close.
        session: the session.
        letters: minutes that each letter is held, and until the next one.
    """

    book: Book
    program: Program
    session: WorkedSession
    letters: Mapping[str, tuple[float, float]]

    @cached_property
    def units(self) -> Units:
        """How many the room has of everything."""
        units = room_units(self.book)
        for slot in self.session.slots:
            units |= pool_units(slot)
        return units

    @cached_property
    def written(self) -> Floor:
        """The floor as the coach has written it."""
        return session_floor(self)

    def slots(self, letter: str) -> tuple[WorkedSlot, ...]:
        """Slots of a letter, in order."""
        return tuple(slot for slot in self.session.slots if slot.slot.letter == letter)


def written_plan(program: Program, session: WorkedSession) -> Plan:
    """The plan as the coach has written it."""
    group = program.group
    return Plan(
        group.members, group.sharing, group.starts, group.apart / 60, tuple(session.session.rotate)
    )


def session_clock(book: Book, program: Program, session: WorkedSession) -> FloorClock:
    """Minutes of a session's letters."""
    timed = timed_slots(book, program.group.sharing, session.slots)
    letters: dict[str, tuple[float, float]] = {}
    for letter, block, *_ in session_blocks(book, program, timed):
        held, gap = letters.get(letter, (0.0, 0.0))
        letters[letter] = (held + gap + block_seconds(block) / 60, gap_seconds(block) / 60)
    return FloorClock(book, program, session, letters)


def session_floor(clock: FloorClock, plan: Plan | None = None) -> Floor:
    """A session on the floor.

    Args:
        clock: the session.
        plan: how the group comes; as written if left out.
    """
    plan = plan or written_plan(clock.program, clock.session)
    units = clock.units
    first = list(_group(clock, plan, units))
    intervals = [
        Stay(group + 1, one.pair, one.order, one.exercise, one.start + group * plan.apart,
                 one.end + group * plan.apart, one.wait, one.needs)
        for group in range(plan.starts)
        for one in first
    ]  # fmt: skip
    close = clock.program.close / 60
    minutes = max(one.end for one in first) + close
    evening = max(one.end for one in intervals) + close
    bottleneck = _bottleneck(first, units, plan.pairs)
    return Floor(tuple(intervals), plan.pairs, units, minutes, evening, bottleneck)


def _group(clock: FloorClock, plan: Plan, units: Units) -> Iterator[Stay]:
    """Intervals of the first start group."""
    needs = _needs(clock, plan)
    turning = _turning(clock, plan.rotate)
    ready = [clock.program.warm_up / 60] * plan.pairs
    found: list[list[Stay]] = [[] for _ in range(plan.pairs)]
    done: set[str] = set()
    for letter in clock.letters:
        if letter in done:
            continue
        together = turning if letter in turning else [letter]
        done |= set(together)
        orders = [_from(together, pair) for pair in range(plan.pairs)]
        jobs = [
            [Job(*clock.letters[one], _things(clock, needs[pair], one)) for one in order]
            for pair, order in enumerate(orders)
        ]
        # Outside a rotation everybody goes by the clock.
        turns = line_up(jobs, units if len(together) > 1 else {}, ready)
        for pair, order in enumerate(orders):
            for one, turn in zip(order, turns[pair], strict=True):
                found[pair] += (
                    Stay(1, pair + 1, slot.order, slot.exercise_id, turn.start, turn.end,
                             turn.wait, needs[pair][slot.order])
                    for slot in clock.slots(one)
                )  # fmt: skip
                ready[pair] = turn.end + clock.letters[one][1]
    for intervals in found:
        yield from intervals


def _needs(clock: FloorClock, plan: Plan) -> list[dict[str, Needs]]:
    """What each pair takes for each slot; the example lifters come round again and again."""
    same = len(clock.book.lifters) or 1
    known: dict[tuple[str, int, bool], Needs] = {}

    def of(slot: WorkedSlot, pair: int) -> Needs:
        team = slot.dose.said.team
        spare = team is not None and pair * team.bearers >= plan.members
        key = (slot.order, pair % same, spare)
        if key not in known:
            known[key] = slot_needs(clock.book, slot, pair, plan.members)
        return known[key]

    return [
        {slot.order: of(slot, pair) for slot in clock.session.slots} for pair in range(plan.pairs)
    ]


def _turning(clock: FloorClock, rotate: Sequence[str]) -> list[str]:
    """Letters of a rotation in this week; one that a team does together is not among them."""
    return [
        letter
        for letter in clock.letters
        if letter in rotate
        and all(slot.dose.said.team is None for slot in clock.slots(letter))
    ]  # fmt: skip


def _from(letters: Sequence[str], pair: int) -> list[str]:
    """The letters, beginning with another one for each pair."""
    begin = pair % len(letters)
    return [*letters[begin:], *letters[:begin]]


def _things(clock: FloorClock, needs: Mapping[str, Needs], letter: str) -> dict[str, int]:
    return most(needs[slot.order].things for slot in clock.slots(letter))


def _bottleneck(intervals: Sequence[Stay], units: Units, pairs: int) -> Bottleneck | None:
    """The thing whose users take longest together, for what there is of it."""
    training = max(one.end for one in intervals) - min(one.start for one in intervals)
    held: dict[str, list[float]] = {}
    for start, end, needs, _ in stays(intervals, "things"):
        for thing, count in needs.items():
            if units.get(thing):
                held.setdefault(thing, []).append((end - start) * count / pairs)
    if not held or training <= 0:
        return None
    shares = {thing: sum(held[thing]) / units[thing] for thing in sorted(held)}
    longest = max(shares, key=lambda thing: shares[thing])
    also = tuple(thing for thing, share in shares.items()
                 if thing != longest and share >= shares[longest] - HAIR)  # fmt: skip
    least = least_minutes_held_often(0.0, pairs, units[longest], held[longest])
    return Bottleneck(longest, least / training, max(least, training), also)
