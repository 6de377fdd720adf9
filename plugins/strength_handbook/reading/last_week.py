"""A dose as another week's with a change: `last week +2.5 kg`, `as last week, one set more`.

It is put into the house's notation in full, from what that week says in the same file. What can't
be worked out, such as kilograms more than a percentage, is refused with what to write.
"""

import re
from collections.abc import Mapping
from typing import Any

from pydantic import ValidationError

from strength_handbook.dose.clause import NotationError
from strength_handbook.dose.printing import dose_line
from strength_handbook.dose.texts import OneLineError
from strength_handbook.model.dose_part import DosePart, merged
from strength_handbook.model.shape import quoted
from strength_handbook.reading.changed import MoreOf, changed, fields_of
from strength_handbook.reading.doing import Doing
from strength_handbook.reading.long_form import part_of
from strength_handbook.reading.notation import read_dose, read_house
from strength_handbook.reading.source import Plain

_AS = r"(?:(?:the\s+)?same\s+as|as(?:\s+in)?|like|repeat)"
_WEEK = (
    rf"(?:(?:{_AS}|@|at|with)?\s*last\s+week(?:['’]s)?|(?:{_AS}|^)\s*week\s+(?P<week>\d{{1,2}}))"
    r"(?:\s+(?:weights?|loads?|dose))?"
)
_SAME = (
    r"(?:the\s+)?same\s+(?:weights?|loads?|dose|sets(?:\s*(?:and|&|/|x)\s*reps)?|reps)(?!\s+(?:across|for\s+all|throughout|each|all))"
    r"|^\s*(?:same|repeat)\b(?:\s*$|(?=\s*[,;+]))"
)
_BASE = re.compile(rf"{_WEEK}|{_SAME}", re.IGNORECASE)
_NUMBER = r"(?:\d+(?:[.,]\d+)?|one|two|three|an?)"
_WHAT = (
    r"(?:kgs?|kilos?|lbs?|pounds?|%|percent|sets?|reps?|repetitions?|s|secs?|seconds?|m|metres?)"
)
_LESS = r"fewer|less|lighter|shorter"
_MORE = rf"more|extra|additional|further|heavier|longer|{_LESS}"
_CHANGE = re.compile(
    r"(?:\b(?:but|and|with)\s+)?"
    rf"(?:(?<!\d)(?<!\d\s)(?P<sign>\+|plus\b|add(?:ing)?\b|[-−–]|minus\b|less\b)\s*)?(?P<number>{_NUMBER})\s*"
    rf"(?:(?P<before>{_MORE})\s+)?(?P<what>{_WHAT})(?![a-z\d])(?:\s+(?P<behind>{_MORE})\b)?"
    r"(?:\s+(?:per|each|a|in\s+each|in\s+every)\s+(?:set|side))?"
    r"(?:\s+(?:from|than|over|on)\s+(?P<last>last\s+week))?",
    re.IGNORECASE,
)
_CUT = "\0"
"""In place of what was taken out of a line."""
_AROUND = r"(?:[\s,;:@+()]|\b(?:but|and|with|then|at)\b)*"
_CUTS = re.compile(rf"{_AROUND}{_CUT}{_AROUND}", re.IGNORECASE)
_SECONDS = ("s", "sec", "secs", "second", "seconds")
_WORDS = {"a": "1", "an": "1", "one": "1", "two": "2", "three": "3"}
_SIGNS_LESS = ("-", "−", "–", "minus", "less")
_FULL = "write this week's dose in full"


