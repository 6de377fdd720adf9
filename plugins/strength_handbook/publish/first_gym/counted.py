"""How many of which mass, in one line as people write it: `2x20, 4x10` or `45 lb x 4`.

What could mean two things is refused with both; what is no usual size needs its unit.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from decimal import Decimal

from strength_handbook.publish.first_gym.counted_words import Item, as_items, take_of_each

_FEW = 4
"""Of plates of two kilos and less nobody has more at a rack: `10x2` is two of ten."""


@dataclass(frozen=True, slots=True)
class Counted:
    """Some of one mass.

    Attributes:
        mass: a number in `unit`.
        unit: kg or lb.
        number: how many.
        name: what else was said of it, such as `trap`.
    """

    mass: Decimal
    unit: str
    number: int
    name: str = ""

    @property
    def label(self) -> str:
        """Its mass as a coach writes it.

        >>> Counted(Decimal("2.50"), "kg", 2).label
        '2.5 kg'
        """
        return f"{plain(self.mass)} {self.unit}"


@dataclass(frozen=True, slots=True)
class Sort:
    """What is counted.

    Attributes:
        noun: what one is called.
        examples: lines by unit.
        sizes: usual masses by unit; empty where any is.
        most: of one mass.
        bare: how many are meant where no number says it.
        paired: they are used two by two, so an odd one is a slip.
        named: other words are a name.
    """

    noun: str
    examples: Mapping[str, str]
    sizes: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    most: int = 40
    bare: int = 1
    paired: bool = False
    named: bool = False


PLATES = Sort(
    "plate",
    {"kg": "4 x 20 kg, 2 x 10 kg", "lb": "4 x 45 lb, 2 x 10 lb"},
    {
        "kg": ("50", "25", "20", "15", "10", "5", "2.5", "2", "1.5", "1.25", "1", "0.5", "0.25"),
        "lb": ("100", "55", "45", "35", "25", "15", "10", "5", "2.5", "1.25", "1", "0.5", "0.25"),
    },
    bare=2,
    paired=True,
)
BARS = Sort(
    "bar",
    {"kg": "2 x 20 kg", "lb": "2 x 45 lb"},
    {
        "kg": ("30", "25", "20", "15", "10", "7.5", "7", "6", "5"),
        "lb": ("65", "60", "55", "50", "45", "35", "33", "30", "25", "20", "18", "15", "10"),
    },
    named=True,
)
DUMBBELLS = Sort(
    "dumbbell", {"kg": "dumbbells 4-30 by 2", "lb": "dumbbells 5-50 by 5"}, most=12, bare=2
)
KETTLEBELLS = Sort(
    "kettlebell", {"kg": "kettlebells 12, 16, 24", "lb": "kettlebells 25, 35, 55"}, most=12
)
"""Sizes and examples are common in the trade, no source."""


def read_counted(line: str, unit: str, sort: Sort) -> tuple[tuple[Counted, ...], tuple[str, ...]]:
    """Read a line.

    Args:
        line: as typed.
        unit: kg or lb, where the line says none.
        sort: what is counted.

    Returns:
        What was read, heaviest first as far as it was; and all that is wrong, with what to write.

    >>> [(one.number, one.label) for one in read_counted("2x20, 4 x 2,5", "kg", PLATES)[0]]
    [(2, '20 kg'), (4, '2.5 kg')]
    >>> [(one.number, one.label) for one in read_counted("45s: 2 pairs, 2x10", "lb", PLATES)[0]]
    [(4, '45 lb'), (2, '10 lb')]
    >>> [(one.number, one.label) for one in read_counted("20, 10, 4 of each", "kg", PLATES)[0]]
    [(4, '20 kg'), (4, '10 kg')]
    """
    named, each = take_of_each(" ".join(line.lower().split()))
    sort = sort if each is None else replace(sort, bare=each)
    items = as_items(line if each is None else named)
    said = {one for item in items for one in item.units}
    unit = said.pop() if len(said) == 1 else unit
    wrong = [text for item in items for text in _unread(item, unit, sort)]
    if wrong or not items:
        return (), tuple(wrong or [f"write how many of which, such as '{sort.examples[unit]}'"])
    readings = {
        order: read
        for order in (0, 1)
        if (read := _as_ordered(items, order, unit, sort)) is not None
    }
    found = list(dict.fromkeys(readings.values()))
    if len(found) == 1:
        return found[0], ()
    if found:
        return (), (f"'{line.strip()}' may mean {' or '.join(map(_spelled, found))}; write one",)
    return (), tuple(_amiss(items, unit, sort))


def plain(number: Decimal) -> str:
    """A number without needless zeros.

    >>> plain(Decimal("20.0")), plain(Decimal("1.25"))
    ('20', '1.25')
    """
    return f"{number.normalize():f}"


def _spelled(read: tuple[Counted, ...]) -> str:
    return f"'{', '.join(f'{one.number} x {one.label}' for one in read)}'"


def _unread(item: Item, unit: str, sort: Sort) -> Iterator[str]:
    """What is wrong with an item by itself."""
    rest = item.rest if not sort.named else ""
    if rest:
        yield f"can't read '{rest}' in '{item.text}'; write it like '{sort.examples[unit]}'"
    elif not item.numbers or (len(item.numbers) == 1 and item.numbers[0].pairs):
        yield f"'{item.text}' says no mass; write it like '{sort.examples[unit]}'"
    elif len(item.numbers) > 2 or not any(_one(item, i, unit, sort) for i in (0, 1)):
        yield f"can't tell what '{item.text}' counts; write it like '{sort.examples[unit]}'"


def _one(item: Item, order: int, unit: str, sort: Sort) -> Counted | None:
    """An item with its count first (0) or last (1); None where its words don't let it."""
    if len(item.numbers) == 1:
        mass, many = item.numbers[0], Decimal(sort.bare)
    elif len(item.numbers) == 2:
        count, mass = item.numbers[order], item.numbers[1 - order]
        if count.is_mass or mass.pairs or count.value != int(count.value):
            return None
        many = count.value * (2 if count.pairs or (item.each_side and sort.paired) else 1)
    else:
        return None
    return Counted(mass.value, mass.unit or unit, int(many), item.rest)


