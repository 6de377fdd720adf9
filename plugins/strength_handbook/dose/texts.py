"""Values as they stand in a line, with all digits, and as they are said in words."""

from collections.abc import Iterator
from decimal import Decimal

from strength_handbook.dose.free_words import fits_free
from strength_handbook.model.count import Count
from strength_handbook.model.length import Metric, amount_in, own_unit
from strength_handbook.model.printed import clock, count_word
from strength_handbook.model.quantities import GRAMS_PER_POUND, Mass, read_length
from strength_handbook.model.span import Span, ends, middle_of


class OneLineError(ValueError):
    """A dose that one line cannot say.

    Attributes:
        key: the key that does not fit, as a coach writes it; empty where the whole is too long.
    """

    def __init__(self, key: str, text: str) -> None:
        self.key = key
        super().__init__(f"{text}; write the dose in its long form")


def free_text(key: str, text: str) -> str:
    """Words of the coach's own, as they stand in a line.

    Raises:
        OneLineError: where they would run on, or end too early.
    """
    if not fits_free(text):
        raise OneLineError(key, f"the words of '{key}' would not end where they should in one line")
    return text


def line_count(count: Count) -> str:
    """A count with a plain hyphen."""
    return count.text.replace("–", "-")


def line_number(value: float) -> str:
    """All digits of a number, never with an exponent; a range with a plain hyphen."""
    low, high = ends(value)
    if low != high:
        return f"{line_number(low)}-{line_number(high)}"
    text = format(Decimal(repr(float(value))), "f")
    return text.rstrip("0").rstrip(".") if "." in text else text


def line_mass(mass: Mass) -> str:
    """As its label, with more digits where pounds need them to come back to the same gram."""
    for digits in range(1, 5):
        text = f"{line_number(round(mass.grams / GRAMS_PER_POUND, digits))} lb"
        if mass.unit != "kg" and Mass.parse(text) == mass:
            return text
    return mass.label


def line_length(length: float, metric: Metric) -> str:
    """As it was written, with all digits that it needs to come back to the same."""
    low, high = ends(length)
    if low != high:
        shortest, longest = line_length(low, metric), line_length(high, metric)
        return f"{shortest.removesuffix(f' {longest.split()[1]}')}-{longest}"
    unit = own_unit(length) or ("m" if length >= 1 else metric)
    several = (f"{amount_in(length, unit, digits)} {unit}" for digits in range(6, 11))
    return next(
        (text for text in several if read_length(text) == length),
        f"{amount_in(length, unit, 6)} {unit}",
    )


def line_time(seconds: float) -> str:
    """Seconds, or minutes and seconds from two minutes on."""
    low, high = ends(seconds)
    if low != high:
        shortest, longest = line_time(low), line_time(high)
        both_s = shortest.endswith(" s") and longest.endswith(" s")
        return f"{shortest.removesuffix(' s') if both_s else shortest}-{longest}"
    if seconds < 120 or seconds != int(seconds):
        return f"{line_number(seconds)} s"
    if seconds >= 6000:  # a clock has two digits
        return f"{line_number(seconds)} s" if seconds % 60 else f"{seconds / 60:g} min"
    return f"{int(seconds) // 60}:{int(seconds) % 60:02d}"


def line_minutes(seconds: float) -> str:
    """Whole minutes as such; a range as every other."""
    whole_minutes = not isinstance(seconds, Span) and seconds and seconds % 60 == 0
    return f"{seconds / 60:g} min" if whole_minutes else line_time(seconds)


def clock_words(seconds: float) -> str:
    """A time in words: seconds up to two minutes, then minutes.

    >>> from strength_handbook.model.span import Span
    >>> clock_words(30), clock_words(150)
    ('30 seconds', '2½ minutes')
    >>> clock_words(Span(60, 90)), clock_words(Span(90, 150))
    ('60 to 90 seconds', '90 seconds to 2½ minutes')
    """
    low, high = ends(seconds)
    if low != high:
        shortest, longest = clock_words(low), clock_words(high)
        if (unit := shortest.rpartition(" ")[2]) == longest.rpartition(" ")[2]:
            shortest = shortest.removesuffix(f" {unit}")
        return f"{shortest} to {longest}"
    if seconds < 120:
        return f"{seconds:g} second{'s' if seconds != 1 else ''}"
    minutes, rest = divmod(round(seconds), 60)
    if rest == 30:
        return f"{minutes}½ minutes"
    return f"{minutes} minutes" if rest == 0 else f"{clock(seconds)} minutes"


def seconds_words(seconds: float) -> str:
    """A few seconds, counted in words."""
    return f"{count_word(seconds)} second{'s' if seconds != 1 else ''}"


def count_words(count: Count) -> str:
    """A count in words: ``eight to twelve``, ``at least five``."""
    if count.open:
        return f"at least {count_word(count.low)}"
    if count.low == count.high:
        return count_word(count.low)
    return f"{count_word(count.low)} to {count_word(count.high)}"


def sets_words(sets: Count, one: str = "set", several: str = "sets") -> str:
    """How many sets, or of what else."""
    return f"{count_words(sets)} {one if sets.high == 1 else several}"


def capital(sentence: str) -> str:
    """With a capital at its beginning."""
    return sentence[:1].upper() + sentence[1:]


def longer(was: float | None, now: float | None) -> Iterator[str]:
    """How a time of a set has changed, where both weeks have one."""
    if was is not None and now is not None and was != now:
        word = "longer: " if now > was else "shorter: " if now < was else ""
        yield f"{word}{clock(now)} instead of {clock(was)}"


def middle_s(seconds: float | None) -> float | None:
    """Seconds to plan with, as they are published; of a range its middle."""
    return None if seconds is None else middle_of(seconds)


def range_s(seconds: float | None) -> str | None:
    """Both ends, where a time may be shorter or longer."""
    return clock(seconds) if isinstance(seconds, Span) else None


def work_guide(seconds: float) -> dict[str, float]:
    """What a phone gets of the seconds of a set: the most, and the fewest where that is less."""
    low, high = ends(seconds)
    return {"w": whole(high)} | ({"W": whole(low)} if low < high else {})


def percent_words(value: float) -> str:
    """A percentage in a sentence, of a range both ends."""
    return f"{value:g} %".replace("–", " to ")


def whole(seconds: float) -> float:
    """A number without a needless fraction."""
    return int(seconds) if seconds == int(seconds) else seconds
