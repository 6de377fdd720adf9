"""After one visit every page opens without a signal, where the browser allows it."""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from phones import Served, serving, until_kept
from strength_handbook.publish.offline import worker_text

pytestmark = pytest.mark.browser

KEPT = "Kept on this phone"


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(viewport={"width": 360, "height": 740}, has_touch=True)
    yield context.new_page()
    context.close()


def test_every_kind_of_page_and_the_search_open_without_a_server(
    served: Served, page: Page
) -> None:
    with serving(served.folder.parent) as port:
        home = f"http://localhost:{port}/{served.folder.name}/"
        page.goto(home)
        expect(page.locator("#sh-kept")).to_contain_text(KEPT)
    for path, heading in {
        "": "The Wool Hall Strength Room",
        "winter/week-06/b-descend/": "Week 6",
        "exercises/nordic-lower/": "Nordic lower",
        "safety/": "Safety",
        "cards/": "Cards",
    }.items():
        page.goto(home + path)
        expect(page.get_by_role("heading", level=1)).to_contain_text(heading)
        expect(page.locator(".sh-kept-copy")).to_contain_text("the newest as of today")
    page.goto(f"{home}?search")
    page.locator(".md-search__input").press_sequentially("copenhagen", delay=50)
    expect(page.locator(".md-search-result__link").first).to_contain_text("Copenhagen")
    page.goto(home + "exercises/no-such-lift/")
    expect(page.get_by_text("not kept on this phone")).to_be_visible()


def test_a_new_version_is_shown_at_once_and_kept_next(
    served: Served, page: Page, tmp_path: Path
) -> None:
    site = Path(shutil.copytree(served.folder, tmp_path / "site"))
    room = site / "room" / "index.html"
    with serving(tmp_path) as port:
        home = f"http://localhost:{port}/site/"
        page.goto(home)
        expect(page.locator("#sh-kept")).to_contain_text(KEPT)
        room.write_text(room.read_text().replace("The room", "The new room"))
        worker = worker_text(site)
        (site / "sw.js").write_text(worker)
        page.goto(f"{home}room/")
        expect(page.get_by_role("heading", level=1)).to_have_text("The new room")
        (version,) = re.findall(r'VERSION = "(\w+)"', worker)
        until_kept(page, version)
    page.goto(f"{home}room/")
    expect(page.get_by_role("heading", level=1)).to_have_text("The new room")


def test_without_a_secure_address_it_says_so(served: Served, page: Page) -> None:
    page.add_init_script(
        "Object.defineProperty(Navigator.prototype, 'serviceWorker', {get: undefined});"
        "delete Navigator.prototype.serviceWorker;"
    )
    page.goto(served.base)
    expect(page.locator("#sh-kept")).to_contain_text("pages need a signal")
