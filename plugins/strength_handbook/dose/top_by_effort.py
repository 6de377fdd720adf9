"""A top set that leaves some, and what follows: `work up to a 5 @ RPE 8, then 3x5 @ RPE 7`.

Common practice of the trade, no source. What follows is lighter by its own effort, or by a share of
that top set.
"""

import re

from strength_handbook.dose.clause import NotationError
from strength_handbook.dose.line_words import END, NUMBER
from strength_handbook.dose.listed import Listed
from strength_handbook.dose.meant import There
from strength_handbook.dose.spelling import Piece
from strength_handbook.dose.spelling_values import VALUES, house_range
from strength_handbook.dose.top_then import BACK, LESS, LIGHTER, SETS, THEN

_SMALL = r"(?:10|[5-9])(?:[.,]5)?(?![\d.,]*\s*(?:%|kg|lb|cm|in\b))"
"""A number that is an effort where the bar alone weighs more."""
_RANGE = rf"{NUMBER}(?:\s*(?:-|–|to)\s*{NUMBER})?"
_WORD = (
    rf"(?:@|\bat\b|,)?\s*(?:(?P<w{{n}}>RPE|RIR)\s*:?\s*(?P<v{{n}}>{_RANGE})"
    rf"|(?P<r{{n}}>{_RANGE})\s*(?P<k{{n}}>RPE|RIR))"
)
_EFFORT = rf"\s*(?:{_WORD}|(?:@|\bat\b)\s*(?P<bare{{n}}>{_SMALL}))"
_UP = r"(?:(?:work|build|ramp)(?:ing)?\s+(?:up\s+)?to\s+)"
_TOP = r"(?:top\s*set(?:\s+of\b|:)?|top)"
_REPS = r"(?:1\s*[x×*]\s*)?(?P<reps>\d{1,2}|singles?|doubles?|triples?)(?:\s*reps?)?"
_HEAD = re.compile(
    rf"(?P<lead>(?:{_UP}(?:an?\s+|the\s+)?(?:heavy\s+)?(?:{_TOP}\s*)?"
    rf"|(?:an?\s+|heavy\s+)*{_TOP}\s*)?)(?:heavy\s+)?{_REPS}{_EFFORT.format(n=1)}",
    re.IGNORECASE,
)
_SHARE = rf"(?P<share{{n}}>{NUMBER})\s*%"
_OF_IT = r"\s*(?:of\s+)?(?:it|that|the\s+top(?:\s+(?:set|single))?|top(?:\s+set)?)\b"
_BEHIND = re.compile(
    rf"{THEN}{BACK}(?:"
    rf"{SETS}(?:{_EFFORT.format(n=2)}|\s*(?:@|\bat\b|,)?\s*(?:{LESS}{_SHARE.format(n=1)}"
    rf"|{_SHARE.format(n=2)}{LIGHTER}|{_SHARE.format(n=3)}(?P<of>{_OF_IT})?))"
    rf"|{LESS}{_SHARE.format(n=4)}\s*(?:for|,|:|and|x)?\s*"
    + SETS.replace("<sets>", "<sets4>").replace("<reps>", "<reps4>")
    + rf"){END}",
    re.IGNORECASE,
)
_NAMED = {"s": 1, "d": 2, "t": 3}


def top_by_effort_at(line: str, position: int, there: There) -> Listed | None:
    """A top set by effort that begins at a position, and what follows; None where none does.

    Args:
        line: the whole line.
        position: where it must begin.
        there: what stands before it, and what is done.

    Raises:
        NotationError: where what follows has two meanings.
    """
    head = None if there.sets else _HEAD.match(line, position)
    if head is None:
        return None
    alone = re.match(rf"{_UP}|{_TOP}\s*set\b", head["lead"], re.IGNORECASE) is not None
    if head["bare1"] and there.kind != "bar":
        if alone:
            raise _unclear_effort(head.start("bare1"), head["bare1"])
        return None
    reps = head["reps"]
    top = f"{_NAMED.get(reps[0].lower(), reps)} @ {_effort(head, 1)}"
    begun = Piece(f"ramp to {top}", head.start("reps"), written=False)
    if behind := _BEHIND.match(line, head.end()):
        return Listed(behind.end(), (begun, *_following(behind, there, top)))
    if not alone or not re.match(END, line[head.end() :]):
        return None
    if _more_sets(line, head.end()):
        raise NotationError(
            head.end(),
            f"what follows 'ramp to {top}' here is a share of it, '3x5 @ 90 % of top', or has its "
            "own effort, '3x5, RPE 7'; anything else is a slot of its own, with its own order",
        )
    return Listed(head.end(), (begun,))


def _unclear_effort(position: int, number: str) -> NotationError:
    return NotationError(
        position,
        f"'@ {number}' can be an effort, 'RPE {number}', or a load; write its word or its unit",
    )


def _more_sets(line: str, position: int) -> bool:
    """True where further sets stand in the next clause that are not understood."""
    clause = line[position:].lstrip(" ,;").split(",")[0]
    return re.match(r"\d+\s*[x×*]\s*\d|.*\bsets\b|.*\bthen\b", clause, re.IGNORECASE) is not None


def _following(behind: re.Match[str], there: There, top: str) -> tuple[Piece, ...]:
    """The sets that follow, in the house's notation.

    Raises:
        NotationError: for a percentage of nobody knows what, and an effort without its word.
    """
    own = "sets4" if behind["sets4"] else "sets"
    sets = f"{behind[own]}x{behind['reps4' if behind['sets4'] else 'reps']}"
    start = behind.start(own)
    less = behind["share1"] or behind["share2"] or behind["share4"]
    if less is not None:
        text = f"@ {VALUES['off'].house(f'{less} %')} of top"
    elif behind["of"]:
        text = f"@ {behind['share3']} % of top"
    elif behind["share3"]:
        share = behind["share3"]
        raise NotationError(
            behind.start("share3"),
            f"'{share} %' can be of today's top set, 'ramp to {top}, {sets} @ {share} % of top', "
            f"or of the tested best, which is a slot of its own: '{sets} @ {share} %'",
        )
    elif behind["bare2"] and there.kind != "bar":
        raise NotationError(
            start,
            f"'@ {behind['bare2']}' can be an effort or a load; write 'RPE {behind['bare2']}'",
        )
    else:
        text = f", {_effort(behind, 2)}"
    if sets.startswith("1x") and text.startswith(",") and top.startswith(f"{sets[2:]} @"):
        raise NotationError(
            start,
            f"one more set of as many is no top set and no other: write '{sets} @ 90 % of top', or "
            "a slot of its own",
        )
    gap = "" if text.startswith(",") else " "
    return (Piece(f", {sets}{gap}{text}", start, written=False),)


def _effort(found: re.Match[str], number: int) -> str:
    """An effort with its word.

    >>> _effort(re.match(_EFFORT.format(n=1), "@ 7 to 8 RPE"), 1)
    'RPE 7-8'
    """
    if bare := found[f"bare{number}"]:
        return f"RPE {bare}"
    word = found[f"w{number}"] or found[f"k{number}"]
    return f"{word.upper()} {house_range(found[f'v{number}'] or found[f'r{number}'])}"
