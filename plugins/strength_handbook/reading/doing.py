"""What the reading of a dose knows of what is done: a dose that fits it, for messages.

It looks at files as they stand, whether they are right or not: a slip in the file of a plank is no
reason to offer a barbell's dose for it.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace

from strength_handbook.dose.kit import UNKNOWN, NamedKit
from strength_handbook.model.quantities import Mass
from strength_handbook.model.samples import sample
from strength_handbook.model.words import Pattern
from strength_handbook.reading.source import Path, Plain, value_at

EXAMPLE = "'4x5 @ 74 %, tempo 4-1-X-0, RIR 2, rest 2:30'"
_MOST_PINS = 60
_HOLD = "'ISO 3x30 s, RPE 7, rest 60 s'"
_BY_PATTERN: Mapping[str, str] = {
    Pattern.CARRY: "'4 -> 40 m @ 25 % BM, rest 90 s'",
    Pattern.JUMP: "'4x3, box 45 cm, intent fast, rest 90 s'",
    Pattern.TRUNK: _HOLD,
}
_BY_LOAD: Mapping[str, str] = {
    "body-weight": "'3x5 @ BW+7.5 kg, RIR 2, rest 2:00'",
    "push-up": "'3x8-12, RIR 2, rest 90 s'",
    "strap-row": "'3x8-12, RIR 2, rest 90 s'",
    "effort": "'3x8-12, RPE 7, rest 90 s'",
    "hands": "'3x10 @ 16 kg, RIR 2, rest 90 s'",
    "stack": "'3x10 @ 40 kg, RIR 2, rest 90 s'",
    "machine": "'3x10, RIR 2, setting seat 4, rest 90 s'",
}


def going_example(of: str) -> str:
    """A dose of what is rowed, run or ridden."""
    return {
        "row": "'6x500 m, RPE 8, 26 spm, rest 2:00'",
        "ski": "'6x500 m, RPE 8, rest 2:00'",
        "swim": "'8x100 m, RPE 7, rest 30 s'",
        "run": "'5 km, can talk'",
        "walk": "'5 km, can talk'",
    }.get(of, "'8x40 s, RPE 8, rest 20 s' or '20 min, can talk'")


@dataclass(frozen=True, slots=True)
class Doing:
    """What is done.

    Attributes:
        example: a dose that fits it, in quotes.
        kind: how it is loaded; empty where that is unknown.
        hands: how many weights are held, 0 where it is done without; None where that is unknown.
        jump: it is a jump.
        kit: what of the room its doses may name.
        name: the words of its name, in small letters.
    """

    example: str = EXAMPLE
    kind: str = ""
    hands: int | None = None
    name: frozenset[str] = frozenset()
    jump: bool = False
    kit: NamedKit = UNKNOWN

    @property
    def shown(self) -> str:
        """The example in the units of the room."""
        return sample(self.example)


ANYTHING = Doing()
"""Where nothing is known of it."""


def doing(exercise: Plain, room: Plain = None) -> Doing:
    """What the file of an exercise says of its doses.

    Args:
        exercise: the file.
        room: the room's file, where it is known.

    >>> doing({"pattern": "carry", "load": {"kind": "hands"}}).example
    "'4 -> 40 m @ 25 % BM, rest 90 s'"
    """
    if not isinstance(exercise, dict):
        return ANYTHING
    load = exercise.get("load")
    kind = str(load.get("kind")) if isinstance(load, dict) else ""
    if kind == "endurance" and isinstance(load, dict):
        example = going_example(str(load.get("of")))
        return Doing(example, kind, 0, name=_words(exercise))
    example = _BY_PATTERN.get(str(exercise.get("pattern"))) or _BY_LOAD.get(kind, EXAMPLE)
    return Doing(
        _HOLD if _is_hold(exercise.get("dose")) else example,
        kind,
        _hands(load) if kind else None,
        _words(exercise),
        jump=exercise.get("pattern") == Pattern.JUMP,
        kit=_kit(room, load),
    )


def _kit(room: Plain, load: Plain) -> NamedKit:
    """What of the room a dose may name."""
    if not isinstance(room, dict):
        return UNKNOWN
    bands, chains = room.get("bands"), room.get("chains")
    pairs = [str(value_at(one, ("pairs",))) for one in _values(chains)]
    stack = str(load.get("stack")) if isinstance(load, dict) else ""
    return NamedKit(
        tuple(map(str, bands)) if isinstance(bands, dict) else (),
        sum(int(one) for one in pairs if one.isdigit()),
        _pins(value_at(room, ("stacks", stack, "pins"))),
    )


def _values(several: Plain) -> list[Plain]:
    return list(several.values()) if isinstance(several, dict) else []


def _pins(pins: Plain) -> tuple[str, ...]:
    """Marks of a stack that goes up evenly, the lightest first; none for any other."""
    if not isinstance(pins, dict):
        return ()
    try:
        low, high, by = (Mass.parse(str(pins[key])) for key in ("from", "to", "by"))
    except (KeyError, ValueError):
        return ()
    if by.grams <= 0 or (high.grams - low.grams) / by.grams > _MOST_PINS:
        return ()
    return tuple(
        Mass(grams, low.unit).label
        for grams in range(low.grams, high.grams + by.grams // 2, by.grams)
    )


def _words(exercise: Mapping[str, Plain]) -> frozenset[str]:
    return frozenset(re.findall(r"[^\W\d_]+", str(exercise.get("name", "")).lower()))


def _hands(load: Plain) -> int:
    hands = load.get("hands") if isinstance(load, dict) else None
    return hands if isinstance(hands, int) and hands in (1, 2) else 0


def doing_at(whole: Plain, path: Path, exercises: Mapping[str, Doing]) -> Doing:
    """What is done at a path of a file: of a wave, or of an exercise.

    Args:
        whole: the file.
        path: where the dose stands.
        exercises: what is known of each exercise, by short name.
    """
    if path[0] != "sessions":
        return doing(whole)
    slot = value_at(whole, path[:4])  # sessions, its name, slots, number
    if not isinstance(slot, dict):
        return ANYTHING
    found = exercises.get(str(slot.get("exercise")), ANYTHING)
    weeks = slot.get("weeks")
    others = weeks.values() if isinstance(weeks, dict) else ()
    return replace(found, example=_HOLD) if any(map(_is_hold, others)) else found


def _is_hold(dose: Plain) -> bool:
    """True for a dose that is plainly a hold, in one line or in keys."""
    if isinstance(dose, dict):
        return "hold" in dose
    return isinstance(dose, str) and dose.upper().lstrip().startswith("ISO ")
