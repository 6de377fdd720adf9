"""Cards for the stations: one for each exercise of a wave, with the loads of its weeks."""

import re
from collections import Counter
from collections.abc import Mapping
from html import unescape
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
import pytest

import demo
from books import base, exercise, slot, work
from oracle import oracle
from strength_handbook.pages.cards.code import LETTERS, words_of
from strength_handbook.pages.cards.page import cards_pages
from strength_handbook.pages.cards.strips import shown_rows
from strength_handbook.pages.exercise_page import exercise_page
from strength_handbook.pages.page import Page
from strength_handbook.plan.dose_hazards import cautions_of
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book

HEADING = re.compile(r"<h([1-6])\b")
CODE = re.compile(r"[Cc]ard code <b>(\w+)</b>")


@pytest.fixture(scope="module")
def worked() -> Worked:
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    return work_out(book)


@pytest.fixture(scope="module")
def pages(worked: Worked) -> list[Page]:
    return cards_pages(worked)


@pytest.fixture(scope="module")
def cards(pages: list[Page]) -> dict[str, str]:
    return cards_of(pages)


def cards_of(pages: list[Page]) -> dict[str, str]:
    """Each card's HTML by the id of its heading."""
    found: dict[str, str] = {}
    for page in pages:
        for article in re.findall(r"<article\b.*?</article>", page.html, re.DOTALL):
            name = re.search(r'<h2 id="([^"]+)"', article)
            assert name is not None
            assert name[1] not in found
            found[name[1]] = article
    return found


def rows_of(card: str) -> dict[str, list[str]]:
    """The rows of a card's strip: tested value, and the cells after it."""
    rows = re.findall(r'<tr><th scope="row">(.*?)</th>(.*?)</tr>', card)
    return {best: re.findall(r"<td>(?:<b>)?(.*?)(?:</b>)?</td>", cells) for best, cells in rows}


def heads_of(card: str) -> list[tuple[str, str]]:
    """Weeks and share of each column of loads."""
    return re.findall(r'<th scope="col"[^>]*>(Weeks? [^<]*)<br>([\d.]+)', card)


def code_of(card: str) -> str:
    found = CODE.search(card)
    assert found is not None
    return found[1]


def one_lift(folder: Path, weeks: Mapping[str, str] | str = "3x5 @70%", **more: Any) -> Worked:
    """A book of one lift in one session."""
    return work(
        folder,
        exercises={"lift": exercise(**more)},
        sessions={"a": [slot("A", "lift", weeks, base="best")]},
        bases={"best": base()},
    )


def test_every_exercise_of_a_wave_has_its_card_and_no_other(
    worked: Worked, cards: dict[str, str]
) -> None:
    wanted = {
        f"{program.id}--{week.wave_id}--{slot.exercise_id}"
        for program in worked.programs
        for week in program.weeks
        for session in week.sessions
        for slot in session.slots
    }
    assert len(wanted) > 30
    assert {"--".join(key.split("--")[:3]) for key in cards if "--" in key} == wanted


def test_the_trap_bar_card_of_the_first_wave(worked: Worked, cards: dict[str, str]) -> None:
    wave = worked.programs[0].week(3).wave_id
    card = cards[f"{worked.programs[0].id}--{wave}--trap-bar-deadlift"]
    loads = dict(zip(heads_of(card), rows_of(card)["140"], strict=False))
    # 78 % of 140 kg is 109.2 kg; the trap bar with the room's plates makes 107.5 kg below it.
    assert loads["Week 3", "78"] == "107.5"
    assert re.findall("<li>“(.*?)”</li>", card) == [
        "Push the floor away.", "Set it down like a sleeping casualty.",
        "Pull the slack out of the bar.",
    ]  # fmt: skip
    assert "Two kettlebells beside the feet" in card
    assert "rest\u00a02:30 (week 4: 2:00)" in card


def test_a_carry_is_read_off_by_body_weight(worked: Worked, cards: dict[str, str]) -> None:
    wave = worked.programs[0].week(1).wave_id
    card = cards[f"{worked.programs[0].id}--{wave}--suitcase-carry"]
    assert heads_of(card) == [("Weeks 1, 4", "25"), ("Week 2", "27.5"), ("Week 3", "30")]
    # 30 % of 75 kg is 22.5 kg: the handle's 10 kg, and 6.25 kg on each side.
    assert rows_of(card)["75"][2:] == ["22.5", "5 · 1.25"]


