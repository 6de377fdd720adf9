"""Ladders: repetitions that rise or fall from set to set, `ladder 1-2-3 x 3`, `10-9-…-1`.

Common practice of the trade, no source. Each is put into the house's notation, set by set.
"""

import re
from itertools import pairwise

from strength_handbook.dose.clause import NotationError
from strength_handbook.dose.line_words import END
from strength_handbook.dose.listed import Listed
from strength_handbook.dose.spelling import Piece
from strength_handbook.model.dose_part import MOST_PARTS

_DOTS = r"(?:…|\.{3})"
_TO = r"\d+\s+(?:(?:up|down)\s+)?to\s+\d+"
_BETWEEN = r"\s*[-–,/]\s*"
_SHORT = rf"\d+(?:{_BETWEEN}\d+)*(?:{_BETWEEN}|\s*){_DOTS}(?:{_BETWEEN}|\s*)\d+"
"""Some of the numbers, and dots for the others."""
_LIST = rf"(?:{_TO}|{_SHORT}|\d+(?:{_BETWEEN}\d+)+)"
_BEFORE = r"(?:(?P<before>\d+)\s*[x×*]\s*)?"
_BEHIND = r"(?:\s*[x×*]\s*(?P<behind>\d+)(?:\s*times)?)?"
_CALLED = (
    rf"{_BEFORE}ladders?\s*(?:of\s+|:\s*)?\(?\s*(?P<rungs>{_LIST})\s*\)?{_BEHIND}{END}",
    rf"{_BEFORE}\(?\s*(?P<rungs>{_LIST})\s*\)?\s*ladders?{_BEHIND}{END}",
    rf"{_BEFORE}\(\s*(?P<rungs>\d+(?:{_BETWEEN}\d+){{2,}}|{_SHORT})\s*\){_BEHIND}{END}",
    rf"(?P<before>)(?P<behind>)(?P<rungs>{_SHORT}|\d+\s+(?:up|down)\s+to\s+\d+){END}",
)
_LADDERS = tuple(re.compile(one, re.IGNORECASE) for one in _CALLED)
"""With their word, in brackets, or with dots or words for the numbers between."""
_UNCLEAR = re.compile(
    rf"(?P<rungs>\d+(?:{_BETWEEN}\d+){{2,}})\s*[x×*]\s*(?P<times>\d+){END}(?!\s*(?:%|kg|lb|pound|kilo|s\b))",
    re.IGNORECASE,
)


def ladder_at(line: str, position: int, *, sets: bool) -> Listed | None:
    """A ladder that begins at a position; None where none does.

    Args:
        line: the whole line.
        position: where it must begin.
        sets: the line has its sets already.

    Raises:
        NotationError: where it has two meanings, too many sets, or no even steps.
    """
    if sets:
        return None
    if unclear := _UNCLEAR.match(line, position):
        numbers = re.findall(r"\d+", unclear["rungs"])
        times, one_by_one = unclear["times"], ", ".join(f"1x{one}" for one in numbers[:-1])
        raise NotationError(
            position,
            f"'{unclear[0]}' can be a ladder, 'ladder {'-'.join(numbers)} x {times}', or sets that "
            f"differ, '{one_by_one}, {numbers[-1]}x{times}'; write one of them",
        )
    for pattern in _LADDERS:
        found = pattern.match(line, position)
        if found and not (found["before"] and found["behind"]):
            start = found.start("rungs")
            rungs = _rungs(found["rungs"], start) * int(found["before"] or found["behind"] or 1)
            if not 0 < len(rungs) <= MOST_PARTS:
                text = f"a ladder has 1 to {MOST_PARTS} sets in all, and this one {len(rungs)}"
                raise NotationError(start, f"{text}; write fewer rungs, or go up it less often")
            text = ", ".join(f"{'' if len(rungs) > 1 else '1x'}{one}" for one in rungs)
            return Listed(found.end(), (Piece(text, start, written=False),))
    return None


def _rungs(text: str, start: int) -> list[int]:
    """Repetitions of each set.

    >>> _rungs("1-2-3", 0), _rungs("4 down to 1", 0), _rungs("10-8-…-2", 0), _rungs("1-4", 0)
    ([1, 2, 3], [4, 3, 2, 1], [10, 8, 6, 4, 2], [1, 2, 3, 4])

    Raises:
        NotationError: where the numbers that are left out don't follow from the others.
    """
    numbers = [int(one) for one in re.findall(r"\d+", text)]
    *first, last = numbers
    left_out = re.search(rf"{_DOTS}|\bto\b", text, re.IGNORECASE)
    if min(numbers) < 1:
        raise NotationError(start, "a set has 1 repetition or more; write '1-2-3'")
    if left_out is None and (len(numbers) > 2 or not re.search(r"[-–]", text)):
        return numbers
    steps = {after - one for one, after in pairwise(first)}
    step = steps.pop() if steps else (1 if last > first[0] else -1)
    way = last - first[-1]
    if steps or not step or way % step or way // step < 1:
        raise NotationError(
            start, f"'{text}' leaves out numbers; write all of them, such as '1-2-3'"
        )
    return [*first, *range(first[-1] + step, last + step, step)]
