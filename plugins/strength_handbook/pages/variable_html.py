"""Bars with bands or chains, lifts with a band's help, and taking plates off in the rack, as HTML.

Kilograms in all are printed to the half, or to the whole pound: the readings give no more.
"""

from collections.abc import Iterable
from functools import cache
from html import escape

from strength_handbook.calc.registry import all_formulas
from strength_handbook.model.length import span_text
from strength_handbook.model.loading import OnBar
from strength_handbook.model.printed import bare_mass, mass, percent
from strength_handbook.model.quantities import GRAMS_PER_POUND, stamped
from strength_handbook.model.room import Room
from strength_handbook.pages.load_html import per_side_head, plates
from strength_handbook.plan.tables import base_strip
from strength_handbook.plan.tipover import RackPair, fits, pairs_off, unloading
from strength_handbook.plan.variable import OnTop, Variable
from strength_handbook.plan.worked import WorkedSlot


def half(kg: float, units: str) -> float:
    """Grams of a load to the half kilogram, or to the whole pound.

    >>> half(27.118, "kg"), round(half(27.118, "lb"))
    (27000.0, 27216)
    """
    # Sums of readings can end in a hair beside a half: 107.5 + 12.75 = 120.25000000000001.
    if units == "lb":
        return round(round(kg * 1000 / GRAMS_PER_POUND, 6)) * GRAMS_PER_POUND
    return round(round(kg * 2, 6)) * 500.0


@cache
def error_of(formula: str) -> str:
    """The stated error of a formula as a sentence; the list of formulas is its one place."""
    text = next(one.error for one in all_formulas() if one.id == formula)
    return text[:1].upper() + text[1:].removesuffix(".") + "."


def variable_words(
    variable: Variable, units: str, asked: OnTop | None = None, base_g: float = 0
) -> str:
    """What is on top of the plates, and what it comes to."""
    load, name = variable.load, _name(variable.what)
    share = f"{percent(round(load.top_share))} {name} there"
    if asked is not None and asked.needs_base and base_g:
        share = f"{percent(_share(asked, variable, base_g))} of the best in {name} there"
    return (
        f"with {escape(variable.what)} {mass(half(load.bottom, units), units)} at the bottom, "
        f"{bare_mass(half(load.middle, units), units)} half-way, "
        f"{bare_mass(half(load.top, units), units)} at the top "
        f"({share})"
    )


def variable_strip(slot: WorkedSlot, units: str) -> str:
    """Tested value, bar and plates, what hangs on it, and the load in all; empty where unknown."""
    asked, base = slot.on_top, slot.base
    if asked is None or base is None or slot.percent is None or slot.scale is None:
        return ""
    name = "bands" if asked.chain is None else "chains"
    rows = []
    for value, cell in base_strip(base, slot.scale, slot.percent).rows:
        step = cell.step
        variable = asked.on(step.grams / 1000, value / 1000) if step and step.grams else None
        if step is None or variable is None:
            continue
        load = variable.load
        rows.append(
            f'<tr><th scope="row">{bare_mass(value, units)}</th>'
            f"<td><b>{bare_mass(step.grams, units)}</b></td>"
            f"<td>{plates(slot.scale, step, units)}</td>"
            f"<td>{escape(_short(asked, variable))}</td>"
            f"<td>{bare_mass(half(load.bottom, units), units)} to "
            f"{bare_mass(half(load.top, units), units)}</td>"
            f"<td>{percent(_share(asked, variable, value))}</td></tr>"
        )
    heads = (
        f"your best, {units}", f"bar and plates, {units}", per_side_head(slot.scale), name,
        f"bottom to top, {units}", f"{name} at the top, of {_whole(asked)}",
    )  # fmt: skip
    head = "".join(f'<th scope="col">{one}</th>' for one in heads)
    return (
        f'<table class="sh-strip"><caption>{escape(base.name)}, {percent(slot.percent)} and {name}'
        f"</caption><thead><tr>{head}</tr></thead><tbody>{''.join(rows)}</tbody></table>"
        f'<p class="sh-note">{variable_note(asked, units)}</p>'
    )


def _whole(asked: OnTop) -> str:
    """What the printed share is a share of: the best where the dose's is, else what is lifted."""
    return "your best" if asked.needs_base else "the load there"


