"""Does a door still fit the work it stands for, in every week of it?"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from strength_handbook.dose.one_set import rep_seconds
from strength_handbook.model.count import Count
from strength_handbook.model.doors import path_of
from strength_handbook.model.dose import Clock, Distance, Dose, Hold, Reps
from strength_handbook.model.dose_part import WORK_FIELDS
from strength_handbook.model.span import ends
from strength_handbook.plan.door_limits import ASKS_MORE
from strength_handbook.plan.doors import DoorPlan, doors_of
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import At, Edit, Finding, Mending, Spot
from strength_handbook.review.words import clock, number

_COUNTS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_SETS = re.compile(
    rf"\b({'|'.join(_COUNTS)}|\d{{1,2}})"
    r"(?: (?:more|easy|light|short|hard|slow|fast|full|quick)){0,2} sets?\b",
    re.IGNORECASE,
)
_UNITS = {"reps": "repetitions", "hold": "s", "time": "s", "distance": "m"}
_SAME_G = 1.0
"""Planned loads are not whole grams."""


@dataclass(frozen=True, slots=True)
class _Wrong:
    """A door that does not fit one week.

    Attributes:
        at: the slot.
        key: the door.
        text: what it asks, and what the week asks.
        words: what to write instead.
        change: key under the door, and the value that would fit this week; None to take it out.
        mild: only the words are at odds with the numbers beside them.
    """

    at: SlotAt
    key: str
    text: str
    words: str
    change: tuple[tuple[str, ...], float | None] | None = None
    mild: bool = False


@check(
    "door-week",
    Family.COMPLETE,
    Severity.WARN,
    what="What doors that keep the exercise ask, against its slot in every week: repetitions, "
    "seconds, metres and load, without more left in reserve; a harder door whose own numbers are "
    "easier than the day's; words that name another number of sets than the week has. Sets and "
    "effort need no check: a door takes no more of them than its week, and an easy week has no "
    "harder door.",
    why="Whoever takes the easier way must not meet more work than in the session itself.",
)
def door_week(this: Check, desk: Desk) -> Iterator[Finding]:
    """Doors that do not fit the week they stand in."""
    found = [one for at in desk.slots for one in _of_slot(desk, at)]
    for one in found:
        same = [
            other.change[1]
            for other in found
            if other.change is not None
            and one.change is not None
            and other.change[1] is not None
            and (other.at.slot.exercise_id, other.key, other.change[0])
            == (one.at.slot.exercise_id, one.key, one.change[0])
        ]
        yield _finding(this, desk, one, min(same, default=None))


def _finding(this: Check, desk: Desk, one: _Wrong, least: float | None) -> Finding:
    """As a finding; the change fits the week that asks least."""
    slot = one.at.slot
    what = f"exercise {slot.exercise_id} {one.key}"
    if one.key in slot.slot.doors:
        what = f"{one.at.at.what} {one.key}"
        spot = Spot(one.at.wave, (*one.at.path, "doors", one.key))
    else:
        spot = desk.exercise_spot(slot.exercise_id, *path_of(one.key))
    words = one.words
    edits: tuple[Edit, ...] = ()
    if one.change is not None:
        keys, fits = one.change
        path = (*path_of(one.key), *keys)
        if fits is None:
            edits = (Edit(spot.source.file, path, remove=True),)
        elif least is not None:
            value = _written(keys[-1], least)
            words = words.format(value=value)
            edits = (Edit(spot.source.file, path, value),)
    return this.finds(
        one.at, one.text, spot=spot, at=At(what, (one.at.number,)),
        change=Mending(words, edits), severity=Severity.NOTE if one.mild else None,
    )  # fmt: skip


def _written(key: str, value: float) -> str:
    if key == "load":
        return f"{number(value)} %"
    return number(value) if key == "reps" else f"{number(value)} {_UNITS[key]}"


def _of_slot(desk: Desk, at: SlotAt) -> Iterator[_Wrong]:
    for plan in doors_of(desk.worked, at.program, at.slot):
        yield from _counted(at, plan)
        # Where the station is taken, words may lead anywhere: the load need not be of this lift.
        if plan.dose is None or plan.to is not None or plan.key == "taken":
            continue
        if plan.key == ASKS_MORE:
            yield from _no_harder(desk, at, plan, plan.dose)
        else:
            yield from _more(at, plan, plan.dose)


def _more(at: SlotAt, plan: DoorPlan, dose: Dose) -> Iterator[_Wrong]:
    """More of the same exercise than today."""
    today, key = at.slot.dose, plan.key
    heavier = _load_change(at, plan)
    if heavier is not None and heavier > 0:
        text = f"the door '{key}' is heavier than the load of the day"
        if plan.share is not None:
            text = f"the door '{key}' asks for {number(plan.share)} % of the load of the day"
            yield _Wrong(at, key, text, "write 'load: {value}' there", (("load",), 100.0))
        else:
            yield _Wrong(at, key, text, "write a lighter load there, or a share of today's")
    work, size = _size(dose)
    same, todays = _size(today)
    if (
        work != same
        or size <= todays
        or (heavier is not None and heavier < 0)
        or _eases(dose, today)
    ):
        return
    unit = _UNITS[work]
    asks = f"{number(size)} {unit}" if work in ("reps", "distance") else clock(size)
    has = f"{number(todays)} {unit}" if work in ("reps", "distance") else clock(todays)
    text = f"the door '{key}' asks for {asks} where the week asks for {has}"
    yield _Wrong(at, key, text, f"write '{work}: {{value}}' in its dose", (("dose", work), todays))


def _eases(dose: Dose, today: Dose) -> bool:
    """True where more is left in reserve than today."""
    return dose.reserve is not None and today.reserve is not None and dose.reserve > today.reserve


def _load_change(at: SlotAt, plan: DoorPlan) -> float | None:
    """Above 0 where somebody's load is heavier than today's, below where all are lighter.

    None where nobody knows.
    """
    if plan.share is not None:
        return plan.share - 100
    changes = [
        load.planned_g - at.slot.loads[name].planned_g
        for name, load in plan.loads.items()
        if name in at.slot.loads
    ]
    if not changes:
        return None
    most = max(changes)
    return 0.0 if abs(most) <= _SAME_G else most


def _no_harder(desk: Desk, at: SlotAt, plan: DoorPlan, dose: Dose) -> Iterator[_Wrong]:
    """A harder door whose own numbers only make it easier."""
    own, today = plan.own, at.slot.dose
    if own is None or not any(
        getattr(own, name) is not None for name in ("sets", "tempo", "rir", "rpe", *WORK_FIELDS)
    ):
        return
    steps = [dose.sets.high - today.sets.high, rep_seconds(desk.book.rule, dose)
             - rep_seconds(desk.book.rule, today)]  # fmt: skip
    work, size = _size(dose)
    same, todays = _size(today)
    if work != same:
        return
    steps.append(size - todays)
    if (heavier := _load_change(at, plan)) is not None:
        steps.append(heavier)
    if dose.reserve is not None and today.reserve is not None:
        steps.append(today.reserve - dose.reserve)
        if steps[-1] >= 0 and (own.rir is not None or own.rpe is not None):
            return  # at that effort, less of what its words make harder is right
    if dose.each_side and not today.each_side:
        steps.append(1)
    if min(steps) < 0 and max(steps) <= 0:
        text = f"the numbers of the door '{plan.key}' make it easier than the day's own dose"
        words = "write a harder dose there, or take 'dose' out and let the words say it"
        yield _Wrong(at, plan.key, text, words, (("dose",), None))


def _size(dose: Dose) -> tuple[str, float]:
    """What one set is counted in, and how much of it; nothing for sets in parts."""
    match dose.work:
        case Reps(count):
            return "reps", float(count.high)
        case Hold(seconds):
            return "hold", ends(seconds)[1]
        case Clock(seconds):
            return "time", ends(seconds)[1]
        case Distance(metres):
            return "distance", metres
        case _:
            return "", 0.0


def _counted(at: SlotAt, plan: DoorPlan) -> Iterator[_Wrong]:
    """Words that name a number of sets which is not the week's."""
    said = _SETS.search(plan.how)
    if said is None:
        return
    word = said[1].lower()
    count = int(word) if word.isdigit() else _COUNTS.index(word) + 1
    own_words = plan.key in at.slot.slot.doors
    sets = at.slot.dose.sets if plan.dose is None else plan.dose.sets
    if (plan.dose is None and not own_words) or _fits(count, sets, at_most=own_words):
        return
    what = "the week has" if own_words else "its dose this week has"
    text = f"the door '{plan.key}' says '{said[0]}' and {what} {sets.text}"
    words = "leave the number out of its words: the dose beside them has it"
    yield _Wrong(at, plan.key, text, words if not own_words else "write fewer sets", mild=True)


def _fits(count: int, sets: Count, *, at_most: bool) -> bool:
    return count <= sets.high and (at_most or count >= sets.low)