def test_the_plates_are_those_of_the_heaviest_week(cards: dict[str, str]) -> None:
    checked = 0
    for card in cards.values():
        head = re.search(
            r'<th scope="col"[^>]*>plates each side of the trap bar, (weeks? [^<]+)</th>', card
        )
        if head is None:
            continue
        weeks = [weeks[0].lower() + weeks[1:] for weeks, _ in heads_of(card)]
        for cells in rows_of(card).values():
            *loads, plates = cells
            numbers = [float(load) for load in loads if load != "–"]
            if plates and plates != "empty" and len(numbers) == len(weeks):
                side = sum(float(part) for part in plates.split(" · "))
                heaviest = float(loads[weeks.index(head[1])])
                # The demo's trap bar is 25 kg and its collars weigh nothing.
                assert heaviest == max(numbers) == 25 + 2 * side
                checked += 1
    assert checked > 10


def test_a_week_with_two_loads_says_which_session_each_is_for(
    worked: Worked, cards: dict[str, str]
) -> None:
    wave = worked.programs[0].week(9).wave_id
    card = cards[f"{worked.programs[0].id}--{wave}--trap-bar-deadlift"]
    heads = [weeks for weeks, _ in heads_of(card)]
    assert "Week 9 Descend" in heads
    assert len(set(heads)) == len(heads)


def test_each_card_says_which_version_it_is_and_when_to_remove_it(
    worked: Worked, cards: dict[str, str]
) -> None:
    program = worked.programs[0].program
    last = f"Version {program.version}. Remove after {program.valid_until}."
    assert all(last in card for key, card in cards.items() if "--" in key)


@pytest.mark.parametrize(
    ("more", "expected"),
    [
        ({}, "Remove when the version changes."),
        # Week 2 of a program that starts on Monday, 4 January ends on Sunday, 17 January.
        ({"start": "2027-01-04"}, "Remove after 2027-01-17."),
        ({"start": "2027-01-04", "valid_until": "2027-01-10"}, "Remove after 2027-01-10."),
        ({"start": "2027-01-04", "valid_until": "2027-06-30"}, "Remove after 2027-01-17."),
    ],
)
def test_the_last_day_is_the_wave_s_or_the_version_s(
    tmp_path: Path, more: dict[str, str], expected: str
) -> None:
    made = work(
        tmp_path,
        exercises={"lift": exercise()},
        sessions={"a": [slot("A", "lift", {"1": "3x5", "2": "3x5"})]},
        **more,
    )
    assert expected in cards_of(cards_pages(made))["plan--first--lift"].replace("\n", " ")


def test_lifts_in_a_rack_have_blanks_to_fill_in_and_each_hazard_its_caution(
    worked: Worked, cards: dict[str, str]
) -> None:
    for key, card in cards.items():
        if "--" not in key:
            continue
        lift = worked.book.exercises[key.split("--")[2]]
        assert ("<span>rack hole</span>" in card) == ("rack" in (*lift.stations, *lift.uses))
        # The first caution is one that a week of this wave brings.
        wave, name = key.split("--")[1:3]
        doses = [use.slot.dose for use in worked.uses[name] if use.week.wave_id == wave]
        firsts = {one for dose in doses for one in cautions_of(lift, [dose])[:1]}
        assert not firsts or any(first in unescape(card) for first in firsts)


def test_a_card_says_nothing_twice_of_how_heavy(cards: dict[str, str]) -> None:
    checked = 0
    for key, card in cards.items():
        if (found := re.search(r"<p><b>How heavy</b> (.*?)</p>", card)) is None:
            continue
        sentences = re.split(r"(?<=[.?]) (?=[A-Z])", unescape(found[1]))
        assert [one for one, times in Counter(sentences).items() if times > 1] == [], key
        checked += 1
    assert checked > 30


def test_what_is_loaded_on_each_side_has_a_place_on_cards_of_bars(cards: dict[str, str]) -> None:
    for key, blanks in {
        "winter--go--trap-bar-deadlift": ["load today", "plates each side"],
        "winter--hold--cable-row": ["load today"],
    }.items():
        found = re.search(r'sh-station-blanks">(.*?)</p>', cards[key])
        assert found is not None
        assert re.findall(r"<span>(.*?)</span>", found[1]) == blanks


