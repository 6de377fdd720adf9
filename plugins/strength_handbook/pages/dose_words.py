"""A dose in plain words: short sentences that a tired member understands."""

import re
from collections.abc import Iterator

from strength_handbook.model.count import Count
from strength_handbook.model.dose import Clock, ClusterSet, Distance, Dose, Hold, Reps, StripSet
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import OnBar
from strength_handbook.model.methods import Cluster, Strip
from strength_handbook.model.tempo import Tempo
from strength_handbook.model.words import Hazard
from strength_handbook.pages.dose_notation import height, in_repetitions, only_a_ramp
from strength_handbook.pages.load_words import load_in_words, on_top_in_words
from strength_handbook.pages.numbers import clock, count_word

_TIMES = {1: "once", 2: "twice"}
_INTENT = {
    "fast": "Lift as fast as you can",
    "controlled": "Keep it under control all the way",
    "slow": "Move slowly and evenly",
}


def in_words(dose: Dose, exercise: Exercise) -> str:
    """The dose in short sentences: what, how, how fast, when to stop, how long to rest."""
    sentences = (
        *_task(dose, exercise),
        *_set_up(dose),
        *_way(dose),
        *_stop(dose, exercise),
        *_rhythm(dose),
    )
    return " ".join(f"{_capital(sentence)}." for sentence in sentences)


def _task(dose: Dose, exercise: Exercise) -> Iterator[str]:
    """What there is to do, and how heavy."""
    if dose.said.test is not None:
        rm, attempts = dose.said.test.rm, dose.said.test.attempts
        best = "single" if rm == 1 else f"set of {count_word(rm)}"
        tries = "one attempt" if attempts == 1 else f"at most {count_word(attempts)} attempts"
        yield f"Find today's best {best} in {tries}"
        return
    then = ""
    if dose.top is not None:
        best = "single" if dose.top == 1 else count_word(dose.top)
        if only_a_ramp(dose):
            yield f"Work up to today's best {best}"
            return
        yield f"Work up to today's best {best} first"
        then = "Then "
    load = load_in_words(dose.load, exercise)
    match dose.work:
        case ClusterSet(cluster):
            yield f"{then}{_sets(dose)}: {_parts(cluster)}"
            if load:
                yield f"Do them {load}"
        case StripSet(strip):
            yield f"{then}{_sets(dose)} with {count_word(strip.loads)} loads"
            if load:
                yield f"Start {load}"
            yield from _strip(strip, "plates" if isinstance(exercise.load, OnBar) else "weight")
        case _:
            text = _density(dose) if dose.said.density is not None else _plain(dose)
            yield f"{then}{text} {load}".strip()
    yield from on_top_in_words(dose.said)


def _plain(dose: Dose) -> str:
    sides = " on each side" if dose.each_side else ""
    sets = _count(dose.sets)
    one = dose.sets.high == 1
    match dose.work:
        case Reps(count):
            return f"{sets} {'set' if one else 'sets'} of {_count(count)}{sides}"
        case Hold(seconds):
            return f"{sets} {'hold' if one else 'holds'} of {clock_words(seconds)}{sides}"
        case Distance(length):
            return f"{sets} {'walk' if one else 'walks'} of {length:g} metres{sides}"
        case Clock(seconds):
            return f"{sets} {'set' if one else 'sets'} of {clock_words(seconds)}{sides}"
        case _:
            return _sets(dose)


def _sets(dose: Dose) -> str:
    sides = " on each side" if dose.each_side else ""
    return f"{_count(dose.sets)} {'set' if dose.sets.high == 1 else 'sets'}{sides}"


def _parts(cluster: Cluster) -> str:
    between = ", then " if cluster.falling else ", "
    parts = between.join(count_word(part) for part in cluster.parts)
    return f"{parts}, with {clock_words(cluster.pause)} between"


def _strip(strip: Strip, what: str) -> Iterator[str]:
    times = strip.loads - 1
    often = _TIMES.get(times, f"{count_word(times)} times")
    total = "" if strip.total is None else f"; {count_word(strip.total)} repetitions in all"
    yield f"Take {what} off {often} without rest{total}"
    yield f"About {strip.drop:g} % comes off each time"
    if strip.within_ is not None:
        yield f"Be done within {clock_words(strip.within_)}"


