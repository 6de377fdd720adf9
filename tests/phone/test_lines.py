"""What follows from a load, line by line, in a real browser."""

from typing import Any

import pytest

from tools_page import tools_page

pytestmark = pytest.mark.browser

LISTS: dict[str, Any] = {
    "units": "kg",
    "doors": [],
    "scales": {
        "bar": {
            "kind": "bar",
            "on": "bar 20",
            "own": 20_000,
            "round": "down",
            "parts": [10_000],
            "steps": [[20_000], [40_000, 0]],
            "ramps": {"40000": [[20_000, 5, []], [40_000, 1, [0]]]},
        }
    },
}
ME = {"bases": {"best": 40_000}}


def lines(grams: int | None) -> list[str]:
    """The lines of a load of a best of 40 kg, worked up to all of it."""
    load: dict[str, Any] = {
        "wanted": 0,
        "grams": grams,
        "parts": [],
        "help": 0,
        "band": "",
        "reference": 40_000,
    }
    with tools_page("mine-lines") as page:
        found: list[str] = page.evaluate(
            """([load, me, lists]) => {
                const recipe = { b: 'best', s: 'bar', r: 100000000 };
                const today = { ...load, scale: lists.scales.bar, body: 0n };
                return strengthHandbook['mine-lines'].following(recipe, today, me, lists)
                    .map(line => line.textContent.replaceAll('\u00a0', ' ')); }""",
            [load, ME, LISTS],
        )
    return found


def test_plates_come_off_down_to_the_load_after_the_top() -> None:
    assert "After a top of 40 kg: 10 kg less on each side" in lines(20_000)


def test_to_a_load_that_can_t_be_put_on_nothing_comes_off() -> None:
    found = lines(None)
    assert found[0].startswith("Warm-up: ")
    assert len(found) == 1
