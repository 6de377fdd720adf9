"""Small changes in HTML text; everything between them stays as it is, to the byte.

Python's own parser says where each tag begins, so that no text, script or block of data is ever
taken for one.
"""

import re
from collections.abc import Callable
from html.parser import HTMLParser
from itertools import accumulate

Attributes = dict[str, str]
"""Names and values of a tag; a name without a value has an empty one."""

_ATTRIBUTE = re.compile(r"""\s+([^\s=>/"']+)(?:\s*=\s*("[^"]*"|'[^']*'|[^\s>"']+))?""")
_NAME = re.compile(r"<[^\s/>]+")


class Editor(HTMLParser):
    """Walks through a page and collects what to replace; `changed` gives the new text.

    Subclasses answer `opened`, `closed` and `ended`.
    """

    def __init__(self, html: str) -> None:
        super().__init__(convert_charrefs=False)
        self.html = html
        self._starts = [0, *accumulate(len(line) + 1 for line in html.split("\n"))]
        self._edits: list[tuple[int, int, str]] = []
        self._inside: tuple[str, int, int] | None = None

    @property
    def removing(self) -> bool:
        """Inside an element that is left out."""
        return self._inside is not None

    @property
    def at(self) -> int:
        """Where the current tag begins; at the end, where the text ends."""
        line, column = self.getpos()
        return self._starts[line - 1] + column

    def opened(self, tag: str, attributes: Attributes, raw: str) -> None:
        """A tag opens; `raw` is its text."""

    def closed(self, tag: str) -> None:
        """A tag closes."""

    def ended(self) -> None:
        """The text is over."""

    def replace(self, start: int, end: int, text: str) -> None:
        """Put a text in place of another."""
        self._edits.append((start, end, text))

    def insert(self, place: int, text: str) -> None:
        """Put a text between two others."""
        self.replace(place, place, text)

    def remove_element(self, tag: str) -> None:
        """Leave out the element that just opens, with all that is in it."""
        self._inside = tag, 1, self.at

    def end_of_tag(self) -> int:
        """Where the current closing tag ends."""
        return self.html.index(">", self.at) + 1

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """As the parser calls it."""
        if self._inside is not None:
            name, depth, start = self._inside
            self._inside = name, depth + (tag == name), start
            return
        self.opened(
            tag, {name: value or "" for name, value in attrs}, self.get_starttag_text() or ""
        )

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """A tag that closes itself opens nothing."""
        if self._inside is None:
            self.handle_starttag(tag, attrs)

    def handle_endtag(self, tag: str) -> None:
        """As the parser calls it."""
        if self._inside is None:
            self.closed(tag)
            return
        name, depth, start = self._inside
        depth -= tag == name
        self._inside = (name, depth, start) if depth else None
        if not depth:
            self.replace(start, self.end_of_tag(), "")

    def changed(self) -> str:
        """The page with all changes."""
        self.feed(self.html)
        self.close()
        self.ended()
        parts: list[str] = []
        at = 0
        for start, end, text in sorted(self._edits, key=lambda edit: edit[:2]):
            parts += [self.html[at:start], text]
            at = end
        return "".join([*parts, self.html[at:]])


def with_attributes(raw: str, change: Callable[[str, str], str]) -> str:
    r"""The text of a tag with other values of its attributes.

    Args:
        raw: the tag as it is written.
        change: gives the new value for a name in small letters and a value, both as in HTML.

    >>> with_attributes("<a title=' href=x' href=y>", lambda name, v: v + "z" * (name == "href"))
    '<a title=\' href=x\' href="yz">'
    """
    name = _NAME.match(raw)
    if name is None:
        return raw
    parts, at = [name[0]], name.end()
    while found := _ATTRIBUTE.match(raw, at):
        written = found[2] or ""
        quoted = written[:1] in ('"', "'") and len(written) > 1
        value = written[1:-1] if quoted else written
        new = change(found[1].lower(), value) if written else value
        parts.append(raw[at : found.end()])
        if new != value:
            sign = written[0] if quoted else '"'
            parts[-1] = raw[at : found.start(2)] + sign + new + sign
        at = found.end()
    return "".join([*parts, raw[at:]])
