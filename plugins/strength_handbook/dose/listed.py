"""Sets that differ, in lists: `3x5 @ 70/75/80 %`, `5@65% 3@75%`, `60 %x5 70 %x3`, `12/10/8`.

Common practice of the trade, no source. Each is put into the house's notation, part by part.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from strength_handbook.dose.clause import NotationError
from strength_handbook.dose.line_words import COUNT, END, NUMBER, PLAIN
from strength_handbook.dose.spelling import Piece
from strength_handbook.model.samples import unit

_UNIT = r"(?:%(?:\s*(?:of\s+)?TM\b)?|kgs?\b|lbs?\b)"
_SETS = r"(?:(?P<sets>\d+)\s*(?:[x×*]|sets?(?:\s+of\b)?)\s*)?"
_NEXT = r"\s*(?:/|,\s)\s*"
_CLOSE = r"\d+(?:\.\d+)?(?:,\d+(?:\.\d+)?){2,}"
"""Numbers with nothing but commas between: more than one comma is none of a decimal."""
_LOADS = (
    rf"(?P<loads>{_CLOSE}\s*{_UNIT}|{NUMBER}(?:\s*{_UNIT})?(?:{_NEXT}{NUMBER}(?:\s*{_UNIT})?)+)"
)
_WITH_LOADS = re.compile(
    rf"{_SETS}(?P<reps>\d+(?:,\d+){{2,}}|{COUNT}(?:{_NEXT}{COUNT})*)(?:\s*reps?)?(?P<at>\s*(?:@|\bat\b)\s*|\s+){_LOADS}{END}",
    re.IGNORECASE,
)
_REPS_ONLY = re.compile(
    rf"{_SETS}(?P<reps>{COUNT}(?:\s*/\s*{COUNT}){{2,}}|\d+(?:\s*[-–]\s*\d+){{4,}}|\d+(?:\s+\d+){{3,}})(?:\s*reps?)?{END}",
    re.IGNORECASE,
)
_ONE = re.compile(
    rf"(?:(?P<sets>\d+)\s*[x×*]\s*)?(?P<reps>{COUNT})(?:\s*reps?)?(?:\s+back[\s-]?off)?"
    rf"(?P<at>\s*(?:@|\bat\b)\s*|\s+)(?P<load>{NUMBER})\s*(?P<unit>{_UNIT})?",
    re.IGNORECASE,
)
_LOAD_FIRST = re.compile(
    rf"(?P<load>{NUMBER})\s*(?P<unit>{_UNIT})(?:\s*[x×*]|(?<=%)\s*/)\s*(?P<reps>{COUNT})"
    rf"(?:\s*reps?)?{END}(?!\s*[x×*])",
    re.IGNORECASE,
)
"""In a row a number behind a load counts repetitions; alone it could count sets."""
_BETWEEN = re.compile(r"\s*(?:[,;/]?\s*\bthen\b|[,;/]|(?<=\s))\s*", re.IGNORECASE)

_FEWER = 4
"""So many times the repetitions of the next set nobody does first. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Listed:
    """Sets that differ in a line.

    Attributes:
        end: where they end.
        parts: the same in the house's notation, each with its place in the line.
    """

    end: int
    parts: tuple[Piece, ...]


def listed_at(line: str, position: int, *, sets: bool) -> Listed | None:
    """Sets that differ in lists that begin at a position; None where none do.

    Args:
        line: the whole line.
        position: where they must begin.
        sets: the line has its sets already.

    Raises:
        NotationError: where a list has not as many entries as there are sets.
    """
    if sets:
        return None
    found = _WITH_LOADS.match(line, position) or _REPS_ONLY.match(line, position)
    if found is None:
        return _one_by_one(line, position)
    with_loads = found.re is _WITH_LOADS
    reps = list(_entries(found, "reps", COUNT if with_loads or "/" in found["reps"] else r"\d+"))
    loads = list(_entries(found, "loads", _whole(found["loads"]))) if with_loads else []
    their_unit = _unit(found) if with_loads else ""
    if their_unit is None or any(one.startswith("0") for one, _ in reps):
        return None
    _refuse_uneven(found, len(reps), len(loads))
    if not with_loads:
        _refuse_load(found, [one for one, _ in reps])
    parts: list[Piece] = []
    for place in range(max(len(reps), len(loads))):
        parts += _set("1", *reps[place % len(reps)], first=not place)
        if loads:
            parts += _load(*loads[place % len(loads)], their_unit)
    return Listed(found.end(), tuple(parts))


