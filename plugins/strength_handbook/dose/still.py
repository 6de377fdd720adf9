"""Holds, where they are held, pushes against what does not move, and holds inside a repetition."""

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from strength_handbook.dose.clause import Found, NotationError, free, reads, refuse_swallowed, take
from strength_handbook.dose.free_words import no_place
from strength_handbook.dose.key import (
    BY_METHOD,
    NO_SHARE,
    ON_PAGE,
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
    taught,
)
from strength_handbook.dose.line_words import FREE, NO_PLACE, SETS, SPAN, TIME
from strength_handbook.dose.share import Pace, Share, lasting
from strength_handbook.dose.texts import (
    OneLineError,
    clock_words,
    free_text,
    line_count,
    line_time,
    longer,
    middle_s,
    range_s,
    seconds_words,
    sets_words,
    work_guide,
)
from strength_handbook.model.dose import Distance, Dose, Hold
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.methods import Pause, Push
from strength_handbook.model.printed import clock
from strength_handbook.model.shape import quoted

_HOLD = "a time belongs after 'hold', such as 'hold 30 s', or a share, such as 'hold 60 %'"


def _line_hold(seconds: float, part: DosePart) -> str:
    if part.sets is None:
        return f"hold {line_time(seconds)}"
    return f"ISO {line_count(part.sets)}x{line_time(seconds)}"


def _hold_words(seconds: float, told: Told) -> str:
    sets = sets_words(told.dose.sets, "hold", "holds")
    return f"{sets} of {clock_words(seconds)}{told.sides} {told.load}"


def _breath(_: float, told: Told) -> str:
    """For a quiet hold without words of its own."""
    part = told.part
    quiet = part.breathe is None and part.push is None and told.dose.reserve is None
    return "Talk in short words" if quiet else ""


def _hold_seconds(dose: Dose) -> float | None:
    return dose.work.seconds if isinstance(dose.work, Hold) else None


def _hold_step(a: Dose, b: Dose) -> Iterator[str]:
    return longer(_hold_seconds(a), _hold_seconds(b))


_HOLDS_OF = "holds of"
_HOLDS = Method("hold", Lesson("holds", "Get into the position, stay there, and keep breathing."))


def _share(seconds: float, pace: Pace) -> Share:
    share = lasting(seconds, pace)
    return replace(share, held_s=share.seconds)


HOLD = Key[float](
    field="hold",
    read=reads(
        (rf"ISO\s+{SETS}({SPAN})", take("sets", "hold")),
        (rf"hold\s+({SPAN})", take("hold")),
        advice={"ISO": "sets and seconds belong after 'ISO', such as 'ISO 3x30 s'", "hold": _HOLD},
    ),
    line=(InLine.SET, _line_hold),
    board=((OnBoard.SET, lambda seconds, _: f"{clock(seconds)} hold"),),
    words=((Said.TASK, _hold_words), (Said.BREATH, _breath)),
    step=_hold_step,
    method=lambda *_: _HOLDS,
    data=(
        Datum("hold_s", lambda dose: middle_s(_hold_seconds(dose)), Amount(_HOLDS_OF, kind="time")),
        Datum(
            "hold_range",
            lambda dose: range_s(_hold_seconds(dose)),
            Amount(_HOLDS_OF, kind="both ends"),
        ),
    ),
    door=AtDoor.CARRIED,
    use=KeyUse(
        BY_METHOD,
        lambda seconds, _: work_guide(seconds) | {"h": 1},
        _share,
    ),
)


def _found_position(found: re.Match[str]) -> Iterator[Found]:
    if no_place(found[1]):
        text = f"behind 'at' a place belongs; write {quoted('@ ' + found[1])} for a load"
        raise NotationError(found.start(), text)
    return free("position")(found)


def _line_position(position: str, _: DosePart) -> str:
    if re.match(NO_PLACE, position, re.IGNORECASE) or no_place(position):
        raise OneLineError("position", "after 'at' this would be read as a load")
    return f"at {free_text('position', position)}"


def _position_words(position: str, _: Told) -> str:
    angle = re.fullmatch(r"(?:the\s+)?(.*?\D)(?:\s+at)?\s+(\d+\s*°)", position)
    where = f"Hold with the {angle[1]} at {angle[2]}" if angle else ""
    return where or f"Hold this position: {position}"


POSITION = Key[str](
    field="position",
    read=reads(
        (rf"at\s+(?!{NO_PLACE})({FREE})", _found_position),
        advice={"at": "write '@' for 'at', such as '@ 74 %'"},
    ),
    line=(InLine.WORDS, _line_position),
    board=((OnBoard.WITH, lambda position, _: position),),
    words=((Said.READY, _position_words),),
    door=STAYS,
    use=KeyUse(Because("the set-up of the exercise is taught"), ON_PAGE, NO_SHARE),
)


def _found_push(found: re.Match[str]) -> Iterator[Found]:
    """The ramp stands behind the words that say where, and is no part of them."""
    refuse_swallowed(found, 1)
    ramp = re.fullmatch(rf"(.*\S)\s+ramp\s+({TIME})\s*", found[1], re.IGNORECASE)
    yield Found(("push", "at"), ramp[1] if ramp else found[1].strip(), found.start(1))
    if ramp:
        yield Found(("push", "ramp"), ramp[2], found.start(1) + ramp.start(2))


PUSH = Key[Push](
    field="push",
    read=reads(
        (rf"push\s+at\s+({FREE})", _found_push),
        advice={"push": "say where after 'push at', such as 'push at pin 9 ramp 1 s'"},
    ),
    line=(
        InLine.WORDS,
        lambda push, _: f"push at {free_text('push', push.at)} ramp {line_time(push.ramp)}",
    ),
    board=(
        (
            OnBoard.WITH,
            lambda push, _: f"push at {push.at}, force up over {clock(push.ramp)}",
        ),
    ),
    words=(
        (
            Said.READY,
            lambda push, _: (
                f"Push at {push.at}: let the force grow over {seconds_words(push.ramp)}"
            ),
        ),
    ),
    door=STAYS,
    use=taught(
        "a push against pins",
        "Push against steel that does not move; let the force grow, never jerk.",
    ),
)


_COUNTED = Because("it is part of a repetition, or of a walk, and counted there")


def _pause_words(pause: Pause, told: Told) -> str:
    walk = isinstance(told.dose.work, Distance)
    when = "before each walk" if walk else "in each repetition"
    return f"Hold {seconds_words(pause.time)} {when}: {pause.at}"


def _board_pause(pause: Pause, _: Board) -> str:
    return f"pause {clock(pause.time)}: {pause.at}"


PAUSE = Key[Pause](
    field="pause",
    read=reads(
        (rf"pause\s+({TIME})\s+at\s+({FREE})", free("pause.time", "pause.at")),
        advice={
            "pause": "a time and a place belong after 'pause', such as 'pause 2 s at the bottom'"
        },
    ),
    line=(
        InLine.WORDS,
        lambda pause, _: f"pause {line_time(pause.time)} at {free_text('pause', pause.at)}",
    ),
    board=((OnBoard.WITH, _board_pause),),
    words=((Said.MOVE, _pause_words),),
    door=AtDoor.OF_REPS,
    use=KeyUse(
        Lesson(
            "a hold inside the repetition",
            "Stop and hold in each repetition, at the stated place.",
        ),
        _COUNTED,
        _COUNTED,
    ),
)


KEYS: tuple[Key[Any], ...] = (HOLD, POSITION, PUSH, PAUSE)
