"""Under the content policy that coaches' pages name, everything on the pages works."""

import functools
import re
import threading
from collections.abc import Iterator
from http.server import SimpleHTTPRequestHandler

import pytest
from playwright.sync_api import Browser, expect

import demo
from phones import QuietServer, Served, watched

pytestmark = pytest.mark.browser

SERVER = demo.ROOT / "handbook/for-coaches/for-the-computer-person.md"
(POLICY,) = re.findall(r"^default-src .*$", SERVER.read_text(encoding="utf-8"), re.MULTILINE)


class _Strict(SimpleHTTPRequestHandler):
    def end_headers(self) -> None:
        self.send_header("Content-Security-Policy", POLICY)
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002  # the base's name
        pass


@pytest.fixture
def base(served: Served) -> Iterator[str]:
    handler = functools.partial(_Strict, directory=str(served.folder))
    with QuietServer(("127.0.0.1", 0), handler) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://localhost:{server.server_port}/"
        server.shutdown()


def test_pages_search_icons_and_cards_work_under_the_policy(base: str, browser: Browser) -> None:
    page = browser.new_context(viewport={"width": 360, "height": 740}).new_page()
    opened = watched(page, base)
    for address in ("", "winter/week-06/a-lift/", "exercises/step-down/", "room/", "cards/room/",
                    "cards/winter/brakes/", "my-numbers/"):  # fmt: skip
        page.goto(base + address)
        expect(page.get_by_role("heading", level=1).first).to_be_visible()
    page.goto(f"{base}?search")
    page.locator(".md-search__input").press_sequentially("back pain", delay=50)
    expect(page.locator(".md-search-result__link").first).to_contain_text("Safety")
    page.context.close()
    assert opened.complaints == []


@pytest.mark.parametrize(
    ("typed", "first"),
    [
        ("back pain", "Safety"),
        ("chin up", "pull-up"),
        ("bench press", "floor press"),
        ("rdl", "Romanian deadlift"),
        ("squt", "squat"),
        ("deadlft", "deadlift"),
        ("112", "Safety"),
    ],
)
def test_what_people_type_leads_where_they_mean(
    served: Served, browser: Browser, typed: str, first: str
) -> None:
    page = browser.new_context(viewport={"width": 360, "height": 740}).new_page()
    page.goto(f"{served.base}?search")
    page.locator(".md-search__input").press_sequentially(typed, delay=30)
    expect(page.locator(".md-search-result__link h1").first).to_contain_text(
        re.compile(first, re.IGNORECASE)
    )
    expect(page.locator(".md-search-result__list")).not_to_contain_text("Set-upCues")
    page.context.close()
