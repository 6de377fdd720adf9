"""Weight that comes off on the way: `10 @ 60 > 10 @ 50 > 10 @ 40 kg`, `8 > 8 > 8 @ 60 kg, -10 kg`.

Common practice of the trade, no source. It is a strip set in the house's notation.
"""

import re
from itertools import pairwise

from strength_handbook.dose.clause import NotationError
from strength_handbook.dose.line_words import END, NUMBER, SHARE_OR_MASS
from strength_handbook.dose.listed import Listed
from strength_handbook.dose.spelling import Piece

_SETS = r"(?:(?P<sets>\d+)\s*[x×*]\s*)?\(?\s*"
_THEN = r"\s*(?<![-=])>\s*"
_ITEM = rf"\d+(?:\s*reps?)?\s*(?:@|\bat\b|\bwith\b)\s*{NUMBER}\s*{SHARE_OR_MASS}?"
_LOADS = re.compile(rf"{_SETS}(?P<items>{_ITEM}(?:{_THEN}{_ITEM})+)\s*\)?{END}", re.IGNORECASE)
_OFF = (
    rf"(?:drop(?:ping)?|[-−–]|less|minus)\s*(?P<off>{NUMBER}\s*{SHARE_OR_MASS})"
    r"(?:\s*(?:each\s+time|each|per\s+drop|a\s+drop))?"
)
_COUNTS = re.compile(
    rf"{_SETS}(?P<items>\d+(?:{_THEN}\d+)+)\s*\)?\s*(?:@|\bat\b|\bwith\b)\s*"
    rf"(?P<load>{NUMBER}\s*{SHARE_OR_MASS})\s*,?\s*{_OFF}{END}",
    re.IGNORECASE,
)
_ONE = re.compile(rf"(\d+)\D*?(?:({NUMBER})\s*({SHARE_OR_MASS})?)?\s*(?:$|{_THEN})", re.IGNORECASE)
_SIGN = re.compile(r"(?:\d+\s*[x×*]\s*)?\(?\s*\d[^,;<>→]{0,20}(?<![-=])>", re.IGNORECASE)
_ALIKE = (
    "a strip set has as many repetitions with each load, and takes the same off each time, such as "
    "'strip 3 loads -10 kg 8 a load @ 60 kg', or '-20 %'; other sets stand side by side, "
    "'8 @ 60 kg, 8 @ 50 kg'"
)


def dropped_at(line: str, position: int, *, sets: bool) -> Listed | None:
    """A set with weight coming off that begins at a position; None where none does.

    Args:
        line: the whole line.
        position: where it must begin.
        sets: the line has its sets already.

    Raises:
        NotationError: where a strip set can't be so.
    """
    if sets:
        return None
    if found := _COUNTS.match(line, position):
        reps = re.findall(r"\d+", found["items"])
        first, off = found["load"], found["off"]
    elif found := _LOADS.match(line, position):
        reps, first, off = _from_loads(found)
    elif _SIGN.match(line, position):
        raise NotationError(position, _ALIKE)
    else:
        return None
    if len(set(reps)) > 1:
        raise NotationError(position, _ALIKE)
    before = f"{found['sets']}x" if found["sets"] else ""
    text = f"{before}strip {len(reps)} loads -{off} {reps[0]} a load @ {first}"
    return Listed(found.end(), (Piece(text, found.start("items"), written=False),))


def _from_loads(found: re.Match[str]) -> tuple[list[str], str, str]:
    """Repetitions with each load, the first load, and what comes off each time.

    Raises:
        NotationError: where it is not the same each time, or has no unit.
    """
    start = found.start("items")
    items = [one.groups() for one in _ONE.finditer(found["items"])]
    units = {unit for *_, unit in items if unit}
    if len(units) != 1 or not items[-1][2]:
        raise NotationError(start, "write the unit behind the last load, such as '10 @ 40 kg'")
    (unit,) = units
    loads = [float(load.replace(",", ".")) for _, load, _ in items]
    steps = {round(one - after, 3) for one, after in pairwise(loads)}
    shares = {round(100 * (1 - after / one), 1) for one, after in pairwise(loads)}
    even = shares if unit == "%" else steps
    if len(even) != 1 or min(steps) <= 0:
        raise NotationError(start, _ALIKE)
    return [reps for reps, *_ in items], f"{items[0][1]} {unit}", f"{even.pop():g} {unit}"
