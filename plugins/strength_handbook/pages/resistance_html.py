"""What stands on an exercise's page for levers, body shares, sleds and bands: kilos at the hands.

Under each table stands how far its numbers can be trusted; the list of formulas says why.
"""

from collections.abc import Sequence
from html import escape

from strength_handbook.calc.bands import band_pull
from strength_handbook.calc.bodyweight import melrose_dawes_2015_row
from strength_handbook.calc.cable import cable_pull
from strength_handbook.calc.push_up import back_load_leverage, ebben_2011_push_up, push_up_load
from strength_handbook.model.length import length_text, span_text
from strength_handbook.model.loading import (
    BodyWeightLift,
    OnBar,
    OnCarrier,
    OnPivot,
    OnStack,
    PushUp,
    StrapRow,
)
from strength_handbook.model.printed import NBSP, bare_mass, mass
from strength_handbook.model.quantities import GRAMS_PER_POUND
from strength_handbook.model.room import Room
from strength_handbook.pages.variable_html import error_of, half
from strength_handbook.plan.help import help_bands, takes_bands
from strength_handbook.plan.pivot import at_the_hands
from strength_handbook.plan.scale import Scale, Step
from strength_handbook.plan.tables import body_masses
from strength_handbook.plan.variable import band_curves, fitting_pairs
from strength_handbook.plan.worked import Worked

MOST_ROWS = 14
"""Rows of the table for a pivot."""
HEAVIEST_ON_PIVOT_G = 60_000
BACK_PLATE = 0.15
"""Middle of a plate on the shoulder blades below the shoulder line, m."""


def resistance_html(worked: Worked, key: str) -> str:
    """The tables of an exercise whose load depends on a lever, an angle or a band; else empty."""
    exercise, room = worked.book.exercises[key], worked.book.room
    match exercise.load:
        case OnPivot() as pivot:
            return _pivot(pivot, worked.scales[key], room)
        case PushUp() as push_up:
            return _push_up(push_up, room.units)
        case StrapRow() as row:
            return _strap_row(row, room.units)
        case OnStack(stack=stack) if room.stacks[stack].ratio != 1:
            return _stack(room.stacks[stack].ratio, worked.scales[key], room.units)
        case OnCarrier():
            return _carrier(worked.scales[key], room.units)
        case BodyWeightLift() if takes_bands(exercise):
            return _help(room)
        case OnBar(travel=travel) as bar if travel is not None and any(
            use.slot.on_top is not None and use.slot.on_top.chain is None
            for use in worked.uses.get(key, ())
        ):
            return _pairs(bar, room)
        case _:
            return ""


def _pivot(loading: OnPivot, scale: Scale | None, room: Room) -> str:
    bar, pivot, reach = room.bars[loading.bar], room.pivots[loading.pivot], loading.reach
    units = room.units
    rows = []
    for step in _some(scale.steps if scale else (), units):
        hands = at_the_hands(bar, pivot, reach, room.plates, step.parts)
        rows.append(
            (
                bare_mass(step.grams, units) if step.grams else "bare bar",
                [
                    bare_mass(half(kg, units), units)
                    for kg in (hands.vertical_kg, hands.bottom_kg, hands.top_kg)
                ],
            )
        )
    caption = (
        f"In the hands, {units}: {escape(bar.name)} in the {escape(pivot.name)}, hands "
        f"{length_text(reach.grip)} from its end, from {span_text(reach.bottom, reach.top)} high"
    )
    heads = (f"plates, {units}", "straight up", "square, bottom", "square, top")
    note = (
        "Two ways to push make a range. Straight up, it is the same at every height; square to "
        "the bar it gets lighter as the bar rises. Most pushes lie between the two. "
        + error_of("landmine_vertical")
    )
    return _grid(caption, heads, rows, note)


