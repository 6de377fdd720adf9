"""Hand weights in one line as people write it."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from strength_handbook.publish.first_gym.counted import (
    DUMBBELLS,
    KETTLEBELLS,
    Counted,
    Sort,
    plain,
    read_counted,
)
from strength_handbook.publish.first_gym.counted_words import take_of_each

NONE = {"", "none", "no", "nothing", "0", "-"}
"""Words for: there are none."""

_KINDS = {"dumbbell": "dumbbell", "dumbell": "dumbbell", "db": "dumbbell",
          "kettlebell": "kettlebell", "kettle bell": "kettlebell", "kb": "kettlebell"}  # fmt: skip
_KIND = re.compile(rf"\b({'|'.join(_KINDS)})s?\b:?")
_NUMBER = r"(\d+(?:\.\d+)?)\s*(kg|lb)?s?"
_ROW = re.compile(
    rf"(?:from\s+)?{_NUMBER}\s*(?:-|–|to)\s*{_NUMBER}"
    rf"(?:,?\s*(?:by|in|every|each|step|steps of|in steps of)\s*{_NUMBER})?(?:\s*x\s*(\d\d?))?"
)
_SORTS = {sort.noun: sort for sort in (DUMBBELLS, KETTLEBELLS)}
_MOST_STEPS = 200


@dataclass(frozen=True, slots=True)
class Row:
    """Masses from the lightest to the heaviest.

    Attributes:
        low: the lightest, in `unit`.
        high: the heaviest.
        step: between two of them.
        unit: kg or lb.
        number: how many of each.
    """

    low: Decimal
    high: Decimal
    step: Decimal
    unit: str
    number: int


@dataclass(frozen=True, slots=True)
class Hands:
    """Hand weights of one kind: `dumbbell` or `kettlebell`."""

    kind: str
    masses: tuple[Row | Counted, ...]

    @property
    def words(self) -> str:
        """How they were understood, for whoever typed them.

        >>> read_hands("kettlebells 12, 16 kg x 2", "kg")[0][0].words
        '1 kettlebell of 12 kg, 2 kettlebells of 16 kg'
        """
        return ", ".join(_words(self.kind, mass) for mass in self.masses)


def read_hands(line: str, unit: str) -> tuple[tuple[Hands, ...], tuple[str, ...]]:
    """Read a line of hand weights.

    Args:
        line: such as `dumbbells 5-50 by 5; kettlebells 12, 16x2`; without a word, dumbbells.
        unit: kg or lb, where the line says none.

    Returns:
        What was read, and all that is wrong.

    >>> found, _ = read_hands("5-50 by 5, kettlebells 12 kg x 2", "lb")
    >>> [one.kind for one in found], found[0].masses[0].step
    (['dumbbell', 'kettlebell'], Decimal('5'))
    """
    text = " ".join(line.lower().split())
    if text in NONE:
        return (), ()
    kinds: dict[str, list[Row | Counted]] = {}
    wrong: list[str] = []
    for kind, said in _by_kind(text):
        part, each = take_of_each(said)
        sort = _SORTS[kind] if each is None else replace(_SORTS[kind], bare=each)
        rows, rest = _rows(part, sort, unit)
        for one in rows:
            if isinstance(one, str):
                wrong.append(one)
            else:
                kinds.setdefault(kind, []).append(one)
        if rest:
            singles, slips = read_counted(rest, unit, sort)
            kinds.setdefault(kind, []).extend(singles)
            wrong += slips
        if not rows and not rest:
            wrong.append(f"'{kind}s': from what to what? Write '{sort.examples[unit]}'")
    return tuple(Hands(kind, tuple(masses)) for kind, masses in kinds.items()), tuple(wrong)


def _words(kind: str, mass: Row | Counted) -> str:
    if isinstance(mass, Counted):
        return f"{mass.number} {kind}{'s' * (mass.number > 1)} of {mass.label}"
    low, high, step = map(plain, (mass.low, mass.high, mass.step))
    return f"{kind}s {low} to {high} {mass.unit} by {step}, {mass.number} of each"


def _by_kind(text: str) -> Iterator[tuple[str, str]]:
    """Each kind with its part of the line; before the first word stand dumbbells."""
    parts = _KIND.split(text)
    words = ["", *parts[1::2]]
    for word, part in zip(words, parts[::2], strict=True):
        inner = part.strip(" ,;:").removesuffix("and").strip(" ,")
        if inner or word:
            yield _KINDS.get(word, "dumbbell"), inner


def _rows(part: str, sort: Sort, unit: str) -> tuple[list[Row | str], str]:
    """The rows of a part, or what is wrong with one; and what is left of the part."""
    found: list[Row | str] = []
    for row in _ROW.finditer(part):
        low, low_unit, high, high_unit, step, step_unit, number = row.groups()
        said = low_unit or high_unit or step_unit or unit
        if step is None or Decimal(step) <= 0:
            better = f"{sort.noun}s {low}-{high} {said} by {'2' if said == 'kg' else '5'}"
            found.append(f"'{row[0].strip()}' says no step; write '{better}'")
            continue
        one = Row(Decimal(low), Decimal(high), Decimal(step), said, int(number or sort.bare))
        found.append(_wrong_row(row[0].strip(), one) or _too_many(row[0], one, sort) or one)
    return found, _ROW.sub("", part).strip(" ,;")


def _too_many(text: str, row: Row, sort: Sort) -> str:
    if 0 < row.number <= sort.most:
        return ""
    return f"'{text.strip()}': from 1 to {sort.most} of a mass, not {row.number}"


def _wrong_row(text: str, row: Row) -> str:
    if row.high < row.low or row.low <= 0:
        return f"'{text}': write the lightest first, such as '5-50 by 5'"
    steps = (row.high - row.low) // row.step
    if (row.high - row.low) % row.step:
        end = plain(row.low + steps * row.step)
        low, step = plain(row.low), plain(row.step)
        return f"'{text}' does not end there; in steps of {step} write '{low}-{end} by {step}'"
    return f"'{text}' are too many; check the step" if steps > _MOST_STEPS else ""
