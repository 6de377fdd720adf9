"""What a member does on a page, for tests in the browser: values kept on the phone, and taps in
session mode under a clock that stands still.
"""

from typing import Any

from playwright.sync_api import Locator, Page

from phones import until

SET = 2_000
"""Milliseconds, of which no set takes less: a second tap within them is a slip."""


def keep(page: Page, key: str, value: object) -> None:
    """Keep a value as the other parts of the handbook do, once their script is there."""
    ready(page)
    page.evaluate("([key, value]) => strengthHandbook.store.set(key, value)", [key, value])


def kept(page: Page, key: str) -> Any:
    """A value that is kept; None if it is not."""
    ready(page)
    return page.evaluate("key => strengthHandbook.store.get(key) ?? null", key)


def ready(page: Page) -> None:
    """Wait until a page that was just opened has its script."""
    until(page, "() => Promise.resolve(typeof strengthHandbook === 'object')")


def screen(page: Page) -> Locator:
    """Session mode."""
    return page.get_by_role("dialog")


def tap(page: Page, *names: str) -> None:
    """Tap buttons of session mode one after the other; the page's clock is the test's."""
    for name in names:
        page.clock.run_for(SET)
        screen(page).get_by_role("button", name=name, exact=True).tap()
