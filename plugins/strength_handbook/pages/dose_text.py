"""A dose in the trade's notation, and the same in plain words."""

from strength_handbook.model.dose import (
    Clock,
    ClusterSet,
    Count,
    Distance,
    Dose,
    DosePart,
    Hold,
    Reps,
    StripSet,
)
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.load import (
    BodyWeight,
    FixedLoad,
    Load,
    PercentOfBase,
    PercentOfBodyMass,
    PercentOfSystem,
    PercentOfTop,
    PercentOfTrainingMax,
    RepMax,
    Setting,
)
from strength_handbook.model.loading import InHands, OnBar
from strength_handbook.model.tempo import Tempo
from strength_handbook.pages.numbers import NBSP, clock, count_word, metres


def notation(dose: Dose) -> str:
    """The dose as written on a board: ``4 × 5 @ 78 % · 5-1-X-0 · RIR 1 · rest 2:30``."""
    parts = [_work(dose)]
    if dose.top is not None:
        parts.insert(0, f"ramp to {dose.top}RM")
    if dose.last_set is not None:
        last = dose.last_set
        parts.append(f"last set {last.floor}+ (stop with {last.rir} left, at most {last.cap})")
    if dose.tempo is not None:
        parts.append(dose.tempo.text)
    if dose.reserve is not None:
        if isinstance(dose.work, Reps):
            parts.append(f"RIR{NBSP}{dose.reserve:g}")
        else:
            parts.append(f"effort{NBSP}{10 - dose.reserve:g}")
    if dose.every is not None:
        parts.append(f"every{NBSP}{clock(dose.every)}")
    if dose.rest is not None:
        parts.append(f"rest{NBSP}{clock(dose.rest)}")
    return " · ".join(parts)


def partial_notation(part: DosePart) -> str:
    """A part of a dose, such as a door changes it; says only what the part says."""
    words = [part.sets.text] if part.sets is not None else []
    if part.reps is not None:
        words.append(part.reps.text)
    if part.hold is not None:
        words.append(f"{clock(part.hold)} hold")
    if part.time is not None:
        words.append(clock(part.time))
    if part.distance is not None:
        words.append(metres(part.distance))
    sign = "×" if part.distance is None else "→"
    pieces = [f"{NBSP}{sign}{NBSP}".join(words)] if words else []
    if part.each_side:
        pieces.append("each side")
    if part.load is not None:
        pieces.append(f"@{NBSP}{part.load.text.replace(' ', NBSP)}")
    if part.tempo is not None:
        pieces.append(part.tempo.text)
    if part.rir is not None:
        pieces.append(f"RIR{NBSP}{part.rir}")
    if part.rpe is not None:
        pieces.append(f"effort{NBSP}{part.rpe:g}")
    if part.every is not None:
        pieces.append(f"every{NBSP}{clock(part.every)}")
    if part.rest is not None:
        pieces.append(f"rest{NBSP}{clock(part.rest)}")
    return " · ".join(pieces)


def _work(dose: Dose) -> str:
    sets = dose.sets.text
    match dose.work:
        case Reps(count):
            text = f"{sets}{NBSP}×{NBSP}{count.text}"
        case Hold(seconds):
            text = f"{sets}{NBSP}×{NBSP}{clock(seconds)} hold"
        case Clock(seconds):
            text = f"{sets}{NBSP}×{NBSP}{clock(seconds)}"
        case ClusterSet(cluster):
            parts = "+".join(str(part) for part in cluster.parts)
            text = f"{sets}{NBSP}×{NBSP}({parts})/{clock(cluster.pause)}"
        case StripSet(strip):
            times = "" if dose.sets.high == 1 else f"{sets}{NBSP}×{NBSP}"
            total = "" if strip.total is None else f", {strip.total} in all"
            text = f"{times}↓{NBSP}{strip.loads} loads, −{strip.drop:g}{NBSP}%{total}"
        case Distance(length):
            text = f"{sets}{NBSP}→{NBSP}{metres(length)}"
    if dose.each_side:
        text += " each side"
    if dose.load is not None:
        text += f" @{NBSP}{dose.load.text.replace(' ', NBSP)}"
    return text


def in_words(dose: Dose, exercise: Exercise) -> str:
    """The dose in short sentences: what, how fast, when to stop."""
    sentences = []
    if dose.top is not None:
        sentences.append(f"Work up to today's best {count_word(dose.top)} first")
        sentences.append(f"Then {_sets_in_words(dose)}{_load_in_words(dose, exercise)}")
    else:
        sentences.append(f"{_sets_in_words(dose)}{_load_in_words(dose, exercise)}")
    if dose.tempo is not None and (tempo := tempo_in_words(dose.tempo)):
        sentences.append(tempo)
    sentences += _effort_in_words(dose)
    if dose.last_set is not None:
        last = dose.last_set
        sentences.append(
            f"Last set: at least {count_word(last.floor)}, then go on while it stays good; stop "
            f"with {count_word(last.rir)} left, or at {count_word(last.cap)}"
        )
    if dose.every is not None:
        sentences.append(f"Start a set every {clock(dose.every)}")
    return " ".join(f"{_capital(sentence)}." for sentence in sentences)


