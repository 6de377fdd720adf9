"""The demo site, built once for all tests that look at it; and no clock in property tests."""

import os
from pathlib import Path

import pytest
from hypothesis import settings

import demo

# A time limit for an example would be a hidden timed test. In CI the examples are the same each
# time, so that a submission fails for its own faults only.
settings.register_profile("handbook", deadline=None, derandomize=bool(os.environ.get("CI")))
settings.load_profile("handbook")


@pytest.fixture(scope="session")
def demo_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Folder of the built demo site; nobody writes into it."""
    return demo.build_site(demo.ROOT, tmp_path_factory.mktemp("site"))
