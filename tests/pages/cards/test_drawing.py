"""The drawing on a card: the exercise's own, beside the name, and nothing else gets smaller."""

import re
from pathlib import Path

import pytest

import demo
from strength_handbook.figures.outlines import SCALE
from strength_handbook.model.paper import A4, LETTER, Paper
from strength_handbook.pages.cards.card import make_card, parts_of
from strength_handbook.pages.cards.drawing import GAP, LEAST, Drawing, drawing
from strength_handbook.pages.cards.fit import CODE, fit, head_height, inside_of
from strength_handbook.pages.cards.page import cards_pages
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book


@pytest.fixture(scope="module")
def worked() -> Worked:
    book = read_book(Path(demo.PROGRAMS)).book
    assert book is not None
    return work_out(book)


def drawings(worked: Worked, paper: Paper = A4) -> dict[str, Drawing | None]:
    """The drawing of each exercise of the first wave, with its card's own sizes."""
    part, inside = next(parts_of(worked)), inside_of(paper)
    found = {}
    for key, uses in part.uses(worked):
        card, step = fit(make_card(worked, part, key, uses), inside)
        found[key] = one = drawing(worked, card, step, inside)
        if one is not None:
            room = inside.width - CODE
            assert head_height(card, step, one.words) <= head_height(card, step, room)
            wide, high = map(int, re.findall(r'viewBox="0 0 (\d+) (\d+)"', one.svg)[0])
            assert one.words + GAP + wide * one.height / high <= room + 0.01
            assert one.height / high * SCALE >= LEAST
    return found


def test_a_drawing_takes_no_line_and_no_size_from_the_words(worked: Worked) -> None:
    found = drawings(worked)
    assert sum(one is not None for one in found.values()) >= 12
    assert found["copenhagen-side-plank"] is None  # it has no figure
    assert found["dumbbell-floor-press"] is None  # too wide beside so long a name


def test_a_narrower_card_has_drawings_too(worked: Worked) -> None:
    found = drawings(worked, LETTER)
    assert sum(one is not None for one in found.values()) >= 8


def test_it_has_what_the_figure_says_but_no_names_of_moments(worked: Worked) -> None:
    one = drawings(worked)["nordic-lower"]
    assert one is not None
    assert "<title>Nordic lower from the side" in one.svg
    assert 'class="when"' not in one.svg


def test_each_stands_on_its_card_once(worked: Worked) -> None:
    wave = next(page for page in cards_pages(worked) if page.uri.endswith("brakes.md"))
    cards = re.findall(r"<article.*?</article>", wave.html, re.DOTALL)
    found = {card: re.findall(r'<h2 id="([^"]+)"', card)[0].split("--")[2] for card in cards}
    drawn = {key for card, key in found.items() if "sh-pose" in card}
    whole = {key for key, one in drawings(worked).items() if one is not None}
    assert drawn >= whole  # weeks on two cards leave more room, never less
    assert all(card.count("sh-pose") <= 1 for card in cards)
    for card, key in found.items():
        if key in drawn:
            assert f"<title>{worked.book.exercises[key].name} from the side" in card