def test_ids_are_unique_and_headings_in_order(pages: list[Page]) -> None:
    for page in pages:
        ids = re.findall(r'\bid="([^"]+)"', page.html)
        assert [name for name, count in Counter(ids).items() if count > 1] == []
        assert {heading.id for heading in page.headings} <= set(ids)
        levels = [int(level) for level in HEADING.findall(page.html)]
        assert levels[:2] == [1, 2]
        assert all(after <= before + 1 for before, after in pairwise(levels))


def test_a_program_without_dates_in_several_sessions(tmp_path: Path) -> None:
    weeks = {"1": "3x5 @70%", "2": "3x5 @80%"}
    made = work(
        tmp_path,
        exercises={"lift": exercise()},
        sessions={
            "a": [slot("A", "lift", weeks, base="best")],
            "b": [slot("A", "lift", "2x5 @60%", base="best", doors={"taken": "Come back later."})],
        },
        bases={"best": base()},
    )
    card = cards_of(cards_pages(made))["plan--first--lift"]
    assert "Plan · First · weeks 1 to 2" in card
    assert "Remove when the version changes." in card
    assert "Weeks 1, 2 A: As it is. Week 1 B: Come back later." in card
    assert heads_of(card) == [("Week 1 A", "70"), ("Week 1 B", "60"), ("Week 2", "80")]
    # 70, 60 and 80 % of 100 kg on a 20 kg bar with pairs from 1.25 kg.
    assert rows_of(card)["100"] == ["70", "60", "80", "25 · 5"]


