"""What comes out of the printer: one A5 side for each card, two A4 sheets for a session.

`test_print_letter.py` asks the same of a gym that prints on US Letter.
"""

import gzip
import re
from collections.abc import Callable, Iterator
from io import BytesIO
from typing import Any

import pytest
import yaml
from playwright.sync_api import Page
from pypdf import PdfReader

import demo
from phones import Opened, Served, keep_numbers, serving
from printed import A4, A5, columns_of, printed, sheets_of
from thorough import LONG

pytestmark = pytest.mark.browser

WAVES = ("brakes", "hold", "go")
TO_POINTS = 0.75

# What has a fixed meaning in an exercise's file; everything else is words.
_NO_WORDS = {
    "name", "also", "pattern", "role", "sides", "lifts-from", "lifts", "stations", "uses", "load",
    "dose", "setup-seconds", "hazards", "muscles", "alone", "to", "spotters", "word", "held",
    "first-height", "figure",
}  # fmt: skip


def longer(value: Any, times: int) -> Any:
    """The same words over and over, up to the most that a text may have."""
    if isinstance(value, dict):
        return {k: plain(v) if k in _NO_WORDS else longer(v, times) for k, v in value.items()}
    if isinstance(value, list):
        return [longer(one, times) for one in value]
    return " ".join([value] * times)[:600].strip()


def plain(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: plain(one) for key, one in value.items()}
    if isinstance(value, list):
        return [plain(one) for one in value]
    return int(value) if value.lstrip("-").isdigit() else value


@pytest.fixture(
    scope="module",
    params=[(2, "A4"), (20, "A4"), (20, "letter"), *([(2, "letter")] if LONG else [])],
    ids=lambda one: f"{one[0]} times the words, {one[1]}",
)
def wordy(
    tmp_path_factory: pytest.TempPathFactory, request: pytest.FixtureRequest
) -> Iterator[str]:
    """Address of the demo with long texts in every exercise, and with its own address."""
    folder = tmp_path_factory.mktemp("wordy")
    root = demo.copy_demo(folder)
    demo.change(root / "mkdocs.yml", "docs_dir:", "site_url: https://example.org/a/\ndocs_dir:")
    times, paper = request.param
    demo.change(root / "programs/room.yml", "units: kg\n", f"units: kg\npaper: {paper}\n")
    for file in (root / "programs/exercises").glob("*.yml"):
        words = yaml.load(file.read_bytes(), yaml.BaseLoader)  # noqa: S506  # plain texts only
        text = yaml.safe_dump(longer(words, times), allow_unicode=True, sort_keys=False)
        file.write_text(text, encoding="utf-8")
    demo.build_site(root, folder / "site")
    with serving(folder / "site") as port:
        yield f"http://127.0.0.1:{port}/"


@pytest.mark.parametrize("address", [*(f"cards/winter/{wave}/" for wave in WAVES), "cards/room/"])
def test_each_card_is_one_side_of_a5(phone: Callable[..., Opened], address: str) -> None:
    page = phone(scripts=False).go(address)
    sheets, sizes = printed(page)
    assert sheets == page.locator(".sh-station").count()
    assert [pytest.approx(size, abs=1) for size in sizes] == [A5]


@pytest.mark.parametrize("wave", WAVES)
def test_each_card_with_long_texts_is_one_side_too(
    phone: Callable[..., Opened], wordy: str, wave: str
) -> None:
    opened = phone(scripts=False)
    opened.base = wordy
    page = opened.go(f"cards/winter/{wave}/")
    assert page.locator(".sh-station-code svg").count() == page.locator(".sh-station").count()
    assert printed(page)[0] == page.locator(".sh-station").count()


def test_only_the_ticked_cards_are_printed(phone: Callable[..., Opened]) -> None:
    page = phone(scripts=False).go("cards/winter/hold/")
    for card in ("Cable row", "Towel hang"):
        page.locator(".sh-station", has=page.get_by_role("heading", name=card)).get_by_role(
            "checkbox"
        ).check()
    assert printed(page)[0] == 2


