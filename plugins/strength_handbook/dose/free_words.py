"""Words of the coach's own in a line, and where they would run on into the next clause."""

import re

from strength_handbook.dose.line_words import END, FREE, TEMPO, TIME
from strength_handbook.dose.spelling import by_first_sign
from strength_handbook.dose.spellings import NO_PLACES, SWALLOWED

_HOUSE = rf"@.*|(?:rest|every)\s+{TIME}|RIR\s*\d+|RPE\s*\d+|(?:tempo\s+)?{TEMPO}|each\s+side|ES"
_SWALLOWED = re.compile(rf"(?:^|(?<=\s))({_HOUSE}){END}", re.IGNORECASE)
_SPELLED = by_first_sign(SWALLOWED)

_OF_LOAD = re.compile(
    r"\b(?:weights?|loads?|speed|pace|tempo|effort|RPE|RIR|max|\d+\s*(?:kg|lb|lbs|RM|reps?|times))\b|%",
    re.IGNORECASE,
)
"""What no place has in it: words for how heavy and how hard."""
_NO_PLACE = by_first_sign(NO_PLACES)


def swallowed(text: str) -> tuple[int, str] | None:
    """Where free words run on into the next clause because a comma is missing, and what it is.

    >>> swallowed("front knee 90° rest 60 s")
    (15, 'rest 60 s')
    >>> swallowed("the bottom 60s rest")
    (11, '60s rest')
    >>> swallowed("front knee 90°") is None
    True
    """
    if found := _SWALLOWED.search(text):
        return found.start(1), found[1]
    for gap in re.finditer(r"(?:^|(?<=\s))(?=\S)", text):
        for way, _ in _SPELLED.get(text[gap.start()].lower(), ()):
            if found := way.pattern.match(text, gap.start()):
                return found.start(), found[0]
    return None


def fits_free(text: str) -> bool:
    """True for words that can stand in a line and come out of it as they were."""
    return re.fullmatch(FREE, text) is not None and text == text.strip() and swallowed(text) is None


def no_place(text: str) -> bool:
    """True for what behind 'at' is a load, an effort or a limit in another spelling, and no place.

    >>> no_place("1.5xBW"), no_place("2 RIR"), no_place("most 12"), no_place("2 cm off the floor")
    (True, True, True, False)
    """
    return _OF_LOAD.search(text) is not None or any(
        way.pattern.match(one)
        for one in (text, f"at {text}")
        for way, _ in _NO_PLACE.get(one[0].lower(), ())
    )
