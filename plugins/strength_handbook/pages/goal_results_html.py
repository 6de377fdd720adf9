"""Tests whose result is no load, as a block that the form on a phone is made from."""

from collections.abc import Collection
from math import ceil

from markupsafe import Markup

from strength_handbook.calc.retest import near_certain_change, smallest_believable_change
from strength_handbook.pages.tools_html import block
from strength_handbook.plan.goal_results import goal_results
from strength_handbook.plan.worked import WorkedProgram, WorkedSession, WorkedWeek


def believable_limits(cv: float) -> tuple[float, float]:
    """Changes from which a retest says something, in percent: half points, rounded against it.

    >>> believable_limits(4.2)
    (6.0, 12.0)
    """
    likely, sure = (
        ceil(limit(cv) * 2 - 1e-9) / 2
        for limit in (smallest_believable_change, near_certain_change)
    )
    return likely, sure


def results_block(program: WorkedProgram, exercises: Collection[str] | None = None) -> Markup:
    """Each test with its exercise, what is counted, and the limits of a change; empty for none.

    Limits are percent in millionths, as `tools/test-day.js` compares them; without them the phone
    says that it cannot tell.

    Args:
        program: whose goals they are.
        exercises: only tests of these; None for all.
    """
    found = [
        {"test": one.test, "exercise": one.exercise, "counted": one.counted}
        | ({"limits": _limits(one.noise)} if one.noise is not None else {})
        for one in goal_results(program)
        if exercises is None or one.exercise in exercises
    ]
    return block("sh-results", found) if found else Markup()


def session_results(program: WorkedProgram, week: WorkedWeek, session: WorkedSession) -> Markup:
    """The tests that a session of a test week has in it."""
    if week.week not in week.wave.tests:
        return Markup()
    return results_block(program, {slot.exercise_id for slot in session.slots})


def _limits(noise: float) -> list[int]:
    return [round(limit * 1_000_000) for limit in believable_limits(noise)]
