"""Numbers, times, masses and lengths as the trade writes them, and in the house's notation.

All of it is common practice, no source.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal

from strength_handbook.dose.line_words import COUNT, NUMBER, PLAIN
from strength_handbook.dose.spelled_ranges import (
    MASS,
    PERCENT,
    PERCENT_SIGN,
    SEVERAL_LENGTHS,
    SEVERAL_MASSES,
    SEVERAL_SHARES,
    house_lengths,
    house_masses,
    house_percent,
    house_shares,
)
from strength_handbook.dose.spelled_units import (
    FROM,
    HEIGHTS,
    LENGTHS,
    LONG,
    MASSES,
    MINUTES,
    SECONDS,
    TIME,
    any_of,
    house_resting,
    house_time,
    number_and_unit,
    quantity,
)
from strength_handbook.dose.spelling_words import MANNERS, SPOTS
from strength_handbook.model.samples import unit


@dataclass(frozen=True, slots=True)
class Value:
    """A value in a spelling.

    Attributes:
        pattern: how it looks; without groups.
        house: from what is written to the house's notation.
        example: one, for a page.
        begins: the characters that it can begin with, in small letters.
    """

    pattern: str
    house: Callable[[str], str]
    example: str
    begins: str = "0123456789.,:"


def _off(text: str) -> str:
    """What is left of a load from which so much comes off.

    >>> _off("10%"), _off("7,5 percent")
    ('90 %', '92.5 %')
    """
    number = Decimal(number_and_unit(text)[0].replace(",", "."))
    return f"{100 - number:f} %"


def _half(text: str) -> str:
    """What one hand has of both.

    >>> _half("50 %"), _half("25 kg")
    ('25', '12.5')
    """
    number = Decimal(number_and_unit(text)[0].replace(",", "."))
    return f"{(number / 2).normalize():f}"


def _half_mass(text: str) -> str:
    return f"{_half(text)} {quantity(MASSES)(text).split()[1]}"


def _share(text: str) -> str:
    """How many times body weight as a percentage.

    >>> _share("1.5"), _share(".75"), _share("2")
    ('150', '75', '200')
    """
    plain = text.replace(",", ".")
    return f"{(Decimal(plain) * 100).normalize():f}"


_KM = any_of({"km": LENGTHS["km"]})
_FAR = (
    rf"(?:(?:[2-9]|[1-9]\d+)(?:[.,]\d+)?|1[.,]\d*[1-9])\s*{_KM}"
    rf"|[1-9]\d*(?:[.,]\d+)?\s*{any_of({'mi': LENGTHS['mi']})}"
    rf"|(?:[2-9]\d{{3}}|[1-9]\d{{4,}}|1\d{{3}}(?<!1000))\s*{any_of({'m': LENGTHS['m']})}"
)
"""More than a kilometre."""


_TEMPO = (
    r"(?:\d[\s.:]?\d[\s.:]?[\dX][\s.:]?\d"
    r"|\d{1,2}[-–/]\d{1,2}[-–/](?:\d{1,2}|X)[-–/]\d{1,2})"
)


def _tempo(text: str) -> str:
    """Four fields with hyphens.

    >>> _tempo("30X0"), _tempo("3 0 1 0"), _tempo("10/0/1/0")
    ('3-0-X-0', '3-0-1-0', '10-0-1-0')
    """
    fields = re.split(r"[-–/]", text)
    return "-".join(fields if len(fields) == 4 else re.sub(r"[\s.:]", "", text))


_THREE = r"\d{1,2}[-–/]\d{1,2}[-–/](?:\d{1,2}|X)"


def _three(text: str) -> str:
    """Three fields of a tempo with hyphens, and no pause at the top.

    >>> _three("3-1-1"), _three("31X"), _three("3/1/1")
    ('3-1-1-0', '3-1-X-0', '3-1-1-0')
    """
    return "-".join([*(re.split(r"[-–/]", text) if len(text) > 3 else text), "0"])


def _same(text: str) -> str:
    return text


def _load(text: str) -> str:
    if re.search(r"[-–]|\sto\s", text):
        return (house_shares if re.fullmatch(SEVERAL_SHARES, text, re.I) else house_masses)(text)
    return (house_percent if re.fullmatch(PERCENT, text, re.I) else quantity(MASSES))(text)


_TO = r"(?:\s*[-–]\s*|\s+to\s+)"


def house_range(text: str) -> str:
    """A number, or a range with a hyphen.

    >>> house_range("2"), house_range("2 to 3"), house_range("7–8.5")
    ('2', '2-3', '7-8.5')
    """
    return re.sub(_TO, "-", text)


_LABEL = r"(?:\s*(?:repetitions|repetition|reps|rep|contacts|contact)|r)\b\.?"
"""A single letter belongs to its number: behind a gap it may be the rest."""


_TURNS = r"(?:1?[1-9]\d|2[0-4]\d)"
"""Strokes, turns or steps a minute."""

_NUMBERS = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "twelve": 12, "fifteen": 15, "twenty": 20,
}  # fmt: skip
_COUNTED = rf"(?:{COUNT}|(?:{'|'.join(_NUMBERS)})\b)"


def _count(text: str) -> str:
    """A number in figures, without a word for repetitions.

    >>> _count("8-12 reps"), _count("four"), _count("Ten reps"), _count("5r")
    ('8-12', '4', '10', '5')
    """
    if text.lower() in _NUMBERS:
        return str(_NUMBERS[text.lower()])
    bare = re.sub(rf"{_LABEL}$", "", text, flags=re.I)
    return str(_NUMBERS.get(bare.lower(), bare))


_COUNT_BEGINS = "0123456789" + "".join(sorted({word[0] for word in _NUMBERS}))


def _phrases(several: Iterable[str]) -> str:
    """A pattern for one of several phrases, the longest first."""
    longest = sorted(several, key=len, reverse=True)
    return rf"(?:{'|'.join(map(re.escape, longest))})\b".replace(r"\ ", r"\s+")


def _initials(several: Iterable[str]) -> str:
    return "".join(sorted({one[0].lower() for one in several}))


_MANNER = (
    rf"(?:(?:very|fairly|quite)\s+)?{_phrases(MANNERS)}"
    r"(?:\s+(?:weights|weight|loads|load|effort|pace)\b)?"
)
_PLACES = {word: place for place, several in SPOTS.items() for word in several}


def _spot(text: str) -> str:
    """A place in a repetition.

    >>> _spot("in the hole"), _spot("on  chest")
    ('the bottom', 'the chest')
    """
    return _PLACES[" ".join(text.lower().split())]


def _bare_mass(text: str) -> str:
    """Hand weights called by their number, in the unit of the room.

    >>> _bare_mass("16s")
    '16 kg'
    """
    return f"{re.sub(r'[^0-9.,]', '', text)} {unit()}"


def _room_mass(text: str) -> str:
    """More than a percentage can be, in the unit of the room.

    >>> _room_mass("142.5")
    '142.5 kg'
    """
    return f"{text} {unit()}"


_SECONDS = r"(?:[3-9]\d|\d{3})"
"""As many as no minutes are."""
_NO_M = any_of({one: several for one, several in LENGTHS.items() if one != "m"})


VALUES: Mapping[str, Value] = {
    "sets": Value(_COUNTED, _count, "3", _COUNT_BEGINS),
    "reps": Value(rf"{_COUNTED}(?:{_LABEL})?", _count, "5", _COUNT_BEGINS),
    "labelled": Value(rf"{_COUNTED}{_LABEL}", _count, "5 reps", _COUNT_BEGINS),
    "n": Value(r"\d+", _same, "2"),
    "again": Value(rf"(?P=n)(?!\s*{any_of(MASSES)})", _same, "2"),
    "bare_reps": Value(
        rf"{COUNT}(?:{_LABEL})?(?!\s*(?:{any_of(MASSES)}|%|[x×*:]|s\b|sec|m\b|min))", _count, "5"
    ),
    "dashed": Value(r"\d[-–]\d[-–][\dX][-–]\d", _tempo, "3-0-X-0"),
    "name": Value(r"[a-z]+(?:[ -][a-z]+)?", _same, "pull-ups", "abcdefghijklmnopqrstuvwxyz"),
    "few": Value(r"(?:1?\d|20)", _same, "8"),
    "again_few": Value(r"(?P=few)(?!\s*[\d%])", _same, "8"),
    "other": Value(rf"(?!(?P=n)\b)\d+(?!\s*{any_of(MASSES)})", _same, "3"),
    "big": Value(r"(?:[2-9]|\d\d)", _same, "10"),
    "number": Value(NUMBER, _same, "8"),
    "more": Value(NUMBER, _same, "9"),
    "left": Value(rf"\d+(?:{_TO}\d+)?", house_range, "2"),
    "turns": Value(rf"{_TURNS}(?:{_TO}{_TURNS})?", house_range, "24"),
    "effort": Value(rf"{NUMBER}(?:{_TO}{NUMBER})?", house_range, "8"),
    "small": Value(r"(?:10|[1-9])(?:[.,]\d)?", _same, "8"),
    "machine": Value(r"(?:damper|drag|level|lvl|resistance|incline)", _same, "damper", "dlri"),
    "time": Value(TIME, house_time, "90 s"),
    "work": Value(rf"(?:(?:{TIME}|{NUMBER})(?:[-–]|\s+to\s+))?{TIME}", house_resting, "90 s"),
    "apart": Value(r"(?:(?<=\s)[-–]|[-–](?=\s))", _same, "-", "-–"),
    "pause": Value(rf"(?:{TIME}|{NUMBER}\s*m)", house_time, "90 s"),
    "resting": Value(rf"{FROM}(?:{TIME}|{NUMBER}\s*m)", house_resting, "90 s"),
    "long": Value(rf"{FROM}{LONG}", house_resting, "2 min"),
    "short": Value(rf"(?!{LONG}){TIME}", house_time, "5 s"),
    "moment": Value(rf"{NUMBER}\s*{SECONDS}", house_time, "2 s"),
    "seconds": Value(_SECONDS, _same, "90"),
    "bare_range": Value(rf"{_SECONDS}-{_SECONDS}", lambda one: house_resting(f"{one} s"), "60-90"),
    "minutes": Value(rf"\d+\s*(?:{MINUTES}|m)", lambda text: number_and_unit(text)[0], "10 min"),
    "mass": Value(MASS, quantity(MASSES), "10 kg"),
    "percent": Value(PERCENT, house_percent, "75 %"),
    "share": Value(SEVERAL_SHARES, house_shares, "70-75 %"),
    "masses": Value(SEVERAL_MASSES, house_masses, "60-65 kg"),
    "off": Value(rf"(?:[1-4]?\d(?:[.,]\d+)?)\s*{PERCENT_SIGN}", _off, "10 %"),
    "one_load": Value(rf"(?:{MASS}|{PERCENT})", _load, "60 kg"),
    "load": Value(rf"(?:{SEVERAL_SHARES}|{SEVERAL_MASSES}|{MASS}|{PERCENT})", _load, "60 kg"),
    "half_share": Value(PERCENT, lambda text: f"{_half(text)} %", "50 %"),
    "half_mass": Value(MASS, _half_mass, "48 kg"),
    "times": Value(r"(?:\d+(?:[.,]\d+)?|[.,]\d+)", _share, "1.5"),
    "length": Value(rf"{NUMBER}\s*{any_of(LENGTHS)}", quantity(LENGTHS), "40 yards"),
    "lengths": Value(SEVERAL_LENGTHS, house_lengths, "20-30 m"),
    "height": Value(rf"{NUMBER}\s*{any_of(HEIGHTS)}", quantity(HEIGHTS), "24 inches"),
    "far": Value(_FAR, _same, "2 km"),
    "tempo": Value(_TEMPO, _tempo, "30X0"),
    "three": Value(rf"(?:{_THREE}|\d\d[\dX])", _three, "3-1-1"),
    "digits": Value(r"\d{4}(?<!000)", "-".join, "3010"),
    "no_reps": Value(r"\d\dX0", "-".join, "30X0"),
    "fast": Value(r"(?-i:\d\dX\d)", "-".join, "31X1"),
    "manner": Value(rf"{_MANNER}(?:\s*(?:and|but|&)\s*{_MANNER})*", _same, "heavy",
                    _initials((*MANNERS, "very", "fairly", "quite"))),
    "spot": Value(_phrases(_PLACES), _spot, "on the chest", _initials(_PLACES)),
    "plain": Value(PLAIN, _room_mass, "140"),
    "kilo": Value(rf"{NUMBER}k", lambda text: f"{text[:-1]} kg", "20k"),
    "same_sets": Value(r"(?P=sets)", _same, "3"),
    "far_length": Value(rf"{NUMBER}\s*{_NO_M}|[1-9]\d+\s*m", quantity(LENGTHS), "40 m"),
    "light_mass": Value(r"(?:[1-9]|[1-3]\d|40)(?:[.,]\d)?'?s", _bare_mass, "16s"),
    "bare_mass": Value(r"[1-9]\d?(?:[.,]\d)?'?s", _bare_mass, "16s"),
}  # fmt: skip
"""By the name that stands in braces in a spelling, with or without a number behind it."""
