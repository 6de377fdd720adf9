"""A heavy set and lighter ones that follow from it: `top set 5 @ 120 kg, back-off 3x5 -10 %`.

Common practice of the trade, no source. What is taken off is taken off here, where the first load
is written, so that every set has a load of its own.
"""

import re
from decimal import Decimal

from strength_handbook.dose.clause import NotationError
from strength_handbook.dose.line_words import COUNT, END, NUMBER, SHARE_OR_MASS
from strength_handbook.dose.listed import Listed
from strength_handbook.dose.meant import There
from strength_handbook.dose.spelling import Piece

_LOAD = rf"{NUMBER}\s*{SHARE_OR_MASS}"
_HEAVY = (
    r"(?:work(?:ing)?\s+up\s+to|build(?:ing)?\s+(?:up\s+)?to|ramp(?:ing)?\s+(?:up\s+)?to)?\s*"
    r"(?:(?:an?|the|one)\s+)?(?:heavy\s+)?(?:top\s*set(?:\s+of\b|:)?|top)?\s*"
)
THEN = r"\s*(?:[,;]?\s*(?:and\s+)?then\b|[,;]|[-=]?>|→)\s*"
BACK = r"(?:back[\s-]?(?:off|down)s?(?:\s+sets?)?(?:\s+(?:with|of|at))?\s*:?\s*)?"
SETS = (
    rf"(?P<sets>\d+)\s*(?:[x×*]|(?:back[\s-]?(?:off|down)\s+)?sets?\s+of\b)\s*"
    rf"(?P<reps>{COUNT})(?:\s*reps?)?"
)
LESS = (
    r"(?:[-−–]|less|minus|drop(?:ping)?(?:\s+(?:by|the\s+weight(?:\s+by)?))?|take\s+off|"
    r"back\s+off(?:\s+by)?)\s*"
)
"""Words before what is taken off,"""
LIGHTER = r"\s*(?:less|lighter|off)"
"""and behind it."""
_OFF = rf"(?:{LESS}(?P<{{name}}>{_LOAD})|(?P<{{name}}2>{_LOAD}){LIGHTER})"
_PATTERN = re.compile(
    rf"{_HEAVY}(?:1\s*[x×*]\s*)?(?P<first>\d+)(?:\s*reps?)?\s*(?:@|\bat\b|\bwith\b)\s*"
    rf"(?P<load>{_LOAD}){THEN}(?:"
    rf"{BACK}{SETS}\s*(?:(?:@|\bat\b|,)\s*)?(?:{_OFF.format(name='off')}|(?P<other>{_LOAD}))"
    rf"|{BACK}{_OFF.format(name='before')}\s*(?:for|,|:|x)?\s*"
    rf"{SETS.replace('?P<sets>', '?P<sets2>').replace('?P<reps>', '?P<reps2>')}){END}",
    re.IGNORECASE,
)


def top_then_at(line: str, position: int, there: There) -> Listed | None:
    """A heavy set and lighter ones that begin at a position; None where none do.

    Args:
        line: the whole line.
        position: where they must begin.
        there: what stands before it, and what is done.

    Raises:
        NotationError: where the lighter load has two meanings, or none.
    """
    found = None if there.sets else _PATTERN.match(line, position)
    # Less than body weight may be meant, and so is refused with both.
    if found is None or there.kind == "body-weight" or (there.adds and _bare_less(found)):
        return None
    own = "sets" if found["sets"] else "sets2"
    their = "reps" if found["sets"] else "reps2"
    off = next(filter(None, map(found.group, ("off", "off2", "before", "before2"))), None)
    heavy, unit = _amount(found["load"])
    sets_text = f"{found[own]}x{found[their]}"
    load = found["other"] if off is None else _lighter(found, heavy, unit, off, sets_text)
    if off is None and _amount(load)[1] != unit:
        return None
    parts = (
        Piece("1x", found.start("first"), written=False),
        Piece(found["first"], found.start("first"), written=True),
        Piece(" @ ", found.start("load"), written=False),
        Piece(found["load"], found.start("load"), written=True),
        Piece(f", {sets_text} @ {load}", found.start(own), written=False),
    )
    return Listed(found.end(), parts)


def _bare_less(found: re.Match[str]) -> bool:
    """True for a mass with no more than a sign before it."""
    off = found["off"] or found["before"]
    if off is None or "%" in off:
        return False
    start = found.start("off" if found["off"] else "before")
    return re.search(r"[-−–]\s*$", found.string[:start]) is not None


def _amount(load: str) -> tuple[Decimal, str]:
    """A number and its unit in the house's notation.

    >>> _amount("62,5 kgs"), _amount("75%")
    ((Decimal('62.5'), 'kg'), (Decimal('75'), '%'))
    """
    number = re.match(NUMBER, load)
    assert number is not None  # noqa: S101  # the pattern begins with one
    return Decimal(number[0].replace(",", ".")), load[number.end() :].strip().lower().rstrip("s")


def _lighter(found: re.Match[str], heavy: Decimal, unit: str, off: str, sets: str) -> str:
    """The lighter load in the unit of the heavy one.

    Raises:
        NotationError: where nothing is left, or percent of percent could be points.
    """
    less, of = _amount(off)
    share = f"{heavy * (100 - less) / 100:.4f}".rstrip("0").rstrip(".")
    points = f"{heavy - less:f}"
    start, first = found.start("load"), f"1x{found['first']} @ {heavy:f} {unit}"
    if of not in ("%", unit) or (less >= 100 if of == "%" else less >= heavy):
        raise NotationError(
            start, f"nothing is left of {heavy:f} {unit} less {off}; write both loads, such as "
            f"'{first}, {sets} @ {heavy * 9 / 10:f} {unit}'"
        )  # fmt: skip
    if unit == "%":
        raise NotationError(
            start,
            f"{off} less than {heavy:f} % can mean {share} %, a share of the load, or {points} %, "
            f"points less; write '{first}, {sets} @ {share} %' or '{first}, {sets} @ {points} %'",
        )
    return f"{share if of == '%' else points} {unit}"
