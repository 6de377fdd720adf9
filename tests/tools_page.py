"""An empty page with the pure parts of the small tools, in a real browser, in any time zone."""

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from playwright.sync_api import Page, sync_playwright

import demo

TOOLS = demo.PACKAGE / "theme" / "assets" / "strength-handbook" / "tools"
ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
# What the pure parts need of the other scripts: nothing but that they are there.
AROUND = """globalThis.strengthHandbook = {
    mine: {make: () => ({})}, store: {get: () => undefined}, loads: {}, words: {}};"""


@contextmanager
def tools_page(*names: str, zone: str = "UTC") -> Iterator[Page]:
    """A page in which `strengthHandbook` has what these scripts put there.

    Args:
        names: of the scripts, in order.
        zone: the phone's time zone.
    """
    executable = shutil.which("chromium") or shutil.which("chromium-browser")
    if executable is None:
        text = "no Chromium found; install it (apt-get install chromium)"
        if os.environ.get("STRENGTH_HANDBOOK_BROWSER") == "required":
            pytest.fail(text)
        pytest.skip(text)
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=executable, args=ARGUMENTS)
        page = browser.new_context(timezone_id=zone).new_page()
        complaints: list[str] = []
        page.on("pageerror", lambda error: complaints.append(str(error)))
        page.add_script_tag(content=AROUND)
        for name in names:
            page.add_script_tag(content=(TOOLS / f"{name}.js").read_text(encoding="utf-8"))
        yield page
        assert complaints == []
        browser.close()
