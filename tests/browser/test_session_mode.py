"""Session mode: one exercise at a time, from the first tick of the warm-up to the last word."""

import json
import re
from collections.abc import Callable
from typing import Any
from urllib.parse import urlparse

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Locator, Page, expect

from phones import Opened, Served
from taps import screen

pytestmark = pytest.mark.browser

LIFT = "winter/week-03/a-lift/"
HOLDS = "winter/week-07/b-descend/"
TESTS = "winter/week-12/t-monday/"
CARRY = "winter/week-03/c-carry/"
KEEP = "strength-handbook /gym/handbook/ "
START = "2027-01-18T18:00:00"
MINE: dict[str, Any] = {"body": 72_000, "bases": {"trap-bar-1rm": 140_000}}


def keep_numbers(page: Page, **more: int) -> None:
    """The member's numbers, as the page "my numbers" keeps them."""
    bases = MINE["bases"] | {key.replace("_", "-"): grams for key, grams in more.items()}
    text = json.dumps({"v": 1, "d": MINE | {"bases": bases}})
    page.evaluate("([key, text]) => localStorage.setItem(key, text)", [KEEP + "mine", text])


def kept(page: Page, key: str) -> Any:
    """A value that is kept; None if it is not."""
    text = page.evaluate("key => localStorage.getItem(key)", KEEP + key)
    return text and json.loads(text)["d"]


def begin(opened: Opened, address: str = LIFT, *, numbers: bool = False) -> Page:
    """Session mode on a session's page, with a clock that the tests turn."""
    opened.page.clock.install(time=START)
    page = opened.go(address)
    if numbers:
        keep_numbers(page)
        page.reload()
        expect(page.locator("article .sh-mine").first).to_be_visible()
    page.get_by_role("button", name="Train this session").tap()
    expect(title(page)).to_be_visible()
    return page


def title(page: Page) -> Locator:
    return screen(page).get_by_role("heading", level=2).first


def button(page: Page, name: str) -> Locator:
    return screen(page).get_by_role("button", name=name, exact=True)


def wait(page: Page) -> None:
    """As long as a quick second tap counts for nothing."""
    page.clock.run_for(2_000)


def tap(page: Page, *names: str) -> None:
    for name in names:
        wait(page)
        button(page, name).tap()


def past_the_ramp(page: Page) -> None:
    tap(page, "Warm-up done", "Steps done")


def figure(page: Page) -> Locator:
    return screen(page).get_by_role("timer").locator("b")


def test_a_session_walked_by_taps(phone: Callable[..., Opened], served: Served) -> None:
    opened = phone()
    page = begin(opened)
    expect(title(page)).to_have_text("Warm-up, 11 min")
    past_the_ramp(page)
    walked = []
    for _ in range(50):
        heading = title(page).inner_text()
        if heading.startswith("Put away"):
            break
        walked.append(f"{heading.split()[0]} {screen(page).locator('.sh-train-set').inner_text()}")
        main = screen(page).locator(".sh-train-main")
        if main.inner_text() == "Start":
            tap(page, "Start")
        wait(page)
        main.tap()
    lift = [f"A Set {n} of 4" for n in range(1, 5)]
    pair = [
        line
        for n in range(1, 5)
        for line in (f"B1 Set {n} of 4", f"B2 Set {n} of 4, left", f"B2 Set {n} of 4, right")
    ]
    lower = [f"C Set {n} of 3" for n in range(1, 4)]
    press = [line for n in range(1, 4) for line in (f"D1 Set {n} of 3", f"D2 Set {n} of 3")]
    carry = [f"E Set {n} of 3, {side}" for n in range(1, 4) for side in ("left", "right")]
    assert walked == [*lift, *pair, *lower, *press, *carry]
    assert {urlparse(url).netloc for url in opened.requests} == {urlparse(served.base).netloc}
    assert opened.complaints == []


