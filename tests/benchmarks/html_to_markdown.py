"""Generated pages as plain Markdown: headings, paragraphs, lists and pipe tables.

Only as good as the comparison needs: every word and every table cell is kept, pictures and classes
are not.
"""

import posixpath
import re
from collections.abc import Mapping
from html.parser import HTMLParser
from urllib.parse import urljoin, urlsplit

from strength_handbook.pages.page import Page

_BLOCKS = {"p", "div", "section", "article", "details", "figure", "dl"}
_BOLD = {"summary", "caption", "dt", "figcaption"}
_INLINE = {"b": "**", "strong": "**", "i": "*", "em": "*", "code": "`"}
_SPECIAL = re.compile(r"([\\`*_<>|\[\]])")
_ITEM = re.compile(r" *(?:-|1\.) ")
_SITE = "http://site/"


def markdown(page: Page, sources: Mapping[str, str]) -> str:
    """A page as Markdown; `sources` gives the source path of every address that can be linked."""
    writer = _Writer(page, sources)
    writer.feed(page.html)
    writer.close()
    return f"---\ntitle: {page.title!r}\n---\n\n" + writer.written() + "\n"


class _Writer(HTMLParser):
    def __init__(self, page: Page, sources: Mapping[str, str]) -> None:
        super().__init__()
        self._page = page
        self._sources = sources
        self._blocks: list[str] = []
        self._text: list[str] = []
        self._prefix = ""
        self._lists: list[str] = []
        self._rows: list[list[str]] = []
        self._hidden = 0
        self._links: list[str] = []

    def written(self) -> str:
        """All blocks, list items close together."""
        self._end_block()
        text, before = "", ""
        for block in self._blocks:
            close = _ITEM.match(before) and _ITEM.match(block)
            text += ("\n" if close else "\n\n") + block
            before = block
        return text.strip()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag == "svg" or self._hidden:
            self._hidden += tag == "svg"
        elif tag in _BLOCKS or tag in _BOLD or tag == "dd":
            self._end_block()
        elif re.fullmatch(r"h[1-6]", tag):
            self._end_block()
            self._prefix = "#" * int(tag[1]) + " "
        elif tag in ("ul", "ol"):
            self._end_block()
            self._lists.append("- " if tag == "ul" else "1. ")
        elif tag == "li":
            self._end_block()
            self._prefix = "    " * (len(self._lists) - 1) + self._lists[-1]
        elif tag == "table":
            self._end_block()
            self._rows = []
        elif tag == "tr":
            self._rows.append([])
        elif tag in ("td", "th"):
            self._text = []
        elif tag in _INLINE:
            self._text.append(_INLINE[tag])
        elif tag == "a":
            self._links.append(self._target(dict(attrs).get("href") or ""))
            if self._links[-1]:
                self._text.append("[")

    def handle_endtag(self, tag: str) -> None:
        if tag == "svg":
            self._hidden -= 1
        elif self._hidden:
            return
        elif tag in _BOLD:
            self._end_block("**")
        elif tag in _BLOCKS or tag in ("li", "dd") or re.fullmatch(r"h[1-6]", tag):
            self._end_block()
        elif tag in ("ul", "ol"):
            self._end_block()
            self._lists.pop()
        elif tag in ("td", "th"):
            self._rows[-1].append(self._taken())
        elif tag == "table":
            self._end_table()
        elif tag in _INLINE:
            self._text.append(_INLINE[tag])
        elif tag == "a" and (target := self._links.pop()):
            self._text.append(f"]({target})")

    def handle_data(self, data: str) -> None:
        if not self._hidden:
            self._text.append(_SPECIAL.sub(r"\\\1", data))

    def _taken(self) -> str:
        text = re.sub(r"[ \n]+", " ", "".join(self._text)).strip()
        self._text = []
        return text

    def _end_block(self, around: str = "") -> None:
        if text := self._taken():
            self._blocks.append(f"{self._prefix}{around}{text}{around}")
        self._prefix = ""

    def _end_table(self) -> None:
        head, *body = self._rows
        lines = [head, ["---"] * len(head), *body]
        self._blocks.append("\n".join(f"| {' | '.join(cells)} |" for cells in lines))
        self._text = []

    def _target(self, href: str) -> str:
        """The Markdown file a link leads to, as Markdown pages name it; empty for other files."""
        address = urlsplit(urljoin(_SITE + self._page.url, href))
        source = self._sources.get(address.path.removeprefix("/"))
        if source is None:
            return ""
        return posixpath.relpath(source, posixpath.dirname(self._page.uri) or ".")
