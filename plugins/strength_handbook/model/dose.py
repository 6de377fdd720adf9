"""A complete dose: what a slot asks in one week.

It is put together from its parts: what the week leaves out the slot says, and what the slot leaves
out the exercise says.
"""

import math
from dataclasses import dataclass, replace
from typing import Any

from strength_handbook.model.count import Count
from strength_handbook.model.dose_part import WORK_FIELDS, DosePart, OpenSet
from strength_handbook.model.load import Load, PercentOfEffort, scaled
from strength_handbook.model.methods import Cluster, Strip
from strength_handbook.model.tempo import Tempo

__all__ = [
    "Clock", "ClusterSet", "Count", "Distance", "Dose", "DosePart", "Hold", "IncompleteDoseError",
    "OpenSet", "Reps", "StripSet", "Work", "complete", "lighter", "only_a_top", "with_reserve",
]  # fmt: skip


_NOTHING = DosePart()


@dataclass(frozen=True, slots=True)
class Reps:
    """A set is so many repetitions."""

    count: Count


@dataclass(frozen=True, slots=True)
class Hold:
    """A set is one hold."""

    seconds: float


@dataclass(frozen=True, slots=True)
class Distance:
    """A set is one walk."""

    metres: float


@dataclass(frozen=True, slots=True)
class Clock:
    """A set lasts so long."""

    seconds: float


@dataclass(frozen=True, slots=True)
class ClusterSet:
    """A set in parts with short pauses."""

    cluster: Cluster


@dataclass(frozen=True, slots=True)
class StripSet:
    """A set with weight coming off on the way."""

    strip: Strip


Work = Reps | Hold | Distance | Clock | ClusterSet | StripSet


@dataclass(frozen=True, slots=True)
class Dose:
    """A complete dose: what one slot asks in one week.

    Attributes:
        sets: how many sets, on each side where `each_side` is set.
        work: what one set is.
        load: how heavy, or None where effort alone decides.
        top: repetitions of the RM to ramp up to first, or None.
        last_set: how the last set is left open, or None.
        tempo: seconds of one repetition, or None.
        reserve: good repetitions left at the end of a set, or None.
        rest: seconds of rest after a set (or a round), or None.
        every: seconds from the start of one set to the start of the next, or None.
        each_side: done with one side, then with the other.
        said: all keys of all parts together, for whatever is particular to one method.
    """

    sets: Count
    work: Work
    load: Load | None = None
    top: int | None = None
    last_set: OpenSet | None = None
    tempo: Tempo | None = None
    reserve: float | None = None
    rest: float | None = None
    every: float | None = None
    each_side: bool = False
    said: DosePart = _NOTHING

    @property
    def reps(self) -> Count | None:
        """Repetitions a set, where they are known."""
        match self.work:
            case Reps(count):
                return count
            case ClusterSet(cluster):
                return Count(cluster.reps, cluster.reps)
            case StripSet(strip):
                return strip.counted
            case _:
                return None

    @property
    def part(self) -> DosePart:
        """All of it as one part, with what an easy week or a variant has made of it."""
        work = dict.fromkeys(WORK_FIELDS)
        match self.work:
            case Reps(count):
                values: dict[str, Any] = {"reps": count}
            case Hold(seconds):
                values = {"hold": seconds}
            case Clock(seconds):
                values = {"time": seconds}
            case Distance(metres):
                values = {"distance": metres}
            case ClusterSet(cluster):
                values = {"cluster": cluster}
            case StripSet(strip):
                values = {"strip": strip}
        by_effort = self.said.rpe is not None and self.reserve is not None
        values |= {
            "sets": self.sets, "load": self.load, "last_set": self.last_set, "tempo": self.tempo,
            "each_side": self.each_side, "rest": self.rest, "every": self.every,
            "top": None if self.top is None else f"{self.top}RM",
            "rir": None if by_effort else self.reserve,
            "rpe": 10 - (self.reserve or 0) if by_effort else None,
        }  # fmt: skip
        return self.said.model_copy(update=work | values)

    @property
    def fast(self) -> bool:
        """True where the lift is meant as fast as possible."""
        return (self.tempo is not None and self.tempo.fast) or self.said.intent == "fast"


class IncompleteDoseError(ValueError):
    """A dose that leaves something out that nobody has said anywhere.

    Attributes:
        missing: the keys that are missing, in a coach's words.
    """

    def __init__(self, missing: list[str]) -> None:
        self.missing = missing
        super().__init__(f"the dose lacks {' and '.join(missing)}")


_EXCLUSIVE = (frozenset(WORK_FIELDS), frozenset({"rest", "every"}), frozenset({"rir", "rpe"}))
"""Keys that replace each other: a week that asks for a hold replaces the slot's repetitions."""


