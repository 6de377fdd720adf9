"""How heavy, in plain words that end a sentence."""

from collections.abc import Iterator

from strength_handbook.model.dose import DosePart
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.load import (
    BodyWeight,
    FixedLoad,
    Load,
    PercentOfBase,
    PercentOfBodyMass,
    PercentOfSystem,
    PercentOfTop,
    PercentOfTrainingMax,
    RepMax,
    Setting,
)
from strength_handbook.model.loading import InHands, OnBar
from strength_handbook.pages.numbers import count_word


def load_in_words(load: Load | None, exercise: Exercise) -> str:
    """The load as the end of a sentence, or nothing where effort alone decides."""
    match load:
        case None:
            return ""
        case PercentOfBase(percent):
            return f"at {percent:g} % of your best single"
        case PercentOfSystem(percent):
            return f"at {percent:g} % of your best total, body included"
        case PercentOfBodyMass(percent):
            return f"with {percent:g} % of your body weight{_where(exercise)}"
        case FixedLoad(mass):
            return f"with {mass.label}{_where(exercise)}"
        case BodyWeight(change, sign):
            if not change.grams:
                return "with body weight only"
            return f"with {change.label} {'added' if sign > 0 else 'taken off'}"
        case RepMax(reps):
            return f"with a load you could lift {count_word(reps)} times"
        case PercentOfTop(percent):
            return f"at {percent:g} % of it"
        case PercentOfTrainingMax(percent):
            return f"at {percent:g} % of your training max"
        case Setting(value):
            return f"at {value:g} on the machine"


def _where(exercise: Exercise) -> str:
    if isinstance(exercise.load, InHands | OnBar):
        if exercise.load.hands == 2:
            return " in each hand"
        if exercise.load.hands == 1:
            return " in one hand"
    return " on your back" if getattr(exercise.load, "carrier", None) == "pack" else ""


def on_top_in_words(said: DosePart) -> Iterator[str]:
    """What bands and chains add, in sentences of their own."""
    if said.bands is not None:
        if said.bands.top_share is not None:
            yield f"Bands add {said.bands.top_share:g} % of your best at the top"
        else:
            left, right = said.bands.pair
            yield f"Hang band {left} on the left and {right} on the right"
    if said.chains is not None:
        if said.chains.pairs is not None:
            pairs = "pair" if said.chains.pairs == 1 else "pairs"
            yield f"Hang {count_word(said.chains.pairs)} {pairs} of chains on the bar"
        else:
            yield f"Chains make {said.chains.top_share:g} % of the load at the top"
