"""Lighter weeks: do they come in time, are they lighter, and do they leave hard things out?"""

from collections.abc import Iterator

from strength_handbook.model.dose import StripSet
from strength_handbook.model.load import (
    PercentOfBase,
    PercentOfSystem,
    PercentOfTop,
    PercentOfTrainingMax,
)
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.volume_weeks import (
    EPSILON,
    by_program,
    fewer_sets,
    first_weeks,
    is_derived,
    is_required,
    is_training,
    left_out,
    slots_by_week,
    training,
)
from strength_handbook.review.desk import Desk, SlotAt, WeekAt
from strength_handbook.review.finding import At, Change, Edit, Finding
from strength_handbook.review.words import number

_OF_BASE = (PercentOfBase, PercentOfSystem, PercentOfTop, PercentOfTrainingMax)
_DEFINITION = "Bell and others 2023: a deload is a planned time of less, as coaches agree"


@check(
    "deload-late",
    Family.VOLUME,
    Severity.WARN,
    what="Training weeks in a row without a lighter week or a week of tests.",
    why="Tiredness piles up over weeks and hides what was gained.",
    rules=("deload-after",),
    source=f"{_DEFINITION}; how often is common practice, no source",
)
def deload_late(this: Check, desk: Desk) -> Iterator[Finding]:
    """Too many hard weeks in a row."""
    most = desk.rule("deload-after")
    for _, weeks in by_program(desk):
        run: list[WeekAt] = []
        for at, after in zip(weeks, (*weeks[1:], None), strict=True):
            run = [*run, at] if is_training(at) else []
            ends = after is None or not is_training(after)
            if ends and len(run) >= most:
                place = run[int(most) - 1]
                yield this.finds(
                    place,
                    f"{len(run)} training weeks in a row; fewer than {most:g} between lighter ones",
                    at=At(weeks=tuple(one.number for one in run)),
                    change=Change(
                        f"make week {place.number - 1} or {place.number} a lighter one: write "
                        f"'deload: {place.number}', and its doses as 'deload of' the week before"
                    ),
                )


@check(
    "deload-heavy",
    Family.VOLUME,
    Severity.WARN,
    what="Sets of a lighter week against the mean of the training weeks of its wave, or of those "
    "before where it has none; and its loads in percent against the last training week.",
    why="A lighter week that is not lighter lets nobody recover.",
    rules=("deload-sets",),
    source=f"{_DEFINITION}; the share is common practice, no source",
)
def deload_heavy(this: Check, desk: Desk) -> Iterator[Finding]:
    """Lighter weeks that are not lighter."""
    for program, weeks in by_program(desk):
        slots = slots_by_week(desk, program)
        for at in weeks:
            if not at.week.deload or at.number in at.week.wave.tests:
                continue
            earlier = training(tuple(one for one in weeks if one.number < at.number))
            usual = [one for one in earlier if one.week.wave_id == at.week.wave_id] or earlier
            if usual:
                yield from _too_many_sets(this, desk, at, tuple(usual), slots[at.number])
            yield from _too_heavy(this, at, earlier, slots)


def _too_many_sets(
    this: Check, desk: Desk, at: WeekAt, usual: tuple[WeekAt, ...], slots: tuple[SlotAt, ...]
) -> Iterator[Finding]:
    mean = sum(one.week.volume.sets for one in usual) / len(usual)
    most = desk.rule("deload-sets") / 100 * mean
    had = at.week.volume.sets
    if had < most - EPSILON or not mean:
        return
    text = (
        f"{number(had)} sets in a lighter week, {100 * had / mean:.0f} % of the usual "
        f"{number(mean)}; less than {desk.rule('deload-sets'):g} %"
    )
    mine = tuple(filter(is_required, slots))
    change = fewer_sets(mine, had - most, lambda _: 1.0, under=True)
    yield this.finds(at, text, change=change)


