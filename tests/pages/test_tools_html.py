"""What pages carry for the small tools: days of a program, filters, limits of a retest."""

import json
import re
from math import sqrt
from pathlib import Path

import pytest

import demo
from strength_handbook.model.book import Book
from strength_handbook.model.weeks import WEEKDAYS
from strength_handbook.pages.bar_html import bar_attributes, has_shared_bar
from strength_handbook.pages.day_of_tests import day_of_tests_page
from strength_handbook.pages.exercise_filters import left_out_by
from strength_handbook.pages.missed_page import missed_page
from strength_handbook.pages.my_log_page import my_log_page
from strength_handbook.pages.page import Page
from strength_handbook.pages.tools_html import OPTIONAL, VARIANTS, days_data
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book


def read(folder: Path) -> Worked:
    result = read_book(folder)
    assert isinstance(result.book, Book)
    return work_out(result.book)


@pytest.fixture(scope="module")
def worked() -> Worked:
    return read(demo.PROGRAMS)


def data_of(html: str, name: str) -> dict[str, object]:
    found = re.search(rf'class="{name}">(.*?)</script>', html)
    assert found is not None
    data: dict[str, object] = json.loads(found[1])
    return data


def test_every_session_of_every_week_is_in_the_block(worked: Worked) -> None:
    program = worked.programs[0]
    data = data_of(str(days_data(program, "")), "sh-days")
    runs = data["runs"]
    assert isinstance(runs, list)
    assert (data["first"], data["last"]) == (1, len(program.weeks))
    assert data["at"] == f"{program.id}/"
    for week in program.weeks:
        [found] = [run[2] for run in runs if run[0] <= week.week <= run[1]]
        expected = [
            [
                one.id,
                one.session.title,
                WEEKDAYS.index(one.session.day) if one.session.day else -1,
                (OPTIONAL if one.session.optional else 0)
                + (VARIANTS if one.session.variants else 0),
            ]
            for one in week.sessions
        ]
        assert found == expected
    # Weeks with the same sessions stand together.
    assert len(runs) <= 3 * len({week.wave_id for week in program.weeks})


def test_a_start_and_a_title_that_would_end_the_block(tmp_path: Path) -> None:
    root = demo.copy_demo(tmp_path)
    winter = root / "programs" / "winter"
    demo.change(winter / "program.yml", "warm-up: 11 min", "start: 2027-01-04\nwarm-up: 11 min")
    demo.change(winter / "1-brakes.yml", "title: Lift", "title: </script> & lift")
    block = str(days_data(read(root / "programs").programs[0], "winter/week-01/"))
    data = data_of(block, "sh-days")
    assert data["start"] == "2027-01-04"
    assert data["at"] == "../"
    assert block.count("</script>") == 1
    assert "</script> & lift" in json.dumps(data)


@pytest.mark.parametrize(
    ("exercise", "left_out"),
    [
        ("standing-press", {"overhead", "breath", "kit"}),
        ("landmine-push-press", {"overhead", "kit"}),
        ("box-jump", {"jump"}),
        ("nordic-lower", set()),
        ("overcoming-trap-bar-pull", {"breath", "kit"}),
        ("farmer-carry", {"kit"}),
    ],
)
def test_filters_follow_from_what_the_coach_wrote(
    worked: Worked, exercise: str, left_out: set[str]
) -> None:
    found = set(left_out_by(worked.book.room, worked.book.exercises[exercise]).split())
    assert found - {"alone"} == left_out
    alone = worked.book.exercises[exercise].spotting.alone == "fine"
    assert ("alone" not in found) == alone


def test_bars_that_can_be_shared(worked: Worked) -> None:
    session = worked.programs[0].week(3).sessions[1]
    assert session.id == "b-descend"
    slots = {slot.exercise_id: slot for slot in session.slots}
    # Five repetitions of five seconds down and one up.
    assert bar_attributes(worked, slots["yoke-bar-box-squat"]) == ' data-sets="4" data-work="30"'
    week = worked.programs[0].week(9)
    quick = {slot.exercise_id: slot for one in week.sessions for slot in one.slots}
    # Two repetitions of one second down, one still and one up, every minute and three quarters.
    assert (
        bar_attributes(worked, quick["yoke-bar-box-squat"])
        == ' data-sets="5" data-work="6" data-every="105"'
    )
    assert has_shared_bar(worked, session)
    # Handles are in two hands, pull-ups have no bar.
    for one in worked.programs[0].week(3).sessions:
        for slot in one.slots:
            if slot.exercise_id in {"farmer-carry", "neutral-grip-pull-up", "leg-press"}:
                assert bar_attributes(worked, slot) == ""


def test_only_rules_with_a_made_session_lead_to_one(worked: Worked) -> None:
    html = missed_page(worked.programs[0]).html
    options = re.findall(r'<option data-then="([^"]*)" data-says="([^"]*)">([^<]*)', html)
    leads = {question: then for then, _, question in options}
    assert leads["Called out in the last 24 hours"] == "less"
    assert leads["A long night on a rescue"] == ""
    assert leads["A week"] == "again"
    for _, says, _ in options:
        assert f"<li>{says}</li>" in html or f"<dd>{says}</dd>" in html


def test_limits_are_never_rounded_in_favour_of_a_change(worked: Worked) -> None:
    page: Page = day_of_tests_page(worked, worked.programs[0])
    cv = worked.book.rule("test-noise")
    found = re.search(r'data-likely="(\d+)" data-sure="(\d+)"', page.html)
    assert found is not None
    likely, sure = int(found[1]), int(found[2])
    # Half points, as they are printed beside it.
    assert 0 <= likely - sqrt(2) * cv * 1e6 < 5e5
    assert 0 <= sure - 2.8 * cv * 1e6 < 5e5
    assert likely % 5e5 == sure % 5e5 == 0
    assert f"Below {likely / 1e6:g}\xa0%" in page.html
    assert f"Above {sure / 1e6:g}\xa0%" in page.html


def test_several_repetitions_become_a_single_without_a_script(worked: Worked) -> None:
    """By the chart three repetitions go with 93 %: Sheppard and Triplett 2016, ch. 17."""
    page = day_of_tests_page(worked, worked.programs[0])
    row = re.search(r'<th scope="row">3</th><td><b>([\d.]+)</b></td><td>(.*?)</td>', page.html)
    assert row is not None
    assert row[1] == "0.93"
    # 3 repetitions: Brzycki 36/34 = 1.0588, Mayhew 1/0.8773 = 1.1399; rounded outwards.
    assert row[2] == "1.05 to 1.14"
    for base in worked.programs[0].program.bases.values():
        assert f"<summary>{base.name}</summary>" in page.html


def test_the_log_knows_every_slot(worked: Worked) -> None:
    data = data_of(my_log_page(worked).html, "sh-log-plans")
    program = worked.programs[0]
    plans = data[program.id]
    assert isinstance(plans, list)
    for week in program.weeks:
        for session in week.sessions:
            [found] = [
                plan for plan in plans if plan[2] == session.id and plan[0] <= week.week <= plan[1]
            ]
            assert found[3] == session.session.title
            assert found[4] == {slot.order: slot.exercise_id for slot in session.slots}
