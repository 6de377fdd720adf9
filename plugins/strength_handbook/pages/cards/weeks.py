"""Weeks in words, as short as a card needs them."""

from collections.abc import Iterable
from datetime import date, timedelta

from strength_handbook.plan.worked import WorkedProgram


def week_words(weeks: Iterable[int]) -> str:
    """Weeks, with neighbours joined.

    >>> week_words([3]), week_words([2, 1, 2, 3, 5]), week_words([1, 2])
    ('Week 3', 'Weeks 1–3, 5', 'Weeks 1, 2')
    """
    runs: list[list[int]] = []
    for week in sorted(set(weeks)):
        if runs and week == runs[-1][-1] + 1:
            runs[-1].append(week)
        else:
            runs.append([week])
    parts = [
        f"{run[0]}–{run[-1]}" if len(run) > 2 else ", ".join(str(week) for week in run)
        for run in runs
    ]
    several = len(runs) > 1 or len(runs[0]) > 1
    return f"{'Weeks' if several else 'Week'} {', '.join(parts)}"


def window(program: WorkedProgram, weeks: Iterable[int]) -> str:
    """First and last week, with their dates where the program has a first Monday."""
    found = sorted(weeks)
    first, last = found[0], found[-1]
    words = f"week {first}" if first == last else f"weeks {first} to {last}"
    start = program.program.start
    if start is None:
        return words
    return f"{words}, {start + timedelta(weeks=first - 1)} to {_last_day(start, last)}"


def remove_after(program: WorkedProgram, weeks: Iterable[int]) -> str | None:
    """The last day of the last week, or of the version where that comes first."""
    start, until = program.program.start, program.program.valid_until
    days = [str(until)] if until is not None else []
    if start is not None:
        days.append(str(_last_day(start, max(weeks))))
    return min(days, default=None)


def _last_day(start: date, week: int) -> date:
    return start + timedelta(weeks=week, days=-1)
