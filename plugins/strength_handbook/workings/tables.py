"""One cell of a table by body weight, worked out: the others are made alike."""

from strength_handbook.model.loading import BodyWeightLift, Loading, OnBar
from strength_handbook.model.quantities import GRAMS_PER_POUND
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.tables import (
    BEST_CHANGES_KG,
    BEST_CHANGES_LB,
    Table,
    TableCell,
    exercise_table,
    loading_table,
)
from strength_handbook.plan.worked import WorkedSlot
from strength_handbook.workings.load import built
from strength_handbook.workings.working import (
    Line,
    Working,
    amount,
    as_written,
    by_adding,
    by_formula,
    equals_mass,
    number,
    percent,
    rounding_rule,
    share_of,
)


def table_working(loading: Loading, scale: Scale | None, units: str) -> Working | None:
    """How the table by body weight of an exercise is made, on the cell in its middle.

    None where the exercise has no such table.
    """
    table = exercise_table(loading, scale, units)
    if table is None:
        return None
    mass, column, cell = _middle(table)
    lines = _cell_lines(loading, table.kind, mass, column, units)
    if not lines:
        return None
    title = f"Row {amount(mass, units)}, column {table.columns[column]}"
    if cell.step is not None and cell.step.band:
        lines.append(as_written(f"Band {cell.step.band}, about {amount(cell.help_g, units)} off"))
    elif table.scale is not None and cell.step is not None:
        lines.append(built(table.scale, cell.step, _target(loading, table, mass, column), units))
    elif cell.help_g:
        lines.append(as_written(f"{amount(cell.help_g, units)} of help, rounded up"))
    if table.kind == "moved":
        rounding = "Rounded to half a kilogram."
    else:
        rounding = rounding_rule(scale) if scale is not None else ""
    return Working(title, tuple(lines), rounding)


def by_body_lines(slot: WorkedSlot, units: str) -> list[Line]:
    """One cell of a slot's table by body weight, for those without a tested value."""
    loading = slot.exercise.load
    if slot.percent is None:
        return []
    table = loading_table(loading, slot.scale, slot.percent, units)
    if table is None:
        return []
    mass, column, cell = _middle(table)
    place = f"Table, row {amount(mass, units)}, column {table.columns[column]}"
    if isinstance(loading, OnBar):
        best = mass * loading.multiples[column]
        target = best * slot.percent / 100
        text = share_of(best, slot.percent, units)
        lines = [by_formula("load_at_percent", f"{place}: {text}")]
    elif isinstance(loading, BodyWeightLift):
        moved = mass * loading.share / 100
        best = moved + _change(column, units)
        target = best * slot.percent / 100 - moved
        today = share_of(best, slot.percent, units)
        text = f"{place}: {today}; less {amount(moved, units)} of body: {amount(target, units)}"
        lines = [by_adding(text)]
    else:
        return []
    if slot.scale is not None and cell.step is not None:
        lines.append(built(slot.scale, cell.step, target, units))
    return lines


def _change(column: int, units: str) -> float:
    """What a column of best totals adds to the body, in grams."""
    if units == "lb":
        return BEST_CHANGES_LB[column] * GRAMS_PER_POUND
    return BEST_CHANGES_KG[column] * 1000.0


def _middle(table: Table) -> tuple[int, int, TableCell]:
    """Body mass, column and cell in the middle of a table, or in the last column if empty."""
    mass, cells = table.rows[len(table.rows) // 2]
    column = len(cells) // 2 if cells[len(cells) // 2].grams else len(cells) - 1
    return mass, column, cells[column]


def _cell_lines(loading: Loading, kind: str, mass: int, column: int, units: str) -> list[Line]:
    body = amount(mass, units)
    match kind:
        case "carry":
            share = loading.body_mass_shares[column]  # type: ignore[union-attr]
            return [by_formula("load_at_percent", share_of(mass, share, units))]
        case "start" if loading.start is not None:
            start = loading.start
            share = list(start.shares.values())[column]
            size = (mass / start.at.grams) ** start.power
            first = amount(start.at.grams * share / 100, units)
            at = amount(start.at.grams, units)
            result = amount(start.at.grams * share / 100 * size, units)
            power = number(start.power, 2)
            given = share_of(start.at.grams, share, units)
            return [
                by_formula("load_at_percent", f"The coach's start: {given}"),
                by_formula("scale_strength", f"{first} × ({body} ÷ {at})^{power} ≈ {result}"),
            ]
        case "system" if isinstance(loading, BodyWeightLift):
            moved = mass * loading.share / 100
            points = loading.shares[column]
            alone = amount(moved, units)
            more = moved * (points - 100) / 100
            sign = equals_mass(moved, more, units=units)
            return [
                by_formula("load_at_percent", f"{share_of(mass, loading.share, units)} moved"),
                by_adding(f"{alone} × {percent(points)} − {alone} {sign} {amount(more, units)}"),
            ]
        case "moved":
            share = getattr(loading, "share", None) or 0.0
            return [by_formula("load_at_percent", share_of(mass, share, units))]
        case _:
            return []


def _target(loading: Loading, table: Table, mass: int, column: int) -> float:
    """What a cell's load was taken for, in grams."""
    if table.kind == "carry":
        return mass * loading.body_mass_shares[column] / 100  # type: ignore[union-attr]
    if table.kind == "start" and loading.start is not None:
        start = loading.start
        share = list(start.shares.values())[column]
        return float(start.at.grams * (mass / start.at.grams) ** start.power * share / 100)
    if isinstance(loading, BodyWeightLift):
        return mass * loading.share / 100 * (loading.shares[column] - 100) / 100
    return 0.0
