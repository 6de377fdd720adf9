"""The search for the fewest plate moves on a bar that lifters share, size by size of plate."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import permutations
from operator import itemgetter

from strength_handbook.calc.plate_kinds import Cost, PlateKind, bounds_of, choices
from strength_handbook.calc.plates import LoadTable
from strength_handbook.calc.turns import (
    Counts,
    Sharers,
    Stack,
    follow_ups,
    moved,
    plate_moves,
    trees,
)

# The least that it costs, the order, who shares what.
Way = tuple[Cost, tuple[int, ...], Sharers]

MOST_STEPS = 100_000
"""Partial plans looked at before the search is content with the best one so far, which takes a
phone less than a second. Two or three lifters at a usual rack need a twentieth of it."""


@dataclass(frozen=True, slots=True)
class SharedBar:
    """Who lifts when on one bar, and with which plates.

    Attributes:
        order: places of the lifters, in the order in which they lift.
        stacks: plates of one side for each lifter, as the lifters were given, inner to outer.
        moves: plates taken off or put on, on one side, from the empty bar to the last set.
        alone: the same with everybody's own stack, as each would load it alone.
    """

    order: tuple[int, ...]
    stacks: tuple[Stack, ...]
    moves: int
    alone: int


@dataclass(frozen=True, slots=True)
class _Label:
    """A partial plan: what it costs, the sleeve it takes, and the plates so far."""

    cost: Cost
    widths: Counts
    chosen: tuple[Counts, ...]

    def beats(self, other: "_Label") -> bool:
        """Nothing that can still come makes the other one better."""
        return self.cost <= other.cost and all(
            mine <= theirs for mine, theirs in zip(self.widths, other.widths, strict=True)
        )


class Search:
    """The best plan so far, and what bounds the search for a better one."""

    def __init__(self, table: LoadTable, own: tuple[Stack, ...], sets: int) -> None:
        self.own, self.sets = own, sets
        self.bounds = bounds_of(table)
        self.kinds = self.bounds.kinds
        room = None if table.sleeve_mm is None else round(table.sleeve_mm * 1000)
        # Where everything fits on the sleeve, its length decides nothing.
        narrow = room is not None and sum(kind.widths[-1] for kind in self.kinds) > room
        self.room = room if narrow else None
        self.steps = 0

    def plan(self) -> SharedBar:
        """The cheapest of everybody's own stacks and of every plan that shares plates."""
        orders = list(permutations(range(len(self.own))))
        moves = {one: plate_moves([self.own[i] for i in one], self.sets) for one in orders}
        order = min(orders, key=moves.__getitem__)
        found = SharedBar(order, self.own, moves[order], moves[order])
        best = (moves[order], sum(map(len, self.own)))
        for least, order, sharers in self._promising(orders):
            if least < best and (label := self._cheapest(order, sharers, best)):
                best = label.cost
                stacks = self._stacks(order, sharers, label)
                found = SharedBar(order, stacks, best[0], found.alone)
        return found

    def _promising(self, orders: Sequence[tuple[int, ...]]) -> list[Way]:
        """Every order with every way of sharing, by the least that it can cost."""
        weights = follow_ups(len(self.own), self.sets)
        ways = [
            (self.bounds.least(0, self._masses(order), weights), order, sharers)
            for order in orders
            for sharers in trees(range(len(order)))
        ]
        return sorted(ways, key=itemgetter(0))

    def _masses(self, order: tuple[int, ...]) -> Counts:
        return tuple(sum(self.own[one]) for one in order)

    def _cheapest(self, order: tuple[int, ...], sharers: Sharers, best: Cost) -> _Label | None:
        """The best choice of plates for an order, if there is one below the best cost so far."""
        weights = follow_ups(len(order), self.sets)
        start = self._masses(order)
        layer = {start: [_Label((0, 0), (0,) * len(order), ())]}
        for place, kind in enumerate(self.kinds):
            following: dict[Counts, list[_Label]] = {}
            for rest, labels in layer.items():
                for counts in choices(kind, rest):
                    left = tuple(r - n * kind.grams for r, n in zip(rest, counts, strict=True))
                    more = (moved(counts, weights, sharers), sum(counts))
                    least = _sum(more, self.bounds.least(place + 1, left, weights))
                    for label in labels:
                        self.steps += 1
                        if _sum(label.cost, least) < best:
                            new = self._extend(label, kind, counts, more)
                            if new is not None:
                                _keep(following.setdefault(left, []), new)
                if self.steps > MOST_STEPS:
                    return None
            layer = following
        done = layer.get((0,) * len(order), [])
        return min(done, key=lambda one: one.cost, default=None)

    def _extend(self, label: _Label, kind: PlateKind, counts: Counts, more: Cost) -> _Label | None:
        widths = label.widths
        if self.room is not None:
            widths = tuple(w + kind.widths[n] for w, n in zip(widths, counts, strict=True))
            if max(widths) > self.room:
                return None
        return _Label(_sum(label.cost, more), widths, (*label.chosen, counts))

    def _stacks(self, order: tuple[int, ...], sharers: Sharers, label: _Label) -> tuple[Stack, ...]:
        """Each lifter's plates: innermost what most share, and within that the heavy ones."""
        groups = sorted({*sharers.values()}, key=len, reverse=True)
        found: dict[int, Stack] = {}
        for place, lifter in enumerate(order):
            stack: list[int] = []
            used = [0] * len(self.kinds)
            for group in [one for one in groups if place in one] + [(place,)]:
                for k, (kind, counts) in enumerate(zip(self.kinds, label.chosen, strict=True)):
                    common = min(counts[one] for one in group)
                    stack += [kind.grams] * (common - used[k])
                    used[k] = common
            found[lifter] = tuple(stack)
        return tuple(found[lifter] for lifter in range(len(order)))


def _sum(one: Cost, other: Cost) -> Cost:
    return one[0] + other[0], one[1] + other[1]


def _keep(labels: list[_Label], new: _Label) -> None:
    """Add a partial plan, unless a known one is as good; leave out those it beats."""
    if any(known.beats(new) for known in labels):
        return
    labels[:] = [known for known in labels if not new.beats(known)]
    labels.append(new)
