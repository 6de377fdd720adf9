"""From a tested set to the best single that every percentage refers to.

The best single is read from the chart that made the expected result, so that doing exactly what is
expected changes nothing. What the other equations say stands beside it as a range.
"""

from dataclasses import dataclass
from math import ceil, floor

from strength_handbook.calc.one_rep_max import MOST_REPS, estimate_one_rep_max
from strength_handbook.calc.percent_load import one_rep_max_from_chart
from strength_handbook.calc.repetitions import percent_for_reps
from strength_handbook.model.quantities import GRAMS_PER_POUND

ROUND_G = {"kg": 500.0, "lb": GRAMS_PER_POUND}
"""A best single is kept in half kilograms or whole pounds: a tenth of what tests differ by
themselves (4.2 % of 100 kg)."""


@dataclass(frozen=True, slots=True)
class NewBest:
    """What a tested set says of the best single, everything that moves included.

    Attributes:
        best_g: by the chart, in half kilograms or whole pounds.
        low_g: lowest,
        high_g: and highest of the estimates, the chart's among them.
        caution: too many repetitions for a good estimate.
    """

    best_g: int
    low_g: float
    high_g: float
    caution: bool


def new_best(total_g: int, reps: int, units: str = "kg") -> NewBest:
    """The best single after a set to the limit.

    Args:
        total_g: what was lifted; for body-weight lifts the share of the body included.
        reps: complete repetitions.
        units: unit that the pages print.

    Raises:
        OutOfRangeError: above 15 repetitions.

    >>> new_best(130_000, 3).best_g, new_best(152_500, 1).best_g
    (140000, 152500)
    """
    found = estimate_one_rep_max(total_g / 1000, reps)
    best = one_rep_max_from_chart(total_g / 1000, reps)
    step = ROUND_G[units]
    kept = total_g if reps == 1 else round(round(1000 * best / step) * step)
    low, high = min(found.low, best), max(found.high, best)
    return NewBest(kept, 1000 * low, 1000 * high, found.caution)


def factors() -> list[tuple[int, int, int, int]]:
    """What a phone multiplies with, a row for each of 1 to 15 repetitions, in whole numbers.

    The chart's percentage in millionths; the lowest and the highest estimate in millionths of the
    load, rounded outwards; 1 where care is needed.
    """
    rows = []
    for reps in range(1, MOST_REPS + 1):
        percent = percent_for_reps(reps)
        found = estimate_one_rep_max(1, reps)
        low, high = min(found.low, 100 / percent), max(found.high, 100 / percent)
        row = (round(percent * 1e6), floor(low * 1e6), ceil(high * 1e6 - 1e-6), int(found.caution))
        rows.append(row)
    return rows
