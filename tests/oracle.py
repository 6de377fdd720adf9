"""Independent solvers and engines that tests compare with; the product never imports them.

They come with the extra `oracles`. Where one is missing the tests that need it are skipped and say
so; with STRENGTH_HANDBOOK_ORACLES=required, as in CI, that is a failure.
"""

import os
from importlib import import_module
from typing import Any

import pytest


def oracle(name: str) -> Any:
    """A module of an oracle, imported where it is used: some take seconds to come."""
    try:
        return import_module(name)
    except ModuleNotFoundError as error:
        text = f"no {error.name}: pip install -e '.[oracles]'"
        if os.environ.get("STRENGTH_HANDBOOK_ORACLES") == "required":
            pytest.fail(text)
        pytest.skip(text)