def _stack(ratio: float, scale: Scale | None, units: str) -> str:
    """What the handle pulls of what is on the pin, with an example from the middle of the stack."""
    if scale is None or not scale.steps:
        return ""
    pin = scale.steps[len(scale.steps) // 2].grams
    pull = mass(half(cable_pull(pin, ratio) / 1000, units), units)
    return (
        f"<p>All loads here are what is on the pin. {mass(pin, units)} on the pin pull about "
        f"{pull} at the handle. "
        f"{error_of('cable_pull')}</p>"
    )


def _some(steps: Sequence[Step], units: str) -> list[Step]:
    """A few steps to read off, evenly spaced: every one is a load that exists."""
    gram = GRAMS_PER_POUND if units == "lb" else 1000
    few = [step for step in steps if step.grams <= HEAVIEST_ON_PIVOT_G]
    for spacing in (2.5, 5, 10, 20):
        if len(few) <= MOST_ROWS:
            break
        raster = spacing * gram
        few = [s for s in few if abs(s.grams - raster * round(s.grams / raster)) < 10]
    return few[:MOST_ROWS]


def _push_up(loading: PushUp, units: str) -> str:
    columns = [(f"hands {_cm(height)}", ebben_2011_push_up(height)) for height in loading.hands]
    columns += [(f"feet {_cm(height)}", ebben_2011_push_up(-height)) for height in loading.feet]
    rows = _by_body(
        [[push_up_load(kg, share) for _, share in columns] for kg in _body_kg(units)], units
    )
    note = (
        "Heights are those of hands or feet above the floor; the whole numbers are percent of "
        f"body weight. {error_of('ebben_2011_push_up')} A steady pace; a fast push peaks far "
        "higher."
    )
    if loading.plate_limit is not None:
        limit = loading.plate_limit
        counts = min(1.0, back_load_leverage(BACK_PLATE) * ebben_2011_push_up(0.0) / 100)
        note += (
            f" A plate on the shoulder blades, {limit.label} at most, counts about "
            f"{round(100 * counts)} % of its mass at the hands when they are on the floor."
        )
    heads = (f"body, {units}", *(f"{name}: {share:.0f} %" for name, share in columns))
    return _grid(f"What the hands push, {units}", heads, rows, note)


def _strap_row(loading: StrapRow, units: str) -> str:
    shares = [melrose_dawes_2015_row(angle) for angle in loading.angles]
    rows = _by_body([[kg * share / 100 for share in shares] for kg in _body_kg(units)], units)
    heads = (
        f"body, {units}",
        *(f"{a:g}°: {s:.0f} %" for a, s in zip(loading.angles, shares, strict=True)),
    )
    note = (
        "Angles are those of the body from upright, feet under the anchor; the whole numbers are "
        f"percent of body weight. {error_of('melrose_dawes_2015_row')}"
    )
    return _grid(f"What the straps carry, {units}", heads, rows, note)


def _carrier(scale: Scale | None, units: str) -> str:
    if scale is None:
        return ""
    name = escape(scale.on)
    return (
        f'<p class="sh-note">The load is the {name} and its plates together; the {name} alone '
        f"weighs {mass(scale.empty_g, units)}. How hard it drags depends on the floor and on the "
        "weather too, so the same load is no measure between two places. No error can be stated: "
        "go by pace and effort.</p>"
    )


def _help(room: Room) -> str:
    bands = help_bands(room.bands)
    if not bands:
        return ""
    rows = [(band.number, [mass(band.grams, room.units)]) for band in bands]
    note = (
        "Read at the bottom, with a scale in the loop. Higher up a band helps less, so the load "
        "on the way is a range; take the number of the band as your measure."
    )
    return _grid("What one band takes off", ("band", "at the bottom"), rows, note)


def _pairs(loading: OnBar, room: Room) -> str:
    travel, units = loading.travel, room.units
    if travel is None:
        return ""
    curves = band_curves(room.bands)
    pairs = sorted(fitting_pairs(curves, travel), key=lambda pair: (pair.top_pull, pair.left))
    rows = []
    for pair in pairs[:MOST_ROWS]:
        low, high = (
            sum(band_pull(curves[name], height) for name in (pair.left, pair.right))
            for height in (travel.bottom, travel.top)
        )
        pulls = [bare_mass(half(kg, units), units) for kg in (low, high)]
        rows.append((f"{pair.left}, {pair.right}", [*pulls, f"{pair.mismatch:.0f}\u00a0%"]))
    caption = (
        f"Bands on this bar, both sides together, {units}: bar {_cm(travel.bottom)} to "
        f"{_cm(travel.top)} high"
    )
    heads = ("pair", "at the bottom", "at the top", "left to right")
    note = "Only pairs that are taut at the bottom and differ by a tenth at most. " + error_of(
        "band_pull"
    )
    return _grid(caption, heads, rows, note)


def _body_kg(units: str) -> list[float]:
    return [grams / 1000 for grams in body_masses(units)]


def _by_body(loads: list[list[float]], units: str) -> list[tuple[str, list[str]]]:
    return [
        (bare_mass(grams, units), [bare_mass(half(kg, units), units) for kg in row])
        for grams, row in zip(body_masses(units), loads, strict=True)
    ]


def _grid(
    caption: str, heads: Sequence[str], rows: Sequence[tuple[str, Sequence[str]]], note: str
) -> str:
    """A table with a line under it; heads, rows and note are ready HTML."""
    head = "".join(f'<th scope="col">{name}</th>' for name in heads)
    body = "".join(
        f'<tr><th scope="row">{name}</th>{"".join(f"<td>{cell}</td>" for cell in cells)}</tr>'
        for name, cells in rows
    )
    return (
        f'<table class="sh-grid"><caption>{caption}</caption><thead><tr>{head}</tr></thead>'
        f'<tbody>{body}</tbody></table><p class="sh-note">{note}</p>'
    )


def _cm(height: float) -> str:
    return length_text(height, "cm", gap=NBSP) if height else "on the floor"
