"""The block of keys at the top of a Markdown file, made from a page."""

from html import escape
from typing import Any

import yaml

from strength_handbook.pages.page import Page

_ONE_LINE = 1_000_000


def front_matter(page: Page, *, pasted: bool = False) -> str:
    r"""Title, description, tags and search weight of a page.

    Written by a YAML library, never pasted together: MkDocs drops a whole block without a word
    where a title such as ``Week 3: Lift`` stands unquoted.

    Args:
        page: the page.
        pasted: the reader puts these texts into HTML as they are, as Material's templates do.
            Titles also reach attributes that it does escape, so they keep their ``&``.

    >>> print(front_matter(Page("a.md", "Week 3: Lift", "", tags=("hinge",))), end="")
    ---
    title: 'Week 3: Lift'
    tags:
    - hinge
    ---
    """
    title, description = page.title, page.description
    if pasted:
        title, description = title.replace("<", "&lt;").replace(">", "&gt;"), escape(description)
    keys: dict[str, Any] = {"title": title}
    if description:
        keys["description"] = description
    if page.tags:
        keys["tags"] = list(page.tags)
    if page.boost != 1:
        keys["search"] = {"boost": page.boost}
    text = yaml.safe_dump(keys, sort_keys=False, allow_unicode=True, width=_ONE_LINE)
    return f"---\n{text}---\n"
