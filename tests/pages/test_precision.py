"""No page prints a number finer than it is known."""

import re
from html import unescape

import pytest

import demo
from strength_handbook.calc.registry import all_formulas
from strength_handbook.pages.page import Site
from strength_handbook.pages.site import write_pages
from strength_handbook.plan.work_out import work_out
from strength_handbook.reading.book import read_book

# Sources stand in small print, with other people's figures as they printed them.
QUOTED = re.compile(r"<small>.*?</small>", re.DOTALL)
TAG = re.compile(r"<[^>]*>")
FINE = re.compile(r"(?<![\w.])\d+\.\d{3,}")
PERCENT = re.compile(r"(?<![\w.])(\d+\.\d+)\s*%")


@pytest.fixture(scope="module")
def site() -> Site:
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    return write_pages(work_out(book))


def texts(site: Site) -> dict[str, str]:
    """What is read on each page but that of numbers, less sources and stated errors."""
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    quoted = [entry.error[1:].rstrip(".") for entry in all_formulas() if entry.error]
    quoted += filter(None, (getattr(x.load, "share_source", "") for x in book.exercises.values()))
    found = {}
    for page in site.pages:
        if page.uri != "numbers.md":
            text = unescape(TAG.sub(" ", QUOTED.sub(" ", page.html)))
            for words in quoted:
                text = text.replace(words, " ")
            found[page.uri] = text
    return found


def test_no_more_than_two_decimals(site: Site) -> None:
    found = {uri: hits for uri, text in texts(site).items() if (hits := FINE.findall(text))}
    assert found == {}


def test_percentages_are_whole_or_half(site: Site) -> None:
    found = {
        uri: odd
        for uri, text in texts(site).items()
        if (odd := [hit for hit in PERCENT.findall(text) if not hit.endswith(".5")])
    }
    assert found == {}


def test_kilograms_have_at_most_the_decimals_of_the_smallest_plate(site: Site) -> None:
    # The room's smallest plate is 1.25 kg; arithmetic in workings may show hundredths.
    odd = {
        uri: hits
        for uri, text in texts(site).items()
        if (hits := [hit for hit in re.findall(r"(?<![\w.])\d+\.(\d+)\s*kg", text) if len(hit) > 2])
    }
    assert odd == {}


def test_minutes_are_whole(site: Site) -> None:
    odd = {
        uri: hits
        for uri, text in texts(site).items()
        if (hits := re.findall(r"(?<![\w.])\d+\.\d+\s*min\b", text))
    }
    assert odd == {}


@pytest.mark.parametrize(
    ("text", "fine", "percent"),
    [
        ("109.2 kg and 76.5 %", [], []),
        ("0.6667 and 76.79 %", ["0.6667"], ["76.79"]),
        ("version 2026.1", [], []),
    ],
)
def test_the_patterns_find_what_they_should(text: str, fine: list[str], percent: list[str]) -> None:
    assert FINE.findall(text) == fine
    assert [hit for hit in PERCENT.findall(text) if not hit.endswith(".5")] == percent
