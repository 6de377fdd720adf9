"""Slips of the keyboard in doses: numbers that no coach means, and a week far off its neighbours.

What such a number does to sums and to other weeks is its echo. It is told by the one check that
names the slip, so that one mistake gives one line.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from strength_handbook.model.dose import Reps
from strength_handbook.model.load import (
    PercentOfBase,
    PercentOfSystem,
    PercentOfTop,
    PercentOfTrainingMax,
)
from strength_handbook.plan.remembered import remembered
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.lighter import is_apart

RULES = ("slip-sets", "slip-reps", "slip-times", "slip-load")
"""House rules that say what is a slip."""

_PERCENTS = PercentOfBase | PercentOfSystem | PercentOfTop | PercentOfTrainingMax
_LEAST_SETS = 8
"""Fewer sets than this can be meant, whatever stands beside them."""
_ALIKE = 0.12
"""Neighbours that differ by no more than this show where the week between them belongs."""


@dataclass(frozen=True, slots=True)
class Slip:
    """A number of a dose that was probably typed wrongly.

    Attributes:
        part: what it counts.
        value: what is written.
        most: the most that a coach writes; None where only the neighbours tell.
        neighbours: the same number in the weeks beside it, or in all other weeks of the slot.
        weeks: those weeks.
    """

    part: Literal["sets", "reps", "load"]
    value: float
    most: float | None
    neighbours: tuple[float, ...]
    weeks: tuple[int, ...]


@remembered(2)
def slips(desk: Desk) -> Mapping[SlotAt, Slip]:
    """Every dose with a slip."""
    found: dict[SlotAt, Slip] = {}
    for weeks in _over_weeks(desk):
        for index, at in enumerate(weeks):
            slip = _absurd(desk, at, weeks) or _far_off(desk, weeks, index)
            if slip is not None:
                found[at] = slip
    return found


def slipped_sessions(desk: Desk) -> set[tuple[str, int, str]]:
    """Program, week and session of every slip."""
    return {(at.program.id, at.number, at.session.id) for at in slips(desk)}


def slipped_weeks(desk: Desk) -> set[tuple[str, int]]:
    """Program and week of every slip."""
    return {(at.program.id, at.number) for at in slips(desk)}


def _over_weeks(desk: Desk) -> Iterator[list[SlotAt]]:
    """Every slot's weeks in one wave, in order."""
    found: dict[tuple[str, str, str, int], list[SlotAt]] = {}
    for at in desk.slots:
        key = (at.program.id, at.week.wave_id, at.session.id, at.index)
        found.setdefault(key, []).append(at)
    yield from found.values()


def _absurd(desk: Desk, at: SlotAt, weeks: list[SlotAt]) -> Slip | None:
    others = [one for one in weeks if one is not at]
    numbers = tuple(one.number for one in others)
    sets, most = at.slot.dose.sets.high, desk.rule("slip-sets")
    if sets > most:
        return Slip("sets", sets, most, tuple(one.slot.dose.sets.high for one in others), numbers)
    reps, most = _reps(at), desk.rule("slip-reps")
    if reps > most:
        return Slip("reps", reps, most, tuple(_reps(one) for one in others), numbers)
    return None


def _far_off(desk: Desk, weeks: list[SlotAt], index: int) -> Slip | None:
    """A training week between two others that are alike, and far from both."""
    at = weeks[index]
    if is_apart(at) or not isinstance(at.slot.dose.work, Reps) or at.slot.dose.said.test:
        return None
    before = next((one for one in reversed(weeks[:index]) if not is_apart(one)), None)
    after = next((one for one in weeks[index + 1 :] if not is_apart(one)), None)
    if before is None or after is None:
        return None
    numbers = (before.number, after.number)
    times = desk.rule("slip-times")
    least = max(_total(before), _total(after))
    if least and _total(at) >= times * least and not _lighter_load(at, before, after):
        for part, of in (("sets", _sets), ("reps", _reps)):
            beside = (of(before), of(after))
            enough = part == "reps" or of(at) >= _LEAST_SETS
            if enough and max(beside) and of(at) >= times * max(beside):
                kind: Literal["sets", "reps"] = "sets" if part == "sets" else "reps"
                return Slip(kind, of(at), None, beside, numbers)
    return _load(desk, at, before, after)


def _load(desk: Desk, at: SlotAt, before: SlotAt, after: SlotAt) -> Slip | None:
    """A percentage far from both neighbours, at repetitions and an effort like theirs."""
    loads = [one.slot.dose.load for one in (before, at, after)]
    if not all(isinstance(load, _PERCENTS) and type(load) is type(loads[1]) for load in loads):
        return None
    low, now, high = (_percent(one) for one in (before, at, after))
    middle = (low + high) / 2
    alike = abs(low - high) <= _ALIKE * max(low, high)
    off = abs(now - middle) > desk.rule("slip-load") / 100 * middle
    between = min(low, high) <= now <= max(low, high)
    if not alike or not off or between or not _asks_the_same(at, before, after):
        return None
    return Slip("load", now, None, (low, high), (before.number, after.number))


def _asks_the_same(at: SlotAt, before: SlotAt, after: SlotAt) -> bool:
    """True where repetitions and effort stay: an easier week on purpose leaves more in reserve."""
    beside = (_reps(before), _reps(after))
    if not min(beside) - 1 <= _reps(at) <= max(beside) + 1:
        return False
    left = [one.slot.dose.reserve for one in (before, after) if one.slot.dose.reserve is not None]
    mine = at.slot.dose.reserve
    return mine is None or not left or mine <= max(left)


def _lighter_load(at: SlotAt, before: SlotAt, after: SlotAt) -> bool:
    """True where the load falls, so that more repetitions are meant."""
    now = at.slot.percent
    known = [one.slot.percent for one in (before, after) if one.slot.percent is not None]
    return now is not None and bool(known) and now < 0.95 * min(known)


def _percent(at: SlotAt) -> float:
    return float(getattr(at.slot.dose.load, "percent", 0.0))


def _sets(at: SlotAt) -> float:
    return float(at.slot.dose.sets.high)


def _reps(at: SlotAt) -> float:
    work = at.slot.dose.work
    return float(work.count.high) if isinstance(work, Reps) else 0.0


def _total(at: SlotAt) -> float:
    return _sets(at) * _reps(at)
