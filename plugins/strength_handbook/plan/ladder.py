"""A test: the sets on the way up to an expected result, and the attempts.

Sets and rests: Sheppard and Triplett 2016, Essentials of Strength Training and Conditioning, 4th
ed., ch. 17: 5 to 10 light, a minute; 5 to 10 % more (legs: 10 to 20 %) for 3 to 5, two minutes;
the same step for 2 or 3, two to four minutes; the same step, first attempt. Reckoned down from the
first attempt, and with the larger step: the smaller one would ask ten "light" repetitions of a load
that nobody lifts ten times. What follows the first attempt is in `attempts`.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from strength_handbook.calc.repetitions import percent_for_reps
from strength_handbook.model.book import Book
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import BodyWeightLift
from strength_handbook.model.words import Pattern
from strength_handbook.plan.attempts import AttemptRules, Attempts, Next, attempt_rules
from strength_handbook.plan.loads import PlannedLoad, body_share_g
from strength_handbook.plan.ramps import EVERY_ROW
from strength_handbook.plan.tables import base_strip, best_changes, body_masses
from strength_handbook.plan.worked import WorkedSlot

LEGS = (Pattern.SQUAT, Pattern.HINGE, Pattern.SINGLE_LEG, Pattern.CARRY, Pattern.JUMP)
"""Movements that take the larger steps."""

SETS: tuple[tuple[int, int, int, int], ...] = (
    (5, 10, 60, 60), (3, 5, 120, 120), (2, 3, 120, 240),
)  # fmt: skip
"""Fewest and most repetitions, shortest and longest rest afterwards, in seconds."""

UPPER, LOWER = (5.0, 10.0), (10.0, 20.0)
"""Smallest and largest step of the warm-up, percent."""

LIGHT = 65
"""Percent of the first attempt that the light set has at most: the textbook's chart allows fifteen
repetitions at 65 % of the best single, so ten leave five."""


EVERY_BODY = 2
"""Rows of body mass in a ladder's tables: more would be read by nobody."""


@dataclass(frozen=True, slots=True)
class LadderStep:
    """One set on the way up.

    Attributes:
        load: what is lifted.
        reps: fewest and most repetitions.
        rest_s: shortest and longest rest afterwards.
    """

    load: PlannedLoad
    reps: tuple[int, int]
    rest_s: tuple[int, int]


@dataclass(frozen=True, slots=True)
class Ladder:
    """The way to one expected result.

    Attributes:
        tested: what is expected, and how attempts follow each other.
        steps: sets before the first attempt; where the light ones lie below the lightest load there
            is, that load is the only one of them.
        first: the first attempt.
        good: the next one after it, if it was good,
        missed: and after a miss; None where there is no load.
    """

    tested: Attempts
    steps: tuple[LadderStep, ...]
    first: PlannedLoad
    good: Next | None
    missed: Next | None


@dataclass(frozen=True, eq=False)
class Ladders:
    """A test of one slot.

    Attributes:
        rm: repetitions of the best.
        attempts: heavy sets allowed.
        shares: of each set on the way up, percent of the first attempt.
        rules: how attempts follow each other.
        by_lifter: the ladder of each example lifter with a tested value.
        rows: tested value in grams and its ladder, for those without a profile.
        body_rows: the same where the body moves too: what was added at the best, by its label, and
            body mass in grams with its ladder.
    """

    rm: int
    attempts: int
    shares: tuple[int, ...]
    rules: AttemptRules
    by_lifter: Mapping[str, Ladder] = field(default_factory=dict)
    rows: tuple[tuple[int, Ladder], ...] = ()
    body_rows: Mapping[str, tuple[tuple[int, Ladder], ...]] = field(default_factory=dict)


def step_percent(exercise: Exercise) -> tuple[float, float]:
    """Smallest and largest step of the warm-up: larger for the legs."""
    return LOWER if exercise.pattern in LEGS else UPPER


def shares_up(step: float) -> tuple[int, ...]:
    """Sets on the way up as whole percentages of the first attempt, for a step in percent.

    >>> shares_up(10), shares_up(20)
    ((65, 83, 91), (58, 69, 83))
    """
    factor = 1 + step / 100
    found = [round(100 / factor**place) for place in range(len(SETS), 0, -1)]
    return (min(LIGHT, found[0]), *found[1:])


def slot_ladders(book: Book, slot: WorkedSlot) -> Ladders | None:
    """The ladder to an expected result; None where nothing is tested."""
    test, base = slot.dose.said.test, slot.base
    if test is None:
        return None
    shares = shares_up(step_percent(slot.exercise)[1])
    rules = attempt_rules(book, test.rm, legs=slot.exercise.pattern in LEGS)
    if base is None or slot.base_id is None:
        return Ladders(test.rm, test.attempts, shares, rules)
    percent, units = percent_for_reps(test.rm), book.room.units

    def tested(best_g: float, share_g: float = 0.0) -> Ladder | None:
        most = best_g if test.rm > 1 else None
        wanted = Attempts(best_g * percent / 100, slot.scale, rules, share_g, units, most)
        return ladder(wanted, shares)

    by_lifter = {}
    for name, lifter in book.lifters.items():
        best = lifter.bases.get(slot.base_id)
        share = body_share_g(slot.exercise.load, lifter.bodyweight.grams)
        if best is not None and (found := tested(best.grams, share)):
            by_lifter[name] = found
    moved = slot.exercise.load
    if isinstance(moved, BodyWeightLift):
        # What hangs on a body depends on the body too: no table by the best alone.
        bodies = [(mass, body_share_g(moved, mass)) for mass in body_masses(units)[::EVERY_BODY]]
        by_change = {
            label: tuple(
                (mass, found) for mass, own in bodies if (found := tested(own + change, own))
            )
            for label, change in best_changes(units).items()
        }
        body_rows = {label: rows for label, rows in by_change.items() if rows}
        return Ladders(test.rm, test.attempts, shares, rules, by_lifter, body_rows=body_rows)
    values = [value for value, _ in base_strip(base, slot.scale, percent).rows[::EVERY_ROW]]
    rows = [(value, found) for value in values if (found := tested(value))]
    return Ladders(test.rm, test.attempts, shares, rules, by_lifter, tuple(rows))


def ladder(tested: Attempts, shares: tuple[int, ...]) -> Ladder | None:
    """Sets up to an expected result and the attempts; None where it cannot be put on.

    Args:
        tested: what is expected, and with which loads.
        shares: of each set on the way up, percent of the first attempt.
    """
    first = tested.first()
    if first.actual_g is None:
        return None
    steps: list[LadderStep] = []
    heaviest = first.actual_g
    planned = tested.expected_g * tested.rules.first / 100
    for share, (low, high, shortest, longest) in reversed(list(zip(shares, SETS, strict=True))):
        load = tested.at(planned * share / 100)
        if load.actual_g is None and tested.scale is not None and tested.scale.steps:
            load = tested.at(tested.scale.lightest_g + tested.share_g)
        if load.actual_g is not None and load.actual_g < heaviest:
            steps.insert(0, LadderStep(load, (low, high), (shortest, longest)))
            heaviest = load.actual_g
    return Ladder(
        tested,
        tuple(steps),
        first,
        tested.after(first.actual_g, None, was_good=True),
        tested.after(None, first.actual_g, was_good=False),
    )
