"""A dose in the trade's notation, with the signs and spaces of print."""

from collections.abc import Iterator

from strength_handbook.model.dose import (
    Clock,
    ClusterSet,
    Distance,
    Dose,
    DosePart,
    Hold,
    Reps,
    StripSet,
)
from strength_handbook.model.methods import Cluster, Strip, Test
from strength_handbook.pages.numbers import MINUS, NBSP, clock, metres

_TIMES = f"{NBSP}×{NBSP}"
_TO = f"{NBSP}→{NBSP}"


def notation(dose: Dose) -> str:
    """The dose as written on a board: ``4 × 5 @ 78 % · 5-1-X-0 · RIR 1 · rest 2:30``."""
    core, details = notation_parts(dose)
    return " · ".join((*core, *details))


def notation_parts(dose: Dose) -> tuple[list[str], list[str]]:
    """The same in pieces: the work itself, and everything that is said about it."""
    said = dose.said
    core = []
    if said.test is not None:
        core.append(_test(said.test))
    if dose.top is not None:
        core.append(f"ramp to {dose.top}RM")
    if said.test is None and not only_a_ramp(dose):
        core.append(_work(dose))
    pieces = [*_details(dose)]
    if dose.last_set is not None:
        last = dose.last_set
        pieces.append(f"last set {last.floor}+ (stop with {last.rir} left, at most {last.cap})")
    if dose.tempo is not None:
        pieces.append(dose.tempo.text)
    if dose.reserve is not None:
        if in_repetitions(dose):
            pieces.append(f"RIR{NBSP}{dose.reserve:g}")
        else:
            pieces.append(f"effort{NBSP}{10 - dose.reserve:g}")
    if dose.every is not None:
        pieces.append(f"every{NBSP}{clock(dose.every)}")
    if dose.rest is not None:
        pieces.append(f"rest{NBSP}{clock(dose.rest)}")
    return core, [*pieces, *_manner(said)]


def in_repetitions(dose: Dose) -> bool:
    """True where a set is counted, so that effort is repetitions left."""
    return isinstance(dose.work, Reps | ClusterSet | StripSet)


def only_a_ramp(dose: Dose) -> bool:
    """True where the heaviest set of the day is all there is to do."""
    match dose.work:
        case Reps(count) if dose.top is not None and dose.load is None:
            return dose.sets.high == 1 and count.low == count.high == dose.top
        case _:
            return False


def partial_notation(part: DosePart) -> str:
    """A part of a dose, such as a door changes it; says only what the part says."""
    pieces = [*_less(part)]
    if part.test is not None:
        pieces.append(_test(part.test))
    if part.top is not None:
        pieces.append("no top set" if part.top == "none" else f"ramp to {part.top}")
    words = [part.sets.text] if part.sets is not None else []
    if part.reps is not None:
        words.append(part.reps.text)
    if part.hold is not None:
        words.append(f"{clock(part.hold)} hold")
    if part.time is not None:
        words.append(f"{clock(part.time)}{' AMRAP' if part.density is not None else ''}")
    if part.distance is not None:
        words.append(metres(part.distance))
    if part.cluster is not None:
        words.append(_cluster(part.cluster))
    if part.strip is not None:
        words.append(_strip(part.strip))
    pieces += [(_TIMES if part.distance is None else _TO).join(words)] if words else []
    if part.each_side:
        pieces.append("each side")
    if part.load is not None:
        pieces.append(f"@{NBSP}{part.load.text.replace(' ', NBSP)}")
    if on_top := _on_top(part):
        pieces.append(on_top)
    if part.strip is not None:
        pieces += _strip_end(part.strip)
    if part.cap is not None:
        pieces.append(f"at most {part.cap}")
    pieces += _method(part)
    if part.last_set is not None:
        pieces.append(f"last set {part.last_set.floor}+, at most {part.last_set.cap}")
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
    return " · ".join((*pieces, *_manner(part)))


