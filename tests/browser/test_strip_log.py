"""A strip set in the log: every load with its repetitions, as tapped, and what they come to."""

import json
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from phones import Opened
from strip_gym import strip_gym
from taps import keep, kept, screen, tap

pytestmark = pytest.mark.browser

LOG = "log/spring/1/a-squat"
# Sixty, then plates off alone: 50 and 40.
LOADS = [60_000, 50_000, 40_000]


@pytest.fixture(scope="module")
def counted(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Two strip sets, six repetitions with each load."""
    dose = "2x strip 3 loads -20 %, 6 a load @ 60 kg"
    yield from strip_gym(tmp_path_factory, "strips-each", dose)


@pytest.fixture(scope="module")
def in_all(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Two strip sets, of which only the repetitions in all are asked."""
    dose = "2x strip 3 loads -20 % to 24 reps @ 60 kg"
    yield from strip_gym(tmp_path_factory, "strips-all", dose)


@pytest.fixture(scope="module")
def by_effort(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """A strip set of which no load is known."""
    yield from strip_gym(tmp_path_factory, "strips-effort", "1x strip 3 loads -20 %, RIR 1")


def again(page: Page) -> None:
    page.reload()
    tap(page, "Go on")


def begun(opened: Opened, base: str, *, loads: bool = True) -> Page:
    opened.base = base
    opened.page.clock.install(time="2027-01-18T18:00:00")
    page = opened.go("spring/week-01/a-squat/")
    keep(page, "mine", {"bases": {}})
    page.reload()
    if loads:
        expect(page.locator("article .sh-mine").first).to_be_visible()
    page.locator(".sh-train-open").tap()
    expect(screen(page)).to_contain_text("load 1 of 3")
    return page


def end(page: Page) -> None:
    tap(page, "Running late? Change the order?", "End the session here")


def sets(page: Page) -> list[Any]:
    found: list[Any] = kept(page, LOG)["slots"]["A"]["sets"]
    return found


def strip(*reps: int, loads: list[int] = LOADS) -> dict[str, Any]:
    return {"strips": [{"reps": n, "grams": g} for n, g in zip(reps, loads, strict=False)]}


def test_every_strip_is_kept_with_its_load(phone: Callable[..., Opened], counted: str) -> None:
    opened = phone()
    page = begun(opened, counted)
    # As planned, with a reload between two loads.
    tap(page, "Next load")
    again(page)
    tap(page, "Next load", "Set done")
    # The second one is counted load by load, and the page is read again in the middle.
    tap(page, "Next load", "Next load", "Fewer reps")
    expect(screen(page)).to_contain_text("Load 1 of 3, 60\u00a0kg")
    tap(page, "6")
    expect(screen(page)).to_contain_text("Load 2 of 3, 50\u00a0kg")
    tap(page, "5")
    expect(screen(page)).to_contain_text("Load 3 of 3, 40\u00a0kg")
    tap(page, "3")
    page.reload()
    tap(page, "Go on", "Keep it on this phone")
    assert sets(page) == [strip(6, 6, 6), strip(6, 5, 3)]
    log = opened.go("my-log/").locator("#sh-log-list > li")
    expect(log).to_contain_text(
        "60\u00a0kg × 6 → 50\u00a0kg × 6 → 40\u00a0kg × 6; "
        "60\u00a0kg × 6 → 50\u00a0kg × 5 → 40\u00a0kg × 3"
    )
    # By hand: 6 · (60 + 50 + 40) and 6 · 60 + 5 · 50 + 3 · 40; all at 60 would be 1920.
    expect(log).to_contain_text("tonnage 1630\u00a0kg")
    assert opened.complaints == []


def test_what_came_off_no_more_is_not_in_the_log(
    phone: Callable[..., Opened], counted: str
) -> None:
    page = begun(phone(), counted)
    tap(page, "Next load", "Set done")  # ended with the second load
    # Asked at once, of the load that was on: the first was done as planned.
    expect(screen(page)).to_contain_text("Load 2 of 3, 50\u00a0kg")
    tap(page, "4")
    again(page)
    expect(screen(page)).to_contain_text("Set 2 of 2, load 1 of 3")
    tap(page, "Set done", "I don’t know")  # ended with the first
    again(page)
    reps = screen(page).get_by_label("Repetitions, load by load")
    expect(reps).to_have_value("6 4 6")
    reps.fill("6 3 5")
    again(page)
    expect(reps).to_have_value("6 3 5")
    tap(page, "Keep it on this phone")
    assert sets(page) == [strip(6, 3), strip(5)]


def test_each_load_can_be_put_right(phone: Callable[..., Opened], counted: str) -> None:
    opened = phone()
    page = begun(opened, counted)
    tap(page, "Next load", "Next load", "Set done")
    end(page)
    # Another first load: 22.5 kg a side, from which single plates of 5 kg come off twice.
    screen(page).get_by_label("Load 1 of 3, kg with the bar").fill("65")
    page.reload()
    tap(page, "Go on")
    third = screen(page).get_by_label("Load 3 of 3, kg with the bar")
    third.fill("3O")
    tap(page, "Keep it on this phone")
    expect(third).to_have_attribute("aria-invalid", "true")
    assert kept(page, LOG) is None
    third.fill("42.5")
    tap(page, "Keep it on this phone")
    (one,) = sets(page)
    assert [load["grams"] for load in one["strips"]] == [65_000, 55_000, 42_500]
    page = opened.go("my-log/")
    page.get_by_role("button", name="Change").tap()
    page.locator("[name=load]").fill("67.5")
    page.get_by_role("button", name="Keep it").tap()
    expect(page.locator("#sh-log-list")).to_contain_text("67.5\u00a0kg × 6 → 55\u00a0kg × 6")
    assert opened.complaints == []


def test_repetitions_that_are_only_known_in_all(phone: Callable[..., Opened], in_all: str) -> None:
    opened = phone()
    page = begun(opened, in_all)
    tap(page, "Next load", "Next load", "Set done")
    tap(page, "Next load", "Next load", "How many?", "10", "I don’t know", "6")
    page.reload()
    tap(page, "Go on", "Keep it on this phone")
    first, second = sets(page)
    assert first == {"reps": 24, "strips": [{"grams": grams} for grams in LOADS]}
    assert second == {
        "strips": [{"reps": 10, "grams": 60_000}, {"grams": 50_000}, {"reps": 6, "grams": 40_000}]
    }
    entry = opened.go("my-log/").locator("#sh-log-list > li")
    expect(entry).to_contain_text("60\u00a0kg → 50\u00a0kg → 40\u00a0kg, 24 in all")
    # How many moved which load is not known.
    expect(entry).not_to_contain_text("tonnage")
    assert opened.complaints == []


def test_ended_early_each_load_of_it_is_asked_for(
    phone: Callable[..., Opened], in_all: str
) -> None:
    page = begun(phone(), in_all)
    tap(page, "Next load", "Set done")
    expect(screen(page)).to_contain_text("Load 1 of 3, 60\u00a0kg")
    tap(page, "12")
    expect(screen(page)).to_contain_text("Load 2 of 3, 50\u00a0kg")
    tap(page, "7")
    expect(screen(page)).to_contain_text("Set 2 of 2, load 1 of 3")
    end(page)
    tap(page, "Keep it on this phone")
    assert sets(page) == [strip(12, 7)]


def test_a_beginner_writes_each_load(phone: Callable[..., Opened], by_effort: str) -> None:
    page = begun(phone(), by_effort, loads=False)
    for number, load in enumerate(["30", "25", "20"]):
        expect(screen(page)).to_contain_text(f"load {number + 1} of 3")
        field = screen(page).get_by_label("I take, kg with the bar")
        expect(field).to_have_value("")
        field.fill(load)
        if number < 2:
            tap(page, "Next load")
        if number == 1:
            again(page)
    tap(page, "How many?", "8", "7", "6")
    tap(page, "Keep it on this phone")
    assert sets(page) == [strip(8, 7, 6, loads=[30_000, 25_000, 20_000])]


def test_a_saved_copy_brings_every_strip_back(phone: Callable[..., Opened], counted: str) -> None:
    page = begun(phone(), counted)
    tap(page, *["Next load", "Next load", "Set done"] * 2, "Keep it on this phone")
    log = kept(page, LOG)
    text = page.evaluate("strengthHandbook.store.exportText()")
    assert json.loads(text)["values"][LOG] == log
    page.evaluate("strengthHandbook.store.clear()")
    assert kept(page, LOG) is None
    assert page.evaluate("text => strengthHandbook.store.importText(text)", text) == ""
    assert kept(page, LOG) == log
    page.goto(page.url.partition("spring/")[0] + "my-numbers/")
    page.get_by_text("Show everything").tap()
    expect(page.locator("[data-sh-everything]")).to_contain_text(
        "A: 60\u00a0kg × 6 → 50\u00a0kg × 6 → 40\u00a0kg × 6, 60\u00a0kg × 6"
    )


def test_logs_from_before_strips_were_told_apart(
    phone: Callable[..., Opened], counted: str
) -> None:
    opened = phone()
    opened.base = counted
    page = opened.go("my-log/")
    old = {
        "form": 2, "day": "2027-01-11", "variant": None, "effort": 7, "note": "",
        "slots": {"A": {"exercise": "chair-squat", "door": None, "of": 2,
                        "sets": [{"grams": 60_000}, {"reps": 18, "grams": 60_000}]}},
    }  # fmt: skip
    keep(page, LOG, old)
    page.reload()
    entry = page.locator("#sh-log-list > li")
    expect(entry).to_contain_text("60\u00a0kg × 18")
    expect(entry).not_to_contain_text("tonnage")
    assert kept(page, LOG) == old


@pytest.mark.parametrize(
    ("slot", "grams"),
    [
        # 5 · 100 twice, one missed; 3 · (80 + 5) and 3 · (80 − 7) with the body; both hands.
        ({"times": 1, "sets": [{"reps": 5, "grams": 100_000}] * 2
          + [{"reps": 4, "grams": 105_000, "missed": True}]}, 1_000_000),
        ({"times": 1, "body": 80_000, "sets": [{"reps": 3, "grams": 5_000},
                                               {"reps": 3, "grams": -7_000}]}, 474_000),
        ({"times": 2, "sets": [{"reps": 10, "grams": 24_000}]}, 480_000),
        # Each strip at its own load: 8 · 60 + 6 · 50 + 4 · 40.
        ({"times": 1, "sets": [strip(8, 6, 4)]}, 940_000),
        ({"times": 1, "sets": [strip(8, 6, 4), {"reps": 18, "strips": [{"grams": 60_000}]}]}, None),
        ({"times": 1, "sets": [{"grams": 60_000}]}, None),
        ({"sets": [{"reps": 5, "grams": 60_000}]}, None),
        ({"times": 1, "sets": []}, None),
    ],
)  # fmt: skip
def test_what_all_of_it_comes_to(
    phone: Callable[..., Opened], counted: str, slot: dict[str, Any], grams: int | None
) -> None:
    opened = phone()
    opened.base = counted
    page = opened.go("my-log/")
    found = page.evaluate("slot => strengthHandbook.record.tonnage(slot) ?? null", slot)
    assert found == grams


@pytest.mark.parametrize(
    "strips", [[], [{"reps": -1}], [{"grams": 1.5}], "60 kg", [{"reps": 1}] * 21, [None]]
)
def test_strips_that_are_none(phone: Callable[..., Opened], counted: str, strips: object) -> None:
    opened = phone()
    opened.base = counted
    page = opened.go("my-log/")
    log = {
        "form": 2, "day": "2027-01-11", "variant": None, "effort": None, "note": "",
        "slots": {"A": {"exercise": None, "door": None, "of": 1, "sets": [{"strips": strips}]}},
    }  # fmt: skip
    assert page.evaluate("log => strengthHandbook.record.read(log)", log) is None
