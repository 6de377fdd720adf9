"""Is there enough time between days that load the same joints?"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from strength_handbook.model.weeks import WEEKDAYS
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SessionAt
from strength_handbook.review.fatigue import named
from strength_handbook.review.finding import Edit, Finding, Mending, Spot
from strength_handbook.review.joints import Joint, stressed
from strength_handbook.review.words import number

_DAY = 24
"""Hours."""


@check(
    "joint-again",
    Family.RECOVERY,
    Severity.WARN,
    what="Hours from one day to the next that loads the same joint highly: a heavy lift, sets near "
    "the limit, slow lowering or landings; assistance work counts where it leaves less than tires "
    "its muscles. Sessions without a weekday are left out.",
    why="Tendons and joints need longer than muscles to be ready again.",
    rules=(
        "joint-hours",
        "heavy-lift",
        "tired-reserve",
        "tired-hold",
        "hard-hold-effort",
        "slow-lowering",
    ),
)
def joint_again(this: Check, desk: Desk) -> Iterator[Finding]:
    """The same joint on two days that are too close."""
    least = desk.rule("joint-hours")
    for days in loaded_days(desk).values():
        for day in days:
            for before in too_close(day, days, least):
                joints = tuple(joint for joint in day.joints if joint in before.joints)
                text = (
                    f"{named(joints)} again {day.hours - before.hours} h after "
                    f"{before.at.session.id}; at least {number(least)} h"
                )
                yield this.finds(
                    day.at, text, spot=_day_spot(day.at), change=_another_day(day, days, least)
                )


@dataclass(frozen=True, eq=False)
class LoadedDay:
    """A session with a weekday that loads some joint highly.

    Attributes:
        at: the session.
        hours: from the Monday of week 1.
        joints: the joints.
    """

    at: SessionAt
    hours: int
    joints: tuple[Joint, ...]


def loaded_days(desk: Desk) -> Mapping[WorkedProgram, list[LoadedDay]]:
    """Sessions with a weekday that load a joint highly, by program."""
    found: dict[WorkedProgram, list[LoadedDay]] = {}
    for session, slots in desk.slots_by_session():
        if session.hours is None:
            continue
        loaded = {joint for at in slots for joint in stressed(desk.book, at.slot)}
        if loaded:
            joints = tuple(joint for joint in Joint if joint in loaded)
            found.setdefault(session.program, []).append(LoadedDay(session, session.hours, joints))
    return found


def too_close(day: LoadedDay, days: list[LoadedDay], least: float) -> list[LoadedDay]:
    """Earlier days with a joint in common; two sessions on one day are meant."""
    return [
        one
        for one in days
        if 0 < day.hours - one.hours < least and set(one.joints) & set(day.joints)
    ]


def _day_spot(at: SessionAt) -> Spot:
    return Spot(at.wave, (*at.path, "day"))


def _another_day(day: LoadedDay, days: list[LoadedDay], least: float) -> Mending:
    """The nearest weekday, free in this wave, that is far enough from all other sessions."""
    wave, session = day.at.week.wave_id, day.at.session.id
    own = [one for one in days if (one.at.week.wave_id, one.at.session.id) == (wave, session)]
    others = [one for one in days if one not in own]
    taken = {
        one.session.day
        for week in day.at.program.weeks
        if week.wave_id == wave
        for one in week.sessions
    }
    now = day.hours // _DAY % 7
    for to in sorted(range(7), key=lambda to: (abs(to - now), to)):
        moved = [LoadedDay(one.at, one.hours + _DAY * (to - now), one.joints) for one in own]
        if WEEKDAYS[to] not in taken and all(_apart(one, others, least) for one in moved):
            edit = Edit(day.at.wave.file, (*day.at.path, "day"), WEEKDAYS[to])
            return Mending(f"write 'day: {WEEKDAYS[to]}'", (edit,))
    return Mending("do it on another day, or lighter for these joints")


def _apart(day: LoadedDay, others: list[LoadedDay], least: float) -> bool:
    return not any(
        abs(day.hours - one.hours) < least and set(one.joints) & set(day.joints) for one in others
    )
