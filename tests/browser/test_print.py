"""What comes out of the printer: one A5 side for each card, two A4 sheets for a session."""

import gzip
import re
from collections.abc import Callable, Iterator
from typing import Any

import pytest
import yaml
from playwright.sync_api import Page

import demo
from phones import Opened, Served, serving

pytestmark = pytest.mark.browser

WAVES = ("brakes", "hold", "go")
A5 = (419.5, 595.3)
A4 = (595.3, 841.9)
TO_POINTS = 0.75

_PAGE = re.compile(rb"/Type\s*/Page\b")
_BOX = re.compile(rb"/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]")
# What has a fixed meaning in an exercise's file; everything else is words.
_NO_WORDS = {
    "name", "also", "pattern", "role", "sides", "lifts-from", "stations", "uses", "load", "dose",
    "setup-seconds", "hazards", "muscles", "alone", "to", "spotters", "word",
}  # fmt: skip


def printed(page: Page) -> tuple[int, set[tuple[float, float]]]:
    """Sheets of paper, and their sizes in points."""
    pdf = page.pdf(prefer_css_page_size=True)
    sizes = {(float(width), float(height)) for width, height in _BOX.findall(pdf)}
    return len(_PAGE.findall(pdf)), sizes


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
    return int(value) if value.isdigit() else value


@pytest.fixture(scope="module", params=[2, 20], ids=["twice the words", "the most words"])
def wordy(
    tmp_path_factory: pytest.TempPathFactory, request: pytest.FixtureRequest
) -> Iterator[str]:
    """Address of the demo with long texts in every exercise, and with its own address."""
    folder = tmp_path_factory.mktemp("wordy")
    root = demo.copy_demo(folder)
    demo.change(root / "mkdocs.yml", "docs_dir:", "site_url: https://example.org/a/\ndocs_dir:")
    for file in (root / "programs/exercises").glob("*.yml"):
        words = yaml.load(file.read_bytes(), yaml.BaseLoader)  # noqa: S506  # plain texts only
        text = yaml.safe_dump(longer(words, request.param), allow_unicode=True, sort_keys=False)
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


def test_a_session_is_two_sheets_of_a4_at_most(
    phone: Callable[..., Opened], served: Served
) -> None:
    opened = phone()
    sheets = {}
    for address in sessions(served):
        sheets[address], sizes = printed(opened.go(address))
        assert {round(width) for width, _ in sizes} == {round(A4[0])}, address
    assert len(sheets) > 20
    assert {address: number for address, number in sheets.items() if number > 2} == {}


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
    # Every page loads them, also on a phone that never prints.
    rules = demo.PACKAGE / "theme/assets/strength-handbook/print.css"
    shipped = re.sub(r"/\*.*?\*/", "", rules.read_text(encoding="utf-8"), flags=re.DOTALL)
    assert len(gzip.compress(shipped.encode())) < 1500
