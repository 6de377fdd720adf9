"""What a coach is asked for a new gym, and how each answer is read."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from strength_handbook.publish.first_gym.counted import BARS, PLATES, Counted, read_counted
from strength_handbook.publish.first_gym.listed import NONE, Hands, read_hands
from strength_handbook.publish.first_gym.things_said import (
    EXAMPLES,
    RoomItem,
    read_things,
    things_words,
)

_UNITS = {
    "kg": "kg", "kgs": "kg", "kilo": "kg", "kilos": "kg", "kilograms": "kg", "metric": "kg",
    "lb": "lb", "lbs": "lb", "pound": "lb", "pounds": "lb", "imperial": "lb",
}  # fmt: skip
_MOST_RACKS = 20
_LONGEST = 120
_LONGEST_PLACE = 300


@dataclass(frozen=True)
class Answers:
    """What is known of a gym; None where nobody has answered.

    Attributes:
        gym: its name.
        units: kg or lb, and so centimetres or inches.
        bars: with their names; an empty tuple where there are none.
        racks: how many; 0 where there are none.
        plates: single plates at each rack, or in a room without racks.
        hands: dumbbells and kettlebells; an empty tuple where there are none.
        machines: machines, cable columns and all other things.
        number: the emergency number.
        place: where the ambulance has to come.
    """

    gym: str | None = None
    units: str = "kg"
    bars: tuple[Counted, ...] | None = None
    racks: int | None = None
    plates: tuple[Counted, ...] | None = None
    hands: tuple[Hands, ...] | None = None
    machines: tuple[RoomItem, ...] | None = None
    number: str | None = None
    place: str | None = None

    @property
    def has_racks(self) -> bool:
        """True where a rack stands, or nobody has said; without a bar it would hold nothing."""
        return self.racks != 0 if self.racks is not None else self.bars != ()

    @property
    def has_plates(self) -> bool:
        """True where plates were said, or there is a bar for them."""
        return bool(self.plates) or self.bars != ()

    @property
    def lifts_from_racks(self) -> bool:
        """True where a straight bar lies in a rack: the ready lifts with a bar need both."""
        straight = self.bars is None or not all(bar.name for bar in self.bars)
        return self.has_racks and straight


Reading = tuple[Any, tuple[str, ...]]
"""What was read, and all that is wrong with it."""


@dataclass(frozen=True)
class Question:
    """Something to ask.

    Attributes:
        key: the field of `Answers`, and the option.
        asks: the question, with an example in each unit.
        read: from text and unit to the answer.
        with_bar: only where there is a bar.
    """

    key: str
    asks: Mapping[str, str]
    read: Callable[[str, str], Reading]
    with_bar: bool = False

    def is_asked(self, answers: Answers) -> bool:
        """Whether it makes sense, after what is known."""
        return not self.with_bar or answers.bars != ()


def _alike(text: str) -> dict[str, str]:
    return {"kg": text, "lb": text}


def _units(text: str, _: str) -> Reading:
    if found := _UNITS.get(text.lower().strip(".")):
        return found, ()
    return "kg", (f"'{text}' is neither; write 'kg' or 'lb'",)


def _line(most: int) -> Callable[[str, str], Reading]:
    def read(text: str, _: str) -> Reading:
        line = " ".join(text.split())
        if not line.isprintable():
            return None, ("it holds a sign that is no letter; type it again",)
        wrong = f"{len(line)} letters are too many; at most {most}" if len(line) > most else ""
        return line, (wrong,) if wrong else ()

    return read


def _number(text: str, unit: str) -> Reading:
    line, wrong = _line(_LONGEST)(text, unit)
    if not wrong and not any(map(str.isdecimal, line)):
        return None, (f"'{line}' has no digit; write the number, such as '112' or '911'",)
    return line, wrong


def _bars(text: str, unit: str) -> Reading:
    return ((), ()) if text.lower() in NONE else read_counted(text, unit, BARS)


def _racks(text: str, _: str) -> Reading:
    word = text.lower().removesuffix("racks").removesuffix("rack").strip()
    if word in NONE:
        return 0, ()
    words = ("one", "two", "three", "four", "five", "six")
    number = words.index(word) + 1 if word in words else int(word) if _is_number(word) else None
    if number is None or number > _MOST_RACKS:
        return None, (f"'{text}' is no count; write a number from 0 to {_MOST_RACKS}",)
    return number, ()


def _is_number(text: str) -> bool:
    return text.isascii() and text.isdecimal() and len(text) < 4


QUESTIONS = (
    Question("gym", _alike("Name of the gym"), _line(_LONGEST)),
    Question("units", _alike("kg or lb (Enter alone: kg)"), _units),
    Question(
        "bars",
        {"kg": "Bars, such as 2x20, 1x15; or none", "lb": "Bars, such as 2x45, 1x35; or none"},
        _bars,
    ),
    Question("racks", _alike("Racks, a number; 0 where there are none"), _racks, with_bar=True),
    Question(
        "plates",
        {
            "kg": "Single plates at each rack (all, without racks), such as 4x20, 4x10, 2x2.5",
            "lb": "Single plates at each rack (all, without racks), such as 4x45, 4x10, 2x2.5",
        },
        lambda text, unit: read_counted(text, unit, PLATES),
        with_bar=True,
    ),
    Question(
        "hands",
        {
            "kg": "Hand weights, such as dumbbells 4-30 by 2, kettlebells 12, 16; or none",
            "lb": "Hand weights, such as dumbbells 5-50 by 5, kettlebells 25, 35; or none",
        },
        read_hands,
    ),
    Question(
        "machines",
        {
            unit: f"Machines and other things, such as {EXAMPLES[unit]}; or none"
            for unit in ("kg", "lb")
        },
        read_things,
    ),
    Question("number", _alike("Emergency number, such as 112 or 911"), _number),
    Question("place", _alike("Address for the ambulance"), _line(_LONGEST_PLACE)),
)
"""In the order of asking; `units` comes before all that has one."""


def read_answers(given: Mapping[str, str | None]) -> tuple[Answers, tuple[tuple[str, str], ...]]:
    """Read what was answered.

    Args:
        given: text by key; what is missing, None or empty is not answered.

    Returns:
        The answers, and for each wrong one its key and what to write instead; all at once.
    """
    values: dict[str, Any] = {"units": "kg"}
    wrong: list[tuple[str, str]] = []
    for question in QUESTIONS:
        text = (given.get(question.key) or "").strip()
        if text:
            values[question.key], slips = question.read(text, values["units"])
            wrong += [(question.key, slip) for slip in slips]
    return Answers(**values), tuple(wrong)


def understood(answers: Answers, key: str) -> str:
    """How a line of things was read, for whoever typed it; empty for all others."""
    value = getattr(answers, key)
    if key == "hands":
        return "; ".join(one.words for one in value or ())
    if key == "machines":
        return things_words(value or ())
    if key not in ("bars", "plates") or not value:
        return ""
    if key == "plates":
        counted = ((one, one.number // 2, "pair") for one in value)
    else:
        counted = ((one, one.number, f"{one.name} bar".lstrip()) for one in value)
    return ", ".join(f"{n} {what}{'s' * (n > 1)} of {one.label}" for one, n, what in counted)
