"""Are the tested values fresh, and can they be right?"""

from collections.abc import Iterator
from datetime import timedelta

from strength_handbook.model.lifter import Lifter
from strength_handbook.model.load import (
    PercentOfBase,
    PercentOfSystem,
    PercentOfTrainingMax,
    RepMax,
)
from strength_handbook.model.loading import OnBar
from strength_handbook.model.program import Base, Program
from strength_handbook.model.quantities import Mass, in_unit
from strength_handbook.model.words import Pattern
from strength_handbook.plan.loads import body_share_g
from strength_handbook.reading.problem import Severity
from strength_handbook.reading.source import Path
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import At, Edit, Finding, Mending, Spot
from strength_handbook.review.words import number, weight

MOST_ROWS = 200
"""Rows of a look-up strip."""


@check(
    "base-old",
    Family.COMPLETE,
    Severity.WARN,
    what="Days from a base's 'tested', or from the last test of it in the program, to the session "
    "that uses it. Where the program has no start, today stands for the session.",
    why="After months the loads that come from it are those of somebody else.",
    rules=("base-age",),
)
def base_old(this: Check, desk: Desk) -> Iterator[Finding]:
    """Bases used long after they were tested."""
    weeks = desk.rule("base-age")
    for at in desk.slots:
        base, key = at.slot.base, at.slot.base_id
        if base is None or key is None or base.tested is None or not uses_base(at):
            continue
        day = at.day or desk.today
        age = (day - base.tested).days / 7
        since = [at.number - week for week in _tests(at, key) if week < at.number]
        age = min([age, *since])
        if age > weeks:
            when = f"on {day}" if at.day else "today"
            text = f"tested {base.tested}, used {when}: {age:.1f} weeks; at most {weeks:g}"
            latest = day - timedelta(weeks=weeks)
            change = Mending(f"test it again, and write the day as 'tested', {latest} or later")
            spot = desk.program_spot(at.program.id, "bases", key, "tested")
            yield this.finds(at, text, spot=spot, at=At(f"base {key}", at.at.weeks), change=change)


def uses_base(at: SlotAt) -> bool:
    """True where the load is a share of what was tested, not found on the day."""
    loads = PercentOfBase | PercentOfSystem | PercentOfTrainingMax | RepMax
    return isinstance(at.slot.dose.load, loads) or (
        at.slot.on_top is not None and at.slot.on_top.needs_base
    )


def _tests(at: SlotAt, base: str) -> Iterator[int]:
    """Weeks of the program in which the base is tested anew."""
    for week in at.program.weeks:
        for session in week.sessions:
            if any(s.base_id == base and s.dose.said.test for s in session.slots):
                yield week.week


@check(
    "body-mass-odd",
    Family.COMPLETE,
    Severity.WARN,
    what="Body masses of the example lifters, against the range of grown people.",
    why="Every load by body mass on the pages is an example from it.",
    rules=("body-mass-least", "body-mass-most"),
)
def body_mass_odd(this: Check, desk: Desk) -> Iterator[Finding]:
    """Body masses that look like slips of the keyboard."""
    least, most = desk.rule("body-mass-least"), desk.rule("body-mass-most")
    for name, lifter in desk.book.lifters.items():
        if not _believed(desk, lifter):
            units = lifter.bodyweight.unit
            limits = f"{in_unit(round(least * 1000), units)} to {weight(most * 1000, units)}"
            text = f"{lifter.bodyweight.label} of body mass; {limits}"
            spot = _lifter_spot(desk, name, "bodyweight")
            change = Mending("look it up and write it again")
            yield this.finds_in(spot, f"lifter {name}", text, change=change)


def _believed(desk: Desk, lifter: Lifter) -> bool:
    """True for the body mass of a grown person."""
    return desk.rule("body-mass-least") <= lifter.bodyweight.kg <= desk.rule("body-mass-most")


@check(
    "base-odd",
    Family.COMPLETE,
    Severity.WARN,
    what="Tested values of the example lifters: many times the body mass, or an overhead press "
    "above a squat or a deadlift.",
    why="A slip of the keyboard here is a wrong load on every page.",
    rules=("base-multiple",),
)
def base_odd(this: Check, desk: Desk) -> Iterator[Finding]:
    """Tested values that look like slips of the keyboard."""
    change = Mending("look it up and write it again")
    for program in desk.worked.programs:
        for name, lifter in desk.book.lifters.items():
            for key, text in _odd(desk, program.program, lifter):
                spot = _lifter_spot(desk, name, "bases", key)
                yield this.finds_in(
                    spot, f"lifter {name} {key}", text, change=change, program=program.id
                )


