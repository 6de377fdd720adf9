"""Sets and repetitions, sides, and sets that are left open."""

import re
from collections.abc import Callable, Iterator
from typing import Any, Literal

from strength_handbook.dose.clause import Found, NotationError, reads, take
from strength_handbook.dose.key import (
    BY_METHOD,
    NO_LESSON,
    STAYS,
    Amount,
    AtDoor,
    Because,
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
from strength_handbook.dose.line_words import COUNT, LATER, SETS
from strength_handbook.dose.texts import OneLineError, count_words, line_count, sets_words
from strength_handbook.model.count import Count
from strength_handbook.model.dose import Dose, Reps, only_a_top
from strength_handbook.model.dose_part import WORK_FIELDS, DosePart, OpenSet
from strength_handbook.model.printed import count_word

_OTHER_SIDE = Because("the other side comes after all of one side")
_EACH_SIDE = "write 'each side' or 'ES' for one side after the other"
_SETS = "a number belongs after 'sets', such as 'sets 3', or a share, such as 'sets 60 %'"
_AT_FLOOR = Because("an open set is reckoned at its floor")
_OPEN = "write an open set as '3x5+', or '3x5, last set 5+ cap 10 RIR 1'"


def _line_sets(sets: Count, part: DosePart) -> str:
    """Sets where nothing says of what; else they stand before it."""
    alone = all(getattr(part, field) is None for field in WORK_FIELDS)
    return f"sets {line_count(sets)}" if alone else ""


def _board_sets(sets: Count, board: Board) -> str:
    """One set of these needs no number."""
    part = board.part
    long = part.strip is not None or (part.time is not None and part.density is not None)
    return "" if board.dose is not None and sets.high == 1 and long else sets.text


def _sets_step(a: Dose, b: Dose) -> Iterator[str]:
    if a.sets != b.sets:
        more = "more" if b.sets.middle > a.sets.middle else "fewer"
        yield f"{more} sets: {b.sets.text} instead of {a.sets.text}"


def _sets_guide(sets: Count, dose: Dose) -> dict[str, Any]:
    """Where today's top set is all there is, it is no set of these."""
    if dose.said.test is not None or only_a_top(dose):
        return {}
    return {"s": sets.high if sets.low == sets.high else [sets.low, sets.high]}


SETS_KEY = Key[Count](
    field="sets",
    read=reads((rf"sets\s+({COUNT})", take("sets")), advice={"sets": _SETS}),
    line=(InLine.SET, _line_sets),
    board=((OnBoard.SET, _board_sets),),
    words=Because("what is done in each set says how many"),
    step=_sets_step,
    data=(
        Datum("sets", lambda dose: dose.sets.high, Amount("set", "sets")),
        Datum("sets_low", lambda dose: dose.sets.low, Amount("set", "sets", "low end")),
    ),
    door=AtDoor.CARRIED,
    use=KeyUse(
        Because("plain sets need no lesson"), _sets_guide, Because("one set is one of them")
    ),
)


def _open_sets(found: re.Match[str]) -> Iterator[Found]:
    """`1xAMRAP floor 5` is `1x5+` in other words."""
    if found[3] is None:
        advice = "say how many there must be at least, such as '1xAMRAP floor 5 cap 12'"
        raise NotationError(found.start(2), advice)
    yield Found(("sets",), found[1], found.start(1))
    yield Found(("reps",), f"{found[3]}+", found.start(3))


def _line_reps(reps: Count, part: DosePart) -> str:
    return (
        f"reps {line_count(reps)}"
        if part.sets is None
        else f"{line_count(part.sets)}x" + (line_count(reps))
    )


def _reps_step(a: Dose, b: Dose) -> Iterator[str]:
    """Of whatever has repetitions, where it is the same kind of set."""
    if a.series or b.series:
        return
    if type(a.work) is type(b.work) and a.reps and b.reps and a.reps != b.reps:
        more = "more" if b.reps.middle > a.reps.middle else "fewer"
        yield f"{more} repetitions: {b.reps.text} instead of {a.reps.text}"


def _of_alike(
    dose: Dose, pick: Callable[[list[int]], int], end: Literal["low", "high"]
) -> int | None:
    """Most or fewest repetitions of any of its sets."""
    found = [getattr(one.reps, end) for one in dose.alike if one.reps is not None]
    return pick(found) if found else None


def _reps_guide(reps: Count, dose: Dose) -> dict[str, Any]:
    if reps.open:
        return {"n": [reps.low, dose.said.cap or 0, 1], "q": [reps.low, reps.low]}
    return {"q": [reps.low, reps.high]}


_PLAIN = Because("plain sets need no lesson")
_OPEN_SET = Lesson(
    "an open last set", "The last set is open: the stated number, then on while it is good."
)
_REPS_RANGE = Amount("repetition", "repetitions", "range")


def _reps_method(reps: Count, dose: Dose) -> Method:
    if reps.open or dose.last_set is not None:
        return Method("open", _OPEN_SET)
    return Method("range" if reps.low != reps.high else "straight", _PLAIN)


REPS = Key[Count](
    field="reps",
    read=reads(
        (rf"{SETS}({COUNT})(?:\s*reps?)?", take("sets", "reps")),
        (rf"{SETS}(AMRAP)(?:{LATER}floor\s+(\d+))?", _open_sets),
        (rf"reps\s+({COUNT})", take("reps")),
        advice={"reps": "a number belongs after 'reps', such as 'reps 5'", "AMRAP": _OPEN},
        also={"max": _OPEN, "failure": _OPEN},
    ),
    line=(InLine.SET, _line_reps),
    board=((OnBoard.SET, lambda reps, _: reps.text),),
    words=(
        (
            Said.TASK,
            lambda reps, told: (
                f"{sets_words(told.dose.sets)} of {count_words(reps)}{told.sides} {told.load}"
            ),
        ),
    ),
    step=_reps_step,
    method=_reps_method,
    data=(
        Datum("reps", lambda dose: _of_alike(dose, max, "high"), _REPS_RANGE),
        Datum("reps_low", lambda dose: _of_alike(dose, min, "low"), _REPS_RANGE),
    ),
    door=AtDoor.CARRIED,
    use=KeyUse(BY_METHOD, _reps_guide, lambda reps, pace: pace.repetitions(reps.middle)),
)


def _each_side(found: re.Match[str]) -> Iterator[Found]:
    yield Found(("each-side",), value=True, start=found.start())


def _line_side(each: bool, _: DosePart) -> str:  # noqa: FBT001  # the value of a key
    if not each:
        raise OneLineError("each-side", "one line cannot say that it is not on each side")
    return "ES"


EACH_SIDE = Key[bool](
    field="each_side",
    read=reads(
        ("ES", _each_side),
        (r"each\s+side", _each_side),
        advice={"ES": _EACH_SIDE},
        also=dict.fromkeys(("each", "per", "side", "sides", "leg", "arm"), _EACH_SIDE),
    ),
    line=(InLine.SET, _line_side),
    board=((OnBoard.BESIDE, lambda each, board: board.each_side if each else ""),),
    words=Because("how many sets says how often"),
    data=(Datum("each_side", lambda dose: dose.each_side, Amount("on each side", kind="yes")),),
    door=STAYS,
    use=KeyUse(
        NO_LESSON,
        lambda each, _: {"b": 1} if each else {},
        _OTHER_SIDE,
    ),
)


def _board_cap(cap: int, board: Board) -> str:
    """Of a whole dose where the sets are open; a part says what it says."""
    dose = board.dose
    stops = dose is None or (isinstance(dose.work, Reps) and dose.work.count.open)
    return f"at most {cap}" if stops else ""


def _cap_words(cap: int, told: Told) -> str:
    work = told.dose.work
    stops = isinstance(work, Reps) and work.count.open
    return f"Stop at {count_word(cap)} however easy it is" if stops else ""


CAP = Key[int](
    field="cap",
    read=reads(
        (r"cap\s+(\d+)", take("cap")),
        advice={"cap": "a number of repetitions belongs after 'cap', such as 'cap 12'"},
    ),
    line=(InLine.SET, lambda cap, _: f"cap {cap}"),
    board=((OnBoard.BEHIND, _board_cap),),
    words=((Said.LAST, _cap_words),),
    step=Because("the notation tells it where nothing else is different"),
    door=AtDoor.OF_SETS,
    use=KeyUse(
        NO_LESSON,
        Because("it goes with the open set"),
        _AT_FLOOR,
    ),
)


def _board_last(last: OpenSet, board: Board) -> str:
    if board.dose is None:
        return f"last set {last.floor}+, at most {last.cap}"
    if board.short:
        return f"last {last.floor}+ cap {last.cap} RIR\u00a0{last.rir}"
    return f"last set {last.floor}+ (stop with {last.rir} left, at most {last.cap})"


def _last_guide(last: OpenSet, _: Dose) -> dict[str, Any]:
    return {"n": [last.floor, last.cap, 0]}


LAST_SET = Key[OpenSet](
    field="last_set",
    read=reads(
        (
            rf"last\s+set\s+(\d+)\+(?:{LATER}cap\s+(\d+))?(?:{LATER}RIR\s+(\d+))?",
            take("last-set.floor", "last-set.cap", "last-set.rir"),
        ),
        advice={"last": "write the last set like 'last set 5+ cap 10 RIR 1'"},
        also={"last-set": _OPEN},
    ),
    line=(InLine.OPEN, lambda last, _: f"last set {last.floor}+ cap {last.cap} RIR {last.rir}"),
    board=((OnBoard.OPEN, _board_last),),
    words=(
        (
            Said.LAST,
            lambda last, _: (
                f"Last set: at least {count_word(last.floor)}, then go on while it stays good; "
                f"stop with {count_word(last.rir)} left, or at {count_word(last.cap)}"
            ),
        ),
    ),
    door=AtDoor.OF_SETS,
    use=KeyUse(BY_METHOD, _last_guide, _AT_FLOOR),
)


KEYS: tuple[Key[Any], ...] = (SETS_KEY, REPS, EACH_SIDE, CAP, LAST_SET)
