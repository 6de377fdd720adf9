"""Balance: pushing and pulling, knees and hips, every pattern, and every goal's own lift."""

from collections.abc import Callable, Iterable, Iterator

from strength_handbook.calc.volume import volume_ratio
from strength_handbook.model.words import Hazard, Muscle, Pattern
from strength_handbook.plan.volume import is_hard
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.fatigue import is_quick
from strength_handbook.review.finding import At, Finding, Mending, Spot
from strength_handbook.review.patterns import KNEE, PULL, PUSH
from strength_handbook.review.weeks import (
    by_program,
    is_required,
    is_taper,
    is_training,
    slots_by_week,
    training,
    waves,
)
from strength_handbook.review.words import number

_EXPECTED: tuple[tuple[str, tuple[Pattern, ...]], ...] = (
    ("squat", (Pattern.SQUAT,)),
    ("hinge", (Pattern.HINGE,)),
    ("single-leg", (Pattern.SINGLE_LEG,)),
    ("push", PUSH),
    ("pull", PULL),
    ("carry", (Pattern.CARRY,)),
    ("trunk", (Pattern.TRUNK,)),
)
"""What a wave should have, and the patterns that stand for it."""
_TRUNK = {Muscle.ABS, Muscle.OBLIQUES}
"""Muscles that keep the trunk upright against a load."""


@check(
    "push-pull",
    Family.VOLUME,
    Severity.WARN,
    what="Hard sets of pushing for one hard set of pulling, over a wave's training weeks; the "
    "last weeks before tests are left out.",
    why="Shoulders do best when they push about as much as they pull.",
    rules=("push-pull-least", "push-pull-most"),
    source="rule of this house, no source for a ratio of sets; of strength, not of sets, Baker and "
    "Newton 2004 found a ratio of 0.98 in athletes",
)
def push_pull(this: Check, desk: Desk) -> Iterator[Finding]:
    """Waves that push or pull too much."""
    least, most = desk.rule("push-pull-least"), desk.rule("push-pull-most")
    for program, weeks in by_program(desk):
        slots = slots_by_week(desk, program)
        for wave in waves(weeks):
            usual = [
                at
                for week in training(wave)
                if not is_taper(week, weeks)
                for at in slots[week.number]
                if is_required(at)
            ]
            push = _hard_sets(desk, usual, lambda at: at.slot.exercise.pattern in PUSH)
            pull = _hard_sets(desk, usual, lambda at: at.slot.exercise.pattern in PULL)
            text, change = _balance((push, "pushing"), (pull, "pulling"), least, most)
            if text:
                spot = Spot(wave[0].wave, ("sessions",), key=True)
                at = At(f"{wave[0].wave_at.what} push and pull")
                yield this.finds(wave[0], text, spot=spot, at=at, change=change)


@check(
    "knee-hip",
    Family.VOLUME,
    Severity.NOTE,
    what="Hard sets of squats and single-leg work for one hard set of hinges and other work for "
    "the back of the thighs, over a program's training weeks.",
    why="Knees and hips share the load of every descent.",
    rules=("knee-hip-least", "knee-hip-most"),
)
def knee_hip(this: Check, desk: Desk) -> Iterator[Finding]:
    """Programs that train mostly knees or mostly hips."""
    least, most = desk.rule("knee-hip-least"), desk.rule("knee-hip-most")
    for program in desk.worked.programs:
        usual = [
            at
            for slots in slots_by_week(desk, program).values()
            for at in slots
            if is_training(at) and is_required(at)
        ]
        knee = _hard_sets(desk, usual, _is_knee)
        hip = _hard_sets(desk, usual, _is_hip)
        text, change = _balance((knee, "knee work"), (hip, "hip work"), least, most)
        if text:
            yield this.finds_in(
                desk.program_spot(program.id, "program"), "program", text, change=change,
                program=program.id,
            )  # fmt: skip


