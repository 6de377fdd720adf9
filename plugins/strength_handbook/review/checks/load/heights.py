"""Does a jump or a step begin as low as its exercise says, and rise in steps that can be learnt?"""

from collections.abc import Iterator

from strength_handbook.model.length import length_text
from strength_handbook.model.words import Pattern
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.slips import slips
from strength_handbook.review.weeks import (
    first_weeks,
    is_derived,
    is_training,
    recent_numbers,
)
from strength_handbook.review.words import number

SLACK_CM = 0.5
"""Boxes in inches: four inches are 10.16 cm, and meant as ten."""


@check(
    "first-height",
    Family.LOAD,
    Severity.ERROR,
    what="Height of the box or step in the first week of an exercise in a program, against the "
    "'first-height' that the exercise itself states.",
    why="The page says where to begin; a session that begins higher sends a beginner to the edge.",
)
def first_height(this: Check, desk: Desk) -> Iterator[Finding]:
    """First boxes that are too high."""
    firsts = {program.id: first_weeks(program) for program in desk.worked.programs}
    for at in desk.slots:
        most, height = at.slot.exercise.first_height, at.slot.dose.said.height
        begins = firsts[at.program.id][at.slot.exercise_id] == at.number
        if most is None or height is None or not begins or height <= most + 1e-9:
            continue
        text = (
            f"{number(100 * height)} cm in the first week of {at.slot.exercise_id}; its page says "
            f"{number(100 * most)} cm at most"
        )
        lower = f"{number(100 * most)} cm"
        change = Mending(
            f"write 'box {lower}'", () if is_derived(at) else at.rewritten(height=lower)
        )
        yield this.finds(at, text, spot=at.spot_of("height"), change=change)


@check(
    "height-step",
    Family.LOAD,
    Severity.WARN,
    what="Height of the box or hurdle of a jump against the higher of those in the last two "
    "training weeks that had it, or else the last week of all.",
    why="A higher box asks for a landing that the lower one has not taught, and its edge is at "
    "the shin.",
    rules=("height-step",),
)
def height_step(this: Check, desk: Desk) -> Iterator[Finding]:
    """Jumps that get higher in too large a step."""
    earlier = recent_numbers(desk)
    most, wrong = desk.rule("height-step"), slips(desk)
    last: dict[tuple[str, str], dict[int, float]] = {}
    for at in desk.slots:
        height = at.slot.dose.said.height
        jump = at.slot.exercise.pattern is Pattern.JUMP
        if height is None or not jump or not is_training(at) or at in wrong:
            continue
        had = last.setdefault((at.program.id, at.slot.exercise_id), {})
        recent = [week for week in earlier.get((at.program.id, at.number), ()) if week in had]
        recent = recent or [week for week in had if week != at.number][-1:]
        had[at.number] = max(height, had.get(at.number, height))
        if not recent:
            continue
        week = max(recent, key=lambda one: had[one])
        rise = 100 * (height - had[week])
        if rise <= most + SLACK_CM:
            continue
        text = (
            f"{length_text(height, 'cm')} in week {at.number} after "
            f"{length_text(had[week], 'cm')} in week {week}: {number(round(rise, 1))} cm higher; "
            f"at most {number(most)} cm"
        )
        lower = length_text(had[week] + most / 100, "cm", like=height)
        edits = () if is_derived(at) else at.rewritten(height=lower)
        change = Mending(f"write 'box {lower}'", edits)
        yield this.finds(at, text, spot=at.spot_of("height"), change=change)
