"""What a visit moves: the theme's script, search worker and index wait until they are needed."""

import gzip
import statistics
from collections.abc import Callable

from playwright.sync_api import Route, expect

from phones import Opened, Served

SESSION = "winter/week-03/a-lift/"
MOST = {"median page": 10_000, "any page": 11_500, "visit": 75_000}
"""Bytes as they travel, compressed. The limits are our own.

Pages of seven or eight exercises are over 10,000 by what stands on them: tables and doors alone are
a third of the page.
"""
LATER = ("bundle.", "search_index", "workers/search")


def test_a_session_page_asks_for_nothing_that_only_search_needs(
    phone: Callable[..., Opened],
) -> None:
    opened = phone()
    opened.go(SESSION)
    opened.page.wait_for_load_state("networkidle")
    assert [url for url in opened.requests if any(part in url for part in LATER)] == []
    opened.page.get_by_role("link", name="Search").tap()
    field = opened.page.locator(".md-search__input")
    expect(field).to_be_focused()
    field.press_sequentially("nordic", delay=50)
    expect(opened.page.locator(".md-search-result__link").first).to_contain_text("Nordic")
    assert any("search_index" in url for url in opened.requests)


def _moved(data: bytes) -> int:
    return len(gzip.compress(data, 9))


def test_a_session_is_a_small_page(served: Served) -> None:
    pages = served.folder.glob("winter/week-*/*/index.html")
    sizes = sorted(_moved(page.read_bytes()) for page in pages)
    assert len(sizes) > 30
    assert sizes[-1] <= MOST["any page"]
    assert statistics.median(sizes) <= MOST["median page"]


def test_a_first_visit_to_a_session_is_light(phone: Callable[..., Opened]) -> None:
    opened, bodies = phone(), {}
    # The worker would fetch the whole handbook behind the page, which is another matter.
    opened.page.add_init_script("delete Navigator.prototype.serviceWorker")
    opened.page.on("response", lambda answer: bodies.update({answer.url: answer.body()}))
    opened.go(SESSION)
    opened.page.wait_for_load_state("networkidle")
    assert any(url.endswith(".css") for url in bodies)
    assert any(url.endswith(".js") for url in bodies)
    assert sum(map(_moved, bodies.values())) <= MOST["visit"]


def test_light_and_dark_are_switched_and_kept_without_the_theme_s_script(
    phone: Callable[..., Opened],
) -> None:
    opened = phone(scheme="dark")
    page = opened.go("")
    body = page.locator("body")
    expect(body).to_have_attribute("data-md-color-scheme", "slate")
    switch = page.locator("[data-md-component=palette] label:visible")
    switch.tap()
    expect(body).to_have_attribute("data-md-color-scheme", "default")
    opened.go(SESSION)
    expect(body).to_have_attribute("data-md-color-scheme", "default")
    opened.go("")
    expect(body).to_have_attribute("data-md-color-scheme", "default")
    switch.tap()
    expect(body).to_have_attribute("data-md-color-scheme", "slate")
    switch.tap()
    page.emulate_media(color_scheme="light")
    expect(body).to_have_attribute("data-md-color-scheme", "default")
    assert opened.complaints == []


def test_a_key_opens_the_search(phone: Callable[..., Opened]) -> None:
    page = phone(width=1280).go("room/")
    page.keyboard.press("/")
    expect(page.locator(".md-search__input")).to_be_focused()


def test_a_link_into_a_closed_drawer_opens_it(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go("numbers/")
    inside = page.locator("details:not([open]) [id]").first.get_attribute("id")
    page = opened.go(f"numbers/#{inside}")
    expect(page.locator(f"[id='{inside}']")).to_be_visible()


def test_a_server_may_forbid_scripts_inside_pages(phone: Callable[..., Opened]) -> None:
    opened = phone()

    def strict(route: Route) -> None:
        answer = route.fetch()
        # The theme's icons are pictures within its styles.
        rule = "default-src 'self'; img-src 'self' data:; object-src 'none'; base-uri 'none'"
        headers = {**answer.headers, "content-security-policy": rule}
        route.fulfill(response=answer, headers=headers)

    opened.page.route("**/*", strict)
    for address in (SESSION, "exercises/trap-bar-deadlift/", "winter/week-12/t-monday/"):
        opened.go(address)
        opened.page.wait_for_load_state("networkidle")
    page = opened.go(SESSION)
    page.get_by_role("button", name="Train this session").tap()
    page.get_by_role("button", name="Warm-up done").tap()
    expect(page.get_by_role("dialog")).to_contain_text("Trap-bar deadlift")
    assert opened.complaints == []
