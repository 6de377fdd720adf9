"""The page of numbers: everything that a reader needs to check a figure, and in words."""

import re
from html import unescape
from pathlib import Path

import pytest

from books import exercise, slot, work
from strength_handbook.calc.registry import Formula, all_formulas
from strength_handbook.calc.repetitions import TEXTBOOK_CHART, UNCONFIRMED_REPS
from strength_handbook.calc.unused import UNUSED
from strength_handbook.model.house_rules import RULES
from strength_handbook.pages.numbers_page import NOT_COMPUTED, numbers_page
from strength_handbook.pages.page import Page

FORMULAS = [entry for entry in all_formulas() if entry.id not in UNUSED]


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> Page:
    root: Path = tmp_path_factory.mktemp("numbers")
    worked = work(
        root,
        exercises={"lift": exercise()},
        sessions={"a": [slot("A", "lift", "3x5")]},
        rules={"change-time": "90 s"},
    )
    return numbers_page(worked)


def entry_html(page: Page, entry: Formula) -> str:
    found = re.search(rf'<div id="{entry.id}">(.*?)</div>', page.html, re.DOTALL)
    assert found is not None, entry.id
    return unescape(found[1])


@pytest.mark.parametrize("entry", FORMULAS, ids=[entry.id for entry in FORMULAS])
def test_an_entry_says_all_that_is_registered(page: Page, entry: Formula) -> None:
    html = entry_html(page, entry)
    for words in (entry.equation, entry.output):
        assert words in html
    assert entry.source[1:].rstrip(".") in html
    assert entry.evidence.value.capitalize() in html
    assert entry.error[1:].rstrip(".") in html
    assert ("refused outside" in html) == bool(entry.ranges)
    assert html.count("<li>") == sum(len(text.split("; ")) for text in entry.inputs.values())


def test_symbols_stand_before_their_meaning(page: Page) -> None:
    html = entry_html(page, next(entry for entry in FORMULAS if entry.id == "epley_1985"))
    # 1RM = w (1 + r/30), good for loads to 1000 kg and 1 to 15 repetitions.
    assert "<b>w</b> — load lifted to failure, kg <small>(valid 0 to 1000; refused" in html
    assert "<b>r</b> — repetitions to failure <small>(valid 1 to 15; refused" in html


def test_no_name_from_the_code_is_printed(page: Page) -> None:
    text = re.sub(r"<[^>]*>", " ", page.html)
    names = set(re.findall(r"\b[a-z]+(?:_[a-z]+)+\b", text)) - {"v_first", "v_stop", "v_max"}
    assert names == set()
    assert "`" not in text
    assert not re.search(r"\d\.?\d*e[+-]?\d", text), "powers of ten are no coach's language"


def test_the_chart_with_its_doubtful_cells(page: Page) -> None:
    table = re.search(r'<h2 id="chart">.*?</table>', page.html, re.DOTALL)
    assert table is not None
    rows = re.findall(r'<th scope="row">(\d+)</th><td>(\d+)( \*)?</td>', table[0])
    assert [(int(reps), int(percent)) for reps, percent, _ in rows] == list(TEXTBOOK_CHART)
    assert {int(reps) for reps, _, star in rows if star} == UNCONFIRMED_REPS


def test_every_house_rule_with_the_value_in_force(page: Page) -> None:
    for slug in RULES:
        assert f'id="rule-{slug}"' in page.html
    assert "Change time: 90 s" in page.html
    assert "Swap time: 15 s" in page.html


def test_stated_errors_are_listed_together(page: Page) -> None:
    listed = page.html.split('<h2 id="errors">')[1].split("<h2")[0]
    assert re.findall(r'<a href="#(\w+)">', listed) == [one.id for one in FORMULAS if one.error]


def test_what_is_left_open_is_said(page: Page) -> None:
    part = unescape(page.html.split('<h2 id="not-computed">')[1])
    assert len(NOT_COMPUTED) >= 5
    for what, why in NOT_COMPUTED:
        assert what in part
        assert why in part


def test_every_heading_is_there_once(page: Page) -> None:
    ids = re.findall(r' id="([^"]+)"', page.html)
    assert len(ids) == len(set(ids))
    assert {heading.id for heading in page.headings} <= set(ids)
