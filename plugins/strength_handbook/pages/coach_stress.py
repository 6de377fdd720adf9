"""What each day asks of muscles, joints and hands, week by week."""

from typing import Any

from strength_handbook.model.book import Book
from strength_handbook.pages.coach_frame import coach_page, coach_uri, head_of
from strength_handbook.pages.page import Heading, Page
from strength_handbook.plan.worked import Worked, WorkedProgram, WorkedWeek
from strength_handbook.review.stress import DayStress, week_stress


def stress_page(worked: Worked, program: WorkedProgram) -> Page:
    """A table of muscles by day for each week, and joints and grip of each day."""
    return coach_page(
        coach_uri("stress", program.id),
        "Muscles, joints, grip",
        "coach_stress.html",
        head_of(program) | {"weeks": [_week(worked.book, program, week) for week in program.weeks]},
        says="What each day asks of muscles, joints and hands",
        headings=tuple(
            Heading(2, f"week-{week.week}", f"Week {week.week}") for week in program.weeks
        ),
    )


def _week(book: Book, program: WorkedProgram, week: WorkedWeek) -> dict[str, Any]:
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
        "days": [_day(book, day, titles) for day in days],
    }


def _head(day: DayStress, titles: dict[str, str]) -> str:
    return day.day.capitalize()[:3] or " / ".join(titles[key] for key in day.sessions)


def _day(book: Book, day: DayStress, titles: dict[str, str]) -> dict[str, Any]:
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
        "hours": day.hours_to_next,
    }
