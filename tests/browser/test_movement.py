"""The drawing of an exercise, one tap away in session mode, and small in the list of exercises."""

import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Locator, Page, expect

import camera
import demo
from phones import PATIENCE, Opened, Served, serving, watched
from strength_handbook.publish.file_copy.assembling import file_copy
from tiny import write_tiny

pytestmark = pytest.mark.browser

LIFT = "winter/week-03/a-lift/"
PICTURE = "dialog img.sh-picture"
PHOTOGRAPHED = """
media:
  - {photo: squat.jpg, shows: "At the lowest place, thighs level.", people: agreed}
  - {film: squat.mp4, shows: Two slow squats., people: agreed}
set-up:"""
SLIP = 400
"""Milliseconds after which a second tap is no slip of the first."""
LOADED = "one => one.complete && one.naturalWidth > 100"


def begin(page: Page) -> Locator:
    page.get_by_role("button", name="Train this session").tap()
    page.get_by_role("button", name="Warm-up done").tap()
    page.wait_for_timeout(SLIP)
    return page.get_by_role("button", name="Show the movement")


def alt_starts(page: Page, words: str) -> None:
    picture = page.locator(PICTURE)
    page.wait_for_function(
        "([select, words]) => document.querySelector(select).alt.startsWith(words)",
        arg=[PICTURE, words],
    )
    expect(picture).to_be_visible()
    page.wait_for_function(f"({LOADED})(document.querySelector('{PICTURE}'))")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_tap_shows_the_movement_and_another_leads_back(
    phone: Callable[..., Opened], scheme: str
) -> None:
    opened = phone(scheme=scheme)
    page = opened.go(LIFT)
    assert not [url for url in opened.requests if "figure" in url]
    begin(page).tap()
    expect(page.get_by_role("dialog").get_by_role("heading").first).to_have_text("The movement")
    alt_starts(page, "Trap-bar deadlift from the side")
    expect(page.get_by_role("button", name="Show the movement")).to_be_hidden()
    # All of it is seen at once, above the buttons.
    box = page.locator(PICTURE).bounding_box()
    bar = page.locator(".sh-train-bar").bounding_box()
    assert box is not None
    assert bar is not None
    assert box["y"] > 0
    assert box["y"] + box["height"] <= bar["y"]
    assert bar["y"] + bar["height"] <= 740
    assert page.evaluate("document.querySelector('dialog').scrollWidth") <= 360
    page.get_by_role("button", name="Back").tap()
    expect(page.get_by_role("dialog").get_by_role("heading").first).to_contain_text("Trap-bar")
    assert opened.complaints == []


def test_warm_up_and_end_have_none(phone: Callable[..., Opened]) -> None:
    page = phone().go(LIFT)
    page.get_by_role("button", name="Train this session").tap()
    expect(page.get_by_role("button", name="Warm-up done")).to_be_visible()
    expect(page.get_by_role("button", name="Show the movement")).to_be_hidden()


def test_a_door_to_another_exercise_has_its_drawing(phone: Callable[..., Opened]) -> None:
    page = phone().go(LIFT)
    begin(page)
    page.get_by_role("button", name="Steps done").tap()
    page.get_by_role("button", name="Taken? Hurts?").tap()
    page.get_by_role("button", name=re.compile("Do this: .*taken", re.IGNORECASE)).tap()
    page.get_by_role("button", name="Show the movement").tap()
    alt_starts(page, "Kettlebell deadlift from the side")


def test_where_the_drawing_does_not_come_it_says_so(phone: Callable[..., Opened]) -> None:
    opened = phone()
    opened.page.route("**/figure.svg", lambda route: route.abort())
    page = opened.go(LIFT)
    begin(page).tap()
    expect(page.get_by_role("dialog")).to_contain_text("The drawing did not come.")
    page.get_by_role("button", name="Back").tap()
    expect(page.get_by_role("button", name="Steps done")).to_be_visible()


def test_it_is_there_without_a_signal(served: Served, browser: Browser) -> None:
    context = browser.new_context(viewport={"width": 360, "height": 740}, has_touch=True)
    page = context.new_page()
    with serving(served.folder.parent) as port:
        home = f"http://localhost:{port}/{served.folder.name}/"
        page.goto(home)
        expect(page.locator("#sh-kept")).to_contain_text("Kept on this phone", timeout=PATIENCE)
    page.goto(home + LIFT)
    begin(page).tap()
    alt_starts(page, "Trap-bar deadlift from the side")
    page.goto(home + "exercises/trap-bar-deadlift/#winter-week-05-a-lift-b")
    expect(page.locator(".sh-use-title")).to_have_text("Week 5, Lift")
    context.close()


