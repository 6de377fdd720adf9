"""One Chromium for all tests of this run; a second Playwright can't start beside the first.

Where there is no Chromium the tests that need it are skipped and say so; with
STRENGTH_HANDBOOK_BROWSER=required, as in CI, that is a failure.
"""

import atexit
import os
import shutil
from functools import cache

import pytest
from playwright.sync_api import Browser, sync_playwright

ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"]


def chromium() -> Browser:
    """The running browser."""
    executable = shutil.which("chromium") or shutil.which("chromium-browser")
    if executable is None:
        text = "no Chromium found; install it (apt-get install chromium)"
        if os.environ.get("STRENGTH_HANDBOOK_BROWSER") == "required":
            pytest.fail(text)
        pytest.skip(text)
    return _running(executable)


@cache
def _running(executable: str) -> Browser:
    playwright = sync_playwright().start()
    atexit.register(playwright.stop)
    return playwright.chromium.launch(executable_path=executable, args=ARGUMENTS)
