"""What holds on every page: nothing foreign, nothing sideways, readable for everybody."""

from collections.abc import Callable
from pathlib import Path
from urllib.parse import urlparse

import pytest
from axe_playwright_python.sync_playwright import Axe

from chromium import large_letters
from phones import Opened, Served

pytestmark = pytest.mark.browser


@pytest.mark.parametrize("kind", ["home", "session", "exercise with a tested value"])
def test_nothing_scrolls_sideways_on_the_usual_phone(
    phone: Callable[..., Opened], kind: str
) -> None:
    page = phone().go(KINDS[kind])
    assert not page.evaluate("document.documentElement.scrollWidth > window.innerWidth")


KINDS = {
    "home": "",
    "start": "start/",
    "program": "winter/",
    "week": "winter/week-03/",
    "session": "winter/week-03/b-descend/",
    "all loads of a session": "winter/week-09/b-descend/loads/",
    "exercise with a tested value": "exercises/trap-bar-deadlift/",
    "body-weight exercise": "exercises/neutral-grip-pull-up/",
    "carry": "exercises/farmer-carry/",
    "exercise list": "exercises/",
    "room": "room/",
    "numbers": "numbers/",
    "safety": "safety/",
    "words": "words/",
    "cards": "cards/",
    "cards of a wave": "cards/winter/brakes/",
    "cards of the room": "cards/room/",
    "my numbers": "my-numbers/",
    "my log": "my-log/",
    "test day": "winter/test-day/",
    "missed": "winter/missed/",
    "coach page": "for-coaches/change-a-week/",
    "tags": "tags/",
}


def addresses(folder: Path) -> list[str]:
    return sorted(
        path.parent.relative_to(folder).as_posix().removeprefix(".") + "/"
        for path in folder.rglob("index.html")
    )


@pytest.mark.parametrize("paper", [False, True], ids=["screen", "paper"])
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("kind", KINDS)
def test_axe_finds_nothing(
    phone: Callable[..., Opened], kind: str, scheme: str, *, paper: bool
) -> None:
    page = phone(scheme=scheme).go(KINDS[kind])
    if paper:
        page.emulate_media(media="print")
    page.evaluate("document.querySelectorAll('details').forEach(d => { d.open = true })")
    page.wait_for_timeout(100)
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()


def test_no_page_asks_another_host_complains_or_scrolls_sideways(
    phone: Callable[..., Opened], served: Served
) -> None:
    # 320 px is the narrowest that WCAG 2.2 (1.4.10, reflow) asks for; one walk for all three.
    opened = phone(width=320)
    wide = []
    for address in addresses(served.folder):
        page = opened.go(address.removeprefix("/"))
        page.evaluate("document.querySelectorAll('details').forEach(d => { d.open = true })")
        if page.evaluate("document.documentElement.scrollWidth > window.innerWidth"):
            wide.append(address)
    assert wide == []
    assert {urlparse(url).netloc for url in opened.requests} == {urlparse(served.base).netloc}
    assert opened.complaints == []


def test_twice_the_text_on_the_narrowest_phone_fits_across(served: Served, tmp_path: Path) -> None:
    wide = {}
    with large_letters(tmp_path) as context:
        page = context.new_page()
        for kind, address in KINDS.items():
            page.goto(served.base + address)
            # The theme's letters are 20 px at the browser's usual 16.
            assert page.evaluate("getComputedStyle(document.documentElement).fontSize") == "40px"
            page.evaluate("document.querySelectorAll('details').forEach(d => { d.open = true })")
            wide[kind] = page.evaluate("document.documentElement.scrollWidth")
    assert {kind: width for kind, width in wide.items() if width > 320} == {}


def test_with_large_letters_head_and_path_are_all_there(served: Served, tmp_path: Path) -> None:
    with large_letters(tmp_path) as context:
        page = context.new_page()
        for kind in ("home", "session", "week", "room"):
            page.goto(served.base + KINDS[kind])
            cut = page.evaluate(
                """() => [...document.querySelectorAll('.md-path li, .md-header__inner > *')]
                    .map(e => [e.textContent.trim(), e.getBoundingClientRect()])
                    .filter(([, b]) => b.width && (b.left < 0 || b.right > innerWidth))
                    .map(([text]) => text)"""
            )
            assert cut == [], kind


@pytest.mark.parametrize("kind", ["home", "session", "week"])
def test_what_is_tapped_is_large_enough(phone: Callable[..., Opened], kind: str) -> None:
    page = phone().go(KINDS[kind])
    small = page.evaluate(
        """() => [...document.querySelectorAll('.sh-sessions a, article summary')].filter(
            e => { const b = e.getBoundingClientRect(); return b.height && b.height < 44; }
        ).map(e => e.textContent)"""
    )
    assert small == []
