"""Sets by the clock: timed sets, as many as possible in a time, a set every so often, rest."""

import re
from collections.abc import Iterator
from typing import Any

from strength_handbook.dose.clause import Found, beside, reads, take
from strength_handbook.dose.going import GOING, time_words
from strength_handbook.dose.key import (
    BY_METHOD,
    NO_LESSON,
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
from strength_handbook.dose.line_words import SETS, SPAN, TIME, TIMES
from strength_handbook.dose.share import Pace, Share, lasting, open_reps
from strength_handbook.dose.texts import (
    clock_words,
    count_words,
    line_count,
    line_minutes,
    line_time,
    longer,
    middle_s,
    range_s,
    sets_words,
    whole,
    work_guide,
)
from strength_handbook.model.dose import Clock, Dose
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.methods import Density
from strength_handbook.model.printed import NBSP, clock, count_word
from strength_handbook.model.span import middle_of

_BETWEEN = Because("rest is no part of a set")


def _line_time(seconds: float, part: DosePart) -> str:
    sets = "" if part.sets is None else f"{line_count(part.sets)}x"
    if part.density is not None:
        return f"{sets}{line_minutes(seconds)} AMRAP"
    return f"{sets}{line_time(seconds)}" if sets else f"time {line_time(seconds)}"


def _board_time(seconds: float, board: Board) -> str:
    return f"{clock(seconds)}{' AMRAP' if board.part.density is not None else ''}"


def _time_words(seconds: float, told: Told) -> str:
    if told.dose.going is not None:
        return time_words(seconds, told)
    sets, time = told.dose.sets, clock_words(seconds)
    text = f"{sets_words(sets)} of {time}{told.sides}"
    if told.part.density is not None:
        text = f"{count_words(sets)} times {time}{told.sides}: as many good ones as you can"
        if sets.high == 1:
            text = f"as many good ones as you can in {time}{told.sides}"
    return f"{text} {told.load}"


def _time_seconds(dose: Dose) -> float | None:
    return dose.work.seconds if isinstance(dose.work, Clock) else None


def _time_step(a: Dose, b: Dose) -> Iterator[str]:
    return longer(_time_seconds(a), _time_seconds(b))


def _as_many(found: re.Match[str]) -> Iterator[Found]:
    yield from take("sets", "time")(found)
    if not re.search(r"\bpace\s+\d", found.string, re.IGNORECASE):
        # Whether it needs one, its length and the week say: `reading/going.py`.
        yield Found(("density", "sharing"), 1, found.start(3))


_SETS_OF = "sets of"
_TIMED = Lesson("timed sets", "Work by the clock, at a pace that you can keep.")
_DENSITY = Lesson(
    "as many as possible in a time", "As many good ones as you can; stop when the pace drops."
)
_TO_THE_END = Lesson(
    "as many as possible in a short time", "As many good ones as you can until the time is up."
)


def _time_method(_: float, dose: Dose) -> Method:
    if dose.going is not None:
        return GOING
    if dose.said.density is None:
        return Method("timed", _TIMED)
    return Method("density", _TO_THE_END if dose.said.density.pace is None else _DENSITY)


TIMED = Key[float](
    field="time",
    read=reads(
        (rf"{SETS}({SPAN})", take("sets", "time")),
        (rf"time\s+({SPAN})", take("time")),
        (rf"(?:{SETS})?({SPAN})\s+(AMRAP)", _as_many),
        advice={"time": "a time belongs after it, such as 'time 40 s'"},
    ),
    line=(InLine.SET, _line_time),
    board=((OnBoard.SET, _board_time),),
    words=((Said.TASK, _time_words),),
    step=_time_step,
    method=_time_method,
    data=(
        Datum("time_s", lambda dose: middle_s(_time_seconds(dose)), Amount(_SETS_OF, kind="time")),
        Datum(
            "time_range",
            lambda dose: range_s(_time_seconds(dose)),
            Amount(_SETS_OF, kind="both ends"),
        ),
    ),
    door=AtDoor.CARRIED,
    use=KeyUse(
        BY_METHOD,
        lambda seconds, _: work_guide(seconds),
        lasting,
    ),
)


def _line_density(density: Density, _: DosePart) -> Iterator[str]:
    if density.pace is not None:
        yield f"pace {density.pace}/min"
    if density.sharing != 1:
        yield f"shared by {density.sharing}"


def _board_density(density: Density, board: Board) -> Iterator[str]:
    if density.pace is not None:
        yield f"{'≥' if board.short else 'at least '}{density.pace}/min"
    elif board.part.time is None:
        yield "AMRAP"
    if density.sharing > 1:
        yield f"shared by {density.sharing}"


def _shared(density: Density, _: Told) -> str:
    if density.sharing == 1:
        return ""
    return f"{count_word(density.sharing)} of you share the work in turns"


def _too_slow(density: Density, _: Told) -> str:
    if density.pace is None:
        return ""
    return f"Stop when you get slower than {count_word(density.pace)} a minute"


def _counted(density: Density, pace: Pace) -> Share:
    """Its seconds are those of its time; without a pace to keep a usual one is counted."""
    if density.pace is not None or (seconds := _time_seconds(pace.dose)) is None:
        return Share()
    rules = ("seconds-per-rep",) if pace.dose.tempo is None else ()
    return Share(reps=middle_of(open_reps(middle_of(seconds), pace)), rules=rules)


DENSITY = Key[Density](
    field="density",
    read=reads(
        (r"pace\s+(\d+)(?:\s*/\s*min|\s+a\s+minute)?", take("density.pace")),
        (
            r"shared\s+by\s+(\d+)",
            beside(
                r"\bpace\s+\d",
                "say the pace too, such as 'pace 8/min'",
                take("density.sharing"),
            ),
        ),
        advice={
            "pace": "a number belongs after 'pace', such as 'pace 8/min'",
            "shared": "write how many share the work, such as 'shared by 2'",
        },
        in_parts=True,
    ),
    line=(InLine.OPEN, _line_density),
    board=((OnBoard.BEHIND, _board_density),),
    words=(
        (Said.STOP, _too_slow),
        (Said.SHARED, _shared),
    ),
    door=AtDoor.OF_SETS,
    use=KeyUse(
        BY_METHOD,
        lambda density, _: {"N": density.sharing},
        _counted,
    ),
)


def _between(word: str, was: float | None, now: float | None) -> Iterator[str]:
    if was == now:
        return
    if was is None or now is None:
        yield f"{word} {clock(now)}" if now is not None else f"no '{word}' is set"
    else:
        more = "longer" if now > was else "shorter"
        yield f"{more} between sets: {word} {clock(now)} instead of {clock(was)}"


REST = Key[float](
    field="rest",
    read=reads(
        (rf"rest\s+({TIMES})", take("rest")),
        advice={"rest": "a time belongs after 'rest', such as 'rest 2:30' or 'rest 90 s'"},
    ),
    line=(InLine.REST, lambda seconds, _: f"rest {line_time(seconds)}"),
    board=((OnBoard.REST, lambda seconds, _: f"rest{NBSP}{clock(seconds)}"),),
    words=(
        (
            Said.REST,
            lambda seconds, _: (
                f"Rest {clock_words(seconds)}" if seconds else "Go straight on, without rest"
            ),
        ),
    ),
    step=lambda a, b: _between("rest", a.rest, b.rest),
    data=(
        Datum("rest_s", lambda dose: middle_s(dose.rest), Amount("rest", kind="time")),
        Datum("rest_range", lambda dose: range_s(dose.rest), Amount("rest", kind="both ends")),
    ),
    door=AtDoor.CARRIED,
    use=KeyUse(NO_LESSON, lambda seconds, _: {"r": whole(float(seconds))}, _BETWEEN),
)


_INTERVAL = Method(
    "interval",
    Lesson("sets by the clock", "Each set starts on the clock; end it when the speed drops."),
)


EVERY = Key[float](
    field="every",
    read=reads(
        (rf"every\s+({TIME})", take("every")),
        (r"E\s*(\d+\s*s)", take("every")),
        advice={"every": "a time belongs after 'every', such as 'every 60 s'"},
    ),
    line=(InLine.EVERY, lambda seconds, _: f"every {line_time(seconds)}"),
    board=((OnBoard.EVERY, lambda seconds, _: f"every{NBSP}{clock(seconds)}"),),
    words=((Said.EVERY, lambda seconds, _: f"Start a set every {clock_words(seconds)}"),),
    step=lambda a, b: _between("a set every", a.every, b.every),
    method=lambda *_: _INTERVAL,
    data=(Datum("every_s", lambda dose: dose.every, Amount("a set every", kind="time")),),
    door=AtDoor.CARRIED,
    use=KeyUse(BY_METHOD, lambda seconds, _: {"e": whole(seconds)}, _BETWEEN),
)


KEYS: tuple[Key[Any], ...] = (TIMED, DENSITY, REST, EVERY)
