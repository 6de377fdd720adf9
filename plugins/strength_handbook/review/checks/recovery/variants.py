"""Is a session that was made less for another day really less, in every week?"""

from collections.abc import Iterator

from strength_handbook.plan.variants import WorkedVariant, session_variants
from strength_handbook.plan.worked import WorkedSlot
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SessionAt
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.words import number

_LEFT = 3
"""Repetitions left that are offered. Common practice, no source."""


@check(
    "variant-full",
    Family.RECOVERY,
    Severity.WARN,
    what="Variants of each session in each week: whether anything is less than in the session "
    "itself; and, where ramps and tests are left out, the repetitions left after every set.",
    why="Who comes after a night out and does the whole session, or its hardest set, comes to harm "
    "by our own word.",
    rules=("variant-reserve",),
)
def variant_full(this: Check, desk: Desk) -> Iterator[Finding]:
    """Variants that take nothing off, or keep the hardest sets."""
    for at in desk.sessions:
        worked = session_variants(desk.book, at.program.program, at.session)
        for variant in worked:
            yield from _of_variant(this, desk, at, variant)


def _of_variant(
    this: Check, desk: Desk, at: SessionAt, variant: WorkedVariant
) -> Iterator[Finding]:
    index = at.session.session.variants.index(variant.variant)
    path = (*at.path, "variants", index)
    spot = type(at.spot)(at.wave, path)
    today = {slot.order: slot for slot in at.session.slots}
    when = variant.variant.when
    if not variant.left_out and not any(_less(today[one.order], one) for one in variant.slots):
        text = f"'{when}' takes nothing off"
        edits = [
            Edit(at.wave.file, (*path, key), value)
            for key, value in (("keep-sets", "50 %"), ("rir", f"at least {_LEFT}"))
        ]
        words = f"write 'keep-sets: 50 %' and 'rir: at least {_LEFT}'"
        yield this.finds(at, text, spot=spot, change=Mending(words, tuple(edits)))
        return
    least = desk.rule("variant-reserve")
    hard = [
        one
        for one in variant.slots
        if one.dose.fewest_left is not None and one.dose.fewest_left < least
    ]
    if variant.variant.max_efforts == "keep" or not hard:
        return
    first = min(hard, key=lambda one: one.dose.fewest_left or 0.0)
    text = (
        f"'{when}' keeps {first.order} {first.exercise_id} with "
        f"{number(first.dose.fewest_left or 0.0)} left; at least {number(least)}"
    )
    edit = Edit(at.wave.file, (*path, "rir"), f"at least {number(least)}")
    change = Mending(f"write 'rir: at least {number(least)}'", (edit,))
    yield this.finds(at, text, spot=spot, change=change)


def _less(today: WorkedSlot, then: WorkedSlot) -> bool:
    """True where a slot has fewer sets, less load, more left, no ramp or a quicker lowering."""
    one, other = today.dose, then.dose
    if other.sets.high < one.sets.high or (one.top is not None and other.top is None):
        return True
    if (other.reserve or 0.0) > (one.reserve or 0.0):
        return True
    if one.tempo is not None and other.tempo is not None and other.tempo.lower < one.tempo.lower:
        return True
    return one.load != other.load
