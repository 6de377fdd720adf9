"""Is an exercise only begun?"""

from collections.abc import Iterator

from strength_handbook.model.exercise import DraftExercise
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.echoes import DRAFT
from strength_handbook.review.finding import Finding, Mending


@check(
    DRAFT,
    Family.COMPLETE,
    Severity.ERROR,
    what="Exercises with a name, a way of loading, a cue and a stop rule, and without something "
    "else that their page needs. They are shown to the coach, marked DRAFT; 'drafts: true' beside "
    "'programs:' in mkdocs.yml publishes them all the same.",
    why="Members would stand in front of a bar with a page that is half empty.",
    source="the parts of an exercise's page",
)
def draft(this: Check, desk: Desk) -> Iterator[Finding]:
    """Exercises of which something is still to be written."""
    for name, exercise in desk.book.exercises.items():
        if isinstance(exercise, DraftExercise):
            text = f"only begun; still to be written: {', '.join(exercise.missing)}"
            change = Mending("write them, or leave the exercise out of the programs until then")
            yield this.finds_in(
                desk.exercise_spot(name, "name"), f"exercise {name}", text, change=change
            )
