"""A bar that example lifters share: how long a round of all takes, with all that changes."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import combinations, islice
from math import ceil, comb

from strength_handbook.calc.shared_bar import exchange_seconds, share_bar
from strength_handbook.model.book import Book
from strength_handbook.model.dose import StripSet
from strength_handbook.model.loading import OnBar
from strength_handbook.plan.minutes import work_seconds
from strength_handbook.plan.scales import bar_table
from strength_handbook.plan.worked import WorkedSlot


@dataclass(frozen=True, slots=True)
class Round:
    """Everybody at one bar lifts once, and the bar is made ready for the first one again.

    Attributes:
        lifters: who, in the order in which they lift.
        seconds: how long it takes.
        plates: plates moved on one side.
        hung: times that bands or chains come off or go on.
    """

    lifters: tuple[str, ...]
    seconds: float
    plates: int
    hung: int


def can_share(slot: WorkedSlot) -> bool:
    """True for one bar that stays as it is: no two handles, no strips, no sets that differ."""
    loading = slot.exercise.load
    alike = isinstance(loading, OnBar) and loading.hands is None
    return alike and not isinstance(slot.dose.work, StripSet) and not slot.loads_differ


def rounds(book: Book, slot: WorkedSlot, people: int, most: int | None = None) -> tuple[Round, ...]:
    """A round of every so many of the example lifters whose loads can be put on.

    Args:
        book: room, rules and lifters.
        slot: what they do.
        people: how many share the bar.
        most: rounds that are enough; of more, evenly spaced ones are worked out. None for all.
    """
    if people < 2 or not can_share(slot):
        return ()
    known = [name for name, load in slot.loads.items() if (load.actual_g or 0) > 0]
    every = comb(len(known), people)
    step = 1 if most is None else max(1, ceil(every / most))
    chosen = islice(combinations(known, people), 0, None, step)
    found = (_round(book, slot, names) for names in chosen)
    return tuple(one for one in found if one is not None)


def longest(found: Iterable[Round]) -> Round | None:
    """The slowest of some rounds; None where there is none."""
    return max(found, key=lambda one: one.seconds, default=None)


def _round(book: Book, slot: WorkedSlot, names: Sequence[str]) -> Round | None:
    loading = slot.exercise.load
    assert isinstance(loading, OnBar)  # noqa: S101  # nothing else is shared
    totals = tuple(slot.loads[name].actual_g or 0 for name in names)
    plan = share_bar(bar_table(book.room, loading), totals, slot.dose.sets.high)
    if plan is None:
        return None
    work = work_seconds(book, slot.dose)
    seconds, plates, hung = 0.0, 0, 0
    for place, lifter in enumerate(plan.order):
        before = plan.order[place - 1]
        moved = _moved(plan.stacks[before], plan.stacks[lifter])
        times = _times_hung(slot, names[before], names[lifter], moves=moved > 0)
        swap, plate, band = (book.rule(one) for one in ("swap-time", "plate-time", "band-time"))
        seconds += work + exchange_seconds(swap, moved, plate, times, band)
        plates, hung = plates + moved, hung + times
    return Round(tuple(names[place] for place in plan.order), seconds, plates, hung)


def _moved(one: tuple[int, ...], other: tuple[int, ...]) -> int:
    kept = 0
    while kept < min(len(one), len(other)) and one[kept] == other[kept]:
        kept += 1
    return len(one) + len(other) - 2 * kept


def _times_hung(slot: WorkedSlot, one: str, other: str, *, moves: bool) -> int:
    """How often something comes off the bar or goes on: before the plates, and after them."""
    before, after = (_hangs(slot, name) for name in (one, other))
    return 0 if before == after and not moves else bool(before) + bool(after)


def _hangs(slot: WorkedSlot, name: str) -> str:
    """A lifter's bands or chains, in words; empty where none hang."""
    found = slot.variable.get(name)
    return found.what if found is not None and found.load.top_share > 0 else ""
