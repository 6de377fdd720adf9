"""Hard sets per muscle and week: enough for the goals, not too many, not too many more at once.

A set that trains a muscle directly counts one, a set in which it helps counts half. Jumps are
practice of speed and count nothing here.
"""

import math
from collections.abc import Callable, Iterable, Iterator, Mapping

from strength_handbook.calc.volume import pelland_2025
from strength_handbook.model.dose import Clock, Distance, Hold
from strength_handbook.model.words import Muscle, Pattern
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt, WeekAt
from strength_handbook.review.fatigue import is_easy_hold, is_light_carry, is_quick, near_limit
from strength_handbook.review.finding import At, Finding, Mending, Spot
from strength_handbook.review.weeks import (
    EPSILON,
    by_program,
    is_derived,
    is_paired,
    is_required,
    is_taper,
    recent_weeks,
    slipped_muscles,
    slots_by_week,
    training,
    waves,
)
from strength_handbook.review.words import number

_FRACTIONAL = "fractional count of sets (Pelland and others 2025)"
_KEEPING = ("speed", "endurance")

Slots = Mapping[int, tuple[SlotAt, ...]]


@check(
    "sets-few",
    Family.VOLUME,
    Severity.WARN,
    what="Hard sets in the largest training week of a wave for each muscle that a goal's lift "
    "trains directly, against the least for the wave's emphasis. In a wave for speed or endurance, "
    "and in the last weeks before tests, fast sets count too: they keep a muscle. Goals that only "
    "easy holds and light carries lead to are left out; where all there is are single sets of a "
    "main lift near the limit, it is only a note.",
    why="Below a few hard sets a week a muscle keeps what it has at best.",
    rules=("sets-size", "sets-strength", "sets-keep"),
    source=f"{_FRACTIONAL}; 10 for size: position stand 2026; 4 as a minimum: Iversen 2021; 2 to "
    "keep: common practice",
)
def sets_few(this: Check, desk: Desk) -> Iterator[Finding]:
    """Goal muscles with too little work in a wave."""
    for program, weeks in by_program(desk):
        slots = slots_by_week(desk, program)
        for wave in waves(weeks):
            usual = training(wave)
            if not usual:
                continue
            emphasis = wave[0].week.wave.emphasis
            keeping = emphasis in _KEEPING or all(is_taper(at, weeks) for at in usual)
            least = desk.rule("sets-keep" if keeping else _minimum(emphasis))
            counts = _keeps if keeping else _hard
            for muscle in _goal_muscles(desk, program):
                had = max(_sets(slots[at.number], muscle, counts) for at in usual)
                if had < least - EPSILON:
                    missing = math.ceil(least - had - EPSILON)
                    quiet = _is_one_heavy_set(desk, slots, usual, muscle)
                    yield this.finds(
                        wave[0],
                        f"at most {number(had)} hard sets a week for {_plain(muscle)}, which a "
                        f"goal asks for; at least {number(least)}",
                        spot=Spot(wave[0].wave, ("emphasis",)),
                        at=At(f"{wave[0].wave_at.what} {muscle}"),
                        change=Mending(_more(slots, usual, muscle, missing)),
                        severity=Severity.NOTE if quiet else None,
                    )


@check(
    "sets-many",
    Family.VOLUME,
    Severity.WARN,
    what="Hard sets a week for each muscle, optional sessions included, against the most.",
    why="Beyond some twenty sets more work adds next to nothing but tiredness.",
    rules=("sets-most",),
    source=f"{_FRACTIONAL}; 12 to 20 as the usual range in trained people: Baz-Valle 2022; the "
    "limit itself is common practice",
)
def sets_many(this: Check, desk: Desk) -> Iterator[Finding]:
    """Muscles with too much work in a week."""
    most = desk.rule("sets-most")
    for program, weeks in by_program(desk):
        slots = slots_by_week(desk, program)
        for at in weeks:
            for muscle, had in _by_muscle(slots[at.number]).items():
                if had > most + EPSILON:
                    where = _most_of(slots[at.number], muscle)
                    yield this.finds(
                        at,
                        f"{number(had)} hard sets a week for {_plain(muscle)}; at most "
                        f"{number(most)}",
                        spot=Spot(where.wave, (*where.path, "exercise")),
                        at=At(muscle, (at.number,)),
                        change=_fewer(where, muscle, had - most),
                    )


