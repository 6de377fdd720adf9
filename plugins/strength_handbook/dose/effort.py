"""How fast and how hard: tempo, and effort as what is left or from 1 to 10."""

from collections.abc import Iterator
from typing import Any

from strength_handbook.dose.clause import reads, take
from strength_handbook.dose.key import (
    SAID_ONLY,
    Amount,
    AtDoor,
    Because,
    Board,
    Datum,
    InLine,
    Key,
    KeyUse,
    OnBoard,
    Said,
    Told,
)
from strength_handbook.dose.line_words import RANGE, TEMPO
from strength_handbook.dose.texts import (
    line_number,
    seconds_words,
)
from strength_handbook.model.dose import ClusterSet, Dose, Reps, StripSet
from strength_handbook.model.load import PercentOfEffort
from strength_handbook.model.phases import Phases
from strength_handbook.model.printed import NBSP, count_word
from strength_handbook.model.span import Span, ends, middle_of, out_of_ten
from strength_handbook.model.tempo import Tempo
from strength_handbook.model.words import Hazard


def tempo_in_words(tempo: Tempo, phases: Phases) -> str:
    """``5-1-X-0`` as ``five seconds down, one second still, up fast``; zeros are left out.

    >>> from strength_handbook.model.phases import PHASES
    >>> tempo_in_words(Tempo.parse("3-1-2-0"), PHASES["pull"])
    'three seconds going back, one second still, two seconds pulling'
    """
    parts = [f"{seconds_words(tempo.lower)} {phases.lowering}"] if tempo.lower else []
    if tempo.low_pause:
        parts.append(f"{seconds_words(tempo.low_pause)} still")
    if tempo.lift is None:
        parts.append(phases.fast)
    elif tempo.lift:
        parts.append(f"{seconds_words(tempo.lift)} {phases.lifting}")
    if tempo.high_pause:
        parts.append(f"{seconds_words(tempo.high_pause)} {phases.top}")
    return ", ".join(parts)


def _tempo_step(before: Dose, now: Dose) -> Iterator[str]:
    a, b = before.tempo, now.tempo
    if a == b:
        return
    if a is None or b is None:
        yield f"tempo {b.text}" if b else "no tempo is set"
        return
    slower = _seconds(b) - _seconds(a)
    word = "slower" if slower > 0 else "quicker" if slower < 0 else "tempo"
    yield f"{word}: {b.text} instead of {a.text}"


def _seconds(tempo: Tempo) -> int:
    return tempo.lower + tempo.low_pause + (tempo.lift or 0) + tempo.high_pause


TEMPO_KEY = Key[Tempo](
    field="tempo",
    read=reads(
        (r"tempo\s+([^\s,;]+)", take("tempo")),
        (rf"({TEMPO})", take("tempo")),
        advice={"tempo": "four fields belong after 'tempo', such as 'tempo 3-1-X-0'"},
    ),
    line=(InLine.MANNER, lambda tempo, _: f"tempo {tempo.text}"),
    board=((OnBoard.MANNER, lambda tempo, _: tempo.text),),
    words=((Said.MOVE, lambda tempo, told: tempo_in_words(tempo, told.exercise.phases)),),
    step=_tempo_step,
    data=(
        Datum("tempo", lambda dose: dose.tempo and dose.tempo.text, Amount("tempo", kind="text")),
    ),
    door=AtDoor.CARRIED | AtDoor.OF_REPS,
    use=KeyUse(
        Because("fast lifting is taught with what a lift should feel like"),
        Because("its parts are counted lift by lift, which the exercise decides"),
        Because("it says how long a repetition is"),
    ),
)


def far_from_limit(dose: Dose) -> bool:
    """True where an effort leaves as many repetitions as the set has: nobody counts those."""
    left, reps = dose.fewest_left, dose.reps
    if dose.said.rpe is None or left is None or reps is None:
        return False
    return left >= reps.high


def in_repetitions(dose: Dose) -> bool:
    """True where a set is counted, so that effort is repetitions left."""
    return isinstance(dose.work, Reps | ClusterSet | StripSet)


