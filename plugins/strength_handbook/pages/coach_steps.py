"""What is different in a slot from one week to the next, in words."""

from collections.abc import Iterator

from strength_handbook.model.dose import Clock, Distance, Dose, Hold
from strength_handbook.model.tempo import Tempo
from strength_handbook.pages.coach_short import pieces
from strength_handbook.pages.numbers import clock, metres
from strength_handbook.plan.worked import WorkedSlot


def steps(before: WorkedSlot, now: WorkedSlot) -> list[str]:
    """Everything that changed in a slot, the load first; empty where nothing did.

    Whatever no word here covers is given as it stands now.
    """
    a, b = before.dose, now.dose
    found = [*_load(before, now), *_amount(a, b), *_tempo(a.tempo, b.tempo), *_effort(a, b),
             *_rest(a, b)]  # fmt: skip
    if not found and pieces(a) != pieces(b):
        return [f"otherwise: {' · '.join(pieces(b))}"]
    if _how(a) != _how(b):
        found.append(f"done in another way: {' · '.join(pieces(b))}")
    return found


def _load(before: WorkedSlot, now: WorkedSlot) -> Iterator[str]:
    a, b = before.dose, now.dose
    was, is_ = (a.load.text if a.load else "by effort"), (b.load.text if b.load else "by effort")
    if was == is_ and a.top == b.top:
        return
    text = f"{is_} instead of {was}"
    if a.top != b.top:
        ramps = [f"ramp to {dose.top}RM" if dose.top else "no ramp" for dose in (a, b)]
        yield f"{ramps[1]} instead of {ramps[0]}"
        if was == is_:
            return
    direction = _direction(before, now)
    yield f"{direction}: {text}" if direction else f"load: {text}"


def _direction(before: WorkedSlot, now: WorkedSlot) -> str:
    """Heavier or lighter, where it can be known: by the percentage, or for all example lifters."""
    if before.percent is not None and now.percent is not None and before.base == now.base:
        difference = [now.percent - before.percent]
    else:
        shared = before.loads.keys() & now.loads.keys()
        difference = [now.loads[key].planned_g - before.loads[key].planned_g for key in shared]
    if difference and all(one > 0 for one in difference):
        return "heavier"
    if difference and all(one < 0 for one in difference):
        return "lighter"
    return ""


def _amount(a: Dose, b: Dose) -> Iterator[str]:
    """Sets, and what one set is."""
    if a.sets != b.sets:
        more = "more" if b.sets.middle > a.sets.middle else "fewer"
        yield f"{more} sets: {b.sets.text} instead of {a.sets.text}"
    match a.work, b.work:
        case (Hold(was), Hold(now)) | (Clock(was), Clock(now)) if was != now:
            longer = "longer" if now > was else "shorter"
            yield f"{longer}: {clock(now)} instead of {clock(was)}"
        case Distance(was), Distance(now) if was != now:
            farther = "farther" if now > was else "less far"
            yield f"{farther}: {metres(now)} instead of {metres(was)}"
        case _:
            if type(a.work) is type(b.work) and a.reps and b.reps and a.reps != b.reps:
                more = "more" if b.reps.middle > a.reps.middle else "fewer"
                yield f"{more} repetitions: {b.reps.text} instead of {a.reps.text}"


def _tempo(a: Tempo | None, b: Tempo | None) -> Iterator[str]:
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


def _effort(a: Dose, b: Dose) -> Iterator[str]:
    if a.reserve == b.reserve:
        return
    if a.reserve is None or b.reserve is None:
        yield _reserve(b) if b.reserve is not None else "no effort is set"
        return
    word = "harder" if b.reserve < a.reserve else "easier"
    yield f"{word}: {_reserve(b)} instead of {_reserve(a)}"


def _reserve(dose: Dose) -> str:
    """The piece of the dose that says it."""
    return next(
        (one for one in pieces(dose) if one.startswith(("RIR", "RPE"))), f"RIR {dose.reserve:g}"
    )


def _rest(a: Dose, b: Dose) -> Iterator[str]:
    for word, was, now in (("rest", a.rest, b.rest), ("a set every", a.every, b.every)):
        if was == now:
            continue
        if was is None or now is None:
            yield f"{word} {clock(now)}" if now is not None else f"no '{word}' is set"
        else:
            longer = "longer" if now > was else "shorter"
            yield f"{longer} between sets: {word} {clock(now)} instead of {clock(was)}"


def _how(dose: Dose) -> tuple[object, ...]:
    """Everything else that a dose may say: kind of work, bands, pauses, open sets …"""
    said = dose.said
    return (
        type(dose.work), dose.last_set, dose.each_side, dose.fast, said.cluster, said.strip,
        said.position, said.pause, said.push, said.return_by, said.bands, said.chains, said.assist,
        said.density, said.team, said.test, said.height, said.settings, said.range_, said.intent,
    )  # fmt: skip
