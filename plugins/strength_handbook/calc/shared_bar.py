"""One bar for two, three or four lifters in turn: who lifts when, with which plates.

Only the outermost plate can be taken off, so what two stacks have in common on the inside stays on
when one lifter follows the other. Plates are chosen and arranged for that: what all have in common
stands innermost, then what some of them share, then each lifter's own.
"""

from functools import lru_cache

from strength_handbook.calc.plates import LoadTable
from strength_handbook.calc.registry import Evidence, formula
from strength_handbook.calc.shared_bar_search import Search, SharedBar
from strength_handbook.calc.turns import Stack

MOST_AT_A_BAR = 4
"""Lifters at one bar. More would wait longer than they rest; common practice, no source."""


@formula(
    subject="Plates",
    title="Fewest plate moves on a bar that lifters share",
    equation="moves from one lifter to the next = plates before + plates after − 2 × inner plates "
    "in common; their sum over all sets is the least possible",
    inputs={
        "table": "every load the bar can carry, g",
        "totals_g": "each lifter's load, g",
        "sets": "sets of each lifter",
    },
    output="order of the lifters, and the plates of each",
    source="search over every order and every choice of plates, size by size; exact, but for four "
    "lifters with many plates, where the best of the first 100 000 looked at is taken",
    evidence=Evidence.ARITHMETIC,
)
@lru_cache(maxsize=4096)
def share_bar(table: LoadTable, totals_g: tuple[int, ...], sets: int) -> SharedBar | None:
    """Order and stacks with the fewest plate moves, where everybody lifts in turn.

    A lifter has the same stack in all sets. Among equally few moves the plan with fewer plates on
    the bar wins, then the one nearer to what each would load alone. Taking the bar apart at the
    end is not counted.

    Args:
        table: the bar and its plates.
        totals_g: a load of the table for each of up to `MOST_AT_A_BAR` lifters.
        sets: sets that each of them does.

    Returns:
        The plan; None where a load is none of the table.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> sizes = tuple(PlateSize(g, 2) for g in (25_000, 20_000, 15_000, 2_500))
    >>> plan = share_bar(load_table(25_000, sizes), (105_000, 70_000), 3)
    >>> plan.order, plan.stacks, plan.moves
    ((0, 1), ((20000, 20000), (20000, 2500)), 12)
    """
    if not 0 < len(totals_g) <= MOST_AT_A_BAR or sets < 1:
        raise ValueError(f"{len(totals_g)} lifters with {sets} sets")
    own: list[Stack] = []
    for total in totals_g:
        load = table.best(total)
        if load is None or load.total_g != total:
            return None
        own.append(load.side_g)
    return Search(table, tuple(own), sets).plan()


@formula(
    subject="Session time",
    title="Seconds from one lifter to the next on a shared bar",
    equation="seconds = people + plates × each + bands × each time",
    inputs={
        "people_s": "people = one steps back and the other sets up, s",
        "plates": "plates that move on one side",
        "plate_s": "each = one plate on each side at the same time, s",
        "hung": "bands = times that bands or chains come off or go on",
        "hung_s": "each time = both sides, s",
    },
    output="s",
    source="common practice, no source",
    evidence=Evidence.ARITHMETIC,
)
def exchange_seconds(
    people_s: float, plates: int = 0, plate_s: float = 0.0, hung: int = 0, hung_s: float = 0.0
) -> float:
    """Seconds from the last repetition of one lifter to the first of the next.

    >>> exchange_seconds(15, 4, 5, 2, 10)
    55
    """
    return people_s + plates * plate_s + hung * hung_s
