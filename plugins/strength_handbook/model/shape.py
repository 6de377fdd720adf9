"""The common behaviour of everything that is read from a program file."""

from typing import Annotated

from pydantic import BaseModel, ConfigDict, StringConstraints
from pydantic_core import PydanticCustomError

from strength_handbook.model.marks import NotProse

LONGEST_QUOTED = 60
"""Characters of a text that a message repeats."""


def kebab(name: str) -> str:
    """The key a coach writes for a field: ``hook_spacing`` is written ``hook-spacing``."""
    return name.rstrip("_").replace("_", "-")


class Shape(BaseModel):
    """Frozen, kebab-case keys, no unknown keys.

    Numbers are accepted where text is expected (``name: 500``), and ``yes``/``no`` where a
    true/false is expected, since YAML 1.2 leaves both as the coach typed them. What a field's
    docstring says is in `field_words`.
    """

    model_config = ConfigDict(
        extra="forbid",
        frozen=True,
        alias_generator=kebab,
        coerce_numbers_to_str=True,
        str_strip_whitespace=True,
        allow_inf_nan=False,
        validate_default=False,
    )


def refuse(slug: str, text: str) -> PydanticCustomError:
    """An error whose text reaches the coach as it is, braces and all.

    >>> refuse("form", "no {braces}").message()
    'no {braces}'
    """
    return PydanticCustomError(slug, "{text}", {"text": text})


def quoted(text: str, limit: int = LONGEST_QUOTED) -> str:
    r"""Text in single quotes, on one line and cut after `limit` characters.

    >>> quoted("reps"), quoted("two\nlines"), quoted("abcdef", limit=3)
    ("'reps'", "'two lines'", "'abc…'")
    """
    line = " ".join(text.split())
    return f"'{line}'" if len(line) <= limit else f"'{line[:limit]}…'"


def shown(value: object, limit: int = 60) -> str:
    """A value as messages show it: in quotes, on one line, cut after `limit` characters.

    >>> shown("20 kg"), shown(5), shown(None), shown([1, 2]), shown(value=True)
    ("'20 kg'", "'5'", 'an empty value', 'a list', "'true'")
    """
    if value is None:
        return "an empty value"
    if isinstance(value, dict):
        return "a block of keys"
    if isinstance(value, list):
        return "a list"
    text = str(value).lower() if isinstance(value, bool) else " ".join(str(value).split())
    return f"'{text if len(text) <= limit else text[: limit - 1] + '…'}'"


Id = Annotated[
    str,
    StringConstraints(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=60),
    NotProse("a reference: small letters, digits and hyphens only"),
]
"""A short name for references: small letters, digits and hyphens."""
