"""Does everybody get what the program is about?"""

from collections.abc import Iterator

from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending, Spot


@check(
    "core-optional",
    Family.RECOVERY,
    Severity.WARN,
    what="A main lift, or the exercise of a goal, that a wave has only in sessions that are "
    "optional. Weeks of tests are left out.",
    why="Whoever stays at home misses what the program is for.",
)
def core_optional(this: Check, desk: Desk) -> Iterator[Finding]:
    """Core exercises that only those who come on the extra day do."""
    for_all = {
        (program.id, week.wave_id, slot.exercise_id)
        for program in desk.worked.programs
        for week in program.weeks
        for session in week.sessions
        if not session.session.optional and week.week not in week.wave.tests
        for slot in session.slots
    }
    for at in desk.slots:
        exercise = at.slot.exercise_id
        goal = exercise in _goals(at.program)
        if (
            at.session.session.optional
            and at.number not in at.week.wave.tests
            and (goal or at.slot.exercise.role == "main")
            and (at.program.id, at.week.wave_id, exercise) not in for_all
        ):
            what = "the exercise of a goal" if goal else "a main lift"
            text = f"{what} that this wave has only in an optional session"
            change = Mending("do it in a session for everybody, or take out 'optional'")
            spot = Spot(at.wave, ("sessions", at.session.id, "optional"))
            yield this.finds(at, text, spot=spot, change=change)


def _goals(program: WorkedProgram) -> set[str]:
    """Exercises that the goals name, directly or by their tested value."""
    bases = program.program.bases
    named = {goal.exercise for goal in program.program.goals if goal.exercise is not None}
    return named | {
        bases[goal.base].exercise for goal in program.program.goals if goal.base in bases
    }
