"""Cards for the room: what to do when somebody is hurt, and what bands and chains can do."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from strength_handbook.model.paper import Size
from strength_handbook.model.room import Room
from strength_handbook.pages.cards.code import content_code
from strength_handbook.pages.cards.fit import inside_of
from strength_handbook.pages.cards.text_size import height
from strength_handbook.pages.page import Heading, Page, link
from strength_handbook.pages.render import render, safe

URL = "cards/room/"
_CODE, _PICK = "<!--card-code-->", "<!--pick-->"
_FRAME = Size(28.0, 9.0)
"""What a frame and its padding take: of the width, and of the height."""
_SIZES = (18.0, 16.0, 15.0, 14.0, 13.0, 12.0, 11.0, 10.0, 9.0, 8.0, 7.0, 6.0)

BAND = tuple(
    """\
Before use run it through your fingers. A nick, a thin edge, a sticky or faded patch, a knot, \
no number: put it aside and tell the coach.
Hang it on rated pegs or a fixed frame only, on a smooth round part, fully seated. Never on a \
door, a machine arm, a dumbbell or a foot that moves.
Face and eyes out of its line. Nobody on the far side.
It may pull even at the bottom. Hang it and take it off with the bar at rest: peg end first on, \
bar end first off, both hands, slowly. Never step over a stretched one.
Plates on first, bands on last. Bands off first, plates off last.
No further than the maker allows.
""".splitlines()
)
CHAIN = tuple(
    """\
Hang it from the leader with a rated hook that closes. The same link on both sides, outside the \
plates, then the collar.
Part of each chain stays on the floor, even at the top.
Toes out from under it. One that drops from the collar can break a foot.
No swinging. No wrap round bar, hand, wrist or neck.
No burr, no open link: put it aside and tell the coach.
Sweep the floor afterwards.
""".splitlines()
)
FIRST = "The maker's leaflet and the staff's word come first."
"""What stands on each hazard card."""


@dataclass(frozen=True, slots=True)
class RoomCard:
    """One card: the id of its heading, its name, its HTML, and the code of its content."""

    id: str
    name: str
    html: str
    code: str


def room_cards(room: Room) -> tuple[RoomCard, ...]:
    """The emergency card, and a hazard card for each kind of thing that the room has."""
    return tuple(_cards(room))


def room_cards_page(room: Room) -> Page:
    """The page of them."""
    cards = room_cards(room)
    values = {
        "list": link(URL, "cards/"),
        "cards": [safe(_finished(card)) for card in cards],
        "paper": room.printed_on(),
    }
    headings = tuple(Heading(2, card.id, card.name) for card in cards)
    return Page(URL.rstrip("/") + ".md", "Cards: room", render("room_cards.html", values),
                headings, parent="cards.md",
                description="Cards for every exit, and where hazards hang")  # fmt: skip


def _finished(card: RoomCard) -> str:
    pick = render("card_pick.html", {"id": card.id, "link": ""})
    return card.html.replace(_CODE, card.code).replace(_PICK, pick)


def _cards(room: Room) -> Iterator[RoomCard]:
    e = room.emergency
    places = [
        ("Address", e.address), ("Entrance", e.entrance), ("Defibrillator", e.defibrillator),
        ("First aid", e.first_aid), ("Phone", e.phone), ("Eye wash", e.eye_wash), ("Ice", e.ice),
        ("After hours", e.after_hours), ("Training alone", e.lone_training),
    ]  # fmt: skip
    yield _card(
        "emergency", "If someone is hurt", room, tuple(e.roles),
        number=e.number, places=[(name, words) for name, words in places if words],
        blank="this door",
    )  # fmt: skip
    if room.bands:
        dates: dict[str, list[str]] = {}
        for key, band in room.bands.items():
            dates.setdefault(str(band.until or ""), []).append(key)
        known = [(f"Until {day}", ", ".join(keys)) for day, keys in sorted(dates.items()) if day]
        yield _card("bands", "Bands hit hard", room, BAND, places=known, first=FIRST)
    if room.chains:
        known = [
            (chain.name, f"looked over by {chain.until}")
            for chain in room.chains.values()
            if chain.until is not None
        ]
        yield _card("chains", "Chains fall and pinch", room, CHAIN, places=known, first=FIRST)


def _card(
    key: str,
    name: str,
    room: Room,
    lines: tuple[str, ...],
    *,
    places: list[tuple[str, str]],
    number: str = "",
    blank: str = "",
    first: str = "",
) -> RoomCard:
    values: dict[str, Any] = {
        "id": key,
        "name": name,
        "gym": room.gym,
        "lines": lines,
        "places": places,
        "number": number,
        "blank": blank,
        "first": first,
    }
    inside = inside_of(room.printed_on())
    wide, tall = inside.width - _FRAME.width, inside.height - _FRAME.height
    size = next((s for s in _SIZES if _height(values, s, wide) <= tall), _SIZES[-1])
    html = render("room_card.html", values | {"size": size})
    return RoomCard(key, name, html, content_code(html))


def _height(values: dict[str, Any], size: float, wide: float) -> float:
    total = 30 * 1.1 * 2 + (70 if values["number"] else 0) + (34 if values["blank"] else 0) + 26
    for line in (*values["lines"], values["first"]):
        total += height(line, size, wide - 1.5 * size, 1.22, bold=True) + size * 0.25
    for name, words in values["places"]:
        total += height(f"{name} {words}", size, wide, 1.22, bold=True) + size * 0.25
    return total
