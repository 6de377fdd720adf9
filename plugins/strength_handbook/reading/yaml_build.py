"""A parser's events to dictionaries and lists, with the line and column of everything.

There is no recursion, so no nesting can exhaust the stack; and each event is seen where it stands,
so that whatever is not wanted (a key written twice, an alias, a tag) is reported at its place and
reading goes on.
"""

import re
from collections.abc import Container, Iterable, Iterator
from dataclasses import dataclass, field

import yaml
from yaml import (
    AliasEvent,
    CollectionEndEvent,
    CollectionStartEvent,
    DocumentStartEvent,
    Event,
    MappingStartEvent,
    ScalarEvent,
    SequenceStartEvent,
)

from strength_handbook.model.shape import quoted
from strength_handbook.reading.problem import Problem, sorted_problems
from strength_handbook.reading.raw_text import FORBIDDEN, code_point
from strength_handbook.reading.source import Mark, Path, Plain, Source
from strength_handbook.reading.yaml_complaint import Complaint, place
from strength_handbook.reading.yaml_scalar import plain_value
from strength_handbook.reading.yaml_syntax import NO_KEY, no_colon, syntax_problems

MAX_DEPTH = 20

_WEEK = re.compile(r"[1-9]\d?", re.ASCII)

_TOP = yaml.Mark("", 0, 0, 0, None, 0)
_QUOTES = ("'", '"')

# Spaces that are no space, and characters without width, at either end of an unquoted text.
_INVISIBLE = r"[\s\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2069]"
_INVISIBLE_EDGE = re.compile(rf"^{_INVISIBLE}|{_INVISIBLE}\Z")

_ALIAS = "anchors and aliases (& *) are not supported: write it out, or put quotes around the text"
_TAG = "tags (!x) are not supported: leave it out, or put quotes around the whole value"


@dataclass(slots=True)
class _Open:
    """A list or mapping that has begun and not yet ended.

    Attributes:
        items: what it holds so far.
        path: its path; None inside anything that is read for its problems only.
        bracket: 0-based line and column of its ``[`` or ``{``, if it is written with one.
        wants_key: a key comes next, not a value; keys and values of a mapping take turns.
        key: key of the value that comes next; None while the value of a refused key passes.
        key_event: where that key was read.
        lines: line of each key so far.
    """

    items: dict[str, Plain] | list[Plain]
    path: Path | None
    bracket: tuple[int, int] | None
    wants_key: bool
    key: str | None = None
    key_event: ScalarEvent | None = None
    lines: dict[str, int] = field(default_factory=dict)


