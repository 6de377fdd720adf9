"""Work that leaves little to throw away, done without looking for it all the time."""

import gc
from collections.abc import Callable
from functools import wraps
from typing import ParamSpec, TypeVar

P = ParamSpec("P")
R = TypeVar("R")


def collect_later(function: Callable[P, R]) -> Callable[P, R]:
    """The function, during which no garbage is collected that only a search finds.

    Almost all that reading, working out and writing make is kept until the site stands. Going
    through it again and again in search of circles was a seventh of their time.
    """

    @wraps(function)
    def undisturbed(*args: P.args, **kwargs: P.kwargs) -> R:
        if not gc.isenabled():
            return function(*args, **kwargs)
        gc.disable()
        try:
            return function(*args, **kwargs)
        finally:
            gc.enable()

    return undisturbed
