"""Goals whose result is no load: what is counted, and how much it differs by itself."""

from dataclasses import dataclass
from typing import Literal

from strength_handbook.model.dose import Distance, Hold
from strength_handbook.model.goal import Goal
from strength_handbook.plan.worked import WorkedProgram

Counted = Literal["seconds", "metres", "repetitions"]


@dataclass(frozen=True, slots=True)
class GoalResult:
    """One test that ends in a number without a weight.

    Attributes:
        test: the coach's words for it.
        exercise: id of the exercise, or None where the test is none of the handbook's.
        counted: what the number counts.
        noise: coefficient of variation in percent, or None where nobody has measured it.
    """

    test: str
    exercise: str | None
    counted: Counted
    noise: float | None


def goal_results(program: WorkedProgram) -> tuple[GoalResult, ...]:
    """The goals of a program that a tested load does not answer, in order.

    A goal with neither tested value, exercise nor `result` names nothing that could be entered.
    """
    found = []
    for goal in program.program.goals:
        counted = _counted(program, goal)
        if counted is not None:
            found.append(GoalResult(goal.test, goal.exercise, counted, goal.noise))
    return tuple(found)


def _counted(program: WorkedProgram, goal: Goal) -> Counted | None:
    if goal.result is not None or goal.base is not None or goal.exercise is None:
        return goal.result
    works = [
        slot.dose.work
        for week in program.weeks
        for session in week.sessions
        for slot in session.slots
        if slot.exercise_id == goal.exercise
    ]
    # The last one: tests come at the end.
    match works[-1] if works else None:
        case Hold():
            return "seconds"
        case Distance():
            return "metres"
        case _:
            return "repetitions"
