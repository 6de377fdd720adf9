"""Loads, strips and tables as HTML.

Written with plain string building and cached per table: these are thousands of small cells.
"""

from html import escape

from strength_handbook.model.printed import NBSP, bare_mass, mass, percent, planned_mass
from strength_handbook.model.quantities import stamped
from strength_handbook.plan.loads import PlannedLoad
from strength_handbook.plan.remembered import remembered
from strength_handbook.plan.scale import Scale, Step
from strength_handbook.plan.tables import LookUp, Table, TableCell

DASH = "–"


def plates(scale: Scale, step: Step, units: str) -> str:
    """How a step is put together, in short: ``25 · 10 · 1.25`` a side, a pin, a pair."""
    parts = " · ".join(stamped(grams, units) for grams in step.parts)
    match scale.kind:
        case "bar":
            return parts or "empty"
        case "pin":
            head = f"pin {stamped(step.parts[0], units)}" if step.parts else ""
            return f"{head} + {stamped(step.parts[1], units)}" if len(step.parts) > 1 else head
        case "hung":
            return parts or ("empty" if step.grams else "nothing")
        case "pivot":
            return parts or "bare bar"
        case "fixed" | "plate":
            return ""


def per_side_head(scale: Scale | None) -> str:
    """Head of the column that says how loads are put together, as HTML."""
    if scale is None or not scale.on:
        return ""
    return {
        "bar": f"plates each side of the {escape(scale.on)}",
        "pin": "pin",
        "hung": f"plates on the {escape(scale.on)}",
        "pivot": f"plates on the free end of the {escape(scale.on)}",
        "fixed": "",
        "plate": "",
    }[scale.kind]


def load_line(
    load: PlannedLoad, scale: Scale | None, units: str, show_planned_from: float = 1
) -> str:
    """One lifter's load in a line: kilos, plates, and the plan where it differs.

    The plan is shown where the percentages differ by more than `show_planned_from` points.
    """
    text = _amount(load, scale, units)
    actual, planned = load.actual_percent, load.planned_percent
    if actual is not None and planned is not None and abs(actual - planned) > show_planned_from:
        text += (
            f'<span class="sh-note"> planned {planned_mass(load.planned_g, units)}, '
            f"this is {percent(actual)}</span>"
        )
    return text


def _amount(load: PlannedLoad, scale: Scale | None, units: str) -> str:
    if load.band:
        return f"<b>band {load.band}</b>, about {mass(load.help_g, units)} off"
    if load.help_g:
        strongest = (
            f"; more than any one band here ({scale.helps[-1].band})"
            if (scale is not None and scale.helps)
            else ""
        )
        return f"<b>{mass(load.help_g, units)}</b> of help{strongest}"
    if load.step is None:
        if scale is not None and scale.steps and load.planned_g < scale.lightest_g:
            lightest = mass(scale.lightest_g, units)
            return f"planned {planned_mass(load.planned_g, units)}; the lightest here is {lightest}"
        return f"planned {planned_mass(load.planned_g, units)}"
    if scale is not None and scale.kind == "pivot" and not load.step.grams:
        return "<b>bare bar</b>"
    if load.body_g or scale is None:
        if not load.step.grams:
            return "<b>body weight</b>"
        how = plates(scale, load.step, units) if scale else ""
        return f"<b>+{mass(load.step.grams, units)}</b>" + (f" – {how}" if how else "")
    each = " in each hand" if scale and scale.per_hand else ""
    how = plates(scale, load.step, units) if scale else ""
    if scale is not None and scale.kind == "bar" and load.step.parts:
        how = f"{how} each side"
    return f"<b>{mass(load.step.grams, units)}</b>{each}" + (f" – {how}" if how else "")


@remembered(2048)
def strip_html(strip: LookUp, units: str) -> str:
    """A look-up strip: tested value, load, plates."""
    how = per_side_head(strip.scale)
    rows = []
    for value, cell in strip.rows:
        parts = plates(strip.scale, cell.step, units) if strip.scale and cell.step else ""
        last = f"<td>{parts}</td>" if how else ""
        rows.append(
            f'<tr><th scope="row">{bare_mass(value, units)}</th>'
            f"<td><b>{_cell(cell, units)}</b></td>{last}</tr>"
        )
    head = f'<th scope="col">{how}</th>' if how else ""
    return (
        f'<table class="sh-strip"><caption>{escape(strip.base.name)}, {percent(strip.percent)}'
        f'</caption><thead><tr><th scope="col">your best, {units}</th>'
        f'<th scope="col">today, {units}</th>{head}</tr></thead>'
        f"<tbody>{''.join(rows)}</tbody></table>"
    )


@remembered(2048)
def table_html(table: Table, caption: str, units: str) -> str:
    """A table by body weight, with the plates of every load that occurs named under it."""
    heads = "".join(f'<th scope="col">{escape(label)}</th>' for label in table.columns)
    rows = "".join(
        f'<tr><th scope="row">{bare_mass(value, units)}</th>'
        + "".join(f"<td>{_cell(cell, units, signed=_signed(table))}</td>" for cell in cells)
        + "</tr>"
        for value, cells in table.rows
    )
    return (
        f'<table class="sh-grid"><caption>{caption}</caption>'
        f'<thead><tr><th scope="col">body, {units}</th>{heads}</tr></thead>'
        f"<tbody>{rows}</tbody></table>{_plate_list(table, units)}"
    )


def _signed(table: Table) -> bool:
    return table.kind in ("system", "best-by-body")


def _cell(cell: TableCell, units: str, *, signed: bool = False) -> str:
    grams = cell.grams
    if grams is None:
        return DASH
    if cell.step is not None and cell.step.band:
        return cell.step.band
    if signed and grams == 0:
        return "BW"
    return f"+{bare_mass(grams, units)}" if signed and grams > 0 else bare_mass(grams, units)


def _plate_list(table: Table, units: str) -> str:
    """Every load of a table with its plates."""
    scale = table.scale
    if scale is None or scale.kind in ("fixed", "plate"):
        return ""
    bands = "".join(
        f"<li><b>{step.band}</b>{NBSP}= about {mass(-step.grams, units)} off</li>"
        for step in reversed(table.steps)
        if step.band
    )
    if bands:
        bands = f'<p class="sh-note">Bands that take weight off:</p><ul>{bands}</ul>'
    entries = "".join(
        f"<li><b>{bare_mass(step.grams, units)}</b>{NBSP}= {plates(scale, step, units)}</li>"
        for step in table.steps
        if step.grams > 0
    )
    if not entries:
        return bands
    return bands + (
        f'<details class="sh-plates"><summary>Plates for these loads '
        f"({per_side_head(scale)})</summary><ul>{entries}</ul></details>"
    )