def _one_by_one(line: str, position: int) -> Listed | None:
    """Sets one by one, each with its load: `5@65% 3@75%`, `1x5 60, 3x5 80 kg`, `60%x5 70%x3`."""
    first = _LOAD_FIRST.match(line, position)
    pattern = _LOAD_FIRST if first else _ONE
    several: list[re.Match[str]] = []
    end = position
    while found := pattern.match(line, end):
        if not first and not found["at"].strip() and not found["sets"]:
            break
        several.append(found)
        after = _BETWEEN.match(line, found.end())
        if after is None:
            break
        end = after.end()
    units = {re.sub(r"\s+", " ", one["unit"]) for one in several if one["unit"]}
    if len(several) < 2 or len(units) != 1 or not several[-1]["unit"]:
        return None
    (their_unit,) = units
    parts: list[Piece] = []
    for place, one in enumerate(several):
        parts += _set(
            (not first and one["sets"]) or "1", one["reps"], one.start("reps"), first=not place
        )
        parts += _load(one["load"], one.start("load"), their_unit)
    return Listed(several[-1].end(), tuple(parts))


def _set(sets: str, reps: str, start: int, *, first: bool) -> Iterator[Piece]:
    """Sets and repetitions of a part, which are written at a place in the line."""
    yield Piece(f"{'' if first else ', '}{sets}x", start, written=False)
    yield Piece(reps, start, written=True)


def _load(load: str, start: int, in_unit: str) -> Iterator[Piece]:
    """The load of a part, which is written at a place in the line."""
    yield Piece(" @ ", start, written=False)
    yield Piece(load, start, written=True)
    yield Piece(f" {in_unit}", start, written=False)


def _entries(found: re.Match[str], group: str, pattern: str) -> Iterator[tuple[str, int]]:
    """Numbers of a list, each with its place in the line."""
    for one in re.finditer(pattern, found[group]):
        yield one[0], found.start(group) + one.start()


def _whole(loads: str) -> str:
    """What the numbers of a list of loads look like."""
    return r"\d+(?:\.\d+)?" if re.match(_CLOSE, loads) else NUMBER


def _unit(found: re.Match[str]) -> str | None:
    """The unit of a list of loads, which stands behind its last one; None where it is no list.

    Loads that are more than a share can be are in the unit of the room.
    """
    units = [re.sub(r"\s+", " ", one) for one in re.findall(_UNIT, found["loads"], re.IGNORECASE)]
    if not units and all(re.fullmatch(PLAIN, one) for one in re.findall(NUMBER, found["loads"])):
        return unit()
    if not units and not found["at"].strip():
        return None
    if not units:
        advice = "write it behind the last one, such as '3x5 @ 70/75/80 %'"
        raise NotationError(found.start("loads"), f"these loads have no unit; {advice}")
    behind = not found["loads"][-1].isdigit()
    return units[-1] if behind and len({one.lower() for one in units}) == 1 else None


def _refuse_load(found: re.Match[str], reps: list[str]) -> None:
    """Refuse a list whose first number is rather a load than repetitions: `185 5 5 5 3`.

    Raises:
        NotationError: at the beginning of the list.
    """
    if all(one.isdigit() for one in reps) and int(reps[0]) > _FEWER * max(map(int, reps[1:])):
        others = ", ".join(reps[1:])
        raise NotationError(
            found.start(),
            f"'{reps[0]}' can be a load, '{others} @ {reps[0]} {unit()}', or repetitions, "
            f"'{reps[0]}, {others}'; write one of them",
        )


def _refuse_uneven(found: re.Match[str], reps: int, loads: int) -> None:
    """Refuse lists of which one has more entries than another, or than there are sets.

    Raises:
        NotationError: at the beginning of the lists.
    """
    counts = [(reps, "numbers of repetitions"), (loads, "loads")]
    counts = [one for one in counts if one[0] > 1]
    if found["sets"] is not None:
        counts.insert(0, (int(found["sets"]), "sets" if int(found["sets"]) > 1 else "set"))
    if len({number for number, _ in counts}) > 1:
        said = " and ".join(f"{number} {what}" for number, what in counts)
        raise NotationError(
            found.start(),
            f"here are {said}: a list needs an entry for each set, such as '3x5 @ 70/75/80 %'; or "
            "write the sets one by one, '5 @ 70 %, 3 @ 75 %'",
        )
