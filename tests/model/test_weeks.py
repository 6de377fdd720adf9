"""Dates and weeks, house rules, and what a program file refuses."""

import re
from collections.abc import Mapping
from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

from strength_handbook.model.exercise import Muscles
from strength_handbook.model.house_rules import RULES, read_value
from strength_handbook.model.program import Program
from strength_handbook.model.quantities import LimitError
from strength_handbook.model.rule_kind import RuleKind
from strength_handbook.model.session import Slot
from strength_handbook.model.weeks import DateText, MondayText, WeekList, WeeksText

PROGRAM: Mapping[str, Any] = {
    "program": "Winter", "version": "1", "need": ["Carry."],
    "goals": [{"goal": "Carry", "test": "kg"}],
}  # fmt: skip


def message(kind: Any, value: object) -> str:
    with pytest.raises(ValidationError) as caught:
        TypeAdapter(kind).validate_python(value)
    (error,) = caught.value.errors()
    return error["msg"]


@given(st.dates(date(2000, 1, 1), date(2100, 12, 31)))
def test_a_date_is_year_month_day(day: date) -> None:
    assert TypeAdapter(DateText).validate_python(day.isoformat()) == day


@given(st.dates(date(2000, 1, 3), date(2100, 12, 31)))
def test_week_one_starts_on_a_monday(day: date) -> None:
    if day.weekday() == 0:
        assert TypeAdapter(MondayText).validate_python(day.isoformat()) == day
    else:
        text = message(MondayText, day.isoformat())
        assert f"{day} is a {day:%A}" in text
        assert date.fromisoformat(text[-10:]).weekday() == 0


@pytest.mark.parametrize(
    ("value", "part"),
    [
        ("4.1.2027", "write year-month-day, like 2027-01-04"),
        ("20270104", "write year-month-day"),
        ("2027-W01-1", "write year-month-day"),
        (2027, "write year-month-day"),
        (None, "an empty value is not a date"),
        ("2027-02-29", "the calendar has no '2027-02-29'"),
        ("1999-12-31", "the year lies outside 2000 to 2100"),
    ],
)
def test_what_is_no_date(value: object, part: str) -> None:
    assert part in message(DateText, value)


@given(st.integers(1, 60), st.integers(0, 59), st.sampled_from(("-", "–", " - ")))
def test_a_run_of_weeks(first: int, more: int, hyphen: str) -> None:
    last = min(60, first + more)
    weeks = TypeAdapter(WeeksText).validate_python(f"{first}{hyphen}{last}")
    assert weeks == tuple(range(first, last + 1))


@pytest.mark.parametrize("value", ["0-4", "4-1", "1-61", "one", "1-2-3", "", None, [1, 4], 1.5])
def test_what_is_no_run_of_weeks(value: object) -> None:
    message(WeeksText, value)


@pytest.mark.parametrize(
    ("value", "weeks"), [(4, (4,)), ("4", (4,)), ([4, "8"], (4, 8)), ("4, 8", (4, 8)), ([], ())]
)
def test_single_weeks(value: object, weeks: tuple[int, ...]) -> None:
    assert TypeAdapter(WeekList).validate_python(value) == weeks


@pytest.mark.parametrize("value", [None, "last", [[4]], [None], {"4": 5}, 4.5, "4-8"])
def test_what_is_no_single_week(value: object) -> None:
    assert "is not a week; write it like '4', or '[4, 8]'" in message(WeekList, value)


@pytest.mark.parametrize("week", ["0", "01", "1.0", "1_0", " 1", "+1", "61", "1-3", "one", "１"])
def test_a_week_as_a_key_has_one_spelling(week: str) -> None:
    slot = {"order": "A", "exercise": "x", "weeks": {week: {"sets": 3}}}
    with pytest.raises(ValidationError):
        Slot.model_validate(slot)


@pytest.mark.parametrize(("version", "right"), [("2026.10", True), (3, True), (2026.1, False)])
def test_a_version_is_not_taken_for_a_number(version: object, *, right: bool) -> None:
    if right:
        assert Program.model_validate({**PROGRAM, "version": version}).version == str(version)
    else:
        assert "quotes" in message(Program, {**PROGRAM, "version": version})


@pytest.mark.parametrize(("slug", "kind"), RULES.items(), ids=RULES)
def test_every_rule_has_a_default_within_its_limits(slug: str, kind: RuleKind) -> None:
    written = f"{kind.default:g} {kind.unit}".strip()
    assert read_value(written, kind) == kind.default, slug
    assert kind.least <= kind.default <= kind.most
    with pytest.raises(LimitError):
        read_value(f"{kind.most + 1:g} {kind.unit}".strip(), kind)


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("60", "'60' has no unit; write '60 s'"),
        ("1 min", "'1 min' has the wrong unit; write '1 s'"),
        ("nan s", "'nan s' is not a number; write it like '60 s'"),
        ("inf s", "is not a number"),
        ("-5 s", "is not a number"),
        ("901 s", "'901 s' is too large; the most is 900 s"),
        ("", "is not a number"),
    ],
)
def test_a_rule_that_cannot_be(text: str, part: str) -> None:
    with pytest.raises(ValueError, match=re.escape(part)):
        read_value(text, RULES["change-time"])


def test_a_rule_with_a_comma_and_without_space() -> None:
    assert read_value("45s", RULES["change-time"]) == 45
    assert read_value("1,2 m/s", RULES["walking-speed"]) == 1.2
    assert read_value("0,75", RULES["slow-factor"]) == 0.75


def test_a_muscle_counts_once() -> None:
    assert "'quads' is both" in message(Muscles, {"direct": ["quads"], "helping": ["abs", "quads"]})
