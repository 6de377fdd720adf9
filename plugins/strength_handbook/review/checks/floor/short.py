"""Is there enough of everything at every minute, for all pairs and start groups?"""

from collections.abc import Callable, Iterable, Iterator, Sequence

from strength_handbook.floor.advice import (
    MOST_APART,
    apart_that_clears,
    met_shortages,
    rotation_that_fits,
)
from strength_handbook.floor.floor import FloorClock, Plan
from strength_handbook.floor.group import Shared, members_that_fit, one_more_sharing
from strength_handbook.floor.needs import thing_name
from strength_handbook.floor.use import Floor, Shortage
from strength_handbook.plan.remembered import remembered
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.floor.minutes import rotate_change
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Edit, Finding, Mending, Spot
from strength_handbook.review.floors import FloorAt, by_session, exercise_spot, floors
from strength_handbook.review.words import number

MOST_LISTED = 6
"""Things that are named in one finding."""

_Meet = Callable[[FloorClock, Plan], bool]


@check(
    "floor-short",
    Family.FLOOR,
    Severity.ERROR,
    what="How many of each thing all pairs and start groups use at each minute, against how many "
    "the room has.",
    why="Whoever finds the station taken waits in the cold, or does something else.",
    rules=("lane-width",),
    source="counting, with the minutes of the session",
)
def floor_short(this: Check, desk: Desk) -> Iterator[Finding]:
    """Things of which more are in use than there are."""
    yield from _within_a_group(this, desk)
    yield from _between_groups(this, desk)


@check(
    "plates-short",
    Family.FLOOR,
    Severity.WARN,
    what="Plates and hand weights of each size in use at each minute, with the loads of the "
    "example lifters in turn, against what the room has. Every rack counts with its own plates.",
    why="The last pair finds no plates of its size, and lifts something else.",
    source="counting; that the group lifts like the example lifters is an estimate",
)
def plates_short(this: Check, desk: Desk) -> Iterator[Finding]:
    """Sizes of plates or hand weights that are short at some minute."""
    for one in floors(desk):
        for short in one.floor.short_sizes:
            name = thing_name(desk.book.room, short.thing)
            text = f"minute {short.minute:.0f}: {_count(short, name)}"
            more = short.needed - short.owned
            change = Mending(
                f"bring {more} more, or let a {_company(one)} begin with another letter"
            )
            at = one.slots[short.orders[0]]
            yield this.finds(at, text, spot=exercise_spot(at), change=change)


def _within_a_group(this: Check, desk: Desk) -> Iterator[Finding]:
    """Shortages of one start group: a rotation may end them, or fewer must come."""
    programs: dict[str, list[tuple[FloorAt, ...]]] = {}
    for weeks in by_session(desk):
        if any(one.own.shortages for one in weeks):
            programs.setdefault(weeks[0].at.program.id, []).append(weeks)
    for program, sessions in programs.items():
        changes = [_rotation(weeks) for weeks in sessions]
        if changes.count(None) > 1 and (found := _too_many(this, desk, program, sessions)):
            yield found
            continue
        for weeks, change in zip(sessions, changes, strict=True):
            yield from _by_slots(this, desk, weeks, change or _fewer(desk, weeks))


def _by_slots(
    this: Check, desk: Desk, weeks: Sequence[FloorAt], change: Mending
) -> Iterator[Finding]:
    for one in weeks:
        for order, several in _by_slot(one.own.shortages).items():
            at = one.slots[order]
            yield this.finds(at, _text(desk, several), spot=exercise_spot(at), change=change)


def _too_many(
    this: Check, desk: Desk, program: str, sessions: Sequence[Sequence[FloorAt]]
) -> Finding | None:
    """One finding for a group that is too large for several sessions; None where one pair is."""
    every = [one for one in floors(desk) if one.at.program.id == program]
    fit = members_that_fit([one.clock for one in every])
    if not fit:
        return None
    plan = every[0].plan
    stations = f", {plan.sharing} at a station" if plan.sharing > 1 else ""
    text = (
        f"the room holds {fit} at a time and {plan.members} come{stations}; short: "
        f"{_listed(desk, sessions)}"
    )
    words = f"write 'members: {fit}' and let the others come in a start group of their own"
    shared = one_more_sharing([one.clock for one in every])
    if shared is not None:
        words += _compared(desk, shared, every[0].at.program.program.time_cap)
    spot = desk.program_spot(program, "group", "members")
    edit = Edit(spot.source.file, spot.path, fit)
    return this.finds_in(spot, "program", text, change=Mending(words, (edit,)), program=program)


def _compared(desk: Desk, shared: Shared, cap: float | None) -> str:
    """More at a station, as the other way out or as none."""
    names = [thing_name(desk.book.room, thing) for thing in shared.short]
    minutes = number(round(shared.minutes, 1))
    limit = "" if cap is None else f" (the cap is {number(cap / 60)} min)"
    good = not names and (cap is None or shared.minutes <= cap / 60)
    left = f"{_some(names, 3) or 'nothing'} {'is' if len(names) < 2 else 'are'} short"
    start = "or write" if good else "and not"
    return (
        f"; {start} 'sharing: {shared.sharing}': then {left}, and the longest session takes "
        f"{minutes} min{limit}"
    )


