"""The quick tests, `pytest -m quick`: a first look at every part, told apart by what tests need.

What needs neither a browser nor the built demo is quick: a few evenly spaced cases of each test,
and a few tests of each file in folders where they build sites or start commands. `slow` marks those
that work long all the same.
"""

from collections.abc import Sequence
from itertools import groupby
from math import ceil

import pytest

CASES = 4
"""Of one test with many cases."""
COSTLY = {"browser", "demo_site", "demo_drafts"}
"""Fixtures that take seconds to come."""
BUILDING = {"cli", "handbook", "plugin"}
"""Folders where most tests build a site or start a command."""
TESTS = 2
"""Of one file in such a folder."""


def mark_quick(items: Sequence[pytest.Item]) -> None:
    """Mark the quick ones among all tests of a run, in the order in which they were collected."""
    for (_, folder), tests in groupby(items, key=_file):
        able = [one for one in tests if not _is_slow(one)]
        several = [spread(list(cases), CASES) for _, cases in groupby(able, key=_function)]
        every = [item for cases in several for item in cases]
        for item in spread(every, TESTS if folder in BUILDING else len(every)):
            item.add_marker("quick")


def spread(several: Sequence[pytest.Item], most: int) -> Sequence[pytest.Item]:
    """At most so many of them, evenly spaced, the first one among them."""
    return several[:: max(1, ceil(len(several) / max(1, most)))]


def _file(item: pytest.Item) -> tuple[str, str]:
    """The file, and the folder it is in."""
    return str(item.path), item.path.parent.name


def _function(item: pytest.Item) -> str:
    """The test without its case."""
    return item.nodeid.partition("[")[0]


def _is_slow(item: pytest.Item) -> bool:
    fixtures = set(getattr(item, "fixturenames", ()))
    return bool(COSTLY & fixtures) or item.get_closest_marker("slow") is not None
