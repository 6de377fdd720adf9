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
