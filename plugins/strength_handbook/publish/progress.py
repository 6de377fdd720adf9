"""What a long command is doing, for whoever waits at a terminal."""

import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import TextIO

from strength_handbook.checked import Tell

_EVERY_S = 0.1
"""Between two lines that begin with the same word: more of them cost time and nobody reads them."""
_WIDEST = 78


@contextmanager
def told(
    stream: TextIO | None = None, clock: Callable[[], float] = time.monotonic
) -> Iterator[Tell]:
    """One line that says what is being done, and goes when it is done; none in a pipe.

    Args:
        stream: where the line stands; stderr if left out, so that it is in no result.
        clock: seconds that only go forward.
    """
    place = sys.stderr if stream is None else stream
    if not place.isatty():
        yield lambda _: None
        return
    word, last, length = "", 0.0, 0

    def tell(doing: str) -> None:
        nonlocal word, last, length
        first, now = doing.partition(" ")[0], clock()
        if first == word and now < last + _EVERY_S:
            return
        line = f"{doing[: _WIDEST - 1]}…"
        place.write(f"\r{line:<{length}}")
        place.flush()
        word, last, length = first, now, max(length, len(line))

    try:
        yield tell
    finally:
        if length:
            place.write(f"\r{'':<{length}}\r")
            place.flush()
