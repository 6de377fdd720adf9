"""A page's table of contents, and the places on it that links may point to."""

import re
from html import escape
from typing import Any

from strength_handbook.pages.page import Heading, Page

_ID = re.compile(r'\sid="([^"]+)"')
_FIRST_HEADING = re.compile(r'\s*<h1\b[^>]*\sid="([^"]+)"')


def anchors(page: Page) -> set[str]:
    """Every id on a page.

    >>> sorted(anchors(Page("a.md", "A", '<h1 id="top">A</h1><p id="b">x</p>')))
    ['b', 'top']
    """
    return set(_ID.findall(page.html))


def contents_tree(page: Page) -> list[Any]:
    """A page's headings in the form of the `toc` extension of Python-Markdown.

    Level 3 goes below the level 2 before it, and everything below the first heading, which is
    where the link for skipping the navigation leads.
    """
    top: list[dict[str, Any]] = []
    for heading in page.headings:
        deeper = heading.level > 2 and top
        (top[-1]["children"] if deeper else top).append(_entry(heading))
    first = _FIRST_HEADING.match(page.html)
    return [_entry(Heading(1, first[1], page.title), top)] if first else top


def _entry(heading: Heading, below: list[dict[str, Any]] | None = None) -> dict[str, Any]:
    return {
        "level": heading.level,
        "id": heading.id,
        "name": escape(heading.title, quote=False),
        "children": [] if below is None else below,
    }
