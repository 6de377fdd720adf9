"""The lists that all pages of a site pick from on a phone: loads with their plates, ramps, strips.

They go into one file. A list is named after what is in it, so that a page of one publication never
picks from the lists of another: a name that is not there is a file that does not fit.
"""

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from hashlib import sha256
from typing import Any

from strength_handbook.calc.bands import band_pull
from strength_handbook.calc.chains import chain_load
from strength_handbook.model.book import Book
from strength_handbook.model.dose import StripSet
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import OnBar
from strength_handbook.model.methods import Strip
from strength_handbook.model.program import Base
from strength_handbook.plan.doors import DOORS
from strength_handbook.plan.help import NEAR_ENOUGH, help_bands
from strength_handbook.plan.ladder import REST_S, SETS
from strength_handbook.plan.method_plan import method_plan
from strength_handbook.plan.ramps import ramp_to
from strength_handbook.plan.scales import Scale, bar_table
from strength_handbook.plan.strips import rack_of, strip_set, with_tip_check
from strength_handbook.plan.variable import OnTop, calc_chain, chain_words
from strength_handbook.plan.worked import Worked, WorkedSlot

SCHEMA = 1
MICROGRAMS_PER_KG = 1e9

Data = dict[str, Any]
Key = tuple[Any, ...]


def millionths(percent: float) -> int:
    """A percentage in millionths: products of two percentages still come out whole.

    >>> millionths(77.5), millionths(82.5 * 92.5 / 100)
    (77500000, 76312500)
    """
    return round(percent * 1_000_000)


@dataclass(eq=False)
class PhoneLists:
    """The lists, and how each is called.

    Attributes:
        bases: tested values of all programs, by id.
        scale_ids: name of each scale's list.
        data: everything, as it goes into the file.
    """

    bases: Mapping[str, Base]
    scale_ids: Mapping[Scale, str]
    data: Data
    strips: Mapping[Key, str] = field(default_factory=dict)
    on_top: Mapping[Key, str] = field(default_factory=dict)

    def strip_id(self, slot: WorkedSlot) -> str:
        """Name of the list of a slot's strips on a bar."""
        return self.strips[_strip_key(slot)]

    def on_top_id(self, slot: WorkedSlot) -> str | None:
        """Name of the list of a slot's bands or chains; None where it has none."""
        return None if slot.on_top is None else self.on_top[_on_top_key(slot)]


