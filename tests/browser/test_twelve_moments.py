"""Twelve moments of a member with a phone, each answered in at most three taps from home."""

from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Browser, BrowserContext, Locator, Page, expect

from phones import Opened, Served, serving

pytestmark = pytest.mark.browser

MOST_TAPS = 3


class Member:
    """Taps, and counts the taps."""

    def __init__(self, opened: Opened) -> None:
        self.page: Page = opened.go("")
        self.taps = 0

    def tap(self, what: Locator) -> None:
        what.tap()
        self.taps += 1
        assert self.taps <= MOST_TAPS

    def open_session(self, name: str) -> None:
        self.tap(self.page.get_by_role("link", name=name))

    def slot(self, exercise: str) -> Locator:
        heading = self.page.get_by_role("heading", name=exercise)
        return self.page.locator("article.sh-slot", has=heading)

    def drawer(self, exercise: str, title: str) -> Locator:
        """Open a drawer of a slot; what is in it."""
        drawer = self.slot(exercise).locator(
            "details", has=self.page.locator("> summary", has_text=title)
        )
        self.tap(drawer.locator("> summary").first)
        return drawer.first


@pytest.fixture(scope="module")
def cut_off(browser: Browser, served: Served) -> Iterator[tuple[BrowserContext, str]]:
    """A phone that has seen the home page once; since then there is no signal. And its home."""
    context = browser.new_context(viewport={"width": 360, "height": 740}, has_touch=True)
    page = context.new_page()
    with serving(served.folder.parent) as port:
        home = f"http://localhost:{port}/{served.folder.name}/"
        page.goto(home)
        expect(page.locator("#sh-kept")).to_contain_text("Kept on this phone")
    page.close()
    yield context, home
    context.close()


@pytest.fixture(params=["with a signal", "cut off, slow phone"])
def member(request: pytest.FixtureRequest, phone: Callable[..., Opened]) -> Iterator[Member]:
    if request.param == "with a signal":
        yield Member(phone())
        return
    context, home = request.getfixturevalue("cut_off")
    page = context.new_page()
    slow = context.new_cdp_session(page)
    slow.send("Emulation.setCPUThrottlingRate", {"rate": 4})
    yield Member(Opened(page, home))
    page.close()


def test_1_what_is_the_third_exercise(member: Member) -> None:
    member.open_session("Week 3, Descend, Thu")
    third = member.page.locator("article.sh-slot h2").nth(2)
    expect(third).to_have_text("B2 Cable row")


def test_2_which_plates(member: Member) -> None:
    member.open_session("Week 3, Lift, Mon")
    drawer = member.drawer("Trap-bar deadlift", "How heavy?")
    expect(drawer.get_by_role("row", name="140 107.5 25 · 15 · 1.25")).to_be_visible()


def test_3_how_fast_down_and_do_i_pause(member: Member) -> None:
    member.open_session("Week 3, Lift, Mon")
    words = member.slot("Trap-bar deadlift").locator(".sh-words").first
    expect(words).to_contain_text("Five seconds down, one second still, up fast.")


def test_4_where_do_the_safeties_go(member: Member) -> None:
    member.open_session("Week 3, Descend, Thu")
    member.tap(member.page.locator("article h2 a", has_text="Yoke-bar box squat"))
    expect(member.page.locator("dt", has_text="Safeties")).to_be_visible()


def test_5_the_rack_is_taken(member: Member) -> None:
    member.open_session("Week 3, Descend, Thu")
    drawer = member.drawer("Yoke-bar box squat", "Instead")
    expect(drawer.locator("dt", has_text="It's taken")).to_be_visible()


def test_6_my_knee_complains(member: Member) -> None:
    member.open_session("Week 3, Lift, Mon")
    drawer = member.drawer("Step-down", "Instead")
    expect(drawer.locator("dt", has_text="It hurts")).to_be_visible()


def test_7_my_partner_is_40_kg_stronger(member: Member) -> None:
    member.open_session("Week 3, Lift, Mon")
    drawer = member.drawer("Trap-bar deadlift", "How heavy?")
    for best in ("140", "180"):
        expect(drawer.get_by_role("rowheader", name=best, exact=True)).to_be_visible()


def test_8_i_am_alone_tonight(member: Member) -> None:
    member.open_session("Week 3, Descend, Thu")
    expect(member.page.get_by_role("heading", name="Training alone?")).to_be_visible()
    member.tap(member.page.locator("article h2 a", has_text="Standing press"))
    expect(member.page.locator("dt", has_text="Alone?")).to_be_visible()


def test_9_i_have_only_45_minutes(member: Member) -> None:
    member.open_session("Week 3, Lift, Mon")
    member.tap(member.page.get_by_text("Only 45 minutes"))
    variant = member.page.locator("details[open]", has_text="Only 45 minutes")
    expect(variant.get_by_text("Trap-bar deadlift")).to_be_visible()


def test_10_i_missed_last_week(member: Member) -> None:
    member.open_session("Week 3, Lift, Mon")
    member.tap(member.page.get_by_role("link", name="Missed a session, a week or more?"))
    expect(member.page.get_by_text("Repeat the last week you did")).to_be_visible()


def test_11_it_feels_too_easy_or_too_hard(member: Member) -> None:
    member.open_session("Week 3, Lift, Mon")
    drawer = member.drawer("Trap-bar deadlift", "Instead")
    for door in ("Easier", "Harder"):
        expect(drawer.locator("dt", has_text=door)).to_be_visible()


def test_12_someone_is_hurt(member: Member) -> None:
    member.tap(member.page.get_by_role("link", name="Get help now"))
    number = member.page.locator(".sh-emergency .sh-number")
    expect(number).to_have_text("Call 112")
    expect(number.get_by_role("link")).to_be_in_viewport()
