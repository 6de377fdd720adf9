"""Numbers as findings say them; they are written into YAML again, so in plain characters."""


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
