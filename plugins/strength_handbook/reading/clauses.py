"""The clauses of a one-line dose: how each looks and which keys of the long form it fills.

A clause ends where its last value ends, so commas are welcome and not needed; only words of the
coach's own (a position, how to breathe) run on to the next comma.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TypeAlias

from strength_handbook.model.line_words import (
    COUNT,
    END,
    FREE,
    HEIGHT,
    LOAD,
    MASS,
    METRES,
    NO_PLACE,
    NUMBER,
    PERCENT,
    TEMPO,
    TIME,
    WORD,
    swallowed,
)
from strength_handbook.reading.suggest import quoted


@dataclass(frozen=True, slots=True)
class Found:
    """One value of a dose.

    Attributes:
        key: path of the key in the long form, such as ``("rest",)`` or ``("last-set", "cap")``; a
            number is a place in a list.
        value: its text or number.
        start: position of the value in the line, from 0.
    """

    key: tuple[str | int, ...]
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


Handler: TypeAlias = Callable[[re.Match[str]], Iterator[Found]]


def _take(*keys: str) -> Handler:
    """A handler that stores the match's groups under the given keys; a point goes one deeper."""

    def handle(found: re.Match[str]) -> Iterator[Found]:
        for number, key in enumerate(keys, start=1):
            if found[number] is not None:
                yield Found(tuple(key.split(".")), found[number].strip(), found.start(number))

    return handle


def _free(*keys: str) -> Handler:
    """The same where the last group is in the coach's own words."""
    take = _take(*keys)

    def handle(found: re.Match[str]) -> Iterator[Found]:
        _refuse_swallowed(found, len(keys))
        return take(found)

    return handle


def _refuse_swallowed(found: re.Match[str], group: int) -> None:
    if next_clause := swallowed(found[group]):
        start = found.start(group) + next_clause.start(1)
        before = "a comma belongs" if next_clause.start(1) else "a few words and a comma belong"
        raise NotationError(start, f"{before} before {quoted(next_clause[1])}")


def _with(other: str, advice: str, handle: Handler) -> Handler:
    """A handler for a clause that makes sense only beside another one."""

    def checked(found: re.Match[str]) -> Iterator[Found]:
        if not re.search(other, found.string, re.IGNORECASE):
            raise NotationError(found.start(), advice)
        return handle(found)

    return checked


def _each_side(found: re.Match[str]) -> Iterator[Found]:
    yield Found(("each-side",), value=True, start=found.start())


def _open_sets(found: re.Match[str]) -> Iterator[Found]:
    """`1xAMRAP floor 5` is `1x5+` in other words."""
    if found[3] is None:
        advice = "say how many there must be at least, such as '1xAMRAP floor 5 cap 12'"
        raise NotationError(found.start(2), advice)
    yield Found(("sets",), found[1], found.start(1))
    yield Found(("reps",), f"{found[3]}+", found.start(3))


def _cluster(found: re.Match[str]) -> Iterator[Found]:
    for group in (1, 4):  # the sets stand in front, or behind with an x
        if found[group] is not None:
            yield Found(("sets",), found[group], found.start(group))
    for index, part in enumerate(re.finditer(r"\d+", found[2])):
        yield Found(("cluster", "parts", index), part[0], found.start(2) + part.start())
    pause = found[3] if re.search(r"[:a-z]", found[3], re.IGNORECASE) else f"{found[3]} s"
    yield Found(("cluster", "pause"), pause, found.start(3))


def _pair(found: re.Match[str]) -> Iterator[Found]:
    for index in (0, 1):
        if found[index + 1] is not None:
            yield Found(("bands", "pair", index), found[index + 1], found.start(index + 1))


def _push(found: re.Match[str]) -> Iterator[Found]:
    """The ramp stands behind the words that say where, and is no part of them."""
    ramp = re.fullmatch(rf"(.*\S)\s+ramp\s+({TIME})\s*", found[1], re.IGNORECASE)
    yield Found(("push", "at"), ramp[1] if ramp else found[1].strip(), found.start(1))
    if ramp:
        yield Found(("push", "ramp"), ramp[2], found.start(1) + ramp.start(2))


def _checked_push(found: re.Match[str]) -> Iterator[Found]:
    _refuse_swallowed(found, 1)
    return _push(found)


def _setting(found: re.Match[str]) -> Iterator[Found]:
    yield Found(("settings", found[1]), found[2], found.start(2))


WORDS = (
    "tempo", "RIR", "RPE", "rest", "every", "ES", "ISO", "top", "last", "AMRAP", "cap", "pace",
    "shared", "at", "push", "pause", "return", "help", "bands", "chains", "box", "team", "setting",
    "TM", "strip", "deload", "sets", "reps", "load", "hold", "time", "distance", "test", "ramp",
    "breathe", "range", "intent",
)  # fmt: skip
"""Words that begin a clause."""

_SETS = rf"({COUNT})\s*[x×]\s*"
_BAND = rf"(?!(?:{'|'.join(WORDS)})\b|{PERCENT})([\w-]+)"
_LATER = r"\s*,?\s*"
_CLUSTER = (
    rf"(?:{_SETS})?\(\s*(\d+(?:\s*\+\s*\d+)+)\s*\)\s*/\s*({TIME}|{NUMBER})"
    rf"(?:\s*[x×]\s*({COUNT}))?{END}"
)
_STRIP = (
    rf"(?:{_SETS})?strip\s+(\d+)\s+loads?(?:{_LATER}[-−–]\s*({PERCENT}))?"
    rf"(?:{_LATER}to\s+(\d+)\s+reps?)?(?:{_LATER}within\s+({TIME}))?{END}"
)
_DELOAD = "a share of the {0} belongs behind 'deload of', such as 'deload of 3, {1}'"

