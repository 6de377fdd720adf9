"""Warnings that may stand: what an entry silences, and when it no longer does."""

import re
from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest

import desks
from strength_handbook.checked import Checked
from strength_handbook.reading.problem import Severity
from strength_handbook.review.accepting import nearest
from strength_handbook.review.finding import At, Finding

SHORT = {"sessions.a-lift.slots.0.rest": "1:50"}
"""Less than two minutes between sets at 78 %: one warning."""
ENTRY = {
    "finding": "rest-short",
    "at": "week 3, a-lift A trap-bar-deadlift",
    "reason": "The pairs take turns and rest longer than is written.",
}
TOO_LONG = {"sessions.a-lift.slots.0.weeks.3": "4x8 @ 85 %, tempo 5-1-X-0, RIR 1"}


def check(
    folder: Path, *entries: Mapping[str, Any], today: date = desks.TODAY, start: str = "",
    wave: Mapping[str, Any] = SHORT,
) -> Checked:  # fmt: skip
    program: dict[str, Any] = {"accepted": [dict(entry) for entry in entries]}
    if start:
        program["start"] = start
    edits = {"brook/1-slow.yml": wave, "brook/program.yml": program}
    return desks.check(desks.edited(edits), folder, today)


def lines(checked: Checked) -> list[str]:
    return [f"{problem.slug} {problem.text}" for problem in checked.problems]


def test_without_an_entry_the_warning_is_there(tmp_path: Path) -> None:
    (finding,) = check(tmp_path).findings
    assert (finding.slug, finding.at.text) == (ENTRY["finding"], ENTRY["at"])


def test_an_entry_silences_its_warning_and_is_kept(tmp_path: Path) -> None:
    checked = check(tmp_path, ENTRY)
    assert checked.problems == ()
    ((finding, entry),) = checked.accepted
    assert finding.slug == "rest-short"
    assert entry.reason == ENTRY["reason"]


def test_spaces_do_not_matter_in_the_place(tmp_path: Path) -> None:
    assert check(tmp_path, ENTRY | {"at": "week 3,  a-lift A\n  trap-bar-deadlift"}).problems == ()


@pytest.mark.parametrize("at", ["week 2, a-lift A trap-bar-deadlift", "a-lift", "week 3"])
def test_another_place_silences_nothing(at: str, tmp_path: Path) -> None:
    found = lines(check(tmp_path, ENTRY | {"at": at}))
    assert any(line.startswith("rest-short") for line in found)
    assert any(line.startswith("accepted-nothing") for line in found)


def test_a_name_that_no_check_has_is_answered_with_the_nearest(tmp_path: Path) -> None:
    line = min(lines(check(tmp_path, ENTRY | {"finding": "rest-shorts"})))
    assert line == "accepted-unknown no finding is called 'rest-shorts'; did you mean 'rest-short'?"


@pytest.mark.parametrize(
    "at",
    [
        "Week 3, a-lift A trap-bar-deadlift.",
        " week 3,  a-lift A trap-bar-deadlift",
        "week 3, a-lift A trap-bar-deadlift. ",
    ],
)
def test_a_capital_a_full_stop_and_spaces_do_not_matter(at: str, tmp_path: Path) -> None:
    assert check(tmp_path, ENTRY | {"at": at}).problems == ()


@pytest.mark.parametrize(
    "at", ["weeks 2-3, a-lift A trap-bar-deadlift", "week 3, a-lift A", "a-lift"]
)
def test_a_place_that_has_moved_is_answered_with_the_nearest(at: str, tmp_path: Path) -> None:
    line = min(lines(check(tmp_path, ENTRY | {"at": at})))
    assert line == (
        f"accepted-nothing nothing is found as 'rest-short' at '{at}'; there is one at "
        '"week 3, a-lift A trap-bar-deadlift" now: look at it, and write that place or fix it'
    )


def test_where_nothing_is_near_the_entry_is_to_go(tmp_path: Path) -> None:
    (line,) = lines(check(tmp_path, ENTRY, wave={}))
    assert "delete this entry, or copy the place" in line