def _board_effort(board: Board, reserve: float) -> str:
    """In repetitions left where a set is counted, else from 1 to 10."""
    dose = board.dose
    if dose is None or isinstance(dose.load, PercentOfEffort):
        return ""
    if in_repetitions(dose) and not far_from_limit(dose):
        return f"RIR{NBSP}{reserve:g}"
    return f"{board.effort}{out_of_ten(reserve):g}"


def _to(value: float) -> str:
    """A number, or both ends of a range with a word between."""
    return f"{value:g}".replace("–", " to ")


def _effort_words(reserve: float, told: Told) -> str:
    dose = told.dose
    effort = f"ffort {_to(out_of_ten(reserve))} out of 10"
    if isinstance(dose.load, PercentOfEffort):
        return ""
    if dose.going is not None:
        return f"E{effort}"
    if not in_repetitions(dose):
        return f"E{effort}, breathing all the time"
    if Hazard.PARTNER_CONTACT in told.exercise.hazards:
        return f"Your partner makes it e{effort}"
    if far_from_limit(dose):
        return f"E{effort}: light, at least as many again would go"
    if reserve == 0:
        return "Stop when the next one would not be good"
    fewest, most = ends(reserve)
    left = count_word(reserve) if fewest or fewest == most else f"at most {count_word(most)}"
    return f"Stop with {left} good {'one' if most == 1 else 'ones'} left"


def _board_rir(rir: float, board: Board) -> str:
    return f"RIR{NBSP}{rir:g}" if board.dose is None else _board_effort(board, rir)


def _board_rpe(rpe: float, board: Board) -> str:
    if board.dose is None:
        return f"{board.effort}{rpe:g}"
    return _board_effort(board, out_of_ten(rpe))


def _effort_step(a: Dose, b: Dose) -> Iterator[str]:
    if a.reserve == b.reserve:
        return
    if a.reserve is None or b.reserve is None:
        yield _short_effort(b, b.reserve) if b.reserve is not None else "no effort is set"
        return
    was, now = float(a.reserve), float(b.reserve)
    word = "harder: " if now < was else "easier: " if now > was else ""
    yield f"{word}{_short_effort(b, b.reserve)} instead of {_short_effort(a, a.reserve)}"


def _short_effort(dose: Dose, reserve: float) -> str:
    return _board_effort(Board(dose.part, dose, short=True), reserve) or f"RIR {reserve:g}"


_LEFT = Amount("repetition left", "repetitions left")


def planned_left(dose: Dose) -> float | None:
    """Good repetitions left to plan with; of a range its middle."""
    return None if dose.reserve is None else middle_of(dose.reserve)


def left_range(dose: Dose) -> str | None:
    """Both ends, where more or fewer may be left."""
    return f"{dose.reserve:g}" if isinstance(dose.reserve, Span) else None


RIR = Key[float](
    field="rir",
    read=reads(
        (rf"(?:@\s*)?RIR\s*({RANGE}|[^\s,;]+)", take("rir")),
        advice={"RIR": "a number belongs after 'RIR', such as 'RIR 2'"},
    ),
    line=(InLine.MANNER, lambda rir, _: f"RIR {line_number(rir)}"),
    board=((OnBoard.MANNER, _board_rir),),
    words=((Said.EFFORT, _effort_words),),
    step=_effort_step,
    data=(
        Datum("rir", planned_left, _LEFT),
        Datum("rir_range", left_range, Amount("", "repetitions left", kind="both ends")),
    ),
    door=AtDoor.CARRIED,
    use=SAID_ONLY,
)


RPE = Key[float](
    field="rpe",
    read=reads(
        (rf"(?:@\s*)?RPE\s*({RANGE}|[^\s,;]+)", take("rpe")),
        advice={"RPE": "a number belongs after 'RPE', such as 'RPE 8'"},
    ),
    line=(InLine.MANNER, lambda rpe, _: f"RPE {line_number(rpe)}"),
    board=((OnBoard.MANNER, _board_rpe),),
    words=((Said.EFFORT, lambda rpe, told: _effort_words(out_of_ten(rpe), told)),),
    step=Because("it is told as what is left: both are one effort"),
    data=Because("it stands there as what is left"),
    door=AtDoor.CARRIED,
    use=SAID_ONLY,
)


KEYS: tuple[Key[Any], ...] = (TEMPO_KEY, RIR, RPE)
