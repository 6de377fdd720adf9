"""A dose in one line, as on a whiteboard, taken apart into the keys of the long form.

    4x5 @ 74 %, tempo 4-1-X-0, RIR 2, rest 2:30

Clauses stand in any order after the first; commas between them are welcome and not needed, except
after words of the coach's own. Where the trade spells a clause in another way, it is read as the
clause that it stands for. The reader does not judge values, it only finds them and remembers their
columns, so that whatever is wrong later is reported at the word that is wrong.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from functools import partial
from operator import add

from strength_handbook.dose.clause import Found, Handler, NotationError
from strength_handbook.dose.line_words import LONGEST, NUMBER
from strength_handbook.dose.meant import There
from strength_handbook.dose.table import CLAUSES, IN_PARTS
from strength_handbook.reading.doing import ANYTHING, EXAMPLE, Doing
from strength_handbook.reading.long_form import part_of
from strength_handbook.reading.named import named_at
from strength_handbook.reading.shorthand import shorthand_at
from strength_handbook.reading.unreadable import unreadable

__all__ = ["EXAMPLE", "Found", "NotationError", "read_dose", "read_house"]

_IN_BRACKETS = re.compile(r"\(([^()]+)\)")
_BETWEEN = re.compile(
    r"(?:[\s,;]|[|·](?=\s)|//(?=\s)|\.(?=\s|$)"
    rf"|(?<=\s)(?:—(?=\s)|[-–](?=\s+[a-z@])|/(?=\s+(?:rest|tempo|R|@|{NUMBER}\s*(?:%|kg|lb)))))+",
    re.IGNORECASE,
)

_Place = Callable[[int], int]
"""From a position in a text to the one in the line of which it is made."""

_DIFFERENT = (
    "; sets that differ stand side by side, '1x5 @ 85 %, 3x5 @ 75 %', and behind them what holds "
    "for all; where more is different, give each its own slot"
)


@dataclass
class _Line:
    """What was found so far.

    Attributes:
        other: other spellings are read too.
        doing: what is done.
        values: in the order of the line.
        seen: the keys that clauses have filled.
    """

    other: bool
    doing: Doing
    values: list[Found] = field(default_factory=list)
    seen: set[tuple[str | int, ...]] = field(default_factory=set)

    @property
    def there(self) -> There:
        """What a spelling may depend on."""
        sets = ("sets",) in self.seen
        reps = sets and ("reps",) in self.seen
        counted = sets and not self.seen.isdisjoint({("reps",), ("time",), ("distance",)})
        work = counted or ("series",) in self.seen
        heavy = ("load",) in self.seen or ("series",) in self.seen
        topped, doing = ("top",) in self.seen, self.doing
        return There(
            sets, reps, work, heavy=heavy, topped=topped,
            kind=doing.kind, hands=doing.hands, jump=doing.jump, kit=doing.kit,
        )  # fmt: skip

    def _said_more(self, remark: Found) -> bool:
        """Put one remark behind another: each of them is true."""
        before = [value for value in self.values if value.key == remark.key == ("remark",)]
        for value in before:
            both = replace(value, value=f"{value.value} and {remark.value}")
            self.values[self.values.index(value)] = both
        return bool(before)

    def leave_out(self, words: str, start: int) -> None:
        """Words that add nothing to the numbers."""
        self.values.append(Found((), words.strip(), start))

    def add(self, clause: Iterator[Found], place: _Place) -> None:
        own = [value for value in clause if not self._said_more(value)]
        keys = [value.key for value in own]
        for index, value in enumerate(own):
            block = _block(value)
            if block in self.seen or value.key in keys[:index]:
                advice = _DIFFERENT if block[-1] in ("sets", "reps", "load") else ""
                text = f"'{block[-1]}' is given twice in this line; write it once{advice}"
                raise NotationError(value.start, text)
        self.seen |= {_block(value) for value in own}
        self.values += (replace(value, start=place(value.start)) for value in own)


def read_dose(line: str, doing: Doing = ANYTHING) -> list[Found]:
    """Take one line apart.

    >>> [(f.key[0], f.value) for f in read_dose("3x5 @ 70 %, RIR 3")]
    [('sets', '3'), ('reps', '5'), ('load', '70 %'), ('rir', '3')]
    >>> [(f.key[0], f.value) for f in read_dose("3 sets of 5 with 60s rest")]
    [('sets', '3'), ('reps', '5'), ('rest', '60 s')]

    Args:
        line: as it stands in the file.
        doing: what is done.

    Raises:
        NotationError: at the first word that cannot be read, with what to write instead.
    """
    try:
        house = read_house(line)
    except NotationError:
        return _found(line, doing, other=True)
    keys = {value.key for value in house}
    if part_of(house) is not None and (("sets",) in keys or ("tempo",) not in keys):
        return house
    # A value that can't be may be another spelling; four numbers alone may be no tempo.
    return _found(line, doing, other=True)


def read_house(line: str) -> list[Found]:
    """The same for the house's own notation only.

    Raises:
        NotationError: at the first word that is none of it.
    """
    return _found(line, ANYTHING, other=False)


def _found(line: str, doing: Doing, *, other: bool) -> list[Found]:
    if len(line) > LONGEST:
        raise NotationError(
            0, f"a dose has at most {LONGEST} characters; write it like {doing.shown}"
        )
    found = _Line(other, doing)
    _read(line, found, lambda position: position)
    if not found.values:
        raise NotationError(0, f"the dose is empty; write it like {doing.shown}")
    return found.values


def _read(text: str, line: _Line, place: _Place) -> None:
    """Add all clauses of a text.

    Raises:
        NotationError: at a position in this text.
    """
    position = 0
    while (position := _skip(text, position)) < len(text):
        house = _clause(text, position)
        words = named_at(text, position, line.doing) if line.other else ""
        end = max(house[0].end() if house else position, position + len(words))
        if line.other and (short := shorthand_at(text, position, end, line.there)):
            # It says everything in the house's notation.
            if not short.text:
                line.leave_out(text[position : short.end], place(position))
            _read_inner(short.text, replace(line, other=False), short.place, place)
            position = short.end
        elif house is not None and house[0].end() == end:
            found, handle = house
            line.add(handle(found), place)
            position = end
        elif words:
            line.leave_out(words, place(position))
            position = end
        elif line.other and (inside := _IN_BRACKETS.match(text, position)):
            try:
                _read_inner(inside[1], line, partial(add, inside.start(1)), place)
            except NotationError as error:
                if inside[1][0].isalpha():
                    raise
                raise unreadable(text, position, line.doing.shown) from error
            position = inside.end()
        else:
            raise unreadable(text, position, line.doing.shown)


def _read_inner(text: str, line: _Line, inner: _Place, place: _Place) -> None:
    """Add what is made of a part of a text; `inner` leads from it to that text."""
    try:
        _read(text, line, lambda position: place(inner(position)))
    except NotationError as error:
        raise NotationError(inner(error.start), str(error)) from None


def _block(value: Found) -> tuple[str | int, ...]:
    """The key a clause fills: two clauses may fill different settings, and pace and sharing."""
    return value.key if value.key[0] in IN_PARTS else value.key[:1]


def _clause(line: str, position: int) -> tuple[re.Match[str], Handler] | None:
    """The clause of the house's notation that starts here, and what makes values of it."""
    matches = ((pattern.match(line, position), handle) for pattern, handle in CLAUSES)
    there = [(found, handle) for found, handle in matches if found]
    return max(there, key=lambda one: one[0].end(), default=None)


def _skip(line: str, position: int) -> int:
    """Past gaps, commas, and what the trade puts between clauses."""
    found = _BETWEEN.match(line, position)
    return found.end() if found else position
