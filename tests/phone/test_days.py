"""Which week and day today is: the phone's answer against Python's calendar."""

import json
import random
from datetime import UTC, date, datetime, timedelta
from itertools import pairwise
from typing import Any
from zoneinfo import ZoneInfo

import pytest

import demo
from strength_handbook.model.book import Book
from strength_handbook.pages.tools_html import days_data
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.book import read_book
from tools_page import tools_page

pytestmark = pytest.mark.browser

EPOCH = date(1970, 1, 1)
ZONES = (
    "UTC", "Europe/London", "America/New_York", "America/Sao_Paulo", "Asia/Kolkata",
    "Australia/Lord_Howe", "Pacific/Kiritimati", "Pacific/Pago_Pago",
)  # fmt: skip
# Two waves, each with sessions of its own; week 5 has none; the optional one has no weekday.
PROGRAM: dict[str, Any] = {
    "id": "spring",
    "at": "spring/",
    "start": "2027-01-04",
    "first": 1,
    "last": 6,
    "runs": [
        [1, 4, [["a", "Push", 0, 0], ["b", "Pull", 3, 2]], [[50, 60]] * 4],
        [5, 5, [], [[]]],
        [6, 6, [["c", "Legs", 5, 0], ["d", "Walk", -1, 1]], [[45, 30]]],
    ],
}


def moments(zone: str) -> list[datetime]:
    """Seconds around midnight of many days, turns of years and of summer time among them."""
    rng = random.Random(zone)
    days = [date(2026, 12, 31), date(2027, 1, 1), date(2028, 2, 29), date(2028, 12, 31)]
    here = ZoneInfo(zone)
    noon = [datetime(2026, 1, 1, 12, tzinfo=here) + timedelta(days=one) for one in range(800)]
    days += [one.date() for one, after in pairwise(noon) if one.utcoffset() != after.utcoffset()]
    days += [date(2026, 1, 1) + timedelta(days=rng.randrange(2000)) for _ in range(60)]
    seconds = (-3601, -1, 0, 1, 3599, 7201, 43_200)
    return [
        datetime(day.year, day.month, day.day, tzinfo=here).astimezone(UTC)
        + timedelta(seconds=late)
        for day in days
        for late in seconds
    ]


@pytest.mark.parametrize("zone", ZONES)
def test_a_day_is_the_local_calendar_s(zone: str) -> None:
    asked = moments(zone)
    with tools_page("days", zone=zone) as page:
        found = page.evaluate(
            """all => all.map(ms => {
                const { number, iso, monday } = strengthHandbook.days;
                const day = number(new Date(ms));
                return [iso(day), iso(monday(day))];
            })""",
            [one.timestamp() * 1000 for one in asked],
        )
    local = [one.astimezone(ZoneInfo(zone)).date() for one in asked]
    assert found == [
        [day.isoformat(), (day - timedelta(days=day.weekday())).isoformat()] for day in local
    ]


def test_texts_that_are_no_day() -> None:
    texts: list[Any] = ["2027-01-04", "2028-02-29", "2027-02-29", "2027-02-30", "2027-13-01",
             "27-01-04", "", "2027-01-04T00:00", "x", None, 5, {}]  # fmt: skip
    with tools_page("days") as page:
        found = page.evaluate("all => all.map(strengthHandbook.days.parse)", texts)
    known = [(date(2027, 1, 4) - EPOCH).days, (date(2028, 2, 29) - EPOCH).days]
    assert found == [*known, *[None] * (len(texts) - 2)]


def expected(program: dict[str, Any], start: date, day: date) -> dict[str, Any]:
    """The same looked up day by day, going forward until there is a session."""
    first, last = program["first"], program["last"]

    def on(one: date) -> list[str]:
        week, weekday = divmod((one - start).days, 7)
        return [
            f"{program['at']}week-{week + 1:02d}/{session[0]}/"
            for low, high, sessions, _ in program["runs"]
            if low <= week + 1 <= high
            for session in sessions
            if session[2] == weekday
        ]

    week = (day - start).days // 7 + 1
    end = start + timedelta(weeks=last)
    later = (day + timedelta(days=one) for one in range(1, max((end - day).days, 1)))
    coming = next((found[0] for one in later if (found := on(one))), None)
    when = "before" if week < first else "after" if week > last else "in"
    return {"when": when, "week": week, "today": on(day), "next": coming}


def dated(program: dict[str, Any]) -> dict[str, Any]:
    """The same without sessions that have no weekday: those have no day to be found on."""
    runs = [
        [
            low,
            high,
            [one for one in sessions if one[2] >= 0],
            [[m for m, one in zip(week, sessions, strict=True) if one[2] >= 0] for week in minutes],
        ]
        for low, high, sessions, minutes in program["runs"]
    ]
    return program | {"runs": runs}


def winter() -> WorkedProgram:
    result = read_book(demo.PROGRAMS)
    assert isinstance(result.book, Book)
    return work_out(result.book).programs[0]


def test_every_day_of_a_program_and_around_it() -> None:
    block = str(days_data(winter(), ""))
    demo_program = json.loads(block[block.index(">") + 1 : block.rindex("<")])
    for program in (dated(PROGRAM), dated(demo_program)):
        start = date(2026, 12, 28)
        days = [start + timedelta(days=one) for one in range(-20, 7 * program["last"] + 20)]
        with tools_page("days") as page:
            found = page.evaluate(
                """([program, start, all]) => all.map(day => {
                    const { when, week, today, next } = strengthHandbook.days.find(
                        program, start, day);
                    const at = today.map(one => one.at);
                    return { when, week, today: at, next: next ? next.at : null };
                })""",
                [program, (start - EPOCH).days, [(day - EPOCH).days for day in days]],
            )
        assert found == [expected(program, start, day) for day in days]


def test_i_am_in_week_n() -> None:
    cases = [
        ((date(2026, 12, 1) + timedelta(days=day) - EPOCH).days, week)
        for day in range(60)
        for week in (1, 6, 60)
    ]
    with tools_page("days") as page:
        found = page.evaluate(
            """all => all.map(([day, week]) => {
                const { startFor, monday, find } = strengthHandbook.days;
                const program = { at: '', first: 1, last: 60, runs: [[1, 60, [], []]] };
                const start = startFor(week, day);
                return [start === monday(start), find(program, start, day).week];
            })""",
            cases,
        )
    assert found == [[True, week] for _, week in cases]