def _share(asked: OnTop, variable: Variable, base_g: float) -> int:
    """Percent that bands or chains are at the top; the same number on page and phone."""
    load = variable.load
    return round(
        load.top * load.top_share / (base_g / 1000) if asked.needs_base else load.top_share
    )


def bands_by_best(slot: WorkedSlot, units: str) -> str:
    """Which pair of bands hangs for which tested value, in a line; empty without a choice."""
    asked, base = slot.on_top, slot.base
    if asked is None or base is None or not asked.needs_base:
        return ""
    found: dict[str, tuple[int, int]] = {}
    for value, _ in base_strip(base, slot.scale, slot.percent or 0).rows:
        # The pair follows from the tested value; the load on the bar has no part in it.
        variable = asked.on(1.0, value / 1000)
        if variable is not None:
            pair = _short(asked, variable)
            found[pair] = (found.get(pair, (value, value))[0], value)
    spans = (
        f"{bare_mass(low, units)}"
        + (f" to {bare_mass(high, units)}" if high > low else "")
        + f": {pair}"
        for pair, (low, high) in found.items()
    )
    return f"Bands by your best, {units}: {'; '.join(spans)}."


def variable_note(asked: OnTop, units: str) -> str:
    """Why it is a range, and how far it can be trusted."""
    travel = asked.travel
    heights = span_text(travel.bottom, travel.top)
    if asked.chain is not None:
        metre = mass(2000 * asked.chain.mass_per_metre.kg, units)
        return (
            f"From the bottom to the top, since each pair adds {metre} for every metre of chain "
            f"off the floor; the bar goes from {heights}. {error_of('chain_load')}"
        )
    return (
        f"From the bottom to the top, since a band pulls more the longer it is; the bar goes from "
        f"{heights}. Each band counts with its own readings. {error_of('band_pull')}"
    )


def example_note(slot: WorkedSlot, name: str, units: str) -> str:
    """What stands after an example lifter's load: bands or chains on the bar."""
    variable = slot.variable.get(name)
    if variable is None:
        return ""
    base_g = slot.loads[name].reference_g if name in slot.loads else 0
    return f"; {variable_words(variable, units, slot.on_top, base_g)}"


def help_words(slot: WorkedSlot, units: str) -> str:
    """Which band takes weight off, and the next easier one."""
    found = slot.assisted
    if found is None:
        return ""
    text = (
        f"Band {found.band.number} takes about {mass(found.band.grams, units)} off at the bottom "
        "and less higher up."
    )
    if found.easier is None:
        return f"{text} There is no easier band."
    return f"{text} Easier: band {found.easier.number}, about {mass(found.easier.grams, units)}."


def pairs_words(pairs: Iterable[RackPair], units: str) -> str:
    """Plates in the order in which they come off, each left and right."""
    return ", ".join(
        f"<b>{stamped(pair.grams, units)} while somebody holds the bar</b>"
        if pair.hold
        else stamped(pair.grams, units)
        for pair in pairs
    )


def unloading_line(slot: WorkedSlot, room: Room) -> str:
    """How the heaviest example load comes off in the rack, in one line; empty where it is easy."""
    loading = slot.exercise.load
    if not isinstance(loading, OnBar) or loading.rack is None:
        return ""
    bar, rack = room.bars[loading.bar], room.racks[loading.rack]
    steps = [load.step for load in slot.loads.values() if load.step is not None]
    top = max(steps, key=lambda step: step.grams, default=None)
    if top is None or not top.parts or not fits(bar, rack):
        return ""
    order = pairs_off(unloading(bar, rack, room.plates, top.parts))
    first = ""
    if slot.on_top is not None:
        first = "bands off first, then " if slot.on_top.chain is None else "chains off first, then "
    return (
        f"Taking {mass(top.grams, room.units)} apart in the rack: {first}"
        f"{pairs_words(order, room.units)}; each off the left, then off the right."
    )


def _short(asked: OnTop, variable: Variable) -> str:
    what = variable.what
    if asked.chain is not None:
        return what.split(" of ")[0]
    return what.removeprefix("bands ").replace(" and ", ", ")


def _name(what: str) -> str:
    return "bands" if what.startswith("bands ") else "chains"
