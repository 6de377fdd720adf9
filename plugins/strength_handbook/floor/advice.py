"""The smallest change that ends a queue or saves the minutes, found by trying them in order."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import combinations

from strength_handbook.floor.floor import (
    FloorClock,
    Plan,
    session_clock,
    session_floor,
    written_plan,
)
from strength_handbook.floor.use import Floor, Shortage
from strength_handbook.model.lighter import each_alike, first_sets
from strength_handbook.plan.worked import WorkedSlot

APART_STEP, MOST_APART = 5, 120
"""Start groups are moved apart by whole five minutes, and by two hours at most."""
REST_STEP, LEAST_REST = 15.0, 30.0
"""Rest is shortened by 15 s, once or twice, and never below 30 s. Common practice, no source."""
MOST_PAIRS = 24
"""With more pairs in an evening no change is looked for: it would take seconds to find."""
LIGHT = 75.0
"""Percent of the best single below which a rest may be shortened."""

Fits = Callable[[Floor], bool]


@dataclass(frozen=True, slots=True)
class Cut:
    """Less of one letter.

    Attributes:
        orders: the slots.
        sets: their new number of sets, or None.
        rest: the new rest of the last of them in seconds, or None.
    """

    orders: tuple[str, ...]
    sets: int | None = None
    rest: float | None = None


@dataclass(frozen=True, slots=True)
class Advice:
    """What would end a queue.

    Attributes:
        apart: minutes between start groups, or None.
        rotate: letters to be done in turn; empty for none.
    """

    apart: float | None = None
    rotate: tuple[str, ...] = ()


def alone(plan: Plan) -> Plan:
    """The same plan with one start group."""
    return replace(plan, starts=1)


def own_shortages(clock: FloorClock, plan: Plan) -> tuple[Shortage, ...]:
    """What is short within one start group."""
    return session_floor(clock, alone(plan)).shortages


def met_shortages(clock: FloorClock, plan: Plan) -> tuple[Shortage, ...]:
    """What is short only because start groups meet."""
    if plan.starts == 1:
        return ()
    own = {short.thing for short in own_shortages(clock, plan)}
    every = session_floor(clock, plan).shortages
    return tuple(short for short in every if short.thing not in own)


def apart_that_clears(
    clocks: Sequence[FloorClock], meet: Callable[[FloorClock, Plan], bool]
) -> float | None:
    """The least minutes between starts, a multiple of five, with which no groups meet; or None.

    Args:
        clocks: sessions of one program.
        meet: whether start groups get in each other's way in a session with a plan.
    """
    plans = {clock: written_plan(clock.program, clock.session) for clock in clocks}
    if any(_crowd(plan) for plan in plans.values()):
        return None
    for apart in range(APART_STEP, MOST_APART + 1, APART_STEP):
        if not any(meet(clock, replace(plan, apart=float(apart))) for clock, plan in plans.items()):
            return float(apart)
    return None


def rotation_that_fits(
    clocks: Sequence[FloorClock], letters: set[str], fits: Fits, *, together: bool = False
) -> tuple[str, ...]:
    """The shortest rotation of neighbouring letters that holds in every week; empty for none.

    Main lifts keep their place, and so does the first letter, unless the coach turns them already;
    what a team does together is never turned.

    Args:
        clocks: one session in all weeks of its wave.
        letters: those that must be in it.
        fits: what a floor must be like.
        together: it is the floor of all start groups; otherwise of one, and what is short between
            several must not become more.
    """
    holds = _all_turned_fits if together else _rotated_fits
    slots = [slot for clock in clocks for slot in clock.session.slots]
    teams = {slot.slot.letter for slot in slots if slot.dose.said.team is not None}
    turned = set(clocks[0].session.session.rotate)
    every = sorted({slot.slot.letter for slot in slots})
    main = {slot.slot.letter for slot in slots if slot.exercise.role == "main"} | {every[0]}
    order = [letter for letter in every if letter not in teams | (main - turned)]
    if _crowd(written_plan(clocks[0].program, clocks[0].session)):
        return ()
    wanted = (letters | turned) - teams
    runs = [
        order[first : last + 1]
        for first, last in combinations(range(len(order)), 2)
        if wanted <= set(order[first : last + 1])
    ]
    for run in sorted(runs, key=lambda run: (every[0] in run, len(run), -order.index(run[0]))):
        if all(holds(clock, tuple(run), fits) for clock in clocks):
            return tuple(run)
    return ()


def _rotated_fits(clock: FloorClock, run: tuple[str, ...], fits: Fits) -> bool:
    """True where a rotation helps one start group and brings nothing new between several."""
    written = written_plan(clock.program, clock.session)
    turned = replace(written, rotate=run)
    if not fits(session_floor(clock, alone(turned))):
        return False
    return written.starts == 1 or _no_more_short(clock, session_floor(clock, turned))


def _all_turned_fits(clock: FloorClock, run: tuple[str, ...], fits: Fits) -> bool:
    """True where a rotation is enough for all start groups together."""
    written = written_plan(clock.program, clock.session)
    return fits(session_floor(clock, replace(written, rotate=run)))


def _no_more_short(clock: FloorClock, floor: Floor) -> bool:
    """True where only things are short that are short already."""
    before = {short.thing for short in clock.written.shortages}
    return {short.thing for short in floor.shortages} <= before


def cut_that_fits(clock: FloorClock, fits: Fits, can_cut: Callable[[str], bool]) -> Cut | None:
    """The smallest cut with which a session fits: rests before sets, late letters first.

    Args:
        clock: the session.
        fits: what its floor must be like.
        can_cut: whether the sets of a slot may be written anew.
    """
    if _crowd(written_plan(clock.program, clock.session)):
        return None
    for cut in _cuts(clock, can_cut):
        floor = session_floor(with_cut(clock, cut))
        if fits(floor) and _no_more_short(clock, floor):
            return cut
    return None


def with_cut(clock: FloorClock, cut: Cut) -> FloorClock:
    """A session with less of one letter."""
    slots = tuple(
        _cut_slot(slot, cut, last=slot.order == cut.orders[-1])
        if slot.order in cut.orders
        else slot
        for slot in clock.session.slots
    )
    return session_clock(clock.book, clock.program, replace(clock.session, slots=slots))


def advice(clock: FloorClock) -> tuple[Advice, ...]:
    """What would end the queues of one session of one week, most helpful first."""
    plan = written_plan(clock.program, clock.session)
    found: list[Advice] = []
    own = own_shortages(clock, plan)
    if own:
        letters = {order[0] for short in own for order in short.orders}
        run = rotation_that_fits([clock], letters, lambda floor: not floor.shortages)
        if run:
            found.append(Advice(rotate=run))
    if met_shortages(clock, plan):
        apart = apart_that_clears([clock], lambda one, plan: bool(met_shortages(one, plan)))
        if apart is not None:
            found.append(Advice(apart=apart))
    return tuple(found)


def _cuts(clock: FloorClock, can_cut: Callable[[str], bool]) -> Iterator[Cut]:
    letters = list(clock.letters)[:0:-1]
    for steps in range(1, 6):
        for letter in letters:
            slots = clock.slots(letter)
            last = slots[-1]
            rest = (last.dose.rest or 0.0) - steps * REST_STEP
            if steps <= 2 and rest >= LEAST_REST and _light(last):
                yield Cut((last.order,), rest=rest)
        for letter in letters:
            slots = clock.slots(letter)
            most = max(slot.dose.sets.high for slot in slots)
            longest = tuple(slot.order for slot in slots if slot.dose.sets.high == most)
            main = any(slot.exercise.role == "main" for slot in slots)
            if not main and most > steps and all(map(can_cut, longest)):
                yield Cut(longest, sets=most - steps)


def _crowd(plan: Plan) -> bool:
    return plan.pairs * plan.starts > MOST_PAIRS


def _light(slot: WorkedSlot) -> bool:
    return not slot.dose.fast and (slot.percent or 0.0) < LIGHT


def _cut_slot(slot: WorkedSlot, cut: Cut, *, last: bool) -> WorkedSlot:
    dose = slot.dose
    if cut.sets is not None:
        dose = first_sets(dose, cut.sets)
    if cut.rest is not None and last:
        dose = each_alike(dose, lambda one: replace(one, rest=cut.rest))
    return replace(slot, dose=dose)
