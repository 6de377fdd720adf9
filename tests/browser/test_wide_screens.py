"""On a tablet and a desktop what belongs together stands side by side, and is read from afar."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from phones import Served, keep_numbers, watched

pytestmark = pytest.mark.browser

WEEK = "winter/week-03/"
MINE = {"body": 80_000, "bases": {"box-squat-1rm": 150_000}}
"""In grams."""
TABLET_PX_PER_MM = 5.9
"""Of ten inches from corner to corner with 1280 x 800 CSS pixels: 1509 px on 254 mm."""
FAR_CAPITAL_MM = 14
"""At three metres: 16 minutes of arc, the least that ISO 9241-303:2011, 5.5.4, asks of a capital
(from memory)."""
CAPITAL = 0.7
"""Of a letter's size, for the usual fonts without serifs (common practice, no source)."""
LINE_PX = 850
"""About 90 letters of the page's size."""
SLIP = 2_000
"""Milliseconds after which a second press is no slip of the first, with some to spare."""
WIDE = {"tablet lying": (1280, 800), "tablet standing": (800, 1280), "desktop": (1680, 1000)}


@pytest.fixture(params=[*WIDE.values()], ids=[*WIDE])
def wide(browser: Browser, served: Served, request: pytest.FixtureRequest) -> Iterator[Page]:
    width, height = request.param
    context = browser.new_context(viewport={"width": width, "height": height})
    context.clock.install()
    opened = watched(context.new_page(), served.base)
    keep_numbers(opened, MINE)
    yield opened.go(WEEK + "b-descend/")
    context.close()


def boxes(page: Page, select: str) -> list[dict[str, float]]:
    found: list[dict[str, float]] = page.evaluate(
        """select => [...document.querySelectorAll(select)].filter(one => one.checkVisibility())
        .map(one => { const {x, y, right, bottom, width, height} = one.getBoundingClientRect();
          return {x, y, right, bottom, width, height}; })""",
        select,
    )
    return found


def apart(one: dict[str, float], other: dict[str, float]) -> bool:
    return (
        one["right"] <= other["x"] + 1 or other["right"] <= one["x"] + 1
        or one["bottom"] <= other["y"] + 1 or other["bottom"] <= one["y"] + 1
    )  # fmt: skip


def begin(page: Page) -> None:
    page.get_by_role("button", name="Train this session").click()
    for name in ("Warm-up done", "Steps done", "Set done"):
        page.clock.run_for(SLIP)
        page.get_by_role("button", name=name).click()


def test_what_is_done_in_turn_stands_side_by_side(wide: Page) -> None:
    size = wide.viewport_size
    assert size
    groups = wide.locator(".sh-paired").count()
    assert groups == 2
    for group in range(groups):
        first, *others = boxes(wide, f":nth-child({group + 1} of .sh-paired) > .sh-slot")
        assert others
        beside = [other["y"] == first["y"] for other in others]
        assert all(beside) if size["width"] > 960 else not any(beside)


def test_no_line_of_words_is_too_long_and_nothing_is_cut_off(wide: Page) -> None:
    for line in boxes(wide, ".sh-slot > .sh-words, .sh-box p, .md-content__inner > ol"):
        assert line["width"] <= LINE_PX
    wide.goto(wide.url.rsplit("/", 2)[0] + "/")
    assert len(boxes(wide, ".sh-card")) == 3
    assert wide.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_load_and_clock_are_read_from_three_metres(wide: Page) -> None:
    begin(wide)
    least = FAR_CAPITAL_MM * TABLET_PX_PER_MM / CAPITAL
    for far in (".sh-train-clock b", ".sh-train-now .sh-mine-large"):
        letters = wide.locator(far).first
        expect(letters).to_be_visible()
        assert letters.evaluate("one => parseFloat(getComputedStyle(one).fontSize)") >= least


def test_nothing_lies_over_anything_while_the_clock_runs(wide: Page) -> None:
    begin(wide)
    expect(wide.locator(".sh-train-clock")).to_be_visible()
    parts = boxes(wide, ".sh-train > :not(.sh-train-says, .sh-train-more)")
    assert len(parts) >= 4
    size = wide.viewport_size
    assert size
    for index, one in enumerate(parts):
        assert one["bottom"] <= size["height"] + 1, "it is seen without scrolling"
        for other in parts[:index]:
            assert apart(one, other)
