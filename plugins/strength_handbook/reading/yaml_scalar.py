"""Which unquoted words are numbers, truth values or nothing, and which stay text.

The rules are the core schema of YAML 1.2.2, section 10.3.2, less octal (``0o17``), hexadecimal,
infinity and not-a-number, and without leading zeros: what a coach writes as ``0310`` is a tempo.
The wider rules of YAML 1.1 would make 150 of ``2:30`` and false of ``no``.
"""

import math
import re
from collections.abc import Mapping

_WORDS: Mapping[str, bool | None] = {
    **dict.fromkeys(("", "~", "null", "Null", "NULL"), None),
    **dict.fromkeys(("true", "True", "TRUE"), True),
    **dict.fromkeys(("false", "False", "FALSE"), False),
}
_NUMBER_STARTS = frozenset("+-.0123456789")
_INTEGER = re.compile(r"[-+]?(?:0|[1-9][0-9]*)")
_ZERO_AT_END = re.compile(r"\d+\.\d+0")
_FLOAT = re.compile(r"[-+]?(?:(?:0|[1-9][0-9]*)(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][-+]?[0-9]+)?")


class _AsWritten(float):
    """A number that is shown with the zero it was written with: ``2.30`` may be meant as a time."""

    __slots__ = ("text",)
    text: str

    def __new__(cls, text: str) -> "_AsWritten":
        number = super().__new__(cls, text)
        number.text = text
        return number

    def __str__(self) -> str:
        return self.text


def plain_value(text: str) -> str | int | float | bool | None:
    """Value of an unquoted scalar.

    >>> [plain_value(text) for text in ("5", "-2.5", "1e3", "true", "~")]
    [5, -2.5, 1000.0, True, None]
    >>> str(plain_value("2.30"))
    '2.30'
    >>> [plain_value(text) for text in ("2:30", "no", "0310", "1_000", "0x1F", ".inf", "1e999")]
    ['2:30', 'no', '0310', '1_000', '0x1F', '.inf', '1e999']
    """
    if text[:1] not in _NUMBER_STARTS:
        return _WORDS.get(text, text)
    try:
        if _INTEGER.fullmatch(text):
            return int(text)
        if _FLOAT.fullmatch(text) and math.isfinite(number := float(text)):
            return _AsWritten(text) if _ZERO_AT_END.fullmatch(text) else number
    except ValueError:  # more digits than Python converts
        pass
    return text
