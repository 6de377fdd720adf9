"""Is a percentage of a body-weight lift taken of everything that moves, and the help named?"""

from collections.abc import Iterator

from strength_handbook.dose.load import line_load
from strength_handbook.model.load import (
    BodyWeight,
    PercentOfBase,
    PercentOfSystem,
    PercentOfTrainingMax,
)
from strength_handbook.model.loading import BodyWeightLift
from strength_handbook.model.program import Base
from strength_handbook.model.quantities import Mass
from strength_handbook.plan.loads import body_share_g
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.words import number, weight

ADDED_BELOW = 0.5
"""A value below this share of the body that moves is what was added, not the total."""


@check(
    "share-of-added",
    Family.LOAD,
    Severity.ERROR,
    what="Percentages of body-weight lifts that are not of the system: the body's share plus what "
    "was added. The percentage must say 'system', and its base must be one.",
    why="Three quarters of the added weight can be nearly all of what somebody can lift.",
    source="arithmetic",
)
def share_of_added(this: Check, desk: Desk) -> Iterator[Finding]:
    """A share of what hangs on the belt."""
    for at in desk.slots:
        load, base = at.slot.dose.load, at.slot.base
        if not isinstance(at.slot.exercise.load, BodyWeightLift) or base is None:
            continue
        if not isinstance(load, PercentOfBase | PercentOfTrainingMax):
            continue
        if base.kind == "system" and isinstance(load, PercentOfTrainingMax):
            continue
        edits: tuple[Edit, ...] = ()
        words = []
        if base.kind != "system":
            words.append(
                f"'kind: system' for {at.slot.base_id} and body and belt together as its values"
            )
            edits += _system_edits(desk, at, base)
        if isinstance(load, PercentOfBase):
            right = line_load(PercentOfSystem(load.percent))
            words.append(f"'{right}'")
            edits += at.rewritten(load=right)
        change = Mending(f"write {', and '.join(words)}", edits)
        yield this.finds(at, _example(desk, at, base), spot=at.spot_of("load"), change=change)


def _example(desk: Desk, at: SlotAt, base: Base) -> str:
    load, units = at.slot.dose.load, desk.book.room.units
    percent = getattr(load, "percent", 0.0)
    if base.kind == "system":
        return f"{number(percent)} % of what? Belt and body together are the 'system'"
    for name, lifter in desk.book.lifters.items():
        added = lifter.bases.get(at.slot.base_id or "")
        body = body_share_g(at.slot.exercise.load, lifter.bodyweight.grams)
        if added is None or added.grams >= ADDED_BELOW * body:
            continue
        total, taken = body + added.grams, added.grams * (at.slot.percent or percent) / 100
        right = total * (at.slot.percent or percent) / 100 - body
        instead = f"{weight(abs(right), units)} {'added' if right > 0 else 'of help'}"
        return (
            f"{name}: {number(percent)} % of the added {added.label} is {weight(taken, units)}, "
            f"{100 * (body + taken) / total:.0f} % of the best total; {number(percent)} % of the "
            f"total is {instead}"
        )
    return f"{number(percent)} % of {at.slot.base_id}, which is no system total"


def _system_edits(desk: Desk, at: SlotAt, base: Base) -> tuple[Edit, ...]:
    """A base made a system: kind, strip, and values that were only what was added."""
    key, file = at.slot.base_id or "", desk.program_spot(at.program.id).source.file
    edits = [Edit(file, ("bases", key, "kind"), "system")]
    shares = []
    for name, lifter in desk.book.lifters.items():
        value = lifter.bases.get(key)
        body = body_share_g(at.slot.exercise.load, lifter.bodyweight.grams)
        if value is None or value.grams >= ADDED_BELOW * body or desk.written.lifters is None:
            continue
        total = Mass(round(value.grams + body), value.unit).label
        path = ("lifters", name, "bases", key)
        edits.append(Edit(desk.written.lifters.source.file, path, total))
        shares.append(body)
    if shares:
        step = base.by.grams
        low = base.from_.grams + round(min(shares) // step * step)
        high = base.to.grams + round(-(-max(shares) // step) * step)
        for end, grams in (("from", low), ("to", high)):
            edits.append(Edit(file, ("bases", key, end), Mass(grams, base.by.unit).label))
    return tuple(edits)


@check(
    "help-unnamed",
    Family.LOAD,
    Severity.ERROR,
    what="Body-weight lifts with weight taken off, where neither the dose nor the exercise says by "
    "what: a band, a counterweight, a partner.",
    why="Help that nobody named is another one every time, and a foot band can snap back.",
)
def help_unnamed(this: Check, desk: Desk) -> Iterator[Finding]:
    """Weight taken off by nobody knows what."""
    for at in desk.slots:
        loading, load = at.slot.exercise.load, at.slot.dose.load
        if not isinstance(loading, BodyWeightLift) or loading.help or at.slot.dose.said.assist:
            continue
        helped = {name: one.help_g for name, one in at.slot.loads.items() if one.help_g}
        if not helped and not (isinstance(load, BodyWeight) and load.sign < 0):
            continue
        told = "weight is taken off"
        if helped:
            name = max(helped, key=lambda one: helped[one])
            told = f"{name} needs {weight(helped[name], desk.book.room.units)} of help"
        change = Mending("name it, such as 'help: looped band, by its number' in the exercise")
        text = f"{told}, and nothing says by what"
        yield this.finds(at, text, spot=at.spot_of("load"), change=change)
