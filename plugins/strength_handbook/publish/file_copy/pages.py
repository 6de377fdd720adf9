"""The pages of a built site as they stand in a copy: links to files, and the find page for search.

Of the theme's own script nothing is left: it asks for the search index, which a browser does not
give to a page that was opened from a file.
"""

import re
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, field
from html import escape

from strength_handbook.publish.file_copy.addresses import FIND, on_file
from strength_handbook.publish.file_copy.markup import Attributes, Editor, with_attributes

ASSETS = "assets/strength-handbook"
SCRIPT = f"{ASSETS}/copy.js"
STYLE = f"{ASSETS}/copy.css"

_LINKS = ("href", "src", "action", "poster", "xlink:href")
_OF_THE_THEME = ("__config", "sh-later")
"""The theme's script, and its settings."""

_NO_FILE = ("canonical", "alternate")
"""Kinds of `<link>` that name an address of the site on its server."""


@dataclass
class Links:
    """What the pages lead to.

    Attributes:
        used: addresses of files that some page needs or links.
        broken: page and address of each link that leads to no file.
    """

    used: set[str] = field(default_factory=set)
    broken: list[tuple[str, str]] = field(default_factory=list)


def on_disk(
    html: str, page: str, files: AbstractSet[str], links: Links, base: str = "/", line: str = ""
) -> str:
    """A page for the copy.

    Args:
        html: the page as built.
        page: its address in the copy.
        files: addresses of all files that the copy may hold.
        links: collects what it leads to.
        base: path of the site's root on its server.
        line: HTML that goes below the first heading.
    """
    return _PageEditor(html, page, files, links, base, line).changed()


def with_article(html: str, title: str, article: str) -> str:
    """A page with another title before the site's name, and another article."""
    return _ArticleEditor(html, title, article).changed()


def root_on_server(html: str) -> str:
    """Path of the site's root, from the theme's settings on the page for wrong addresses.

    >>> root_on_server('<script id="__config" type="application/json">{"base": "/gym"}</script>')
    '/gym'
    """
    found = re.search(r'id="__config"[^>]*>\s*\{[^<]*?"base":\s*"(/[^"]*)"', html)
    return found[1] if found else "/"


class _PageEditor(Editor):
    def __init__(
        self, html: str, page: str, files: AbstractSet[str], links: Links, base: str, line: str
    ) -> None:
        super().__init__(html)
        self.page, self.files, self.links, self.base, self.line = page, files, links, base, line
        self.in_body = False
        self.style_is_in = self.script_is_in = False
        self.in_label = False

    def opened(self, tag: str, attributes: Attributes, raw: str) -> None:
        if tag == "body":
            self.in_body = True
            self._put_style()
        if attributes.get("id") in _OF_THE_THEME or attributes.get("data-md-component") == "search":
            self.remove_element(tag)
        elif attributes.get("id") == "__search" or (
            tag == "link" and attributes.get("rel") in _NO_FILE
        ):
            self.replace(self.at, self.at + len(raw), "")
        elif tag == "label" and attributes.get("for") == "__search":
            self.in_label = True
            self.links.used.add(FIND)
            self.replace(self.at, self.at + len(raw), self._find_link(attributes.get("class", "")))
        else:
            self._open_other(tag, attributes, raw)

    def _open_other(self, tag: str, attributes: Attributes, raw: str) -> None:
        if tag == "script" and "src" in attributes and self.in_body:
            self._put_script()
        new = with_attributes(raw, self._address)
        if new != raw:
            self.replace(self.at, self.at + len(raw), new)

    def closed(self, tag: str) -> None:
        if tag == "label" and self.in_label:
            self.in_label = False
            self.replace(self.at, self.end_of_tag(), "</a>")
        elif tag == "head":
            self._put_style()
        elif tag == "h1" and self.line:
            self.insert(self.end_of_tag(), f"\n{self.line}")
            self.line = ""
        elif tag == "body":
            self._put_script()

    def ended(self) -> None:
        self._put_script()

    def _put_style(self) -> None:
        """At the end of the head, also where its closing tag is left out."""
        if not self.style_is_in:
            self.style_is_in = True
            self.insert(self.at, f'<link rel="stylesheet" href="{self._to(STYLE)}">\n')

    def _put_script(self) -> None:
        """Before the handbook's own, which compares addresses."""
        if not self.script_is_in:
            self.script_is_in = True
            self.insert(self.at, f'<script src="{self._to(SCRIPT)}"></script>\n')

    def _address(self, name: str, value: str) -> str:
        if name not in _LINKS:
            return value
        new, target = on_file(value, self.page, self.files, self.base)
        if target in self.files:
            self.links.used.add(target)
        elif target:
            self.links.broken.append((self.page, value))
        return new

    def _to(self, target: str) -> str:
        self.links.used.add(target)
        up = "../" * self.page.count("/")
        return escape(up + target)

    def _find_link(self, name: str) -> str:
        return (
            f'<a href="{self._to(FIND)}" class="{escape(name)}" aria-label="Find a page" '
            'title="Find a page">'
        )


class _ArticleEditor(Editor):
    def __init__(self, html: str, title: str, article: str) -> None:
        super().__init__(html)
        self.title, self.article = title, article
        self.begin = 0

    def opened(self, tag: str, attributes: Attributes, raw: str) -> None:  # noqa: ARG002
        if tag == "title" and self.title:
            self.insert(self.at + len(raw), f"{escape(self.title)} - ")
            self.title = ""  # drawings have titles too
        elif tag == "article" and not self.begin:
            self.begin = self.at + len(raw)

    def closed(self, tag: str) -> None:
        if tag == "article" and self.begin:
            self.replace(self.begin, self.at, f"\n{self.article}\n")
            self.begin = 0
