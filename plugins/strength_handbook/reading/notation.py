"""A dose in one line, as on a whiteboard, taken apart into the keys of the long form.

    4x5 @ 74 %, tempo 4-1-X-0, RIR 2, rest 2:30

Clauses stand in any order after the first; commas between them are welcome and not needed. The
reader does not judge values, it only finds them and remembers their columns, so that whatever is
wrong later is reported at the word that is wrong.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from strength_handbook.reading.suggest import did_you_mean, quoted

_MASS = r"\d+(?:[.,]\d+)?\s*(?:kg|lbs?|g)"
_PERCENT = r"\d+(?:[.,]\d+)?\s*%"
_TIME = r"(?:\d{1,2}:\d{2}|\d+(?:[.,]\d+)?\s*(?:s|sec|min))"
_LENGTH = r"\d+(?:[.,]\d+)?\s*(?:m|ft)"
_COUNT = r"\d+(?:\s*[-–]\s*\d+|\+)?"
_TEMPO = r"[\dXx]+(?:[-–][\dXx]+){2,}"
_END = r"(?=$|[\s,;)@])"
_LOAD = (
    rf"{_PERCENT}(?:\s*(?:of\s+)?(?:system|BM(?:\s*/\s*hand)?|(?:the\s+)?top))?"
    rf"|BW(?:\s*[+\-−–]\s*{_MASS})?|\d+\s*RM|\d+(?:[.,]\d+)?\s*units?|{_MASS}"
)

EXAMPLE = "'4x5 @ 74 %, tempo 4-1-X-0, RIR 2, rest 2:30'"
LONGEST = 200
"""Most characters in a line; keeps the search for clauses short, whatever stands there."""


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
    (rf"(\d+)\s*[x×]\s*({_COUNT})(?:\s*reps?)?{_END}", _take("sets", "reps")),
    (rf"@\s*({_LOAD}){_END}", _take("load")),
    (rf"tempo\s+([^\s,;@]+){_END}", _take("tempo")),
    (rf"({_TEMPO}){_END}", _take("tempo")),
    (rf"RIR\s*([^\s,;@]+){_END}", _take("rir")),
    (rf"RPE\s*([^\s,;@]+){_END}", _take("rpe")),
    (rf"rest\s+({_TIME}){_END}", _take("rest")),
    (rf"every\s+({_TIME}){_END}", _take("every")),
    (rf"E\s*(\d+\s*s){_END}", _take("every")),
    (rf"ES{_END}", _each_side),
    (rf"each\s+side{_END}", _each_side),
    (rf"top\s+(\d+\s*RM|none){_END}", _take("top")),
    (
        rf"last\s+set\s+(\d+)\+(?:\s*,?\s*cap\s+(\d+))?(?:\s*,?\s*RIR\s+(\d+))?{_END}",
        _last_set,
    ),
)  # fmt: skip
_COMPILED = tuple((re.compile(pattern, re.IGNORECASE), handle) for pattern, handle in _CLAUSES)

_WORDS = ("tempo", "RIR", "RPE", "rest", "every", "ES", "ISO", "top", "last")
_EACH_SIDE = "write 'each side' or 'ES' for one side after the other"
_OPEN = "write an open set as '3x5+', or '3x5, last set 5+ cap 10 RIR 1'"
_NEEDS = {
    "rest": "a time belongs after 'rest', such as 'rest 2:30' or 'rest 90 s'",
    "every": "a time belongs after 'every', such as 'every 60 s'",
    "top": "an RM belongs after 'top', such as 'top 5RM', or 'none'",
    "last": "write the last set like 'last set 5+ cap 10 RIR 1'",
    "iso": "sets and seconds belong after 'ISO', such as 'ISO 3x30 s'",
    "rir": "a number belongs after 'RIR', such as 'RIR 2'",
    "rpe": "a number belongs after 'RPE', such as 'RPE 8'",
    "tempo": "four fields belong after 'tempo', such as 'tempo 3-1-X-0'",
    "@": "a load belongs after '@', such as '@ 74 %', '@ 60 kg', '@ 25 % BM' or '@ BW+10 kg'",
    "at": "write '@' for 'at', such as '@ 74 %'",
    "each": _EACH_SIDE, "per": _EACH_SIDE, "side": _EACH_SIDE, "sides": _EACH_SIDE,
    "leg": _EACH_SIDE, "arm": _EACH_SIDE,
    "amrap": _OPEN, "max": _OPEN, "failure": _OPEN, "last-set": _OPEN,
}  # fmt: skip
"""Advice for words that are known but not followed, or not preceded, by what they need."""


def read_dose(line: str) -> list[Found]:
    """Take one line apart.

    >>> [(f.key[0], f.value) for f in read_dose("3x5 @ 70 %, RIR 3")]
    [('sets', '3'), ('reps', '5'), ('load', '70 %'), ('rir', '3')]

    Raises:
        NotationError: at the first word that cannot be read, with what to write instead.
    """
    if len(line) > LONGEST:
        raise NotationError(0, f"a dose has at most {LONGEST} characters; write it like {EXAMPLE}")
    values: list[Found] = []
    seen: set[tuple[str, ...]] = set()
    position = 0
    while True:
        position = _skip(line, position)
        if position >= len(line):
            break
        end, clause = _clause(line, position)
        for value in clause:
            if value.key in seen:
                raise NotationError(
                    value.start, f"'{value.key[-1]}' is given twice in this line; write it once"
                )
            seen.add(value.key)
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
    while position < len(line) and (line[position].isspace() or line[position] in ",;"):
        position += 1
    return position


def _unreadable(line: str, position: int) -> NotationError:
    """What to write instead of the word that begins here."""
    found = re.match(r"@|[^\s,;@]+", line[position:])
    word = found[0] if found else line[position:]
    after = line[position + len(word) :].split(",", maxsplit=1)[0].strip()
    if load := re.match(rf"({_LOAD}){_END}", line[position:], re.IGNORECASE):
        return NotationError(position, f"a load has '@' before it: write '@ {load[0]}'")
    if bare := _bare(word, after):
        return NotationError(position, bare)
    if advice := _NEEDS.get(word.lower()):
        return NotationError(position, advice)
    if re.fullmatch(r"\d+(?:[.,]\d+)?", word):
        text = f"can't tell what {quoted(word)} counts; write the dose like {EXAMPLE}"
        return NotationError(position, text)
    if inside := re.search(r"(/(?:side|leg|arm|hand))|(amrap|max|failure)", word, re.IGNORECASE):
        advice = _EACH_SIDE if inside[1] else _OPEN
        return NotationError(position, f"can't read {quoted(word)} in a dose; {advice}")
    hint = did_you_mean(word, _WORDS) or f"; write it like {EXAMPLE}"
    return NotationError(position, f"can't read {quoted(word)} in a dose{hint}")


def _bare(word: str, after: str) -> str | None:
    """Advice where a number stands without its unit, or an effort where the load belongs."""
    number = re.match(r"\d+(?:[.,]\d+)?(?=$|\s+[^\s%])", after)
    if word == "@" and number:
        return f"{quoted(number[0])} has no unit; write '@ {number[0]} %' or '@ {number[0]} kg'"
    if word == "@" and re.match(r"RPE|RIR", after, re.IGNORECASE):
        return f"effort stands without '@': write {quoted(after)}"
    if word.lower() in ("rest", "every") and number:
        example = f"{word.lower()} {number[0]}"
        return f"{quoted(number[0])} has no unit; write '{example} s' or '{example} min'"
    return None
