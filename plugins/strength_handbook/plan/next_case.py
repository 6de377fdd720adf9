"""One slot and its rule for going on; a result with what follows from it."""

from dataclasses import dataclass

from strength_handbook.model.dose import Dose
from strength_handbook.model.progress import Progress
from strength_handbook.model.quantities import in_unit
from strength_handbook.plan.loads import PlannedLoad
from strength_handbook.plan.next_load import LoadMove, NextLoad
from strength_handbook.plan.next_written import next_number
from strength_handbook.plan.worked import WorkedSlot


@dataclass(frozen=True, slots=True)
class Outcome:
    """One result and what follows from it.

    Attributes:
        when: the result, as a clause: 'Every set done'.
        then: what to do next time, in a sentence.
        load: the load of the next time, where it is known.
        move: how that load follows from today's; None where it stays.
        dose: the next time's dose, where it is gone at another pace.
    """

    when: str
    then: str
    load: PlannedLoad | None = None
    move: LoadMove | None = None
    dose: Dose | None = None


@dataclass(frozen=True, slots=True)
class Case:
    """One slot, its rule and one lifter.

    Attributes:
        slot: the slot as it is done today.
        rule: its rule.
        next: steps from the lifter's load.
        following: the same slot the next time.
        later: the lifter's load in it.
    """

    slot: WorkedSlot
    rule: Progress
    next: NextLoad
    following: WorkedSlot | None
    later: PlannedLoad | None

    @property
    def today(self) -> PlannedLoad | None:
        """The lifter's load as it is done today."""
        return self.next.today

    def again(self, when: str = "Otherwise", then: str = "The same again.") -> Outcome:
        """The result after which nothing changes."""
        return Outcome(when, then, self.today)

    def more(self, when: str, steps: int = 1) -> Outcome:
        """The result after which the load goes up by steps."""
        step = self.rule.step
        if step is None and not self.rule.next_load:
            return Outcome(when, "One step more.")
        # The smallest amount there is leads to the next load, whatever the gap.
        grams = 1 if step is None else steps * step.grams
        load, move = self.next.raised(grams), LoadMove("up", grams)
        if load is not None:
            return Outcome(when, f"{capital(self.next.text(load))}.", load, move)
        own = "" if step is None else f"{in_unit(grams, step.unit)} {step.unit} more."
        return Outcome(when, self.next.more(grams, own), load, move)

    def written(self, when: str, by_rule: str, written: str) -> Outcome:
        """The rule's number, or the next time's own with its load."""
        then = next_number(self.slot, self.following, by_rule, written)
        if by_rule == written:
            return Outcome(when, then, self.today)
        return Outcome(when, then, self.later, LoadMove("later"))

    def less(self) -> Outcome:
        """The result after which the load goes back."""
        count = self.rule.misses
        when = "Missed once" if count == 1 else f"Missed {times(count)} in a row"
        load = self.next.lowered()
        what = "" if load is None else f": {self.next.text(load)}"
        return Outcome(when, f"Go back by a tenth{what}.", load, LoadMove("down"))


def times(number: int) -> str:
    """So many times, in words."""
    return {1: "once", 2: "twice", 3: "three times"}.get(number, f"{number} times")


def capital(sentence: str) -> str:
    """A sentence with a capital letter."""
    return sentence[:1].upper() + sentence[1:]
