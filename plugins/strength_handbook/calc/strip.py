"""Drop sets from the bar: every lighter load is made by taking plates off, none is put on."""

from collections.abc import Sequence
from itertools import pairwise

from strength_handbook.calc.plates import LoadTable
from strength_handbook.calc.registry import Evidence, formula
from strength_handbook.calc.stacks import Stack, stacks
from strength_handbook.calc.strip_search import StripPlan, best_strips, strips_of

# What every drop set from a first load asks for.
_START = {
    "table": "load = every one the bar can carry, g",
    "first_g": "load of the first stage, g",
    "stages": "loads in all",
}
_STACK = {
    "max_plates": "most plates on one side, where there is a limit",
    "prefer": "plates already listed for the first stage, taken where they allow a plan",
}


@formula(
    subject="Plates",
    title="Strip set by taking plates off only",
    equation="75 % ≤ load ÷ load before ≤ 85 %, fewest plates taken off, then nearest to 80 %",
    inputs={
        **_START,
        "below_g": "how far below it the first may be, g",
        "low_percent": "least share left at a strip, %",
        "high_percent": "largest share left at a strip, %",
        "aim_percent": "share aimed at, %",
        "also_g": "what moves along and never comes off, part of every load here, g",
        **_STACK,
    },
    output="loads, and the plates that come off each side",
    source="recursion over every group of plates; exact",
    evidence=Evidence.ARITHMETIC,
)
def strip_plan(
    table: LoadTable,
    first_g: int,
    stages: int,
    *,
    below_g: int = 2_500,
    low_percent: int = 75,
    high_percent: int = 85,
    aim_percent: int = 80,
    also_g: int = 0,
    max_plates: int | None = None,
    prefer: Stack | None = None,
) -> StripPlan | None:
    """Drop set in which every strip leaves about four fifths of the load before it.

    Fewest plates taken off wins, then the smallest sum of |load − 80 % of the load before|, then
    the first load nearest its target, then fewer plates on the bar.

    Args:
        table: the bar and its plates.
        first_g: wanted first load, in grams.
        stages: loads in the set, the first one included.
        below_g: how far the first load may lie below the wanted one, in grams.
        low_percent: least that a strip leaves, in percent of the load before it.
        high_percent: most that a strip leaves; below 100.
        aim_percent: what a strip should leave.
        also_g: what moves along and is no part of the table's loads, such as the body, in grams.
        max_plates: most plates on one side; None for as many as fit.
        prefer: plates of one side that are taken, in whatever order, if they allow a plan.

    Returns:
        The plan, or None where these plates allow none.

    Raises:
        ValueError: where the percentages do not ascend below 100 or there is no stage.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> table = load_table(20_000, tuple(PlateSize(g, 3) for g in (10_000, 5_000, 2_500)))
    >>> plan = strip_plan(table, 61_000, 3)
    >>> [stage.load.total_g for stage in plan.stages], plan.groups_g
    ([60000, 50000, 40000], ((10000,), (5000,), (5000,)))
    """
    if stages < 1 or not 0 < low_percent <= aim_percent <= high_percent < 100:
        raise ValueError(f"no drop set: {stages} stages, {low_percent} to {high_percent} %")

    def window(_strip: int, before: int) -> tuple[int, int]:
        moves = before + also_g
        return -(-low_percent * moves // 100) - also_g, high_percent * moves // 100 - also_g

    def miss(_strip: int, before: int, left: int) -> int:
        return abs(100 * (left + also_g) - aim_percent * (before + also_g))

    return best_strips(
        table, (first_g - below_g, first_g), stages - 1, window, miss, max_plates, prefer
    )


@formula(
    subject="Plates",
    title="Strip set by a mass",
    equation="off − slack ≤ load before − load ≤ off + slack, fewest plates taken off, then "
    "nearest to what should come off",
    inputs={
        **_START,
        "off_g": "off = what should come off at each strip, in all, g",
        "slack_g": "slack = by how much it may be more or less, g",
        **_STACK,
    },
    output="loads, and the plates that come off each side",
    source="recursion over every group of plates; exact",
    evidence=Evidence.ARITHMETIC,
)
def strip_plan_off(
    table: LoadTable,
    first_g: int,
    stages: int,
    off_g: int,
    *,
    slack_g: int = 0,
    max_plates: int | None = None,
    prefer: Stack | None = None,
) -> StripPlan | None:
    """Drop set from a load in which every strip takes off about the same mass.

    Args:
        table: the bar and its plates.
        first_g: the first load, in grams.
        stages: loads in the set, the first one included.
        off_g: what should come off at each strip, both sides together, in grams.
        slack_g: by how much it may be more or less, in grams.
        max_plates: most plates on one side; None for as many as fit.
        prefer: plates of one side that are taken, in whatever order, if they allow a plan.

    Returns:
        The plan, or None where these plates allow none.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> table = load_table(20_000, tuple(PlateSize(g, 3) for g in (10_000, 5_000, 2_500)))
    >>> plan = strip_plan_off(table, 60_000, 3, 10_000)
    >>> [stage.load.total_g for stage in plan.stages], plan.groups_g
    ([60000, 50000, 40000], ((10000,), (5000,), (5000,)))
    """

    def window(_strip: int, before: int) -> tuple[int, int]:
        return before - off_g - slack_g, before - off_g + slack_g

    def miss(_strip: int, before: int, left: int) -> int:
        return abs(before - left - off_g)

    return best_strips(table, (first_g, first_g), stages - 1, window, miss, max_plates, prefer)


@formula(
    subject="Plates",
    title="Strip set plate by plate",
    equation="the outermost plates of each side come off; of all ways to load the first stage "
    "with plates enough, the one with the fewest plates, then with the most even strips",
    inputs={
        **_START,
        "plates": "plates taken off each side at each strip",
        **_STACK,
    },
    output="loads, and the plates that come off each side",
    source="search over every stack; exact",
    evidence=Evidence.ARITHMETIC,
)
def strip_plan_by_plates(
    table: LoadTable,
    first_g: int,
    stages: int,
    plates: int = 1,
    *,
    max_plates: int | None = None,
    prefer: Stack | None = None,
) -> StripPlan | None:
    """Drop set from a load in which so many plates of each side come off at every strip.

    Args:
        table: the bar and its plates.
        first_g: the first load, in grams.
        stages: loads in the set, the first one included.
        plates: plates taken off each side at a strip.
        max_plates: most plates on one side; None for as many as fit.
        prefer: plates of one side that are taken, in whatever order, if they allow a plan.

    Returns:
        The plan, or None where no stack for that load has plates enough.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> back = load_table(0, tuple(PlateSize(g, 1) for g in (20_000, 10_000, 5_000)), sides=1)
    >>> plan = strip_plan_by_plates(back, 20_000, 3)
    >>> [stage.load.total_g for stage in plan.stages], [stage.off_g for stage in plan.stages]
    ([20000, 10000, 0], [(), (10000,), (10000,)])
    """
    needed = plates * (stages - 1)

    def groups(stack: Stack) -> tuple[Stack, ...]:
        outer = stack[::-1]
        return tuple(outer[at : at + plates][::-1] for at in range(0, needed, plates))

    def cost(stack: Stack) -> tuple[int, int]:
        # Sums of squares are least where the strips are alike.
        return len(stack), sum(sum(group) ** 2 for group in groups(stack))

    enough = [one for one in stacks(table, first_g, first_g, max_plates) if len(one) >= needed]
    wanted = tuple(sorted(prefer or (), reverse=True))
    best = wanted if len(wanted) >= needed > 0 else min(enough, key=cost, default=None)
    return None if best is None else strips_of(table, best, groups(best))


@formula(
    subject="Plates",
    title="Strip set to given loads",
    equation="target − tolerance ≤ load ≤ target at every stage, fewest plates taken off",
    inputs={
        "table": "load = every one the bar can carry, g",
        "targets_g": "target = wanted load of each stage, g",
        "tolerance_g": "tolerance = how far below it is still right, g",
    },
    output="loads, and the plates that come off each side",
    source="recursion over every group of plates; exact",
    evidence=Evidence.ARITHMETIC,
)
def strip_plan_to(
    table: LoadTable, targets_g: Sequence[int], *, tolerance_g: int = 0
) -> StripPlan | None:
    """Drop set to given descending loads, each met or missed downwards by the tolerance at most.

    Fewest plates taken off wins, then the smallest sum of grams below the targets, then fewer
    plates on the bar.

    Args:
        table: the bar and its plates.
        targets_g: wanted loads in grams, heaviest first.
        tolerance_g: how far a load may lie below its target, in grams.

    Returns:
        The plan, or None where these plates allow none.

    Raises:
        ValueError: where the targets do not descend.

    >>> from strength_handbook.calc.plates import PlateSize, load_table
    >>> table = load_table(20_000, tuple(PlateSize(g, 3) for g in (20_000, 10_000, 5_000)))
    >>> strip_plan_to(table, (120_000, 100_000, 80_000, 60_000)).groups_g
    ((20000,), (10000,), (10000,), (10000,))
    """
    targets = tuple(targets_g)
    if not targets or any(later >= before for before, later in pairwise(targets)):
        raise ValueError(f"targets of a drop set descend: {targets}")

    def window(strip: int, _before: int) -> tuple[int, int]:
        return targets[strip + 1] - tolerance_g, targets[strip + 1]

    def miss(strip: int, before: int, left: int) -> int:
        first = targets[0] - before if strip == 0 else 0
        return first + targets[strip + 1] - left

    return best_strips(
        table, (targets[0] - tolerance_g, targets[0]), len(targets) - 1, window, miss
    )
