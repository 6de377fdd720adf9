"""Numbers as they are printed: units, signs and spaces by the rules of the trade and of print."""

from strength_handbook.model.length import amount_in, length_text, own_unit
from strength_handbook.model.quantities import in_unit, stamped
from strength_handbook.model.span import ends

NBSP = "\u00a0"
MINUS = "−"

_WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
          "eleven", "twelve")  # fmt: skip


def count_word(number: float) -> str:
    """A small whole number as a word.

    >>> from strength_handbook.model.span import Span
    >>> count_word(4), count_word(15), count_word(2.5), count_word(Span(2, 3))
    ('four', '15', '2.5', 'two to three')
    """
    low, high = ends(number)
    if low != high:
        in_words = low == int(low) and high == int(high)
        return " to ".join(count_word(end) if in_words else f"{end:g}" for end in (low, high))
    if number == int(number) and 0 <= number < len(_WORDS):
        return _WORDS[int(number)]
    return f"{number:g}"


def mass(grams: float, units: str) -> str:
    r"""A mass with its unit; negative with a proper minus.

    >>> mass(107500, "kg"), mass(-15000, "kg"), mass(20412, "lb")
    ('107.5\xa0kg', '−15\xa0kg', '45\xa0lb')
    """
    return f"{bare_mass(grams, units)}{NBSP}{units}"


def plate_mass(grams: int, units: str) -> str:
    r"""A plate as it is stamped, always with a unit.

    >>> plate_mass(20412, "kg"), plate_mass(20000, "kg")
    ('45\xa0lb', '20\xa0kg')
    """
    text = stamped(grams, units)
    return text if text[-1].isalpha() else f"{text}{NBSP}{units}"


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
    >>> from strength_handbook.model.span import Span
    >>> percent(Span(70, 75))
    '70–75\xa0%'
    """
    low, high = ends(value)
    if low != high:
        return f"{percent(low).removesuffix(f'{NBSP}%')}–{percent(high)}"
    nearest = round(value * 2) / 2
    text = f"{value:g}" if value == nearest else f"{value:.0f}"
    return f"{text}{NBSP}%"


def clock(seconds: float) -> str:
    r"""Seconds as minutes and seconds, or as seconds below a minute.

    >>> clock(150), clock(45), clock(60)
    ('2:30', '45\xa0s', '1:00')
    >>> from strength_handbook.model.span import Span
    >>> clock(Span(90, 120))
    '1:30–2:00'
    >>> clock(Span(20, 30)), clock(Span(45, 60))
    ('20–30\xa0s', '45\xa0s–1:00')
    """
    low, high = ends(seconds)
    if low != high:
        shortest, longest = clock(low), clock(high)
        unit = f"{NBSP}s"
        return f"{shortest.removesuffix(unit) if longest.endswith(unit) else shortest}–{longest}"
    whole = round(seconds)
    if whole < 60:
        return f"{whole}{NBSP}s"
    return f"{whole // 60}:{whole % 60:02d}"


def split(seconds: float) -> str:
    """A pace as a display shows it, to the tenth of a second.

    >>> from strength_handbook.model.span import Span
    >>> split(123), split(116.25), split(Span(123, 126.5)), split(59.94)
    ('2:03', '1:56.3', '2:03–2:06.5', '0:59.9')
    """
    return "–".join(dict.fromkeys(_tenths(end) for end in ends(seconds)))


def _tenths(seconds: float) -> str:
    tenths = int(seconds * 10 + 0.5)
    minutes, rest = divmod(tenths, 600)
    whole, tenth = divmod(rest, 10)
    return f"{minutes}:{whole:02d}" + (f".{tenth}" if tenth else "")


def whole_watts(watts: float) -> str:
    """Watts as a whole number, of a range both ends.

    >>> from strength_handbook.model.span import Span
    >>> whole_watts(202.5), whole_watts(Span(167.1, 178.6))
    ('203', '167–179')
    """
    return "–".join(dict.fromkeys(str(int(end + 0.5)) for end in ends(watts)))


def metres(value: float) -> str:
    r"""A distance, as it was written.

    >>> from strength_handbook.model.length import Length
    >>> metres(40), metres(Length(30.48, "ft"))
    ('40\xa0m', '100\xa0ft')
    >>> from strength_handbook.model.span import Span
    >>> metres(Span(20, 30))
    '20–30\xa0m'
    """
    return far_text(value, gap=NBSP)


def far_text(value: float, *, like: float | None = None, gap: str = " ") -> str:
    """A distance, of a range both ends; `like` is one whose unit is taken.

    >>> from strength_handbook.model.span import Span
    >>> far_text(Span(20, 30)), far_text(40)
    ('20–30 m', '40 m')
    """
    low, high = (length_text(end, like=like, gap=gap) for end in ends(value))
    unit = high.rpartition(gap)[2]
    return high if low == high else f"{low.removesuffix(f'{gap}{unit}')}–{high}"


_FAR_WORDS = {
    "m": ("metre", "metres"), "ft": ("foot", "feet"), "in": ("inch", "inches"),
    "yd": ("yard", "yards"), "mi": ("mile", "miles"), "km": ("kilometre", "kilometres"),
}  # fmt: skip


def length_words(length: float) -> str:
    """A distance in words, in the unit it was written in.

    >>> from strength_handbook.model.length import Length
    >>> length_words(40), length_words(Length(30.48, "ft")), length_words(1)
    ('40 metres', '100 feet', '1 metre')
    """
    low, high = ends(length)
    if low != high:
        unit = own_unit(length) or "m"
        return f"{amount_in(low, unit)} to {length_words(high)}"
    unit = own_unit(length) or "m"
    amount = amount_in(length, unit)
    return f"{amount} {_FAR_WORDS[unit][amount != '1']}"


def hours_minutes(minutes: float) -> str:
    """A moment of the session, as on a clock that starts at 0:00.

    >>> hours_minutes(11), hours_minutes(71.4)
    ('0:11', '1:11')
    """
    whole = round(minutes)
    return f"{whole // 60}:{whole % 60:02d}"


def height(value: float) -> str:
    r"""A height, in centimetres or as written.

    >>> height(0.45), height(1.125)
    ('45\xa0cm', '112.5\xa0cm')
    """
    return length_text(value, "cm", gap=NBSP)
