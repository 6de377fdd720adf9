"""Numbers as findings say them; they are written into YAML again, so in plain characters."""

from collections.abc import Sequence

from strength_handbook.model.quantities import in_unit


def clock(seconds: float) -> str:
    """Seconds as a coach writes them.

    >>> clock(150), clock(45), clock(60)
    ('2:30', '45 s', '1:00')
    """
    whole = round(seconds)
    return f"{whole} s" if whole < 60 else f"{whole // 60}:{whole % 60:02d}"


def number(value: float) -> str:
    """A number without needless decimals.

    >>> number(12.50), number(3.0), number(0.333333)
    ('12.5', '3', '0.33')
    """
    return f"{round(value, 2):g}"


def weight(grams: float, units: str) -> str:
    """A mass as a coach writes it.

    >>> weight(22_500, "kg"), weight(20_412, "lb")
    ('22.5 kg', '45 lb')
    """
    return f"{in_unit(round(grams), units)} {units}"


def listed(parts: Sequence[str], last: str = "and") -> str:
    """Several things in a row.

    >>> listed(["70", "72.5", "75"]), listed(["B1"]), listed(["2", "3"], "or")
    ('70, 72.5 and 75', 'B1', '2 or 3')
    """
    if len(parts) < 2:
        return "".join(parts)
    return f"{', '.join(parts[:-1])} {last} {parts[-1]}"