def _listed(desk: Desk, sessions: Sequence[Sequence[FloorAt]]) -> str:
    """Everything that is short, each with the most that are needed and where first."""
    found: dict[str, tuple[Shortage, str]] = {}
    for weeks in sessions:
        for one in weeks:
            for short in one.own.shortages:
                where = f"week {one.at.number} {one.at.session.id} {', '.join(short.orders)}"
                known = found.get(short.thing)
                if known is None or known[0].needed < short.needed:
                    found[short.thing] = (short, where)
    several = [
        f"{thing_name(desk.book.room, short.thing)} ({short.needed} wanted, {short.owned} here, "
        f"{where})"
        for short, where in sorted(found.values(), key=lambda both: both[0].owned - both[0].needed)
    ]
    return _some(several)


def _some(several: Sequence[str], most: int = MOST_LISTED) -> str:
    """The first of a row, and how many more there are."""
    more = len(several) - most
    shown = several if more <= 0 else [*several[:most], f"and {more} more things"]
    return ", ".join(shown)


def _between_groups(this: Check, desk: Desk) -> Iterator[Finding]:
    """Shortages where start groups meet: more time between starts ends them, or a rotation."""
    changes: dict[str, Mending] = {}
    runs = {one: weeks for weeks in by_session(desk) for one in weeks}
    for one in floors(desk):
        own = {short.thing for short in one.own.shortages}
        shortages = tuple(short for short in one.floor.shortages if short.thing not in own)
        if one.plan.starts == 1 or not shortages:
            continue
        program = one.at.program.id
        if program not in changes:
            changes[program] = apart_change(desk, one, _meet)
        change = _or_turned(changes[program], runs[one])
        yield this.finds(one.at, _text(desk, shortages), spot=apart_spot(desk, one), change=change)


def apart_spot(desk: Desk, one: FloorAt) -> Spot:
    """Where the time between the starts is written, or the group."""
    written = desk.program_spot(one.at.program.id, "group", "apart")
    if written.path in written.source.marks:
        return written
    return desk.program_spot(one.at.program.id, "group")


def apart_change(desk: Desk, one: FloorAt, meet: _Meet) -> Mending:
    """The least time between starts with which no groups meet in any session of the program."""
    clocks = [other.clock for other in floors(desk) if other.at.program is one.at.program]
    apart = apart_that_clears(clocks, meet)
    if apart is None:
        return Mending(
            f"even {MOST_APART} min apart they meet; let fewer groups start, or one on another day"
        )
    path = ("group", "apart")
    file = desk.program_spot(one.at.program.id).source.file
    return Mending(f"write 'apart: {apart:g} min'", (Edit(file, path, f"{apart:g} min"),))


def _or_turned(change: Mending, weeks: Sequence[FloorAt]) -> Mending:
    """The change, and beside it the rotation with which the groups of a session may still meet.

    Where no time between the starts is enough, the rotation is the change.
    """
    run = _rotation(weeks, together=True)
    if run is None:
        return change
    if not change.edits:
        return run
    return Mending(
        f"{change.words}, or {run.words}, so that they begin with other letters", change.edits
    )


def _meet(clock: FloorClock, plan: Plan) -> bool:
    return bool(met_shortages(clock, plan))


@remembered(64)
def _rotation(weeks: Sequence[FloorAt], *, together: bool = False) -> Mending | None:
    """The shortest rotation that ends the queues in all weeks of a session.

    Args:
        weeks: the session in all weeks of its wave.
        together: the queues of all start groups, not only those within one.
    """
    cap = weeks[0].at.program.program.time_cap

    def fits(floor: Floor) -> bool:
        return not floor.shortages and (cap is None or floor.minutes <= cap / 60)

    floors_ = [one.floor if together else one.own for one in weeks]
    letters = {order[0] for floor in floors_ for short in floor.shortages for order in short.orders}
    run = rotation_that_fits([one.clock for one in weeks], letters, fits, together=together)
    return rotate_change(weeks[0], run) if run else None


def _fewer(desk: Desk, weeks: Sequence[FloorAt]) -> Mending:
    """As many members as there is enough of everything for, in this session."""
    members = members_that_fit([one.clock for one in weeks])
    if not members:
        return Mending(
            f"not even one {_company(weeks[0])} can do this here; choose another exercise"
        )
    group = desk.program_spot(weeks[0].at.program.id, "group", "members")
    return Mending(
        f"write 'members: {members}' and let the others come in a start group of their own",
        (Edit(group.source.file, group.path, members),),
    )


def _company(one: FloorAt) -> str:
    return one.at.program.program.group.company


def _by_slot(shortages: Iterable[Shortage]) -> dict[str, list[Shortage]]:
    """Shortages by the slot that needs the thing first."""
    found: dict[str, list[Shortage]] = {}
    for short in shortages:
        found.setdefault(short.orders[0], []).append(short)
    return found


def _text(desk: Desk, shortages: Sequence[Shortage]) -> str:
    """What is short first; of several things the one that stands first in the room's file."""
    room = desk.book.room
    places = list(room.names())
    first, *more = sorted(
        shortages,
        key=lambda short: (
            short.minute,
            places.index(short.thing) if short.thing in places else len(places),
        ),
    )
    name = thing_name(room, first.thing)
    text = f"minute {first.minute:.0f}: {_count(first, name)} ({', '.join(first.orders)})"
    if more:
        names = list(dict.fromkeys(thing_name(room, short.thing) for short in more))
        text += f"; also short: {', '.join(names)}"
    return text


def _count(short: Shortage, name: str) -> str:
    verb = "is" if short.needed == 1 else "are"
    return f"{short.needed} of '{name}' {verb} needed at once, the room has {short.owned}"