@check(
    "sets-jump",
    Family.VOLUME,
    Severity.WARN,
    what="Hard sets of repetitions for each muscle against all its sets, easy ones too, in the "
    "larger of the two training weeks before: a rise by more sets and by a larger share than "
    "allowed.",
    why="Muscles are sorest after a sudden rise in work.",
    rules=("sets-jump", "sets-jump-share", "sets-jump-first"),
    source=f"{_FRACTIONAL}; the limits are common practice, no source",
)
def sets_jump(this: Check, desk: Desk) -> Iterator[Finding]:
    """Muscles that suddenly do much more."""
    for program, weeks in by_program(desk):
        slots = slots_by_week(desk, program)
        for recent, at in recent_weeks(weeks):
            first = recent[0] is weeks[0]
            share = desk.rule("sets-jump-first" if first else "sets-jump-share")
            required = tuple(slot for slot in slots[at.number] if is_required(slot))
            touched = slipped_muscles(desk, program, (*recent, at))
            earlier = [(one, _worked(filter(is_required, slots[one.number]))) for one in recent]
            for muscle, now in _by_muscle(filter(_has_repetitions, required)).items():
                before, sums = max(earlier, key=lambda one: one[1].get(muscle, 0.0))
                had = sums.get(muscle, 0.0)
                most = max(had + desk.rule("sets-jump"), had * (1 + share / 100))
                if now <= most + EPSILON or muscle in touched:
                    continue
                where = _most_of(tuple(filter(_has_repetitions, required)), muscle)
                yield this.finds(
                    at,
                    f"{number(now)} hard sets for {_plain(muscle)} after {number(had)} in week "
                    f"{before.number}; at most {number(most)}",
                    spot=where.spot_of("sets"),
                    at=At(muscle, (at.number,)),
                    change=_fewer(where, muscle, now - most),
                )


def _minimum(emphasis: str) -> str:
    """The rule that says how much a wave of an emphasis must have that does not only keep."""
    return "sets-size" if emphasis == "size" else "sets-strength"


def _goal_muscles(desk: Desk, program: WorkedProgram) -> tuple[str, ...]:
    """Muscles that the lifts of the goals train directly, in order."""
    bases = program.program.bases
    used = [at.slot for at in desk.slots if at.program is program]
    found: dict[str, None] = {}
    for goal in program.program.goals:
        lift = goal.exercise or (bases[goal.base].exercise if goal.base in bases else "")
        doses = [slot for slot in used if slot.exercise_id == lift]
        if doses and all(is_easy_hold(slot) or is_light_carry(slot) for slot in doses):
            continue
        if lift in desk.book.exercises:
            found |= dict.fromkeys(
                muscle.value for muscle in desk.book.exercises[lift].muscles.direct
            )
    return tuple(found)


def _by_muscle(slots: Iterable[SlotAt]) -> dict[str, float]:
    """Hard sets of some slots by muscle."""
    found: dict[str, float] = {}
    for at in slots:
        if at.slot.exercise.pattern is not Pattern.JUMP:
            for muscle, sets in at.slot.volume.hard_sets.items():
                found[muscle] = found.get(muscle, 0.0) + sets
    return found


def _worked(slots: Iterable[SlotAt]) -> dict[str, float]:
    """Sets of some slots by muscle, hard or not: a set that was easy is no news as a hard one.

    Jumps and work for speed count nothing, and holds only where they are hard.
    """
    found: dict[str, float] = {}
    for at in slots:
        muscles, hard = at.slot.exercise.muscles, at.slot.volume.hard_sets
        counts = _has_repetitions(at) and not is_quick(at.slot)
        sets = at.slot.dose.sets.middle if counts else 0.0
        for muscle in (*muscles.direct, *muscles.helping):
            easy = pelland_2025(sets, 0) if muscle in muscles.direct else pelland_2025(0, sets)
            done = max(hard.get(muscle.value, 0.0), easy)
            found[muscle.value] = found.get(muscle.value, 0.0) + done
    return found


