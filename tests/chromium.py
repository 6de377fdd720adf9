"""One Chromium for all tests of this run; a second Playwright can't start beside the first.

Where there is no Chromium the tests that need it are skipped and say so; with
STRENGTH_HANDBOOK_BROWSER=required, as in CI, that is a failure.
"""

import atexit
import json
import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Playwright, sync_playwright

ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"]


def chromium() -> Browser:
    """The running browser."""
    return _running(_executable())


@contextmanager
def large_letters(profile: Path) -> Iterator[BrowserContext]:
    """The narrowest phone, with letters twice as large set in the browser itself.

    A style on the page would not do: lengths in media queries follow the setting only.

    Args:
        profile: an empty folder for the browser's settings.
    """
    executable = _executable()
    settings = profile / "Default" / "Preferences"
    settings.parent.mkdir()
    settings.write_text(json.dumps({"webkit": {"webprefs": {"default_font_size": 32}}}))
    context = _playwright().chromium.launch_persistent_context(
        profile,
        executable_path=executable,
        args=ARGUMENTS,
        viewport={"width": 320, "height": 740},
        has_touch=True,
    )
    yield context
    context.close()


def _executable() -> str:
    executable = shutil.which("chromium") or shutil.which("chromium-browser")
    if executable is None:
        text = "no Chromium found; install it (apt-get install chromium)"
        if os.environ.get("STRENGTH_HANDBOOK_BROWSER") == "required":
            pytest.fail(text)
        pytest.skip(text)
    return executable


@cache
def _running(executable: str) -> Browser:
    return _playwright().chromium.launch(executable_path=executable, args=ARGUMENTS)


@cache
def _playwright() -> Playwright:
    playwright = sync_playwright().start()
    atexit.register(playwright.stop)
    return playwright