_CLAUSES: tuple[tuple[str, Handler], ...] = (
    (rf"ISO\s+{_SETS}({TIME}){END}", _take("sets", "hold")),
    (
        rf"(?:{_SETS})?({TIME})\s+AMRAP{END}",
        _with(
            r"\bpace\s+\d",
            "say the pace below which the set is over, such as '6 min AMRAP, pace 8/min'",
            _take("sets", "time"),
        ),
    ),
    (rf"{_SETS}({TIME}){END}", _take("sets", "time")),
    (rf"({COUNT})\s*(?:[x×]|->|→)\s*({METRES}){END}", _take("sets", "distance")),
    (rf"{_SETS}(AMRAP)(?:{_LATER}floor\s+(\d+))?{END}", _open_sets),
    (_CLUSTER, _cluster),
    (_STRIP, _take("sets", "strip.loads", "strip.drop", "strip.total", "strip.within")),
    (rf"{_SETS}({COUNT})(?:\s*reps?)?{END}", _take("sets", "reps")),
    (rf"@\s*({LOAD}){END}", _take("load")),
    (rf"tempo\s+([^\s,;]+){END}", _take("tempo")),
    (rf"({TEMPO}){END}", _take("tempo")),
    (rf"(?:@\s*)?RIR\s*([^\s,;]+){END}", _take("rir")),
    (rf"(?:@\s*)?RPE\s*([^\s,;]+){END}", _take("rpe")),
    (rf"rest\s+({TIME}){END}", _take("rest")),
    (rf"every\s+({TIME}){END}", _take("every")),
    (rf"E\s*(\d+\s*s){END}", _take("every")),
    (rf"ES{END}", _each_side),
    (rf"each\s+side{END}", _each_side),
    (rf"top\s+(\d+\s*RM|none){END}", _take("top")),
    (rf"ramp\s+to\s+(\d+\s*RM){END}", _take("top")),
    (rf"test\s+(\d+)\s*RM(?:\s+in\s+(\d+)\s+attempts?)?{END}", _take("test.rm", "test.attempts")),
    (
        rf"last\s+set\s+(\d+)\+(?:{_LATER}cap\s+(\d+))?(?:{_LATER}RIR\s+(\d+))?{END}",
        _take("last-set.floor", "last-set.cap", "last-set.rir"),
    ),
    (rf"cap\s+(\d+){END}", _take("cap")),
    (rf"pace\s+(\d+)(?:\s*/\s*min|\s+a\s+minute)?{END}", _take("density.pace")),
    (
        rf"shared\s+by\s+(\d+){END}",
        _with(r"\bpace\s+\d", "say the pace too, such as 'pace 8/min'", _take("density.sharing")),
    ),
    (rf"at\s+(?!{NO_PLACE})({FREE})", _free("position")),
    (rf"push\s+at\s+({FREE})", _checked_push),
    (rf"pause\s+({TIME})\s+at\s+({FREE})", _free("pause.time", "pause.at")),
    (rf"return\s+by\s+({FREE})", _free("return-by")),
    (rf"breathe\s+({FREE})", _free("breathe")),
    (rf"range\s+({FREE})", _free("range")),
    (rf"intent\s+({WORD}){END}", _take("intent")),
    (rf"TM\s+({PERCENT}){END}", _take("training-max")),
    (rf"help\s+band\s+([\w-]+){END}", _take("assist.band")),
    (rf"help\s+by\s+({FREE})", _free("assist.by")),
    (rf"bands?\s+({PERCENT})\s+at\s+(?:the\s+)?top{END}", _take("bands.top-share")),
    (rf"bands?\s+{_BAND}(?:\s+(?:and\s+)?{_BAND})?{END}", _pair),
    (rf"chains?\s+({PERCENT})\s+at\s+(?:the\s+)?top{END}", _take("chains.top-share")),
    (rf"chains?\s+(\d+)\s+pairs?{END}", _take("chains.pairs")),
    (rf"box\s+({HEIGHT}){END}", _take("height")),
    (
        rf"team\s+(\d+)\s*[x×]\s*({MASS})(?:{_LATER}turn(?:\s+every)?\s+({TIME}))?{END}",
        _take("team.bearers", "team.mass", "team.turn-every"),
    ),
    (rf"setting\s+({WORD})\s+({WORD}){END}", _setting),
    (rf"deload\s+of\s+(?:week\s+)?(\d+){END}", _take("deload-of")),
    *(
        (
            rf"{word}\s+({PERCENT}){END}",
            _with(
                r"\bdeload\s+of\s+(?:week\s+)?\d",
                _DELOAD.format(word, f"{word} 60 %")
                + ("; for the load itself write '@ 60 %'" if word == "load" else ""),
                _take(f"keep-{word}"),
            ),
        )
        for word in ("sets", "load", "hold")
    ),
    (rf"sets\s+({COUNT}){END}", _take("sets")),
    (rf"reps\s+({COUNT}){END}", _take("reps")),
    (rf"hold\s+({TIME}){END}", _take("hold")),
    (rf"time\s+({TIME}){END}", _take("time")),
    (rf"distance\s+({METRES}){END}", _take("distance")),
)  # fmt: skip

CLAUSES = tuple((re.compile(pattern, re.IGNORECASE), handle) for pattern, handle in _CLAUSES)
"""The clauses in the order in which they are tried."""
