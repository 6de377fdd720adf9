"""Other spellings in a line: which of them stands at a place, and what it is in house notation."""

import re
from dataclasses import dataclass, replace

from strength_handbook.dose.clause import NotationError
from strength_handbook.dose.dropped import dropped_at
from strength_handbook.dose.ladder import ladder_at
from strength_handbook.dose.line_words import END
from strength_handbook.dose.listed import listed_at
from strength_handbook.dose.meant import There
from strength_handbook.dose.spelling import (
    Piece,
    Spelling,
    Unclear,
    by_first_sign,
    house_values,
    pieces,
)
from strength_handbook.dose.spelling_values import VALUES
from strength_handbook.dose.spellings import SPELLINGS
from strength_handbook.dose.top_by_effort import top_by_effort_at
from strength_handbook.dose.top_then import top_then_at
from strength_handbook.dose.unclear import UNCLEAR
from strength_handbook.model.samples import sample, unit

_ON_TOP = re.compile(rf"\+\s*(?:{VALUES['mass'].pattern}){END}", re.IGNORECASE)
_SETS = re.compile(r"\d\s*[x×*]|sets", re.IGNORECASE)
_ALL: tuple[Spelling | Unclear, ...] = (*UNCLEAR, *SPELLINGS)
_WAYS = by_first_sign(_ALL)
"""Of several that are equally long the first is meant, so that what is unclear is refused."""
_SEVERAL = (ladder_at, dropped_at, listed_at)
"""What reads several sets at once."""


@dataclass(frozen=True)
class Shorthand:
    """A spelling that stands in a line.

    Attributes:
        end: where it ends in the line.
        text: the same in the house's notation.
        parts: that text in parts, each with its place in the line.
    """

    end: int
    text: str
    parts: tuple[Piece, ...]

    def place(self, position: int) -> int:
        """Where in the line that stands from which a character of the text is made."""
        begins = 0
        for part in self.parts:
            if position < begins + len(part.text):
                return part.start + (position - begins if part.written else 0)
            begins += len(part.text)
        return self.parts[0].start


def shorthand_at(line: str, position: int, least: int, there: There) -> Shorthand | None:
    """The longest spelling that begins at a position.

    Args:
        line: the whole line.
        position: where it must begin.
        least: where it must end at least; what the house's notation reads there ends here.
        there: what stands before it, and what is done.

    Raises:
        NotationError: where it has two meanings, or says what a dose can't hold.
    """
    there = replace(
        there,
        counted=_SETS.search(line) is not None,
        loaded=_ON_TOP.search(line) is not None,
    )
    best: tuple[re.Match[str], Spelling | Unclear] | None = None
    letters = line.casefold()
    for way, one in _WAYS.get(line[position].lower(), ()):
        if not one.only(there) or not all(word in letters for word in way.needs):
            continue
        found = way.pattern.match(line, position)
        if found and found.end() >= least and (best is None or found.end() > best[0].end()):
            best = found, one
    listed = top_by_effort_at(line, position, there) or top_then_at(line, position, there)
    for look in _SEVERAL:
        listed = listed or look(line, position, sets=there.sets)
    if listed is not None and listed.end >= max(least, best[0].end() if best else 0):
        return Shorthand(listed.end, "".join(part.text for part in listed.parts), listed.parts)
    if best is None:
        return None
    found, one = best
    if isinstance(one, Unclear):
        values = house_values(found) | {"all": found[0].strip(), "unit": unit()}
        values |= there.kit.said(values.get("n", ""))
        raise NotationError(position, sample(one.says).format_map(values))
    parts = tuple(pieces(one.house, found))
    return Shorthand(found.end(), "".join(part.text for part in parts), parts)
