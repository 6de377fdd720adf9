"""Tables to read a load off: by body weight, and by tested value.

Rows and columns are what a member knows; each cell is a load that exists in this room. Tables with
the same scale and the same figures are worked out once.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from strength_handbook.calc.allometry import scale_strength
from strength_handbook.model.loading import (
    BodyWeightLift,
    ByEffort,
    Loading,
    OnBar,
    Start,
)
from strength_handbook.model.program import Base
from strength_handbook.model.quantities import GRAMS_PER_POUND, Mass
from strength_handbook.plan.loads import achievable
from strength_handbook.plan.remembered import remembered
from strength_handbook.plan.scale import Scale, Step

BODY_KG = range(45, 131, 5)
BODY_LB = range(100, 291, 10)
BEST_CHANGES_KG = (-20, -10, 0, 10, 20, 30)
BEST_CHANGES_LB = (-40, -20, 0, 20, 40, 60)


@dataclass(frozen=True, slots=True)
class TableCell:
    """One load in a table: a step that exists, or weight taken off, or neither."""

    step: Step | None
    help_g: int = 0

    @property
    def grams(self) -> int | None:
        """The load; negative where weight is taken off."""
        return -self.help_g if self.help_g else (None if self.step is None else self.step.grams)


@dataclass(frozen=True, eq=False)
class Table:
    """A table of loads.

    Attributes:
        kind: ``base-by-body``, ``start``, ``system``, ``best-by-body``, ``carry`` or ``moved``.
        columns: heads of the columns.
        rows: body mass or tested value in grams, with a cell for each column.
        scale: the loads that exist; None where cells are plain masses.
        steps: every step that occurs, rising, for the list of plates under the table.
    """

    kind: str
    columns: tuple[str, ...]
    rows: tuple[tuple[int, tuple[TableCell, ...]], ...]
    scale: Scale | None
    steps: tuple[Step, ...]


@dataclass(frozen=True, eq=False)
class LookUp:
    """A look-up strip: a tested value, and the load for one percentage of it."""

    base: Base
    percent: float
    rows: tuple[tuple[int, TableCell], ...]
    scale: Scale | None


def body_masses(units: str) -> tuple[int, ...]:
    """Rows of body mass in grams: 45 to 130 kg by 5, or 100 to 290 lb by 10."""
    if units == "lb":
        return tuple(round(pounds * GRAMS_PER_POUND) for pounds in BODY_LB)
    return tuple(kg * 1000 for kg in BODY_KG)


def best_changes(units: str) -> dict[str, int]:
    """What was added at the best of a body-weight lift, or taken off, in grams by its label.

    >>> best_changes("kg")["−10"], best_changes("kg")["BW"], best_changes("lb")["+20"]
    (-10000, 0, 9072)
    """
    changes = BEST_CHANGES_LB if units == "lb" else BEST_CHANGES_KG
    gram = GRAMS_PER_POUND if units == "lb" else 1000.0
    return {
        "BW" if change == 0 else f"{'+' if change > 0 else '−'}{abs(change)}": round(change * gram)
        for change in changes
    }


def exercise_table(loading: Loading, scale: Scale | None, units: str) -> Table | None:
    """The table that fits how an exercise is loaded, without reference to a program."""
    masses = body_masses(units)
    shares = getattr(loading, "body_mass_shares", None)
    if shares and scale:
        return share_table("carry", scale, tuple(shares), masses)
    if isinstance(loading, BodyWeightLift):
        return _system_table(loading, scale, masses, units)
    if loading.start is not None and scale is not None:
        return _start_table(loading.start, scale, masses)
    if isinstance(loading, ByEffort) and loading.share is not None:
        return _moved_table(loading.share, masses)
    return None


def start_table(loading: Loading, scale: Scale | None, units: str) -> Table | None:
    """The same table, where it says how heavy to begin without a tested value."""
    table = exercise_table(loading, scale, units)
    return table if table is not None and table.kind in ("start", "system") else None


def loading_table(
    loading: Loading, scale: Scale | None, percent: float, units: str
) -> Table | None:
    """The table by body weight for one percentage of a tested value."""
    masses = body_masses(units)
    if isinstance(loading, OnBar) and loading.base and scale:
        return _base_table(scale, percent, tuple(loading.multiples), masses)
    if isinstance(loading, BodyWeightLift):
        changes = best_changes(units)
        labels, grams = tuple(changes), tuple(changes.values())
        return _best_table(scale, percent, loading.share, grams, labels, masses, units)
    return None


@remembered(512)
def base_strip(base: Base, scale: Scale | None, percent: float) -> LookUp:
    """Load for each tested value between the base's limits."""
    # Stepped in the unit it is written in: pounds in whole grams would drift and miss the end.
    start, step = _exact_g(base.from_), _exact_g(base.by)
    rows = []
    for index in range(int((base.to.grams + 1 - start) / step) + 1):
        value = round(start + index * step)
        rows.append((value, _cell(scale, value * percent / 100)))
    return LookUp(base, percent, tuple(rows), scale)


