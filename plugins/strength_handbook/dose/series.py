"""Sets that differ: each part has its sets, repetitions and load, and may have its own rest.

    5 @ 65 %, 3 @ 75 %, 1+ @ 85 %      1x5 @ 85 %, 3x5 @ 75 %      10, 8, 6, 4 @ 70 %

What holds for all of them, a load or a rest too, stands behind and is said once.
"""

import re
from collections.abc import Iterator
from itertools import groupby
from typing import Any

from strength_handbook.dose.clause import Found, reads
from strength_handbook.dose.key import (
    BY_METHOD,
    Amount,
    AtDoor,
    Board,
    Datum,
    InLine,
    Key,
    KeyUse,
    Lesson,
    Method,
    OnBoard,
    Said,
    Told,
)
from strength_handbook.dose.line_words import COUNT, LOAD, TIMES
from strength_handbook.dose.load import line_load, load_in_words, load_on_board
from strength_handbook.dose.share import Pace, Share
from strength_handbook.dose.texts import (
    clock_words,
    count_words,
    line_count,
    line_time,
    sets_words,
    whole,
)
from strength_handbook.model.count import Count
from strength_handbook.model.dose import Dose
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.methods import SeriesPart
from strength_handbook.model.printed import NBSP, clock

_CLAUSE = r"(?:RIR|RPE|rest|tempo|every|cap|TM|effort)\s*\d|ES\b|each\s+side\b"
_GOES_ON = rf"(?=\s*(?:$|[,;()@]|{_CLAUSE}|then\b))"
"""After repetitions that are a part: no unit, no word that makes another number of them."""
_NEXT = r"\s*(?:[,;]\s*(?:then\s+)?|then\s+)"
_REST = rf"(?:\s*,?\s*rest\s+{TIMES}(?={_NEXT}\d))?"
_BARE = rf"{COUNT}(?:\s*reps?)?{_GOES_ON}"
_NO_TEMPO = r"(?!\d\dx\d(?!\d))"
"""A tempo in four signs, 30X1, is no number of sets."""
_FULL = (
    rf"(?:{_NO_TEMPO}\d+\s*[x×]\s*{COUNT}(?:\s*reps?)?{_GOES_ON}(?:\s*@\s*(?:{LOAD}))?"
    rf"|{COUNT}(?:\s*reps?)?\s*@\s*(?:{LOAD}))"
)
_PATTERN = (
    rf"(?:{_FULL}(?:{_REST}{_NEXT}{_FULL}(?=$|[\s,;()]))+"
    rf"|{_BARE}(?:{_REST}{_NEXT}{_BARE})+(?:\s*@\s*(?:{LOAD}))?)"
)
"""Parts that say their sets or their load; or repetitions alone: a number behind sets is none."""
_ONE = re.compile(
    rf"(?:(?P<sets>\d+)\s*[x×]\s*)?(?P<reps>{COUNT})(?:\s*reps?)?(?:\s*@\s*(?P<load>{LOAD}))?"
    rf"(?:\s*,?\s*rest\s+(?P<rest>{TIMES}))?(?:{_NEXT})?",
    re.IGNORECASE,
)


def _parts(found: re.Match[str]) -> Iterator[Found]:
    """Each part by its keys; a load that stands behind the last one only is that of all."""
    several, at = [], 0
    while at < len(found[0]) and (one := _ONE.match(found[0], at)):
        several.append(one)
        at = one.end()
    common = [one["load"] is not None for one in several] == [False] * (len(several) - 1) + [True]
    if common:
        start = found.start() + several[-1].start("load")
        yield Found(("load",), several[-1]["load"], start)
    keys = ("reps", "rest") if common else ("reps", "load", "rest")
    alike = [list(some) for _, some in groupby(several, lambda one: tuple(map(one.group, keys)))]
    for place, some in enumerate(alike):
        into = ("series", place) if len(alike) > 1 else ()
        sets, first = sum(int(one["sets"] or 1) for one in some), some[0]
        # More than a list of them holds is told at their first number.
        start = found.start() + first.start("reps" if first["sets"] is None else "sets")
        yield Found((*into, "sets"), str(sets), start)
        for key in keys:
            if first[key] is not None:
                yield Found((*into, key), first[key], found.start() + first.start(key))


