"""Which hazards a week's dose brings: bands, chains and pins where they are in it, and first."""

from collections.abc import Iterable

from strength_handbook.model.dose import Dose
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import OnBar
from strength_handbook.model.words import CAUTIONS, ON_TOP_STEPS, Hazard


def brought_by(dose: Dose) -> tuple[Hazard, ...]:
    """Hazards that follow from the dose alone."""
    said = dose.said
    asked = {
        Hazard.BAND: said.bands is not None or (said.assist is not None and said.assist.band),
        Hazard.CHAIN: said.chains is not None,
        Hazard.PUSH_ON_PINS: said.push is not None,
    }
    return tuple(hazard for hazard, there in asked.items() if there)


def hazards_of(exercise: Exercise, dose: Dose) -> tuple[Hazard, ...]:
    """Hazards of an exercise in one week, those of the dose first.

    Bands and chains that an exercise has in other weeks only are left out.
    """
    first = brought_by(dose)
    apart = {Hazard.BAND, Hazard.CHAIN} if isinstance(exercise.load, OnBar) else set()
    return (*first, *(one for one in exercise.hazards if one not in first and one not in apart))


def cautions_of(exercise: Exercise, doses: Iterable[Dose]) -> tuple[str, ...]:
    """Cautions of an exercise for some doses: what they bring first, then the rest."""
    several = tuple(doses)
    first = dict.fromkeys(hazard for dose in several for hazard in brought_by(dose))
    then = dict.fromkeys(hazard for dose in several for hazard in hazards_of(exercise, dose))
    return (*(CAUTIONS[one] for one in {**first, **then}), *exercise.cautions)


def set_up_steps(dose: Dose) -> tuple[str, ...]:
    """What the dose adds to the set-up of the exercise."""
    hung = {Hazard.BAND: dose.said.bands, Hazard.CHAIN: dose.said.chains}
    return tuple(ON_TOP_STEPS[hazard] for hazard, there in hung.items() if there is not None)
