"""Which weeks stand apart from training: lighter weeks, weeks of tests, and those that look so.

A lighter week that nobody has named as one would make every sum after it look like a jump. It is
told by the check of lighter weeks alone.
"""

from strength_handbook.plan.remembered import remembered
from strength_handbook.plan.worked import WorkedProgram, WorkedSlot, WorkedWeek
from strength_handbook.review.desk import WeekAt

LIGHTER_SHARE = 0.75
"""Less than this of the sets of the training week before looks like a lighter week."""
_EASIER_RESERVE, _EASIER_LOAD = 1.0, 5.0
"""Repetitions left, and points of percent, by which it must be easier too."""

_Key = tuple[str, str]


def is_apart(at: WeekAt) -> bool:
    """True for weeks that are not meant to train, named or not."""
    return is_named_apart(at.week) or at.number in looks_lighter(at.program)


def is_light(at: WeekAt) -> bool:
    """True for lighter weeks, named or not."""
    return at.week.deload or at.number in looks_lighter(at.program)


def is_named_apart(week: WorkedWeek) -> bool:
    """True for weeks that are called lighter, or weeks of tests."""
    return week.deload or week.week in week.wave.tests


@remembered(8)
def looks_lighter(program: WorkedProgram) -> frozenset[int]:
    """Weeks inside a wave with fewer and easier sets than before, that no line calls lighter."""
    found: set[int] = set()
    last: WorkedWeek | None = None
    for week in program.weeks:
        if is_named_apart(week):
            continue
        inside = week.week != min(week.wave.weeks)
        if last is not None and inside and _is_lighter(last, week):
            found.add(week.week)
            continue
        last = week
    return frozenset(found)


def _is_lighter(before: WorkedWeek, week: WorkedWeek) -> bool:
    if not 0 < week.volume.sets < LIGHTER_SHARE * before.volume.sets:
        return False
    then, now = _slots(before), _slots(week)
    both = [(then[key], now[key]) for key in now if key in then]
    percents = [
        (one.percent, other.percent)
        for one, other in both
        if one.percent is not None and other.percent is not None and one.base_id == other.base_id
    ]
    if any(later > earlier for earlier, later in percents):
        return False
    left = [
        other.dose.reserve - one.dose.reserve
        for one, other in both
        if one.dose.reserve is not None and other.dose.reserve is not None
    ]
    easier = bool(left) and sum(left) / len(left) >= _EASIER_RESERVE
    lower = [earlier - later for earlier, later in percents]
    return easier or (bool(lower) and sum(lower) / len(lower) >= _EASIER_LOAD)


def _slots(week: WorkedWeek) -> dict[_Key, WorkedSlot]:
    return {
        (session.id, slot.order): slot
        for session in week.sessions
        if not session.session.optional
        for slot in session.slots
    }
