"""The look-up strips of a card: from a tested value or body weight to each week's load."""

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import escape

from strength_handbook.model.load import PercentOfBodyMass, PercentOfSystem
from strength_handbook.model.loading import BodyWeightLift
from strength_handbook.model.printed import bare_mass, percent
from strength_handbook.model.program import Base
from strength_handbook.model.span import middle_of
from strength_handbook.pages.cards.weeks import weeks_apart
from strength_handbook.pages.load_html import DASH, per_side_head, plates
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.tables import TableCell, base_strip, body_masses, share_table
from strength_handbook.plan.worked import Use, WorkedSlot

MOST_COLUMNS = 6
"""Loads in one strip; what is more goes into a strip of its own, to stay legible."""
MOST_WITH_PLATES = 4


@dataclass(frozen=True, slots=True)
class Column:
    """One column of a strip: the weeks it is for, and its share."""

    weeks: str
    share: str


@dataclass(frozen=True, slots=True)
class CardStrip:
    """A strip of a card, in words and figures.

    Attributes:
        name: what is looked up.
        first: head of the first column.
        columns: what is read off, such as loads.
        rows: the first column, a cell for each other one, and plates.
        plates_head: head of the column of plates, as HTML; empty where there is none.
        of_plates: place of the column whose plates are listed.
    """

    name: str
    first: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[str, tuple[str, ...], str], ...]
    plates_head: str = ""
    of_plates: int = 0

    def shown(self, most: int) -> list[tuple[str, tuple[str, ...], str]]:
        """Some of the rows."""
        return [self.rows[index] for index in shown_rows(len(self.rows), most)]


def shown_rows(count: int, most: int) -> range:
    """Every second row of a strip, and of more than fit the middle ones.

    >>> list(shown_rows(5, 16)), shown_rows(41, 16)[0], shown_rows(41, 16)[-1]
    ([0, 2, 4], 4, 34)
    """
    every_second = range(0, count, 2)
    start = max(0, len(every_second) - most) // 2
    return every_second[start : start + most]


def has_strip(use: Use) -> bool:
    """True where one figure of a member's is enough to read the load off."""
    return _of_base(use) or _of_body(use)


def strips_of(uses: tuple[Use, ...], units: str) -> Iterator[CardStrip]:
    """The strips of an exercise's uses, one or more for each tested value."""
    groups: dict[Base | None, dict[float, list[Use]]] = {}
    for use in filter(has_strip, uses):
        base = use.slot.base if _of_base(use) else None
        # A percentage is one column, however many weeks have it; sets that differ have several.
        for share in dict.fromkeys(_share(one) for one in use.slot.alike):
            groups.setdefault(base, {}).setdefault(share, []).append(use)
    for base, shares in groups.items():
        columns = list(shares.items())
        for start in range(0, len(columns), MOST_COLUMNS):
            yield _strip(base, columns[start : start + MOST_COLUMNS], units)


def _of_base(use: Use) -> bool:
    slot = use.slot
    by_body = isinstance(slot.dose.load, PercentOfSystem)
    if by_body or isinstance(slot.exercise.load, BodyWeightLift):
        return False
    return slot.base is not None and slot.percent is not None


def _of_body(use: Use) -> bool:
    return isinstance(use.slot.dose.load, PercentOfBodyMass) and use.slot.scale is not None


def _share(slot: WorkedSlot) -> float:
    load = slot.dose.load
    if slot.percent is not None and not isinstance(load, PercentOfBodyMass):
        return slot.percent
    return middle_of(load.percent) if isinstance(load, PercentOfBodyMass) else 0.0


def _strip(base: Base | None, columns: list[tuple[float, list[Use]]], units: str) -> CardStrip:
    scale = columns[0][1][0].slot.scale
    shares = tuple(share for share, _ in columns)
    if base is not None:
        strips = [base_strip(base, scale, share) for share in shares]
        name, first = base.name, f"your best, {units}"
        rows = tuple(value for value, _ in strips[0].rows)
        cells = [tuple(cell for _, cell in strip.rows) for strip in strips]
    else:
        assert scale is not None  # noqa: S101  # has_strip says so
        table = share_table("carry", scale, shares, body_masses(units))
        name = f"Load by body weight{', in each hand' if scale.per_hand else ''}"
        first = f"your body, {units}"
        rows = tuple(value for value, _ in table.rows)
        cells = [tuple(row[index] for _, row in table.rows) for index in range(len(shares))]
    heads = weeks_apart([found for _, found in columns])
    heaviest = shares.index(max(shares))
    plates_head = _plates_head(scale, heads, heaviest)
    made = (
        (
            bare_mass(value, units),
            tuple(_cell(own[place], units) for own in cells),
            _plates(cells[heaviest][place], scale, units) if plates_head else "",
        )
        for place, value in enumerate(rows)
    )
    named = tuple(Column(head, percent(share)) for head, share in zip(heads, shares, strict=True))
    return CardStrip(name, first, named, tuple(made), plates_head, heaviest)


def _plates_head(scale: Scale | None, heads: list[str], heaviest: int) -> str:
    """Head of the column of plates, as HTML; empty where there is none."""
    how = per_side_head(scale) if len(heads) <= MOST_WITH_PLATES else ""
    if not how or len(heads) == 1:
        return how
    weeks = heads[heaviest]
    return f"{how}, {escape(weeks[0].lower() + weeks[1:])}"


def _plates(cell: TableCell, scale: Scale | None, units: str) -> str:
    return plates(scale, cell.step, units) if scale and cell.step else ""


def _cell(cell: TableCell, units: str) -> str:
    return DASH if cell.grams is None else bare_mass(cell.grams, units)
