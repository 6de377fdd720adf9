"""Every computed figure opens its working, and every formula in it is explained on the page."""

import re
from html import unescape
from pathlib import Path
from urllib.parse import urljoin

import pytest

import demo
from books import base, build_book, exercise, slot
from strength_handbook.calc.registry import Evidence
from strength_handbook.pages.page import Page, Site
from strength_handbook.pages.site import write_pages
from strength_handbook.pages.working_html import working_html
from strength_handbook.plan.work_out import work_out
from strength_handbook.reading.book import read_book
from strength_handbook.workings.working import Working, as_tested, by_adding, by_formula

WORKING = re.compile(r'<details class="sh-working" data-search-exclude>.*?</details>', re.DOTALL)
LINK = re.compile(r'<a href="([^"]*)">')
HOST = "https://gym.example/"


@pytest.fixture(scope="module")
def site() -> Site:
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    return write_pages(work_out(book))


def workings(page: Page) -> list[str]:
    return WORKING.findall(page.html)


def page_of(site: Site, uri: str) -> Page:
    return next(page for page in site.pages if page.uri == uri)


def test_links_resolve_to_an_entry_of_the_numbers_page(site: Site) -> None:
    numbers = page_of(site, "numbers.md")
    found = 0
    for page in site.pages:
        for address in {link for text in workings(page) for link in LINK.findall(text)}:
            target, _, name = urljoin(HOST + page.url, address).partition("#")
            assert target == HOST + numbers.url, page.uri
            assert f'id="{name}"' in numbers.html, name
            found += 1
    assert found > 100


def test_a_week_s_page_has_one_for_its_volume_and_one_for_the_minutes_of_each_session(
    site: Site,
) -> None:
    weeks = [page for page in site.pages if re.search(r"/week-\d\d/index", page.uri)]
    assert len(weeks) > 4
    for page in weeks:
        sessions = page.html.count('<section class="sh-card">')
        assert len(workings(page)) == 1 + sessions, page.uri
        assert sum("Rounded to whole minutes" in text for text in workings(page)) == sessions


def test_an_exercise_page_has_one_for_its_table(site: Site) -> None:
    assert len(workings(page_of(site, "exercises/trap-bar-deadlift.md"))) == 1


def test_the_page_of_a_session_s_loads_has_one_for_each_slot(site: Site) -> None:
    page = page_of(site, "winter/week-03/a-lift/loads.md")
    assert len(workings(page)) == page.html.count('<section class="sh-slot"') == 7
    first = unescape(workings(page)[0])
    assert "25 kg trap bar + 2 × (25 + 15 + 1.25) = 107.5 kg" in first.replace("\u00a0", " ")
    for kind in (Evidence.MEASURED, Evidence.PUBLISHED, Evidence.ARITHMETIC, Evidence.HOUSE_RULE):
        assert kind.value in first


def test_workings_stay_out_of_the_search(site: Site) -> None:
    for page in site.pages:
        assert page.html.count("How this was worked out") == len(workings(page))


def test_source_and_error_stand_with_the_first_step_only() -> None:
    steps = (
        by_formula("reps_at_percent", "one"),
        by_formula("reps_at_percent", "two"),
        as_tested("three"),
        by_adding("four <b>"),
    )
    html = working_html(Working("P1", steps, "Rounded."), "exercises/lift/")
    rows = re.findall(r"<li>(.*?)</li>", html)
    assert ["Sheppard" in row for row in rows] == [True, False, False, False]
    assert ["Error:" in row for row in rows] == [True, False, False, False]
    assert 'href="../../numbers/#reps_at_percent"' in rows[1]
    assert "<a " not in rows[2]
    assert "measured" in rows[2]
    assert "four &lt;b&gt;" in rows[3]
    assert "Rounded." in html


def test_nothing_known_shows_nothing() -> None:
    assert working_html(None, "") == ""


def test_a_gym_without_lifters_gets_a_stated_example(tmp_path: Path) -> None:
    book = build_book(
        tmp_path,
        exercises={"lift": exercise()},
        sessions={"a": [slot("A", "lift", "3x5 @ 70 %", base="best")]},
        bases={"best": base()},
    )
    page = page_of(write_pages(work_out(book)), "plan/week-01/a/loads.md")
    assert "Example" in workings(page)[0]
    assert "77\u00a0kg" in workings(page)[0]
