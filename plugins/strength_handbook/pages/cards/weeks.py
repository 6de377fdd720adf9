"""Weeks in words, as short as a card needs them."""

from collections import Counter
from collections.abc import Iterable, Sequence
from datetime import date, timedelta

from strength_handbook.plan.worked import Use, WorkedProgram


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


def weeks_apart(groups: Sequence[Sequence[Use]]) -> list[str]:
    """The weeks of each group of uses; where two groups have one week, also session and letter."""
    weeks = Counter(week for uses in groups for week in {use.week.week for use in uses})
    days = Counter(day for uses in groups for day in {_day(use) for use in uses})
    return [
        _with_days(uses, letters=any(days[_day(use)] > 1 for use in uses))
        if any(weeks[use.week.week] > 1 for use in uses)
        else week_words(use.week.week for use in uses)
        for uses in groups
    ]


def _day(use: Use) -> tuple[int, str]:
    return use.week.week, use.session.id


def _with_days(uses: Iterable[Use], *, letters: bool) -> str:
    """Sessions behind their weeks; those of the same weeks stand together."""
    found: dict[str, list[int]] = {}
    for use in uses:
        letter = f" {use.slot.order}" if letters else ""
        found.setdefault(use.session.session.title + letter, []).append(use.week.week)
    same: dict[str, list[str]] = {}
    for where, weeks in found.items():
        same.setdefault(week_words(weeks), []).append(where)
    return "; ".join(f"{weeks} {', '.join(where)}" for weeks, where in same.items())


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
