"""Sets that differ on a page: what each takes on, by tested value, and what moves between them."""

from html import escape

from strength_handbook.dose.printing import core_notation
from strength_handbook.model.printed import bare_mass
from strength_handbook.model.program import Base
from strength_handbook.pages.load_html import DASH, per_side_head, plates
from strength_handbook.pages.method_parts import (
    by_lifter,
    listed,
    load_words,
    plates_moved,
    small_table,
)
from strength_handbook.plan.remembered import remembered
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.series import SeriesLoad, SeriesLoads, SeriesPlan
from strength_handbook.plan.tables import TableCell, base_strip
from strength_handbook.plan.worked import WorkedSlot


def series_html(plan: SeriesPlan, scale: Scale | None, units: str) -> str:
    """The sets in order, with the plates that come off and go on between them."""
    parts = []
    if plan.everybody:
        parts.append(listed(_set(one, scale, units) for one in plan.everybody))
    own = [] if plan.everybody else list(plan.by_lifter.items())
    parts.append(by_lifter((name, _line(loads, scale, units)) for name, loads in own))
    return "".join(parts)


def _line(loads: SeriesLoads, scale: Scale | None, units: str) -> str:
    return "; ".join(_set(one, scale, units) for one in loads)


def _set(one: SeriesLoad, scale: Scale | None, units: str) -> str:
    """``1 × 3: 80 kg (off 5, on 10 each side)``; of the first sets all that is on."""
    side = " each side" if scale is not None and scale.kind == "bar" else ""
    moves = [
        f"{word} {plates_moved(grams, units)}"
        for word, grams in (("off", one.off), ("on", one.on))
        if grams
    ]
    how = f"{', '.join(moves)}{side}" if moves else _built(one, scale, units, side)
    text = f"{core_notation(one.dose, load=False)}: <b>{load_words(one.load, units)}</b>"
    return f"{text} ({how})" if how else text


def _built(one: SeriesLoad, scale: Scale | None, units: str, side: str) -> str:
    if scale is None or one.load.step is None or one.load.help_g:
        return ""
    how = plates(scale, one.load.step, units)
    return f"{how}{side}" if how and one.load.step.parts else how


MOST_COLUMNS = 4
"""Loads that stand beside each other on a phone; what is more is a table of its own."""


def series_strip(slot: WorkedSlot, base: Base, units: str) -> str:
    """A look-up strip with a column for each load: tested value, loads, and their plates."""
    heads: dict[float, list[str]] = {}
    for one in slot.series:
        if one.percent is not None:
            heads.setdefault(one.percent, []).append(escape(core_notation(one.dose)))
    columns = [(percent, "<br>".join(several)) for percent, several in heads.items()]
    how = per_side_head(slot.scale)
    tables = (
        _strip(slot.scale, base, tuple(columns[start : start + MOST_COLUMNS]), units)
        for start in range(0, len(columns), MOST_COLUMNS)
    )
    return "".join(tables) + (f'<p class="sh-note">In small print: {how}.</p>' if how else "")


@remembered(512)
def _strip(
    scale: Scale | None, base: Base, columns: tuple[tuple[float, str], ...], units: str
) -> str:
    strips = [base_strip(base, scale, percent) for percent, _ in columns]
    rows = [
        (bare_mass(cells[0][0], units), *(_cell(cell, scale, units) for _, cell in cells))
        for cells in zip(*(one.rows for one in strips), strict=True)
    ]
    heads = (f"your best, {units}", *(head for _, head in columns))
    return small_table(f"{base.name}: today's sets, {units}", heads, rows)


def _cell(cell: TableCell, scale: Scale | None, units: str) -> str:
    if cell.grams is None:
        return DASH
    how = plates(scale, cell.step, units) if scale is not None and cell.step is not None else ""
    return f"<b>{bare_mass(cell.grams, units)}</b>" + (f"<br><small>{how}</small>" if how else "")
