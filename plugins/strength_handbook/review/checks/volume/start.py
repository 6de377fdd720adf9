"""Does a first week start small: after time off, in a wave of lowering, in a new heavy exercise?"""

import math
from collections.abc import Iterator
from dataclasses import replace

from strength_handbook.model.words import Hazard
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt, WeekAt
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.weeks import (
    EPSILON,
    by_program,
    fewer_sets,
    first_weeks,
    is_derived,
    is_required,
    slots_by_week,
    smaller,
    training,
    waves,
)
from strength_handbook.review.words import number

Slots = dict[int, tuple[SlotAt, ...]]


@check(
    "big-start",
    Family.VOLUME,
    Severity.ERROR,
    what="In the first week after time off and of a wave that newly puts its weight on lowering: "
    "seconds of lowering, after time off hard sets too, against the wave's largest week. In the "
    "first week of an exercise of heavy lowering: its seconds of lowering on one side, and in such "
    "waves their share of later weeks where no load is written in percent.",
    why="The first days of unusual lowering are the ones after which muscles swell, weaken and in "
    "rare cases break down; a small dose first protects.",
    rules=(
        "start-weeks-off",
        "start-share",
        "start-lowering",
        "start-lowering-most",
        "slow-lowering",
        "seconds-per-rep",
    ),
    source="half the volume in the first week after time off: joint consensus on transition "
    "periods 2019, from memory; a small first dose of lowering protects: study of downhill walking "
    "2017; the seconds are common practice, no source",
)
def big_start(this: Check, desk: Desk) -> Iterator[Finding]:
    """First weeks that ask for too much."""
    for program, weeks in by_program(desk):
        slots = slots_by_week(desk, program)
        emphasis = ""
        for wave in waves(weeks):
            off = wave[0] is weeks[0] and _was_off(desk, program)
            newly = wave[0].week.wave.emphasis == "eccentric" != emphasis
            emphasis = wave[0].week.wave.emphasis
            eased = off or newly
            if eased and training(wave) and wave[0] is training(wave)[0]:
                yield from _first_week(this, desk, slots, training(wave), off=off)
            yield from _first_doses(this, desk, program, slots, wave, eased=eased)


def _was_off(desk: Desk, program: WorkedProgram) -> bool:
    return program.program.weeks_off >= desk.rule("start-weeks-off")


def _first_week(
    this: Check, desk: Desk, slots: Slots, wave: tuple[WeekAt, ...], *, off: bool
) -> Iterator[Finding]:
    """The whole first week against the wave's largest."""
    first, later = wave[0], wave[1:]
    share = desk.rule("start-share") / 100
    why = "after time off" if off else "of a wave of lowering"
    mine = tuple(filter(is_required, slots[first.number]))
    for what, of, shrink in (
        ("s of lowering", _lowering, _shorter),
        ("hard sets (all muscles together)", _hard, _fewer),
    ):
        most = max((of(tuple(filter(is_required, slots[at.number]))) for at in later), default=0.0)
        had = of(mine)
        if (of is _hard and not off) or not most or had <= share * most + EPSILON:
            continue
        text = (
            f"{round(had)} {what} in the first week {why}; at most {int(share * most)}, "
            f"{number(100 * share)} % of its largest week"
        )
        largest = max(mine, key=lambda at: of((at,)))
        yield this.finds(first, text, spot=largest.spot, change=shrink(mine, share * most))
        return


