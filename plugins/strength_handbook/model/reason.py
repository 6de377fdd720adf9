"""A reason for whoever takes over: a sentence, not a nod."""

import re
from typing import Annotated

from pydantic import AfterValidator, Field

from strength_handbook.model.marks import CoachOnly
from strength_handbook.model.shape import refuse, shown

LEAST = 10
"""Characters of the shortest reason."""

_WORD = re.compile(r"[^\W\d_]{2,}")


def _read_reason(text: str) -> str:
    if len(text) < LEAST:
        raise refuse(
            "length",
            f"{shown(text)} is too short; write at least {LEAST} characters (what follows ' #' is "
            "a comment: put quotes around a reason with '#' in it)",
        )
    if not says_something(text):
        raise refuse("reason", f"{shown(text)} is no reason; write a sentence: why may it stand?")
    return text


def says_something(text: str) -> bool:
    """True where a text has at least two different words.

    Scripts without capitals may write words without spaces between them, and are not counted.

    >>> says_something("The pairs rest longer."), says_something("okay okay okay")
    (True, False)
    >>> says_something("xxxxxxxxxx yyyy"), says_something("2026-11-26 !!!")
    (False, False)
    """
    words = {word for word in _WORD.findall(text.casefold()) if len(set(word)) > 1}
    uncased = any(one.isalpha() and one.lower() == one.upper() for one in text)
    return len(words) > 1 or uncased


Reason = Annotated[
    str,
    CoachOnly("it stands in reports and on the coach's pages"),
    Field(max_length=600, json_schema_extra={"minLength": LEAST}),
    AfterValidator(_read_reason),
]
"""A reason, in words."""
