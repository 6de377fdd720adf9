"""A member's own numbers: entered once, kept on the phone, shown with every dose."""

import json
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from urllib.parse import urlparse

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Locator, Page, expect

from phones import Opened, Served

pytestmark = pytest.mark.browser

LIFT = "winter/week-03/a-lift/"
DESCEND = "winter/week-02/b-descend/"
BODY, TRAP_BAR, PRESS = "Body weight, kg", "Trap-bar deadlift, best single, kg", "Standing press"
# 78 % of 140 is 109.2; the plates at one rack make 107.5, and the steps put them on one by one.
PLATES = ["25", "15", "1.25"]
MINE = f"107.5 kg = trap bar 25 + {' · '.join(PLATES)} a side"


def enter(page: Page, **numbers: str) -> None:
    """Fill the form and keep it."""
    names = {"body": BODY, "trap_bar": TRAP_BAR, "press": PRESS}
    for key, text in numbers.items():
        page.get_by_label(names[key]).fill(text)
    page.get_by_role("button", name="Keep these numbers").tap()


def says(page: Page, text: str) -> None:
    expect(page.get_by_role("status")).to_contain_text(text)


def slot(page: Page, name: str) -> Locator:
    return page.locator("article.sh-slot", has=page.get_by_role("heading", name=name))


def drawn(bar: Locator) -> list[str]:
    """The plates of a picture, inner to outer."""
    plates: list[str] = bar.locator("i").evaluate_all("all => all.map(one => one.dataset.kg)")
    return plates


def kept(page: Page, where: str = "localStorage") -> dict[str, str]:
    """Everything a storage holds of ours, by the last word of its name."""
    entries: dict[str, str] = page.evaluate(f"Object.fromEntries(Object.entries({where}))")
    ours = {name: text for name, text in entries.items() if name.startswith("strength-handbook ")}
    return {name.split(" /gym/handbook/ ")[1]: text for name, text in ours.items()}


def test_numbers_once_then_loads_everywhere(phone: Callable[..., Opened], served: Served) -> None:
    opened = phone()
    page = opened.go("")
    page.get_by_role("link", name="my numbers", exact=True).tap()
    enter(page, body="72", trap_bar="140", press="50")
    says(page, "Kept on this phone.")
    page = opened.go(LIFT)
    mine = slot(page, "Trap-bar deadlift").locator(".sh-mine")
    expect(mine).to_contain_text(MINE)
    assert drawn(mine.locator(":scope > .sh-mine-bar")) == PLATES
    # Said once, and well.
    heard = f"= trap bar 25 each side: {', then '.join(PLATES)}"
    expect(mine.get_by_role("img", name=heard + " kilograms", exact=True)).to_have_count(1)
    expect(mine.locator(".sh-mine-bar:not([aria-hidden=true])")).to_have_count(0)
    page = opened.go("winter/week-03/")
    expect(page.locator("li", has_text="Trap-bar deadlift").first).to_contain_text(MINE)
    page = opened.go("exercises/trap-bar-deadlift/#winter-week-03-a-lift-a")
    expect(page.locator(".sh-use", has_text="Week 3, Lift")).to_contain_text(f"Mine: {MINE}")
    assert {urlparse(url).netloc for url in opened.requests} == {urlparse(served.base).netloc}
    assert not [url for url in opened.requests if "140" in url or urlparse(url).query]
    assert page.context.cookies() == []
    assert opened.complaints == []


def test_a_comma_is_a_point_and_slips_are_refused(phone: Callable[..., Opened]) -> None:
    page = phone().go("my-numbers/")
    enter(page, body="heavy", trap_bar="1400")
    expect(page.locator("#sh-body-error")).to_have_text("Write a number, such as 72.5.")
    expect(page.get_by_label(TRAP_BAR)).to_have_attribute("aria-invalid", "true")
    expect(page.get_by_label(BODY)).to_be_focused()
    assert kept(page) == {}
    enter(page, body="72,5", trap_bar="140")
    says(page, "Kept on this phone.")
    expect(page.get_by_label(BODY)).to_have_value("72.5")


