"""Where the coach's pages are, and what all of them have in common."""

from collections.abc import Mapping
from typing import Any

from markupsafe import Markup, escape

from strength_handbook.pages.page import Heading, Page
from strength_handbook.pages.render import render, safe
from strength_handbook.plan.worked import WorkedProgram

DRAFTS = "coach/"
"""Pages below this address are for `mkdocs serve` only."""

TITLE = "Coach's desk"
"""Title of their chapter; the hand-written tasks are called otherwise."""


def coach_uri(name: str, program: str = "") -> str:
    """Source path of a page for the coach.

    >>> coach_uri("findings"), coach_uri("changes", "winter")
    ('coach/findings.md', 'coach/winter/changes.md')
    """
    return f"{DRAFTS}{program}/{name}.md" if program else f"{DRAFTS}{name}.md"


def coach_page(
    uri: str,
    title: str,
    template: str,
    values: Mapping[str, Any],
    *,
    says: str,
    headings: tuple[Heading, ...] = (),
) -> Page:
    """One page for the coach.

    Args:
        uri: its source path.
        title: its title, which the template gets as `title`.
        template: file name of the template.
        values: what else the template gets.
        says: what is on it, in one sentence, for the list of these pages.
        headings: for its table of contents.
    """
    html = render(template, {"title": title, **values})
    return Page(
        uri, title, html, headings, description=says, in_nav=True, parent=coach_uri("index")
    )


def head_of(program: WorkedProgram) -> dict[str, Any]:
    """Program, version and last day, as they stand under a title."""
    return {
        "program": program.program.program,
        "version": program.program.version,
        "valid_until": program.program.valid_until,
    }


def as_lines(text: str) -> Markup:
    """Text for a `<pre>`; line ends are written so that no template takes the indentation away."""
    return safe(str(escape(text)).replace("\n", "&#10;"))
