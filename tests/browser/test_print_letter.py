"""The same on US Letter: half a sheet for each card, two sheets for a session."""

from collections.abc import Callable
from io import BytesIO

import pytest
from pypdf import PdfReader

from phones import Gym, Opened
from printed import A4, HALF_LETTER, LETTER, columns_of, printed, sheets_of
from thorough import LONG

pytestmark = pytest.mark.browser

MINE = {
    "body": 84_000,
    "bases": {
        "trap-bar-1rm": 143_000,
        "box-squat-1rm": 109_000,
        "press-1rm": 52_000,
        "pull-up-system-1rm": 100_000,
    },
}
"""Grams."""


@pytest.fixture
def opened(phone: Callable[..., Opened], served_pounds: Gym) -> Opened:
    return phone(base=served_pounds.base)


@pytest.mark.parametrize("address", ["winter/brakes", "winter/hold", "winter/go", "room"])
def test_each_card_is_one_side_of_half_a_sheet(opened: Opened, address: str) -> None:
    page = opened.go(f"cards/{address}/")
    sheets, sizes = printed(page)
    assert sheets == page.locator(".sh-station").count() > 0
    assert [pytest.approx(size, abs=1) for size in sizes] == [HALF_LETTER]


def sessions(gym: Gym) -> list[str]:
    site = gym.programs.parents[1] / "site"
    found = site.glob("winter/week-*/*/index.html")
    return sorted(f"{path.parent.relative_to(site).as_posix()}/" for path in found)


@pytest.mark.parametrize("mine", [None, MINE], ids=["nobody's numbers", "my numbers"])
def test_a_session_is_two_sheets_at_most_and_no_exercise_is_torn(
    opened: Opened, served_pounds: Gym, mine: object
) -> None:
    asked = sessions(served_pounds)
    assert len(asked) > 20
    # The one with the longest tables is always among them.
    longest = next(address for address in asked if address.endswith("t-monday/"))
    opened.go("").evaluate("mine => mine && strengthHandbook.store.set('mine', mine)", mine)
    for address in {longest, *asked[:: 1 if LONG else 3]}:
        page = opened.go(address)
        if mine and page.locator(".sh-slot > .sh-dose-data").count():
            page.wait_for_selector(".sh-slot > .sh-mine")
        names = page.locator(".sh-slot > h2").all_inner_texts()
        pdf = page.pdf(prefer_css_page_size=True)
        sheets, sizes = sheets_of(pdf)
        assert [pytest.approx(size, abs=1) for size in sizes] == [LETTER], address
        assert sheets <= 2, address
        torn = {name: where for name, where in columns_of(pdf, names).items() if len(where) > 1}
        assert torn == {}, address


@pytest.mark.parametrize("paper", [A4, LETTER], ids=["A4", "Letter"])
def test_a_week_is_one_sheet(
    phone: Callable[..., Opened], opened: Opened, paper: tuple[float, float]
) -> None:
    found = phone() if paper == A4 else opened
    for week in range(1, 13):
        page = found.go(f"winter/week-{week:02}/")
        pdf = page.pdf(prefer_css_page_size=True)
        sheets, sizes = sheets_of(pdf)
        assert [pytest.approx(size, abs=1) for size in sizes] == [paper]
        assert sheets == 1, week
        said = " ".join(PdfReader(BytesIO(pdf)).pages[0].extract_text().split())
        for words in page.locator(".sh-card h2, .sh-list .sh-dose").all_inner_texts():
            assert " ".join(words.split()) in said, week


def test_no_sheet_of_an_exercise_ends_with_the_head_of_what_follows(opened: Opened) -> None:
    page = opened.go("exercises/trap-bar-deadlift/")
    heads = [" ".join(one.split()) for one in page.locator("dt, h2").all_inner_texts()]
    sheets = PdfReader(BytesIO(page.pdf(prefer_css_page_size=True))).pages
    assert len(sheets) > 1
    for sheet in sheets[:-1]:
        last = " ".join(sheet.extract_text().strip().splitlines()[-1].split())
        assert last not in heads


@pytest.mark.parametrize("address", ["winter/", "room/", "exercises/trap-bar-deadlift/"])
def test_all_other_pages_are_on_letter_too(opened: Opened, address: str) -> None:
    sheets, sizes = printed(opened.go(address))
    assert sheets <= 3
    assert [pytest.approx(size, abs=1) for size in sizes] == [LETTER]
