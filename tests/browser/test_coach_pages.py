"""The coach's pages in a browser: on a phone, to screen readers, and on one sheet of paper."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Literal

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser

import books
import demo
from phones import serving
from strength_handbook.model.paper import A4, LETTER, Paper
from strength_handbook.pages.coach.sheet import sheet_page
from strength_handbook.plan.work_out import work_out
from strength_handbook.publish.touch_up import paper_class
from strength_handbook.reading.book import read_book

pytestmark = pytest.mark.browser

THEME = demo.PACKAGE / "theme/assets/strength-handbook"
LETTERS = b"/Type /Font"
"""In a PDF of a sheet that something is written on (ISO 32000-1, 9.5)."""

A4_ACROSS = (842, 595)
"""A4 in points: 297 × 210 mm at 72 to the inch (ISO 216)."""
LETTER_ACROSS = (792, 612)
"""Letter in points: 11 × 8.5 in (ANSI/ASME Y14.1, size A)."""


@pytest.fixture(scope="module")
def drafts(demo_drafts: Path) -> Iterator[tuple[str, list[str]]]:
    """Address of the demo as `mkdocs serve` shows it, and those of the coach's pages."""
    found = sorted(
        path.parent.relative_to(demo_drafts).as_posix() + "/"
        for path in demo_drafts.glob("coach/**/*.html")
    )
    with serving(demo_drafts) as port:
        yield f"http://127.0.0.1:{port}/", found


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_and_nothing_scrolls_sideways(
    browser: Browser, drafts: tuple[str, list[str]], scheme: Literal["light", "dark"]
) -> None:
    base, addresses = drafts
    assert len(addresses) > 10
    # 320 px is the narrowest that WCAG 2.2 (1.4.10, reflow) asks for; tables may scroll by
    # themselves.
    context = browser.new_context(viewport={"width": 320, "height": 740}, color_scheme=scheme)
    page = context.new_page()
    wrong = []
    for address in addresses:
        page.goto(base + address)
        page.evaluate("document.querySelectorAll('details').forEach(d => { d.open = true })")
        if page.evaluate("document.documentElement.scrollWidth > window.innerWidth"):
            wrong.append(f"{address} is too wide")
        found = Axe().run(page)
        if found.violations_count:
            wrong.append(f"{address}: {found.generate_report()}")
    context.close()
    assert wrong == []


def test_the_demo_is_on_one_sheet(browser: Browser, drafts: tuple[str, list[str]]) -> None:
    base, _ = drafts
    page = browser.new_page()
    page.goto(base + "coach/winter/one-page/")
    sheets = page_sizes(page.pdf(prefer_css_page_size=True))
    text = page.inner_text(".sh-sheet")
    page.close()
    assert sheets == [A4_ACROSS]
    assert "Week 12" in text


def test_the_whole_program_is_seen_at_once_on_a_wide_window(
    browser: Browser, drafts: tuple[str, list[str]]
) -> None:
    base, _ = drafts
    page = browser.new_page(viewport={"width": 1280, "height": 800})
    page.goto(base + "coach/winter/one-page/")
    table = page.locator(".sh-sheet-table").bounding_box()
    hint = page.locator(".sh-sideways")
    assert table is not None
    assert table["x"] + table["width"] <= 1280
    assert not page.evaluate(
        "(e => e.scrollWidth > e.clientWidth)(document.querySelector('.sh-wide'))"
    )
    assert not hint.is_visible()
    page.set_viewport_size({"width": 360, "height": 800})
    assert hint.is_visible()
    page.close()


def test_all_five_doors_are_seen_on_a_phone(
    browser: Browser, drafts: tuple[str, list[str]]
) -> None:
    base, _ = drafts
    page = browser.new_page(viewport={"width": 360, "height": 800})
    page.goto(base + "coach/substitutes/")
    cells = page.locator(".sh-matrix tbody tr").first.locator("td")
    boxes = [box for box in (cell.bounding_box() for cell in cells.all()) if box]
    assert len(boxes) == 5
    assert all(box["x"] >= 0 and box["x"] + box["width"] <= 360 for box in boxes)
    assert [box["y"] for box in boxes] == sorted({box["y"] for box in boxes})
    page.close()


