"""Lines as coaches write them on a whiteboard, each read with the meaning its writer gave, or not.

The 340 lines in `whiteboard/` were written by two people who did not know the grammar, with the
meaning that they expected: invented data. When they were first read, 53 of the 307 that their
writers held to be plain were read with exactly that meaning, one was read in another way, and the
others were refused. All of them have been seen since.
"""

from collections import Counter
from functools import cache

import pytest

from whiteboard_lines import Line, differences, lines, read

LINES = lines()
READ_AT_LEAST = 62
"""Of the plain ones with exactly the meaning of their writer; this only rises."""


ADVICE = "write|such as|did you mean|needs four fields|has one of|is written as"


@cache
def outcome(line_number: int) -> str:
    """'right', 'asked back', 'refused' or how what is read differs."""
    line = LINES[line_number]
    try:
        part = read(line)
    except ValueError:  # a NotationError, or parts that don't go together
        return "asked back" if line.ask else "refused"
    if line.ask:
        return "read, and two things could be meant" if line.text not in READ_BY_DOING else "right"
    return "; ".join(differences(line, part)) or "right"


READ_BY_DOING = ("3 sets", "3x2k")
"""Lines that leave something open which is filled in from the slot, or is plain of what is done."""


def names(line: Line) -> str:
    return f"{line.of}: {line.text}"


@pytest.mark.parametrize("number", range(len(LINES)), ids=map(names, LINES))
def test_no_line_is_read_in_another_way_than_it_was_meant(number: int) -> None:
    assert outcome(number) in ("right", "asked back", "refused")


@pytest.mark.parametrize("number", range(len(LINES)), ids=map(names, LINES))
def test_what_is_refused_says_what_to_write(number: int) -> None:
    if outcome(number) not in ("asked back", "refused"):
        return
    with pytest.raises(ValueError, match=ADVICE):
        read(LINES[number])


def test_as_many_are_read_as_before() -> None:
    found = Counter(outcome(number) for number in range(len(LINES)))
    assert found["right"] >= READ_AT_LEAST, found