@pytest.mark.parametrize("wave", WAVES)
def test_a_card_is_read_from_a_step_away(phone: Callable[..., Opened], wave: str) -> None:
    page = phone(scripts=False).go(f"cards/winter/{wave}/")
    page.emulate_media(media="print")
    sizes: dict[str, list[float]] = page.evaluate(
        """() => Object.fromEntries(['h2', '.sh-dose', '.sh-station-dose > span',
            '.sh-station-always', 'li'].map(what => [what,
            [...document.querySelectorAll('.sh-station ' + what)].map(
                e => parseFloat(getComputedStyle(e).fontSize))]))"""
    )
    points = {what: min(found) * TO_POINTS + 0.01 for what, found in sizes.items()}
    assert points["h2"] >= 24
    assert points[".sh-dose"] >= 18
    assert points[".sh-station-dose > span"] >= 18
    assert points[".sh-station-always"] >= 18
    assert points["li"] >= 6.5
    # The largest is what is aimed at, and cards with few words reach it.
    assert max(sizes[".sh-dose"]) * TO_POINTS <= 36.01


def sessions(served: Served) -> list[str]:
    found = served.folder.glob("winter/week-*/*/index.html")
    return sorted(f"{path.parent.relative_to(served.folder).as_posix()}/" for path in found)


MINE = {
    "body": 82_500,
    "bases": {
        "trap-bar-1rm": 150_000,
        "box-squat-1rm": 110_000,
        "press-1rm": 55_000,
        "pull-up-system-1rm": 100_000,
    },
}


@pytest.mark.parametrize("mine", [None, MINE], ids=["nobody's numbers", "my numbers"])
def test_a_session_is_two_sheets_of_a4_at_most_and_no_exercise_is_torn(
    phone: Callable[..., Opened], served: Served, mine: Any
) -> None:
    """Everything of an exercise stands in one column of one sheet, with its boxes."""
    opened = phone()
    keep_numbers(opened, mine)
    asked = sessions(served)
    assert len(asked) > 20
    for address in asked[:: 1 if mine is None or LONG else 5]:
        page = read_again(opened, address, own=mine is not None)
        names = page.locator(".sh-slot > h2").all_inner_texts()
        pdf = page.pdf(prefer_css_page_size=True)
        sheets, sizes = sheets_of(pdf)
        assert [pytest.approx(size, abs=1) for size in sizes] == [A4], address
        assert sheets <= 2, address
        torn = {name: where for name, where in columns_of(pdf, names).items() if len(where) > 1}
        assert torn == {}, address


def read_again(opened: Opened, address: str, *, own: bool) -> Page:
    """A session's page, with one's own loads on it where there are numbers."""
    page = opened.go(address)
    if own and page.locator(".sh-slot > .sh-dose-data").count():
        page.wait_for_selector(".sh-slot > .sh-mine")
    return page


def test_there_is_a_box_for_every_set(phone: Callable[..., Opened]) -> None:
    page = phone(width=720).go("winter/week-03/a-lift/")
    boxes = page.locator(".sh-write")
    assert not boxes.locator("visible=true").count()
    page.emulate_media(media="print")
    found = {
        slot.get_attribute("data-order"): slot.locator(".sh-write").inner_text()
        for slot in page.locator(".sh-slot").all()
    }
    said = {order: " ".join(text.split()) for order, text in found.items()}
    assert said["A"] == "Done, kg with the bar × reps 1 2 3 4"
    assert said["B1"] == "Done, kg added (+) or taken off (−) × reps 1 2 3 4"
    assert said["D2"] == "Done, kg, the plate × s 1 2 3"
    assert said["E"] == "Done, kg in the hand × m 1 2 3"
    rooms = [one.bounding_box() for one in page.locator(".sh-write span").all()]
    # Millimetres of a hand-written number: 5 high; common practice, no source.
    assert all(one and one["height"] >= 5 * 96 / 25.4 and one["width"] >= 30 for one in rooms)


