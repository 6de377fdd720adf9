"""Strip sets of the example lifters: their loads, their plates, and what a repetition moves."""

from collections.abc import Mapping
from dataclasses import replace

from strength_handbook.calc.repetitions import RepBand
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Dose
from strength_handbook.model.dose import StripSet as StripWork
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import BodyWeightLift, Loading, PushUp
from strength_handbook.model.methods import Strip
from strength_handbook.model.room import Room
from strength_handbook.plan.loads import PlannedLoad
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.strip_load import StripLoads
from strength_handbook.plan.strips import along_g, felt_g, strip_loads, strip_scale

FIRST_REPS = (8, 12)
"""Repetitions on the first load where nothing says how heavy it is. Common practice, no source."""


def loaded_for_strips(
    book: Book, exercise: Exercise, dose: Dose, scale: Scale | None
) -> Scale | None:
    """The loads of a dose; for strips, put together so that today's load is loaded once.

    Where a body moves along the plates depend on it, and each lifter has a stack of their own.
    """
    if scale is None or scale.table is None or not isinstance(dose.work, StripWork):
        return scale
    if depends_on_body(exercise.load, scale, dose.work.strip):
        return scale
    return strip_scale(scale, dose.work.strip, along_g(book.room, exercise.load, 0))


def depends_on_body(loading: Loading, scale: Scale, asked: Strip) -> bool:
    """True where plates come off that are a share of a load the body is part of."""
    of_body = isinstance(loading, BodyWeightLift | PushUp) and scale.table is not None
    return of_body and asked.drop.kind == "share"


def lifter_strips(
    book: Book, exercise: Exercise, dose: Dose, scale: Scale | None,
    loads: Mapping[str, PlannedLoad],
) -> dict[str, StripLoads | None]:  # fmt: skip
    """Strips of each example lifter whose load is known; None where the room allows none."""
    if not isinstance(dose.work, StripWork):
        return {}
    strip, height = dose.work.strip, dose.said.height
    return {
        name: strip_loads(
            book.room, exercise, scale, strip, planned.step.grams,
            book.lifters[name].bodyweight.grams, height,
        )
        if planned.step and not planned.help_g
        else None
        for name, planned in loads.items()
    }  # fmt: skip


def as_stripped(
    loads: Mapping[str, PlannedLoad], strips: Mapping[str, StripLoads | None]
) -> dict[str, PlannedLoad]:
    """The same loads from the plates that their strips need."""
    return {
        name: replace(load, step=replace(load.step, parts=known[0].parts))
        if load.step and (known := strips.get(name))
        else load
        for name, load in loads.items()
    }


def mean_moved_g(
    room: Room, exercise: Exercise, dose: Dose, loads: StripLoads, possible: RepBand | None,
    body_g: float,
) -> int:  # fmt: skip
    """What a repetition of a strip set moves on average, each at its own load.

    Repetitions that are only counted in all are shared out as they are to be expected.
    """
    assert isinstance(dose.work, StripWork)  # noqa: S101  # asked for strips only
    shares = [1.0] * len(loads)
    if dose.work.strip.reps is None:
        first = sum(first_reps(possible)) / 2
        expected = [(one.reps_low + one.reps_high) / 2 for one in loads[1:]]
        shares = [first, *(reps or first for reps in expected)]
    moved = (
        share * felt_g(room, exercise.load, one, body_g, dose.said.height)
        for share, one in zip(shares, loads, strict=True)
    )
    return round(sum(moved) / sum(shares))


def first_reps(possible: RepBand | None) -> tuple[int, int]:
    """Repetitions on the first load: by its percentage, else the usual ones."""
    if possible is None:
        return FIRST_REPS
    return max(1, round(possible.low)), max(1, round(possible.high))
