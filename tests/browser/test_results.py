"""Results that are no load: kept, shown the next time, and compared where the noise is known."""

import json
from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import Page, Route, expect

from phones import Opened

pytestmark = pytest.mark.browser

TEST_DAY = "winter/test-day/"
KEY = "strength-handbook /gym/handbook/ by-hand"
HOLD = {"test": "Farmer hold, as long as you can", "exercise": "farmer-carry", "counted": "seconds"}


def with_tests(page: Page, *tests: dict[str, Any]) -> None:
    """Goals without a load, as the build writes them into the page of test day."""
    block = f'<script type="application/json" class="sh-results">{json.dumps(tests)}</script>'

    def add(route: Route) -> None:
        answer = route.fetch()
        text = answer.text().replace("<h2 id=next", block + "<h2 id=next", 1)
        text = text.replace('<h2 id="next"', block + '<h2 id="next"', 1)
        assert block in text
        route.fulfill(response=answer, body=text)

    page.route(lambda url: url.endswith(TEST_DAY), add)


def kept_before(page: Page, seconds: float) -> None:
    entry = {
        "day": "2026-01-12", "exercise": HOLD["exercise"], "load": None, "reps": None,
        "effort": None, "note": "", "test": HOLD["test"], "seconds": seconds,
    }  # fmt: skip
    text = json.dumps({"v": 1, "d": [entry]})
    page.evaluate("([key, text]) => localStorage.setItem(key, text)", [KEY, text])


def test_a_hold_is_kept_and_can_not_be_judged(phone: Callable[..., Opened]) -> None:
    opened = phone(worker=False)
    with_tests(opened.page, HOLD)
    page = opened.go(TEST_DAY)
    form = page.get_by_role("group", name=HOLD["test"])
    expect(form).to_contain_text("No result is kept yet.")
    kept_before(page, 60)
    page = opened.go(TEST_DAY)
    expect(form).to_contain_text("12 January 2026: 60 s.")
    field = form.get_by_label("Result, s")
    field.fill("a while")
    expect(form).to_contain_text("Write a number, such as 62.5.")
    field.fill("66,5")
    expect(form).to_contain_text("+10.8 %: can't tell.")
    form.get_by_role("button", name="Keep this result").tap()
    expect(form).to_contain_text("in my log.")
    found = json.loads(page.evaluate("key => localStorage.getItem(key)", KEY))["d"]
    assert [one["seconds"] for one in found] == [60, 66.5]
    page = opened.go("my-log/")
    expect(page.locator("#sh-log-list")).to_contain_text("66.5 s")
    assert opened.complaints == []


def test_a_change_is_judged_where_the_noise_is_known(phone: Callable[..., Opened]) -> None:
    opened = phone(worker=False)
    # 5 % of noise: from 7.5 % probably, from 14 % clearly.
    with_tests(opened.page, HOLD | {"limits": [7_500_000, 14_000_000]})
    kept_before(opened.go(TEST_DAY), 60)
    page = opened.go(TEST_DAY)
    form = page.get_by_role("group", name=HOLD["test"])
    for typed, says in (
        ("64", "+6.6 %: can't tell."), ("66", "+10.0 %: probably up."),
        ("70", "+16.6 %: clearly up."), ("50", "−16.6 %: clearly down."),
    ):  # fmt: skip
        form.get_by_label("Result, s").fill(typed)
        expect(form).to_contain_text(says)
