"""A member's questions, answered from the home page in at most three taps on a phone."""

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from phones import Opened

pytestmark = pytest.mark.browser


def test_how_heavy_is_my_trap_bar_deadlift_in_week_3(phone: Callable[..., Opened]) -> None:
    page = phone().go("")
    page.get_by_role("link", name="Week 3, Lift, Mon").tap()
    slot = page.locator(
        "article.sh-slot", has=page.get_by_role("heading", name="Trap-bar deadlift")
    )
    slot.get_by_text("How heavy?").tap()
    row = slot.get_by_role("row", name="140", exact=False).filter(
        has=page.get_by_role("rowheader", name="140", exact=True)
    )
    # 78 % of 140 is 109.2; the plates at one rack make 107.5: bar 25 and 25 + 15 + 1.25 a side.
    expect(row).to_be_visible()
    expect(row).to_have_text("140107.525 · 15 · 1.25")


def test_the_same_without_scripts(phone: Callable[..., Opened]) -> None:
    page = phone(scripts=False).go("")
    page.get_by_role("link", name="Week 3, Lift, Mon").tap()
    slot = page.locator(
        "article.sh-slot", has=page.get_by_role("heading", name="Trap-bar deadlift")
    )
    slot.get_by_text("How heavy?").tap()
    expect(slot.get_by_role("rowheader", name="140", exact=True)).to_be_visible()


def test_the_exercise_opens_at_this_week(phone: Callable[..., Opened]) -> None:
    page = phone().go("winter/week-03/a-lift/")
    page.locator("article h2 a", has_text="Trap-bar deadlift").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Trap-bar deadlift")
    shown = page.locator(".sh-use")
    expect(shown).to_have_count(1)
    expect(shown).to_contain_text("Week 3, Lift")
    expect(page.locator(".sh-use-title")).to_be_in_viewport()
    assert in_view(page, ".sh-use-title")


@pytest.mark.parametrize("name", ["Cues", "Stop", "Instead", "Faults and fixes"])
def test_cues_doors_and_faults_are_two_taps_away(phone: Callable[..., Opened], name: str) -> None:
    page = phone().go("")
    page.get_by_role("link", name="Week 2, Descend, Thu").tap()
    page.locator("article h2 a", has_text="Yoke-bar box squat").tap()
    expect(page.get_by_role("heading", name=name, exact=True)).to_be_attached()


def test_somebody_is_hurt(phone: Callable[..., Opened]) -> None:
    page = phone().go("winter/week-01/b-descend/")
    expect(page.get_by_role("heading", name="If someone is hurt")).to_be_attached()
    number = page.locator(".sh-emergency .sh-number")
    expect(number).to_have_text("Call 112")
    expect(number.get_by_role("link")).to_have_attribute("href", "tel:112")


def test_search_finds_an_exercise(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go("")
    page.locator("label[for=__search]").first.tap()
    # Key by key: the theme listens for keys, not for a value that is set.
    page.get_by_role("textbox", name="Search").press_sequentially("copenhagen")
    expect(page.locator(".md-search-result__link").first).to_contain_text("Copenhagen")
    assert opened.complaints == []


def in_view(page: Page, selector: str) -> bool:
    box = page.locator(selector).bounding_box()
    return box is not None and box["y"] >= 0 and box["y"] + box["height"] <= 740
