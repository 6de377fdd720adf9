"""Session mode at a strip set on a bar: the load that is on now, plates off one step at a time."""

from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path

import pytest
from playwright.sync_api import expect

import demo
from once import once
from phones import Opened, serving
from taps import screen, tap

pytestmark = pytest.mark.browser

LIFT = "winter/week-06/a-lift/"
BEST = 150_000
DOSE = "6: 3x3 @ 82.5 %, tempo 2-0-X-0, pause 2 s at 5 cm off the floor, RIR 2"
STRIPS = "6: 1x strip 3 loads -20 % @ 82.5 %, RIR 1"


def with_strips(to: Path) -> None:
    """The demo, where one week's deadlift is done in strips."""
    root = demo.copy_demo(to)
    demo.change(root / "programs/winter/2-hold.yml", DOSE, STRIPS)
    demo.build_site(root, to / "site")


@pytest.fixture(scope="module")
def stripped(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    folder = once(tmp_path_factory, "stripped", with_strips)
    with serving(folder / "site") as port:
        yield f"http://127.0.0.1:{port}/"


def test_plates_come_off_step_by_step_with_a_reload_in_the_middle(
    phone: Callable[..., Opened], stripped: str
) -> None:
    opened = phone()
    opened.base = stripped
    opened.page.clock.install(time="2027-01-18T18:00:00")
    page = opened.go(LIFT)
    keep = "mine => strengthHandbook.store.set('mine', mine)"
    page.evaluate(keep, {"bases": {"trap-bar-1rm": BEST}})
    page.reload()
    expect(page.locator("article .sh-mine").first).to_be_visible()
    page.locator(".sh-train-open").tap()
    tap(page, "Warm-up done")
    tap(page, "Running late? Change the order?")
    screen(page).get_by_role("button", name="Go here: B").tap()
    tap(page, "Steps done")
    big = screen(page).locator(".sh-train-now .sh-mine b").first
    bar = screen(page).locator(".sh-train-now .sh-mine-bar").first
    seen: list[tuple[float, list[float]]] = []
    for load in range(3):
        expect(screen(page)).to_contain_text(f"load {load + 1} of 3")
        plates = bar.locator("i").evaluate_all("all => all.map(one => +one.dataset.kg)")
        seen.append((float(big.inner_text().split()[0]), plates))
        if load == 1:
            page.reload()
            tap(page, "Go on")
            expect(big).to_contain_text(f"{seen[-1][0]:g}")
        tap(page, "Next load" if load < 2 else "Set done")
    # By hand: the trap bar has 25 kg; what is on weighs what the figure says,
    assert [grams for grams, _ in seen] == [25 + 2 * sum(plates) for _, plates in seen]
    # and every load is the one before without its outermost plates.
    for (before, inner), (after, left) in pairwise(seen):
        assert left == inner[: len(left)]
        # A fifth less, as near as plates allow; the program's own limits are five points.
        assert 0.75 <= after / before <= 0.85
    tap(page, "Running late? Change the order?", "End the session here", "Keep it on this phone")
    kept = page.evaluate("strengthHandbook.store.get('log/winter/6/a-lift')")
    # One set, with every load that was seen; nobody counted how often.
    assert kept["slots"]["B"]["sets"] == [
        {"strips": [{"grams": round(load * 1000)} for load, _ in seen]}
    ]
    assert opened.complaints == []
