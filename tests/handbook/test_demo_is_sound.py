"""What a careful reader checks by hand in the demo, beside what the checks of the build find.

The demo is what coaches copy: its exercises, its days and its words in an emergency.
"""

import re
from collections.abc import Iterator

import pytest

import demo
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Distance, Reps
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.house_rules import RULES
from strength_handbook.pages.cards.room import BAND
from strength_handbook.pages.missed_page import missed_page
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import WorkedProgram, WorkedSlot
from strength_handbook.reading.book import read_book

ALARMING = re.compile(r"\bnumb|sudden pull|\bsnap\b|down (?:an|a) (?:arm|leg)")
"""Signs for which no exercise is the answer: stop for today. Common first-aid teaching."""
HEAVY = 80.0
"""Percent of the best single that keeps strength while volume falls."""
WEEKS_WITHOUT = 2
"""Most weeks between the last heavy sets and a test: tapers cut volume and keep intensity for one
to two weeks, in rare cases four (Pritchard and others 2015, Travis and others 2020; abstracts)."""


@pytest.fixture(scope="module")
def book() -> Book:
    found = read_book(demo.PROGRAMS).book
    assert found is not None
    return found


@pytest.fixture(scope="module")
def winter(book: Book) -> WorkedProgram:
    return work_out(book).programs[0]


def slots(program: WorkedProgram) -> Iterator[tuple[int, WorkedSlot]]:
    for week in program.weeks:
        for session in week.sessions:
            yield from ((week.week, slot) for slot in session.slots)


def stops_for_today(exercise: Exercise) -> bool:
    return bool(exercise.doors.hurts.stop)


def test_an_alarming_sign_ends_the_day(book: Book) -> None:
    """Numbness, a sudden pull or pain down a limb is not answered with another exercise."""
    alarming = {
        key: [line for line in exercise.stop if ALARMING.search(line)]
        for key, exercise in book.exercises.items()
    }
    assert sum(map(bool, alarming.values())) > 10
    without = {
        key for key, lines in alarming.items() if lines and not stops_for_today(book.exercises[key])
    }
    assert without == set()
    said = [one.doors.hurts.stop or "" for one in book.exercises.values()]
    assert all("Stop for today" in words for words in said if words)


def test_what_is_walked_fast_goes_straight(book: Book, winter: WorkedProgram) -> None:
    lanes = {key: lane.length for key, lane in book.room.lanes.items()}
    fast = [
        (week, slot.exercise_id, slot.dose.work.metres, lanes[station])
        for week, slot in slots(winter)
        if isinstance(slot.dose.work, Distance) and slot.dose.said.intent == "fast"
        for station in slot.exercise.stations
        if station in lanes
    ]
    assert fast
    assert [one for one in fast if one[2] > one[3]] == []


def test_heavy_sets_go_on_until_shortly_before_a_test(winter: WorkedProgram) -> None:
    tests = {
        slot.exercise_id: (week, reps.low if (reps := slot.dose.reps) else 1)
        for week, slot in slots(winter)
        if slot.dose.said.test is not None
    }
    assert len(tests) >= 4
    heavy: dict[str, int] = {}
    for week, slot in slots(winter):
        if isinstance(slot.dose.work, Reps) and (slot.percent or 0) >= HEAVY:
            heavy[slot.exercise_id] = week
    squat_and_pull = ("trap-bar-deadlift", "yoke-bar-box-squat")
    assert all(tests[key][0] - heavy[key] <= WEEKS_WITHOUT for key in squat_and_pull)


def test_the_plan_for_an_emergency_fits_one_two_and_more(book: Book) -> None:
    roles = book.room.emergency.roles
    text = " ".join(roles)
    # The trigger comes first: when to start, before who does what.
    assert "Not responding, and not breathing normally" in roles[0]
    for people in ("Alone", "Two of you", "Three or more"):
        (line,) = [one for one in roles if one.startswith(people)]
        assert "call" in line
        assert "start" in line
        # One opens the door, and nobody is at two places.
        assert line.count("opens the yard door") == (people != "Alone")
    assert "local rules come before this list" in text


@pytest.mark.parametrize(
    ("page", "words"),
    [
        ("safety.md", ["Heavy bleeding", "Neck, back", "Seizure", "Asthma", "Heat stroke",
                       "Diabetes", "Not responding, not breathing normally"]),
        ("safety/in-the-room.md", ["Wash your hands", "Blood", "Laces", "Rings", "Drink", "cold",
                                   "red tag", "near-miss"]),
        ("safety/disability.md", ["Deaf", "Low vision", "Seated", "one hand", "tap"]),
        ("safety/spotting.md", ["ends"]),
        ("for-coaches/duties.md", ["Supervision", "Young people", "Induction", "near miss",
                                   "Out of order"]),
    ],
)  # fmt: skip
def test_a_duty_has_its_place(page: str, words: list[str]) -> None:
    text = (demo.ROOT / "handbook" / page).read_text(encoding="utf-8")
    assert [word for word in words if word.lower() not in text.lower()] == []


def test_what_is_only_lowered_is_written_so(winter: WorkedProgram) -> None:
    """Up on two and down on one: no repetition lifts what is lowered, and the checks must know."""
    seen = set()
    for week, slot in slots(winter):
        cues = " ".join(slot.exercise.cues.spoken())
        if re.search(r"\bon both\b.*\blower on one\b", cues):
            seen.add(slot.exercise_id)
            assert slot.dose.said.return_by == "both feet", (week, slot.order)
    assert seen == {"single-leg-calf-lower"}


def test_what_is_said_of_bands_can_be_kept(book: Book) -> None:
    """Bands that pull where the bar lies cannot be hung while they are slack."""
    pulling = [
        key
        for key, band in book.room.bands.items()
        if band.pulls and min(one.grams for one in band.pulls.values())
    ]
    assert pulling
    page = (demo.ROOT / "handbook/safety/bands-and-chains.md").read_text("utf-8")
    for text in (page, " ".join(BAND)):
        assert "slack" not in text
        assert "with the bar at rest" in text
        assert re.search(r"pulls? even at the bottom", text)


def test_nobody_is_sent_away_from_where_a_partner_stands(book: Book) -> None:
    for key, one in book.exercises.items():
        if re.search(r"\bpartner stands behind\b", one.spotting.where):
            assert not [line for line in one.set_up if line.startswith("Nobody")], key
    assert "partner" in book.exercises["fast-step-up"].set_up[-1]


def test_coaches_read_how_many_new_skills_the_check_allows() -> None:
    words = {3: "three", 8: "eight"}
    most, at_first = (words[int(RULES[key].default)] for key in ("new-skills", "new-skills-start"))
    text = (demo.ROOT / "handbook/for-coaches/write-a-program.md").read_text("utf-8")
    assert re.search(
        rf"{most} new skills in a session. In the first week .*\b{at_first} at most", text
    )


def test_after_two_weeks_away_a_member_reads_what_is_left_out(winter: WorkedProgram) -> None:
    """Only lowered, left open or tested in the first two weeks: named with letter and session."""
    html = missed_page(winter).html
    wanted = {
        f"{slot.order} {slot.exercise.name}"
        for week, slot in slots(winter)
        if week <= 2 and (slot.dose.said.return_by or slot.dose.said.test or slot.dose.ends_open)
    }
    assert {"C Nordic lower", "D2 Single-leg calf lower"} <= wanted
    named = re.search(r"<dt>Two weeks or more</dt><dd>.*?leaves out: (.*?)\.</dd>", html)
    assert named is not None
    assert set(re.findall(r"(\w+ [^,(]+) \(", named[1])) == wanted
