"""Session mode and the tools are fetched when they are used; what does not come is said."""

import json
import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, Route, expect

from phones import Opened, Served, serving
from strength_handbook.publish.file_copy.assembling import file_copy
from taps import keep

pytestmark = pytest.mark.browser

SESSION = "winter/week-06/a-lift/"
TOOLS = "**/tools.*.js"
ME = {"body": 80_000, "bases": {"trap-bar-1rm": 120_000}}
OTHERS = {"day": "", "keep": True, "people": [{"bases": {"trap-bar-1rm": 160_000}}]}
Phone = Callable[..., Opened]


def asked(opened: Opened) -> int:
    return sum("/tools." in url for url in opened.requests)


def train(page: Page) -> None:
    page.get_by_role("button", name="Train this session").click()


@pytest.mark.parametrize("address", ["", SESSION, "exercises/trap-bar-deadlift/", "exercises/"])
def test_a_visit_does_without(phone: Phone, address: str) -> None:
    opened = phone()
    page = opened.go(address)
    keep(page, "mine", ME)
    page.reload()
    page.wait_for_load_state("networkidle")
    assert asked(opened) == 0
    assert opened.complaints == []


def test_a_tap_fetches_it_once(phone: Phone) -> None:
    opened = phone()
    page = opened.go(SESSION)
    train(page)
    expect(page.get_by_role("dialog")).to_be_visible()
    page.get_by_role("button", name="Leave").click()
    expect(page.get_by_role("dialog")).to_be_hidden()
    expect(page).not_to_have_url(re.compile("#train$"))
    train(page)
    expect(page.get_by_role("dialog")).to_be_visible()
    assert asked(opened) == 1
    assert opened.complaints == []


def test_the_address_of_session_mode_opens_it(phone: Phone) -> None:
    page = phone().go(f"{SESSION}#train")
    expect(page.get_by_role("dialog")).to_be_visible()


def test_a_session_that_runs_is_known_after_a_reload(phone: Phone) -> None:
    opened = phone()
    page = opened.go(SESSION)
    train(page)
    page.get_by_role("button", name="Warm-up done").click()
    page.get_by_role("button", name="Leave").click()
    page.reload()
    expect(page.get_by_role("button", name="Go on training")).to_be_visible()
    assert opened.complaints == []


def test_without_a_signal_the_tap_says_so_and_the_next_one_asks_again(phone: Phone) -> None:
    page = phone(worker=False).go(SESSION)
    page.route(TOOLS, lambda route: route.abort())
    train(page)
    said = page.locator("[role=status]", has_text="did not come")
    expect(said).to_be_visible()
    expect(said).to_contain_text("No signal?")
    expect(page.get_by_role("dialog")).to_be_hidden()
    page.unroute(TOOLS)
    train(page)
    expect(page.get_by_role("dialog")).to_be_visible()
    expect(said).to_have_count(0)


def test_a_server_that_is_silent_is_told(phone: Phone) -> None:
    page = phone(worker=False).go(SESSION)
    waiting: list[Route] = []
    page.route(TOOLS, lambda route: waiting.append(route))  # noqa: PLW0108  # no method of a list
    train(page)
    expect(page.locator("[role=status]", has_text="on its way")).to_be_visible()
    waiting[0].continue_()
    expect(page.get_by_role("dialog")).to_be_visible()


@pytest.mark.parametrize("address", ["my-numbers/", "my-log/", "winter/test-day/"])
def test_a_page_that_is_a_tool_says_so_too(phone: Phone, address: str) -> None:
    opened = phone(worker=False)
    opened.page.route(TOOLS, lambda route: route.abort())
    page = opened.go(address)
    expect(page.locator("h1 + [role=status]")).to_contain_text("did not come")


def test_the_form_of_a_shared_bar_says_so_in_its_drawer(phone: Phone) -> None:
    page = phone(worker=False).go(SESSION)
    page.route(TOOLS, lambda route: route.abort())
    drawer = page.locator("[data-sh-together]")
    drawer.locator("summary").click()
    expect(drawer.locator("[role=status]")).to_contain_text("did not come")
    page.unroute(TOOLS)
    drawer.locator("summary").click()
    drawer.locator("summary").click()
    expect(drawer.get_by_role("button", name="Show the order")).to_be_visible()


def test_on_a_shared_bar_plates_of_one_s_own_are_called_so(phone: Phone) -> None:
    page = phone(worker=False).go(SESSION)
    keep(page, "mine", ME)
    keep(page, "together", OTHERS)
    page.route(TOOLS, lambda route: route.abort())
    page.reload()
    expect(page.get_by_text("the plates below are your own")).to_be_visible()
    expect(page.locator("article div.sh-mine").first).to_contain_text("Mine:")
    page.unroute(TOOLS)
    page.reload()
    expect(page.get_by_text("One bar, in this order").first).to_be_visible()
    expect(page.get_by_text("the plates below are your own")).to_have_count(0)


@pytest.fixture
def alone(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(viewport={"width": 360, "height": 740}, has_touch=True)
    yield context.new_page()
    context.close()


def test_what_is_kept_on_the_phone_opens_without_a_signal(served: Served, alone: Page) -> None:
    with serving(served.folder.parent) as port:
        home = f"http://localhost:{port}/{served.folder.name}/"
        alone.goto(home)
        expect(alone.locator("#sh-kept")).to_contain_text("Kept on this phone")
    alone.goto(home + SESSION)
    train(alone)
    expect(alone.get_by_role("dialog")).to_be_visible()
    alone.goto(f"{home}my-log/")
    expect(alone.get_by_role("button", name="Keep it")).to_be_visible()


def test_the_worker_lists_it(served: Served) -> None:
    text = (served.folder / "sw.js").read_text(encoding="utf-8")
    listed = json.loads(text.split("const FILES = ")[1].split("; /*")[0])
    assert [one for one in listed if "/tools." in one]


def test_a_copy_that_opens_from_a_file_has_it(
    served: Served, browser: Browser, tmp_path: Path
) -> None:
    for address, content in file_copy(served.folder).files.items():
        path = tmp_path / address
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    page = browser.new_context(offline=True).new_page()
    page.goto(f"{tmp_path.as_uri()}/{SESSION}index.html")
    train(page)
    expect(page.get_by_role("dialog")).to_be_visible()
    page.goto(f"{tmp_path.as_uri()}/my-numbers/index.html")
    expect(page.locator("[data-sh-numbers]")).to_be_visible()
    page.context.close()