def _line(series: list[SeriesPart], _: DosePart) -> str:
    alone = all(one.sets == 1 for one in series)
    return ", ".join(text for one in series for text in _part_line(one, alone=alone))


def _part_line(one: SeriesPart, *, alone: bool) -> Iterator[str]:
    # Beside '2x10' a number alone is no set.
    sets = "" if one.sets == 1 and (alone or one.load) else f"{one.sets}x"
    load = "" if one.load is None else f" @ {line_load(one.load)}"
    yield f"{sets}{line_count(one.reps)}{load}"
    if one.rest is not None:
        yield f"rest {line_time(one.rest)}"


def _board(series: list[SeriesPart], board: Board) -> str:
    plain = all(one.sets == 1 and one.load is None and one.rest is None for one in series)
    if plain:
        return ", ".join(one.reps.text for one in series)
    times = "×" if board.short else f"{NBSP}×{NBSP}"
    return ", ".join(
        f"{one.sets}{times}{one.reps.text}"
        + ("" if one.load is None else f"{NBSP}{load_on_board(one.load, board)}")
        + ("" if one.rest is None else f" (rest{NBSP}{clock(one.rest)})")
        for one in series
    )


def _words(series: list[SeriesPart], told: Told) -> Iterator[str]:
    """A sentence for each part; numbers alone are one sentence."""
    if all(one.sets == 1 and one.load is None and one.rest is None for one in series):
        *most, last = (count_words(one.reps) for one in series)
        yield f"Sets of {', '.join(most)} and {last}{told.sides} {told.load}"
        return
    for place, one in enumerate(series):
        sets = sets_words(Count(one.sets, one.sets))
        load = load_in_words(one.load, told.exercise) or told.load
        rest = "" if one.rest is None else f", then rest {clock_words(one.rest)}"
        first = "Then " if place else "First "
        yield f"{first}{sets} of {count_words(one.reps)}{told.sides} {load}".rstrip() + rest


def series_text(dose: Dose) -> str | None:
    """Sets that differ in one line, loads and rests included; None where all are alike."""
    parts = dose.part.series
    return None if parts is None else _line(parts, dose.said)


def _step(a: Dose, b: Dose) -> Iterator[str]:
    """Other sets or repetitions; heavier and lighter is told from loads."""
    if not (a.series or b.series):
        return
    was, now = _counts(a), _counts(b)
    if was != now:
        yield f"other sets: {now} instead of {was}"


def _counts(dose: Dose) -> str:
    """Sets and repetitions without loads."""
    return ", ".join(
        (f"{one.sets.text}×" if one.sets.high > 1 or not dose.series else "")
        + (one.reps.text if one.reps else "")
        for one in dose.alike
    )


def _guide(series: list[SeriesPart], dose: Dose) -> dict[str, Any]:
    """Sets of all parts, and of each part its sets, repetitions, and seconds of its own rest."""
    last = series[-1].reps
    return {
        "s": sum(one.sets for one in series),
        "D": [
            [one.sets, one.reps.low, one.reps.high]
            + ([] if one.rest is None else [whole(float(one.rest))])
            for one in series
        ],
    } | ({"n": [last.low, dose.said.cap or 0, 0]} if last.open else {})


def _share(series: list[SeriesPart], pace: Pace) -> Share:
    """The mean of all of them."""
    sets = sum(one.sets for one in series)
    return pace.repetitions(sum(one.sets * one.reps.middle for one in series) / sets)


_SERIES = Method(
    "series",
    Lesson(
        "sets that differ", "The sets differ: read load and repetitions again before each of them."
    ),
)


SERIES = Key[list[SeriesPart]](
    field="series",
    read=reads((_PATTERN, _parts)),
    line=(InLine.SET, _line),
    board=((OnBoard.SET, _board),),
    words=((Said.TASK, _words),),
    step=_step,
    method=lambda *_: _SERIES,
    data=(Datum("series", series_text, Amount("sets", kind="text")),),
    door=AtDoor.CARRIED,
    use=KeyUse(BY_METHOD, _guide, _share),
)


KEYS: tuple[Key[Any], ...] = (SERIES,)
