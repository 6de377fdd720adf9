"""The common behaviour of everything that is read from a program file."""

from pydantic import BaseModel, ConfigDict
from pydantic_core import PydanticCustomError


def kebab(name: str) -> str:
    """The key a coach writes for a field: ``hook_spacing`` is written ``hook-spacing``."""
    return name.rstrip("_").replace("_", "-")


class Shape(BaseModel):
    """Frozen, kebab-case keys, no unknown keys.

    Numbers are accepted where text is expected (``name: 500``), and ``yes``/``no`` where a
    true/false is expected, since YAML 1.2 leaves both as the coach typed them.
    """

    model_config = ConfigDict(
        extra="forbid",
        frozen=True,
        alias_generator=kebab,
        coerce_numbers_to_str=True,
        str_strip_whitespace=True,
        use_attribute_docstrings=True,
        validate_default=False,
    )


def refuse(slug: str, text: str) -> PydanticCustomError:
    """An error whose text reaches the coach as it is.

    Braces are doubled, because pydantic treats the text as a template.
    """
    return PydanticCustomError(slug, text.replace("{", "{{").replace("}", "}}"))