@pytest.mark.parametrize("count", [1, 2, 16, 31, 32, 33, 34, 41, 200])
@pytest.mark.parametrize("most", [7, 16])
def test_rows_are_every_second_and_no_more_than_fit(count: int, most: int) -> None:
    rows = list(shown_rows(count, most))
    assert len(rows) == min(most, (count + 1) // 2)
    assert all(row % 2 == 0 and row < count for row in rows)
    assert {after - before for before, after in pairwise(rows)} <= {2}


# The code of what a card says


def test_a_card_s_code_is_the_one_on_its_page_and_in_the_list(
    worked: Worked, pages: list[Page]
) -> None:
    checked = 0
    in_list = re.sub(r"<[^>]+>", "", pages[0].html)
    for key in worked.book.exercises:
        own = [c for name, c in cards_of(pages).items() if f"--{key}" in name and name.count("--")]
        own = [card for card in own if f"exercises/{key}/" in card]
        codes = [code_of(card) for card in own]
        page = exercise_page(worked, key)
        assert CODE.findall(page.html) == codes
        assert all(code in in_list for code in codes)
        checked += len(codes)
    assert checked > 50


def test_codes_have_letters_that_cannot_be_mistaken(cards: dict[str, str]) -> None:
    assert not set(LETTERS) & set("0O1IL2Z5S8BUV")
    for card in cards.values():
        assert re.fullmatch(f"[{LETTERS}]{{5}}", code_of(card))


def test_the_links_on_an_exercise_s_page_lead_to_its_cards(
    worked: Worked, pages: list[Page]
) -> None:
    there = {f"{page.url}#{heading.id}" for page in pages for heading in page.headings}
    for key in worked.book.exercises:
        html = exercise_page(worked, key).html
        for target in re.findall(r'<a href="\.\./\.\./(cards/[^"]+)"', html):
            assert target in there


CHANGES: dict[str, dict[str, Any]] = {
    "name": {"name": "Lift it"},
    "set-up": {"set_up": ["Clear the floor.", "Load the bar.", "Close both collars."]},
    "cue": {"cues": {"before": ["Stand taller."]}},
    "stop": {"stop": ["End the set when the form has gone."]},
    "spotting": {
        "spotting": {"spotters": 1, "where": "Behind.", "alone": "fine", "alone-how": "As it is."}
    },
    "alone": {
        "spotting": {"spotters": 0, "where": "None.", "alone": "no", "alone-how": "As it is."}
    },
    "hazard": {"hazards": ["heavy-pull"]},
    "caution": {"cautions": ["Mind the step."]},
}


@pytest.mark.parametrize("what", CHANGES)
def test_another_word_in_the_exercise_gives_another_code(tmp_path: Path, what: str) -> None:
    before = cards_of(cards_pages(one_lift(tmp_path / "1")))["plan--first--lift"]
    after = cards_of(cards_pages(one_lift(tmp_path / "2", **CHANGES[what])))["plan--first--lift"]
    assert code_of(before) != code_of(after)


@pytest.mark.parametrize("dose", ["3x5 @71%", "3x6 @70%", "4x5 @70%", "3x5 @70% rest 2:00"])
def test_another_number_in_the_dose_gives_another_code(tmp_path: Path, dose: str) -> None:
    before = cards_of(cards_pages(one_lift(tmp_path / "1")))["plan--first--lift"]
    after = cards_of(cards_pages(one_lift(tmp_path / "2", dose)))["plan--first--lift"]
    assert code_of(before) != code_of(after)


def test_what_a_card_does_not_say_leaves_its_code(tmp_path: Path) -> None:
    before = cards_of(cards_pages(one_lift(tmp_path / "1")))["plan--first--lift"]
    after = cards_of(cards_pages(one_lift(tmp_path / "2", why="To be stronger still.")))
    assert code_of(before) == code_of(after["plan--first--lift"])


def test_equal_codes_stand_on_equal_words_only(cards: dict[str, str]) -> None:
    words: dict[str, str] = {}
    for card in cards.values():
        text = words_of(card).replace(code_of(card), "")
        assert words.setdefault(code_of(card), text) == text


# The code for a phone


def test_without_an_address_there_is_no_code_for_a_phone_but_the_path(pages: list[Page]) -> None:
    assert not any("sh-station-code" in page.html for page in pages)
    assert "site's address is not known" in pages[0].html
    for key, card in cards_of(pages).items():
        if "--" in key:
            assert f"exercises/{key.split('--')[2]}/" in words_of(card)


def test_a_phone_reads_the_address_of_the_exercise_s_page(worked: Worked) -> None:
    home = "https://handbook.example.org/fell/"
    zxing = oracle("zxingcpp")
    with_codes = cards_of(cards_pages(worked, home))
    for key in [key for key in with_codes if "--" in key][::9]:
        card = with_codes[key]
        found = zxing.read_barcodes(picture(card))
        assert [one.text for one in found] == [f"{home}exercises/{key.split('--')[2]}/"]


def picture(card: str) -> "np.ndarray[tuple[int, ...], np.dtype[np.uint8]]":
    """The card's SVG code in black and white: lines of one unit, drawn as horizontal strokes."""
    size = re.search(r'viewBox="0 0 (\d+) \d+"', card)
    strokes = re.search(r'stroke="#000" d="([^"]+)"', card)
    assert size is not None
    assert strokes is not None
    dots = np.full((int(size[1]), int(size[1])), 255, dtype=np.uint8)
    x, y = 0.0, 0.0
    for kind, numbers in re.findall(r"([Mmh])([^Mmh]+)", strokes[1]):
        parts = [float(part) for part in re.findall(r"-?[\d.]+", numbers)]
        if kind == "h":
            dots[int(y), int(x) : int(x + parts[0])] = 0
            x += parts[0]
        else:
            x, y = (parts[0], parts[1]) if kind == "M" else (x + parts[0], y + parts[1])
    return np.kron(dots, np.ones((6, 6), dtype=np.uint8))


def test_a_code_for_a_phone_changes_no_other_code(worked: Worked, cards: dict[str, str]) -> None:
    with_codes = cards_of(cards_pages(worked, "https://handbook.example.org/"))
    assert {key: code_of(card) for key, card in with_codes.items()} == {
        key: code_of(card) for key, card in cards.items()
    }


# Cards of the room


def test_the_room_has_an_emergency_card_and_one_for_each_hazard(
    worked: Worked, cards: dict[str, str]
) -> None:
    emergency = worked.book.room.emergency
    for words in (emergency.number, emergency.entrance, emergency.defibrillator, *emergency.roles):
        assert words in unescape(cards["emergency"])
    assert "29-a, 29-b, 45-a" in cards["bands"]
    assert str(worked.book.room.chains["chain-16"].until) in cards["chains"]


def test_a_room_without_bands_and_chains_has_no_card_for_them(tmp_path: Path) -> None:
    found = cards_of(cards_pages(one_lift(tmp_path)))
    assert [key for key in found if "--" not in key] == ["emergency"]
