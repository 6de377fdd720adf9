"""Numbers as they are printed: units, signs and spaces by the rules of the trade and of print."""

from strength_handbook.model.quantities import in_unit

NBSP = "\u00a0"
MINUS = "−"

_WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
          "eleven", "twelve")  # fmt: skip


def count_word(number: float) -> str:
    """A small whole number as a word.

    >>> count_word(4), count_word(15), count_word(2.5)
    ('four', '15', '2.5')
    """
    if number == int(number) and 0 <= number < len(_WORDS):
        return _WORDS[int(number)]
    return f"{number:g}"


def mass(grams: float, units: str) -> str:
    r"""A mass with its unit; negative with a proper minus.

    >>> mass(107500, "kg"), mass(-15000, "kg"), mass(20412, "lb")
    ('107.5\xa0kg', '−15\xa0kg', '45\xa0lb')
    """
    return f"{bare_mass(grams, units)}{NBSP}{units}"


def bare_mass(grams: float, units: str) -> str:
    """A mass as a number only, for columns that carry the unit in their head."""
    text = in_unit(abs(round(grams)), units)
    return f"{MINUS}{text}" if grams < 0 and text != "0" else text


def planned_mass(grams: float, units: str) -> str:
    """A planned load: no finer than a tenth."""
    step = 100 if units == "kg" else 45.359237
    return mass(round(grams / step) * step, units)


def percent(value: float) -> str:
    r"""A percentage, no finer than half a point where it is not whole.

    >>> percent(78), percent(76.79), percent(27.5)
    ('78\xa0%', '77\xa0%', '27.5\xa0%')
    """
    nearest = round(value * 2) / 2
    text = f"{value:g}" if value == nearest else f"{value:.0f}"
    return f"{text}{NBSP}%"


def clock(seconds: float) -> str:
    r"""Seconds as minutes and seconds, or as seconds below a minute.

    >>> clock(150), clock(45), clock(60)
    ('2:30', '45\xa0s', '1:00')
    """
    whole = round(seconds)
    if whole < 60:
        return f"{whole}{NBSP}s"
    return f"{whole // 60}:{whole % 60:02d}"


def metres(value: float) -> str:
    r"""A distance.

    >>> metres(40)
    '40\xa0m'
    """
    return f"{value:g}{NBSP}m"


def hours_minutes(minutes: float) -> str:
    """A moment of the session, as on a clock that starts at 0:00.

    >>> hours_minutes(11), hours_minutes(71.4)
    ('0:11', '1:11')
    """
    whole = round(minutes)
    return f"{whole // 60}:{whole % 60:02d}"
