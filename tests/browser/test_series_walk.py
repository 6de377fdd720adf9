"""Session mode where the sets differ: the load, repetitions and rest of the set that is on."""

import json
from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Page, expect

from phones import Opened
from strip_gym import strip_gym
from taps import screen, tap

pytestmark = pytest.mark.browser

LINE = "5 @ 40 kg, rest 60 s, 3 @ 50 kg, rest 3:00, 1+ @ 55 kg cap 6, RIR 1"
SETS = [("40", ["10"], "This set: 5 repetitions"), ("50", ["10", "5"], "This set: 3 repetitions"),
        ("55", ["10", "5", "2.5"], "At least 1, at most 6. You count.")]  # fmt: skip
"""By hand: a bar of 20 kg and plates of one side, inner first."""


@pytest.fixture(scope="module")
def gym(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Address of a small handbook whose first session has sets that differ."""
    yield from strip_gym(tmp_path_factory, "series", LINE)


def open_session(opened: Opened, base: str, numbers: object) -> Page:
    """The first session, with numbers of one's own or without."""
    opened.base = base
    page = opened.page
    page.clock.install(time="2027-01-18T18:00:00")
    opened.go("spring/week-01/a-squat/")
    if numbers is not None:
        text = json.dumps({"v": 1, "d": numbers})
        page.evaluate("text => localStorage.setItem('strength-handbook / mine', text)", text)
        page.reload()
        expect(page.locator("article .sh-mine").first).to_be_visible()
    return page


def test_each_set_has_its_load_with_a_reload_in_the_middle(
    phone: Callable[..., Opened], gym: str
) -> None:
    opened = phone()
    page = open_session(opened, gym, {"bases": {}})
    # The page lists them all, with what moves between them.
    rows = page.locator("article .sh-mine").first.locator("li")
    expect(rows).to_have_count(3)
    expect(rows.nth(1)).to_contain_text("1\u00a0×\u00a03: 50\u00a0kg (on 5)")
    page.locator(".sh-train-open").tap()
    for place, (load, plates, words) in enumerate(SETS):
        now = screen(page).locator(".sh-train-now")
        expect(now).to_contain_text(f"Set {place + 1} of 3")
        expect(now.locator(".sh-mine b:visible").first).to_have_text(f"{load}\u00a0kg")
        expect(now).to_contain_text(words)
        drawn = now.locator(".sh-mine-bar:visible").first.locator("i")
        expect(drawn).to_have_count(len(plates))
        kg = drawn.evaluate_all("all => all.map(one => one.dataset.kg)")
        assert kg == plates
        if place == 1:
            # A minute after the first set, by its own rest; then the page is closed and comes back.
            expect(screen(page).get_by_role("timer")).to_contain_text("Rest")
            page.clock.run_for(62_000)
            expect(screen(page).get_by_role("timer")).to_contain_text("Ready when you are")
            page.reload()
            tap(page, "Go on")
            expect(now.locator(".sh-mine b:visible").first).to_have_text("50\u00a0kg")
        tap(page, "Set done")
    # The last one is open: how many there were is asked.
    screen(page).get_by_role("button", name="4", exact=True).tap()
    tap(page, "Running late? Change the order?", "End the session here", "Keep it on this phone")
    kept = page.evaluate("strengthHandbook.store.get('log/spring/1/a-squat')")
    assert kept["slots"]["A"]["sets"] == [
        {"reps": 5, "grams": 40_000}, {"reps": 3, "grams": 50_000}, {"reps": 4, "grams": 55_000}
    ]  # fmt: skip
    opened.go("my-log/")
    log = page.locator("#sh-log-list")
    expect(log).to_contain_text("40\u00a0kg × 5; 50\u00a0kg × 3; 55\u00a0kg × 4")
    assert opened.complaints == []


def test_without_numbers_each_load_is_asked_for(phone: Callable[..., Opened], gym: str) -> None:
    opened = phone()
    page = open_session(opened, gym, None)
    page.locator(".sh-train-open").tap()
    for place, load in enumerate(("37.5", "42.5", "45")):
        expect(screen(page)).to_contain_text(f"Set {place + 1} of 3")
        field = screen(page).get_by_label("I take")
        expect(field).to_have_value("")
        field.fill(load)
        tap(page, "Set done")
    tap(page, "I don’t know", "Running late? Change the order?", "End the session here")
    # What was typed stands in a field for each of them, and can be put right.
    fields = screen(page).get_by_label("kg with the bar")
    expect(fields).to_have_count(3)
    fields.nth(1).fill("40")
    tap(page, "Keep it on this phone")
    kept = page.evaluate("strengthHandbook.store.get('log/spring/1/a-squat')")
    assert [one.get("grams") for one in kept["slots"]["A"]["sets"]] == [37_500, 40_000, 45_000]
    assert opened.complaints == []
