"""A test's attempts: the first one, and what follows a good one or a miss.

The textbook's large steps lead through the warm-up. Between attempts they would lead past any best:
from there on the house's own steps count (`first-attempt`, `attempt-step-least` and
`attempt-step-most`). After a miss: Sheppard and Triplett 2016, ch. 17, 2.5 to 5 % less, legs 5 to
10 %; with several repetitions about half of that (the same chapter, from memory).
"""

from bisect import bisect_left, bisect_right
from dataclasses import dataclass

from strength_handbook.model.book import Book
from strength_handbook.plan.loads import PlannedLoad, achieved
from strength_handbook.plan.scale import Scale

Range = tuple[float, float]


@dataclass(frozen=True, slots=True)
class AttemptRules:
    """How attempts follow each other, in percent.

    Attributes:
        first: the first attempt, of the expected result.
        up: smallest and largest step after a good attempt,
        down: and after a miss, downwards.
    """

    first: float
    up: Range
    down: Range


def attempt_rules(book: Book, rm: int, *, legs: bool) -> AttemptRules:
    """The house's rules for a test of so many repetitions.

    Only the steps after a miss are halved for several repetitions. Upward steps of half the size
    could not show a change worth believing in the attempts there are.
    """
    half = 1 if rm == 1 else 2
    low, high = (5.0, 10.0) if legs else (2.5, 5.0)
    up = sorted((book.rule("attempt-step-least"), book.rule("attempt-step-most")))
    return AttemptRules(book.rule("first-attempt"), (up[0], up[1]), (low / half, high / half))


@dataclass(frozen=True, slots=True)
class Attempts:
    """What is tested, and with which loads.

    Attributes:
        expected_g: the expected result, body share included.
        scale: the loads that exist.
        rules: how attempts follow each other.
        share_g: share of the body that moves with the load.
        units: unit that the pages print.
        most_g: no attempt above it, share included: the best single, where several repetitions are
            tested. Common practice, no source.
    """

    expected_g: float
    scale: Scale | None
    rules: AttemptRules
    share_g: float = 0.0
    units: str = "kg"
    most_g: float | None = None

    def at(self, total_g: float) -> PlannedLoad:
        """The load that exists for a total."""
        wanted = total_g - self.share_g
        return achieved(wanted, self.scale, self.expected_g, self.share_g, self.units)

    def first(self) -> PlannedLoad:
        """The first attempt: conservative, so that one good one is sure to stand.

        Where nothing is that light, what is expected.
        """
        load = self.at(self.expected_g * self.rules.first / 100)
        return load if load.actual_g is not None else self.at(self.expected_g)

    def after(self, good: int | None, missed: int | None, *, was_good: bool) -> "Next | None":
        """The next attempt; None where no load is left between what went and what did not.

        Args:
            good: heaviest good attempt in grams as loaded, or None.
            missed: lightest missed one above it, or None.
            was_good: the last attempt was good.
        """
        last = good if was_good else missed
        if last is None:
            return None
        total, (least, most) = last + self.share_g, self.rules.up
        wanted = total * (100 + least) / 100, total * (100 + most) / 100
        if not was_good:
            less, more = self.rules.down
            wanted = total * (100 - more) / 100, total * (100 - less) / 100
        low, high = (self.at(self._most(one)) for one in wanted)
        if not self._open(low, good, missed):
            low = self._beside(good, up=True) or low
        if not self._open(high, good, missed):
            high = self._beside(missed, up=False) or high
        if not self._open(low, good, missed):
            low = high
        if not self._open(high, good, missed):
            high = low
        if not self._open(low, good, missed):
            return None
        return Next(low, high) if _grams(low) <= _grams(high) else Next(high, high)

    def _most(self, total_g: float) -> float:
        return total_g if self.most_g is None else min(total_g, self.most_g)

    def _open(self, load: PlannedLoad, good: int | None, missed: int | None) -> bool:
        """True for a load that nobody has tried, between the heaviest good and the missed one."""
        grams = load.actual_g
        return (
            grams is not None
            and (good is None or grams > good)
            and (missed is None or grams < missed)
            and (self.most_g is None or grams + self.share_g <= self.most_g + 0.5)
        )

    def _beside(self, grams: int | None, *, up: bool) -> PlannedLoad | None:
        """The next load there is, above or below one; None where help makes up the difference."""
        scale = self.scale
        if scale is None or grams is None or grams < 0:
            return None
        masses = [step.grams for step in scale.steps]
        slack = scale.slack_g
        place = (
            bisect_right(masses, grams + slack) if up else bisect_left(masses, grams - slack) - 1
        )
        return self.at(masses[place] + self.share_g) if 0 <= place < len(masses) else None


@dataclass(frozen=True, slots=True)
class Next:
    """The range for the next attempt: the lightest and the heaviest that make sense."""

    low: PlannedLoad
    high: PlannedLoad


def _grams(load: PlannedLoad) -> int:
    return load.actual_g or 0
