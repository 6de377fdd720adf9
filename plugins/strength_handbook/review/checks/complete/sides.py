"""Is one-sided work counted on both sides, and only that?"""

from collections.abc import Iterator

from strength_handbook.model.exercise import Exercise
from strength_handbook.model.words import Pattern
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Edit, Finding, Mending


@check(
    "side-uncounted",
    Family.COMPLETE,
    Severity.ERROR,
    what="Doses that say 'each-side: false' of an exercise that is done one side at a time; and, "
    "as a warning, single-leg exercises whose file leaves out 'sides'.",
    why="Volume and minutes come out at half of what is done.",
)
def side_uncounted(this: Check, desk: Desk) -> Iterator[Finding]:
    """One side counted, two done."""
    for at in desk.slots:
        if at.slot.exercise.sides == "each" and not at.slot.dose.each_side:
            text = "one side is counted and the exercise is done with each"
            change = Mending("write 'each-side: true'", at.rewritten(each_side=True))
            yield this.finds(at, text, spot=at.spot_of("each-side"), change=change)
        elif _not_said(at.slot.exercise) and not at.slot.dose.each_side:
            text = "a single-leg exercise is counted once; its file does not say 'sides'"
            words = (
                "write 'sides: each' in the exercise, if the number is for each leg, "
                "or 'sides: both', if the legs take turns within it"
            )
            edits = (Edit(at.exercise.file, ("sides",), "each"),)
            yield this.finds(at, text, change=Mending(words, edits), severity=Severity.WARN)


def _not_said(exercise: Exercise) -> bool:
    """Whether a single-leg exercise leaves open what its number counts.

    A file that writes 'sides: both' has answered: marching or walking lunges take turns.
    """
    return exercise.pattern is Pattern.SINGLE_LEG and "sides" not in exercise.model_fields_set


@check(
    "side-doubled",
    Family.COMPLETE,
    Severity.WARN,
    what="Doses for each side of an exercise that is done with both sides at once.",
    why="Volume and minutes come out doubled, and the exercise's page shows something else.",
)
def side_doubled(this: Check, desk: Desk) -> Iterator[Finding]:
    """Two sides counted, one thing done."""
    for at in desk.slots:
        if at.slot.exercise.sides == "both" and at.slot.dose.each_side:
            text = "counted for each side, and the exercise's file says both at once"
            words = "take 'ES' out, or write a file for the one-sided exercise"
            change = Mending(words, at.rewritten(each_side=False))
            yield this.finds(at, text, spot=at.spot_of("each-side"), change=change)