def test_rest_starts_with_the_set_that_is_done(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = begin(opened)
    past_the_ramp(page)
    expect(figure(page)).to_be_hidden()
    tap(page, "Set done")
    expect(figure(page)).to_have_text("2:30")
    expect(screen(page)).to_contain_text("Set 2 of 4")
    page.clock.run_for(90_000)
    expect(figure(page)).to_have_text("1:00")
    says = screen(page).get_by_role("status")
    page.clock.run_for(30_000)
    expect(says).to_have_text("30 seconds")
    page.clock.run_for(20_000)
    expect(says).to_have_text("10 seconds")
    page.clock.run_for(10_000)
    expect(says).to_have_text("Ready when you are. A Trap-bar deadlift, Set 2 of 4")


def test_a_phone_that_slept_shows_the_right_time(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = begin(opened)
    past_the_ramp(page)
    tap(page, "Set done")
    # Timers stand still meanwhile, as in a sleeping tab.
    page.clock.fast_forward("03:30")
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    expect(figure(page)).to_have_text("+1:00")
    expect(screen(page)).to_contain_text("Ready when you are")


def test_a_page_that_is_read_again_goes_on(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = begin(opened)
    past_the_ramp(page)
    tap(page, *["Set done"] * 5, "Left done", "Set done")
    page.reload()
    expect(title(page)).to_have_text("Go on?")
    expect(screen(page)).to_contain_text("B1 Neutral-grip pull-up")
    expect(screen(page)).to_contain_text("Set 2 of 4")
    left = figure(page).inner_text()
    assert "1:00" < left <= "1:15"
    tap(page, "Go on")
    expect(title(page)).to_have_text("B1 Neutral-grip pull-up")
    tap(page, "Leave")
    expect(page).to_have_url(opened.base + LIFT)
    page.get_by_role("button", name="Go on training").tap()
    tap(page, "Start again", "No, go on")
    expect(title(page)).to_have_text("B1 Neutral-grip pull-up")
    tap(page, "Leave")
    page.get_by_role("button", name="Go on training").tap()
    tap(page, "Start again", "Yes, start again")
    expect(title(page)).to_have_text("Warm-up, 11 min")
    assert opened.complaints == []


def test_what_is_older_than_half_a_day_is_over(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = begin(opened)
    tap(page, "Warm-up done", "Leave")
    again = page.get_by_role("button", name="Go on training")
    expect(again).to_be_visible()
    page.clock.fast_forward("13:00:00")
    again.tap()
    expect(title(page)).to_have_text("Warm-up, 11 min")


def test_a_wrong_tap_is_taken_back(phone: Callable[..., Opened]) -> None:
    page = begin(phone())
    expect(button(page, "Undo")).to_be_disabled()
    past_the_ramp(page)
    tap(page, "Set done", "Set done")
    expect(screen(page)).to_contain_text("Set 3 of 4")
    tap(page, "Undo")
    expect(screen(page)).to_contain_text("Set 2 of 4")
    tap(page, "Undo", "Undo")
    expect(screen(page)).to_contain_text("On the way up")


def test_two_quick_taps_are_one(phone: Callable[..., Opened]) -> None:
    page = begin(phone())
    past_the_ramp(page)
    wait(page)
    button(page, "Set done").dblclick()
    expect(screen(page)).to_contain_text("Set 2 of 4")


def test_no_set_takes_less_than_two_seconds(phone: Callable[..., Opened]) -> None:
    page = begin(phone())
    past_the_ramp(page)
    tap(page, "Set done")
    page.clock.run_for(1_000)
    button(page, "Set done").tap()
    expect(screen(page)).to_contain_text("Set 2 of 4")
    # What was too early does not make it longer.
    page.clock.run_for(1_000)
    button(page, "Set done").tap()
    expect(screen(page)).to_contain_text("Set 3 of 4")


CALLED_OUT = "Called out in the last 24 hours: about 36 min"


def test_called_out(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = begin(opened)
    past_the_ramp(page)
    tap(page, "Set done", "Running late? Change the order?")
    variant = button(page, CALLED_OUT)
    expect(variant).to_have_attribute("aria-pressed", "false")
    variant.tap()
    expect(variant).to_have_attribute("aria-pressed", "true")
    expect(screen(page).get_by_role("button", name="Take back in: C")).to_be_visible()
    tap(page, "Back")
    # Half of four sets, one of them done; a tenth lighter, no slow lowering, the pause stays.
    expect(screen(page).locator(".sh-train-set")).to_contain_text("Set 2 of 2")
    dose = screen(page).locator(".sh-dose").first
    expect(dose).to_contain_text("2 × 5 @ 70 % · 2-1-X-0 · RIR 3")
    assert "Five seconds down" not in screen(page).inner_text()
    tap(page, "Tempo 2-1-X-0")
    page.clock.run_for(3_100)
    # From the floor: up first.
    expect(screen(page).locator(".sh-train-beat")).to_have_text("1 of 5: Up, fast 1")
    page.clock.run_for(1_000)
    expect(screen(page).locator(".sh-train-beat")).to_have_text("1 of 5: Down 2")
    page.reload()
    tap(page, "Go on", "Set done")
    expect(title(page)).to_contain_text("B1")
    main = screen(page).locator(".sh-train-main")
    for line in (
        "B1 Set 1 of 2", "B2 Set 1 of 2, left", "B2 Set 1 of 2, right",
        "B1 Set 2 of 2", "B2 Set 2 of 2, left", "B2 Set 2 of 2, right",
        "D1 Set 1 of 1", "D2 Set 1 of 1", "E Set 1 of 1, left", "E Set 1 of 1, right",
    ):  # fmt: skip
        order, _, which = line.partition(" ")
        expect(title(page)).to_have_text(re.compile(rf"^\s*{order}\b"))
        expect(screen(page).locator(".sh-train-set")).to_have_text(which)
        wait(page)
        if main.inner_text() == "Start":
            tap(page, "Start")
            expect(main).not_to_have_text("Start")
            wait(page)
        main.tap()
    expect(title(page)).to_contain_text("Put away")
    expect(screen(page)).to_contain_text("A Trap-bar deadlift: 2 of 2")
    assert opened.complaints == []


def test_called_out_looks_for_no_best_of_today(phone: Callable[..., Opened]) -> None:
    page = begin(phone(), "winter/week-03/b-descend/", numbers=True)
    tap(page, "Warm-up done", "Running late? Change the order?")
    screen(page).get_by_role("button", name=re.compile("^Called out")).tap()
    screen(page).get_by_role("button", name="Go here: B1").tap()
    while "Steps done" in screen(page).inner_text():
        tap(page, "Steps done")
    expect(screen(page).locator(".sh-train-set")).to_contain_text("Set 1 of 1")
    expect(screen(page).locator(".sh-dose").first).to_contain_text("1 × 5 · 2-0-1-0 · RIR 3")
    assert "Today’s top set of" not in screen(page).inner_text()


def test_a_variant_is_taken_back(phone: Callable[..., Opened]) -> None:
    page = begin(phone())
    past_the_ramp(page)
    tap(page, "Running late? Change the order?", CALLED_OUT)
    page.clock.run_for(2_000)
    screen(page).get_by_role("button", name="Only 45 minutes").tap()
    # C and E are not in it; of the first variant nothing is left.
    again = screen(page).get_by_role("button", name="Take back in")
    assert [(one.get_attribute("aria-label") or "").split()[3] for one in again.all()] == [
        "A", "B1", "B2", "C", "D1", "D2", "E",
    ]  # fmt: skip
    tap(page, "Back")
    expect(screen(page).locator(".sh-train-set")).to_contain_text("Set 1 of 3")
    tap(page, "Undo")
    expect(screen(page).locator(".sh-train-set")).to_contain_text("Set 1 of 2")
    tap(page, "Undo")
    expect(screen(page).locator(".sh-train-set")).to_contain_text("Set 1 of 4")
    tap(page, "Running late? Change the order?", CALLED_OUT)
    screen(page).get_by_role("button", name="Take back in: C").tap()
    screen(page).get_by_role("button", name="Go here: C").tap()
    expect(title(page)).to_contain_text("C Nordic lower")
    tap(page, "Running late? Change the order?", CALLED_OUT, "Back")
    expect(button(page, CALLED_OUT)).to_have_count(0)
    tap(page, "Running late? Change the order?")
    expect(button(page, CALLED_OUT)).to_have_attribute("aria-pressed", "false")
    expect(screen(page).get_by_role("button", name="Take back in")).to_have_count(0)


def test_attempts_are_good_or_missed(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = begin(opened, TESTS)
    keep_numbers(page, pull_up_system_1rm=85_000)
    page.reload()
    expect(title(page)).to_contain_text("Warm-up")
    tap(page, "Warm-up done", "Steps done", "Good", "Missed")
    expect(screen(page).locator(".sh-train-set")).to_contain_text("Attempt 3 of 4")
    assert screen(page).locator(".sh-train-tally .is-miss").count() == 1
    tap(page, "Undo")
    assert screen(page).locator(".sh-train-tally .is-miss").count() == 0
    tap(page, "Missed", "Good", "Missed")
    tap(page, "Running late? Change the order?", "End the session here")
    expect(screen(page)).to_contain_text("A Trap-bar deadlift: 4 of 4, good, missed, good, missed")
    first, second = (
        screen(page).get_by_label(f"Attempt {number}") for number in ("1, good", "2, missed")
    )
    # What the phone proposed: the first attempt, and a step from it.
    expect(first).to_have_value("122.5")
    first.fill("137,5")
    second.fill("a lot")
    tap(page, "Keep it on this phone")
    expect(screen(page)).to_contain_text("Not kept yet: see the field that is marked.")
    expect(second).to_be_focused()
    expect(second).to_have_attribute("aria-invalid", "true")
    second.fill("142.5")
    tap(page, "Keep it on this phone")
    sets = kept(page, "log/winter/12/t-monday")["slots"]["A"]["sets"]
    assert [(one.get("grams"), one.get("missed", False)) for one in sets] == [
        (137_500, False), (142_500, True), (140_000, False), (None, True),
    ]  # fmt: skip
    page = opened.go("my-log/")
    entry = page.locator("#sh-log-list li").first
    # The heaviest that was good.
    expect(entry).to_contain_text("Trap-bar deadlift 140\u00a0kg × 3: ")
    tries = "good 137.5 kg, missed 142.5 kg, good 140 kg, missed".replace(" kg", "\u00a0kg")
    expect(entry).to_contain_text(tries)


def test_what_was_lifted_is_put_right(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = begin(opened, numbers=True)
    past_the_ramp(page)
    tap(page, "Set done", "Running late? Change the order?", "End the session here")
    field = screen(page).get_by_label("Load, kg with the bar")
    expect(field).to_have_value("107.5")
    # What was not done has none.
    assert screen(page).locator(".sh-train-list input").count() == 2
    field.fill("110")
    tap(page, "Keep it on this phone")
    assert kept(page, "log/winter/3/a-lift")["slots"]["A"]["sets"] == [
        {"reps": 5, "grams": 110_000}
    ]
    # As it was kept before there was a field.
    old = {"A": {"done": 4, "of": 4, "load": "105 kg = trap bar 25 + 25 · 15 a side"}}
    entry = {"v": 1, "d": {"day": "2027-01-11", "sets": old, "effort": 7, "note": ""}}
    page.evaluate(
        "([key, text]) => localStorage.setItem(key, text)",
        [KEEP + "log/winter/2/a-lift", json.dumps(entry)],
    )
    page = opened.go("my-log/")
    expect(page.locator("#sh-log-list")).to_contain_text("Trap-bar deadlift 110 kg")
    page.locator("#sh-log-only").select_option("trap-bar-deadlift")
    expect(page.locator("#sh-log-trend")).to_contain_text(
        "2027-01-11: 105 kg, 2027-01-18: 110 kg".replace(" kg", "\u00a0kg")
    )


def test_steps_are_shown_once(phone: Callable[..., Opened]) -> None:
    page = begin(phone())
    tap(page, "Warm-up done")
    expect(screen(page).get_by_text("Steps to today's load")).to_be_visible()
    tap(page, "Steps done")
    drawer = screen(page).locator("details", has_text="Warm-up steps")
    expect(drawer).not_to_have_attribute("open", "")
    drawer.locator("summary").tap()
    expect(screen(page).get_by_text("Steps to today's load")).to_be_visible()


def test_a_hold_runs_by_the_clock(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = begin(opened, HOLDS)
    tap(page, "Warm-up done", "Running late? Change the order?")
    screen(page).get_by_role("button", name="Go here: D1").tap()
    tap(page, "Start")
    expect(screen(page).get_by_role("timer")).to_contain_text("Get ready")
    page.clock.run_for(6_000)
    expect(screen(page).get_by_role("timer")).to_contain_text("Hold")
    page.clock.run_for(30_000)
    # The next of the pair, and the rest between the two.
    expect(title(page)).to_contain_text("D2")
    expect(screen(page).get_by_role("timer")).to_contain_text("Rest")


def test_my_load_and_my_steps(phone: Callable[..., Opened]) -> None:
    page = begin(phone(), numbers=True)
    tap(page, "Warm-up done")
    steps = screen(page).get_by_role("checkbox")
    expect(steps.last).to_be_visible()
    assert steps.count() > 2
    first = screen(page).locator("li").first.inner_text()
    # What goes on each side is said to ears as it is meant.
    assert first == "55\u00a0kg × 4 (on 15)"
    expect(steps.first).to_have_accessible_name(re.compile("× 4 each side: .*on 15.* kilograms"))
    steps.first.check()
    page.reload()
    tap(page, "Go on")
    expect(screen(page).locator("li").first).to_have_text(first)
    expect(steps.first).to_be_checked()
    expect(steps.nth(1)).not_to_be_checked()
    tap(page, "Steps done")
    # 78 % of 140 is 109.2; the plates at one rack make 107.5, as they lie after the steps.
    expect(screen(page)).to_contain_text("107.5 kg = trap bar 25 + ")


def test_strips_say_the_next_load(phone: Callable[..., Opened]) -> None:
    page = begin(phone(), HOLDS)
    tap(page, "Warm-up done", "Running late? Change the order?")
    screen(page).get_by_role("button", name="Go here: C").tap()
    expect(screen(page)).to_contain_text("Set 1 of 1, load 1 of 3")
    tap(page, "Next load")
    expect(screen(page)).to_contain_text("load 2 of 3")
    tap(page, "Set done")
    # It ended early: how many there were is asked at once, of both loads.
    for load in (1, 2):
        expect(screen(page)).to_contain_text(f"Load {load} of 3")
        tap(page, "I don’t know")
    expect(title(page)).to_contain_text("D1")


def test_what_there_is_on_the_first_screen(phone: Callable[..., Opened]) -> None:
    page = begin(phone(), numbers=True)
    past_the_ramp(page)
    tap(page, "Set done")
    edge = screen(page).locator(".sh-train-bar").bounding_box()
    assert edge is not None
    assert edge["y"] + edge["height"] <= 740
    for part in (
        "h2",
        ".sh-train-set",
        ".sh-dose",
        ".sh-mine b",
        ".sh-mine [role=img]",
        "[role=timer]",
        # When to stop is never found by scrolling.
        ".sh-train-stop",
    ):
        box = screen(page).locator(part).first.bounding_box()
        assert box is not None
        assert box["y"] >= 0
        assert box["y"] + box["height"] <= edge["y"], part


def test_doors_come_along_and_go_back(phone: Callable[..., Opened]) -> None:
    page = begin(phone())
    past_the_ramp(page)
    screen(page).get_by_text("Instead", exact=True).tap()
    for door in ("Easier", "Harder", "It hurts", "It's taken", "No partner"):
        expect(screen(page).get_by_text(door, exact=True)).to_be_visible()
    tap(page, "Leave")
    expect(
        page.locator("article.sh-slot").first.locator("details", has_text="Instead")
    ).to_be_visible()
    assert page.locator("article.sh-slot").first.inner_html().count("<!---->") == 0


def test_what_other_tools_add_comes_along(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go(LIFT)
    keep_numbers(page)
    page.evaluate(
        "([key, text]) => localStorage.setItem(key, text)",
        [KEEP + "setup/trap-bar-deadlift", json.dumps({"v": 1, "d": {"note": "blue belt"}})],
    )
    page.reload()
    expect(page.locator("article .sh-mine").first).to_be_visible()
    page.get_by_role("button", name="Train this session").tap()
    past_the_ramp(page)
    expect(screen(page).get_by_text("My set-up: blue belt")).to_be_visible()
    page.evaluate("document.querySelectorAll('dialog details').forEach(d => { d.open = true })")
    page.wait_for_timeout(200)
    assert opened.complaints == []


def test_late(phone: Callable[..., Opened]) -> None:
    page = begin(phone())
    tap(page, "Warm-up done", "Running late? Change the order?")
    expect(screen(page)).to_contain_text("Leave out the suitcase carry, then the last round")
    screen(page).get_by_role("button", name="Leave out: E").tap()
    screen(page).get_by_role("button", name="One set fewer: D1").tap()
    expect(screen(page).get_by_role("button", name="Take back in: E")).to_be_visible()
    screen(page).get_by_role("button", name="Go here: D1").tap()
    tap(page, "Set done")
    expect(title(page)).to_contain_text("D2")
    tap(page, "Running late? Change the order?", "End the session here")
    expect(title(page)).to_have_text("Put away and cool down, 4 min")
    expect(screen(page)).to_contain_text("D1 Dumbbell floor press: 1 of 3")


def test_the_end_is_kept(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = begin(opened, numbers=True)
    past_the_ramp(page)
    tap(page, "Set done", "Set done", "Running late? Change the order?", "End the session here")
    screen(page).get_by_label("7", exact=True).check()
    screen(page).get_by_label("One word").fill("heavy")
    tap(page, "Keep it on this phone")
    expect(title(page)).to_have_text("Kept on this phone.")
    log = kept(page, "log/winter/3/a-lift")
    assert (log["day"], log["effort"], log["note"]) == ("2027-01-18", 7, "heavy")
    assert (log["form"], log["variant"]) == (2, None)
    assert list(log["slots"]) == ["A", "B1", "B2", "C", "D1", "D2", "E"]
    assert log["slots"]["A"] == {
        "exercise": "trap-bar-deadlift", "door": None, "of": 4,
        "sets": [{"reps": 5, "grams": 107_500}] * 2, "times": 1,
    }  # fmt: skip
    # Of what was not done there is no load.
    assert log["slots"]["E"] == {
        "exercise": "suitcase-carry", "door": None, "of": 3, "sets": [],
    }  # fmt: skip
    assert kept(page, "train/winter/3/a-lift") is None
    tap(page, "Close")
    expect(page.get_by_role("button", name="Train this session")).to_be_focused()


def test_keyboard_only(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go(LIFT)
    page.get_by_role("button", name="Train this session").focus()
    page.keyboard.press("Enter")
    expect(title(page)).to_be_focused()

    def press(name: str) -> None:
        for _ in range(30):
            page.keyboard.press("Tab")
            if page.evaluate("document.activeElement.textContent") == name:
                wait(page)
                page.keyboard.press("Enter")
                return
        raise AssertionError(f"no way to {name}")

    press("Warm-up done")
    expect(title(page)).to_be_focused()
    press("Steps done")
    press("Set done")
    expect(screen(page)).to_contain_text("Set 2 of 4")
    # The next set of the same exercise: the finger stays where it is.
    expect(button(page, "Set done")).to_be_focused()
    ring = page.evaluate("getComputedStyle(document.activeElement).outlineStyle")
    assert ring != "none"
    wait(page)
    page.keyboard.press("Enter")
    expect(screen(page)).to_contain_text("Set 3 of 4")
    page.keyboard.press("Escape")
    expect(screen(page)).to_be_hidden()
    expect(page).to_have_url(opened.base + LIFT)
    expect(page.get_by_role("button", name="Go on training")).to_be_focused()


def test_the_back_button_leaves(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = begin(opened)
    expect(page).to_have_url(opened.base + LIFT + "#train")
    page.go_back()
    expect(screen(page)).to_be_hidden()
    expect(page).to_have_url(opened.base + LIFT)
    page.go_forward()
    expect(title(page)).to_be_visible()


def test_somebody_is_hurt(phone: Callable[..., Opened]) -> None:
    page = begin(phone())
    screen(page).get_by_role("link", name="Somebody hurt?").tap()
    expect(screen(page)).to_be_hidden()
    expect(page.get_by_role("heading", name="If someone is hurt")).to_be_in_viewport()


def test_tempo_is_shown_and_stopped(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = begin(opened)
    past_the_ramp(page)
    tap(page, "Tempo 5-1-X-0")
    beat = screen(page).locator(".sh-train-beat")
    expect(beat).to_contain_text("Get ready")
    page.clock.run_for(3_200)
    # From the floor: up first.
    expect(beat).to_have_text("1 of 5: Up, fast 1")
    page.clock.run_for(1_000)
    expect(beat).to_have_text("1 of 5: Down 5")
    track = screen(page).locator(".sh-train-track")
    expect(track).to_be_visible()
    page.emulate_media(reduced_motion="reduce")
    expect(track).to_be_hidden()
    tap(page, "Tempo 5-1-X-0")
    expect(beat).to_be_empty()


def test_signals_are_off_until_switched_on_and_then_kept(phone: Callable[..., Opened]) -> None:
    opened = phone()
    opened.page.add_init_script(
        "globalThis.buzzed = []; navigator.vibrate = time => buzzed.push(time);"
    )
    page = begin(opened)
    switch = button(page, "Vibration")
    expect(switch).to_have_attribute("aria-pressed", "false")
    assert page.evaluate("buzzed") == []
    tap(page, "Vibration")
    expect(switch).to_have_attribute("aria-pressed", "true")
    assert page.evaluate("buzzed") == [80]
    page.reload()
    expect(switch).to_have_attribute("aria-pressed", "true")


def test_without_scripts_the_page_is_complete(phone: Callable[..., Opened]) -> None:
    page = phone(scripts=False).go(LIFT)
    expect(page.get_by_role("button", name="Train this session")).to_have_count(0)
    expect(page.locator("article.sh-slot")).to_have_count(7)


def test_other_pages_show_nothing_of_it(phone: Callable[..., Opened]) -> None:
    opened = phone()
    for address in ("", "winter/week-03/#train", "exercises/trap-bar-deadlift/"):
        page = opened.go(address)
        assert not page.locator("dialog, .sh-train-open").count()
    assert opened.complaints == []


FULL = "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }"


def test_it_works_from_a_folder_too(phone: Callable[..., Opened], served: Served) -> None:
    opened = phone()
    opened.page.goto(f"{served.folder.as_uri()}/{LIFT}index.html#train")
    page = opened.page
    tap(page, "Warm-up done", "Leave")
    expect(screen(page)).to_be_hidden()
    expect(page).to_have_url(f"{served.folder.as_uri()}/{LIFT}index.html")
    page.get_by_role("button", name="Go on training").tap()
    expect(title(page)).to_have_text("Go on?")
    page.go_back()
    expect(screen(page)).to_be_hidden()
    assert opened.complaints == []


def test_today_s_top_set_makes_the_next_load(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go("winter/week-03/b-descend/")
    text = json.dumps({"v": 1, "d": {"bases": {"press-1rm": 50_000}}})
    page.evaluate("([key, text]) => localStorage.setItem(key, text)", [KEEP + "mine", text])
    page.reload()
    expect(page.locator("article .sh-mine").first).to_be_visible()
    page.get_by_role("button", name="Train this session").tap()
    tap(page, "Warm-up done", "Running late? Change the order?")
    screen(page).get_by_role("button", name="Go here: B1").tap()
    tap(page, "Steps done")
    expect(screen(page)).to_contain_text("Today’s top set of 5")
    # The load after it is no load for it.
    expect(screen(page).get_by_text("Mine: about")).to_be_hidden()
    screen(page).get_by_label("My top today").fill("45")
    tap(page, "Top set done")
    # The pair goes on with its first set; what was typed is still there.
    expect(screen(page)).to_contain_text("Set 1 of 2")
    expect(screen(page).get_by_label("My top today")).to_have_value("45")
    # 90 % of 45 is 40.5: one load, in one place.
    expect(screen(page).locator(".sh-mine-load")).to_contain_text("Mine: 40 kg = 20 kg bar + ")
    assert screen(page).locator(".sh-mine-bar:visible").count() == 1
    page.reload()
    tap(page, "Go on")
    expect(screen(page).get_by_label("My top today")).to_have_value("45")
    expect(screen(page).locator(".sh-mine-load")).to_contain_text("Mine: 40 kg = 20 kg bar + ")
    tap(page, "Set done", "Running late? Change the order?", "End the session here")
    expect(screen(page).get_by_label("Top set, kg with the bar")).to_have_value("45")
    expect(screen(page).get_by_label("Load, kg with the bar")).to_have_value("40")
    tap(page, "Keep it on this phone")
    assert kept(page, "log/winter/3/b-descend")["slots"]["B1"]["sets"] == [
        {"reps": 5, "grams": 45_000, "top": True}, {"reps": 5, "grams": 40_000},
    ]  # fmt: skip


def test_a_full_phone_trains_all_the_same(phone: Callable[..., Opened]) -> None:
    opened = phone()
    opened.page.add_init_script(FULL)
    page = begin(opened)
    past_the_ramp(page)
    tap(page, "Set done")
    expect(screen(page)).to_contain_text("Set 2 of 4")
    expect(screen(page)).to_contain_text("This phone has no room left")
    assert opened.complaints == []


SCREENS = {
    "warm-up": (),
    "steps": ("Warm-up done",),
    "set": ("Warm-up done", "Steps done"),
    "rest": ("Warm-up done", "Steps done", "Set done"),
    "late": ("Warm-up done", "Running late? Change the order?"),
    "end": ("Warm-up done", "Running late? Change the order?", "End the session here"),
}


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("kind", SCREENS)
def test_axe_finds_nothing(phone: Callable[..., Opened], kind: str, scheme: str) -> None:
    page = begin(phone(scheme=scheme), numbers=True)
    tap(page, *SCREENS[kind])
    if kind == "rest":
        page.evaluate("document.querySelector('.sh-train-clock').classList.add('is-over')")
    page.evaluate("document.querySelectorAll('dialog details').forEach(d => { d.open = true })")
    page.wait_for_timeout(100)
    # Pale is the button only as long as it does nothing.
    fading = "document.querySelector('.sh-train-bar').getAnimations({ subtree: true }).length"
    while page.evaluate(fading):
        page.wait_for_timeout(200)
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()


@pytest.mark.parametrize("address", [LIFT, HOLDS, TESTS, CARRY])
@pytest.mark.parametrize("size", ["100%", "200%"])
def test_the_narrowest_phone(phone: Callable[..., Opened], address: str, size: str) -> None:
    page = begin(phone(width=320), address, numbers=address == LIFT)
    page.evaluate("size => { document.documentElement.style.fontSize = size }", size)
    wide = """() => [...document.querySelectorAll('dialog, dialog *')].filter(one => {
        const box = one.getBoundingClientRect();
        const out = box.right > innerWidth + 1 || box.left < -1;
        return out && box.width > 1 && one.checkVisibility();
    }).map(one => one.outerHTML.slice(0, 200))"""
    for _ in range(4):
        assert page.evaluate(wide) == []
        wait(page)
        screen(page).locator(".sh-train-main").tap()
    tap(page, "Running late? Change the order?")
    assert page.evaluate(wide) == []


@pytest.mark.parametrize(
    ("width", "height", "letters"), [(320, 740, "40px"), (320, 568, "32px"), (360, 400, "20px")]
)
def test_what_stays_in_sight_leaves_room(
    phone: Callable[..., Opened], width: int, height: int, letters: str
) -> None:
    page = begin(phone(width=width))
    page.set_viewport_size({"width": width, "height": height})
    page.evaluate("size => { document.documentElement.style.fontSize = size }", letters)
    past_the_ramp(page)
    tap(page, "Set done")
    row = screen(page).locator(".sh-train-row", has=page.locator(".sh-train-main"))
    box = row.bounding_box()
    assert box is not None
    assert box["height"] <= height / 3
    assert box["y"] + box["height"] <= height
    # The others come after what is read.
    undo = button(page, "Undo").bounding_box()
    assert undo is not None
    assert undo["y"] > height
    button(page, "Undo").tap()
    expect(screen(page)).to_contain_text("Set 1 of 4")
    assert page.evaluate("document.querySelector('dialog').scrollWidth") <= width


@pytest.mark.parametrize("kind", SCREENS)
def test_what_is_tapped_is_large_enough(phone: Callable[..., Opened], kind: str) -> None:
    page = begin(phone(), numbers=True)
    tap(page, *SCREENS[kind])
    find = """() => [...document.querySelectorAll(
        'dialog :is(button, summary, label, .sh-train-top a)')].filter(
        one => { const box = one.getBoundingClientRect(); return box.height && box.height < 44; }
    ).map(one => one.outerHTML)"""
    assert page.evaluate(find) == []


def test_the_first_three_answers_are_on_the_first_screen(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go(LIFT)
    keep_numbers(page)
    page.reload()
    button = page.get_by_role("button", name="Train this session")
    expect(button).to_be_visible()
    # What the third exercise is: on the session's page.
    expect(page.get_by_role("link", name="B2 Step-down")).to_be_in_viewport(ratio=1)
    button.tap()
    past_the_ramp(page)
    # Which plates, and how fast down: in session mode, above the buttons.
    bar = screen(page).locator(".sh-train-main").bounding_box()
    assert bar is not None
    for words in ("107.5 kg", "trap bar 25 + ", "Five seconds down, one second still, up fast."):
        place = screen(page).get_by_text(words).first.bounding_box()
        assert place is not None
        assert place["y"] >= 0
        assert place["y"] + place["height"] <= bar["y"], words


@pytest.mark.parametrize("mark", ["#%", "#%E0%A4%A", "#%u0041"])
def test_an_address_that_cannot_be_read_stops_nothing(
    phone: Callable[..., Opened], mark: str
) -> None:
    opened = phone()
    page = opened.go(LIFT + mark)
    page.get_by_role("button", name="Train this session").tap()
    expect(title(page)).to_contain_text("Warm-up")
    assert opened.complaints == []


def test_what_fails_is_tried_once_and_leaves_the_page_whole(phone: Callable[..., Opened]) -> None:
    """A view that fails has moved parts of the page: that is no news to be shown again."""
    opened = phone()
    page = opened.go(LIFT)
    before = page.locator("article.sh-slot").first.inner_html()
    page.get_by_role("button", name="Train this session").tap()
    tap_now = screen(page).locator(".sh-train-main")
    tap_now.tap()
    expect(title(page)).to_contain_text("Trap-bar deadlift")
    page.wait_for_timeout(2_100)  # nobody is done with a step at once
    calls = page.evaluate(
        """async () => {
            const steps = strengthHandbook['train/steps'];
            const { name } = steps;
            let calls = 0;
            steps.name = step => {
                calls += 1;
                if (calls < 500) throw new Error('broken on purpose');
                return name(step);
            };
            document.querySelector('.sh-train-main').click();
            await new Promise(then => setTimeout(then, 500));
            steps.name = name;
            return calls;
        }"""
    )
    assert calls == 1
    assert opened.complaints == ["broken on purpose"]
    expect(screen(page)).to_contain_text("This cannot be shown")
    button(page, "Back to the page").tap()
    expect(screen(page)).to_be_hidden()
    assert page.locator("article.sh-slot").first.inner_html() == before
    # Nothing that was tapped is lost.
    page.get_by_role("button", name="Go on training").tap()
    button(page, "Go on").tap()
    expect(screen(page)).to_contain_text("Set 1 of 4")


def test_a_set_is_read_without_scrolling(phone: Callable[..., Opened]) -> None:
    """Load, plates, dose, tempo and the rule to stop, on a small phone, while the rest runs."""
    page = begin(phone(width=360), numbers=True)
    past_the_ramp(page)
    wait(page)
    screen(page).locator(".sh-train-main").tap()
    expect(screen(page).get_by_role("timer")).to_be_visible()
    bar = screen(page).locator(".sh-train-bar").bounding_box()
    figure = screen(page).locator(".sh-mine-large").first
    assert bar is not None
    assert figure.evaluate("one => parseFloat(getComputedStyle(one).fontSize)") >= 55
    now = screen(page).locator(".sh-train-now")
    for part in (".sh-mine-large", ".sh-mine-bar", ".sh-dose", ".sh-train-stop", ".sh-voice b"):
        place = now.locator(f"{part}:visible").first.bounding_box()
        assert place is not None
        assert place["y"] + place["height"] <= bar["y"], part
    # Pieces of the dose stand in one row, and are read as one line.
    dose = now.locator(".sh-dose:visible")
    tops = dose.locator("span").evaluate_all("all => all.map(one => one.offsetTop)")
    assert len(tops) == 4
    assert len(set(tops)) == 1
    assert " · " in (dose.text_content() or "")