@remembered(512)
def share_table(
    kind: str, scale: Scale, shares: tuple[float, ...], masses: tuple[int, ...]
) -> Table:
    """Loads as percent of body mass."""
    labels = tuple(_points(share) for share in shares)
    return _table(kind, labels, scale, [
        (mass, tuple(_cell(scale, mass * share / 100) for share in shares)) for mass in masses
    ])  # fmt: skip


def _start_table(start: Start, scale: Scale, masses: Sequence[int]) -> Table:
    """Starting loads: a share at the stated body mass, scaled by the exercise's power."""
    at = start.at.grams
    rows = []
    for mass in masses:
        loads = (
            scale_strength(at * share / 100, at / 1000, mass / 1000, start.power)
            for share in start.shares.values()
        )
        rows.append((mass, tuple(_cell(scale, load) for load in loads)))
    return _table("start", tuple(start.shares), scale, rows)


@remembered(512)
def _base_table(
    scale: Scale, percent: float, multiples: tuple[float, ...], masses: tuple[int, ...]
) -> Table:
    labels = tuple(f"{multiple:g} ×" for multiple in multiples)
    return _table("base-by-body", labels, scale, [
        (mass, tuple(_cell(scale, mass * multiple * percent / 100) for multiple in multiples))
        for mass in masses
    ])  # fmt: skip


def _system_table(
    lift: BodyWeightLift, scale: Scale | None, masses: Sequence[int], units: str
) -> Table:
    labels = tuple(_points(share) for share in lift.shares)
    rows = []
    for mass in masses:
        moved = mass * lift.share / 100
        targets = (moved * (s - 100) / 100 for s in lift.shares)
        rows.append((mass, tuple(_cell(scale, target, units) for target in targets)))
    return _table("system", labels, scale, rows)


@remembered(512)
def _best_table(
    scale: Scale | None,
    percent: float,
    share: float,
    changes: tuple[int, ...],
    labels: tuple[str, ...],
    masses: tuple[int, ...],
    units: str,
) -> Table:
    """Rows body mass, columns best change to body weight, for a percentage of that best total."""
    rows = []
    for mass in masses:
        moved = mass * share / 100
        targets = ((moved + change) * percent / 100 - moved for change in changes)
        rows.append((mass, tuple(_cell(scale, target, units) for target in targets)))
    return _table("best-by-body", labels, scale, rows)


@remembered(64)
def _moved_table(share: float, masses: tuple[int, ...]) -> Table:
    rows = [(mass, (TableCell(Step(round(mass * share / 100 / 500) * 500)),)) for mass in masses]
    return Table("moved", (_points(share),), tuple(rows), None, ())


def _table(
    kind: str,
    labels: tuple[str, ...],
    scale: Scale | None,
    rows: list[tuple[int, tuple[TableCell, ...]]],
) -> Table:
    steps = {cell.step.grams: cell.step for _, cells in rows for cell in cells if cell.step}
    # Bands stand in front, the strongest first.
    ordered = tuple(steps[grams] for grams in sorted(steps))
    return Table(kind, labels, tuple(rows), scale, ordered)


def _cell(scale: Scale | None, target_g: float, units: str = "kg") -> TableCell:
    return TableCell(*achievable(target_g, scale, units))


def _points(share: float) -> str:
    """A share as the head of a column, whole or half."""
    return f"{share:g} %" if share * 2 == round(share * 2) else f"{share:.0f} %"


def _exact_g(mass: Mass) -> float:
    if mass.unit == "lb":
        return round(mass.grams / GRAMS_PER_POUND, 2) * GRAMS_PER_POUND
    return mass.grams