@check(
    "pattern-missing",
    Family.VOLUME,
    Severity.NOTE,
    what="Patterns that no session of a wave has, optional ones left out: squat, hinge, "
    "single-leg, push, pull, carry, trunk. A carry that works the sides of the trunk directly "
    "stands for trunk too. Short waves are not looked at.",
    why="What is left out for a month has to be learnt again.",
    rules=("pattern-weeks",),
)
def pattern_missing(this: Check, desk: Desk) -> Iterator[Finding]:
    """Waves without a pattern."""
    for program, weeks in by_program(desk):
        slots = slots_by_week(desk, program)
        for wave in waves(weeks):
            usual = training(wave)
            if len(usual) < desk.rule("pattern-weeks"):
                continue
            had = {
                at.slot.exercise.pattern
                for week in usual
                for at in slots[week.number]
                if is_required(at)
            }
            if any(_braces(at) for week in usual for at in slots[week.number] if is_required(at)):
                had.add(Pattern.TRUNK)
            missing = [name for name, patterns in _EXPECTED if not had & set(patterns)]
            if missing:
                text = f"{len(usual)} training weeks without {' and '.join(missing)}"
                change = Mending(f"add one exercise each for {' and '.join(missing)}")
                spot = Spot(wave[0].wave, ("sessions",), key=True)
                yield this.finds(wave[0], text, spot=spot, at=wave[0].wave_at, change=change)


@check(
    "goal-untrained",
    Family.VOLUME,
    Severity.NOTE,
    what="Goals whose lift stands in no session of the program but tests and optional ones.",
    why="What is tested but never trained measures talent.",
)
def goal_untrained(this: Check, desk: Desk) -> Iterator[Finding]:
    """Goals that nothing trains."""
    for program in desk.worked.programs:
        trained = {
            at.slot.exercise_id
            for at in desk.slots
            if at.program is program and is_required(at) and at.slot.dose.said.test is None
        }
        for index, goal in enumerate(program.program.goals):
            base = program.program.bases.get(goal.base) if goal.base else None
            lift = goal.exercise or (base.exercise if base else None)
            if lift is not None and lift not in trained:
                key = "exercise" if goal.exercise else "base"
                spot = desk.program_spot(program.id, "goals", index, key)
                text = f"no session trains {lift}, which shows whether this goal is met"
                change = Mending(f"add {lift} to a session, or name another lift for this goal")
                yield this.finds_in(spot, f"goal {lift}", text, change=change, program=program.id)


def _hard_sets(desk: Desk, slots: Iterable[SlotAt], counts: Callable[[SlotAt], bool]) -> float:
    """Hard sets of the slots that count; a set for each side is one."""
    hard = (at for at in slots if counts(at) and is_hard(desk.book, at.slot.dose))
    return sum(at.slot.dose.sets.middle for at in hard)


def _braces(at: SlotAt) -> bool:
    """True for carries that the trunk has to hold against, such as one weight at one side."""
    return bool(_TRUNK & set(at.slot.exercise.muscles.direct))


def _is_knee(at: SlotAt) -> bool:
    return at.slot.exercise.pattern in KNEE and not is_quick(at.slot)


def _is_hip(at: SlotAt) -> bool:
    exercise = at.slot.exercise
    if is_quick(at.slot) or Hazard.SWING in exercise.hazards:  # practice of speed
        return False
    alone = exercise.pattern is Pattern.ISOLATED and Muscle.HAMSTRINGS in exercise.muscles.direct
    return alone or exercise.pattern is Pattern.HINGE


def _balance(
    first: tuple[float, str], second: tuple[float, str], least: float, most: float
) -> tuple[str, Mending | None]:
    """What is out of balance, and what would mend it; nothing where all is well."""
    (one, first_words), (other, second_words) = first, second
    if not one and not other:
        return "", None
    ratio = volume_ratio(one, other)
    # A ratio is read to two places: 12 to 18 is 0.67, as a coach would say.
    if ratio is not None and least <= round(ratio, 2) <= most:
        return "", None
    counts = f"{number(one)} hard sets of {first_words} to {number(other)} of {second_words}"
    shown = "" if ratio is None else f" is {ratio:.2f}"
    few = first_words if ratio is not None and ratio < least else second_words
    return (
        f"{counts}{shown}; between {number(least)} and {number(most)}",
        Mending(f"add hard sets of {few}, or take some of the other out"),
    )