def test_my_loads_stand_on_paper_in_place_of_the_tables(phone: Callable[..., Opened]) -> None:
    opened = phone(width=720)
    keep_numbers(opened, MINE)
    page = read_again(opened, "winter/week-03/a-lift/", own=True)
    said = page.locator(".sh-slot[data-order=A] > .sh-mine p").first.inner_text()
    # 78 % of 150 is 117; the plates make 115.
    assert said == "Mine: 115\u00a0kg = trap bar 25 + 25 · 20 a side"
    pdf = PdfReader(BytesIO(page.pdf(prefer_css_page_size=True)))
    text = " ".join(" ".join(one.extract_text() for one in pdf.pages).split())
    assert " ".join(said.split()) in text
    assert "Trap-bar deadlift, best single, 78 %" not in text
    assert "My steps" not in text
    # Without a number for it the table stays.
    keep_numbers(opened, MINE | {"bases": {}})
    page = read_again(opened, "winter/week-03/a-lift/", own=True)
    pdf = PdfReader(BytesIO(page.pdf(prefer_css_page_size=True)))
    text = " ".join(" ".join(one.extract_text() for one in pdf.pages).split())
    assert "Trap-bar deadlift, best single, 78 %" in text


@pytest.mark.parametrize(
    ("address", "order", "caption"),
    [
        ("winter/week-12/t-monday/", "A", "Steps and attempts, kg"),
        ("winter/week-12/t-monday/", "B", "Best single at −10 kg"),
        ("winter/week-12/t-thursday/", "B", "Steps and attempts, kg"),
        ("winter/week-05/b-descend/", "C", "Each load as a share of the first"),
    ],
)
def test_what_a_day_lifts_stands_on_paper(
    phone: Callable[..., Opened], address: str, order: str, caption: str
) -> None:
    """Attempts and strips: the sheet says “below”, and there they are."""
    page = phone(width=720).go(address)
    page.emulate_media(media="print")
    slot = page.locator(f".sh-slot[data-order={order}]")
    table = slot.locator("table", has=page.get_by_text(caption))
    assert table.is_visible()
    assert table.locator("tbody tr").locator("visible=true").count() >= 3
    assert not slot.get_by_text("Warm-up steps").is_visible()
    assert not slot.get_by_text("Instead", exact=True).is_visible()


def test_columns_of_several_tables_stand_below_their_one_head(phone: Callable[..., Opened]) -> None:
    page = phone(width=720).go("winter/week-12/t-monday/")
    page.emulate_media(media="print")
    lefts: list[list[int]] = page.evaluate(
        """() => [...document.querySelectorAll('.sh-slot[data-order=B] .sh-load table tr')].map(
            row => [...row.cells].map(cell => Math.round(cell.getBoundingClientRect().left))
        ).filter(row => row[1] > 0)"""  # what is not shown is at 0
    )
    assert len(lefts) > 12
    assert [row for row in lefts if row != lefts[0]] == []


def test_a_session_on_paper_is_the_sheet_and_nothing_else(phone: Callable[..., Opened]) -> None:
    page = phone(width=720).go("winter/week-03/a-lift/")
    page.emulate_media(media="print")
    for gone in (".md-header", ".md-path", ".sh-jump", ".sh-menu", ".sh-working"):
        assert not page.locator(gone).locator("visible=true").count(), gone
    tables = page.locator(".sh-slot table")
    assert tables.count() >= 3
    rows = tables.first.locator("tbody tr")
    assert rows.locator("visible=true").count() == (rows.count() + 1) // 2
    cut = page.evaluate(
        """() => [...document.querySelectorAll('.sh-slot table')].filter(
            t => t.scrollWidth > t.parentElement.clientWidth + 1).length"""
    )
    assert cut == 0


def test_an_exercise_is_three_sheets_of_a4_at_most(phone: Callable[..., Opened]) -> None:
    opened = phone()
    sheets = {key: printed(opened.go(f"exercises/{key}/"))[0] for key in demo.EXERCISES}
    assert {key: number for key, number in sheets.items() if number > 3} == {}


def test_rules_for_paper_are_small() -> None:
    # Every page loads them, also on a phone that never prints. A second paper takes 80 of
    # them, a week on one sheet 35, columns below their one head 10.
    rules = demo.PACKAGE / "theme/assets/strength-handbook/print.css"
    shipped = re.sub(r"/\*.*?\*/", "", rules.read_text(encoding="utf-8"), flags=re.DOTALL)
    assert len(gzip.compress(shipped.encode())) < 2120
