"""The built demo on a local server, and a phone-sized Chromium to read it with."""

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import Browser, BrowserContext, expect

from chromium import chromium
from phones import PATIENCE, Opened, Served, serving, watched

PHONE = {"width": 360, "height": 740}
expect.set_options(timeout=PATIENCE)


@pytest.fixture(scope="session")
def browser() -> Browser:
    return chromium()


@pytest.fixture(scope="session")
def served(demo_site: Path) -> Iterator[Served]:
    with serving(demo_site.parent.parent) as port:
        base = f"http://127.0.0.1:{port}/{demo_site.parent.name}/{demo_site.name}/"
        yield Served(base, demo_site)


@pytest.fixture
def phone(browser: Browser, served: Served) -> Iterator[Callable[..., Opened]]:
    """Opens a phone: ``phone()``, ``phone(scheme="dark")``, ``phone(scripts=False)``, and without
    the worker that keeps pages, ``phone(worker=False)``."""
    contexts: list[BrowserContext] = []

    def open_phone(
        *,
        scheme: Literal["light", "dark"] = "light",
        scripts: bool = True,
        width: int = PHONE["width"],
        worker: bool = True,
    ) -> Opened:
        context = browser.new_context(
            viewport={"width": width, "height": PHONE["height"]},
            color_scheme=scheme,
            java_script_enabled=scripts,
            has_touch=True,
        )
        contexts.append(context)
        if not worker:  # what it answers from its store, no test can answer in its place
            context.add_init_script("delete Navigator.prototype.serviceWorker")
        return watched(context.new_page(), served.base)

    yield open_phone
    for context in contexts:
        context.close()
