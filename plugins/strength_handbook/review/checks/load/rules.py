"""Is the step of a rule for going on small enough for the load it is added to?"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from strength_handbook.model.progress import progress_text
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.patterns import LOWER, UPPER
from strength_handbook.review.weeks import EPSILON
from strength_handbook.review.words import number, weight

_STEPS_G = {"kg": (5000, 2500, 2000, 1250, 1000, 500), "lb": (4536, 2268, 1134, 567)}
"""Usual steps, from large to small; 10, 5, 2.5 and 1.25 lb in a room of pounds."""


@check(
    "rule-step",
    Family.LOAD,
    Severity.WARN,
    what="The step that a 'linear' rule adds every time, against the lightest load that an "
    "example lifter has in it, body weight included where it is lifted; without tested values, "
    "against the lightest load of the exercise's own table. Other rules ask for spare repetitions "
    "first.",
    why="A step that comes every session must be one that a session can build.",
    rules=("rule-step-lower", "rule-step-upper"),
)
def rule_step(this: Check, desk: Desk) -> Iterator[Finding]:
    """Rules whose step is a large part of the load."""
    seen: set[tuple[str, str, str, int]] = set()
    for at in desk.slots:
        rule, key = at.slot.slot.progress, (at.program.id, at.week.wave_id, at.session.id, at.index)
        pattern = at.slot.exercise.pattern
        if (
            rule is None
            or rule.rule != "linear"
            or rule.step is None
            or pattern not in (*LOWER, *UPPER)
            or key in seen
        ):
            continue
        least = _lightest(at)
        if least is None:
            continue
        seen.add(key)
        who, grams = least
        most = desk.rule("rule-step-lower" if pattern in LOWER else "rule-step-upper")
        share = 100 * rule.step.grams / grams
        if share <= most + EPSILON:
            continue
        units = desk.book.room.units
        text = (
            f"'{progress_text(rule)}' adds {number(round(share, 1))} % to the "
            f"{weight(grams, units)} of {who}; at most {number(most)} %"
        )
        path = (*at.path, "progress")
        spot = at.spot_of("progress")
        yield this.finds(at, text, spot=spot, change=_smaller(at, grams * most / 100, path))


def _lightest(at: SlotAt) -> tuple[str, float] | None:
    """The lightest load that moves, and whose it is."""
    known = {
        name: load.actual_g + load.body_g
        for name, load in at.slot.loads.items()
        if load.actual_g is not None and load.actual_g + load.body_g > 0
    }
    if known:
        name = min(known, key=lambda one: known[one])
        return name, known[name]
    start = at.slot.exercise.load.start
    if start is None:
        return None
    name, share = min(start.shares.items(), key=lambda one: one[1])
    return f"its table ({name})", start.at.grams * share / 100


def _smaller(at: SlotAt, most_g: float, path: tuple[str | int, ...]) -> Mending:
    """The largest usual step that is small enough and can be put on; else one to be earned."""
    rule, scale = at.slot.slot.progress, at.slot.scale
    assert rule is not None  # noqa: S101  # asked before
    assert rule.step is not None  # noqa: S101  # asked before
    steps = [step.grams for step in scale.steps] if scale is not None else []
    gap = min((later - earlier for earlier, later in pairwise(steps)), default=0)
    for grams in _STEPS_G[rule.step.unit]:
        if gap <= grams <= most_g:
            less = rule.model_copy(update={"step": replace(rule.step, grams=grams)})
            text = progress_text(less)
            return Mending(f"write '{text}'", (Edit(at.wave.file, path, text),))
    text = f"two-for-two +{rule.step.label}"
    words = f"write '{text}': the step then comes after spare repetitions"
    return Mending(words, (Edit(at.wave.file, path, text),))