_UNSAID = DosePart()


def complete(*parts: DosePart, each_side: bool = False) -> Dose:
    """One dose from its parts, the most particular first: week, slot, exercise.

    A dose with nothing but a ramp is one set of the ramp's repetitions; a test is as many sets as
    it has attempts.

    Raises:
        IncompleteDoseError: where no part says how many sets, or of what.
    """
    values = _merged(parts)
    top = values.get("top")
    top_reps = int(top.removesuffix("RM")) if top and top != "none" else None
    test = values.get("test")
    if test is not None:
        values |= {"sets": Count(test.attempts, test.attempts), "reps": Count(test.rm, test.rm)}
    elif top_reps is not None and not any(name in values for name in WORK_FIELDS):
        values |= {"sets": Count(1, 1), "reps": Count(top_reps, top_reps)}
    if "strip" in values or "density" in values:
        values.setdefault("sets", Count(1, 1))
    work = _work(values)
    missing = [] if "sets" in values else ["sets"]
    if work is None:
        missing.append("reps (or hold, distance or time)")
    if work is None or missing:
        raise IncompleteDoseError(missing)
    rpe = values.get("rpe")
    return Dose(
        sets=values["sets"],
        work=work,
        load=values.get("load"),
        top=top_reps,
        last_set=values.get("last_set"),
        tempo=values.get("tempo"),
        reserve=values.get("rir") if rpe is None else 10 - rpe,
        rest=values.get("rest"),
        every=values.get("every"),
        each_side=values.get("each_side", each_side),
        said=_UNSAID.model_copy(update=values),
    )


def _merged(parts: tuple[DosePart, ...]) -> dict[str, Any]:
    values: dict[str, Any] = {}
    for part in reversed(parts):
        own = {
            name: value
            for name in DosePart.model_fields
            if (value := getattr(part, name)) is not None and value != {}
        }
        for group in _EXCLUSIVE:
            if group & own.keys():
                values = {name: value for name, value in values.items() if name not in group}
        values |= own
    return values


def only_a_top(dose: Dose) -> bool:
    """True where today's top set is all there is to do."""
    alone = isinstance(dose.work, Reps) and dose.load is None and dose.sets.high == 1
    return alone and dose.top is not None and dose.reps == Count(dose.top, dose.top)


def lighter(dose: Dose, keep_sets: float, keep_load: float, keep_hold: float) -> Dose:
    """A dose with less of everything, for a deload; open sets and strips become plain ones.

    Args:
        dose: the dose of a working week.
        keep_sets: percent of its sets, rounded down, never below one.
        keep_load: percent of its load.
        keep_hold: percent of its seconds, rounded to five.
    """
    low = max(1, math.floor(dose.sets.low * keep_sets / 100 + 1e-9))
    high = max(low, math.floor(dose.sets.high * keep_sets / 100 + 1e-9))
    work = dose.work
    match work:
        case Hold() | Clock() if keep_hold == 100:
            pass
        case Hold(seconds):
            work = Hold(max(5.0, 5 * round(seconds * keep_hold / 500)))
        case Clock(seconds):
            work = Clock(max(5.0, 5 * round(seconds * keep_hold / 500)))
        case Reps(count):
            work = Reps(Count(count.low, count.high))
        case StripSet() | ClusterSet() | Distance():
            pass
    return replace(
        dose,
        sets=Count(low, high),
        work=work,
        load=_less(dose, keep_load),
        last_set=None,
    )


def with_reserve(dose: Dose, reserve: float) -> Dose:
    """The dose with so many good repetitions left, said as it was: in repetitions or in effort."""
    in_effort = dose.said.rpe is not None
    said = {"rir": None, "rpe": 10 - reserve} if in_effort else {"rir": int(reserve), "rpe": None}
    return replace(dose, reserve=float(reserve), said=dose.said.model_copy(update=said))


def _less(dose: Dose, keep_load: float) -> Load | None:
    """Its load made less; the share of a load that the effort decides is a load of its own."""
    if keep_load == 100:
        return dose.load
    if dose.load is not None:
        return scaled(dose.load, keep_load / 100)
    if dose.top is not None or dose.reserve is None or not isinstance(dose.work, Reps):
        return None
    return PercentOfEffort(keep_load, dose.reserve)


def _work(values: dict[str, Any]) -> Work | None:
    kinds: dict[str, type[Work]] = {
        "reps": Reps, "hold": Hold, "distance": Distance, "time": Clock, "cluster": ClusterSet,
        "strip": StripSet,
    }  # fmt: skip
    for name, kind in kinds.items():
        if name in values:
            return kind(values[name])
    return None