def test_no_print_ends_with_an_empty_sheet(browser: Browser, drafts: tuple[str, list[str]]) -> None:
    base, _ = drafts
    page = browser.new_page()
    for address in ("coach/", "coach/findings/", "coach/winter/handover/"):
        page.goto(base + address)
        sheets = len(page_sizes(page.pdf(prefer_css_page_size=True)))
        last = page.pdf(prefer_css_page_size=True, page_ranges=str(sheets))
        assert LETTERS in last, address
    page.set_content("<p style='break-after: page'>The first</p><div style='height: 1px'></div>")
    assert LETTERS not in page.pdf(page_ranges="2")  # or nothing above would be shown
    page.close()


@pytest.mark.parametrize(
    ("weeks", "sessions", "slots", "sheets"),
    [(1, 1, 1, 1), (4, 3, 8, 1), (12, 2, 7, 1), (16, 4, 6, 1)],
)
def test_other_programs_are_on_one_sheet_too(
    browser: Browser, tmp_path: Path, weeks: int, sessions: int, slots: int, sheets: int
) -> None:
    root = folder(tmp_path, weeks, sessions, slots)
    assert printed(browser, root) == [A4_ACROSS] * sheets
    assert printed(browser, root, LETTER) == [LETTER_ACROSS] * sheets


def test_a_program_for_which_one_sheet_is_too_small_has_one_for_each_wave(
    browser: Browser, tmp_path: Path
) -> None:
    root = folder(tmp_path, 8, 3, 10)
    wave = root / "plan/1-first.yml"
    text = wave.read_text(encoding="utf-8")
    later = re.sub(r'"([1-8])": "', lambda week: f'"{int(week[1]) + 8}": "', text)
    (root / "plan/2-second.yml").write_text(
        later.replace('"1-8"', '"9-16"').replace("First", "Second"), encoding="utf-8"
    )
    assert printed(browser, root) == [A4_ACROSS] * 2


def folder(root: Path, weeks: int, sessions: int, slots: int) -> Path:
    """A program of one wave with so many weeks, sessions and slots in each."""
    every = {
        f"s{session}": [books.slot(letter, "lift", doses(weeks), base="best") for letter in letters]
        for session, letters in ((one, "ABCDEFGHIJKLMNOP"[:slots]) for one in range(sessions))
    }
    return books.write_files(
        root / "gym",
        exercises={"lift": books.exercise("Rear-foot-elevated split squat")},
        sessions=every,
        bases={"best": books.base()},
    )


def doses(weeks: int) -> dict[str, str]:
    """A dose for each week; only the rest is always the same."""
    return {
        f"{week}": f"4x{week % 5 + 3} @ 72.5 %, tempo {week % 3 + 2}-0-1-0, "
        f"RIR {week % 4}, rest 2:00"
        for week in range(1, weeks + 1)
    }


def printed(browser: Browser, root: Path, paper: Paper = A4) -> list[tuple[int, int]]:
    """Sizes of the sheets of the first program on one page, with our own style alone."""
    reading = read_book(root)
    assert reading.book is not None, reading.problems
    html = sheet_page(work_out(reading.book).programs[0], paper).html
    names = ("handbook", "coach", "print")
    css = "".join((THEME / f"{name}.css").read_text("utf-8") for name in names)
    page = browser.new_page()
    page.set_content(
        f"<!doctype html><style>{css}</style><style>body {{ font-family: sans-serif; margin: 0 }}"
        f'</style><body{paper_class(paper)}><div class="md-typeset">{html}</div>'
    )
    sizes = page_sizes(page.pdf(prefer_css_page_size=True))
    page.close()
    return sizes


def page_sizes(pdf: bytes) -> list[tuple[int, int]]:
    """Width and height of each page of a PDF, in points."""
    pages = re.findall(rb"/Type /Page\b[^s].*?/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", pdf, re.DOTALL)
    return [(round(float(width)), round(float(height))) for width, height in pages]
