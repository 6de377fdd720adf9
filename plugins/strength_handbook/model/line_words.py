"""What words in a one-line dose look like, for reading such lines and for printing them."""

import re

NUMBER = r"\d+(?:[.,]\d+)?"
MASS = rf"{NUMBER}\s*(?:kgs?|lbs?|g)"
PERCENT = rf"{NUMBER}\s*%"
TIME = rf"(?:\d{{1,2}}:\d{{2}}|{NUMBER}\s*(?:s|sec|min))"
METRES = rf"{NUMBER}\s*(?:m|ft)"
"""How far to walk."""
HEIGHT = rf"{NUMBER}\s*(?:mm?|cm|ft|in)"
COUNT = r"\d+(?:\s*[-–]\s*\d+|\+)?"
TEMPO = r"[\dXx]+(?:(?:[-–][\dXx]+){2,}|(?:/[\dXx]+){3})"
END = r"(?=$|[\s,;)@])"
# A word with a number after it begins a clause of its own: '65 % top 5RM', '80 % TM 90 %'.
_TM = r"TM(?!\s+\d)"
_TOP = r"(?:the\s+)?top(?!\s+(?:\d+\s*RM|none)\b)"
LOAD = (
    rf"{PERCENT}(?:\s*(?:of\s+)?(?:system|{_TM}|BM(?:\s*/\s*hand)?|{_TOP}))?"
    rf"|BW(?:\s*[+\-−–]\s*{MASS})?|\d+\s*RM|{NUMBER}\s*units?|{MASS}"
)
FREE = r"[^\s,;](?:[^,;]|(?<=\d),(?=\d))*"
"""Words of the coach's own: to the next comma that is not inside a number, or to the end."""
WORD = r"[^\s,;@]+"

NO_PLACE = rf"(?:{LOAD}){END}|RIR\b|RPE\b|{NUMBER}\s*(?:$|[,;](?!\d))"
"""What after 'at' is no position of a hold, but a load or an effort."""

LONGEST = 200
"""Most characters in a line; keeps the search for clauses short, whatever stands there."""

_SWALLOWED = re.compile(
    rf"(?:^|(?<=\s))(@.*|(?:rest|every)\s+{TIME}|RIR\s*\d+|RPE\s*\d+|(?:tempo\s+)?{TEMPO}"
    rf"|each\s+side|ES){END}",
    re.IGNORECASE,
)


def swallowed(text: str) -> re.Match[str] | None:
    """Where free words run on into the next clause because a comma is missing.

    >>> swallowed("front knee 90° rest 60 s")[1]
    'rest 60 s'
    >>> swallowed("front knee 90°") is None
    True
    """
    return _SWALLOWED.search(text)


def fits_free(text: str) -> bool:
    """True for words that can stand in a line and come out of it as they were."""
    return re.fullmatch(FREE, text) is not None and text == text.strip() and swallowed(text) is None
