"""Lighter weeks: are they lighter, in sets and in loads?"""

from collections.abc import Iterator

from strength_handbook.model.load import (
    PercentOfBase,
    PercentOfSystem,
    PercentOfTop,
    PercentOfTrainingMax,
)
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt, WeekAt
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.slips import slipped_weeks
from strength_handbook.review.weeks import (
    EPSILON,
    by_program,
    fewer_sets,
    is_derived,
    is_required,
    slots_by_week,
    training,
)
from strength_handbook.review.words import number

_OF_BASE = (PercentOfBase, PercentOfSystem, PercentOfTop, PercentOfTrainingMax)
DEFINITION = "Bell and others 2023: a deload is a planned time of less, as coaches agree"


@check(
    "deload-heavy",
    Family.VOLUME,
    Severity.WARN,
    what="Sets of a lighter week against the mean of the two training weeks before it, those of "
    "its wave where it has any; and its loads in percent against the last training week.",
    why="A lighter week that is not lighter lets nobody recover.",
    rules=("deload-sets",),
    source=f"{DEFINITION}; the share is common practice, no source",
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
            if usual and (program.id, at.number) not in slipped_weeks(desk):
                # The first weeks are small, so they would make every later one look large.
                yield from _too_many_sets(this, desk, at, tuple(usual[-2:]), slots[at.number])
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
        now = one.slot.heaviest_percent
        if before is None or now is None or not isinstance(one.slot.dose.load, _OF_BASE):
            continue
        had = before.slot.heaviest_percent or 0.0
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
            change = Mending(f"write '{load}' or less", one.rewritten(load=load))
        yield this.finds(one, text, spot=one.spot_of("load"), change=change)


def _is_speed(at: SlotAt) -> bool:
    return at.slot.dose.fast and at.slot.dose.every is not None
