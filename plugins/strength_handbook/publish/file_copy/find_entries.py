"""What can be found in a copy: every page, and the headings and words that help to find one."""

import re
import unicodedata
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from html import unescape
from typing import Any

from strength_handbook.publish.file_copy.page_words import Term, other_name, terms

_WORD = re.compile(r"[^\W_]+")
_JOINED = re.compile(r"[^\W_]+(?:[-'’][^\W_]+)+")
_TAG = re.compile(r"<[^>]+>")

_LISTS = ("exercises/", "tags/")

COMMON = 3
"""A heading that stands on more pages than this leads to none of them."""


@dataclass(frozen=True)
class Entry:
    """One line of the list.

    Attributes:
        title: what it is called.
        address: where it leads, below the root, as on the server.
        note: what stands beside it: another name, tags, or what a word means.
        words: more words that lead to it, in order.
        below: headings of the page.
    """

    title: str
    address: str
    note: str = ""
    words: tuple[str, ...] = ()
    below: tuple["Entry", ...] = ()


@dataclass(frozen=True)
class EntryGroup:
    """Pages that belong together."""

    title: str
    entries: tuple[Entry, ...]


@dataclass(frozen=True)
class _Found:
    """A page of the search index with its headings."""

    page: Mapping[str, Any]
    headings: tuple[Mapping[str, Any], ...]

    @property
    def address(self) -> str:
        return str(self.page["location"])

    @property
    def title(self) -> str:
        return _plain(self.page["title"])


def groups(
    docs: Sequence[Mapping[str, Any]], html: Mapping[str, str], programs: Iterable[str]
) -> tuple[EntryGroup, ...]:
    """Everything in order: exercises, programs, single pages, the other chapters.

    Args:
        docs: the entries of the site's search index.
        html: the built pages by their address on the server.
        programs: folders of the programs.
    """
    found = list(_pages(docs))
    written = [one for one in found if not _of_one_shape(one.address, programs)]
    many = Counter(_plain(part["title"]) for one in written for part in one.headings)
    chapters = Counter(_chapter(one.address) for one in found)
    fronts = {one.address: one.title for one in found}
    wanted = dict.fromkeys(["exercises/", *(f"{program}/" for program in programs), ""])
    wanted |= dict.fromkeys(map(_chapter, fronts))
    by_chapter: dict[str, list[Entry]] = {chapter: [] for chapter in wanted}
    for one in found:
        chapter = _chapter(one.address)
        alone = chapter not in fronts or chapters[chapter] < 2
        entry = _entry(one, html.get(one.address, ""), many, programs)
        by_chapter["" if alone else chapter].append(entry)
    return tuple(
        EntryGroup(fronts[chapter] if chapter else "The handbook", tuple(entries))
        for chapter, entries in by_chapter.items()
        if entries
    )


def folded(text: str) -> str:
    """A text without accents and capitals.

    >>> folded("Élan Übung")
    'elan ubung'
    """
    apart = unicodedata.normalize("NFKD", text.casefold())
    return "".join(sign for sign in apart if not unicodedata.combining(sign))


def words_in(*texts: str) -> set[str]:
    """The words of some texts.

    Single letters and bare numbers are left out: too many of them to find anything by.

    >>> sorted(words_in("A pull-up, 4 × 8", "Pull"))
    ['pull', 'up']
    """
    found = _WORD.findall(folded(" ".join(texts)))
    return {word for word in found if len(word) > 1 and not word.isdigit()}


def in_one_piece(title: str) -> set[str]:
    """Joined words as people also type them.

    >>> in_one_piece("Step-down, slow")
    {'stepdown'}
    """
    return {re.sub(r"[\W_]", "", word) for word in _JOINED.findall(folded(title))}


def _pages(docs: Sequence[Mapping[str, Any]]) -> Iterable[_Found]:
    parts: dict[str, list[Mapping[str, Any]]] = {}
    for doc in docs:
        parts.setdefault(str(doc["location"]).partition("#")[0], []).append(doc)
    for address, several in parts.items():
        fronts = [doc for doc in several if doc["location"] == address]
        headings = tuple(doc for doc in several if doc["location"] != address)
        yield _Found(fronts[0] if fronts else {**several[0], "location": address}, headings)


def _entry(one: _Found, html: str, many: Counter[str], programs: Iterable[str]) -> Entry:
    tags = ", ".join(one.page.get("tags") or ())
    note = "; ".join(filter(None, (other_name(html), tags)))
    words = words_in(_plain(one.page["text"]))
    if _of_one_shape(one.address, programs):
        words |= words_in(*(_plain(part["title"]) for part in one.headings))
        if not _in_program(one.address, programs):
            words |= words_in(*(_plain(part["text"]) for part in one.headings))
        return _line(one.title, one.address, note, words)
    below = []
    for part in one.headings:
        # What a list of pages says stands on the pages themselves.
        said = set() if one.address in _LISTS else words_in(_plain(part["text"]))
        if many[_plain(part["title"])] > COMMON:
            words |= said
        else:
            below.append(_line(_plain(part["title"]), part["location"], "", said))
    below += [_word(one.address, term) for term in terms(html)]
    return replace(_line(one.title, one.address, note, words), below=tuple(below))


def _word(page: str, term: Term) -> Entry:
    return Entry(term.word, f"{page}#{term.below}" if term.below else page, term.meaning)


def _line(title: str, address: str, note: str, words: set[str]) -> Entry:
    """An entry without the words that it says anyway."""
    said = set(_WORD.findall(folded(f"{title} {note}")))
    return Entry(title, address, note, tuple(sorted((words | in_one_piece(title)) - said)))


def _of_one_shape(address: str, programs: Iterable[str]) -> bool:
    """One of many pages with the same headings: an exercise, a week, a session."""
    exercise = address.startswith("exercises/") and address != "exercises/"
    return exercise or _in_program(address, programs)


def _in_program(address: str, programs: Iterable[str]) -> bool:
    return any(address.startswith(f"{program}/week-") for program in programs)


def _chapter(address: str) -> str:
    """First folder of an address; pages of a chapter share it."""
    return f"{address.partition('/')[0]}/" if address else ""


def _plain(html: str) -> str:
    """Text of a piece of HTML, in one line."""
    return " ".join(unescape(_TAG.sub(" ", html)).split())
