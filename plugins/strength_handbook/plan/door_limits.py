"""What a door may ask at most: no more sets and no more effort than the work whose place it takes.

A door is written once, for weeks of much and of little work. In a week of less it asks less too.
"""

from dataclasses import replace
from math import ceil, floor

from strength_handbook.model.book import Book
from strength_handbook.model.count import Count
from strength_handbook.model.dose import Dose, Hold, Reps, only_a_top
from strength_handbook.model.lighter import first_sets, with_reserve
from strength_handbook.model.span import between, ends
from strength_handbook.plan.minutes import work_seconds

ASKS_MORE = "harder"
"""The one door that asks for more than today on purpose."""

IN_EASY_WEEK = "Not this week: it is easy on purpose. Today's dose is enough."
"""What an easy week has in place of that door. Common practice, no source."""

MORE_IN_THE_TIME = "More good ones in the same time are the harder version."
"""In place of a harder exercise where as many as possible are done until the time is up: another
one or a tempo would make another number of it. Common practice, no source."""

ON_TEST_DAY = {
    "easier": "Stop after the last set on the way up. Nobody has to test.",
    "harder": "The next attempt is the harder version.",
    "taken": "Wait for it: on other equipment it is another test.",
    "no-partner": "Don't test alone. Test when somebody is here.",
}
"""What a test has in place of an exercise's doors: a share of a test would be no test. What hurts
still has its own. Common practice, no source."""

_SLACK = 1e-6
"""Of a set: sums of seconds are not exact."""


def within(book: Book, dose: Dose, today: Dose) -> Dose:
    """A door's dose with no more sets and no more effort than today's.

    Common practice, no source.

    Args:
        book: for the house rules of time.
        dose: as the door asks it.
        today: the dose whose place it takes.
    """
    most = most_sets(book, dose, today)
    sets = dose.sets
    if sets.high > most:
        plain = replace(dose, sets=Count(min(sets.low, most), most, sets.open))
        dose = first_sets(dose, most) if dose.series else plain
    mine, theirs = dose.fewest_left, today.fewest_left
    if mine is not None and theirs is not None and mine < theirs and today.reserve is not None:
        in_whole = between(*map(ceil, ends(today.reserve)))
        dose = with_reserve(dose, today.reserve if dose.said.rpe is not None else in_whole)
    return dose


def most_sets(book: Book, dose: Dose, today: Dose) -> int:
    """As many sets as today, today's top among them.

    Several short sets may stand for one long piece of work if they take no longer: for a walk of
    200 m, a strip set, six minutes of as many as possible.

    Args:
        book: for the house rules of time.
        dose: as the door asks it.
        today: the dose whose place it takes.
    """
    sets = today.sets.high
    if today.top is not None and not only_a_top(today):
        sets += 1
    if isinstance(today.work, Reps | Hold) and today.said.density is None:
        return sets
    shared = today.said.density.sharing if today.said.density else 1
    at_work = today.sets.high * _one_side(book, today) / shared
    own = _one_side(book, dose)
    in_that_time = floor(at_work / own + _SLACK) if own > 0 else 0
    return max(sets, in_that_time)


def _one_side(book: Book, dose: Dose) -> float:
    """Seconds of one set for one side: a leg has its own work only."""
    return work_seconds(book, replace(dose, each_side=False))