def _work(dose: Dose) -> str:
    sets = dose.sets.text
    match dose.work:
        case Reps(count):
            text = f"{sets}{_TIMES}{count.text}"
        case Hold(seconds):
            text = f"{sets}{_TIMES}{clock(seconds)} hold"
        case Clock(seconds):
            text = f"{sets}{_TIMES}{clock(seconds)}"
            if dose.said.density is not None:
                times = "" if dose.sets.high == 1 else f"{sets}{_TIMES}"
                text = f"{times}{clock(seconds)} AMRAP"
        case ClusterSet(cluster):
            text = f"{sets}{_TIMES}{_cluster(cluster)}"
        case StripSet(strip):
            times = "" if dose.sets.high == 1 else f"{sets}{_TIMES}"
            text = f"{times}{_strip(strip)}"
        case Distance(length):
            text = f"{sets}{_TO}{metres(length)}"
    if dose.each_side:
        text += " each side"
    if dose.load is not None:
        text += f" @{NBSP}{dose.load.text.replace(' ', NBSP)}"
    on_top = _on_top(dose.said)
    return f"{text} {on_top}" if on_top else text


def _details(dose: Dose) -> Iterator[str]:
    """What belongs to the work and stands right behind it."""
    match dose.work:
        case Reps(count) if count.open and dose.said.cap is not None:
            yield f"at most {dose.said.cap}"
        case StripSet(strip):
            yield from _strip_end(strip)
        case _:
            pass
    yield from _method(dose.said)


def _method(part: DosePart) -> Iterator[str]:
    """The keys of one method each, in the order of the dose."""
    if part.density is not None:
        yield f"at least {part.density.pace}/min"
        if part.density.sharing > 1:
            yield f"shared by {part.density.sharing}"
    if part.training_max is not None:
        yield f"TM{NBSP}={NBSP}{part.training_max:g}{NBSP}%"
    if part.assist is not None:
        yield f"help: {part.assist.by or f'band {part.assist.band}'}"
    if part.team is not None:
        yield f"{part.team.bearers} carry {part.team.mass.label.replace(' ', NBSP)}"
        if part.team.turn_every is not None:
            yield f"change places every {clock(part.team.turn_every)}"
    if part.height is not None:
        yield f"height{NBSP}{height(part.height)}"
    for name, value in part.settings.items():
        yield f"{name}{NBSP}{value}"
    if part.position is not None:
        yield part.position
    if part.push is not None:
        yield f"push at {part.push.at}, force up over {clock(part.push.ramp)}"
    if part.pause is not None:
        yield f"pause {clock(part.pause.time)}: {part.pause.at}"
    if part.return_by is not None:
        yield f"back up by {part.return_by}"


def _manner(part: DosePart) -> Iterator[str]:
    """How it is done, whatever it is."""
    if part.range_ is not None:
        yield f"range {part.range_}"
    if part.breathe is not None:
        yield f"breathe {part.breathe}"
    if part.intent is not None:
        yield f"intent {part.intent}"


def _less(part: DosePart) -> Iterator[str]:
    if part.deload_of is not None:
        yield f"as week {part.deload_of}, but less"
    for share, what in (
        (part.keep_sets, "sets"), (part.keep_load, "load"), (part.keep_hold, "seconds")
    ):  # fmt: skip
        if share is not None:
            yield f"{share:g}{NBSP}% of the {what}"


def _on_top(part: DosePart) -> str:
    """Bands and chains, which add to the load on the way up."""
    pieces = []
    if part.bands is not None:
        pair = " and ".join(part.bands.pair)
        pieces.append(f"+ bands {pair or f'{part.bands.top_share:g}{NBSP}% at the top'}")
    if part.chains is not None:
        pairs = part.chains.pairs
        many = f"{pairs}{NBSP}{'pair' if pairs == 1 else 'pairs'} of chains"
        share = f"chains {part.chains.top_share or 0:g}{NBSP}% at the top"
        pieces.append(f"+ {share if pairs is None else many}")
    return " ".join(pieces)


def _test(test: Test) -> str:
    attempts = "attempt" if test.attempts == 1 else "attempts"
    return f"test {test.rm}RM in {test.attempts}{NBSP}{attempts}"


def _cluster(cluster: Cluster) -> str:
    return f"({'+'.join(str(part) for part in cluster.parts)})/{clock(cluster.pause)}"


def _strip(strip: Strip) -> str:
    return f"↓{NBSP}{strip.loads}{NBSP}loads {MINUS}{strip.drop:g}{NBSP}%"


def _strip_end(strip: Strip) -> Iterator[str]:
    if strip.total is not None:
        yield f"Σ{NBSP}{strip.total}"
    if strip.within_ is not None:
        yield f"within {clock(strip.within_)}"


def height(value: float) -> str:
    r"""A height, in centimetres.

    >>> height(0.45), height(1.125)
    ('45\xa0cm', '112.5\xa0cm')
    """
    return f"{round(value * 100, 1):g}{NBSP}cm"
