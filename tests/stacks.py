"""Everybody who may come to a bar, and the one stack of plates that each load has there."""

import re
from dataclasses import replace

from strength_handbook.model.book import Book
from strength_handbook.model.lifter import Lifter
from strength_handbook.model.loading import OnBar
from strength_handbook.model.printed import bare_mass
from strength_handbook.model.quantities import GRAMS_PER_POUND, Mass
from strength_handbook.plan.worked import Worked

BESTS = {
    "kg": [Mass(grams) for grams in range(40_000, 240_001, 2_500)],
    "lb": [Mass(round(lb * GRAMS_PER_POUND), "lb") for lb in range(90, 531, 5)],
}
BODY = 75_000
"""Grams of everybody's body."""
Stack = tuple[str, ...]
"""Plates of one side as printed, inner to outer."""


def everybody(book: Book, step: int = 1) -> Book:
    """The same book with a lifter for every tested value; all of one's values are the same."""
    bases = sorted({key for one in book.programs for key in one.program.bases})
    people = {
        f"B{place}": Lifter.model_construct(bodyweight=Mass(BODY), bases=dict.fromkeys(bases, m))
        for place, m in enumerate(BESTS[book.room.units])
        if place % step == 0
    }
    return replace(book, lifters=people)


def printed(text: str) -> Stack:
    """Plates out of a cell or a line: ``25 · 10``; the empty bar has none."""
    return tuple(re.findall(r"\d+(?:\.\d+)?", text))


def stacks_of(worked: Worked) -> dict[tuple[str, str], Stack]:
    """Of each lift on a bar the stack of each load, as printed: what all else is picked from."""
    units = worked.book.room.units
    return {
        (lift, bare_mass(step.grams, units)): tuple(bare_mass(one, units) for one in step.parts)
        for lift, scale in worked.scales.items()
        if scale is not None and isinstance(worked.book.exercises[lift].load, OnBar)
        for step in scale.steps
    }
