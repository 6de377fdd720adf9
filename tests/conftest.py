"""The demo site, built once for all tests that look at it."""

from pathlib import Path

import pytest

import demo


@pytest.fixture(scope="session")
def demo_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Folder of the built demo site; nobody writes into it."""
    return demo.build_site(demo.ROOT, tmp_path_factory.mktemp("site"))