def _odd(desk: Desk, program: Program, lifter: Lifter) -> Iterator[tuple[str, str]]:
    most = desk.rule("base-multiple")
    body = lifter.bodyweight
    known = {key: mass for key, mass in lifter.bases.items() if key in program.bases}
    for key, mass in known.items():
        base = program.bases[key]
        if mass.grams > most * body.grams:
            times = number(mass.grams / body.grams)
            yield key, f"{mass.label} is {times} times {body.label} of body mass; at most {most:g}"
        elif _pattern(desk, base) is Pattern.VERTICAL_PUSH:
            for other, heavier in known.items():
                legs = (Pattern.SQUAT, Pattern.HINGE)
                if _pattern(desk, program.bases[other]) in legs and mass.grams > heavier.grams:
                    yield key, f"{mass.label} overhead and {heavier.label} for {other}"


def _pattern(desk: Desk, base: Base) -> Pattern | None:
    """Movement of a base whose value is the whole bar; None for others."""
    exercise = desk.book.exercises[base.exercise]
    whole = isinstance(exercise.load, OnBar) and exercise.load.hands is None
    return exercise.pattern if whole else None


@check(
    "total-low",
    Family.COMPLETE,
    Severity.ERROR,
    what="Best totals of body-weight lifts, body and belt together, against the share of the body "
    "that moves.",
    why="Where only what was added is written, three quarters of it is a load for nobody.",
    rules=("system-least", "body-mass-least", "body-mass-most"),
    source="arithmetic; the limit is common practice, no source",
)
def total_low(this: Check, desk: Desk) -> Iterator[Finding]:
    """Totals in which the body is missing."""
    least = desk.rule("system-least")
    # A body mass that is wrong itself says nothing about a total.
    lifters = {name: one for name, one in desk.book.lifters.items() if _believed(desk, one)}
    for program in desk.worked.programs:
        for name, lifter in lifters.items():
            for key, mass in lifter.bases.items():
                base = program.program.bases.get(key)
                if base is None or base.kind != "system":
                    continue
                loading = desk.book.exercises[base.exercise].load
                body = body_share_g(loading, lifter.bodyweight.grams)
                if mass.grams >= least / 100 * body:
                    continue
                text = (
                    f"{mass.label} as the best total is less than {least:g} % of the body; it "
                    "looks like what was added"
                )
                total = Mass(round(mass.grams + body), mass.unit).label
                spot = _lifter_spot(desk, name, "bases", key)
                edits = (Edit(spot.source.file, spot.path, total),)
                change = Mending(f"write '{total}', body and belt together", edits)
                yield this.finds_in(
                    spot, f"lifter {name} {key}", text, change=change, program=program.id
                )


@check(
    "base-off-strip",
    Family.COMPLETE,
    Severity.WARN,
    what="Tested values of the example lifters, against the look-up strip of their base.",
    why="Whoever is off the strip finds no load on the pages.",
)
def base_off_strip(this: Check, desk: Desk) -> Iterator[Finding]:
    """Values that the strip does not have."""
    for program in desk.worked.programs:
        for name, lifter in desk.book.lifters.items():
            for key, mass in lifter.bases.items():
                base = program.program.bases.get(key)
                if base is None or base.from_.grams <= mass.grams <= base.to.grams:
                    continue
                text = f"{mass.label}; the strip goes from {base.from_.label} to {base.to.label}"
                change = Mending("look it up and write it again")
                if end := _longer(base, mass):
                    words = f"write '{end[0]}: {end[1]}' for the base, if the value is right"
                    path: Path = ("bases", key, end[0])
                    file = desk.program_spot(program.id).source.file
                    change = Mending(words, (Edit(file, path, end[1]),))
                spot = _lifter_spot(desk, name, "bases", key)
                yield this.finds_in(
                    spot, f"lifter {name} {key}", text, change=change, program=program.id
                )


def _longer(base: Base, mass: Mass) -> tuple[str, str] | None:
    """The end of a strip that takes a value in, in whole steps; None where it gets too long."""
    step = base.by.grams
    low, high = base.from_.grams, base.to.grams
    if mass.grams > high:
        end, grams = "to", low - (low - mass.grams) // step * step
        high = grams
    else:
        end, grams = "from", low - (low - mass.grams + step - 1) // step * step
        low = grams
    if low <= 0 or (high - low) // step > MOST_ROWS:
        return None
    return end, Mass(grams, base.from_.unit).label


def _lifter_spot(desk: Desk, *path: str) -> Spot:
    assert desk.written.lifters is not None  # noqa: S101  # there is a lifter in it
    return Spot(desk.written.lifters.source, ("lifters", *path))
