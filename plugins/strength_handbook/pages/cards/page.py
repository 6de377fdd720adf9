"""Cards to print and hang at the stations: one for each exercise of each wave."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from strength_handbook.model.paper import Size
from strength_handbook.pages.cards.card import Card, CardPart, make_card, parts_of
from strength_handbook.pages.cards.code import content_code, phone_code
from strength_handbook.pages.cards.drawing import drawing
from strength_handbook.pages.cards.fit import (
    FitStep,
    fit,
    foot,
    inside_of,
    strip_widths,
    taken_at_right,
    wants_two,
)
from strength_handbook.pages.cards.room import room_cards, room_cards_page
from strength_handbook.pages.cards.weeks import week_words, window
from strength_handbook.pages.page import Heading, Page, link
from strength_handbook.pages.render import render, safe
from strength_handbook.plan.remembered import remembered
from strength_handbook.plan.worked import Use, Worked

URL = "cards/"
_CODE, _WAY = "<!--card-code-->", "<!--way-->"


@dataclass(frozen=True, slots=True)
class PrintedCard:
    """A card as HTML.

    Attributes:
        id: of its heading.
        key: the exercise.
        name: of the exercise, and the weeks where it has several cards in one wave.
        html: the card, with marks for its code and the way to its page.
        code: the code of its content.
    """

    id: str
    key: str
    name: str
    html: str
    code: str

    def finished(self, url: str, base: str) -> str:
        """The HTML with its code and the way to the exercise's page.

        Args:
            url: the page it stands on.
            base: address of the site, or empty where it is not known.
        """
        page = f"exercises/{self.key}/"
        values = {"id": self.id, "page": page, "link": link(url, page)}
        way = render("card_way.html", {**values, "svg": phone_code(base + page) if base else ""})
        return self.html.replace(_WAY, way).replace(_CODE, self.code)


def cards_pages(worked: Worked, base: str = "") -> list[Page]:
    """The list of all cards, a page for each wave, and one for the room.

    Args:
        worked: the programs.
        base: address of the site, for codes that a phone reads; empty where it is not known.
    """
    parts = [(part, cards_of(worked, part)) for part in _parts(worked)]
    pages = [_wave_page(worked, part, cards, base) for part, cards in parts]
    return [_list_page(worked, parts, base), *pages, room_cards_page(worked.book.room)]


def card_codes(worked: Worked, key: str) -> list[tuple[str, str, str]]:
    """For one exercise: the title of each of its cards, its code, and the card's address."""
    return [
        (f"{_title(worked, part)}, {words}", card.code, f"{part.url}#{card.id}")
        for part in _parts(worked)
        for card, words in _of_exercise(worked, part, key)
    ]


@remembered(4)
def _parts(worked: Worked) -> tuple[CardPart, ...]:
    return tuple(parts_of(worked))


def cards_of(worked: Worked, part: CardPart) -> tuple[PrintedCard, ...]:
    """The cards of a wave."""
    return tuple(card for key, _ in part.uses(worked) for card in _cards(worked, part, key))


@remembered(8192)  # the wave's page and the exercise's page ask
def _cards(worked: Worked, part: CardPart, key: str) -> tuple[PrintedCard, ...]:
    """The cards of one exercise in a wave; none where it is not in it."""
    uses = next((uses for other, uses in part.uses(worked) if other == key), ())
    if not uses:
        return ()
    return tuple(_printed(worked, part, key, tuple(_sets_of_weeks(worked, part, key, uses))))


def _of_exercise(worked: Worked, part: CardPart, key: str) -> Iterator[tuple[PrintedCard, str]]:
    for card in _cards(worked, part, key):
        several = card.name.partition(": ")[2]
        yield card, several or window(part.program, (week.week for week in part.weeks))


def _sets_of_weeks(
    worked: Worked, part: CardPart, key: str, uses: tuple[Use, ...]
) -> Iterator[tuple[Use, ...]]:
    """All uses on one card, or halves of them where there are too many doses for one side."""
    if len(uses) > 1 and wants_two(make_card(worked, part, key, uses), _inside(worked)):
        cut = _cut(uses)
        yield from _sets_of_weeks(worked, part, key, uses[:cut])
        yield from _sets_of_weeks(worked, part, key, uses[cut:])
    else:
        yield uses


