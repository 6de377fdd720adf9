"""A text that a coach writes is shown as it is written, whatever is in it: on pages, in the search,
in session mode, on cards and in the copy."""

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

import demo
from chromium import chromium
from marked_texts import MARK, injected, mark_texts, shown
from phones import serving
from strength_handbook.publish.file_copy.assembling import file_copy


@pytest.fixture(scope="module")
def marked(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, list[str]]:
    """The demo's site with HTML in every text field, and the texts that carry it."""
    root = demo.copy_demo(tmp_path_factory.mktemp("marked"))
    texts = mark_texts(root / "programs")
    return demo.build_site(root, root.parent / "site"), texts


def test_nearly_every_text_field_takes_it(marked: tuple[Path, list[str]]) -> None:
    _, texts = marked
    assert len(texts) > 1000
    assert {"The Wool Hall Strength Room", "Winter on the fell"} <= set(texts)


def test_no_page_has_an_element_from_a_text(marked: tuple[Path, list[str]]) -> None:
    site, _ = marked
    pages = {page: page.read_text(encoding="utf-8") for page in site.rglob("*.html")}
    assert {str(page): found for page, html in pages.items() if (found := injected(html))} == {}
    # The gym's name is in the head of each.
    assert [page for page, html in pages.items() if not shown(html)] == []


def test_no_entry_of_the_search_has_one(marked: tuple[Path, list[str]]) -> None:
    site, _ = marked
    entries = json.loads((site / "search/search_index.json").read_text(encoding="utf-8"))["docs"]
    assert any(MARK in entry["text"] for entry in entries)
    for entry in entries:
        assert injected(entry["title"]) == []
        assert injected(entry["text"]) == []


def test_no_page_of_the_copy_has_one(marked: tuple[Path, list[str]]) -> None:
    site, _ = marked
    pages = {name: text for name, text in file_copy(site).files.items() if name.endswith(".html")}
    assert {name: found for name, text in pages.items() if (found := injected(text.decode()))} == {}
    assert shown(pages["find/index.html"].decode())


@pytest.fixture
def page() -> Iterator[Page]:
    context = chromium().new_context(viewport={"width": 360, "height": 740}, has_touch=True)
    yield context.new_page()
    context.close()


@pytest.mark.browser
def test_no_script_makes_one(marked: tuple[Path, list[str]], page: Page) -> None:
    site, _ = marked
    failed: list[str] = []
    page.on("pageerror", lambda error: failed.append(str(error)))
    with serving(site.parent) as port:
        home = f"http://127.0.0.1:{port}/site/"
        page.goto(f"{home}?search")
        page.locator(".md-search__input").press_sequentially("deadlift", delay=50)
        expect(page.locator(".md-search-result__link").first).to_be_visible()
        expect(page.locator(f"[id={MARK}]")).to_have_count(0)
        page.goto(f"{home}my-numbers/")
        for field in page.locator("input[type=text], input:not([type])").all():
            if field.is_visible():
                field.fill("100")
        for address in sorted(one.parent.relative_to(site) for one in site.rglob("index.html")):
            page.goto(f"{home}{address.as_posix()}/")
            expect(page.locator(f"[id={MARK}]")).to_have_count(0)
        page.goto(f"{home}winter/week-06/a-lift/")
        page.get_by_role("button", name="Train this session").click()
        for _ in range(12):
            page.locator("dialog button:visible, [role=dialog] button:visible").last.click()
            expect(page.locator(f"[id={MARK}]")).to_have_count(0)
    assert failed == []
