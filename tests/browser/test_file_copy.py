"""A copy opens from a file on a phone without a network: its pages, its search, its numbers."""

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Literal

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Page, expect

from phones import Opened, Served, watched
from strength_handbook.publish.file_copy.assembling import file_copy

pytestmark = pytest.mark.browser

OpenCopy = Callable[..., Opened]


@pytest.fixture(scope="module")
def folder(served: Served, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo's copy, in a folder with a space and an accent in its name."""
    out = tmp_path_factory.mktemp("copies") / "The gym's élan"
    for address, content in file_copy(served.folder).files.items():
        path = out / address
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    return out


@pytest.fixture
def open_copy(browser: Browser, folder: Path) -> Iterator[OpenCopy]:
    """Opens a phone on the copy, without a network: ``open_copy(scripts=False)``."""
    contexts: list[BrowserContext] = []

    def open_phone(
        *, scheme: Literal["light", "dark"] = "light", scripts: bool = True, script: str = ""
    ) -> Opened:
        context = browser.new_context(
            viewport={"width": 360, "height": 740},
            color_scheme=scheme,
            java_script_enabled=scripts,
            has_touch=True,
            offline=True,
        )
        contexts.append(context)
        if script:
            context.add_init_script(script)
        return watched(context.new_page(), f"{folder.as_uri()}/")

    yield open_phone
    for context in contexts:
        context.close()


def heading(page: Page, text: str) -> None:
    expect(page.get_by_role("heading", level=1)).to_contain_text(text)


def nothing_left_the_folder(opened: Opened) -> None:
    assert opened.requests
    assert [url for url in opened.requests if not url.startswith(opened.base)] == []
    assert opened.complaints == []


@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no scripts"])
def test_from_home_to_a_load(open_copy: OpenCopy, scripts: bool) -> None:  # noqa: FBT001
    opened = open_copy(scripts=scripts)
    page = opened.go("index.html")
    expect(
        page.get_by_text("It does not update itself. Remove it after 2027-03-31.")
    ).to_be_visible()
    page.get_by_role("link", name="Week 3, Lift").click()
    heading(page, "Week 3: Lift")
    page.locator("#slot-a a").click()
    heading(page, "Trap-bar deadlift")
    assert page.url.endswith("exercises/trap-bar-deadlift/index.html#winter-week-03-a-lift-a")
    if scripts:
        expect(page.locator(".sh-use-title")).to_have_text("Week 3, Lift")
    # No other loads stand there: the table is open, also where nothing can be tapped open.
    expect(page.locator("#by-body-weight ~ details table").first).to_be_visible()
    page.locator(".md-path a").first.click()
    heading(page, "The Wool Hall")
    nothing_left_the_folder(opened)


@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no scripts"])
@pytest.mark.parametrize("start", ["index.html", "winter/week-03/a-lift/index.html"])
def test_the_search_button_leads_to_the_list(
    open_copy: OpenCopy,
    start: str,
    scripts: bool,  # noqa: FBT001
) -> None:
    opened = open_copy(scripts=scripts)
    page = opened.go(start)
    page.locator(".md-header a[href$='find/index.html']").click()
    heading(page, "Find a page")
    page.get_by_role("link", name="Nordic lower", exact=True).first.click()
    heading(page, "Nordic lower")
    nothing_left_the_folder(opened)


def test_an_exercise_is_found_by_words_typed(open_copy: OpenCopy) -> None:
    opened = open_copy()
    page = opened.go("find/index.html")
    field = page.get_by_label("Words, or how they begin")
    expect(field).to_be_focused()
    status = page.locator("form [role=status]")
    page.keyboard.type("DÓWN ste")
    expect(page.locator(".sh-found a").first).to_have_text("Step-down")
    expect(status).to_have_text(f"{page.locator('.sh-found > li').count()} found")
    expect(page.locator("[data-sh-all]")).to_be_hidden()
    page.keyboard.press("Enter")
    expect(page.locator(".sh-found a").first).to_be_focused()
    page.keyboard.press("Enter")
    heading(page, "Step-down")
    page.go_back()
    expect(page.locator(".sh-found a").first).to_have_text("Step-down")
    nothing_left_the_folder(opened)


@pytest.mark.parametrize(
    ("typed", "first"),
    [
        ("copenh", "Copenhagen side plank"),
        ("pullup", "Neutral-grip pull-up"),
        ("fall kneeling", "Nordic lower"),  # its other name
        ("deload", "Deload"),
        ("week 3 lift", "Week 3: Lift"),
        ("red emergency", "Red: call the emergency number"),
        ("plank side", "Copenhagen side plank"),
    ],
)
def test_best_titles_come_first(open_copy: OpenCopy, typed: str, first: str) -> None:
    page = open_copy().go("find/index.html")
    page.locator("#sh-find").fill(typed)
    expect(page.locator(".sh-found a").first).to_have_text(first)


def test_a_session_is_found_by_its_exercise(open_copy: OpenCopy) -> None:
    page = open_copy().go("find/index.html")
    page.locator("#sh-find").fill("nordic lift week")
    expect(page.locator(".sh-found a").first).to_have_text("Week 1: Lift")
    expect(page.locator(".sh-found li").first).to_contain_text("Winter on the fell")


def test_what_is_not_there_is_said_and_everything_stays(open_copy: OpenCopy) -> None:
    page = open_copy().go("find/index.html")
    page.locator("#sh-find").fill("nordic zither")
    expect(page.locator("form [role=status]")).to_contain_text("Nothing found")
    expect(page.locator("[data-sh-all]")).to_be_visible()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("typed", ["", "press"])
def test_axe_finds_nothing(open_copy: OpenCopy, scheme: str, typed: str) -> None:
    page = open_copy(scheme=scheme).go("find/index.html")
    page.locator("#sh-find").fill(typed)
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()
    assert not page.evaluate("document.documentElement.scrollWidth > window.innerWidth")
    small = page.evaluate(
        """() => [...document.querySelectorAll('article a')].filter(
            e => { const b = e.getBoundingClientRect(); return b.height && b.height < 24; }
        ).map(e => e.textContent)"""
    )
    assert small == []


def test_numbers_typed_once_are_on_every_page(open_copy: OpenCopy) -> None:
    opened = open_copy()
    page = opened.go("my-numbers/index.html")
    page.get_by_label("Body weight, kg").fill("80")
    page.get_by_label("Trap-bar deadlift, best single, kg").fill("140")
    page.get_by_role("button", name="Keep these numbers").tap()
    opened.go("winter/week-03/a-lift/index.html")
    # 78 % of 140 is 109.2; the plates at one rack make 107.5.
    expect(page.locator("article.sh-slot").first).to_contain_text("107.5 kg = trap bar 25 +")
    opened.go("my-numbers/index.html")
    page.wait_for_timeout(300)
    expect(page.locator("#sh-apart")).to_have_count(0)
    nothing_left_the_folder(opened)


def test_a_browser_that_keeps_pages_apart_says_so(open_copy: OpenCopy) -> None:
    # As in browsers where every file is a place of its own.
    page = open_copy(script="if (parent !== window) localStorage.clear();").go("index.html")
    expect(page.locator("#sh-apart")).to_contain_text("for one page only")


def test_links_made_by_scripts_lead_to_files(open_copy: OpenCopy) -> None:
    opened = open_copy()
    opened.page.clock.install(time="2026-11-30T12:00:00")
    page = opened.go("index.html")
    page.evaluate("strengthHandbook.store.set('start/winter', '2026-11-16')")
    page = opened.go("index.html")
    today = page.locator(".sh-weeks-list [aria-current=date]")
    expect(today.first).to_have_text("Week 3")
    page.locator(".sh-go").click()
    heading(page, "Week 3: Lift")
    page = opened.go("index.html")
    today.first.focus()
    page.keyboard.press("Enter")
    heading(page, "Week 3")
    nothing_left_the_folder(opened)


def test_every_page_opens_and_complains_about_nothing(open_copy: OpenCopy, folder: Path) -> None:
    opened = open_copy()
    for path in sorted(folder.rglob("index.html")):
        page = opened.go(path.relative_to(folder).as_posix())
        assert page.locator("h1").count() >= 1
    nothing_left_the_folder(opened)


def test_the_copy_also_works_on_a_server(folder: Path, served: Served, browser: Browser) -> None:
    shutil.copytree(folder, served.folder.parent / "copy")
    context = browser.new_context(viewport={"width": 360, "height": 740})
    page = context.new_page()
    page.goto(served.base.replace("/handbook/", "/copy/"))
    page.get_by_role("link", name="Find a page").first.click()
    page.locator("#sh-find").fill("nordic")
    page.locator(".sh-found a").first.click()
    heading(page, "Nordic lower")
    context.close()