def test_what_another_entry_accepts_is_not_offered(tmp_path: Path) -> None:
    second = ENTRY | {"at": "weeks 2-3, a-lift A trap-bar-deadlift"}
    (line,) = lines(check(tmp_path, ENTRY, second))
    assert "delete this entry, or copy the place" in line


def test_the_nearest_is_of_the_same_thing_and_a_warning_if_there_is_one(tmp_path: Path) -> None:
    edits = {"sessions.a-lift.slots.0.rest": "1:50"}
    finding = check(tmp_path, wave=edits).findings[0]
    assert nearest("week 9, b-pull A row", []) is None

    def at(what: str, *weeks: int, severity: Severity = Severity.WARN) -> Finding:
        return replace(finding, at=At(what, weeks), severity=severity)

    long = [
        at("b-descend", 2, severity=Severity.ERROR), at("b-descend", 3), at("a-lift", 2, 3)
    ]  # fmt: skip
    assert nearest("weeks 2-3, b-descend", long) is long[1]
    assert nearest("weeks 2-3, b-descend", long[:1] + long[2:]) is long[0]
    assert nearest("week 7, c-pull", long[2:]) is long[2]


def test_an_entry_that_stands_twice_is_reported(tmp_path: Path) -> None:
    again = ENTRY | {"at": "Week 3, a-lift A trap-bar-deadlift.", "reason": "I said so before."}
    checked = check(tmp_path, ENTRY, again)
    (line,) = lines(checked)
    assert re.fullmatch(
        r"accepted-twice this is accepted in line \d+ already; keep one of the two entries", line
    )
    assert [entry.reason for _, entry in checked.accepted] == [ENTRY["reason"]]


def test_an_error_can_not_be_accepted(tmp_path: Path) -> None:
    first = check(tmp_path / "first", wave=TOO_LONG)
    error = next(one for one in first.findings if one.severity is Severity.ERROR)
    entry = ENTRY | {"finding": error.slug, "at": error.at.text}
    second = check(tmp_path / "second", entry, wave=TOO_LONG)
    assert second.worked is None
    assert any(line.startswith("accepted-error") for line in lines(second))
    assert error.text in {finding.text for finding in second.findings}


@pytest.mark.parametrize(
    ("today", "over"), [(date(2026, 12, 24), False), (date(2026, 12, 25), True)]
)
def test_an_entry_ends_on_its_day(today: date, over: bool, tmp_path: Path) -> None:  # noqa: FBT001  # a parameter of a table
    checked = check(tmp_path, ENTRY | {"until": "2026-12-24"}, today=today)
    assert bool(checked.accepted) is not over
    assert any("accepted until 2026-12-24" in line for line in lines(checked)) is over


@pytest.mark.parametrize(
    # Weeks 1 to 4 from Monday the 7th of December end on Sunday the 3rd of January.
    ("today", "over"),
    [(date(2027, 1, 3), False), (date(2027, 1, 4), True)],
)
def test_without_a_day_it_ends_with_its_wave(today: date, over: bool, tmp_path: Path) -> None:  # noqa: FBT001  # a parameter of a table
    checked = check(tmp_path, ENTRY, today=today, start="2026-12-07")
    assert bool(checked.accepted) is not over
    assert any("accepted until 2027-01-03" in line for line in lines(checked)) is over


def test_an_entry_needs_a_reason(tmp_path: Path) -> None:
    entry = {key: value for key, value in ENTRY.items() if key != "reason"}
    (line,) = lines(check(tmp_path, entry))
    assert "reason" in line


def test_one_program_accepts_nothing_for_another(tmp_path: Path) -> None:
    files = desks.edited({"brook/1-slow.yml": SHORT, "brook/program.yml": {"accepted": [ENTRY]}})
    files |= {
        name.replace("brook/", "ford/"): data
        for name, data in desks.edited({"brook/1-slow.yml": SHORT}).items()
        if name.startswith("brook/")
    }
    checked = desks.check(files, tmp_path)
    assert [finding.program for finding in checked.findings if finding.slug == "rest-short"] == [
        "ford"
    ]