class Builder:
    """Builds the data of one file from its events."""

    def __init__(self, file: str, text: str) -> None:
        self.file = file
        self.lines = text.split("\n")
        self.problems: list[Problem] = []
        self.marks: dict[Path, Mark] = {}
        self.key_marks: dict[Path, Mark] = {}
        self.open: list[_Open] = []
        self.root: Plain = None
        self.first: Event | None = None
        self.last: ScalarEvent | None = None
        self.whole = True
        self.again: list[tuple[_Open, ScalarEvent]] = []
        """Keys that stand already in their mapping."""

    def build(self, events: Iterable[Event]) -> tuple[Source | None, list[Problem]]:
        """Takes all events of a file; a parser's error passes through."""
        documents = 0
        for event in events:
            if isinstance(event, ScalarEvent):
                self._scalar(event)
            elif isinstance(event, CollectionStartEvent):
                if len(self.open) == MAX_DEPTH:
                    text = f"nesting is deeper than {MAX_DEPTH} levels: simplify"
                    self._problem(event, "too-deep", text, hole=True)
                    break
                self._begin(event)
            elif isinstance(event, CollectionEndEvent):
                self.open.pop()
            elif isinstance(event, AliasEvent):
                self._alias(event)
            elif isinstance(event, DocumentStartEvent):
                documents += 1
                if documents > 1:
                    text = "a file holds one document: delete this line or begin another file"
                    self._problem(event, "several-documents", text, hole=True)
                    break
        else:
            self._check_top()
        source = Source(self.file, self.root, self.marks, self.key_marks) if self.whole else None
        return source, sorted_problems([*self.problems, *self._written_again()])

    def problems_with(self, error: yaml.MarkedYAMLError) -> list[Problem]:
        """The problems found before a syntax error, and the error."""
        brackets = (place for frame in reversed(self.open) if (place := frame.bracket))
        complaint = Complaint.of(error, self.lines, self.last, next(brackets, None))
        found = [*self.problems, *self._written_again()]
        return sorted_problems([*found, *syntax_problems(complaint, self.file)])

    def _written_again(self) -> Iterator[Problem]:
        """Keys written twice. Of a week another number may be meant: the next that is free."""
        passed: dict[int, dict[int, int]] = {}
        for mapping, event in self.again:
            key, line, column = event.value, *place(event.start_mark)
            text = f"key {quoted(key)} stands already in line {mapping.lines[key]}: delete one"
            if mapping.path and mapping.path[-1] == "weeks" and _WEEK.fullmatch(key):
                free = next_free(int(key) + 1, mapping.lines, passed.setdefault(id(mapping), {}))
                mapping.lines[str(free)] = line + 1
                text += f", or is this week {free}?"
            yield Problem(self.file, line + 1, column + 1, "duplicate-key", text)

    def _scalar(self, event: ScalarEvent) -> None:
        self.last = event
        if event.anchor is not None or event.tag is not None:
            self._properties(event)
        if event.style == '"' and (found := FORBIDDEN.search(event.value)):
            text = (
                f"an escape stands for {code_point(found.group())}, which is not allowed: delete it"
            )
            self._problem(event, "control-character", text, hole=True)
        if not event.style and not event.value.isascii():
            self._check_edges(event)
        around = self.open[-1] if self.open else None
        if around and around.wants_key:
            self._key(around, event)
        elif event.style:
            self._put(event.value, event)
        elif event.value or not around or not around.key_event:
            self._put(plain_value(event.value), event)
        else:
            self._put_nothing(around, around.key_event)

    def _key(self, mapping: _Open, event: ScalarEvent) -> None:
        key = event.value
        mapping.wants_key, mapping.key, mapping.key_event = False, None, event
        if not key:
            self._problem(event, "empty-key", NO_KEY, hole=True)
        elif key == "<<" and not event.style:
            text = "merge keys (<<) are not supported: write the keys out"
            self._problem(event, "merge-key", text, hole=True)
        elif key in mapping.lines:
            self.again.append((mapping, event))
        else:
            mark = _mark(event)
            mapping.key = key
            mapping.lines[key] = mark.line
            if mapping.path is not None:
                self.key_marks[(*mapping.path, key)] = mark

    def _put_nothing(self, mapping: _Open, key_event: ScalarEvent) -> None:
        """A key without value: having no place of its own, the value stands where its key does.

        Inside braces ``{reps:5}`` is such a key too; it is never meant so.
        """
        if mapping.bracket and mapping.key and re.match(r"[\w-]+:[^ ]", mapping.key):
            self._problem(key_event, *no_colon(mapping.key), hole=True)
        path = self._put(None, key_event)
        if path is not None:
            mark = self.marks[path]
            self.marks[path] = Mark(mark.line, mark.column, None)

    def _check_edges(self, event: ScalarEvent) -> None:
        """A no-break space beside a word looks like an indentation but is part of the word."""
        if edge := _INVISIBLE_EDGE.search(event.value):
            text = f"invisible character {code_point(edge.group())} beside the text: use spaces"
            self._problem(event, "invisible-character", text, hole=True)

    def _begin(self, event: CollectionStartEvent) -> None:
        self._properties(event)
        mapping = isinstance(event, MappingStartEvent)
        items: dict[str, Plain] | list[Plain] = {} if mapping else []
        path: Path | None = None
        if self.open and self.open[-1].wants_key:
            text = "a list or mapping cannot be a key: put quotes around a text in brackets"
            self._refuse_key(event, "key-not-text", text)
        else:
            path = self._put(items, event)
        line, column = place(event.start_mark)
        # A single pair in a list, `[a: 1]`, is a mapping without a bracket of its own.
        has_bracket = event.flow_style and self.lines[line].startswith(("[", "{"), column)
        self.open.append(_Open(items, path, (line, column) if has_bracket else None, mapping))

    def _alias(self, event: AliasEvent) -> None:
        if self.open and self.open[-1].wants_key:
            self._refuse_key(event, "alias", _ALIAS)
        else:
            self._problem(event, "alias", _ALIAS, hole=True)
            self._put(None, event)

    def _refuse_key(self, event: Event, slug: str, text: str) -> None:
        self._problem(event, slug, text, hole=True)
        self.open[-1].wants_key, self.open[-1].key = False, None

    def _put(self, value: Plain, event: Event) -> Path | None:
        """Puts a value where it belongs; its path, None where it is dropped."""
        if not self.open:
            self.root, self.first = value, event
            self.marks[()] = _mark(event)
            return ()
        around = self.open[-1]
        items, part = around.items, around.key
        path: Path | None = around.path
        if isinstance(items, list):
            path = None if path is None else (*path, len(items))
            items.append(value)
        else:
            around.wants_key = True
            if part is None:
                return None
            path = None if path is None else (*path, part)
            items[part] = value
        if path is not None:
            self.marks[path] = _mark(event)
        return path

    def _properties(self, event: ScalarEvent | CollectionStartEvent) -> None:
        """Reports an anchor and a tag in front of a value or key."""
        if event.anchor is not None:
            self._problem(event, "anchor", _ALIAS, find=f"&{event.anchor}")
        if event.tag is not None:
            self._problem(event, "tag", _TAG, find="!")

    def _check_top(self) -> None:
        """The whole file must be a mapping."""
        if isinstance(self.root, dict):
            return
        self.whole = False
        first = self.first
        if first is None or (isinstance(first, ScalarEvent) and not first.value):
            text = "the file is empty: begin it with 'key: value'"
            self.problems.append(Problem(self.file, 1, 1, "empty-file", text))
        elif isinstance(first, SequenceStartEvent):
            text = "the file is a list: begin it with a key and indent the list under it"
            self._problem(first, "not-a-mapping", text)
        elif isinstance(first, ScalarEvent):
            line, column = place(first.start_mark)
            self._problem(first, *no_colon(self.lines[line][column:]))

    def _problem(
        self, event: Event, slug: str, text: str, *, hole: bool = False, find: str = ""
    ) -> None:
        """Adds a problem where an event begins, or where `find` stands in its first line."""
        line, column = place(event.start_mark)
        column = max(self.lines[line].find(find, column), column)
        self.problems.append(Problem(self.file, line + 1, column + 1, slug, text))
        self.whole = self.whole and not hole


def _mark(event: Event) -> Mark:
    start = event.start_mark or _TOP
    if not isinstance(event, ScalarEvent):
        return Mark(start.line + 1, start.column + 1, None)
    end = event.end_mark or _TOP
    # Escaped, folded and tagged texts are longer than what they stand for.
    quotes = 1 if event.style in _QUOTES else 0
    width = end.column - start.column - 2 * quotes
    exact = width == len(event.value) and start.line == end.line and (width or quotes)
    return Mark(start.line + 1, start.column + 1, start.column + 1 + quotes if exact else None)


def next_free(number: int, taken: Container[str], passed: dict[int, int]) -> int:
    """The first number from here on that is no key yet.

    Args:
        number: where to begin.
        taken: the keys.
        passed: how far earlier searches came from a number; a file with a week written a
            thousand times would be searched from its beginning for each.

    >>> next_free(2, {"1", "2", "3", "5"}, {})
    4
    """
    way = []
    while str(number) in taken:
        way.append(number)
        number = passed.get(number, number + 1)
    passed.update(dict.fromkeys(way, number))
    return number
