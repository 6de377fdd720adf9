"""Session mode where a bar is shared: whose turn it is, what changes, one rest, what is kept."""

from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from phones import Opened
from taps import keep, kept, screen

pytestmark = pytest.mark.browser

LIFT = "winter/week-02/a-lift/"
BESTS = {"trap-bar-1rm": 150_000}


def tap(page: Page, name: str) -> None:
    screen(page).get_by_role("button", name=name, exact=True).tap()
    page.wait_for_timeout(2100)  # no set takes less


def begin(opened: Opened, *others: int) -> Page:
    page = opened.go(LIFT)
    keep(page, "mine", {"bases": BESTS})
    people = [{"bases": {"trap-bar-1rm": one}} for one in others]
    keep(page, "together", {"day": "", "keep": True, "people": people})
    page.reload()
    expect(page.locator(".sh-bar").first).to_be_visible()
    page.get_by_role("button", name="Train this session").tap()
    tap(page, "Warm-up done")
    tap(page, "Steps done")
    return page


def turns_of(page: Page) -> list[dict[str, Any]]:
    """The plan of the page, as its own script has it."""
    found: list[dict[str, Any]] = page.evaluate(
        """() => { const { 'tools/one-bar': oneBar, dom, lists } = strengthHandbook;
            return oneBar.at(dom.find('[data-sets] .sh-dose-data'), lists).turns
                .map(({ name, load }) => ({ name, grams: load.grams, parts: load.parts })); }"""
    )
    return found


def test_a_pair_is_led_in_turn_with_a_reload_in_the_middle(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = begin(opened, 95_000)
    turns = turns_of(page)
    sets = int(page.locator("[data-sets]").first.get_attribute("data-sets") or 0)
    assert {turn["name"] for turn in turns} == {"me", "B"}
    assert sets == 4
    said: list[str] = []
    bar: list[int] = []
    for number in range(sets):
        for turn in turns:
            mine = turn["name"] == "me"
            who = "My turn" if mine else "B’s turn"
            expect(screen(page).get_by_text(who).first).to_be_visible()
            task = screen(page).locator("p.sh-train-part", has_text="turn").first
            expect(task).to_contain_text(f"{who}: ")
            said.append(task.text_content() or "")
            # What is said makes the bar of whoever lifts next, plate by plate.
            bar = changed(bar, said[-1])
            assert bar == turn["parts"], said
            if number == 1:  # in the middle, on either's turn
                page.reload()
                tap(page, "Go on")
                expect(screen(page).get_by_text(who).first).to_be_visible()
                expect(task).to_have_text(said[-1])
            tap(page, "Set done" if mine else "B’s set done")
    # Both are through: the next exercise, and my log has my sets with the plates of the plan.
    expect(screen(page).locator("h2")).not_to_contain_text("Trap-bar deadlift")
    page.get_by_role("button", name="Running late? Change the order?").tap()
    page.get_by_role("button", name="End the session here").tap()
    page.get_by_role("button", name="Keep it on this phone").tap()
    log = kept(page, "log/winter/2/a-lift")
    (mine,) = (turn for turn in turns if turn["name"] == "me")
    # The bar of 25 kg, and the plates that were put on; week 2 asks for five repetitions.
    done = {"reps": 5, "grams": 25_000 + 2 * sum(mine["parts"])}
    # No variant and no door was tapped, and others' sets are not mine.
    assert (log["variant"], log["slots"]["A"]["door"]) == (None, None)
    assert log["slots"]["A"]["sets"] == [done] * sets
    assert log["slots"]["A"]["of"] == sets
    assert all(one["sets"] == [] for order, one in log["slots"].items() if order != "A")
    assert opened.complaints == []


def changed(bar: list[int], words: str) -> list[int]:
    """A bar after words such as ``plates off 10 · 2.5, on 15 a side``; fails where it can't be."""
    after = list(bar)
    for part in words.partition(": ")[2].partition(" a side")[0].split(", "):
        before, _, list_of = part.partition("off ")
        if list_of and not before.replace("plates ", ""):
            for text in list_of.split(" · "):
                assert after.pop() == round(float(text) * 1000), words
        before, _, list_of = part.partition("on ")
        if list_of and not before.replace("plates ", ""):
            after += [round(float(text) * 1000) for text in list_of.split(" · ")]
    return after


def test_one_rest_clock_for_all(phone: Callable[..., Opened]) -> None:
    """The clock is that of whoever lifts next."""
    opened = phone()
    page = begin(opened, 95_000)
    first, second = turns_of(page)
    clock = page.locator(".sh-train-clock")
    done = {"me": "Set done", "B": "B’s set done"}
    tap(page, done[first["name"]])
    tap(page, done[second["name"]])
    if first["name"] == "me":
        expect(clock).to_contain_text("Rest")
    else:
        expect(clock).to_contain_text("Rest of B")
    left = page.locator(".sh-train-clock b").text_content() or ""
    # 2:30 from the first one's set, which was two taps ago.
    assert left.startswith("2:2"), left
    tap(page, done[first["name"]])
    expect(clock).to_contain_text("Rest" if second["name"] == "me" else "Rest of B")
    assert opened.complaints == []


def test_a_turn_is_taken_back_and_somebody_sits_out(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = begin(opened, 95_000)
    turns = turns_of(page)
    if turns[0]["name"] == "me":
        tap(page, "Set done")
    expect(screen(page)).to_contain_text("B’s turn, set 1 of 4")
    tap(page, "B’s set done")
    expect(screen(page)).to_contain_text("My turn")
    tap(page, "Undo")
    expect(screen(page)).to_contain_text("B’s turn, set 1 of 4")
    tap(page, "B sits out")
    expect(screen(page)).to_contain_text("My turn")
    assert opened.complaints == []


def test_three_in_turn(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = begin(opened, 95_000, 120_000)
    for turn in turns_of(page) * 2:
        name = turn["name"]
        expect(screen(page)).to_contain_text("My turn" if name == "me" else f"{name}’s turn")
        tap(page, "Set done" if name == "me" else f"{name}’s set done")
    assert opened.complaints == []


def test_alone_nothing_is_said_of_turns(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go(LIFT)
    keep(page, "mine", {"bases": BESTS})
    page.reload()
    page.get_by_role("button", name="Train this session").tap()
    tap(page, "Warm-up done")
    tap(page, "Steps done")
    expect(screen(page)).to_contain_text("Mine: ")
    expect(screen(page)).not_to_contain_text("turn")
    assert opened.complaints == []
