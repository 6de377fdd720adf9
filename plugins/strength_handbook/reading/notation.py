"""A dose in one line, as on a whiteboard, taken apart into the keys of the long form.

    4x5 @ 74 %, tempo 4-1-X-0, RIR 2, rest 2:30

Clauses stand in any order after the first; commas between them are welcome and not needed. The
reader does not judge values, it only finds them and remembers their columns, so that whatever is
wrong later is reported at the word that is wrong.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from strength_handbook.reading.suggest import did_you_mean

_MASS = r"\d+(?:[.,]\d+)?\s*(?:kg|lbs?|g)"
_PERCENT = r"\d+(?:[.,]\d+)?\s*%"
_TIME = r"(?:\d{1,2}:\d{2}|\d+(?:[.,]\d+)?\s*(?:s|sec|min))"
_LENGTH = r"\d+(?:[.,]\d+)?\s*(?:m|ft)"
_COUNT = r"\d+(?:\s*[-–]\s*\d+|\+)?"
_TEMPO = r"[\dXx]+(?:[-–][\dXx]+){2,}"
_END = r"(?=$|[\s,)])"
_LOAD = (
    rf"{_PERCENT}(?:\s*(?:of\s+)?(?:system|BM(?:\s*/\s*hand)?|(?:the\s+)?top))?"
    rf"|BW(?:\s*[+\-−–]\s*{_MASS})?|\d+\s*RM|\d+(?:[.,]\d+)?\s*units?|{_MASS}"
)

EXAMPLE = "'4x5 @ 74 %, tempo 4-1-X-0, RIR 2, rest 2:30'"


@dataclass(frozen=True, slots=True)
class Found:
    """One value of a dose.

    Attributes:
        key: path of the key in the long form, such as ``("rest",)`` or ``("last-set", "cap")``.
        value: its text or number.
        start: position of the value in the line, from 0.
    """

    key: tuple[str, ...]
    value: str | int | bool
    start: int


class NotationError(ValueError):
    """A word in the line that cannot be read.

    Attributes:
        start: its position in the line, from 0.
    """

    def __init__(self, start: int, text: str) -> None:
        self.start = start
        super().__init__(text)


def _take(*keys: str) -> Callable[[re.Match[str]], Iterator[Found]]:
    """A handler that stores the match's groups under the given keys."""

    def handle(found: re.Match[str]) -> Iterator[Found]:
        for number, key in enumerate(keys, start=1):
            if found[number] is not None:
                yield Found((key,), found[number].strip(), found.start(number))

    return handle


def _last_set(found: re.Match[str]) -> Iterator[Found]:
    for number, key in enumerate(("floor", "cap", "rir"), start=1):
        if found[number] is not None:
            yield Found(("last-set", key), int(found[number]), found.start(number))


def _each_side(found: re.Match[str]) -> Iterator[Found]:
    yield Found(("each-side",), value=True, start=found.start())


_CLAUSES: tuple[tuple[str, Callable[[re.Match[str]], Iterator[Found]]], ...] = (
    (rf"ISO\s+(\d+)\s*[x×]\s*({_TIME}){_END}", _take("sets", "hold")),
    (rf"(\d+)\s*[x×]\s*({_TIME}){_END}", _take("sets", "time")),
    (rf"(\d+)\s*(?:[x×]|->|→)\s*({_LENGTH}){_END}", _take("sets", "distance")),
    (rf"(\d+)\s*[x×]\s*({_COUNT}){_END}", _take("sets", "reps")),
    (rf"@\s*({_LOAD}){_END}", _take("load")),
    (rf"tempo\s+([^\s,]+){_END}", _take("tempo")),
    (rf"({_TEMPO}){_END}", _take("tempo")),
    (rf"RIR\s*([^\s,]+){_END}", _take("rir")),
    (rf"RPE\s*([^\s,]+){_END}", _take("rpe")),
    (rf"rest\s+({_TIME}){_END}", _take("rest")),
    (rf"every\s+({_TIME}){_END}", _take("every")),
    (rf"E(\d+\s*s){_END}", _take("every")),
    (rf"ES{_END}", _each_side),
    (rf"each\s+side{_END}", _each_side),
    (rf"top\s+(\d+\s*RM){_END}", _take("top")),
    (
        rf"last\s+set\s+(\d+)\+(?:\s*,?\s*cap\s+(\d+))?(?:\s*,?\s*RIR\s+(\d+))?{_END}",
        _last_set,
    ),
)  # fmt: skip
_COMPILED = tuple((re.compile(pattern, re.IGNORECASE), handle) for pattern, handle in _CLAUSES)

_WORDS = ("tempo", "RIR", "RPE", "rest", "every", "ES", "ISO", "top", "last")
_NEEDS = {
    "rest": "a time after 'rest', such as 'rest 2:30' or 'rest 90 s'",
    "every": "a time after 'every', such as 'every 60 s'",
    "top": "an RM after 'top', such as 'top 5RM'",
    "last": "'last set 5+ cap 10 RIR 1'",
    "iso": "sets and seconds after 'ISO', such as 'ISO 3x30 s'",
    "rir": "a number after 'RIR', such as 'RIR 2'",
    "rpe": "a number after 'RPE', such as 'RPE 8'",
    "tempo": "four fields after 'tempo', such as 'tempo 3-1-X-0'",
    "@": "a load after '@', such as '@ 74 %', '@ 60 kg', '@ 25 % BM' or '@ BW+10 kg'",
}


def read_dose(line: str) -> list[Found]:
    """Take one line apart.

    >>> [(f.key[0], f.value) for f in read_dose("3x5 @ 70 %, RIR 3")]
    [('sets', '3'), ('reps', '5'), ('load', '70 %'), ('rir', '3')]

    Raises:
        NotationError: at the first word that cannot be read, with what to write instead.
    """
    values: list[Found] = []
    seen: dict[tuple[str, ...], int] = {}
    position = 0
    while True:
        position = _skip(line, position)
        if position >= len(line):
            break
        end, clause = _clause(line, position)
        for value in clause:
            if value.key in seen:
                raise NotationError(value.start, f"'{value.key[-1]}' is given twice; write it once")
            seen[value.key] = value.start
            values.append(value)
        position = end
    if not values:
        raise NotationError(0, f"the dose is empty; write it like {EXAMPLE}")
    return values


def _clause(line: str, position: int) -> tuple[int, Iterator[Found]]:
    """The clause that starts here: where it ends, and its values."""
    for pattern, handle in _COMPILED:
        found = pattern.match(line, position)
        if found:
            return found.end(), handle(found)
    raise _unreadable(line, position)


def _skip(line: str, position: int) -> int:
    while position < len(line) and line[position] in " ,\t\u00a0":
        position += 1
    return position


def _unreadable(line: str, position: int) -> NotationError:
    word = re.match(r"@|[^\s,@]+", line[position:])
    text = word[0] if word else line[position:]
    need = _NEEDS.get(text.lower())
    if need:
        return NotationError(position, f"the dose needs {need}")
    if re.fullmatch(r"\d+(?:[.,]\d+)?", text):
        return NotationError(
            position, f"can't tell what '{text}' counts; write the dose like {EXAMPLE}"
        )
    hint = did_you_mean(text, _WORDS)
    return NotationError(
        position, f"can't read '{text}' in a dose{hint or f'; write it like {EXAMPLE}'}"
    )
