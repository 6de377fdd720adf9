"""Tests run in a copy of the process, property tests with few examples: a part of `mutants.py`."""

import os
import pickle
import resource
import traceback
from collections.abc import Callable
from typing import Any

import pytest

EXAMPLES = 25
"""Of a property test."""
MOST_MEMORY = 4 << 30
"""Bytes: a loop that makes ever more ends here."""


def in_copy(work: Callable[[], Any]) -> Any:
    """What work gives in a copy of this process; None where a limit of time or memory ended that.

    Raises:
        RuntimeError: where work itself fails.
    """
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            os.close(reading)
            resource.setrlimit(resource.RLIMIT_DATA, (MOST_MEMORY, MOST_MEMORY))
            os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
            answer = pickle.dumps(work())
            with os.fdopen(writing, "wb") as pipe:
                pipe.write(answer)
        except MemoryError:
            os._exit(0)
        except BaseException:
            traceback.print_exc()
            os._exit(1)
        os._exit(0)
    os.close(writing)
    with os.fdopen(reading, "rb") as pipe:
        answer = pipe.read()
    _, status = os.waitpid(child, 0)
    if os.WIFEXITED(status) and os.WEXITSTATUS(status):
        raise RuntimeError("a copy failed by itself: see above")
    return pickle.loads(answer) if answer else None  # noqa: S301  # from our own copy


def shorten(item: pytest.Item) -> None:
    """Few examples for a property test, always the same, and no search for the smallest."""
    # pytest wants to load it itself first.
    from hypothesis import HealthCheck, Phase, settings

    test, name = getattr(item, "obj", None), "_hypothesis_internal_use_settings"
    if hasattr(test, name):
        few = settings(
            getattr(test, name),
            max_examples=EXAMPLES,
            database=None,
            derandomize=True,
            phases=(Phase.explicit, Phase.generate),
            suppress_health_check=list(HealthCheck),
        )
        setattr(test, name, few)


def fixtures_of(item: pytest.Item) -> list[str]:
    """Names of the fixtures of a test; none of a doctest."""
    return list(getattr(item, "fixturenames", ()))


def module_of(item: pytest.Item) -> str:
    """Name of the module of a test; empty for a doctest."""
    return str(getattr(getattr(item, "module", None), "__name__", ""))
