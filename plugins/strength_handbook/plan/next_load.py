"""The next load up or down from today's: always one that exists."""

from bisect import bisect_right
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from strength_handbook.model.load import FixedLoad
from strength_handbook.model.loading import OnMachine
from strength_handbook.model.quantities import Mass, in_unit
from strength_handbook.plan.loads import PlannedLoad, achieved
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.worked import WorkedSlot

LARGE_JUMP = 10.0
"""Percent above which a step is a jump. Common practice, no source."""

BACK = 0.9
"""Share of the load to go back to after misses. Common practice, no source."""

_ROUNDED_G = 2
"""What may lie between two equal steps in pounds, which are kept in whole grams."""

_LOADS = {
    "bar": "Plates", "fixed": "Weights", "hung": "Plates", "pin": "Pins", "plate": "Plates",
    "pivot": "Plates",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class LoadMove:
    """How the next load follows from today's, for whoever knows today's.

    Attributes:
        kind: ``up`` by so many grams, ``down`` by a tenth of all that moves, ``percent`` of the
            tested value, ``later`` as the next time is planned, ``heavier`` the same where that is
            more than today, ``pace`` at the pace or watts of the next dose.
        amount: grams or percent.
    """

    kind: Literal["up", "down", "percent", "later", "heavier", "pace"]
    amount: float = 0.0


@dataclass(frozen=True, slots=True)
class NextLoad:
    """Steps from one lifter's load of today.

    Attributes:
        slot: the slot as it is done today.
        today: the lifter's load, or None where it is not known.
        units: unit that the pages print.
    """

    slot: WorkedSlot
    today: PlannedLoad | None
    units: str

    def raised(self, grams: int) -> PlannedLoad | None:
        """The load one step up: more than today's, even where the step is smaller than any plate.

        None where today's load is not known or nothing is heavier.
        """
        today, scale = self.today, self.slot.scale
        if today is None or today.actual_g is None:
            return None
        new = self.at(today.actual_g + grams)
        if new.actual_g is not None and new.actual_g > today.actual_g:
            return new
        if scale is None:
            return None
        if today.actual_g < 0:
            lighter = [one for one in scale.helps if one.grams > today.actual_g]
            return self.at(lighter[-1].grams if lighter else 0) if scale.helps else None
        place = bisect_right(_masses(scale), today.actual_g + scale.slack_g)
        return self.at(scale.steps[place].grams) if place < len(scale.steps) else None

    def lowered(self) -> PlannedLoad | None:
        """A tenth less of everything that moves; None where today's load is not known."""
        today = self.today
        if today is None or today.actual_g is None:
            return None
        load = self.at(BACK * (today.actual_g + today.body_g) - today.body_g)
        return None if load.actual_g is None else load

    def at(self, grams: float) -> PlannedLoad:
        """The load that exists for a wanted one."""
        today = self.today
        reference, body = (today.reference_g, today.body_g) if today else (0.0, 0.0)
        return achieved(grams, self.slot.scale, reference, body, self.units)

    def text(self, load: PlannedLoad) -> str:
        """A load in words: ``62.5 kg``, ``body weight +5 kg``, ``7 kg of help``."""
        if load.help_g:
            help_ = self._mass(load.help_g)
            return f"band {load.band}, about {help_} off" if load.band else f"{help_} of help"
        grams = load.actual_g or 0
        if load.body_g:
            return f"body weight +{self._mass(grams)}" if grams else "body weight"
        each = " in each hand" if self.slot.scale is not None and self.slot.scale.per_hand else ""
        return f"{self._mass(grams)}{each}"

    def more(self, grams: int, own: str) -> str:
        """How much more, of the loads that the room has, where today's is not known.

        Args:
            grams: how much more is asked.
            own: the rule's own amount in a sentence, for where the room can make it.
        """
        rises = self._rises(grams)
        if rises is None or (own and max(abs(one - grams) for one in rises) <= _ROUNDED_G):
            return own or "The next heavier one here."
        low, high = map(self._mass, rises)
        each = " in each hand" if self.slot.scale is not None and self.slot.scale.per_hand else ""
        more = low if low == high else f"{low} to {high}"
        return f"The next heavier one here, {more} more{each}."

    def _rises(self, grams: int) -> tuple[int, int] | None:
        """The least and the most that the next load may be above today's.

        None where that has no plain answer: nothing here is heavier, or only some steps are larger
        than what is asked.
        """
        scale = self.slot.scale
        masses = [] if scale is None else _masses(scale)
        if len(masses) < 2:
            return None
        gaps = [heavier - lighter for lighter, heavier in pairwise(masses)]
        least, most = min(gaps), max(gaps)
        if most - least <= _ROUNDED_G:
            middle = masses[len(masses) // 2 - 1]
            rise = (self.at(middle + grams).actual_g or middle) - middle
            return (rise, rise) if rise > 0 else (least, most)
        return (least, most) if least >= grams else None

    def warning(self, step: Mass | None) -> str:
        """What stands in the way of a step, or empty; None is the step to the next load."""
        scale = self.slot.scale
        if isinstance(self.slot.exercise.load, OnMachine):
            return "This machine has its own units: take its smallest step instead."
        grams = None if self.today is None else self.today.actual_g
        if grams is None and isinstance(self.slot.dose.load, FixedLoad):
            grams = self.slot.dose.load.mass.grams
        if grams is not None and grams < 0:
            return ""  # help is counted in whole units, and any band will do
        if scale is None or len(scale.steps) < 2:
            what = "is heavier" if step is None else f"goes up by {step.label}"
            return f"Nothing here {what}: the coach shows what is harder."
        gap = gap_above(scale, grams)
        if gap is None:
            return "This is the heaviest load here."
        if step is not None and gap > step.grams + scale.slack_g:
            each = " in each hand" if scale.per_hand else ""
            return (
                f"{_LOADS[scale.kind]} here go up by {self._mass(gap)}{each}, not by {step.label}."
            )
        total = (grams or 0) + (self.today.body_g if self.today else 0)
        rise = gap if step is None else step.grams
        jump = 100 * rise / total if grams else 0.0
        if jump > LARGE_JUMP:
            return f"The step is {jump:.0f} % of this load: expect fewer repetitions at first."
        return ""

    def _mass(self, grams: float) -> str:
        return f"{in_unit(round(grams), self.units)} {self.units}"


def gap_above(scale: Scale, grams: int | None) -> int | None:
    """From a load to the next heavier one; the scale's smallest gap where the load is not known.

    None where nothing is heavier.
    """
    masses = _masses(scale)
    if grams is None:
        return min((heavier - lighter for lighter, heavier in pairwise(masses)), default=None)
    place = bisect_right(masses, grams + scale.slack_g)
    return masses[place] - grams if place < len(masses) else None


def _masses(scale: Scale) -> list[int]:
    return [step.grams for step in scale.steps]
