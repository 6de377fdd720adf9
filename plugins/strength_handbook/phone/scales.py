"""A scale as a phone has it: every load with its parts, the way up to it, the plates there are."""

from collections.abc import Iterable
from typing import Any

from strength_handbook.model.book import Book
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import OnBar
from strength_handbook.phone.rack import rack_data
from strength_handbook.plan.ramps import ramp_to
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.scales import bar_table

Data = dict[str, Any]


def scale_data(book: Book, exercise: Exercise, scale: Scale) -> Data:
    """Every load of a scale, with its parts as places in the list of all parts."""
    parts = sorted({part for step in scale.steps for part in step.parts}, reverse=True)
    data: Data = {
        "kind": scale.kind,
        "on": scale.on,
        "own": scale.empty_g,
        "round": scale.rounding,
        "parts": parts,
        "steps": [[step.grams, *_places(parts, step.parts)] for step in scale.steps],
    }
    loading = exercise.load
    collars = 2 * book.room.bars[loading.bar].collar.grams if isinstance(loading, OnBar) else 0
    helps = [[-step.grams, step.band] for step in scale.helps]
    more: Data = {
        "helps": helps,
        "slack": scale.slack_g,
        "above": scale.above_g,
        "each": int(scale.per_hand),
        "collars": collars,
    }
    return data | {key: value for key, value in more.items() if value} | rack_data(book, loading)


def ramps_data(book: Book, exercise: Exercise, scale: Scale) -> Data:
    """Warm-up steps to every load: grams, repetitions, plates put on, plates taken off."""
    assert isinstance(exercise.load, OnBar)  # noqa: S101  # nothing else has ramps
    table = bar_table(book.room, exercise.load)
    parts = sorted({part for step in scale.steps for part in step.parts}, reverse=True)
    return {
        str(step.grams): [
            [one.grams, one.reps, _places(parts, one.added)]
            + ([_places(parts, one.off)] if one.off else [])
            for one in ramp_to(table, step.grams)
        ]
        for step in scale.steps
    }


def plates_data(scale: Scale, parts: list[int]) -> list[list[int]]:
    """Plates there are, heaviest first: place in the list of parts, and how many on one side."""
    table = scale.table
    assert table is not None  # noqa: S101  # asked for plates only
    counts: dict[int, int] = {}
    for size in table.sizes:
        counts[size.grams] = counts.get(size.grams, 0) + size.available(table.sides)
    known = [[parts.index(grams), count] for grams, count in counts.items() if grams in parts]
    return sorted(known)


def _places(parts: list[int], some: Iterable[int]) -> list[int]:
    return [parts.index(part) for part in some]