def _density(dose: Dose) -> str:
    sides = " on each side" if dose.each_side else ""
    if not isinstance(dose.work, Clock):
        return _plain(dose)
    time = clock_words(dose.work.seconds)
    if dose.sets.high == 1:
        return f"as many good ones as you can in {time}{sides}"
    return f"{_count(dose.sets)} times {time}{sides}: as many good ones as you can"


def _set_up(dose: Dose) -> Iterator[str]:
    """What is got ready before the first repetition."""
    said = dose.said
    if said.training_max is not None:
        yield f"Your training max is {said.training_max:g} % of your best single"
    if said.assist is not None:
        band, by = said.assist.band, said.assist.by
        yield f"Band {band} helps" if band is not None else f"Help: {by}"
    if said.team is not None:
        yield f"{count_word(said.team.bearers)} people carry {said.team.mass.label} together"
        if said.team.turn_every is not None:
            yield f"Change places every {clock_words(said.team.turn_every)}"
    if said.settings:
        yield "Settings: " + ", ".join(f"{name} {value}" for name, value in said.settings.items())
    if said.height is not None:
        yield f"Height: {height(said.height)}"
    if said.range_ is not None:
        yield f"How far: {said.range_}"


def _way(dose: Dose) -> Iterator[str]:
    """How one repetition or hold goes."""
    said, hold = dose.said, isinstance(dose.work, Hold)
    if said.position is not None:
        angle = re.fullmatch(r"(?:the\s+)?(.*?\D)(?:\s+at)?\s+(\d+\s*°)", said.position)
        where = f"Hold with the {angle[1]} at {angle[2]}" if angle else ""
        yield where or f"Hold this position: {said.position}"
    if said.push is not None:
        yield f"Push at {said.push.at}: let the force grow over {_seconds(said.push.ramp)}"
    if said.return_by is not None:
        yield f"Lower only, and come back up by {said.return_by}"
    if dose.tempo is not None and (tempo := tempo_in_words(dose.tempo)):
        yield tempo
    if said.pause is not None:
        yield f"Hold {_seconds(said.pause.time)} in each repetition: {said.pause.at}"
    if said.intent is not None:
        yield _INTENT[said.intent]
    if said.breathe is not None:
        yield f"Breathe {said.breathe}"
    elif hold and said.push is None and dose.reserve is None:
        yield "Talk in short words"


def _stop(dose: Dose, exercise: Exercise) -> Iterator[str]:
    """When a set is over."""
    if dose.said.density is not None:
        yield f"Stop when you get slower than {count_word(dose.said.density.pace)} a minute"
    if dose.reserve is not None:
        yield _effort(dose, dose.reserve, exercise)
    match dose.work:
        case Reps(count) if count.open and dose.said.cap is not None:
            yield f"Stop at {count_word(dose.said.cap)} however easy it is"
        case _:
            pass
    if dose.last_set is not None:
        last = dose.last_set
        yield (
            f"Last set: at least {count_word(last.floor)}, then go on while it stays good; stop "
            f"with {count_word(last.rir)} left, or at {count_word(last.cap)}"
        )


def _effort(dose: Dose, reserve: float, exercise: Exercise) -> str:
    effort = f"ffort {10 - reserve:g} out of 10"
    if not in_repetitions(dose):
        return f"E{effort}, breathing all the time"
    if Hazard.PARTNER_CONTACT in exercise.hazards:
        return f"Your partner makes it e{effort}"
    if reserve == 0:
        return "Stop when the next one would not be good"
    return f"Stop with {count_word(reserve)} good {'one' if reserve == 1 else 'ones'} left"


def _rhythm(dose: Dose) -> Iterator[str]:
    if dose.every is not None:
        yield f"Start a set every {clock_words(dose.every)}"
    if dose.said.density is not None and dose.said.density.sharing > 1:
        yield f"{count_word(dose.said.density.sharing)} of you share the work in turns"
    if dose.rest is not None:
        yield f"Rest {clock_words(dose.rest)}" if dose.rest else "Go straight on, without rest"


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


def _count(count: Count) -> str:
    if count.open:
        return f"at least {count_word(count.low)}"
    if count.low == count.high:
        return count_word(count.low)
    return f"{count_word(count.low)} to {count_word(count.high)}"


def _seconds(seconds: float) -> str:
    return f"{count_word(seconds)} second{'s' if seconds != 1 else ''}"


def _capital(sentence: str) -> str:
    return sentence[:1].upper() + sentence[1:]
