"""Do percentages refer to the lift that they are written for?"""

from collections.abc import Iterator

from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.complete.bases import uses_base
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Edit, Finding, Mending, Spot


@check(
    "base-other",
    Family.COMPLETE,
    Severity.ERROR,
    what="The base that a slot names, against its exercise: a base that was tested with another "
    "exercise must stand in the exercise's own file.",
    why="Three quarters of a deadlift is no load for a press, and the page prints it in kilograms.",
)
def base_other(this: Check, desk: Desk) -> Iterator[Finding]:
    """Percentages of another lift."""
    for at in desk.slots:
        base, key = at.slot.base, at.slot.slot.base
        if base is None or key is None or not uses_base(at):
            continue
        named = getattr(at.slot.exercise.load, "base", None)
        if base.exercise == at.slot.exercise_id or named == key:
            continue
        text = f"the loads are of {key}, which is tested with {base.exercise}"
        spot = Spot(at.wave, (*at.path, "base"))
        yield this.finds(at, text, spot=spot, change=_own(at, named, key))


def _own(at: SlotAt, named: str | None, key: str) -> Mending:
    """The base of the exercise itself; words alone where it has none."""
    bases = at.program.program.bases
    tested = [one for one, base in bases.items() if base.exercise == at.slot.exercise_id]
    own = named if named in bases else next(iter(tested), None)
    if own is not None:
        edit = Edit(at.wave.file, (*at.path, "base"), own)
        return Mending(f"write 'base: {own}'", (edit,))
    return Mending(
        "take 'base' out and write the loads without it, such as '@ 8RM'; or, if they are meant "
        f"so, write 'base: {key}' under 'load' in the exercise"
    )