def _too_heavy(
    this: Check,
    at: WeekAt,
    earlier: tuple[WeekAt, ...],
    slots: dict[int, tuple[SlotAt, ...]],
) -> Iterator[Finding]:
    """Lifts that are heavier, in percent of one tested value, than when they were last trained."""
    last: dict[tuple[str, str | None], SlotAt] = {}
    for week in earlier:
        for one in slots[week.number]:
            if isinstance(one.slot.dose.load, _OF_BASE) and not _is_speed(one):
                last[one.slot.exercise_id, one.slot.base_id] = one
    for one in slots[at.number]:
        before = last.get((one.slot.exercise_id, one.slot.base_id))
        now = one.slot.percent
        if before is None or now is None or not isinstance(one.slot.dose.load, _OF_BASE):
            continue
        had = before.slot.percent or 0.0
        if now <= had + EPSILON:
            continue
        text = (
            f"{now:g} % in a lighter week after {had:g} % in week {before.number}; no more than "
            "before"
        )
        same = one.slot.dose.load is not None and before.slot.dose.load is not None
        change = None
        if same and not is_derived(one) and before.slot.dose.load is not None:
            load = before.slot.dose.load.text
            change = Change(f"write '{load}' or less", one.rewritten(load=load))
        yield this.finds(one, text, spot=one.spot_of("load"), change=change)


def _is_speed(at: SlotAt) -> bool:
    return at.slot.dose.fast and at.slot.dose.every is not None


@check(
    "deload-hard",
    Family.VOLUME,
    Severity.WARN,
    what="Open sets, ramps to a top set, strip and rest-pause sets, tests and new exercises in a "
    "lighter week.",
    why="Sets to the limit and unaccustomed work are what a lighter week is there to leave out.",
    source=f"{_DEFINITION}; what it leaves out is common practice, no source",
)
def deload_hard(this: Check, desk: Desk) -> Iterator[Finding]:
    """Hard things in a lighter week."""
    firsts: dict[str, dict[str, int]] = {
        program.id: first_weeks(program) for program in desk.worked.programs
    }
    for at in desk.slots:
        if not at.week.deload or at.number in at.week.wave.tests:
            continue
        found = _hard(at) or _new(at, firsts[at.program.id], at.program)
        if found is not None:
            what, spot, change = found
            text = f"{what} in a lighter week; leave it for a training week"
            yield this.finds(at, text, spot=at.spot_of(*spot), change=change)


def _hard(at: SlotAt) -> tuple[str, tuple[str, ...], Change | None] | None:
    """What is hard in a slot, the keys that say it, and the change."""
    dose = at.slot.dose
    if dose.said.test is not None:
        return "a test", ("test",), left_out(at)
    if dose.last_set is not None:
        return "an open last set", ("last-set",), _dropped(at, "last-set")
    if dose.said.density is not None:
        return "as many as possible in the time", ("density",), _dropped(at, "density")
    reps = dose.reps
    if reps is not None and reps.open:
        change = Change(f"write '{reps.low}'", at.rewritten(reps=reps.low))
        return "open sets", ("reps",), None if is_derived(at) else change
    if isinstance(dose.work, StripSet):
        return "a strip set", ("strip",), left_out(at)
    cluster = dose.said.cluster
    if cluster is not None and cluster.falling:
        return "rest-pause sets", ("cluster",), left_out(at)
    if dose.top is not None:
        # What the top set is for may be the load of the other sets; then a person must choose.
        alone = dose.load is None or not isinstance(dose.load, PercentOfTop)
        edits = at.rewritten(top="none") if alone and not is_derived(at) else ()
        words = "write 'top: none'" if alone else "write 'top: none' and a load of its own"
        return "a ramp to a top set", ("top",), Change(words, edits)
    return None


def _new(
    at: SlotAt, firsts: dict[str, int], program: WorkedProgram
) -> tuple[str, tuple[str, ...], Change | None] | None:
    if firsts[at.slot.exercise_id] != at.number or at.number == program.weeks[0].week:
        return None
    return "a new exercise", (), left_out(at)


def _dropped(at: SlotAt, key: str) -> Change | None:
    """Take a key out, where it stands in the week's own dose."""
    own = (*at.dose_path, key)
    if own not in at.wave.marks:
        return None
    return Change(f"take out '{key}'", (Edit(at.wave.file, own, remove=True),))
