"""What each day of one week asks of muscles, joints and hands, and when the next day comes."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from strength_handbook.model.book import Book
from strength_handbook.model.weeks import WEEKDAYS
from strength_handbook.plan.volume import add_up
from strength_handbook.plan.worked import WorkedProgram, WorkedSession, WorkedSlot
from strength_handbook.review.grip import LIMITING, grip_budget, grip_class
from strength_handbook.review.joints import Joint, stressed


@dataclass(frozen=True)
class DayStress:
    """One training day.

    Attributes:
        day: its weekday; empty for sessions that have none.
        sessions: ids of its sessions, in order.
        optional: True where nobody has to come.
        hard_sets: hard sets per muscle, most first.
        joints: joints that are loaded heavily, from the ground up, with the exercises that do it.
        grip_slots: exercises that end when the grip opens.
        grip_seconds: seconds of gripping, each weighed with its class.
        hours_to_next: from this day to the next training day, that of the next week included;
            None where there is none or the day is not known.
    """

    day: str
    sessions: tuple[str, ...]
    optional: bool
    hard_sets: Mapping[str, float]
    joints: Mapping[Joint, tuple[str, ...]]
    grip_slots: int
    grip_seconds: float
    hours_to_next: int | None


def week_stress(book: Book, program: WorkedProgram, week: int) -> tuple[DayStress, ...]:
    """The training days of one week in order; sessions without a weekday come last.

    Raises:
        KeyError: where the program has no such week.
    """
    by_day: dict[str, list[WorkedSession]] = {}
    for session in program.week(week).sessions:
        by_day.setdefault(session.session.day or "", []).append(session)
    starts = sorted(_starts(program))
    days = []
    for day in (*WEEKDAYS, ""):
        sessions = by_day.get(day)
        if sessions is None:
            continue
        now = _hours(week, day) if day else None
        later = next((start for start in starts if now is not None and start > now), None)
        hours = None if now is None or later is None else later - now
        days.append(_day(book, day, sessions, hours))
    return tuple(days)


def _day(book: Book, day: str, sessions: list[WorkedSession], hours: int | None) -> DayStress:
    slots = [slot for session in sessions for slot in session.slots]
    hard = add_up(session.volume for session in sessions).hard_sets
    return DayStress(
        day=day,
        sessions=tuple(session.id for session in sessions),
        optional=all(session.session.optional for session in sessions),
        hard_sets=dict(sorted(hard.items(), key=lambda item: (-item[1], item[0]))),
        joints=_joints(book, slots),
        grip_slots=sum(grip_class(slot.exercise) == LIMITING for slot in slots),
        grip_seconds=sum(grip_budget(book, slot) for slot in slots),
        hours_to_next=hours,
    )


def _joints(book: Book, slots: list[WorkedSlot]) -> dict[Joint, tuple[str, ...]]:
    by_joint: dict[Joint, list[str]] = {joint: [] for joint in Joint}
    for slot in slots:
        for joint in stressed(book, slot):
            if slot.exercise_id not in by_joint[joint]:
                by_joint[joint].append(slot.exercise_id)
    return {joint: tuple(exercises) for joint, exercises in by_joint.items() if exercises}


def _starts(program: WorkedProgram) -> Iterator[int]:
    for week in program.weeks:
        for session in week.sessions:
            if session.session.day is not None:
                yield _hours(week.week, session.session.day)


def _hours(week: int, day: str) -> int:
    """Hours from the Monday of week 1."""
    return 24 * (7 * (week - 1) + WEEKDAYS.index(day))
