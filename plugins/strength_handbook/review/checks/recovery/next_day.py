"""Is there a day between sessions that ask the same of the same muscles?"""

from collections.abc import Iterator

from strength_handbook.model.weeks import WEEKDAYS
from strength_handbook.model.words import Muscle, Pattern
from strength_handbook.plan.volume import is_hard
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.recovery.days import loaded_days, too_close
from strength_handbook.review.desk import Desk, SessionAt, SlotAt
from strength_handbook.review.fatigue import is_quick, leaves_more, named
from strength_handbook.review.finding import Edit, Finding, Mending, Spot
from strength_handbook.review.lighter import is_apart
from strength_handbook.review.words import number

_DAY = 24
"""Hours."""
_SINGLE = (Pattern.ISOLATED, Pattern.TRUNK, Pattern.CARRY, Pattern.JUMP)
"""Patterns that are no lift of several joints."""


@check(
    "same-day",
    Family.RECOVERY,
    Severity.WARN,
    what="Sessions of one week that have the same weekday.",
    why="It is mostly a line that was copied; and whoever does both does the second one tired.",
)
def same_day(this: Check, desk: Desk) -> Iterator[Finding]:
    """Two sessions on one day."""
    first: dict[tuple[str, int, str], SessionAt] = {}
    for at in desk.sessions:
        day = at.session.session.day
        if day is None:
            continue
        other = first.setdefault((at.program.id, at.number, day), at)
        if other is not at:
            text = f"on the same day as {other.session.id}, {day}"
            yield this.finds(at, text, spot=_day_spot(at), change=_free_day(at))


@check(
    "next-day",
    Family.RECOVERY,
    Severity.WARN,
    what="Muscles that lifts of several joints work directly with more hard sets than allowed on "
    "two days in a row. What is left after a set is the larger of what is written and what the "
    "load leaves; lighter weeks, and days on which a joint is named already, are left out.",
    why="A muscle that was worked yesterday gives fewer and worse sets today.",
    rules=("next-day-sets", "hard-set-reserve"),
)
def next_day(this: Check, desk: Desk) -> Iterator[Finding]:
    """The same muscles hard on following days."""
    most = desk.rule("next-day-sets")
    told = _told_by_joints(desk)
    days: list[tuple[SessionAt, int, dict[Muscle, float]]] = []
    for session, slots in desk.slots_by_session():
        if session.hours is not None and not is_apart(session):
            days.append((session, session.hours, _hard_sets(desk, slots)))
    for session, hours, sets in days:
        for before, then, earlier in days:
            if before.program is not session.program or hours - then != _DAY:
                continue
            muscles = tuple(
                muscle.value.replace("-", " ")
                for muscle in Muscle
                if min(sets.get(muscle, 0.0), earlier.get(muscle, 0.0)) > most
            )
            if not muscles or (session.program.id, session.number, session.session.id) in told:
                continue
            text = (
                f"{named(muscles)} hard again on the day after {before.session.id}; at most "
                f"{number(most)} hard sets on both days"
            )
            yield this.finds(session, text, spot=_day_spot(session), change=_later(session))


def _told_by_joints(desk: Desk) -> set[tuple[str, int, str]]:
    least = desk.rule("joint-hours")
    return {
        (day.at.program.id, day.at.number, day.at.session.id)
        for several in loaded_days(desk).values()
        for day in several
        if too_close(day, several, least)
    }


def _hard_sets(desk: Desk, slots: tuple[SlotAt, ...]) -> dict[Muscle, float]:
    found: dict[Muscle, float] = {}
    most_left = desk.rule("hard-set-reserve")
    for at in slots:
        slot = at.slot
        if leaves_more(slot, most_left):
            continue
        if slot.exercise.pattern in _SINGLE or is_quick(slot) or not is_hard(desk.book, slot.dose):
            continue
        for muscle in slot.exercise.muscles.direct:
            found[muscle] = found.get(muscle, 0.0) + slot.dose.sets.middle
    return found


def _day_spot(at: SessionAt) -> Spot:
    return Spot(at.wave, (*at.path, "day"))


def _taken(at: SessionAt) -> list[int]:
    """Weekdays of the other sessions of this wave."""
    days = {
        one.session.day
        for week in at.program.weeks
        if week.wave_id == at.week.wave_id
        for one in week.sessions
        if one.id != at.session.id
    }
    return [WEEKDAYS.index(day) for day in days if day is not None]


def _free_day(at: SessionAt, apart: int = 1) -> Mending:
    """The free weekday that is furthest from the other sessions, the nearest of those."""
    taken = _taken(at)
    now = WEEKDAYS.index(at.session.session.day or WEEKDAYS[0])

    def gap(day: int) -> int:
        return min((min(abs(day - one), 7 - abs(day - one)) for one in taken), default=7)

    free = [day for day in range(7) if gap(day) >= apart]
    if not free:
        return Mending("take it to another day, or make one session of both")
    best = min(free, key=lambda day: (-min(gap(day), 2), abs(day - now), day))
    edit = Edit(at.wave.file, (*at.path, "day"), WEEKDAYS[best])
    return Mending(f"write 'day: {WEEKDAYS[best]}'", (edit,))


def _later(at: SessionAt) -> Mending:
    change = _free_day(at, 2)
    return change if change.edits else Mending("leave a day between them, or split the muscles")
