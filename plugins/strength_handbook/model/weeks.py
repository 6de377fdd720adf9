"""Dates and weeks: ``2027-01-04``, ``1-4``, ``[4, 8]``."""

import re
from datetime import date, timedelta
from typing import Annotated, Any, Literal, get_args

from pydantic import AfterValidator, BeforeValidator, Field, WithJsonSchema

from strength_handbook.model.shape import refuse, shown

FIRST_YEAR, LAST_YEAR = 2000, 2100
MOST_WEEKS = 60

Weekday = Literal["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]

WEEKDAYS: tuple[str, ...] = get_args(Weekday)
"""The days in order, as a coach writes them."""


def _read_date(value: Any) -> date:
    if not re.fullmatch(r"\d{4}-\d{2}-\d{2}", str(value)):
        text = f"{shown(value)} is not a date; write year-month-day, like 2027-01-04"
        raise refuse("date", text)
    try:
        day = date.fromisoformat(str(value))
    except ValueError:
        raise refuse("date", f"the calendar has no {shown(value)}") from None
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        raise refuse("date", f"{shown(value)}: the year lies outside {FIRST_YEAR} to {LAST_YEAR}")
    return day


def _monday(day: date) -> date:
    if day.weekday():
        monday = day - timedelta(days=day.weekday())
        raise refuse("date", f"{day} is a {day:%A}; week 1 starts on a Monday, such as {monday}")
    return day


DateText = Annotated[
    date,
    BeforeValidator(_read_date),
    WithJsonSchema({"type": "string", "format": "date", "examples": ["2027-01-04"]}),
]
"""A date, year-month-day."""

MondayText = Annotated[DateText, AfterValidator(_monday)]
"""A Monday."""


def _read_weeks(value: Any) -> tuple[int, ...]:
    text = str(value).strip() if isinstance(value, str | int) else ""
    found = re.fullmatch(r"(\d{1,2})(?:\s*[-–]\s*(\d{1,2}))?", text)
    if not found:
        raise refuse("weeks", f"{shown(value)} is not a run of weeks; write it like '1-4'")
    first, last = int(found[1]), int(found[2] or found[1])
    if first < 1 or last < first:
        raise refuse("weeks", f"{shown(text)}: weeks count from 1 and run forwards, such as '1-4'")
    if last > MOST_WEEKS:
        raise refuse("weeks", f"{shown(text)}: a program has at most {MOST_WEEKS} weeks")
    return tuple(range(first, last + 1))


WeeksText = Annotated[
    tuple[int, ...],
    BeforeValidator(_read_weeks),
    WithJsonSchema(
        {"type": "string", "pattern": r"^\d{1,2}(\s*[-–]\s*\d{1,2})?$", "examples": ["1-4"]}
    ),
]
"""A run of weeks, such as ``1-4``."""


def _read_week_list(value: Any) -> tuple[int, ...]:
    entries = value if isinstance(value, list) else str(value).split(",")
    weeks = []
    for entry in entries:
        text = str(entry).strip() if isinstance(entry, str | int) else ""
        if not re.fullmatch(r"\d{1,2}", text):
            wrong = shown(entry if isinstance(value, list) else value)
            raise refuse("weeks", f"{wrong} is not a week; write it like '4', or '[4, 8]'")
        weeks.append(int(text))
    return tuple(weeks)


WeekList = Annotated[
    tuple[int, ...],
    BeforeValidator(_read_week_list),
    WithJsonSchema(
        {"anyOf": [{"type": "integer"}, {"type": "array", "items": {"type": "integer"}}]}
    ),
]
"""Single weeks: ``4`` or ``[4, 8]``."""


def _read_week(value: Any) -> int:
    if not re.fullmatch(r"[1-9]\d?", str(value)) or int(value) > MOST_WEEKS:
        text = (
            f"{shown(value)} is not a week; write one line for each week, such as '1: 3x5 @ 70 %'"
        )
        raise refuse("weeks", text)
    return int(value)


WeekNumber = Annotated[int, Field(ge=1, le=MOST_WEEKS), BeforeValidator(_read_week)]
"""Number of one week, as a key."""
