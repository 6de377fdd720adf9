"""Values without a unit: whole numbers, decimals and names; and limits for any value.

Pydantic alone would read ``true`` as 1 and ``1_0`` as 10; a coach means neither.
"""

import re
from collections.abc import Callable
from typing import Annotated, Any, Protocol, TypeVar

from pydantic import AfterValidator, BeforeValidator, StringConstraints
from pydantic_core import PydanticCustomError

from strength_handbook.model.shape import refuse, shown

_DIGITS = re.compile(r"[+-]?\d{1,15}")
_POINT = re.compile(r"[+-]?(?:\d{1,15}(?:\.\d*)?|\.\d+)")


def read_whole(value: Any) -> int:
    """A whole number; a refusal says what to write."""
    if isinstance(value, float) and value.is_integer():
        value = int(value)
    if not isinstance(value, bool | dict | list | None) and _DIGITS.fullmatch(str(value)):
        return int(value)
    raise refuse("number", f"{shown(value)} is not a whole number; write one, such as 3")


def read_decimal(value: Any) -> float:
    """A number with or without decimals; a refusal says what to write."""
    if not isinstance(value, bool | dict | list | None) and _POINT.fullmatch(str(value)):
        return float(value)
    raise refuse("number", f"{shown(value)} is not a number; write one, such as 1.5")


WHOLE = BeforeValidator(read_whole)
"""To stand last in ``Annotated[int, Field(ge=1), WHOLE]``: limits after it miss the JSON Schema."""

DECIMAL = BeforeValidator(read_decimal)
"""The same for ``float``."""

Name = Annotated[str, StringConstraints(min_length=1, max_length=120, pattern=r"^[^\n]*$")]
"""A name or label: one line."""


class _Ordered(Protocol):
    def __lt__(self, other: Any, /) -> bool: ...


T = TypeVar("T", bound=_Ordered)


def within(read: Callable[[str], T], least: str, most: str) -> AfterValidator:
    """Limits of a quantity, written with their units as a coach would write them.

    The error's text names the limit; the value is put before it by whoever knows how it was
    written.
    """
    low, high = read(least), read(most)

    def check(value: T) -> T:
        if value < low:
            raise PydanticCustomError("range", "the least is {least}", {"least": least})
        if high < value:
            raise PydanticCustomError("range", "the most is {most}", {"most": most})
        return value

    return AfterValidator(check)
