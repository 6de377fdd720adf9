"""The block of keys at the top of a Markdown file, made from a page."""

from html import escape
from typing import Any

import yaml

from strength_handbook.pages.page import Page

_ONE_LINE = 1_000_000


def page_keys(page: Page, *, pasted: bool = False) -> dict[str, Any]:
    """Title, description, tags and search weight of a page, as a builder knows them.

    Args:
        page: the page.
        pasted: the reader puts these texts into HTML as they are, as Material's templates do.
            Titles also reach attributes that it does escape, so they keep their ``&``.

    >>> page_keys(Page("a.md", "Hinge", "", boost=2))
    {'title': 'Hinge', 'search': {'boost': 2}}
    """
    title, description = page.title, page.description
    if pasted:
        title, description = title.replace("<", "&lt;").replace(">", "&gt;"), escape(description)
    keys: dict[str, Any] = {"title": title}
    if description:
        keys["description"] = description
    if page.tags:
        keys["tags"] = list(page.tags)
    if pasted and not page.in_nav:
        keys |= {"template": "lean.html", "packed": page.jumps}
    if page.boost != 1:
        keys["search"] = {"boost": page.boost}
    return keys


def front_matter(page: Page) -> str:
    """The same as the block at the top of a Markdown file.

    Written by a YAML library, never pasted together: MkDocs drops a whole block without a word
    where a title such as ``Week 3: Lift`` stands unquoted.

    >>> print(front_matter(Page("a.md", "Week 3: Lift", "", tags=("hinge",))), end="")
    ---
    title: 'Week 3: Lift'
    tags:
    - hinge
    ---
    """
    keys = page_keys(page)
    text = yaml.safe_dump(keys, sort_keys=False, allow_unicode=True, width=_ONE_LINE)
    return f"---\n{text}---\n"
