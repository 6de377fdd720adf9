"""Lifters in turn at one bar: how often one follows the other, what they share on the inside."""

from collections.abc import Sequence
from itertools import combinations, takewhile

Stack = tuple[int, ...]
"""Plates of one side in grams, inner to outer."""
Counts = tuple[int, ...]
"""A number for each lifter, in the order in which they lift."""
Weights = dict[tuple[int, int], int]
"""How often each two lifters follow each other, by their places in the order."""
Sharers = dict[tuple[int, int], tuple[int, ...]]
"""For each two lifters, all those who share what these two have in common."""


def plate_moves(stacks: Sequence[Stack], sets: int) -> int:
    """Plates moved on one side when all lift in turn, from the empty bar to the last set.

    >>> plate_moves([(20_000,), (20_000, 5_000)], 2)
    4
    """
    bar: Stack = ()
    moves = 0
    for stack in list(stacks) * sets:
        moves += len(bar) + len(stack) - 2 * _common(bar, stack)
        bar = stack
    return moves


def _common(one: Stack, other: Stack) -> int:
    same = takewhile(lambda two: two[0] == two[1], zip(one, other, strict=False))
    return sum(1 for _ in same)


def follow_ups(people: int, sets: int) -> Weights:
    """How often each two follow each other: all in turn, `sets` times, the last round ends it.

    >>> follow_ups(2, 3), follow_ups(3, 2)
    ({(0, 1): 5}, {(0, 1): 2, (1, 2): 2, (0, 2): 1})
    """
    often: Weights = {(place, place + 1): sets for place in range(people - 1)}
    if people > 1:
        often[0, people - 1] = often.get((0, people - 1), 0) + sets - 1
    return often


def trees(places: Sequence[int]) -> list[Sharers]:
    """Every way in which lifters share inner plates: all of them, then some, then fewer.

    >>> trees(range(2)), len(trees(range(3)))
    ([{(0, 1): (0, 1)}], 3)
    """
    if len(places) < 2:
        return [{}]
    first, *others = places
    found: list[Sharers] = []
    for size in range(len(others)):
        for chosen in combinations(others, size):
            one = (first, *chosen)
            rest = tuple(other for other in others if other not in chosen)
            here = {(min(a, b), max(a, b)): tuple(places) for a in one for b in rest}
            found += [here | left | right for left in trees(one) for right in trees(rest)]
    return found


def moved(counts: Counts, weights: Weights, sharers: Sharers) -> int:
    """Moves of one size of plate over all sets.

    >>> moved((2, 1), follow_ups(2, 3), {(0, 1): (0, 1)})
    7
    """
    return counts[0] + sum(
        weight * (counts[a] + counts[b] - 2 * min(counts[one] for one in sharers[a, b]))
        for (a, b), weight in weights.items()
    )
