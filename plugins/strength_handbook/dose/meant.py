"""Where a spelling is meant: what stands in the line before it, and what is done."""

from collections.abc import Callable
from dataclasses import dataclass

from strength_handbook.dose.kit import UNKNOWN, NamedKit
from strength_handbook.model.samples import unit


@dataclass(frozen=True, slots=True)
class There:
    """What a spelling may depend on beside its words.

    Attributes:
        sets: the line has its sets already.
        reps: and they are of repetitions.
        work: sets of repetitions, of seconds or of metres stand before it.
        counted: sets stand somewhere in the line.
        loaded: a mass on top of body weight stands somewhere in the line.
        heavy: a load stands before it.
        topped: today's best stands before it.
        kind: how the exercise is loaded; empty where nothing is known of it.
        jump: it is a jump.
        hands: how many weights are held, 0 where it is done without; None where that is unknown.
        kit: what of the room a dose may name.
    """

    sets: bool = False
    reps: bool = False
    work: bool = False
    counted: bool = False
    loaded: bool = False
    heavy: bool = False
    topped: bool = False
    kind: str = ""
    hands: int | None = None
    jump: bool = False
    kit: NamedKit = UNKNOWN

    @property
    def adds(self) -> bool:
        """A mass with a plus sign can be one on top of body weight."""
        return self.kind in ("", "body-weight")


Only = Callable[[There], bool]
"""Where something is meant."""


def behind_top(there: There) -> bool:
    """Only behind today's best."""
    return there.topped


def without_top(there: There) -> bool:
    """Only where no best of today stands before it."""
    return not there.topped


def for_jumps(there: There) -> bool:
    """Only for what is known to be a jump."""
    return there.jump


def not_for_jumps(there: There) -> bool:
    """Only for what is no jump, or may be none."""
    return not there.jump


def anywhere(_: There) -> bool:
    """In every line."""
    return True


def behind_sets(there: There) -> bool:
    """Only where the line has its sets already."""
    return there.sets


def before_sets(there: There) -> bool:
    """Only where the line has no sets yet."""
    return not there.sets


def behind_reps(there: There) -> bool:
    """Only where the line has sets of repetitions already."""
    return there.reps


def not_behind_work(there: There) -> bool:
    """Only where no sets with what is done in them stand before it, for what is not rowed or run.

    Of that a time is the work.
    """
    return not there.work and not to_go(there)


def behind_work(there: There) -> bool:
    """Only behind sets of repetitions, seconds or metres."""
    return there.work


def behind_one_hand(there: There) -> bool:
    """Only behind sets of what is surely done with one weight in a hand."""
    return there.work and there.hands == 1


def behind_load(there: There) -> bool:
    """Only behind sets with their load."""
    return there.work and there.heavy


def without_sets(there: There) -> bool:
    """Only where no sets stand in the line."""
    return not there.counted


def not_on_body(there: There) -> bool:
    """Only where no mass can be put on top of body weight."""
    return not there.adds


def on_body(there: There) -> bool:
    """Only where a mass can be put on top of body weight."""
    return there.adds


def off_body_behind_sets(there: There) -> bool:
    """Only where no mass can be put on top of body weight, behind sets."""
    return there.sets and not there.adds


def to_go(there: There) -> bool:
    """Only for what is rowed, run or ridden."""
    return there.kind == "endurance"


def to_go_first(there: There) -> bool:
    """The same, before any sets."""
    return to_go(there) and not there.sets


def not_to_go(there: There) -> bool:
    """Only for what is not rowed, run or ridden, or may not be."""
    return not to_go(there)


def of_kind(*kinds: str) -> Only:
    """Only for exercises that are loaded so, or of which nothing is known."""
    return lambda there: there.kind in ("", *kinds)


def surely_of_kind(*kinds: str) -> Only:
    """Only for exercises that are known to be loaded so."""
    return lambda there: there.kind in kinds


def weighed(there: There) -> bool:
    """Only for what is known to be loaded with a bar, weights in the hands or a stack."""
    return there.kind in ("bar", "hands", "stack")


def weighed_behind_work(there: There) -> bool:
    """The same, behind sets of repetitions, seconds or metres."""
    return there.work and weighed(there)


def not_weighed(there: There) -> bool:
    """Only for what may be loaded in another way, and is not rowed or run."""
    return not weighed(there) and not to_go(there)


def weights_to_come(there: There) -> bool:
    """Only for what is surely done with two weights, behind work and before any load."""
    return there.work and not there.heavy and surely_two_weights(there)


def pounds_to_come(there: There) -> bool:
    """The same in a room of pounds, where most weights have a number of two digits."""
    return unit() == "lb" and weights_to_come(there)


def two_weights(there: There) -> bool:
    """Only for what is done, or may be done, with a weight in each hand."""
    return there.hands in (None, 2)


def two_weights_behind_sets(there: There) -> bool:
    """The same, and only where the line has its sets already."""
    return there.sets and two_weights(there)


def two_weights_behind_reps(there: There) -> bool:
    """Only for what is surely done with a weight in each hand, behind sets of repetitions."""
    return there.reps and surely_two_weights(there)


def surely_two_weights(there: There) -> bool:
    """Only for what is done with a weight in each hand."""
    return there.hands == 2


def not_two_weights(there: There) -> bool:
    """Only for what is not done with a weight in each hand."""
    return there.hands not in (None, 2)


def not_two_weights_behind_sets(there: There) -> bool:
    """The same, and only where the line has its sets already."""
    return there.sets and not_two_weights(there)


def not_surely_two_weights(there: There) -> bool:
    """Only for what is not done, or may not be done, with a weight in each hand."""
    return there.hands != 2


def loaded(there: There) -> bool:
    """Only where a mass on top of body weight stands in the line."""
    return there.loaded and there.adds


def not_loaded(there: There) -> bool:
    """Only where a mass could be put on top of body weight, and none stands in the line."""
    return there.adds and not there.loaded


def not_of_kind(*kinds: str) -> Only:
    """Only for exercises that are known to be loaded in another way."""
    return lambda there: there.kind not in ("", *kinds)