@pytest.fixture
def copied(served: Served, tmp_path: Path) -> Path:
    for address, content in file_copy(served.folder).files.items():
        path = tmp_path / address
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    return tmp_path


@pytest.fixture
def at_home(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(viewport={"width": 360, "height": 740}, has_touch=True)
    yield context.new_page()
    context.close()


def test_it_is_there_in_a_copy_that_opens_from_a_file(copied: Path, at_home: Page) -> None:
    opened = watched(at_home, copied.as_uri() + "/")
    page = opened.go(LIFT + "index.html")
    begin(page).tap()
    alt_starts(page, "Trap-bar deadlift from the side")
    page = opened.go("exercises/trap-bar-deadlift/index.html#winter-week-05-a-lift-b")
    expect(page.locator(".sh-use-title")).to_have_text("Week 5, Lift")
    page.locator(".sh-use a").first.tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Week 5: Lift")
    assert opened.complaints == []


def test_the_list_loads_drawings_as_they_come_into_sight(phone: Callable[..., Opened]) -> None:
    opened = phone()
    page = opened.go("exercises/")
    page.wait_for_load_state("networkidle")
    drawings = page.locator(".sh-index img")
    all_of_them = drawings.count()
    assert len([url for url in opened.requests if url.endswith("figure.svg")]) < all_of_them
    drawings.last.scroll_into_view_if_needed()
    page.wait_for_function(
        "() => [...document.querySelectorAll('.sh-index img')].at(-1).naturalWidth > 100"
    )
    assert opened.complaints == []


@pytest.fixture(scope="module")
def photographed(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Address of the smallest handbook, its exercise with a photo and a film, without a drawing."""
    root = write_tiny(tmp_path_factory.mktemp("photographed"))
    file = root / "programs/exercises/chair-squat.yml"
    demo.change(file, "\nset-up:", PHOTOGRAPHED)
    demo.change(file, "figure:\n", "# figure:\n")
    text = re.sub(
        r"^  (moves: hips|start: \{pose|turn: \{pose)", r"  # \1", file.read_text(), flags=re.M
    )
    file.write_text(text, encoding="utf-8")
    camera.photo(root / "programs/media/squat.jpg", (1200, 1600))
    camera.film(root / "programs/media/squat.mp4")
    with serving(demo.build_site(root, root / "site")) as port:
        yield f"http://127.0.0.1:{port}/"


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_gyms_own_photo_is_shown_and_no_film_is_fetched_unasked(
    phone: Callable[..., Opened], photographed: str, scheme: str
) -> None:
    opened = phone(scheme=scheme)
    opened.base = photographed
    page = opened.go("exercises/chair-squat/")
    photo = page.locator("article img").first
    page.wait_for_function(f"({LOADED})(document.querySelector('article img'))")
    assert photo.evaluate("one => one.scrollWidth") <= 360
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    assert page.locator("video").get_attribute("aria-label") == "Two slow squats."
    assert not [url for url in opened.requests if url.endswith(".mp4")]
    assert Axe().run(page).response["violations"] == []
    page = opened.go("spring/week-01/a-squat/")
    page.get_by_role("button", name="Train this session").tap()
    button = page.get_by_role("button", name="Show the movement")
    page.get_by_role("button", name=re.compile("Show the movement|Warm-up done")).first.wait_for()
    if not button.is_visible():
        page.get_by_role("button", name="Warm-up done").tap()
        page.wait_for_timeout(SLIP)
    button.tap()
    shown = page.locator("dialog img.sh-photo")
    expect(shown).to_have_attribute("alt", "At the lowest place, thighs level.")
    page.wait_for_function(f"({LOADED})(document.querySelector('dialog img.sh-photo'))")
    box, bar = shown.bounding_box(), page.locator(".sh-train-bar").bounding_box()
    assert box is not None
    assert bar is not None
    assert box["y"] + box["height"] <= bar["y"]
    assert page.locator("dialog img.sh-picture").count() == 0
    assert opened.complaints == []
