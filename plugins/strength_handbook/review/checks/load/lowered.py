"""Is somebody near the limit before more than the best single is lowered?"""

from collections.abc import Iterator

from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.load.reps import load_text
from strength_handbook.review.dangers import reaches_percent
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.weeks import is_derived
from strength_handbook.review.words import number

BEST = 100.0
"""Percent of the best single: more can be lowered and not lifted."""


@check(
    "lowered-step",
    Family.LOAD,
    Severity.ERROR,
    what="The first week in which more than the best single is only lowered, against the heaviest "
    "load of the same exercise in the weeks before.",
    why="Nobody has shown control of such a load who has not been near the limit lately.",
    rules=("lowered-after",),
)
def lowered_step(this: Check, desk: Desk) -> Iterator[Finding]:
    """Lowering above the best that comes out of nothing."""
    least = desk.rule("lowered-after")
    before: dict[tuple[str, str], dict[int, float]] = {}
    for at in desk.slots:
        percent = reaches_percent(at.slot)
        if percent is None:
            continue
        had = before.setdefault((at.program.id, at.slot.exercise_id), {})
        earlier = max((most for week, most in had.items() if week < at.number), default=0.0)
        had[at.number] = max(percent, had.get(at.number, 0.0))
        if percent <= BEST or at.slot.dose.said.return_by is None or earlier >= least:
            continue
        after = f"after {number(earlier)} % at most" if earlier else "with nothing before it"
        text = (
            f"{number(percent)} % is lowered in week {at.number} {after}; first at least "
            f"{number(least)} % in an earlier week"
        )
        change = Mending("build up to it", ())
        if at.slot.percent is not None and at.slot.dose.load is not None:
            written = getattr(at.slot.dose.load, "percent", at.slot.percent)
            lower = load_text(at.slot.dose, int(2 * written * BEST / at.slot.percent) / 2)
            edits = () if is_derived(at) else at.rewritten(load=lower)
            words = f"write '{lower}', and more once {number(least)} % was lifted well"
            change = Mending(words, edits)
        yield this.finds(at, text, spot=at.spot_of("load"), change=change)
