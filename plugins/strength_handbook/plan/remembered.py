"""Answers that are kept while one handbook is worked on, and forgotten before the next.

Slots, programs and rooms are told apart by being the same object: what is kept of one handbook is
of no use to another, but would keep all of it in memory. `mkdocs serve` makes a handbook at every
save of a file. Answers about numbers and plain texts only may stay in a `functools.lru_cache`.
"""

from collections.abc import Callable
from functools import lru_cache, update_wrapper
from typing import ParamSpec, TypeVar

P = ParamSpec("P")
R = TypeVar("R")

_FORGET: list[Callable[[], None]] = []


def remembered(most: int) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Let a pure function of parts of one handbook keep its answers.

    Args:
        most: answers kept; the one not asked for longest goes first.
    """

    def keep(function: Callable[P, R]) -> Callable[P, R]:
        kept = lru_cache(maxsize=most)(function)
        _FORGET.append(kept.cache_clear)

        def answer(*args: P.args, **kwargs: P.kwargs) -> R:
            return kept(*args, **kwargs)  # type: ignore[arg-type]  # all that is asked is hashable

        return update_wrapper(answer, function)

    return keep


def forget_handbook() -> None:
    """Let go of every answer, and with it of the handbook that it was about."""
    for forget in _FORGET:
        forget()
