"""Cards of what is rowed, run and ridden: the strip is that of the page, and its sums are right."""

from fractions import Fraction
from pathlib import Path
from typing import Any

from books import LB_ROOM, exercise, slot, work
from strength_handbook.model.paper import A4, LETTER
from strength_handbook.pages.cards.card import Card, make_card, parts_of
from strength_handbook.pages.cards.fit import card_height, fit, inside_of
from strength_handbook.pages.cards.page import cards_pages
from strength_handbook.plan.worked import Worked

EXERCISES = {
    "rower": exercise("Rower", {"kind": "endurance", "of": "row"}, pattern="endurance"),
    "bike": exercise("Bike", {"kind": "endurance", "of": "ride"}, pattern="endurance"),
    "stair": exercise("Stair", {"kind": "endurance", "of": "step"}, pattern="endurance"),
    "lift": exercise("Lift"),
}
BESTS: dict[str, Any] = {
    "row-2k": {"name": "2 km row", "exercise": "rower", "over": "2 km",
               "from": "6:20", "to": "9:20", "by": "10 s"},
    "ride-20": {"name": "20 min ride", "exercise": "bike", "over": "20 min",
                "from": "100 W", "to": "300 W", "by": "10 W"},
}  # fmt: skip
ROWS = {
    "1": "6x500 m @ pace +8 s, rest 2:00",
    "2": "4x1 km @ pace +10-12 s, rest 3:00",
    "3": "8x500 m @ pace +8 s, rest 2:00",
    "4": "1x20 min @ 80 %",
}
NBSP = "\u00a0"


def club(root: Path) -> Worked:
    slots = [
        slot("A", "rower", ROWS, base="row-2k"),
        slot("B", "bike", {"1": "1x20 min @ 75 %", "2": "1x30 min @ 65-70 %"}, base="ride-20"),
        slot("C", "stair", {"1": "1x10 min, RPE 5"}),
        slot("D", "lift", {"1": "3x5 @ 95 lb"}),
    ]
    return work(
        root, exercises=EXERCISES, sessions={"a": slots}, room=LB_ROOM, bests=BESTS
    )  # fmt: skip


def card_of(worked: Worked, key: str) -> Card:
    part = next(parts_of(worked))
    return make_card(worked, part, key, dict(part.uses(worked))[key])


def clock(seconds: Fraction) -> str:
    """To the tenth of a second, half a tenth upwards."""
    tenths = int(seconds * 10 + Fraction(1, 2))
    whole, tenth = divmod(tenths, 10)
    return f"{whole // 60}:{whole % 60:02d}" + (f".{tenth}" if tenth else "")


def test_each_pace_has_a_column_and_each_piece_its_time(tmp_path: Path) -> None:
    card = card_of(club(tmp_path), "rower")
    (strip,) = card.strips
    heads = [(column.weeks, column.share.replace(NBSP, " ")) for column in strip.columns]
    assert heads == [
        ("Weeks 1, 3", "pace +8 s, for 500 m"),
        ("Week 2", "pace +10–12 s, for 500 m"),
        ("Week 2", "each 1 km"),
        ("Week 4", "80 %, for 500 m"),
    ]
    assert strip.first.replace(NBSP, " ") == "your best, 2 km"
    assert len(strip.rows) == 19
    for place, (best, cells, plates) in enumerate(strip.rows):
        tested = Fraction(380 + 10 * place, 4)  # 2 km are four times 500 m
        slower = (tested + 10, tested + 12)
        assert plates == ""
        assert best == clock(4 * tested)
        assert cells == (
            clock(tested + 8),
            "–".join(map(clock, slower)),
            "–".join(clock(2 * one) for one in slower),
            clock(tested * Fraction(100, 80)),
        )


def test_watts_of_a_ride(tmp_path: Path) -> None:
    (strip,) = card_of(club(tmp_path), "bike").strips
    assert [column.share.replace(NBSP, " ") for column in strip.columns] == [
        "75 %, W",
        "65–70 %, W",
    ]
    for place, (best, cells, _) in enumerate(strip.rows):
        watts = 100 + 10 * place
        assert best.replace(NBSP, " ") == f"{watts} W"
        assert cells[0] == f"{int(Fraction(watts * 75, 100) + Fraction(1, 2))}"
        assert cells[1] == "–".join(
            f"{int(Fraction(watts * share, 100) + Fraction(1, 2))}" for share in (65, 70)
        )


def test_a_card_asks_for_a_pace_and_never_for_plates(tmp_path: Path) -> None:
    worked = club(tmp_path)
    row, stair, lift = (card_of(worked, key) for key in ("rower", "stair", "lift"))
    assert (row.asked, stair.asked, lift.asked) == ("How fast", "How fast", "How heavy")
    assert (row.blanks, stair.blanks) == (("pace today",), ("level today",))
    assert "plates each side" in lift.blanks
    assert "Between two rows take the slower one" in row.how
    assert "The table is on" not in row.how
    assert stair.strips == ()


def test_it_fits_both_papers_and_is_printed(tmp_path: Path) -> None:
    worked = club(tmp_path)
    for paper in (A4, LETTER):
        inside = inside_of(paper)
        shown, step = fit(card_of(worked, "rower"), inside)
        assert not shown.shortened
        assert card_height(shown, step, inside) <= inside.height
    (page,) = (one for one in cards_pages(worked) if one.uri == "cards/plan/first.md")
    assert "<b>How fast</b>" in page.html
    # Every second row: 7:40 over 2 km is 1:55 for 500 m; 8 s more are 2:03.
    assert "<b>2:03</b>" in page.html
