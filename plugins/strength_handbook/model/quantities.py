"""Quantities with units, written as on a whiteboard: ``20 kg``, ``2:30``, ``1.10 m``, ``78 %``.

A bare number is refused where a unit matters, with the text that would be right. Masses are kept
in whole grams, so that sums of plates are exact; everything else is a float in SI units. Each
quantity has a largest value far above any real one, which keeps slips of the keyboard out.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import BeforeValidator, PlainValidator, WithJsonSchema

from strength_handbook.model.length import Length
from strength_handbook.model.plain import within
from strength_handbook.model.samples import other_unit, unit
from strength_handbook.model.shape import refuse, shown

GRAMS_PER_POUND = 453.59237
"""Exact by definition: international yard and pound agreement, 1959."""

NUMBER = r"(\d+(?:[.,]\d+)?)"

MOST_KG = 1000
"""Nothing in a gym is heavier."""


class LimitError(ValueError):
    """A quantity beyond anything real."""


@dataclass(frozen=True, slots=True, order=True)
class Mass:
    """A mass in whole grams that remembers the unit it was written in.

    >>> Mass.parse("45 lb")
    Mass(grams=20412, unit='lb')
    >>> Mass.parse("2,5 kg").label
    '2.5 kg'
    """

    grams: int
    unit: str = "kg"

    @classmethod
    def parse(cls, text: str) -> "Mass":
        """Read ``20 kg``, ``45 lb`` or ``500 g``.

        Raises:
            ValueError: where the text is no mass; the message says what to write.
        """
        found = _MASS.fullmatch(text.strip())
        if not found:
            bare = f"'{{0}} {unit()}' or '{{0}} {other_unit()}'"
            raise ValueError(_advice(_MASS, text, "a mass", bare, _masses()))
        amount, written = _number(found[1]), found[2].rstrip("s")
        grams = amount * {"g": 1, "kg": 1000}.get(written, GRAMS_PER_POUND)
        if grams > MOST_KG * 1000:
            pounds = f"{int(MOST_KG * 1000 / GRAMS_PER_POUND)} lb"
            most = pounds if written == "lb" else f"{MOST_KG} kg"
            raise LimitError(f"{shown(text)} is too large; the most is {most}")
        return cls(round(grams), "lb" if written == "lb" else "kg")

    @property
    def kg(self) -> float:
        """The mass in kilograms."""
        return self.grams / 1000

    @property
    def label(self) -> str:
        """The mass in the unit it was written in, without needless zeros."""
        return f"{in_unit(self.grams, self.unit)} {self.unit}"


def in_unit(grams: int, unit: str) -> str:
    """Grams as a number in ``kg`` or ``lb``, without needless zeros.

    Pounds are kept in whole grams, half a gram off at most for each plate: what comes near a
    quarter of a pound is meant as that, the rest is rounded to a tenth.

    >>> in_unit(97500, "kg"), in_unit(20412 * 2, "lb"), in_unit(1250, "kg"), in_unit(567, "lb")
    ('97.5', '90', '1.25', '1.25')
    """
    if unit == "lb":
        pounds = grams / GRAMS_PER_POUND
        quarter = round(pounds * 4) / 4
        return (
            f"{quarter:g}" if abs(pounds - quarter) < 0.03 else f"{pounds:.1f}".removesuffix(".0")
        )
    return f"{grams / 1000:.3f}".rstrip("0").rstrip(".")


def stamped(grams: int, unit: str) -> str:
    r"""A plate, a pin or a bar as it is stamped: bare in the room's unit, else with its own.

    Pound plates weigh no round number of grams, and plates in kilograms come in steps of 50 g; so
    one number of grams is one stamp.

    >>> stamped(20_000, "kg"), stamped(20_412, "kg"), stamped(20_412, "lb"), stamped(20_000, "lb")
    ('20', '45\xa0lb', '45', '20\xa0kg')
    """
    pounds = round(grams / GRAMS_PER_POUND * 4) / 4
    in_pounds = grams % 50 != 0 and round(pounds * GRAMS_PER_POUND) == grams
    other = {"kg": in_pounds, "lb": not in_pounds and grams % 50 == 0}[unit]
    if not other or not grams:
        return in_unit(grams, unit)
    own = "lb" if unit == "kg" else "kg"
    return f"{in_unit(grams, own)}\xa0{own}"


_MASS = re.compile(rf"{NUMBER}\s*(kgs?|lbs?|g)")


def _masses() -> str:
    """Two examples, the room's unit first."""
    return " or ".join(sorted(("'20 kg'", "'45 lb'"), reverse=unit() == "lb"))


def _advice(pattern: re.Pattern[str], text: str, what: str, bare: str, example: str) -> str:
    """What to write instead of a text that is no quantity of its kind."""
    text = text.strip()
    if re.fullmatch(NUMBER, text):
        number = text if len(text) < 10 else "20"
        if what == "a time" and (clock := as_clock(text)):
            bare = f"'{clock}', {bare}"
        return f"{shown(text)} has no unit; write {bare.format(number)}"
    if pattern.fullmatch(text.lower()):
        return f"units are written small: {shown(text.lower())}"
    return f"{shown(text)} is not {what}; write it like {example}"


