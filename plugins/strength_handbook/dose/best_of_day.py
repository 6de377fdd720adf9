"""Today's best: a ramp up to it, back-off sets after it, and tests."""

from collections.abc import Iterator
from typing import Any

from strength_handbook.dose.clause import reads, take
from strength_handbook.dose.key import (
    BY_METHOD,
    AtDoor,
    Because,
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
from strength_handbook.dose.line_words import NUMBER
from strength_handbook.dose.texts import whole
from strength_handbook.model.dose import Dose, DosePart, by_effort_after_top, only_a_top
from strength_handbook.model.methods import Test
from strength_handbook.model.printed import NBSP, count_word

REST_S = (120, 240)
"""Between attempts, shortest and longest, in seconds; source as of `plan.ladder`."""


_EFFORT = rf"\d+\s*@\s*(?:RPE|RIR)\s*{NUMBER}"


def _line_top(top: str, _: DosePart) -> str:
    return "top none" if top == "none" else f"ramp to {top}"


def _board_top(top: str, _: Board) -> str:
    return "no top set" if top == "none" else f"ramp to {top.replace(' ', NBSP)}"


def _top_words(_: str, told: Told) -> Iterator[str]:
    if told.dose.said.test is not None:
        return
    top, left = told.dose.top or 1, told.dose.top_left
    first = "" if only_a_top(told.dose) else " first"
    best = "single" if top == 1 else count_word(top)
    if left:
        what = "a single" if top == 1 else f"a set of {best}"
        good = "one" if left == 1 else "ones"
        yield f"Work up to {what} that leaves {count_word(left)} good {good}{first}"
    else:
        yield f"Work up to today's best {best}{first}"


_RAMP = Lesson(
    "a ramp to the day's best", "Work up to today's best, only adding weight, while it is good."
)
_BACK_OFF = Lesson(
    "sets after a ramp", "First the day's best, then lighter sets with a share of it."
)


_BY_EFFORT = Lesson(
    "a top set by effort",
    "Add weight from set to set, until one leaves just as many good ones as are asked.",
)
_BACK_OFF_BY_EFFORT = Lesson(
    "sets after a top set by effort",
    "First a set that leaves as many good ones as are asked, then lighter sets.",
)


def _top_method(_: str, dose: Dose) -> Method:
    if dose.load is None and not by_effort_after_top(dose):
        return Method("ramp", _BY_EFFORT if dose.top_left else _RAMP)
    return Method("back-off", _BACK_OFF_BY_EFFORT if dose.top_left else _BACK_OFF)


def _top_guide(_: str, dose: Dose) -> dict[str, Any]:
    """Repetitions of the top set, and how many it leaves."""
    return {"p": dose.top} | ({"P": whole(dose.top_left)} if dose.top_left else {})


TOP = Key[str](
    field="top",
    read=reads(
        (rf"top\s+(\d+\s*RM|{_EFFORT}|none)", take("top")),
        (rf"ramp\s+to\s+(\d+\s*RM|{_EFFORT})", take("top")),
        advice={
            "top": "an RM or an effort belongs after 'top', such as 'top 5RM', 'top 5 @ RPE 8', or "
            "'none'",
            "ramp": "an RM or an effort belongs after 'ramp to', such as 'ramp to 5RM' or 'ramp to "
            "5 @ RPE 8'",
        },
    ),
    line=(InLine.DAY, _line_top),
    board=((OnBoard.DAY, _board_top),),
    words=((Said.DAY, _top_words),),
    step=Because("it is told with the load that follows from it"),
    method=_top_method,
    door=AtDoor.OF_SETS,
    use=KeyUse(BY_METHOD, _top_guide, Because("the way up to it is counted by itself")),
)


def _line_test(test: Test, _: DosePart) -> str:
    return f"test {test.rm}RM in {test.attempts} attempt{'s' if test.attempts != 1 else ''}"


def _board_test(test: Test, _: Board) -> str:
    attempts = "attempt" if test.attempts == 1 else "attempts"
    return f"test {test.rm}RM in {test.attempts}{NBSP}{attempts}"


def _test_words(test: Test, _: Told) -> str:
    best = "single" if test.rm == 1 else f"set of {count_word(test.rm)}"
    once = test.attempts == 1
    tries = "one attempt" if once else f"at most {count_word(test.attempts)} attempts"
    return f"Find today's best {best} in {tries}"


_TEST = Method(
    "test",
    Lesson("a test", "Find today's best in few attempts; end at the first one that is not good."),
)


def _test_guide(test: Test, dose: Dose) -> dict[str, Any]:
    return {"s": test.attempts, "a": 1} | ({"r": REST_S[0]} if dose.rest is None else {})


TEST = Key[Test](
    field="test",
    read=reads(
        (
            r"test\s+(\d+)\s*RM(?:\s+in\s+(\d+)\s+attempts?)?",
            take("test.rm", "test.attempts"),
        ),
        advice={"test": "an RM belongs after 'test', such as 'test 3RM in 4 attempts'"},
    ),
    line=(InLine.DAY, _line_test),
    board=((OnBoard.DAY, _board_test),),
    words=((Said.DAY, _test_words),),
    method=lambda *_: _TEST,
    door=AtDoor.OF_SETS,
    use=KeyUse(BY_METHOD, _test_guide, Because("it says how many repetitions and sets there are")),
)


KEYS: tuple[Key[Any], ...] = (TOP, TEST)
