"""Hand-written pages for coaches, which the built site has only where mkdocs.yml says so."""

from collections.abc import Iterable, Iterator
from typing import Any

FOR_COACHES = "for-coaches/"
"""Where they are in the folder of hand-written pages, with their pictures."""


def without_coaches(nav: Iterable[Any]) -> list[Any]:
    """A nav of mkdocs.yml without them, and without a chapter that has nothing else.

    >>> without_coaches(["index.md", {"For coaches": ["for-coaches/index.md"]}])
    ['index.md']
    >>> without_coaches([{"Duties": "for-coaches/duties.md"}, {"Room": "room.md"}])
    [{'Room': 'room.md'}]
    """
    return list(_others(nav))


def _others(entries: Iterable[Any]) -> Iterator[Any]:
    for entry in entries:
        if isinstance(entry, dict):
            kept = {title: _inside(value) for title, value in entry.items()}
            if rest := {title: value for title, value in kept.items() if value}:
                yield rest
        elif not _for_coaches(entry):
            yield entry


def _inside(value: Any) -> Any:
    """What is left of a chapter or of one page; empty where nothing is."""
    if isinstance(value, list):
        return without_coaches(value)
    return None if _for_coaches(value) else value


def _for_coaches(entry: Any) -> bool:
    return isinstance(entry, str) and entry.startswith(FOR_COACHES)