def _first_doses(
    this: Check,
    desk: Desk,
    program: WorkedProgram,
    slots: Slots,
    wave: tuple[WeekAt, ...],
    *,
    eased: bool,
) -> Iterator[Finding]:
    """Exercises of heavy lowering in the first week in which anybody does them."""
    firsts = first_weeks(program)
    least, most = desk.rule("start-lowering"), desk.rule("start-lowering-most")
    numbers = {at.number for at in training(wave)}
    for at in (slot for week in wave for slot in slots[week.number]):
        name = at.slot.exercise_id
        heavy = Hazard.HEAVY_ECCENTRIC in at.slot.exercise.hazards
        if not heavy or firsts[name] != at.number or at.slot.dose.said.test is not None:
            continue
        had = _one_side(desk, at)
        later = [
            sum(_one_side(desk, one) for one in slots[week] if one.slot.exercise_id == name)
            for week in sorted(numbers - {at.number})
        ]
        usual = max(later, default=0.0)
        allowed, against = (most if _is_unusual(desk, at, eased=eased) else math.inf), ""
        # A load in percent of a tested best starts light by its percent; effort alone does not.
        if eased and usual and at.slot.percent is None:
            share = max(least, usual * desk.rule("start-share") / 100)
            if share < allowed:
                allowed, against = share, f", as later weeks have {round(usual)} s"
        if had > allowed + EPSILON:
            lower = _seconds(desk, at)
            side = " on each side" if at.slot.dose.each_side else ""
            text = (
                f"{round(had)} s of lowering{side} in its first week; at most {int(allowed)} s"
                f"{against}"
            )
            yield this.finds(at, text, change=smaller(at, allowed / lower))


def _is_unusual(desk: Desk, at: SlotAt, *, eased: bool) -> bool:
    """True for slow lowering, and for lifts that no lighter load makes easier."""
    tempo = at.slot.dose.tempo
    slow = tempo is not None and (eased or tempo.lower >= desk.rule("slow-lowering"))
    return slow or at.slot.exercise.load.kind == "effort"


def _seconds(desk: Desk, at: SlotAt) -> float:
    """Seconds of one lowering; a whole repetition's where no tempo is written."""
    tempo = at.slot.dose.tempo
    return float(tempo.lower) if tempo is not None else desk.rule("seconds-per-rep")


def _one_side(desk: Desk, at: SlotAt) -> float:
    """Seconds of lowering on one side, ranges at their upper end."""
    sets = [(one.sets.high, one.reps) for one in at.slot.dose.alike]
    return sum(count * reps.high for count, reps in sets if reps is not None) * _seconds(desk, at)


def _lowering(slots: tuple[SlotAt, ...]) -> float:
    return sum(at.slot.volume.eccentric_s for at in slots)


def _hard(slots: tuple[SlotAt, ...]) -> float:
    return sum(sum(at.slot.volume.hard_sets.values()) for at in slots)


def _shorter(slots: tuple[SlotAt, ...], allowed: float) -> Mending | None:
    """Take seconds off the longest lowering, one at a time, until it is enough."""
    lowers = {
        at: at.slot.dose.tempo.lower
        for at in slots
        if at.slot.dose.tempo is not None and at.slot.volume.eccentric_s and not is_derived(at)
    }
    sums = {at: at.slot.volume.eccentric_s for at in lowers}
    over = _lowering(slots) - allowed
    now = dict(lowers)
    while over > EPSILON:
        longest = max(now, key=lambda at: (now[at], sums[at]), default=None)
        if longest is None or now[longest] <= 1:
            return None
        now[longest] -= 1
        over -= sums[longest] / lowers[longest]
    changed = [at for at in now if now[at] < lowers[at]]
    edits: list[Edit] = []
    said = []
    for at in changed:
        assert at.slot.dose.tempo is not None  # noqa: S101  # only such slots were taken
        tempo = replace(at.slot.dose.tempo, lower=now[at]).text
        edits += at.rewritten(tempo=tempo)
        said.append(f"'{tempo}' at {at.at.what}")
    return Mending(f"write {', '.join(said)}", tuple(edits))


def _fewer(slots: tuple[SlotAt, ...], allowed: float) -> Mending | None:
    return fewer_sets(slots, _hard(slots) - allowed, _hard_of_a_set)


def _hard_of_a_set(at: SlotAt) -> float:
    return _hard((at,)) / at.slot.dose.sets.high
