"""Bands that take weight off a body-weight lift: which one for how much help."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from strength_handbook.model.dose import Dose
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.load import BodyWeight
from strength_handbook.model.loading import BodyWeightLift, Loading
from strength_handbook.model.resistance import Band
from strength_handbook.model.words import Hazard
from strength_handbook.plan.scale import Scale, Step

STEP_UP = 1.15
"""A band helps noticeably more from here on: two of one width may differ by less. Common practice,
no source."""


@dataclass(frozen=True, slots=True)
class HelpBand:
    """A band and how much it takes off, read at the bottom with a scale in the loop."""

    number: str
    grams: int


@dataclass(frozen=True, slots=True)
class Assisted:
    """The band of a dose, and the next one that makes it noticeably easier."""

    band: HelpBand
    easier: HelpBand | None


def takes_bands(exercise: Exercise) -> bool:
    """True for body-weight lifts in which members help themselves with a band."""
    return isinstance(exercise.load, BodyWeightLift) and Hazard.BAND in exercise.hazards


def help_bands(bands: Mapping[str, Band]) -> tuple[HelpBand, ...]:
    """Bands whose help was read, the weakest first."""
    read = (HelpBand(key, band.help.grams) for key, band in bands.items() if band.help is not None)
    return tuple(sorted(read, key=lambda band: (band.grams, band.number)))


def with_bands(scale: Scale | None, bands: tuple[HelpBand, ...]) -> Scale | None:
    """The loads of a body-weight lift with the bands that take weight off; one of equal bands.

    Args:
        scale: what is hung on; None where nothing is.
        bands: those to choose from.
    """
    weakest: dict[int, Step] = {}
    for band in bands:
        weakest.setdefault(band.grams, Step(-band.grams, (), band.number))
    if not weakest:
        return scale
    helps = tuple(weakest[grams] for grams in sorted(weakest))
    if scale is None:
        scale = Scale("hung", "", 0, per_hand=False, rounding="down", steps=(Step(0),))
    return replace(scale, helps=helps)


def next_easier(bands: Mapping[str, Band], number: str) -> HelpBand | None:
    """The next band that makes it noticeably easier; None for the strongest.

    A second band of the same width is no step: it may lie a little above by chance.
    """
    own = bands.get(number)
    if own is None or own.help is None:
        return None
    for band in help_bands(bands):
        width = bands[band.number].width
        twin = width is not None and width == own.width
        if not twin and band.grams >= STEP_UP * own.help.grams:
            return band
    return None


def with_help(dose: Dose, loading: Loading, bands: Mapping[str, Band]) -> Dose:
    """A dose that only names its band, with what that band takes off as its load."""
    assist = dose.said.assist
    if assist is None or assist.band is None or dose.load is not None:
        return dose
    band = bands.get(assist.band)
    if band is None or band.help is None or not isinstance(loading, BodyWeightLift):
        return dose
    return replace(dose, load=BodyWeight(band.help, -1))


def assisted(dose: Dose, bands: Mapping[str, Band]) -> Assisted | None:
    """The band that a dose names, where its help was read."""
    number = dose.said.assist.band if dose.said.assist is not None else None
    band = bands.get(number) if number is not None else None
    if number is None or band is None or band.help is None:
        return None
    return Assisted(HelpBand(number, band.help.grams), next_easier(bands, number))
