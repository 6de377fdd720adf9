"""Who holds what from which minute to which, and where more is held than there is."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from strength_handbook.floor.needs import Needs, Units, most

HAIR = 1e-6
"""Minutes that are no time at all."""


@dataclass(frozen=True, slots=True)
class Stay:
    """One exercise of one pair by the clock.

    Attributes:
        group: start group, from 1.
        pair: pair of the start group, from 1.
        order: A, B1, B2 …
        exercise: id of the exercise.
        start: minute at which its set-up begins,
        end: and at which its letter ends.
        wait: minutes waited for it before.
        needs: what the pair takes for it.
    """

    group: int
    pair: int
    order: str
    exercise: str
    start: float
    end: float
    wait: float
    needs: Needs


@dataclass(frozen=True, slots=True)
class Shortage:
    """Something of which more is needed at once than there is.

    Attributes:
        thing: its key.
        minute: when it begins.
        needed: how many are needed then.
        owned: how many there are.
        orders: the slots that need it then, in order.
    """

    thing: str
    minute: float
    needed: int
    owned: int
    orders: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Bottleneck:
    """What the session is waiting for first if the group grows.

    Attributes:
        thing: its key.
        busy: share of the first start group's training time in which all of it is in use.
        least: minutes the training takes at least for that group: nothing can be in two hands.
        also: keys of other things that are in use just as long for what there is of them.
    """

    thing: str
    busy: float
    least: float
    also: tuple[str, ...] = ()


@dataclass(frozen=True, eq=False)
class Floor:
    """A session of one week on the floor.

    Attributes:
        intervals: exercises of all pairs, by group, pair and time.
        pairs: pairs in each start group.
        units: how many the room has, by thing.
        minutes: door to door for the pair that is through last, the waits of a rotation included.
        evening: from the first start to the last end.
        bottleneck: what would run short first; None where nothing is counted.
    """

    intervals: tuple[Stay, ...]
    pairs: int
    units: Units
    minutes: float
    evening: float
    bottleneck: Bottleneck | None

    @cached_property
    def shortages(self) -> tuple[Shortage, ...]:
        """Things that are short, the first moment of each; the earliest first."""
        return _shortages(self.intervals, self.units, "things")

    @cached_property
    def short_sizes(self) -> tuple[Shortage, ...]:
        """Plates and hand weights that are short by size; an estimate."""
        return _shortages(self.intervals, self.units, "sizes")

    @cached_property
    def longest_wait(self) -> Stay | None:
        """The interval that somebody waits for longest; None where nobody waits."""
        waited = [one for one in self.intervals if one.wait > HAIR]
        return max(waited, key=lambda one: (one.wait, -one.start), default=None)


def demand(intervals: Iterable[Stay], thing: str) -> tuple[tuple[float, int], ...]:
    """How many of a thing are in use from each minute on at which that changes."""
    changes: dict[float, int] = {}
    for start, end, needs, _ in stays(intervals, "things"):
        if count := needs.get(thing, 0):
            changes[start] = changes.get(start, 0) + count
            changes[end] = changes.get(end, 0) - count
    in_use, steps = 0, []
    for minute in sorted(changes):
        in_use += changes[minute]
        if changes[minute]:
            steps.append((minute, in_use))
    return tuple(steps)


def stays(
    intervals: Iterable[Stay], what: str
) -> Iterator[tuple[float, float, dict[str, int], tuple[str, ...]]]:
    """Letters of all pairs with what is taken, each thing once for all exercises of the letter."""
    found: dict[tuple[int, int, str], list[Stay]] = {}
    for one in intervals:
        found.setdefault((one.group, one.pair, one.order[0]), []).append(one)
    for stay in found.values():
        needs = most(getattr(one.needs, what) for one in stay)
        yield stay[0].start, stay[0].end, needs, tuple(one.order for one in stay)


def _shortages(intervals: Sequence[Stay], units: Units, what: str) -> tuple[Shortage, ...]:
    """The first moment at which each thing is short."""
    events: list[tuple[float, int, dict[str, int]]] = []
    for start, end, needs, _ in stays(intervals, what):
        if end - start > HAIR:
            # Rounded, so that one pair's end and the next one's start are the same moment.
            events += ((round(start, 6), 1, needs), (round(end, 6), -1, needs))
    in_use: dict[str, int] = {}
    short: dict[str, tuple[float, int]] = {}
    events.sort(key=lambda event: event[:2])
    for index, (minute, sign, needs) in enumerate(events):
        for thing, count in needs.items():
            in_use[thing] = in_use.get(thing, 0) + sign * count
        if index + 1 < len(events) and events[index + 1][0] == minute:
            continue
        for thing, count in in_use.items():
            if thing not in short and count > units.get(thing, count):
                short[thing] = (minute, count)
    return tuple(
        Shortage(thing, minute, count, units[thing], _users(intervals, thing, minute, what))
        for thing, (minute, count) in sorted(short.items(), key=lambda item: (item[1][0], item[0]))
    )


def _users(intervals: Iterable[Stay], thing: str, minute: float, what: str) -> tuple[str, ...]:
    """Slots that need a thing at a minute."""
    users = {
        one.order
        for one in intervals
        if one.start - HAIR <= minute < one.end - HAIR and thing in getattr(one.needs, what)
    }
    return tuple(sorted(users))