def _cut(uses: tuple[Use, ...]) -> int:
    """Where to part the uses: between two sessions if there are several, else in the middle."""
    changes = [
        index
        for index, (before, after) in enumerate(pairwise(uses), 1)
        if before.session.id != after.session.id
    ]
    # Sessions that alternate from week to week are no place for a cut.
    if len(changes) == 1:
        return changes[0]
    return (len(uses) + 1) // 2


def _printed(
    worked: Worked, part: CardPart, key: str, groups: tuple[tuple[Use, ...], ...]
) -> Iterator[PrintedCard]:
    # Two hyphens stand in no id, so joined ids of different parts stay different.
    inside = _inside(worked)
    anchor = f"{part.program.id}--{part.wave}--{key}"
    for number, uses in enumerate(groups, 1):
        card, step = fit(make_card(worked, part, key, uses), inside)
        weeks = f": {week_words(use.week.week for use in uses)}" if len(groups) > 1 else ""
        own = anchor + (f"--{number}" if number > 1 else "")
        figure = drawing(worked, card, step, inside)
        html = render("card.html", _values(card, step, own, inside) | {"figure": figure})
        yield PrintedCard(own, key, card.name + weeks, html, content_code(html))


def _values(card: Card, step: FitStep, anchor: str, inside: Size) -> dict[str, Any]:
    strips = [
        {
            "name": strip.name,
            "first": strip.first,
            "columns": strip.columns,
            "how": safe(strip.plates_head),
            "rows": strip.shown(step.rows),
            "widths": [f"{100 * share:.0f}%" for share in strip_widths(strip)],
        }
        for strip in card.strips
    ]
    at_right = taken_at_right(card, step, inside)
    return {"id": anchor, "card": card, "step": step, "strips": strips, "taken_at_right": at_right,
            "foot": foot(card)}  # fmt: skip


def _inside(worked: Worked) -> Size:
    return inside_of(worked.book.room.printed_on())


def _says(worked: Worked) -> str:
    paper = worked.book.room.printed_on().card_name
    return f"Cards to print on {paper} and hang at the stations"


def _title(worked: Worked, part: CardPart) -> str:
    title = part.weeks[0].wave.wave
    return title if len(worked.programs) == 1 else f"{part.program.program.program}: {title}"


def _wave_page(worked: Worked, part: CardPart, cards: tuple[PrintedCard, ...], base: str) -> Page:
    title = f"Cards: {_title(worked, part)}"
    html = render(
        "cards.html",
        {
            "title": title,
            "window": window(part.program, (week.week for week in part.weeks)),
            "paper": worked.book.room.printed_on(),
            "list": link(part.url, URL),
            "cards": [safe(card.finished(part.url, base)) for card in cards],
        },
    )
    headings = tuple(Heading(2, card.id, card.name) for card in cards)
    return Page(part.url.rstrip("/") + ".md", title, html, headings, parent="cards.md",
                description=_says(worked))  # fmt: skip


def _list_page(
    worked: Worked, parts: list[tuple[CardPart, tuple[PrintedCard, ...]]], base: str
) -> Page:
    waves = [
        {
            "id": f"{part.program.id}--{part.wave}",
            "title": _title(worked, part),
            "window": window(part.program, (week.week for week in part.weeks)),
            "link": link(URL, part.url),
            "cards": [(card.name, link(URL, f"{part.url}#{card.id}"), card.code) for card in cards],
        }
        for part, cards in parts
    ]
    room = [(card.name, link(URL, f"cards/room/#{card.id}"), card.code)
            for card in room_cards(worked.book.room)]  # fmt: skip
    html = render(
        "cards_list.html",
        {
            "waves": waves,
            "room": room,
            "room_link": link(URL, "cards/room/"),
            "base": base,
            "paper": worked.book.room.printed_on(),
        },
    )
    headings = [
        Heading(2, f"{part.program.id}--{part.wave}", _title(worked, part)) for part, _ in parts
    ]
    headings.append(Heading(2, "room", "Room"))
    return Page("cards.md", "Cards", html, tuple(headings), in_nav=True,
                description=_says(worked))  # fmt: skip
