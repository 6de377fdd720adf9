"""Every load is found where no script runs: in tables and words that open by themselves."""

import re
from collections.abc import Callable
from typing import Any
from urllib.parse import urldefrag, urljoin

import pytest

from phones import Opened, Served

pytestmark = pytest.mark.browser

SLOTS = """() => [...document.querySelectorAll('.sh-slot')].map(slot => ({
  name: slot.querySelector('h2').textContent,
  dose: slot.querySelector('.sh-dose').textContent,
  line: slot.querySelector('.sh-heavy-line')?.textContent ?? '',
  rows: [...slot.querySelectorAll('.sh-look tbody tr')].map(
    row => [...row.cells].map(cell => cell.textContent)),
  parts: [...slot.querySelectorAll('details > summary')].map(one => one.textContent),
  links: [...slot.querySelectorAll('a[href*="#"]')].map(one => one.href),
}))"""
NUMBER = re.compile(r"[+−]?\d+(?:\.\d+)?")


def sessions(served: Served) -> list[str]:
    pages = served.folder.glob("*/week-*/*/index.html")
    return sorted(f"{page.parent.relative_to(served.folder).as_posix()}/" for page in pages)


@pytest.fixture
def slots(phone: Callable[..., Opened], served: Served) -> list[dict[str, Any]]:
    """The slots of all sessions, as a page without scripts shows them."""
    opened = phone(scripts=False)
    found = []
    for address in sessions(served):
        page = opened.go(address)
        found += [{**slot, "page": page.url} for slot in page.evaluate(SLOTS)]
    assert len(found) > 150
    return found


def test_each_slot_says_its_load(slots: list[dict[str, Any]]) -> None:
    for slot in slots:
        where = f"{slot['page']} {slot['name']}"
        if not slot["rows"]:
            assert slot["line"], where
        known = [any(map(NUMBER.search, cells)) for _, *cells in slot["rows"]]
        # Only the lightest may be too light for what is there.
        assert known == sorted(known), where
        assert all(NUMBER.fullmatch(first) for first, *_ in slot["rows"]), where
        assert sum(known) >= 0.7 * len(known), where


def test_a_share_of_something_has_a_table(slots: list[dict[str, Any]]) -> None:
    shares = [slot for slot in slots if re.search(r"@\s[\d.]+\s%", slot["dose"])]
    assert len(shares) > 60
    for slot in shares:
        where = f"{slot['page']} {slot['name']}"
        dose = slot["dose"].replace("\xa0", " ")
        if re.search(r"% of \d+RM", dose):
            # A share of what somebody could lift so often: no tested value leads to it.
            assert "you could lift" in slot["line"], where
            assert any(link.endswith("#by-body-weight") for link in slot["links"]), where
            continue
        assert len(slot["rows"]) >= 5, where
        if "of top" in dose:
            assert "After today's top set" in slot["parts"], where


def test_links_to_starting_loads_lead_to_loads(
    phone: Callable[..., Opened], slots: list[dict[str, Any]]
) -> None:
    opened = phone(scripts=False)
    targets = {link for slot in slots for link in slot["links"]}
    pages = {urldefrag(urljoin(slot["page"], link)).url for slot in slots for link in slot["links"]}
    assert len(targets) > len(pages) > 20
    missing = []
    for address in sorted(pages):
        opened.page.goto(address)
        for link in (one for one in targets if urldefrag(one).url == address):
            place = urldefrag(link).fragment
            target = opened.page.locator(f"[id='{place}']")
            if not target.count():
                missing.append(link)
            if place == "by-body-weight":
                closed = opened.page.locator("summary", has_text="Show the table")
                if closed.count():
                    closed.click()
                table = opened.page.locator("#by-body-weight ~ :is(details, div) tbody tr")
                assert table.first.is_visible(), link
    assert missing == []


def test_a_drawer_opens_without_a_script(phone: Callable[..., Opened]) -> None:
    page = phone(scripts=False).go("winter/week-03/a-lift/")
    slot = page.locator(".sh-slot").first
    row = slot.locator(".sh-look tbody tr", has=page.locator("th:text-is('140')"))
    assert not row.is_visible()
    slot.get_by_text("How heavy?").tap()
    # 78 % of 140 is 109.2: 107.5 = 25 + 2 × (25 + 15 + 1.25).
    assert row.inner_text().split("\t") == ["140", "107.5", "25 · 15 · 1.25"]
    assert not page.get_by_text("Sharing a bar?").is_visible()
