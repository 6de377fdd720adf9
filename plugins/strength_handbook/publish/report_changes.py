"""What changed since an earlier publication: lines for a pipe, JSON, lines for a person."""

from collections.abc import Iterator
from itertools import groupby
from typing import Any

import click

from strength_handbook.pages.change_words import HEADINGS, said, where
from strength_handbook.pages.member_lines import member_lines
from strength_handbook.publish.report import place_data
from strength_handbook.publish.report_screen import columns, wrapped
from strength_handbook.publish.since import Since
from strength_handbook.publish.spots import spot_of
from strength_handbook.record.change import Change, Changes
from strength_handbook.review.desk import Desk


def change_lines(desk: Desk | None, since: Since) -> Iterator[str]:
    """Every change as a line of its own: file, line and column of what it is now."""
    for one, program, change in _changes(desk, since):
        file, line, column = spot_of(one, program, change).place
        words = said(change, one.book.room.units)
        yield f"{file}:{line}:{column}: change {change.kind}: {where(change)}: {words}"


def change_data(desk: Desk | None, since: Since) -> dict[str, Any]:
    """The changes as data: what members read of them, and each by itself."""
    return {
        "members": {key: member_lines(one) for key, one in since.changes.items()},
        "changes": [_data(*one) for one in _changes(desk, since)],
    }


def changes_on_screen(since: Since, width: int | None = None) -> Iterator[str]:
    """The changes of every program under its heading, those that members read first.

    Args:
        since: the comparison.
        width: columns of the terminal; its own if left out.
    """
    for changes in since.changes.values():
        yield from _on_screen(changes, since, columns(width))


def _changes(desk: Desk | None, since: Since) -> Iterator[tuple[Desk, str, Change]]:
    if desk is not None:
        for program, several in since.changes.items():
            yield from ((desk, program, change) for change in several.items)


def _data(desk: Desk, program: str, change: Change) -> dict[str, Any]:
    return place_data(spot_of(desk, program, change).place) | {
        "program": program,
        "kind": str(change.kind),
        "at": where(change),
        "weeks": change.weeks,
        "text": said(change, desk.book.room.units),
        "values": [
            {"key": pair.key, "before": pair.before, "after": pair.after} for pair in change.pairs
        ],
    }


def _on_screen(changes: Changes, compared: Since, width: int) -> Iterator[str]:
    file = compared.files.get(changes.program, "")
    since = f"version {changes.before}, " if changes.before else ""
    yield click.style(f"CHANGED IN {changes.program.upper()}", bold=True)
    yield wrapped(f"since {since}{file}", width, "")
    yield ""
    if not changes.items:
        yield "  Nothing."
        yield ""
        return
    if lines := member_lines(changes):
        yield click.style("Members read", bold=True, underline=True)
        yield from (wrapped(line, width, "  ") for line in lines)
        yield ""
    for heading, group in groupby(changes.items, key=lambda item: HEADINGS[item.kind]):
        yield click.style(heading, bold=True, underline=True)
        for item in group:
            yield wrapped(where(item), width, "  ")
            yield wrapped(said(item, compared.units), width, "      ")
        yield ""
