"""A complete dose: what a slot asks in one week.

It is put together from its parts: what the week leaves out the slot says, and what the slot leaves
out the exercise says.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from strength_handbook.model.count import Count, parse_top, top_text
from strength_handbook.model.dose_errors import IncompleteDoseError, InconsistentDoseError
from strength_handbook.model.dose_part import (
    BESIDE_NO_SERIES,
    WORK_FIELDS,
    DosePart,
    OpenSet,
    merged,
)
from strength_handbook.model.going import Going
from strength_handbook.model.load import Load, heaviness
from strength_handbook.model.methods import SeriesPart
from strength_handbook.model.span import ends, out_of_ten
from strength_handbook.model.tempo import Tempo
from strength_handbook.model.work import (
    Clock,
    ClusterSet,
    Distance,
    Hold,
    Reps,
    StripSet,
    Work,
    work_of,
)

__all__ = [
    "Clock", "ClusterSet", "Count", "Distance", "Dose", "DosePart", "Hold", "IncompleteDoseError",
    "InconsistentDoseError", "OpenSet", "Reps", "StripSet", "Work", "by_effort_after_top",
    "complete", "in_series", "only_a_top",
]  # fmt: skip


_UNSAID = DosePart()


@dataclass(frozen=True, slots=True)
class Dose:
    """A complete dose: what one slot asks in one week.

    Attributes:
        sets: how many sets, on each side where `each_side` is set.
        work: what one set is.
        load: how heavy, or None where effort alone decides.
        top: repetitions of the RM to ramp up to first, or None.
        top_left: good repetitions that this set leaves; 0 where it is today's best.
        last_set: how the last set is left open, or None.
        tempo: seconds of one repetition, or None.
        reserve: good repetitions left at the end of a set, or None; of a range its middle counts.
        rest: seconds of rest after a set (or a round), or None.
        every: seconds from the start of one set to the start of the next, or None.
        each_side: done with one side, then with the other.
        going: how it gets from here to there; None for what is no endurance.
        series: sets that differ, as a plain dose for each that are alike, in order; empty where all
            sets are alike. Then `sets` are all of them, and what else stands here is that of the
            heaviest.
        said: all keys of all parts together, for whatever is particular to one method.
    """

    sets: Count
    work: Work
    load: Load | None = None
    top: int | None = None
    top_left: float = 0.0
    last_set: OpenSet | None = None
    tempo: Tempo | None = None
    reserve: float | None = None
    rest: float | None = None
    every: float | None = None
    each_side: bool = False
    going: Going | None = None
    series: tuple["Dose", ...] = ()
    said: DosePart = _UNSAID

    @property
    def alike(self) -> "tuple[Dose, ...]":
        """Its sets, as a plain dose for each that are alike; of most doses the dose itself."""
        return self.series or (self,)

    @property
    def ends_open(self) -> bool:
        """True where its last set is left open, or all of them are."""
        last = self.alike[-1].work
        return self.last_set is not None or (isinstance(last, Reps) and last.count.open)

    @property
    def fewest_left(self) -> float | None:
        """Good repetitions left where a set is as hard as it may be."""
        return None if self.reserve is None else ends(self.reserve)[0]

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
            "top": None if self.top is None else top_text(self.top, self.top_left),
            "rir": None if by_effort else self.reserve,
            "rpe": out_of_ten(self.reserve or 0) if by_effort else None,
        }  # fmt: skip
        if self.series:
            values |= self._series_values()
        return self.said.model_copy(update=work | values)

    def _series_values(self) -> dict[str, Any]:
        """Sets that differ as keys: what they all have in common is said once."""
        common, rest = len({one.load for one in self.series}) == 1, self.said.rest
        series = []
        for one in self.series:
            keys: dict[str, Any] = {"sets": one.sets.low, "reps": one.reps}
            keys |= {} if common else {"load": one.load}
            keys |= {} if one.rest == rest else {"rest": one.rest}
            series.append(SeriesPart.model_construct(**keys))
        load = self.load if common else None
        return {"series": series, "reps": None, "sets": None, "load": load, "rest": rest}

    @property
    def fast(self) -> bool:
        """True where the lift is meant as fast as possible."""
        return (self.tempo is not None and self.tempo.fast) or self.said.intent == "fast"


def complete(*parts: DosePart, each_side: bool = False, going: Going | None = None) -> Dose:
    """One dose from its parts, the most particular first: week, slot, exercise.

    A dose with nothing but a ramp is one set of the ramp's repetitions; a test is as many sets as
    it has attempts.

    Raises:
        IncompleteDoseError: where no part says how many sets, or of what.
    """
    values = merged(parts)
    top_reps, _ = _top_of(values)
    test = values.get("test")
    if test is not None:
        values |= {"sets": Count(test.attempts, test.attempts), "reps": Count(test.rm, test.rm)}
    elif top_reps is not None and not any(name in values for name in WORK_FIELDS):
        values |= {"sets": Count(1, 1), "reps": Count(top_reps, top_reps)}
    if "series" in values:
        return _of_series(values, each_side=each_side)
    if "strip" in values or "density" in values:
        values.setdefault("sets", Count(1, 1))
    work = work_of(values)
    missing = [] if "sets" in values else ["sets"]
    if work is None:
        missing.append("reps (or hold, distance or time)")
    if work is None or missing:
        raise IncompleteDoseError(missing)
    return _built(values, work, each_side=each_side, going=going)


def _built(
    values: dict[str, Any], work: Work, *, each_side: bool, going: Going | None = None
) -> Dose:
    rpe = values.get("rpe")
    top, top_left = _top_of(values)
    return Dose(
        sets=values["sets"],
        work=work,
        load=values.get("load"),
        top=top,
        top_left=top_left,
        last_set=values.get("last_set"),
        tempo=values.get("tempo"),
        reserve=values.get("rir") if rpe is None else out_of_ten(rpe),
        rest=values.get("rest"),
        every=values.get("every"),
        each_side=values.get("each_side", each_side),
        going=going,
        said=_UNSAID.model_copy(update=values),
    )


def _top_of(values: dict[str, Any]) -> tuple[int | None, float]:
    """Repetitions of the top set, and what it leaves; None where there is no such set."""
    top = values.get("top")
    return (None, 0.0) if top in (None, "none") else parse_top(top)


def _of_series(values: dict[str, Any], *, each_side: bool) -> Dose:
    """Sets that differ: what one of them leaves out is said for all."""
    series: list[SeriesPart] = values["series"]
    own_loads = any(one.load is not None for one in series)
    for key in BESIDE_NO_SERIES:
        if values.get(key, "none") != "none" and (key != "load" or own_loads):
            raise InconsistentDoseError(key)
    common = {key: value for key, value in values.items() if key not in ("series", "top")}
    parts = []
    for one in series:
        own: dict[str, Any] = {
            key: value
            for key, value in (("load", one.load), ("rest", one.rest))
            if value is not None
        }
        own |= {"sets": Count(one.sets, one.sets), "reps": one.reps}
        cap = {} if one.reps.open else {"cap": None}
        said = {**common, **own, **cap}
        parts.append(_built(said, Reps(one.reps), each_side=each_side))
    return in_series(parts, _UNSAID.model_copy(update=values))


def in_series(parts: Sequence[Dose], said: DosePart) -> Dose:
    """Sets that differ as one dose; where only some alike are left, they are a plain one.

    Args:
        parts: a plain dose for each that are alike, in order.
        said: all keys of the whole.
    """
    if len(parts) == 1:
        return parts[0]
    heaviest = max(parts, key=_heaviness)
    sets = sum(one.sets.low for one in parts)
    return replace(heaviest, sets=Count(sets, sets), series=tuple(parts), said=said)


def _heaviness(part: Dose) -> tuple[float, float]:
    """To tell which sets are the heaviest; of those with one load they are those of most reps."""
    reps = part.reps.high if part.reps else 0
    return (-reps, 0) if part.load is None else (heaviness(part.load), reps)


def by_effort_after_top(dose: Dose) -> bool:
    """True where sets behind today's top have no load of their own, but an effort that says it."""
    behind = dose.top is not None and dose.load is None and not only_a_top(dose)
    return behind and dose.reserve is not None and dose.said.test is None


def only_a_top(dose: Dose) -> bool:
    """True where today's top set is all there is to do."""
    alone = isinstance(dose.work, Reps) and dose.load is None and dose.sets.high == 1
    return alone and dose.top is not None and dose.reps == Count(dose.top, dose.top)