def as_clock(text: str) -> str:
    """Minutes and seconds that a number with a point or comma may stand for; "" where none.

    >>> as_clock("2.30"), as_clock("2,30"), as_clock("2.5"), as_clock("2.75")
    ('2:30', '2:30', '', '')
    """
    found = re.fullmatch(r"(\d{1,2})[.,]([0-5]\d)", text)
    return f"{found[1]}:{found[2]}" if found else ""


def _reader(
    pattern: str,
    convert: Callable[[re.Match[str]], float],
    *,
    what: str,
    bare: str,
    example: str,
    most: tuple[float, str],
) -> Callable[[Any], float]:
    """A function from text to number for one quantity, with errors that say what to write."""
    compiled = re.compile(pattern)

    def read(value: Any) -> float:
        if isinstance(value, bool) or not isinstance(value, str | int | float):
            raise refuse("unit", f"{what} is expected here, such as {example}")
        text = str(value).strip()
        found = compiled.fullmatch(text)
        if not found:
            raise refuse("unit", _advice(compiled, text, what, bare, example))
        result = convert(found)
        if result > most[0]:
            raise refuse("range", f"{shown(text)} is too large; the most is {most[1]}")
        return result

    return read


def _number(text: str) -> float:
    return float(text.replace(",", "."))


_SECONDS = {"s": 1.0, "sec": 1.0, "min": 60.0, "h": 3600.0}


def _duration(found: re.Match[str]) -> float:
    if found[1] is not None:
        return int(found[1]) * 60.0 + int(found[2])
    return _number(found[3]) * _SECONDS[found[4]]


_MILES = {"mile": "mi", "miles": "mi"}
read_length = _reader(
    rf"{NUMBER}\s*(km|miles?|mi|m|cm|mm|ft|in|yd)",
    lambda m: Length.of(_number(m[1]), _MILES.get(m[2], m[2])),
    what="a length",
    bare="'{0} m' or '{0} cm'",
    example="'1.10 m' or '30 cm'",
    most=(100_000, "100 km"),
)
read_duration = _reader(
    rf"(?:(\d{{1,2}}):([0-5]\d)|{NUMBER}\s*(s|sec|min|h))",
    _duration,
    what="a time",
    bare="'{0} s' or '{0} min'",
    example="'2:30' or '90 s'",
    most=(86_400, "24 h"),
)
read_percent = _reader(
    rf"{NUMBER}\s*%",
    lambda m: _number(m[1]),
    what="a percentage",
    bare="'{0} %'",
    example="'70 %'",
    most=(500, "500 %"),
)
read_angle = _reader(
    rf"{NUMBER}\s*(?:°|deg)",
    lambda m: _number(m[1]),
    what="an angle",
    bare="'{0}°'",
    example="'90°'",
    most=(360, "360°"),
)


def read_mass(value: Any) -> Mass:
    """A mass from whatever stood in the file; a refusal says what to write."""
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise refuse("unit", f"a mass is expected here, such as {_masses().split(' or ')[0]}")
    try:
        return Mass.parse(str(value))
    except ValueError as error:
        slug = "range" if isinstance(error, LimitError) else "unit"
        raise refuse(slug, str(error)) from None


def _text_schema(pattern: str, *examples: str) -> WithJsonSchema:
    return WithJsonSchema({"type": "string", "pattern": pattern, "examples": list(examples)})


_N = r"\d+([.,]\d+)?\s*"

MassText = Annotated[
    Mass,
    BeforeValidator(read_mass),
    _text_schema(rf"^{_N}(kgs?|lbs?|g)$", "20 kg", "45 lb"),
]
"""A mass written with its unit."""

BodyMass = Annotated[MassText, within(Mass.parse, "20 kg", "300 kg")]
"""Somebody's body mass."""

Metres = Annotated[
    float,
    PlainValidator(read_length),  # nothing after it that would make a bare float of it
    _text_schema(rf"^{_N}(km|miles?|mi|m|cm|mm|ft|in|yd)$", "1.10 m", "30 cm", "60 mm"),
]
"""A length, kept in metres with the unit it was written in."""

Seconds = Annotated[
    float,
    BeforeValidator(read_duration),
    _text_schema(rf"^(\d{{1,2}}:[0-5]\d|{_N}(s|sec|min|h))$", "2:30", "90 s", "75 min"),
]
"""A time, kept in seconds. ``2:30`` is two minutes thirty."""

Percent = Annotated[
    float,
    BeforeValidator(read_percent),
    _text_schema(rf"^{_N}%$", "70 %", "12.5 %"),
]
"""A percentage, kept as the number in front of the sign."""

Share = Annotated[Percent, within(read_percent, "1 %", "300 %")]
"""A percentage that cannot be nothing."""

Degrees = Annotated[
    float,
    BeforeValidator(read_angle),
    _text_schema(rf"^{_N}(°|deg)$", "90°"),
]
"""An angle in degrees."""
