"""Workers, what they share, and no clock in property tests."""

import os
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

import demo
from once import once
from quick import mark_quick
from thorough import EXAMPLES

# Else workers and commands that tests start would take every module apart anew, each time: longer
# than most tests take.
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)

# A time limit for an example, or for making it, would be a hidden timed test. In CI the examples
# are the same each time, so that a submission fails for its own faults only.
settings.register_profile(
    "handbook",
    max_examples=EXAMPLES,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow],
    derandomize=bool(os.environ.get("CI")),
)
settings.load_profile("handbook")


def pytest_xdist_auto_num_workers(config: pytest.Config) -> int | None:
    """No workers for a few tests, picked by file or name: starting them would take longer."""
    picked: list[str] = config.option.file_or_dir
    files = [Path(one.partition("::")[0]).is_file() for one in picked]
    return 0 if config.option.keyword or (picked and all(files)) else None


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    mark_quick(items)


@pytest.fixture(scope="session")
def demo_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Folder of the built demo site, below a sub-path as on many intranets; nobody writes into it.

    An absolute link would show at once.
    """
    place = Path("gym") / "handbook"
    return once(tmp_path_factory, "site", lambda to: demo.build_site(demo.ROOT, to / place)) / place


@pytest.fixture(scope="session")
def demo_drafts(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Folder of the demo as `mkdocs serve` shows it; nobody writes into it."""
    return once(tmp_path_factory, "drafts", lambda to: demo.build_drafts(demo.ROOT, to))