def test_a_slip_beyond_the_tables_is_asked_about(phone: Callable[..., Opened]) -> None:
    page = phone().go("my-numbers/")
    enter(page, trap_bar="14")
    says(page, "Is this right? Trap-bar deadlift, best single: beyond the tables.")
    assert json.loads(kept(page)["mine"])["d"]["bases"] == {"trap-bar-1rm": 14_000}
    enter(page, trap_bar="")
    says(page, "Nothing is entered, and nothing is kept.")
    assert kept(page) == {}


def test_without_numbers_a_page_is_as_it_was(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go(LIFT)
    page.wait_for_load_state("networkidle")
    expect(page.locator(".sh-mine")).to_have_count(0)
    assert not [url for url in opened.requests if "scales.js" in url]


def test_without_scripts_a_sentence_leads_to_the_tables(phone: Callable[..., Opened]) -> None:
    page = phone(scripts=False).go("my-numbers/")
    expect(page.get_by_text("Without JavaScript this page can keep nothing")).to_be_visible()
    expect(page.get_by_label(BODY)).to_be_hidden()


def test_a_missing_number_is_named(phone: Callable[..., Opened]) -> None:
    opened = phone()
    enter(opened.go("my-numbers/"), body="72")
    mine = slot(opened.go(LIFT), "Trap-bar deadlift").locator(".sh-mine").first
    expect(mine).to_contain_text("Trap-bar deadlift, best single is not in my numbers yet.")
    mine.get_by_role("link", name="my numbers").tap()
    expect(opened.page).to_have_url(opened.base + "my-numbers/")


def test_steps_and_the_way_down_from_a_top(phone: Callable[..., Opened]) -> None:
    opened = phone()
    enter(opened.go("my-numbers/"), body="72", trap_bar="140", press="50")
    mine = slot(opened.go(DESCEND), "Standing press").locator(".sh-mine")
    mine.get_by_text("My steps").tap()
    # The press takes the nearest load. 87 % of 50 is 43.5: 42.5 for the top. Nine tenths of that
    # share are 39.15: 40.
    expect(mine).to_contain_text("about 40 kg = 20 kg bar + 10 a side")
    expect(mine.locator("li", has_text="Warm-up").first).to_contain_text(
        "42.5 kg (off 1.25 · 2.5 · 5, on 10 · 1.25)"
    )
    expect(mine).to_contain_text("After a top of 42.5 kg: 1.25 kg less on each side")


def test_a_drawer_is_named_by_what_is_in_it(phone: Callable[..., Opened]) -> None:
    opened = phone()
    enter(opened.go("my-numbers/"), body="72", trap_bar="140", press="50")
    names = set()
    for address in (LIFT, DESCEND, "winter/week-10/a-lift/"):
        page = opened.go(address)
        expect(page.locator("article .sh-mine").first).to_be_visible()
        for drawer in page.locator("article .sh-mine > details.sh-heavy").all():
            name = drawer.locator("summary").inner_text()
            names.add(name)
            assert (name == "My steps") == (drawer.locator(".sh-steps").count() > 0), name
    assert names == {"My steps", "My other loads"}


def test_steps_and_picture_are_one_stack(phone: Callable[..., Opened]) -> None:
    opened = phone()
    enter(opened.go("my-numbers/"), body="72", trap_bar="140", press="50")
    mine = slot(opened.go(LIFT), "Trap-bar deadlift").locator(".sh-mine")
    mine.get_by_text("My steps").tap()
    steps = mine.locator("li", has_text="Warm-up").first.locator("li")
    stacks = [drawn(one) for one in steps.all()]
    assert len(stacks) >= 4
    assert stacks[-1] == PLATES
    exchanged = 0
    for one, (before, after) in zip(steps.all()[1:], pairwise(stacks), strict=True):
        # Those that have just gone on are marked, outside what stayed.
        marked = one.locator(".is-on").count()
        stayed = after[: len(after) - marked]
        assert marked
        assert before[: len(stayed)] == stayed
        exchanged += before != stayed
    assert exchanged <= 1
    # The same plates wherever this load is said.
    opened.go("winter/week-03/")
    line = opened.page.locator("li", has_text="Trap-bar deadlift").first
    assert drawn(line.locator(".sh-mine-bar")) == PLATES


@pytest.mark.parametrize(
    ("typed", "shown", "said"),
    [("82.5kg", "82.5", ""), ("82,5 kg", "82.5", ""), ("180 lb", "81.647", "180 lb = 81.647 kg. ")],
)
def test_a_unit_may_be_typed(
    phone: Callable[..., Opened], typed: str, shown: str, said: str
) -> None:
    page = phone().go("my-numbers/")
    enter(page, body=typed)
    expect(page.get_by_role("status")).to_have_text(said + "Kept on this phone.")
    expect(page.get_by_label(BODY)).to_have_value(shown)


def test_help_and_bands_say_the_share_of_the_dose(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go("my-numbers/")
    page.get_by_label("Pull-up, best total").fill("95")
    enter(page, body="80", trap_bar="140")
    # 70 % of 95 is 66.5: 13.5 less than the body, and with 14 off it is 66 of 95.
    mine = slot(opened.go("winter/week-02/a-lift/"), "Neutral-grip pull-up").locator(".sh-mine")
    expect(mine).to_contain_text("Mine: band 22-a, about 14\u00a0kg off")
    # Bands for 20 % of 140 kg pull 27.6 at the top.
    mine = slot(opened.go("winter/week-09/a-lift/"), "Trap-bar deadlift").locator(".sh-mine")
    expect(mine).to_contain_text("97.5 kg at the top, where bands are 20 % of your best.")


def test_plates_on_a_belt_are_drawn_without_a_bar(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go("my-numbers/")
    page.get_by_label("Pull-up, best total").fill("130")
    enter(page, body="80", trap_bar="140")
    drawn = {}
    opened.go("winter/week-02/a-lift/")
    for name in ("Neutral-grip pull-up", "Trap-bar deadlift"):
        bar = slot(page, name).locator(".sh-mine > .sh-mine-bar")
        expect(bar.locator("i").first).to_be_visible()
        drawn[name] = bar.evaluate("one => getComputedStyle(one).backgroundImage")
    assert drawn["Neutral-grip pull-up"] == "none"
    assert "gradient" in drawn["Trap-bar deadlift"]


def test_my_top_of_today(phone: Callable[..., Opened]) -> None:
    opened = phone()
    enter(opened.go("my-numbers/"), press="50")
    mine = slot(opened.go(DESCEND), "Standing press").locator(".sh-mine")
    top = mine.get_by_label("My top today, kg (expect about 42.5 kg)")
    top.fill("45")
    # 90 % of 45 is 40.5.
    expect(mine).to_contain_text("40 kg = 20 kg bar + 10 a side")
    top.fill("a lot")
    expect(mine.locator("output")).to_have_text("Write a number, such as 62.5.")


def test_delete_everything(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go("my-numbers/")
    enter(page, body="72", trap_bar="140")
    page.get_by_role("button", name="Delete everything").tap()
    page.get_by_role("button", name="No, keep it").tap()
    assert "mine" in kept(page)
    page.get_by_role("button", name="Delete everything").tap()
    page.get_by_role("button", name="Yes, delete").tap()
    says(page, "Everything is deleted.")
    assert kept(page) == {}
    expect(page.get_by_label(BODY)).to_have_value("")
    expect(opened.go(LIFT).locator(".sh-mine")).to_have_count(0)


def test_a_borrowed_phone_forgets(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go("my-numbers/")
    enter(page, body="90")
    page.get_by_label("This phone is borrowed").check()
    expect(page.get_by_label(BODY)).to_have_value("")
    enter(page, body="72", trap_bar="140")
    says(page, "Kept in this tab only.")
    assert json.loads(kept(page)["mine"])["d"] == {"bases": {}, "body": 90_000}
    page = opened.go(LIFT)
    expect(slot(page, "Trap-bar deadlift").locator(".sh-mine")).to_contain_text(MINE)
    other = page.context.new_page()
    other.goto(opened.base + "my-numbers/")
    expect(other.get_by_label(BODY)).to_have_value("90")
    page = opened.go("my-numbers/")
    page.get_by_label("This phone is borrowed").uncheck()
    expect(page.get_by_label(BODY)).to_have_value("90")
    assert kept(page, "sessionStorage") == {}


BROKEN = {
    "no JSON": "{oops",
    "another shape": '{"v": 1, "d": {"bases": {"trap-bar-1rm": "140"}}}',
    "older than can be read": '{"v": 0, "d": {"bases": {}}}',
    "newer": '{"v": 2, "d": {"bases": {}}}',
    "nothing": "null",
}


@pytest.mark.parametrize("kind", BROKEN)
def test_what_cannot_be_read_is_set_aside(phone: Callable[..., Opened], kind: str) -> None:
    opened = phone()
    page = opened.go("my-numbers/")
    page.evaluate(
        "text => localStorage.setItem('strength-handbook /gym/handbook/ mine', text)", BROKEN[kind]
    )
    page = opened.go(LIFT)
    says(page, "Something kept here could not be read. It was set aside, not deleted.")
    page = opened.go("my-numbers/")
    says(page, "It was set aside, not deleted.")
    enter(page, body="72")
    assert kept(page)["aside 1 mine"] == BROKEN[kind]
    assert json.loads(kept(page)["mine"]) == {"v": 1, "d": {"bases": {}, "body": 72_000}}
    assert opened.complaints == []


FULL = "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }"


def test_a_full_phone_keeps_what_was_there(phone: Callable[..., Opened]) -> None:
    opened = phone()
    enter(opened.go("my-numbers/"), body="72")
    opened.page.add_init_script(FULL)
    page = opened.go("my-numbers/")
    enter(page, body="80")
    says(page, "This phone has no room left")
    assert json.loads(kept(page)["mine"])["d"]["body"] == 72_000


def test_a_full_phone_with_a_damaged_value_loses_nothing(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go("my-numbers/")
    page.evaluate("localStorage.setItem('strength-handbook /gym/handbook/ mine', '{oops')")
    page.add_init_script(FULL)
    page = opened.go("my-numbers/")
    enter(page, body="80")
    says(page, "there is no room to set it aside")
    assert kept(page) == {"mine": "{oops"}


def test_blocked_storage_is_said(phone: Callable[..., Opened]) -> None:
    opened = phone()
    opened.page.add_init_script(
        """for (const kind of ['localStorage', 'sessionStorage']) {
            Object.defineProperty(window, kind, { get() { throw new DOMException('no'); } });
        }"""
    )
    page = opened.go("my-numbers/")
    enter(page, body="72")
    says(page, "This browser lets the handbook keep nothing")
    expect(opened.go(LIFT).locator("article.sh-slot").first).to_be_visible()


def test_a_copy_comes_back(phone: Callable[..., Opened], tmp_path: Path) -> None:
    opened = phone()
    page = opened.go("my-numbers/")
    enter(page, body="72", trap_bar="140")
    with page.expect_download() as waiting:
        page.get_by_role("button", name="Save a copy as a file").tap()
    copy = tmp_path / "copy.json"
    waiting.value.save_as(copy)
    other = phone()
    page = other.go("my-numbers/")
    enter(page, body="60")
    page.get_by_label("Read a saved copy").set_input_files(copy)
    says(page, "The saved copy is back.")
    expect(page.get_by_label(TRAP_BAR)).to_have_value("140")
    # What was replaced is still there.
    assert json.loads(kept(page)["replaced 1 mine"])["d"] == {"bases": {}, "body": 60_000}
    # One's own copy is nothing that could not be read.
    expect(page.get_by_role("status")).not_to_contain_text("could not be read")
    assert "could not be read" not in other.go(LIFT).locator("main").inner_text()
    page = other.go("my-numbers/")
    copy.write_text("{}", encoding="utf-8")
    page.get_by_label("Read a saved copy").set_input_files(copy)
    says(page, "This file was not written by this handbook.")
    expect(page.get_by_label(TRAP_BAR)).to_have_value("140")


def test_it_works_from_a_folder_too(phone: Callable[..., Opened], served: Served) -> None:
    opened = phone()
    root = served.folder.as_uri()
    opened.page.goto(f"{root}/my-numbers/index.html")
    enter(opened.page, trap_bar="140")
    opened.page.goto(f"{root}/{LIFT}index.html")
    mine = slot(opened.page, "Trap-bar deadlift").locator(".sh-mine")
    expect(mine).to_contain_text(MINE)


def test_lists_of_another_publication_are_not_used(phone: Callable[..., Opened]) -> None:
    opened = phone(worker=False)
    enter(opened.go("my-numbers/"), body="72", trap_bar="140")
    opened.page.route(
        "**/data/scales.js*",
        lambda route: route.fulfill(
            content_type="text/javascript",
            body="strengthHandbook.lists = {units: 'kg', scales: {}, bases: {}, doors: []};",
        ),
    )
    page = opened.go(LIFT)
    says(page, "This page and the list of loads do not fit together: use the tables.")
    expect(page.locator(".sh-slot .sh-mine")).to_have_count(0)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("address", ["my-numbers/", LIFT, DESCEND, "winter/week-03/"])
def test_axe_finds_nothing(phone: Callable[..., Opened], address: str, scheme: str) -> None:
    opened = phone(scheme=scheme)
    page = opened.go("my-numbers/")
    enter(page, body="72", trap_bar="x", press="50")
    if address != "my-numbers/":
        enter(page, trap_bar="140")
        page = opened.go(address)
        expect(page.locator(".sh-mine").first).to_be_visible()
    page.evaluate("document.querySelectorAll('details').forEach(d => { d.open = true })")
    page.wait_for_timeout(100)
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()


@pytest.mark.parametrize("address", ["my-numbers/", LIFT, "winter/week-03/"])
def test_the_narrowest_phone_at_twice_the_text(phone: Callable[..., Opened], address: str) -> None:
    opened = phone(width=320)
    enter(opened.go("my-numbers/"), body="72", trap_bar="140", press="50")
    page = opened.go(address)
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    page.evaluate("document.querySelectorAll('.sh-mine details').forEach(d => { d.open = true })")
    cut = page.evaluate(
        """() => [...document.querySelectorAll('.sh-mine, .sh-field, [data-sh-kept]')].filter(
            one => one.getBoundingClientRect().right > innerWidth + 1
                || one.scrollWidth > one.clientWidth + 1).map(one => one.outerHTML)"""
    )
    assert cut == []


def test_what_is_tapped_is_large_enough(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go("my-numbers/")
    enter(page, press="50")
    page.get_by_role("button", name="Delete everything").tap()
    find = """select => [...document.querySelectorAll(select)].filter(
        one => { const box = one.getBoundingClientRect(); return box.height && box.height < 44; }
    ).map(one => one.outerHTML)"""
    parts = "button, .sh-file, input:not([type=checkbox]), .sh-switch > label"
    assert page.evaluate(find, f":is([data-sh-numbers], [data-sh-kept]) :is({parts})") == []
    page = opened.go(DESCEND)
    expect(page.locator(".sh-mine").first).to_be_visible()
    assert page.evaluate(find, ".sh-mine :is(input, summary)") == []