def tempo_in_words(tempo: Tempo) -> str:
    """``5-1-X-0`` as ``five seconds down, one second still, up fast``; zeros are left out."""
    parts = [f"{_seconds(tempo.lower)} down"] if tempo.lower else []
    if tempo.low_pause:
        parts.append(f"{_seconds(tempo.low_pause)} still")
    if tempo.lift is None:
        parts.append("up fast")
    elif tempo.lift:
        parts.append(f"{_seconds(tempo.lift)} up")
    if tempo.high_pause:
        parts.append(f"{_seconds(tempo.high_pause)} at the top")
    return ", ".join(parts)


def _sets_in_words(dose: Dose) -> str:
    sides = " on each side" if dose.each_side else ""
    sets = _count(dose.sets)
    one = dose.sets.high == 1
    match dose.work:
        case Reps(count):
            return f"{sets} {'set' if one else 'sets'} of {_count(count)}{sides}"
        case Hold(seconds):
            return f"{sets} {'hold' if one else 'holds'} of {clock_words(seconds)}{sides}"
        case Clock(seconds):
            return f"{sets} {'set' if one else 'sets'} of {clock_words(seconds)}{sides}"
        case Distance(length):
            return f"{sets} {'walk' if one else 'walks'} of {length:g} metres{sides}"
        case ClusterSet(cluster):
            parts = ", then ".join(count_word(part) for part in cluster.parts)
            pause = clock_words(cluster.pause)
            return f"{sets} {'set' if one else 'sets'} of {parts}{sides}, {pause} between"
        case StripSet(strip):
            return f"{sets} {'set' if one else 'sets'} with {count_word(strip.loads)} loads{sides}"


def clock_words(seconds: float) -> str:
    """A time in words: seconds up to two minutes, then minutes.

    >>> clock_words(30), clock_words(150)
    ('30 seconds', '2½ minutes')
    """
    if seconds < 120:
        return f"{seconds:g} second{'s' if seconds != 1 else ''}"
    minutes, rest = divmod(round(seconds), 60)
    if rest == 30:
        return f"{minutes}½ minutes"
    return f"{minutes} minutes" if rest == 0 else f"{clock(seconds)} minutes"


def _load_in_words(dose: Dose, exercise: Exercise) -> str:
    load: Load | None = dose.load
    match load:
        case None:
            return ""
        case PercentOfBase(percent):
            return f" at {percent:g} % of your best single"
        case PercentOfSystem(percent):
            return f" at {percent:g} % of your best total, body included"
        case PercentOfBodyMass(percent):
            return f" with {percent:g} % of your body weight{_where(exercise)}"
        case FixedLoad(mass):
            return f" with {mass.label}{_where(exercise)}"
        case BodyWeight(change, sign):
            if not change.grams:
                return " with body weight only"
            return f" with {change.label} {'added' if sign > 0 else 'taken off'}"
        case RepMax(reps):
            return f" with a load you could lift {count_word(reps)} times"
        case PercentOfTop(percent):
            return f" at {percent:g} % of it"
        case PercentOfTrainingMax(percent):
            return f" at {percent:g} % of your training max"
        case Setting(value):
            return f" at {value:g} on the machine"


def _where(exercise: Exercise) -> str:
    if isinstance(exercise.load, InHands | OnBar):
        if exercise.load.hands == 2:
            return " in each hand"
        if exercise.load.hands == 1:
            return " in one hand"
    return " on your back" if getattr(exercise.load, "carrier", None) == "pack" else ""


def _effort_in_words(dose: Dose) -> list[str]:
    if dose.reserve is None:
        return []
    if not isinstance(dose.work, Reps):
        return [f"Effort {10 - dose.reserve:g} out of 10, breathing all the time"]
    if dose.reserve == 0:
        return ["Stop when the next one would not be good"]
    return [f"Stop with {count_word(dose.reserve)} good {_plural(dose.reserve)} left"]


def _plural(number: float) -> str:
    return "one" if number == 1 else "ones"


def _count(count: Count) -> str:
    if count.open:
        return f"at least {count_word(count.low)}"
    if count.low == count.high:
        return count_word(count.low)
    return f"{count_word(count.low)} to {count_word(count.high)}"


def _seconds(seconds: int) -> str:
    return f"{count_word(seconds)} second{'s' if seconds != 1 else ''}"


def _capital(sentence: str) -> str:
    return sentence[:1].upper() + sentence[1:]
