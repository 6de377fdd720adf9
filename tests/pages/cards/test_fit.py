"""Cards on both papers: nothing that fits is cut, and nothing runs over."""

from dataclasses import replace
from pathlib import Path

import pytest

import demo
from strength_handbook.model.paper import A4, INCH, LETTER, MM, Paper
from strength_handbook.pages.cards.card import Card, make_card, parts_of
from strength_handbook.pages.cards.fit import MARGIN, STEPS, card_height, fit, inside_of, wants_two
from strength_handbook.plan.work_out import work_out
from strength_handbook.reading.book import read_book


@pytest.fixture(scope="module")
def cards() -> list[Card]:
    book = read_book(Path(demo.PROGRAMS)).book
    assert book is not None
    worked = work_out(book)
    part = next(parts_of(worked))
    return [make_card(worked, part, key, uses) for key, uses in part.uses(worked)]


def test_sizes_are_those_of_the_standards() -> None:
    # ISO 216: A0 is a square metre, each size half of the one before, sides as 1 to √2, cut off
    # to whole millimetres.
    sides = [round(1000 * 2 ** (1 / 4 - half / 2)) for half in range(4, 7)]
    assert A4.sheet.height == pytest.approx(sides[0] * MM)
    assert (A4.sheet.width, A4.card.height) == pytest.approx((sides[1] * MM, sides[1] * MM))
    assert A4.card.width == pytest.approx((sides[2] - 1) * MM)  # 148.65
    # ANSI/ASME Y14.1: 8.5 by 11 inches.
    assert (LETTER.sheet.width / INCH, LETTER.sheet.height / INCH) == (8.5, 11)
    assert (LETTER.card.width / INCH, LETTER.card.height / INCH) == (11 / 2, 8.5)


@pytest.mark.parametrize("paper", [A4, LETTER], ids=lambda paper: paper.name)
def test_words_stand_inside_the_margins(paper: Paper) -> None:
    inside = inside_of(paper)
    assert 0 < paper.card.width - 2 * MARGIN - inside.width < 3
    assert 0 < paper.card.height - 2 * MARGIN - inside.height < 8


@pytest.mark.parametrize("paper", [A4, LETTER], ids=lambda paper: paper.name)
def test_a_card_fits_with_the_largest_letters(cards: list[Card], paper: Paper) -> None:
    inside, uncut = inside_of(paper), 0
    for card in cards:
        shown, step = fit(card, inside)
        assert card_height(shown, step, inside) <= inside.height
        if wants_two(card, inside):
            continue  # it is parted first
        uncut += 1
        assert shown == card
        for larger in STEPS[: next(i for i, one in enumerate(STEPS) if one.text == step.text)]:
            assert card_height(card, larger, inside) > inside.height
    assert uncut > 12


@pytest.mark.parametrize("paper", [A4, LETTER], ids=lambda paper: paper.name)
def test_far_too_long_texts_are_cut_until_they_fit(cards: list[Card], paper: Paper) -> None:
    inside = inside_of(paper)
    for card in cards:
        long = replace(
            card,
            set_up=tuple((line + " ") * 12 for line in card.set_up),
            caution="Keep the floor clear. " * 40,
        )
        shown, step = fit(long, inside)
        assert shown.shortened
        assert step == STEPS[-1]
        assert card_height(shown, step, inside) <= inside.height


def test_each_paper_has_its_own_sizes(cards: list[Card]) -> None:
    """Half a Letter sheet is narrower and taller: kept apart, though the card is the same."""
    on_a4, on_letter = (
        [fit(card, inside_of(paper))[1] for card in cards] for paper in (A4, LETTER)
    )
    assert on_a4 != on_letter
    assert on_a4 == [fit(card, inside_of(A4))[1] for card in cards]
