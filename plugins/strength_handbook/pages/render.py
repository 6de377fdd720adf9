"""Templates to HTML."""

import re
from collections.abc import Mapping
from functools import cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup, escape

from strength_handbook.dose.texts import clock_words
from strength_handbook.model import printed
from strength_handbook.model.length import length_text

_TEMPO = re.compile(r"\b\d{1,2}-\d{1,2}-(?:\d{1,2}|X)-\d{1,2}\b")
_BLANK = re.compile(r"\s*\n\s*")


@cache
def _environment() -> Environment:
    environment = Environment(
        loader=PackageLoader("strength_handbook.pages", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
    environment.filters |= {
        "dose": _unbroken_tempo,
        "clock": printed.clock,
        "clock_words": clock_words,
        "percent": printed.percent,
        "hm": printed.hours_minutes,
        "mass": printed.mass,
        "length_text": length_text,
    }
    return environment


def _unbroken_tempo(notation: str) -> Markup:
    """A dose in which no line ends inside the tempo."""
    escaped = str(escape(notation))
    return safe(_TEMPO.sub(lambda found: f'<span class="sh-tempo">{found[0]}</span>', escaped))


def tempo_apart(notation: str) -> list[str]:
    """A dose cut at its tempos, which no line may end in: every second piece is one.

    >>> tempo_apart("3 × 5 · 3-1-X-0 · RIR 3")
    ['3 × 5 · ', '3-1-X-0', ' · RIR 3']
    """
    return re.split(f"({_TEMPO.pattern})", notation)


def render(template: str, values: Mapping[str, Any]) -> str:
    """A template filled in. Lines carry no indentation and none is blank.

    A blank line would end the HTML block in a Markdown file, and indentation is only weight.
    """
    return _BLANK.sub("\n", _environment().get_template(template).render(values)).strip()


def safe(html: str) -> Markup:
    """HTML that we made ourselves, for use in a template."""
    return Markup(html)  # noqa: S704  # only ever called with HTML from this package
