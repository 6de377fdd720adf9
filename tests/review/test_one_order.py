"""One order for two exercises, each with weeks of its own: first a row, later a pulldown."""

from pathlib import Path
from typing import Any

import pytest

from books import EFFORT, exercise, slot, work, write_files
from strength_handbook.checked import check_folder

EARLY = {"1": "3x8, RIR 3", "2": "3x8, RIR 2"}
LATE = {"3": "3x10, RIR 3", "4": "3x10, RIR 2"}


def sessions(late: dict[str, str], *orders: str) -> dict[str, Any]:
    """A session whose last slots have these orders, each with weeks of its own."""
    weeks = [EARLY, *[late] * (len(orders) - 1)]
    pulls = [
        slot(order, f"pull-{n}", dose)
        for n, (order, dose) in enumerate(zip(orders, weeks, strict=True))
    ]
    return {"a": [slot("A", "squat", EARLY | LATE), *pulls]}


EXERCISES = {
    name: exercise(name.title(), load=EFFORT) for name in ("squat", "pull-0", "pull-1", "pull-2")
}


def test_each_has_the_order_in_its_own_weeks(tmp_path: Path) -> None:
    found = work(tmp_path, exercises=EXERCISES, sessions=sessions(LATE, "B", "B"))
    (program,) = found.programs
    there = [
        [(one.order, one.exercise_id) for one in session.slots]
        for week in program.weeks
        for session in week.sessions
    ]
    early, late = [("A", "squat"), ("B", "pull-0")], [("A", "squat"), ("B", "pull-1")]
    assert there == [early, early, late, late]
    assert [
        session.session.place_of("B", session.week)
        for week in program.weeks
        for session in week.sessions
    ] == [1, 1, 2, 2]


@pytest.mark.parametrize("orders", [("B", "B"), ("B", "B1", "B2")])
def test_the_letter_is_whole_in_every_week(tmp_path: Path, orders: tuple[str, ...]) -> None:
    write_files(tmp_path, exercises=EXERCISES, sessions=sessions(LATE, *orders))
    checked = check_folder(tmp_path)
    assert checked.desk is not None, checked.problems
    assert [one.text for one in checked.problems if one.slug == "letters-unpaired"] == []


def test_what_is_wrong_with_the_later_one_is_said_at_its_own_line(tmp_path: Path) -> None:
    holds = {"3": "ISO 3x20 s, RPE 7", "4": "ISO 3x20 s, RPE 7"}
    write_files(tmp_path, exercises=EXERCISES, sessions=sessions(holds, "B", "B"))
    (wave,) = tmp_path.glob("*/1-*.yml")
    problems = [one for one in check_folder(tmp_path).problems if one.slug == "hold-position"]
    assert problems
    lines = wave.read_text(encoding="utf-8").splitlines()
    assert all("pull-1" in "".join(lines[one.line - 1 : one.line + 2]) for one in problems)
