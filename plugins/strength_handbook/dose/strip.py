"""Strip sets: weight comes off without rest, and on it goes."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from strength_handbook.dose.clause import reads, take
from strength_handbook.dose.key import (
    BY_METHOD,
    AtDoor,
    Board,
    InLine,
    Key,
    KeyUse,
    Lesson,
    Method,
    OnBoard,
    Said,
    Told,
)
from strength_handbook.dose.line_words import COUNT, LATER, MASS, PERCENT, SETS, TIME
from strength_handbook.dose.share import STRIP_REPS, Pace, Share, Times
from strength_handbook.dose.texts import (
    capital,
    clock_words,
    count_words,
    line_count,
    line_minutes,
    line_number,
    sets_words,
)
from strength_handbook.model.dose import Dose
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.drop import Drop
from strength_handbook.model.loading import OnBar
from strength_handbook.model.methods import Strip
from strength_handbook.model.printed import MINUS, NBSP, clock, count_word

_ADVICE = (
    "write a strip set like 'strip 3 loads -20 % to 36 reps within 3 min', or with '-10 kg' or "
    "'-1 plate', and '6-8 a load'"
)
_PATTERN = (
    rf"(?:{SETS})?strip\s+(\d+)\s+loads?(?:{LATER}[-−–]\s*({PERCENT}|{MASS}|\d+\s*plates?))?"
    rf"(?:{LATER}({COUNT})(?:\s*reps?)?\s+(?:a|each|per)\s+load)?"
    rf"(?:{LATER}to\s+({COUNT})\s+reps?)?(?:{LATER}within\s+({TIME}))?"
)
_VALUES = ("loads", "drop", "reps", "total", "within")
_TIMES = {1: "once", 2: "twice"}


def _line(strip: Strip, part: DosePart) -> str:
    drop = strip.drop
    # All digits of what comes off, so that it comes back the same.
    off = f"{line_number(drop.amount)} %" if drop.kind == "share" else drop.text
    words = [] if part.sets is None else [f"{line_count(part.sets)}x"]
    words.append(f"strip {strip.loads} loads -{off}")
    if strip.reps is not None:
        words.append(f"{line_count(strip.reps)} a load")
    if strip.total is not None:
        words.append(f"to {line_count(strip.total)} reps")
    if strip.within_ is not None:
        words.append(f"within {line_minutes(strip.within_)}")
    return " ".join(words)


def _board(strip: Strip, board: Board) -> str:
    off = strip.drop.text.replace(" %", f"{board.gap}%").replace(" ", NBSP)
    return f"↓{NBSP}{strip.loads}{NBSP}loads {MINUS}{off}"


def _end(strip: Strip, _: Board) -> Iterator[str]:
    if strip.reps is not None:
        yield f"{strip.reps.text} a load"
    if strip.total is not None:
        yield f"Σ{NBSP}{strip.total.text}"
    if strip.within_ is not None:
        yield f"within {clock(strip.within_)}"


def _words(strip: Strip, told: Told) -> Iterator[str]:
    on_bar = isinstance(told.exercise.load, OnBar)
    what = "plates" if on_bar or strip.drop.kind == "plates" else "weight"
    times = strip.loads - 1
    often = _TIMES.get(times, f"{count_word(times)} times")
    total = "" if strip.total is None else f"; {count_words(strip.total)} repetitions in all"
    yield f"{sets_words(told.dose.sets)}{told.sides} with {count_word(strip.loads)} loads"
    if told.load:
        yield f"Start {told.load}"
    yield f"Take {what} off {often} without rest{total}"
    if strip.reps is not None:
        yield f"Do {count_words(strip.reps)} with each load"
    yield _off(strip.drop, on_bar=on_bar)
    if strip.within_ is not None:
        yield f"Be done within {clock_words(strip.within_)}"


def _off(drop: Drop, *, on_bar: bool) -> str:
    """What comes off each time, as a sentence."""
    if drop.kind != "plates":
        return f"About {drop.text} {'comes' if drop.kind == 'share' else 'come'} off each time"
    plates = f"{count_word(drop.amount)} plate{'s' if drop.amount != 1 else ''}"
    side = " from each side" if on_bar else ""
    return f"{capital(plates)} {'comes' if drop.amount == 1 else 'come'} off{side} each time"


_STRIPS = Method(
    "strip",
    Lesson("strip sets", "Weight comes off without rest, left and right in turn, and on it goes."),
)


def _share(strip: Strip, pace: Pace) -> Share:
    counted = strip.counted
    count = counted.middle if counted else strip.loads * STRIP_REPS
    reps = pace.repetitions(count, counted=counted is not None)
    off = Times(strip.loads - 1, pace.rule("strip-time"))
    return replace(
        reps,
        seconds=reps.seconds + off.count * off.each_s,
        terms=(*reps.terms, off),
        formula="broken_set_seconds",
        rules=(*reps.rules, "strip-time"),
    )


def _phone(strip: Strip, _: Dose) -> dict[str, Any]:
    reps, total = strip.reps, strip.total
    found: dict[str, Any] = {"l": strip.loads}
    found |= {"q": [reps.low, reps.high]} if reps is not None else {}
    return found | ({"u": [total.low, total.high]} if total is not None else {})


STRIP = Key[Strip](
    field="strip",
    read=reads(
        (_PATTERN, take("sets", *(f"strip.{key}" for key in _VALUES))),
        advice={"strip": _ADVICE},
        also={"drop": _ADVICE},
    ),
    line=(InLine.SET, _line),
    board=((OnBoard.SET, _board), (OnBoard.BEHIND, _end)),
    words=((Said.TASK, _words),),
    method=lambda *_: _STRIPS,
    door=AtDoor.CARRIED,
    use=KeyUse(BY_METHOD, _phone, _share),
)


KEYS: tuple[Key[Any], ...] = (STRIP,)
