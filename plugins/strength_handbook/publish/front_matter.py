"""The block of keys at the top of a Markdown file, made from a page."""

from typing import Any

import yaml
from markupsafe import Markup, escape

from strength_handbook.pages.page import Page

_ONE_LINE = 1_000_000


def page_keys(page: Page, *, pasted: bool = False) -> dict[str, Any]:
    """Title, description, tags and search weight of a page, as a builder knows them.

    Args:
        page: the page.
        pasted: the reader puts these texts into HTML as they are, as Material's templates do.

    >>> page_keys(Page("a.md", "Hinge", "", boost=2))
    {'title': 'Hinge', 'search': {'boost': 2}}
    """
    title, description = page.title, page.description
    if pasted:
        title, description = as_html(title), as_html(description)
    keys: dict[str, Any] = {"title": title}
    if description:
        keys["description"] = description
    if page.tags:
        keys["tags"] = list(page.tags)
    if pasted and not page.in_nav:
        keys |= {"template": "lean.html", "packed": page.jumps}
    if page.aside:
        keys["search"] = {"exclude": True}
    elif page.boost != 1:
        keys["search"] = {"boost": page.boost}
    return keys


def as_html(text: str) -> Markup:
    """A text that a template may paste anywhere, also where it escapes: that is not done twice.

    >>> print(as_html('Lift & "lower" <slowly>'))
    Lift &amp; &quot;lower&quot; &lt;slowly&gt;
    """
    # An apostrophe does no harm between double quotes, and would be part of words in the search.
    return Markup(str(escape(text)).replace("&#39;", "'").replace("&#34;", "&quot;"))  # noqa: S704


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
