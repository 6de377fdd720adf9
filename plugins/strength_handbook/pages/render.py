"""Templates to HTML."""

import re
from collections.abc import Mapping
from functools import cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from strength_handbook.pages import numbers
from strength_handbook.pages.dose_text import clock_words

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
        "clock": numbers.clock,
        "clock_words": clock_words,
        "percent": numbers.percent,
        "hm": numbers.hours_minutes,
        "mass": numbers.mass,
    }
    return environment


def render(template: str, values: Mapping[str, Any]) -> str:
    """A template filled in. Lines carry no indentation and none is blank.

    A blank line would end the HTML block in a Markdown file, and indentation is only weight.
    """
    return _BLANK.sub("\n", _environment().get_template(template).render(values)).strip()


def safe(html: str) -> Markup:
    """HTML that we made ourselves, for use in a template."""
    return Markup(html)  # noqa: S704  # only ever called with HTML from this package
