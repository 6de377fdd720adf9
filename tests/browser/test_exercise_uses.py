"""An exercise's page on a phone: this week's use of it and the next one."""

from collections.abc import Callable
from html.parser import HTMLParser

import pytest
from playwright.sync_api import Locator, Page, Route, expect

from phones import Opened

pytestmark = pytest.mark.browser

DEADLIFT, SQUAT = "exercises/trap-bar-deadlift/", "exercises/yoke-bar-box-squat/"
START = "2027-01-04"
"""A Monday: week 6 begins on 8 February."""


def opened_on(opened: Opened, day: str, address: str = DEADLIFT, start: str = START) -> Page:
    """A page on a day, for somebody whose program began on another."""
    opened.page.clock.set_fixed_time(f"{day}T10:00:00")
    page = opened.go("words/")
    if start:
        page.evaluate("day => strengthHandbook.store.set('start/winter', day)", start)
    return opened.go(address)


def titles(page: Page) -> Locator:
    return page.locator(".sh-use-title")


@pytest.mark.parametrize(
    ("day", "says"),
    [
        ("2026-12-30", ["Next, Monday: Week 1, Lift"]),
        ("2027-02-08", ["Today: Week 6, Lift", "Next, Monday: Week 7, Lift"]),
        ("2027-02-10", ["This week, Monday: Week 6, Lift", "Next, Monday: Week 7, Lift"]),
        (
            "2027-01-31",
            ["This week, Monday: Week 4, Lift (easy week)", "Next, Monday: Week 5, Lift"],
        ),
        # In week 9 it is done on Thursday too.
        ("2027-03-02", ["This week, Thursday: Week 9, Descend", "Next, Monday: Week 10, Lift"]),
        ("2027-03-23", ["This week, Monday: Week 12, Tests, Monday"]),
        ("2027-04-20", ["Week 1, Lift"]),
    ],
)
def test_the_page_shows_this_week_and_what_comes_next(
    phone: Callable[..., Opened], day: str, says: list[str]
) -> None:
    opened = phone()
    page = opened_on(opened, day)
    expect(titles(page)).to_have_text(says)
    current = page.locator(".sh-uses [aria-current]")
    expect(current).to_have_count(0 if day == "2027-04-20" else 1)
    assert opened.complaints == []


def test_without_a_start_it_is_the_week_opened_last(phone: Callable[..., Opened]) -> None:
    opened = phone()
    expect(titles(opened.go(DEADLIFT))).to_have_text(["Week 1, Lift"])
    opened.go("winter/week-05/")
    expect(titles(opened.go(DEADLIFT))).to_have_text(["Last opened: Week 5, Lift"])


def test_an_address_names_a_week_also_while_the_page_is_open(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened_on(opened, "2027-02-08", DEADLIFT + "#winter-week-03-a-lift-a")
    expect(titles(page)).to_have_text(["Week 3, Lift"])
    expect(titles(page)).to_be_in_viewport()
    page.evaluate("location.hash = '#winter-week-10-b-descend-c'")
    expect(titles(page)).to_have_text(["Week 10, Descend"])
    page.evaluate("location.hash = '#' + document.querySelector('.sh-uses p:last-child a').id")
    expect(page.locator(".sh-use")).to_contain_text("Alone? No. A test is never done alone.")
    page.evaluate("location.hash = '#cues'")
    expect(titles(page).first).to_have_text("Today: Week 6, Lift")


def test_a_phone_shows_a_use_as_the_build_does(phone: Callable[..., Opened]) -> None:
    opened = phone()
    for address in (DEADLIFT, SQUAT):
        page = opened.go(address)
        shown = page.locator(".sh-use")
        built = plain(shown.evaluate("one => one.outerHTML"))
        shown.evaluate("one => { one.dataset.built = '' }")
        first = page.locator(".sh-uses a").first.get_attribute("id")
        page.evaluate("id => { location.hash = '#' + id }", first)
        expect(page.locator(".sh-use:not([data-built])")).to_have_count(1)
        assert plain(shown.evaluate("one => one.outerHTML")) == built


class _Tags(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append(f"<{tag} {sorted((key, value or '') for key, value in attrs)}")

    def handle_data(self, data: str) -> None:
        self.found += data.split()


def plain(html: str) -> str:
    """The same where attributes are in any order and data are written in any way."""
    tags = _Tags()
    tags.feed(html)
    return "\n".join(tags.found)


def test_where_the_file_of_uses_does_not_come_the_page_stays(phone: Callable[..., Opened]) -> None:
    opened = phone()

    def fails(route: Route) -> None:
        route.abort()

    opened.page.route("**/data/uses/**", fails)
    page = opened_on(opened, "2027-02-08")
    expect(page.locator(".sh-uses [aria-current]")).to_have_text("Week 6")
    expect(titles(page)).to_have_text(["Week 1, Lift"])


def test_a_use_leads_to_its_slot_and_to_its_loads(phone: Callable[..., Opened]) -> None:
    opened = phone(scripts=False)
    page = opened.go(SQUAT)
    page.locator(".sh-uses a").last.tap()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Week 12")
    page.get_by_role("link", name="All loads, and how they were worked out").tap()
    expect(page.get_by_role("heading", level=1)).to_contain_text("all loads")
    page.get_by_text("How this was worked out").first.tap()
    expect(page.locator(".sh-working li").first).to_be_visible()
    page = opened.go("winter/week-03/a-lift/")
    page.locator("#slot-a ~ details summary", has_text="How heavy?").tap()
    page.get_by_role("link", name="By body weight", exact=True).first.tap()
    expect(page.locator("section:has(#slot-a) table.sh-grid").first).to_be_visible()
