"""A test: the sets on the way up to an expected result, and the attempts.

Steps: Sheppard and Triplett 2016, Essentials of Strength Training and Conditioning, 4th ed.,
ch. 17: 5 to 10 light, a minute; 5 to 10 % more (legs: 10 to 20 %) for 3 to 5, two minutes; the same
step for 2 or 3, two to four minutes; the same step, first attempt. After a miss 2.5 to 5 % less
(legs: 5 to 10 %).
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field

from strength_handbook.calc.repetitions import percent_for_reps
from strength_handbook.model.book import Book
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import BodyWeightLift
from strength_handbook.model.words import Pattern
from strength_handbook.plan.loads import PlannedLoad, achieved, body_share_g
from strength_handbook.plan.ramps import EVERY_ROW
from strength_handbook.plan.scales import Scale
from strength_handbook.plan.tables import base_strip
from strength_handbook.plan.worked import WorkedSlot

LEGS = (Pattern.SQUAT, Pattern.HINGE, Pattern.SINGLE_LEG, Pattern.CARRY, Pattern.JUMP)
"""Movements that take the larger steps."""

SETS: tuple[tuple[int, int, int, int], ...] = (
    (5, 10, 60, 60), (3, 5, 120, 120), (2, 3, 120, 240),
)  # fmt: skip
"""Fewest and most repetitions, shortest and longest rest afterwards, in seconds."""

REST_S = (120, 240)
"""Between attempts."""

UPPER, LOWER = (5.0, 10.0), (10.0, 20.0)
"""Smallest and largest step up, percent; down it is half of that."""


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
        expected_g: the expected result; for body-weight lifts the total.
        steps: sets before the first attempt; such as are lighter than anything there is are left
            out.
        first: the first attempt.
        up: the range for the next attempt after a good one,
        down: and after a miss; None where no load lies there.
    """

    expected_g: float
    steps: tuple[LadderStep, ...]
    first: PlannedLoad
    up: tuple[PlannedLoad, PlannedLoad] | None
    down: tuple[PlannedLoad, PlannedLoad] | None


@dataclass(frozen=True, eq=False)
class Ladders:
    """A test of one slot.

    Attributes:
        rm: repetitions of the best.
        attempts: heavy sets allowed.
        step_percent: smallest and largest step up.
        by_lifter: the ladder of each example lifter with a tested value.
        rows: tested value in grams and its ladder, for those without a profile.
    """

    rm: int
    attempts: int
    step_percent: tuple[float, float]
    by_lifter: Mapping[str, Ladder] = field(default_factory=dict)
    rows: tuple[tuple[int, Ladder], ...] = ()


def step_percent(exercise: Exercise) -> tuple[float, float]:
    """Smallest and largest step up: larger for the legs."""
    return LOWER if exercise.pattern in LEGS else UPPER


def slot_ladders(book: Book, slot: WorkedSlot) -> Ladders | None:
    """The ladder to an expected result; None where nothing is tested."""
    test, base = slot.dose.said.test, slot.base
    if test is None:
        return None
    steps = step_percent(slot.exercise)
    if base is None or slot.base_id is None:
        return Ladders(test.rm, test.attempts, steps)
    percent, units = percent_for_reps(test.rm), book.room.units
    by_lifter = {}
    for name, lifter in book.lifters.items():
        tested = lifter.bases.get(slot.base_id)
        share = body_share_g(slot.exercise.load, lifter.bodyweight.grams)
        if tested is not None:
            expected = tested.grams * percent / 100
            most = tested.grams if test.rm > 1 else None
            if found := ladder(
                expected, slot.scale, steps, share_g=share, units=units, most_g=most
            ):
                by_lifter[name] = found
    rows: list[tuple[int, Ladder]] = []
    # What hangs on a body depends on the body too: no table by the best alone.
    if not isinstance(slot.exercise.load, BodyWeightLift):
        values = [value for value, _ in base_strip(base, slot.scale, percent).rows[::EVERY_ROW]]
        rows = [
            (value, found)
            for value in values
            if (
                found := ladder(
                    value * percent / 100,
                    slot.scale,
                    steps,
                    units=units,
                    most_g=value if test.rm > 1 else None,
                )
            )
        ]
    return Ladders(test.rm, test.attempts, steps, by_lifter, tuple(rows))


def ladder(
    expected_g: float,
    scale: Scale | None,
    steps: tuple[float, float],
    *,
    share_g: float = 0.0,
    units: str = "kg",
    most_g: float | None = None,
) -> Ladder | None:
    """Sets up to an expected result; None where it cannot be put on.

    Args:
        expected_g: the expected result, body share included.
        scale: the loads that exist.
        steps: smallest and largest step up, percent; the middle one is taken on the way up.
        share_g: share of the body that moves with the load.
        units: unit that the pages print.
        most_g: no attempt above it, share included: the best single, where several repetitions are
            tested. The textbook's steps alone would lead past it. Common practice, no source.
    """

    def at(total_g: float) -> PlannedLoad:
        return achieved(total_g - share_g, scale, expected_g, share_g, units)

    first = at(expected_g)
    if first.actual_g is None:
        return None
    factor = 1 + sum(steps) / 200
    built: list[LadderStep] = []
    lighter_than, total = first.actual_g, expected_g
    for low, high, shortest, longest in reversed(SETS):
        total /= factor
        load = at(total)
        if load.actual_g is not None and load.actual_g < lighter_than:
            built.insert(0, LadderStep(load, (low, high), (shortest, longest)))
            lighter_than = load.actual_g
    most = math.inf if most_g is None else most_g
    up = tuple(at(min(expected_g * (1 + percent / 100), most)) for percent in steps)
    down = tuple(at(expected_g * (1 - percent / 200)) for percent in reversed(steps))
    return Ladder(
        expected_g,
        tuple(built),
        first,
        (up[0], up[1]) if _above(up[1], first) else None,
        (down[0], down[1]) if _above(first, down[0]) else None,
    )


def _above(one: PlannedLoad, other: PlannedLoad) -> bool:
    return one.actual_g is not None and other.actual_g is not None and one.actual_g > other.actual_g
