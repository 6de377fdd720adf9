"""A program folder with HTML in every text field that takes it: none of it may become elements."""

from collections.abc import Iterator
from dataclasses import dataclass
from html.parser import HTMLParser
from pathlib import Path

import yaml

from strength_handbook.checked import check_folder, errors_in

MARK = "injected"
PAYLOAD = f"\"'</script></title><i id={MARK}>"
"""Ends attributes, scripts and titles, and would be an element of its own."""


@dataclass(frozen=True, order=True)
class _Place:
    file: Path
    line: int
    column: int


def mark_texts(folder: Path) -> list[str]:
    """Put the payload behind every text, and take it back where the files then have an error.

    Args:
        folder: a program folder without errors; its files are changed.

    Returns:
        The texts that carry the payload now, as they were.
    """
    before = {path: path.read_text(encoding="utf-8") for path in sorted(folder.rglob("*.yml"))}
    places = {place: value for path in before for place, value in _texts(path, before[path])}
    while True:
        for path, text in before.items():
            marked = {place for place in places if place.file == path}
            path.write_text(_marked(text, path, marked), encoding="utf-8")
        errors = errors_in(check_folder(folder, str(folder)).problems)
        if not errors:
            return list(places.values())
        for error in errors:
            wrong = _nearest(places, _Place(Path(error.file), error.line, error.column))
            if wrong is not None:
                del places[wrong]


def _texts(path: Path, text: str) -> Iterator[tuple[_Place, str]]:
    for node in _scalars(yaml.compose(text, Loader=yaml.SafeLoader)):
        if node.tag == "tag:yaml.org,2002:str" and node.start_mark.line == node.end_mark.line:
            at = node.start_mark
            yield _Place(path, at.line + 1, at.column + 1), str(node.value)


def _scalars(node: yaml.Node | None) -> Iterator[yaml.ScalarNode]:
    """Every value, and no key."""
    if isinstance(node, yaml.ScalarNode):
        yield node
    elif isinstance(node, yaml.SequenceNode):
        for one in node.value:
            yield from _scalars(one)
    elif isinstance(node, yaml.MappingNode):
        for _, one in node.value:
            yield from _scalars(one)


def _marked(text: str, path: Path, places: set[_Place]) -> str:
    """The file with the payload at these places; the lines stay where they are."""
    nodes = list(_scalars(yaml.compose(text, Loader=yaml.SafeLoader)))
    for node in sorted(nodes, key=lambda one: -one.start_mark.index):
        at, end = node.start_mark, node.end_mark
        if _Place(path, at.line + 1, at.column + 1) in places:
            quoted = "'" + f"{node.value} {PAYLOAD}".replace("'", "''") + "'"
            text = text[: at.index] + quoted + text[end.index :]
    return text


def _nearest(places: dict[_Place, str], error: _Place) -> _Place | None:
    """The marked text that an error is about: the last one that begins before it."""
    there = [one for one in places if one.file == error.file and one.line == error.line]
    return max(there, default=None) if len(there) < 2 else _before(there, error)


def _before(there: list[_Place], error: _Place) -> _Place:
    return max([one for one in there if one.column <= error.column], default=min(there))


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.injected: list[str] = []
        self.text = ""
        self._in_title = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if self._in_title:  # whatever stands there is text up to its end
            self.text += self.get_starttag_text() or ""
            return
        self._in_title = tag == "title"
        if MARK in (dict(attrs).get("id") or "") or MARK in tag:
            self.injected.append(self.get_starttag_text() or tag)

    def handle_endtag(self, tag: str) -> None:
        self._in_title = self._in_title and tag != "title"

    def handle_data(self, data: str) -> None:
        self.text += data


def injected(html: str) -> list[str]:
    """Elements of a page that come from the payload."""
    return _read(html).injected


def shown(html: str) -> bool:
    """Whether the payload stands on the page as text."""
    return f"<i id={MARK}>" in _read(html).text


def _read(html: str) -> _Reader:
    reader = _Reader()
    reader.feed(html)
    reader.close()
    return reader
