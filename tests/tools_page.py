"""An empty page with the pure parts of the small tools, in a real browser, in any time zone."""

from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Page

import demo
from chromium import chromium

SCRIPTS = demo.PACKAGE / "theme" / "assets" / "strength-handbook"
# What the pure parts need of the other scripts: nothing but that they are there.
AROUND = """globalThis.strengthHandbook = {
    mine: {}, store: {get: () => undefined}, loads: {}, words: {}};"""


@contextmanager
def tools_page(*names: str, zone: str = "UTC") -> Iterator[Page]:
    """A page in which `strengthHandbook` has what these scripts put there.

    Args:
        names: of the scripts, in order.
        zone: the phone's time zone.
    """
    context = chromium().new_context(timezone_id=zone)
    page = context.new_page()
    complaints: list[str] = []
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.add_script_tag(content=AROUND)
    for name in ("dom", *(f"tools/{one}" for one in names)):
        page.add_script_tag(content=(SCRIPTS / f"{name}.js").read_text(encoding="utf-8"))
    yield page
    assert complaints == []
    context.close()