def _as_ordered(items: list[Item], order: int, unit: str, sort: Sort) -> tuple[Counted, ...] | None:
    """All items in one order, or the only one they can have; None where one makes no sense."""
    read = []
    for item in items:
        one = _one(item, order, unit, sort) or _one(item, 1 - order, unit, sort)
        if one is None or _amiss_in(item, one, sort):
            return None
        read.append(one)
    if len({(one.label, one.name) for one in read}) < len(read):
        return None
    return tuple(read)


def _amiss_in(item: Item, one: Counted, sort: Sort) -> str:
    """Why this can't be meant, with what to write; empty where it can."""
    written = f"{one.number} x {one.label}"
    if not 0 < one.number <= sort.most:
        return f"'{item.text}': from 1 to {sort.most} of a mass, not {one.number}"
    if sort.paired and one.number % 2:
        one_less = f"'{one.number - 1} x {one.label}' or " if one.number > 1 else ""
        more = f"'{one.number + 1} x {one.label}'"
        return f"'{item.text}': a bar takes plates two by two; write {one_less}{more}"
    if one.mass <= 0:
        return f"'{item.text}' says no mass; write it like '{sort.examples[one.unit]}'"
    usual = sort.sizes.get(one.unit)
    if usual and not item.units and plain(one.mass) not in usual:
        return f"{one.label} is no usual {sort.noun}; if it is right, write '{written}'"
    few = sort.paired and not item.units and one.mass <= 2 and one.number > _FEW
    return f"'{item.text}': so many of {one.label}? Then write '{written}'" if few else ""


def _amiss(items: list[Item], unit: str, sort: Sort) -> Iterator[str]:
    """Of each item that makes no sense, why; else the mass that stands twice."""
    told = False
    seen: dict[str, str] = {}
    for item in items:
        both = [one for order in (0, 1) if (one := _one(item, order, unit, sort))]
        whys = [_amiss_in(item, one, sort) for one in both]
        if all(whys):
            told = True
            yield next((why for why in whys if "two by two" in why), whys[0])
            continue
        good = next(one for one, why in zip(both, whys, strict=True) if not why)
        key = f"{good.label} {good.name}"
        if key in seen and not told:
            told = True
            yield f"{good.label} stands twice, in '{seen[key]}' and '{item.text}'; write it once"
        seen.setdefault(key, item.text)
    if not told:
        text = ", ".join(item.text for item in items)
        yield f"'{text}': write all in one order, such as '{sort.examples[unit]}'"
