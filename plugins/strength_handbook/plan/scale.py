"""A scale: the loads that exist for an exercise, rising, each with how it is put together.

Every load on a page is one of these steps, so what the build prints and what a phone picks cannot
differ.
"""

from bisect import bisect_left, bisect_right
from dataclasses import dataclass
from functools import cached_property
from operator import attrgetter
from typing import Literal

from strength_handbook.calc.plates import LoadTable

POUND_SLACK_G = 10
"""How far a load in pounds may seem to lie above its target. A pound is no whole number of grams:
every plate and every tested value may be half a gram off, and 135 lb must stay 135 lb."""

BEYOND = 1.1
"""A need so many times what the strongest band takes off is served by none. Common practice, no
source."""

Rounding = Literal["down", "nearest", "up"]
Kind = Literal["bar", "fixed", "hung", "pin", "plate", "pivot"]


@dataclass(frozen=True, slots=True)
class Step:
    """One load that exists.

    Attributes:
        grams: the load itself; per hand where things are held in both hands.
        parts: plates of one side, inner to outer; plates hung on; or the pin and its add-on. A
            stack's load is what its pin says, not what the hand feels: that is what is set.
        band: number of the band that takes weight off; `grams` is negative then.
    """

    grams: int
    parts: tuple[int, ...] = ()
    band: str = ""


@dataclass(frozen=True, eq=False)
class Scale:
    """All loads of one loading. Compared by identity: one scale serves all tables of its kind.

    Attributes:
        kind: ``bar`` plates on both ends, ``fixed`` masses, ``hung`` single plates on or in
            something, ``pin`` in a stack, ``plate`` held or laid on, ``pivot`` plates on the free
            end of a bar.
        on: name of the thing loaded.
        empty_g: its own mass, part of every step.
        per_hand: the load is for each hand.
        rounding: which step to take for a target between two.
        steps: rising.
        slack_g: differences up to this are none; 0 where all masses are in kilograms.
        table: the plates behind the steps, where plates go on and off; None for everything else.
        most: most plates on one side; None for as many as fit.
        helps: bands that take weight off, the weakest first; empty where none is taken here.
    """

    kind: Kind
    on: str
    empty_g: int
    per_hand: bool
    rounding: Rounding
    steps: tuple[Step, ...]
    slack_g: int = 0
    table: LoadTable | None = None
    most: int | None = None
    helps: tuple[Step, ...] = ()

    @cached_property
    def lightest_g(self) -> int:
        """The smallest load there is."""
        return self.steps[0].grams if self.steps else 0

    @cached_property
    def heaviest_g(self) -> int:
        """The largest load there is."""
        return self.steps[-1].grams if self.steps else 0

    @cached_property
    def above_g(self) -> int:
        """Grams by which the lightest load may lie above a target: as if another lay below it.

        That one would be as far below as the second is above, and never more than a tenth of the
        lightest; ``nearest`` takes half of that. Anything above is not what was planned.
        """
        if self.rounding == "down" or not self.steps:
            return 0
        first = self.lightest_g
        gap = self.steps[1].grams - first if len(self.steps) > 1 else first
        return min(gap // 2 if self.rounding == "nearest" else gap, first // 10)

    def best(self, target_g: float) -> Step | None:
        """The step for a target, by the scale's rounding; None where none may be taken.

        ``nearest`` takes the lighter of two that are equally near. Where the lightest load is too
        far above the target, there is none.
        """
        steps, slack = self.steps, self.slack_g
        at_most = bisect_right(steps, target_g + slack, key=_grams)
        at_least = bisect_left(steps, target_g - slack, key=_grams)
        below = steps[at_most - 1] if at_most else None
        above = steps[at_least] if at_least < len(steps) else None
        if self.rounding == "down":
            return below
        if below is None and above is not None and above.grams - target_g > self.above_g + slack:
            return None
        if self.rounding == "up":
            return above
        if below is None or above is None:
            return below or above
        return below if target_g - below.grams <= above.grams - target_g + slack else above

    def help_for(self, need_g: float) -> Step | None:
        """The band nearest to the weight that is to be taken off, or none if that is nearer.

        Bands come in few sizes: one that helps a little less is often far nearer than the next.
        Of two equally near ones the one that helps more; None beyond the strongest.
        """
        if not self.helps or need_g > BEYOND * -self.helps[-1].grams:
            return None
        bare = self.best(0)
        known = [*([bare] if bare is not None and not bare.grams else []), *self.helps]
        return min(known, key=lambda one: (round(abs(need_g + one.grams), 3), one.grams))


_grams = attrgetter("grams")
