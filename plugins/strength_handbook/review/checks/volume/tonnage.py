"""Does the tonnage of a pattern rise in steps that a week can bear?"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from strength_handbook.calc.volume import percent_change
from strength_handbook.model.dose import Reps
from strength_handbook.model.quantities import GRAMS_PER_POUND
from strength_handbook.model.words import Pattern
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt, WeekAt
from strength_handbook.review.finding import At, Finding, Mending
from strength_handbook.review.patterns import LOWER, UPPER
from strength_handbook.review.weeks import (
    EPSILON,
    by_program,
    is_paired,
    is_plain,
    is_required,
    recent_weeks,
    slipped_patterns,
    slots_by_week,
)
from strength_handbook.review.words import number


@check(
    "volume-jump",
    Family.VOLUME,
    Severity.WARN,
    what="Tonnage of all lifts of a pattern whose loads are known, speed sets at an interval left "
    "out, against the larger of the two training weeks before. One set more is always allowed, and "
    "two after "
    "the first week of a wave, which is small on purpose: they are taken off first. An error "
    "within a wave beyond the larger limit.",
    why="A sudden rise in work is when people get sore and hurt.",
    rules=("volume-jump-warn", "volume-jump-most"),
)
def volume_jump(this: Check, desk: Desk) -> Iterator[Finding]:
    """Patterns with a sudden rise in tonnage."""
    for program, weeks in by_program(desk):
        slots = {
            week: tuple(filter(is_required, several))
            for week, several in slots_by_week(desk, program).items()
        }
        for recent, at in recent_weeks(weeks):
            touched = slipped_patterns(desk, program, (*recent, at))
            for pattern in (*LOWER, *UPPER):
                if pattern in touched:
                    continue
                rises = [
                    (rise, before)
                    for before in recent
                    if (rise := _largest_rise(
                        slots[before.number], slots[at.number], pattern, _free(before, at)
                    ))
                ]  # fmt: skip
                if not rises:
                    continue
                rise, before = min(rises, key=lambda one: one[0].percent)
                if rise.percent <= desk.rule("volume-jump-warn") + EPSILON:
                    continue
                change = _fewer(
                    slots[before.number], slots[at.number], rise, desk.rule("volume-jump-warn")
                )
                yield _jump(this, desk, before, at, rise, change)


def _free(before: WeekAt, at: WeekAt) -> int:
    """Sets that may come on top: two after the first week of a wave, else one."""
    wave = at.week.wave
    return 2 if before.week.wave is wave and before.number == min(wave.weeks) else 1


@dataclass(frozen=True, eq=False)
class _Rise:
    """The rise of one pattern for the lifter for whom it is largest.

    Attributes:
        pattern: the pattern.
        had: tonnage in the week before.
        now: tonnage in this week.
        percent: rise without the largest set.
        lifter: the lifter.
        free: how many of the largest sets were taken off.
        largest: the slot with most of it.
    """

    pattern: Pattern
    had: float
    now: float
    percent: float
    lifter: str
    free: int
    largest: SlotAt


def _jump(
    this: Check, desk: Desk, before: WeekAt, at: WeekAt, rise: _Rise, change: Mending
) -> Finding:
    limit, most = desk.rule("volume-jump-warn"), desk.rule("volume-jump-most")
    much = before.week.wave_id == at.week.wave_id and rise.percent > most + EPSILON
    whole = percent_change(rise.had, rise.now) or 0.0
    more = "one set" if rise.free == 1 else "two sets"
    words, units = rise.pattern.value.replace("-", " "), desk.book.room.units
    return this.finds(
        at,
        f"{_moved(rise.now, units)} of {words} lifts for {rise.lifter} in week {at.number} after "
        f"{_moved(rise.had, units)} in week {before.number}: {number(round(whole))} % more; at "
        f"most {number(most if much else limit)} % more (or {more})",
        spot=rise.largest.spot,
        at=At(f"{rise.pattern.value}", (at.number,)),
        severity=Severity.ERROR if much else Severity.WARN,
        change=change,
    )


def _moved(kilograms: float, units: str) -> str:
    """A sum of kilograms, whole, in the units of the room."""
    grams_each = GRAMS_PER_POUND if units == "lb" else 1000
    return f"{kilograms * 1000 / grams_each:.0f} {units}"


def _fewer(
    before: tuple[SlotAt, ...], now: tuple[SlotAt, ...], rise: _Rise, limit: float
) -> Mending:
    """The most sets of the largest lift that stay within the limit, where that is enough."""
    at = rise.largest
    name, had = at.slot.exercise_id, round(at.slot.dose.sets.high)
    for sets in range(had - 1, 0, -1) if is_plain(at) and not is_paired(at) else ():
        kept = _largest_rise(
            before, now, rise.pattern, rise.free, {at: sets / at.slot.dose.sets.middle}
        )
        if kept is None or kept.percent <= limit + EPSILON:
            words = f"write 'sets: {sets}' for {name} in week {at.number}"
            return Mending(words, at.rewritten(sets=sets))
    return Mending(f"take out sets of {name}, or add them over several weeks")


def _largest_rise(
    before: tuple[SlotAt, ...],
    now: tuple[SlotAt, ...],
    pattern: Pattern,
    free: int,
    kept: Mapping[SlotAt, float] | None = None,
) -> _Rise | None:
    """The rise in tonnage; only lifts whose loads are known wherever they are done.

    Args:
        before: slots of the week before.
        now: slots of this week.
        pattern: the pattern.
        free: how many sets more are allowed.
        kept: shares of the sets of this week that are to be reckoned with.
    """
    kept = kept or {}
    both = [one for one in (*before, *now) if one.slot.exercise.pattern is pattern]
    both = [one for one in both if _counts(one)]
    found: _Rise | None = None
    for lifter in dict.fromkeys(name for one in both for name in one.slot.volume.tonnage_kg):
        unknown = {one.slot.exercise_id for one in both if lifter not in one.slot.volume.tonnage_kg}
        earlier = sum(_tonnage(one, lifter, pattern, unknown) for one in before)
        each = {one: _tonnage(one, lifter, pattern, unknown) * kept.get(one, 1.0) for one in now}
        later = sum(each.values())
        if not earlier or not later:
            continue
        # One exercise that stands twice in a week has one largest set all the same.
        set_kg = max(
            kg / (one.slot.dose.sets.middle * kept.get(one, 1.0)) for one, kg in each.items()
        )
        rise = percent_change(earlier, max(0.0, later - free * set_kg)) or 0.0
        if found is None or rise > found.percent:
            largest = max(each, key=lambda one: each[one])
            found = _Rise(pattern, earlier, later, rise, lifter, free, largest)
    return found


def _counts(at: SlotAt) -> bool:
    """True for plain sets of repetitions; fast ones at an interval are practice of speed."""
    speed = at.slot.dose.fast and at.slot.dose.every is not None
    return isinstance(at.slot.dose.work, Reps) and not speed


def _tonnage(at: SlotAt, lifter: str, pattern: Pattern, unknown: set[str]) -> float:
    known = at.slot.exercise.pattern is pattern and at.slot.exercise_id not in unknown
    lifted = known and _counts(at)
    # Much help can take more off than the body's share weighs.
    return max(0.0, at.slot.volume.tonnage_kg.get(lifter, 0.0)) if lifted else 0.0
