"""What each day asks of muscles, joints and hands, week by week."""

from statistics import median
from typing import Any

from strength_handbook.model.book import Book
from strength_handbook.pages.coach.frame import coach_page, coach_uri, head_of
from strength_handbook.pages.page import Heading, Page
from strength_handbook.plan.worked import Worked, WorkedProgram, WorkedWeek
from strength_handbook.review.stress import DayStress, week_stress


def stress_page(worked: Worked, program: WorkedProgram) -> Page:
    """A table of muscles by day for each week, and joints and grip of each day."""
    every = [day for week in program.weeks for day in week_stress(worked.book, program, week.week)]
    usual = median([day.grip_seconds for day in every if day.grip_seconds] or [0.0])
    return coach_page(
        coach_uri("stress", program.id),
        "Muscles, joints, grip",
        "coach_stress.html",
        head_of(program)
        | {
            "usual": f"{usual:.0f}",
            "most_grip": f"{worked.book.rule('grip-slots'):g}",
            "weeks": [_week(worked.book, program, week, usual) for week in program.weeks],
        },
        says="What each day asks of muscles, joints and hands",
        headings=tuple(
            Heading(2, f"week-{week.week}", f"Week {week.week}") for week in program.weeks
        ),
    )


def _week(book: Book, program: WorkedProgram, week: WorkedWeek, usual: float) -> dict[str, Any]:
    days = week_stress(book, program, week.week)
    titles = {one.id: one.session.title for one in week.sessions}
    sums: dict[str, float] = {}
    for day in days:
        for muscle, sets in day.hard_sets.items():
            sums[muscle] = sums.get(muscle, 0) + sets
    muscles = sorted(sums, key=lambda muscle: (-sums[muscle], muscle))
    return {
        "number": week.week,
        "deload": week.deload,
        "heads": [_head(day, titles) for day in days],
        "muscles": [
            (
                muscle.replace("-", " "),
                [f"{day.hard_sets[muscle]:g}" if muscle in day.hard_sets else "" for day in days],
                f"{sums[muscle]:g}",
            )
            for muscle in muscles
        ],
        "days": [_day(book, day, titles, usual) for day in days],
    }


def _head(day: DayStress, titles: dict[str, str]) -> str:
    return day.day.capitalize()[:3] or " / ".join(titles[key] for key in day.sessions)


def _day(book: Book, day: DayStress, titles: dict[str, str], usual: float) -> dict[str, Any]:
    title = " / ".join(titles[key] for key in day.sessions)
    return {
        "title": ", ".join(part for part in (day.day.capitalize(), title) if part),
        "optional": day.optional,
        "joints": [
            (joint.value, ", ".join(book.exercises[key].name for key in exercises))
            for joint, exercises in day.joints.items()
        ],
        "grip_slots": day.grip_slots,
        "grip_seconds": f"{day.grip_seconds:.0f}",
        "grip_word": _against(day.grip_seconds, usual),
        "grip_over": day.grip_slots > book.rule("grip-slots"),
        "hours": day.hours_to_next,
    }


def _against(seconds: float, usual: float) -> str:
    """A day's grip against the usual day of its program: a quarter more or less is about it.

    >>> _against(1950, 1200), _against(1000, 1200), _against(500, 1200)
    ('much', 'usual', 'little')
    """
    if seconds > 1.25 * usual:
        return "much"
    return "little" if seconds < 0.75 * usual else "usual"
