"""A dose printed in one line, as on a whiteboard; reading the line gives the same dose again."""

import re
from collections.abc import Iterator
from decimal import Decimal

from strength_handbook.model.count import Count
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.line_words import LONGEST, NO_PLACE, WORD, fits_free
from strength_handbook.model.load import BodyWeight, FixedLoad, Load, Setting
from strength_handbook.model.methods import Cluster, Strip
from strength_handbook.model.quantities import GRAMS_PER_POUND, Mass

_KEPT = ("sets", "load", "hold")


class OneLineError(ValueError):
    """A dose that one line cannot say.

    Attributes:
        key: the key that does not fit, as a coach writes it; empty where the whole is too long.
    """

    def __init__(self, key: str, text: str) -> None:
        self.key = key
        super().__init__(f"{text}; write the dose in its long form")


def dose_line(part: DosePart) -> str:
    """The part in one line.

    >>> dose_line(DosePart.model_validate({"sets": 3, "reps": "8-12", "rest": "90 s"}))
    '3x8-12, rest 90 s'

    Raises:
        OneLineError: for what one line cannot say: a note, a text with a comma in it, more than 200
            characters.
    """
    if part.note is not None:
        raise OneLineError("note", "a note has no place in one line")
    if part.each_side is False:
        raise OneLineError("each-side", "one line cannot say that it is not on each side")
    line = ", ".join(
        (*_deload(part), *_work(part), *_extra_weight(part), *_open(part), *_manner(part))
    )
    if len(line) > LONGEST:
        raise OneLineError("", f"one line has at most {LONGEST} characters")
    return line


def _deload(part: DosePart) -> Iterator[str]:
    kept = [(word, getattr(part, f"keep_{word}")) for word in _KEPT]
    if part.deload_of is not None:
        yield f"deload of {part.deload_of}"
    for word, share in kept:
        if share is None:
            continue
        if part.deload_of is None:
            raise OneLineError(f"keep-{word}", f"'keep-{word}' stands beside 'deload-of' only")
        yield f"{word} {_number(share)} %"


def _work(part: DosePart) -> Iterator[str]:
    if part.test is not None:
        attempts = part.test.attempts
        yield f"test {part.test.rm}RM in {attempts} attempt{'s' if attempts != 1 else ''}"
    if part.top is not None:
        yield "top none" if part.top == "none" else f"ramp to {part.top}"
    words = [_set(part)]
    if part.cap is not None:
        words.append(f"cap {part.cap}")
    if part.each_side:
        words.append("ES")
    if part.load is not None:
        words.append(f"@ {_load(part.load)}")
    if any(words):
        yield " ".join(word for word in words if word)


def _set(part: DosePart) -> str:
    """Sets and what one of them is; either may be missing."""
    sets = None if part.sets is None else _count(part.sets)
    times = "" if sets is None else f"{sets}x"
    if part.reps is not None:
        reps = _count(part.reps)
        return f"{times}{reps}" if times else f"reps {reps}"
    if part.hold is not None:
        return f"ISO {times}{_time(part.hold)}" if times else f"hold {_time(part.hold)}"
    if part.time is not None:
        if part.density is not None:
            return f"{times}{_minutes(part.time)} AMRAP"
        return f"{times}{_time(part.time)}" if times else f"time {_time(part.time)}"
    if part.distance is not None:
        far = f"{_number(part.distance)} m"
        return f"{sets} -> {far}" if times else f"distance {far}"
    if part.cluster is not None:
        return f"{times}{_cluster(part.cluster)}"
    if part.strip is not None:
        return f"{times} {_strip(part.strip)}".strip()
    return "" if sets is None else f"sets {sets}"


def _cluster(cluster: Cluster) -> str:
    return f"({'+'.join(map(str, cluster.parts))})/{_time(cluster.pause)}"


def _strip(strip: Strip) -> str:
    words = [f"strip {strip.loads} loads -{_number(strip.drop)} %"]
    if strip.total is not None:
        words.append(f"to {strip.total} reps")
    if strip.within_ is not None:
        words.append(f"within {_minutes(strip.within_)}")
    return " ".join(words)


