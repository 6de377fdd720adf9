"""The built demo on a local server, and a phone-sized Chromium to read it with."""

from collections.abc import Callable, Iterator
from typing import Literal

import pytest
from playwright.sync_api import Browser, BrowserContext, expect

import demo
from chromium import chromium
from phones import Opened, Served, serving, watched

PHONE = {"width": 360, "height": 740}
# A loaded machine is slow, not wrong.
expect.set_options(timeout=30_000)


@pytest.fixture(scope="session")
def browser() -> Browser:
    return chromium()


@pytest.fixture(scope="session")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    folder = tmp_path_factory.mktemp("served")
    # Below a sub-path, as on many intranets: an absolute link would show at once.
    demo.build_site(demo.ROOT, folder / "gym" / "handbook")
    with serving(folder) as port:
        yield Served(f"http://127.0.0.1:{port}/gym/handbook/", folder / "gym/handbook")


@pytest.fixture
def phone(browser: Browser, served: Served) -> Iterator[Callable[..., Opened]]:
    """Opens a phone: ``phone()``, ``phone(scheme="dark")``, ``phone(scripts=False)``."""
    contexts: list[BrowserContext] = []

    def open_phone(
        *,
        scheme: Literal["light", "dark"] = "light",
        scripts: bool = True,
        width: int = PHONE["width"],
    ) -> Opened:
        context = browser.new_context(
            viewport={"width": width, "height": PHONE["height"]},
            color_scheme=scheme,
            java_script_enabled=scripts,
            has_touch=True,
        )
        contexts.append(context)
        return watched(context.new_page(), served.base)

    yield open_phone
    for context in contexts:
        context.close()
