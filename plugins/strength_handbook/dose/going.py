"""Rowing, running and the like in words; strokes a minute; whether one can talk on the way."""

import re
from collections.abc import Iterator
from typing import Any

from strength_handbook.dose.clause import Found, reads, take
from strength_handbook.dose.key import (
    SAID_ONLY,
    Amount,
    AtDoor,
    Board,
    Datum,
    InLine,
    Key,
    Lesson,
    Method,
    OnBoard,
    Said,
    Told,
)
from strength_handbook.dose.texts import clock_words, count_words, line_number
from strength_handbook.model.dose import Count, Dose
from strength_handbook.model.going import Talk
from strength_handbook.model.printed import NBSP, length_words

LONGEST_CARRY_M = 100.0
"""From here on metres are covered, and printed like times of something: no load is carried so far
without setting it down. Common practice, no source."""

GOING = Method(
    "endurance",
    Lesson("work at a pace", "Begin easier than you think, and end as fast as you began."),
)


def _how_often(sets: Count) -> str:
    """How many times the same is done; nothing where it is done once."""
    if sets.high == 1:
        return ""
    twice = sets.low == sets.high == 2
    return " twice" if twice else f" {count_words(sets)} times"


def going_words(dose: Dose, amount: str, load: str) -> str:
    """One sentence: ``Row 500 metres six times``, ``Run 20 minutes``."""
    order = dose.going.doing if dose.going is not None else ""
    return f"{order} {amount}{_how_often(dose.sets)} {load}".rstrip()


def distance_words(metres: float, told: Told) -> str:
    """The sentence of a distance."""
    return going_words(told.dose, length_words(metres), told.load)


def time_words(seconds: float, told: Told) -> str:
    """The sentence of a time."""
    return going_words(told.dose, clock_words(seconds), told.load)


_TURNS = {"row": "stroke", "ski": "pull", "swim": "stroke", "ride": "turn"}


def _turns(dose: Dose | None) -> str:
    """What is counted by the minute."""
    return _TURNS.get(dose.going.doing, "step") if dose is not None and dose.going else "stroke"


def _per_minute(rate: float, board: Board) -> str:
    return f"{rate:g}{NBSP}{'rpm' if _turns(board.dose) == 'turn' else 'spm'}"


def _rate(dose: Dose) -> str | None:
    return None if dose.said.rate is None else f"{dose.said.rate:g}"


def _rate_step(a: Dose, b: Dose) -> Iterator[str]:
    was, now = a.said.rate, b.said.rate
    if was is None or now is None or was == now:
        return
    word = "quicker: " if now > was else "slower: " if now < was else ""
    yield f"{word}{_per_minute(now, Board(b.part, b))} instead of {was:g}"


RATE = Key[float](
    field="rate",
    read=reads(
        (r"(?:(?:@|at\b)\s*)?(\d+(?:\s*[-–]\s*\d+)?)\s*(?:spm|rpm)", take("rate")),
        advice={},
        also=dict.fromkeys(("spm", "rpm"), "a number belongs before it, such as '24 spm'"),
    ),
    line=(InLine.MANNER, lambda rate, _: f"{line_number(rate)} spm"),
    board=((OnBoard.MANNER, _per_minute),),
    words=(
        (
            Said.MOVE,
            lambda rate, told: f"{rate:g} {_turns(told.dose)}s a minute".replace("–", " to "),
        ),
    ),
    step=_rate_step,
    data=(Datum("rate", _rate, Amount("strokes or steps a minute", kind="text")),),
    door=AtDoor.STAYS,
    use=SAID_ONLY,
)


_TALK: dict[Talk, tuple[str, str]] = {
    "can": ("can talk", "Go so that you can talk in whole sentences"),
    "just": ("can just talk", "Go so that you can just say a few words"),
    "cannot": ("cannot talk", "Go so hard that you cannot talk"),
}
"""The three answers of the talk test, on a board and in words: below, near and above the pace that
can be kept for long. Foster and others 2008, from memory."""


def _found_talk(found: re.Match[str]) -> Iterator[Found]:
    words = found[1].lower()
    talk = "just" if words.endswith("just") else "can" if words == "can" else "cannot"
    yield Found(("talk",), talk, found.start())


def _talk_step(a: Dose, b: Dose) -> Iterator[str]:
    if b.said.talk is not None and a.said.talk != b.said.talk:
        yield _TALK[b.said.talk][0]


TALK = Key[Talk](
    field="talk",
    read=reads(
        (r"(can|can\s+just|cannot|can\s+not|can[’']t)\s+talk", _found_talk),
        also=dict.fromkeys(
            ("talk", "can", "cannot"), "write 'can talk', 'can just talk' or 'cannot talk'"
        ),
    ),
    line=(InLine.MANNER, lambda talk, _: _TALK[talk][0]),
    board=((OnBoard.MANNER, lambda talk, _: _TALK[talk][0]),),
    words=((Said.EFFORT, lambda talk, _: _TALK[talk][1]),),
    step=_talk_step,
    data=(Datum("talk", lambda dose: dose.said.talk, Amount("talk test", kind="text")),),
    door=AtDoor.CARRIED,
    use=SAID_ONLY,
)


KEYS: tuple[Key[Any], ...] = (RATE, TALK)