def _extra_weight(part: DosePart) -> Iterator[str]:
    if part.training_max is not None:
        yield f"TM {_number(part.training_max)} %"
    if part.bands is not None:
        share = part.bands.top_share
        pair = " ".join(part.bands.pair)
        yield f"bands {pair}" if share is None else f"bands {_number(share)} % at top"
    if part.chains is not None:
        share, pairs = part.chains.top_share, part.chains.pairs
        many = f"{pairs} pair{'s' if pairs != 1 else ''}"
        yield f"chains {many if share is None else f'{_number(share)} % at top'}"
    if part.assist is not None:
        if part.assist.band is not None:
            yield f"help band {part.assist.band}"
        if part.assist.by is not None:
            yield f"help by {_free('assist', part.assist.by)}"
    if part.team is not None:
        turn = part.team.turn_every
        turns = "" if turn is None else f" turn {_time(turn)}"
        yield f"team {part.team.bearers} x {_mass(part.team.mass)}{turns}"
    if part.height is not None:
        yield f"box {_height(part.height)}"
    for name, value in part.settings.items():
        if not re.fullmatch(WORD, name) or not re.fullmatch(WORD, value):
            raise OneLineError("settings", "a setting in one line is one word and one value")
        yield f"setting {name} {value}"


def _open(part: DosePart) -> Iterator[str]:
    if part.density is not None:
        yield f"pace {part.density.pace}/min"
        if part.density.sharing != 1:
            yield f"shared by {part.density.sharing}"
    if part.last_set is not None:
        last = part.last_set
        yield f"last set {last.floor}+ cap {last.cap} RIR {last.rir}"


def _manner(part: DosePart) -> Iterator[str]:
    if part.tempo is not None:
        yield f"tempo {part.tempo.text}"
    if part.rir is not None:
        yield f"RIR {part.rir}"
    if part.rpe is not None:
        yield f"RPE {_number(part.rpe)}"
    if part.every is not None:
        yield f"every {_time(part.every)}"
    if part.rest is not None:
        yield f"rest {_time(part.rest)}"
    if part.position is not None:
        if re.match(NO_PLACE, part.position, re.IGNORECASE):
            raise OneLineError("position", "after 'at' this would be read as a load")
        yield f"at {_free('position', part.position)}"
    if part.push is not None:
        yield f"push at {_free('push', part.push.at)} ramp {_time(part.push.ramp)}"
    if part.pause is not None:
        yield f"pause {_time(part.pause.time)} at {_free('pause', part.pause.at)}"
    for key, words, text in (
        ("return-by", "return by", part.return_by),
        ("range", "range", part.range_),
        ("breathe", "breathe", part.breathe),
    ):
        if text is not None:
            yield f"{words} {_free(key, text)}"
    if part.intent is not None:
        yield f"intent {part.intent}"


def _free(key: str, text: str) -> str:
    if not fits_free(text):
        raise OneLineError(key, f"the words of '{key}' would not end where they should in one line")
    return text


def _load(load: Load) -> str:
    match load:
        case FixedLoad(mass):
            return _mass(mass)
        case BodyWeight(change, sign):
            plain = load == BodyWeight(Mass(0))
            return "BW" if plain else f"BW{'+' if sign > 0 else '-'}{_mass(change)}"
        case Setting(value):
            return f"{_number(value)} units"
    percent: float | None = getattr(load, "percent", None)
    if percent is None:
        return load.text
    return load.text.replace(f"{percent:g} %", f"{_number(percent)} %")


def _count(count: Count) -> str:
    return count.text.replace("–", "-")


def _number(value: float) -> str:
    """All digits of a number, never with an exponent."""
    text = format(Decimal(repr(float(value))), "f")
    return text.rstrip("0").rstrip(".") if "." in text else text


def _mass(mass: Mass) -> str:
    """As its label, with more digits where pounds need them to come back to the same gram."""
    for digits in range(1, 5):
        text = f"{_number(round(mass.grams / GRAMS_PER_POUND, digits))} lb"
        if mass.unit != "kg" and Mass.parse(text) == mass:
            return text
    return mass.label


def _height(metres: float) -> str:
    centimetres = round(metres * 100, 4)
    return f"{_number(centimetres)} cm" if metres < 1 else f"{_number(metres)} m"


def _time(seconds: float) -> str:
    """Seconds, or minutes and seconds from two minutes on."""
    if seconds < 120 or seconds != int(seconds):
        return f"{_number(seconds)} s"
    return f"{int(seconds) // 60}:{int(seconds) % 60:02d}"


def _minutes(seconds: float) -> str:
    """Whole minutes as such."""
    return f"{seconds / 60:g} min" if seconds % 60 == 0 and seconds else _time(seconds)
