"""An empty page with the pure parts of the small tools, in a real browser, in any time zone."""

from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Page

import demo
from chromium import chromium
from strength_handbook.publish.bundle import linked_script

SCRIPTS = demo.PACKAGE / "theme" / "assets" / "strength-handbook"


@contextmanager
def tools_page(*names: str, zone: str = "UTC") -> Iterator[Page]:
    """A page in which `strengthHandbook` has what these modules export, by their names.

    Args:
        names: of the modules: paths without ``.js``.
        zone: the phone's time zone.
    """
    context = chromium().new_context(timezone_id=zone)
    page = context.new_page()
    complaints: list[str] = []
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.add_script_tag(content=linked_script(SCRIPTS, *names))
    yield page
    assert complaints == []
    context.close()
