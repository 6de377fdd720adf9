"""Can somebody get out from under the bar, alone and near the limit?"""

import re
from collections.abc import Iterator

from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.dangers import may_pin, reaches_percent
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.words import number

_CATCHES = re.compile(r"\b(?:safet(?:y|ies)|pins?|blocks?|straps?|stops?|dumbbells?)\b", re.I)
_SOURCE = (
    "case reports of deaths under a bar (Jumbelic 2007; Bandou and others 2021): alone, without "
    "stops, or with stops set too low"
)


@check(
    "pinned",
    Family.SAFETY,
    Severity.ERROR,
    what="Lifts with a bar on the back or over somebody lying, against a rule for the safeties and "
    "a way to do them alone.",
    why="People have died alone under a bar with no stops, or with stops set too low.",
    source=_SOURCE,
)
def pinned(this: Check, desk: Desk) -> Iterator[Finding]:
    """Lifts that can pin somebody, and nothing catches the bar."""
    for name, exercise in desk.book.exercises.items():
        if not may_pin(exercise, desk.book.room):
            continue
        spotting, what = exercise.spotting, f"exercise {name}"
        if spotting.safeties is None:
            change = Mending(
                "write under spotting where the safeties go, such as 'safeties: one hole below the "
                "lowest correct position, both sides the same, tested with the empty bar'"
            )
            text = "the bar can pin the lifter, and no line says where the safeties go"
            yield this.finds_in(desk.exercise_spot(name, "spotting"), what, text, change=change)
        elif spotting.alone == "fine" and not _CATCHES.search(spotting.alone_how):
            change = Mending(
                "write 'alone: changed', and in 'alone-how' how the safeties are set and tested "
                "first; or 'alone: no'"
            )
            text = "the bar can pin the lifter, and alone it is 'fine' without a word of safeties"
            spot = desk.exercise_spot(name, "spotting", "alone")
            yield this.finds_in(spot, what, text, change=change)


@check(
    "spotters-none",
    Family.SAFETY,
    Severity.WARN,
    what="Percent of the best single, tests and RMs included, of lifts that can pin somebody, "
    "against the number of spotters.",
    why="Near the limit the safeties are the second line, not the first.",
    rules=("near-max",),
)
def spotters_none(this: Check, desk: Desk) -> Iterator[Finding]:
    """Lifts that can pin somebody, near the limit, with nobody to help."""
    limit = desk.rule("near-max")
    for at in desk.slots:
        exercise, percent = at.slot.exercise, reaches_percent(at.slot)
        if percent is None or percent <= limit or exercise.spotting.spotters:
            continue
        if may_pin(exercise, desk.book.room):
            text = f"{number(percent)} % with no spotter; above {number(limit)} % there is one"
            spot = desk.exercise_spot(at.slot.exercise_id, "spotting", "spotters")
            change = Mending("write 'spotters: 2', and in 'where' that one stands at each end")
            yield this.finds(at, text, spot=spot, change=change)
