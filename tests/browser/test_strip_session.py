"""A strip set in session mode: what is on now is the biggest figure, and the drawing beside it."""

import json
from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Page, expect

from phones import Opened
from strip_gym import strip_gym

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def strips(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Address of a small handbook whose first session is one strip set on a bar."""
    yield from strip_gym(tmp_path_factory, "strips", "strip 3 loads -20 % @ 60 kg")


def stack(page: Page) -> list[str | None]:
    """The plates in the drawing that is seen, inner first."""
    drawn = page.get_by_role("dialog").locator(".sh-train-now .sh-mine-bar:visible")
    assert drawn.count() == 1
    return [one.get_attribute("data-kg") for one in drawn.locator("i").all()]


def test_the_load_that_is_on_now_is_the_big_one(phone: Callable[..., Opened], strips: str) -> None:
    opened = phone()
    opened.base = strips
    page = opened.page
    page.clock.install()
    opened.go("spring/week-01/a-squat/")
    text = json.dumps({"v": 1, "d": {"bases": {}}})
    page.evaluate("text => localStorage.setItem('strength-handbook / mine', text)", text)
    page.reload()
    expect(page.locator("article .sh-mine").first).to_be_visible()
    page.locator(".sh-train-open").tap()
    screen = page.get_by_role("dialog")
    big = screen.locator(".sh-train-now > .sh-mine b:visible").first
    # Sixty, then a fifth off twice: 48 and 40 are aimed at, from single plates 50 and 40.
    for place, (load, plates) in enumerate(
        [("60\u00a0kg", ["10", "5", "5"]), ("50\u00a0kg", ["10", "5"]), ("40\u00a0kg", ["10"])]
    ):
        if place:
            page.clock.run_for(2_000)
            screen.locator(".sh-train-main").tap()
        # Waited for, the first as well: the screen opens when its script is there.
        expect(screen.get_by_text(f"load {place + 1} of 3").first).to_be_visible()
        expect(big).to_have_text(load)
        assert stack(page) == plates
        # Nothing else on the screen is as large as it.
        sizes = screen.locator(".sh-train-now b:visible").evaluate_all(
            "all => all.map(one => [parseFloat(getComputedStyle(one).fontSize), one.textContent])"
        )
        assert load in [words for size, words in sizes if size == max(sizes)[0]]
    assert opened.complaints == []