def _hard(at: SlotAt, muscle: str) -> float:
    """Hard sets of one slot for a muscle; none for jumps."""
    jump = at.slot.exercise.pattern is Pattern.JUMP
    return 0.0 if jump else at.slot.volume.hard_sets.get(muscle, 0.0)


def _keeps(at: SlotAt, muscle: str) -> float:
    """Sets of one slot that keep a muscle as it is: hard ones, and fast ones with a load."""
    exercise, fast = at.slot.exercise, at.slot.dose.fast and at.slot.dose.load is not None
    if not fast or exercise.pattern is Pattern.JUMP:
        return _hard(at, muscle)
    sets = at.slot.dose.sets.middle
    direct = Muscle(muscle) in exercise.muscles.direct
    helping = Muscle(muscle) in exercise.muscles.helping
    return pelland_2025(sets if direct else 0, sets if helping else 0)


def _sets(slots: tuple[SlotAt, ...], muscle: str, counts: Callable[[SlotAt, str], float]) -> float:
    return sum(counts(at, muscle) for at in slots if is_required(at))


def _is_one_heavy_set(desk: Desk, slots: Slots, usual: tuple[WeekAt, ...], muscle: str) -> bool:
    """True where each slot that trains a muscle directly in its largest week is one heavy set."""
    largest = max(reversed(usual), key=lambda at: _sets(slots[at.number], muscle, _hard))
    direct = [
        at.slot
        for at in slots[largest.number]
        if is_required(at) and Muscle(muscle) in at.slot.exercise.muscles.direct
    ]
    return bool(direct) and all(
        slot.dose.sets.high == 1 and slot.exercise.role == "main" and near_limit(desk.book, slot)
        for slot in direct
    )


def _has_repetitions(at: SlotAt) -> bool:
    return not isinstance(at.slot.dose.work, Hold | Distance | Clock)


def _most_of(slots: tuple[SlotAt, ...], muscle: str) -> SlotAt:
    """The slot that does most for a muscle; the last of those that do equally much."""
    return max(reversed(slots), key=lambda at: _by_muscle((at,)).get(muscle, 0.0))


def _more(slots: Slots, usual: tuple[WeekAt, ...], muscle: str, missing: int) -> str:
    """Where the missing sets could go, in words: a coach decides."""
    sets = "a hard set" if missing == 1 else f"{missing} hard sets"
    every = [one for at in usual for one in slots[at.number] if is_required(one)]
    direct = [one for one in every if Muscle(muscle) in one.slot.exercise.muscles.direct]
    if not direct:
        return f"add {sets} a week of an exercise that trains {_plain(muscle)} directly"
    counting = [one for one in direct if one.slot.volume.hard_sets]
    if counting:
        return f"add {sets} a week, for instance of {counting[0].slot.exercise_id}"
    name = direct[0].slot.exercise_id
    return (
        f"add {sets} a week; sets of {name} count once their effort says so, such as 'RIR 3', or "
        "'RPE 7' for holds and carries"
    )


def _fewer(where: SlotAt, muscle: str, over: float) -> Mending:
    """Take sets from the slot that does most, where that is enough; else say how many."""
    weight = 1.0 if Muscle(muscle) in where.slot.exercise.muscles.direct else 0.5
    less = math.ceil(over / weight - EPSILON)
    left = round(where.slot.dose.sets.high) - less
    if left >= 1 and not is_paired(where) and not is_derived(where):
        words = f"write 'sets: {left}' for {where.slot.exercise_id} in week {where.number}"
        return Mending(words, where.rewritten(sets=left))
    sets = "a set that trains" if less == 1 else f"{less} sets that train"
    return Mending(f"take out {sets} {_plain(muscle)}")


def _plain(muscle: str) -> str:
    return muscle.replace("-", " ")