def phone_lists(worked: Worked) -> PhoneLists:
    """All lists of a site."""
    book = worked.book
    bases = {key: one for p in worked.programs for key, one in p.program.bases.items()}
    scales: dict[Scale, Data] = {}
    for key, scale in worked.scales.items():
        if scale is not None and scale not in scales:
            scales[scale] = scale_data(book, book.exercises[key], scale)
    strips: dict[Key, Data] = {}
    on_top: dict[Key, Data] = {}
    for use in (use for several in worked.uses.values() for use in several):
        slot, scale = use.slot, use.slot.scale
        if scale is None:
            continue
        ramps = method_plan(book, slot, use.session, use.week).ramps
        if ramps is not None and ramps.percent is not None and "ramps" not in scales[scale]:
            scales[scale]["ramps"] = _ramps(book, slot.exercise, scale)
        if isinstance(slot.dose.work, StripSet) and isinstance(slot.exercise.load, OnBar):
            asked = slot.dose.work.strip
            strips.setdefault(_strip_key(slot), _strips(book, slot.exercise, scale, asked))
        if slot.on_top is not None and (key_ := _on_top_key(slot)) not in on_top:
            on_top[key_] = on_top_data(slot.on_top, scale)
    named: dict[str, dict[str, Data]] = {"scales": {}, "strips": {}, "on_top": {}}
    scale_ids = {key: _named(named["scales"], one) for key, one in scales.items()}
    strip_ids = {key: _named(named["strips"], one) for key, one in strips.items()}
    on_top_ids = {key: _named(named["on_top"], one) for key, one in on_top.items()}
    data = {
        "schema": SCHEMA,
        "units": book.room.units,
        "show_planned_from": millionths(book.rule("show-planned-from")),
        "doors": [name for _, name in DOORS],
        "test_reps": [[low, high] for low, high, *_ in SETS],
        "test_rest": [one // 60 for one in REST_S],
        "help": [[band.number, band.grams] for band in help_bands(book.room.bands)],
        "near_enough": millionths(NEAR_ENOUGH),
        "bases": {key: [one.name, one.kind] for key, one in bases.items()},
        **named,
    }
    return PhoneLists(bases, scale_ids, data, strip_ids, on_top_ids)


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
    more = {"slack": scale.slack_g, "each": int(scale.per_hand), "collars": collars}
    return data | {key: value for key, value in more.items() if value}


def _places(parts: list[int], some: Iterable[int]) -> list[int]:
    return [parts.index(part) for part in some]


def _ramps(book: Book, exercise: Exercise, scale: Scale) -> Data:
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


def _strip_key(slot: WorkedSlot) -> Key:
    work = slot.dose.work
    assert isinstance(work, StripSet)  # noqa: S101  # asked for strips only
    return slot.exercise_id, work.strip.loads, work.strip.drop


def _strips(book: Book, exercise: Exercise, scale: Scale, asked: Strip) -> Data:
    """Loads of a strip set from every first load: grams, whether to hold the bar, plates off.

    The first load has all its plates there instead, inner to outer.
    """
    load = exercise.load
    assert isinstance(load, OnBar)  # noqa: S101  # others are picked by the phone itself
    table, rack = bar_table(book.room, load), rack_of(book.room, exercise)
    found: Data = {"rack": rack.name} if rack else {}
    for step in scale.steps:
        loads = strip_set(table, asked, step.grams)
        if loads and rack:
            loads = with_tip_check(book.room.bars[load.bar], rack, book.room.plates, loads)
        if loads:
            found[str(step.grams)] = [
                [round(one.amount), int(one.hold), *(one.off if one.off else one.parts)]
                for one in loads
            ]
    return found


def _on_top_key(slot: WorkedSlot) -> Key:
    said = slot.dose.said
    return slot.exercise_id, repr(said.bands), repr(said.chains)


def on_top_data(asked: OnTop, scale: Scale) -> Data:
    """What bands or chains add at the bottom, half-way and at the top, in micrograms of pull.

    Pairs of bands stand in the order in which equally good ones are taken, with the pull by which
    they are chosen; pairs of chains by their number, with the number for each load.
    """
    travel = asked.travel
    heights = (travel.bottom, (travel.bottom + travel.top) / 2, travel.top)
    if asked.chain is None or asked.chains is None:
        pairs = sorted(asked.pairs, key=lambda pair: (pair.mismatch, pair.left, pair.right))
        return {
            "bands": [
                [
                    f"bands {pair.left} and {pair.right}",
                    _micrograms(pair.top_pull),
                    *(
                        _micrograms(
                            sum(band_pull(asked.curves[one], h) for one in (pair.left, pair.right))
                        )
                        for h in heights
                    ),
                ]
                for pair in pairs
            ]
        }
    chain = calc_chain(asked.chain)
    loads = [step.grams for step in scale.steps if step.grams]
    numbers = [asked.chain_pairs(grams / 1000) for grams in loads]
    pulls = [2 * chain_load(chain, height) for height in heights]
    return {
        "chains": [
            [chain_words(asked.chain, number), *(_micrograms(number * one) for one in pulls)]
            for number in range(max(numbers, default=0) + 1)
        ],
        "pairs": numbers,
    }


def _micrograms(kg: float) -> int:
    return round(kg * MICROGRAMS_PER_KG)


def _named(shelf: dict[str, Data], one: Data) -> str:
    """Put a list on its shelf under a name that follows from what is in it."""
    text = json.dumps(one, sort_keys=True, ensure_ascii=False)
    digest = sha256(text.encode()).hexdigest()
    for length in range(4, len(digest) + 1):
        name = digest[:length]
        if shelf.setdefault(name, one) == one:
            break
    return name