def as_last_week(
    line: str, week: int, earlier: Mapping[int, Plain], slot: Plain, doing: Doing
) -> str:
    """The line in full, where it is another week's with a change; else as it stands.

    >>> last = {1: {"sets": 3, "reps": 5, "load": "60 kg"}}
    >>> as_last_week("last week +2.5 kg", 2, last, {}, Doing())
    '3x5 @ 62.5 kg'
    >>> as_last_week("as last week, one set more", 2, last, {}, Doing())
    '4x5 @ 60 kg'

    Args:
        line: as it stands in the file.
        week: its week.
        earlier: the doses of other weeks of the slot in the long form, by week.
        slot: the slot, which may say what holds for every week.
        doing: what is done.

    Raises:
        NotationError: where it can't be worked out.
    """
    if _reads(line):
        return line
    left, changes, named = _taken_apart(line)
    if not named:
        return line
    number = week - 1 if named == "last" else int(named)
    before = _dose_of(earlier.get(number), number, week, named)
    own = _own(left, changes, doing)
    if own.load is not None and re.search(r"same\s+(?:weight|load)", line, re.IGNORECASE):
        raise NotationError(0, f"this says the load in two ways; {_FULL}")
    part = DosePart.model_construct().model_copy(update=merged((own, before)))
    for change in changes:
        part = changed(part, change, _slot_part(slot))
    try:
        return dose_line(part)
    except OneLineError as error:
        raise NotationError(
            0, f"what week {number} says takes more than a line; {_FULL}"
        ) from error


def _reads(line: str) -> bool:
    """True for what is in the house's notation."""
    try:
        read_house(line)
    except NotationError:
        return False
    return True


def _taken_apart(line: str) -> tuple[str, list[MoreOf], str]:
    """What is left of a line, the changes in it, and the week that it refers to; "" for none."""
    changes: list[MoreOf] = []
    named: list[str] = []

    def change(found: re.Match[str]) -> str:
        words = (found["sign"], found["before"], found["behind"])
        if not any(words):
            return found[0]
        less = (found["sign"] or "").lower() in _SIGNS_LESS or any(
            re.fullmatch(_LESS, word or "", re.IGNORECASE) for word in words[1:]
        )
        number = _WORDS.get(found["number"].lower(), found["number"].replace(",", "."))
        changes.append(MoreOf(-float(number) if less else float(number), found["what"].lower()))
        if found["last"]:
            named.append("last")
        return _CUT

    def base(found: re.Match[str]) -> str:
        named.append(found["week"] or "last")
        return _CUT

    if not _BASE.search(line):
        return line, [], ""
    rest = _BASE.sub(base, _CHANGE.sub(change, line))
    if len(set(named)) > 1:
        raise NotationError(0, f"two weeks are named here; {_FULL}")
    return _CUTS.sub(", ", rest).strip(" ,"), changes, named[0]


def _own(left: str, changes: list[MoreOf], doing: Doing) -> DosePart:
    """What the line says beside the other week and the changes.

    Raises:
        NotationError: where it can't be read, or says what is changed too.
    """
    if not left:
        return DosePart()
    try:
        part = part_of(read_dose(left, doing))
    except NotationError as error:
        raise NotationError(0, str(error)) from None
    if part is None:
        raise NotationError(0, f"{quoted(left)} can't be read beside another week; {_FULL}")
    for change in changes:
        if change.what in _SECONDS and re.search(r"rest|pause|every|between", left, re.IGNORECASE):
            raise NotationError(
                0, "a rest isn't changed in this way; write it, such as 'rest 2:00'"
            )
        if any(getattr(part, key) is not None for key in fields_of(change)):
            raise NotationError(0, f"this says the same thing in two ways; {_FULL}")
    return part


def _dose_of(dose: Plain, number: int, week: int, named: str) -> DosePart:
    """What the week says that is referred to.

    Raises:
        NotationError: where it is not there, or follows from yet another one.
    """
    if dose is None or number >= week:
        which = "last week" if named == "last" else f"week {number}"
        raise NotationError(
            0, f"{which} has no dose of this exercise in this file before week {week}; {_FULL}"
        )
    try:
        part = DosePart.model_validate(dose)
    except ValidationError:
        raise NotationError(0, f"week {number} can't be read; correct that one first") from None
    if part.deload_of is not None:
        raise NotationError(0, f"week {number} is itself less of another week; {_FULL}")
    return part.model_copy(update={"note": None})


def _slot_part(slot: Plain) -> DosePart:
    """What the slot says for every week; nothing where that can't be read."""
    keys: dict[str, Any] = slot if isinstance(slot, dict) else {}
    known = {key: keys[key] for key in ("sets", "reps", "load", "hold", "time") if key in keys}
    try:
        return DosePart.model_validate(known)
    except ValidationError:
        return DosePart()
