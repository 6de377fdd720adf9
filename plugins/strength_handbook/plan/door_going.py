"""What of today's work another exercise takes over, where one of both is rowed, run or ridden."""

from dataclasses import replace

from strength_handbook.calc.pace import pace_seconds
from strength_handbook.model.dose import Clock, Distance, Dose
from strength_handbook.model.going import Going
from strength_handbook.model.span import ends, middle_of

LONGEST_LIFTED_S = 120.0
"""Rowing and running by the clock for no longer may be done with a weight instead. Common practice,
no source."""

_OF_REPETITIONS = ("density", "last_set", "tempo", "intent", "pause")
"""What nobody does while rowing or running."""


def taken_over(today: Dose, other: Going | None) -> Dose | None:
    """Today's dose as another exercise takes it over; None where that would make no sense.

    Another way to go is gone for the same time: 500 m of rowing are not 500 m on a bicycle. What is
    lifted or carried takes over short times alone, and no kilometres.

    Args:
        today: the dose whose place is taken.
        other: how the other exercise goes; None where it is no endurance.
    """
    mine, work = today.going, today.work
    if mine is None and other is None:
        return today
    if other is None:
        short = isinstance(work, Clock) and ends(work.seconds)[1] <= LONGEST_LIFTED_S
        return _without(today, "talk", "rate") if short else None
    if isinstance(work, Distance) and mine is not None and mine.doing != other.doing:
        work = Clock(_same_time(work.metres, mine))
    if mine is None and not isinstance(work, Clock):
        return None
    return _without(replace(today, work=work), *_OF_REPETITIONS)


def _same_time(metres: float, going: Going) -> float:
    """How long a distance takes most members, as it is said: to 10 s, and long ones to a minute."""
    seconds = pace_seconds(middle_of(metres), middle_of(going.pace), going.per_m)
    unit = 60 if seconds >= 600 else 10
    return float(max(1, round(seconds / unit)) * unit)


def _without(dose: Dose, *keys: str) -> Dose:
    """A dose that says nothing about some keys."""
    said = dose.said.model_copy(update=dict.fromkeys(keys))
    own = {key: None for key in ("last_set", "tempo") if key in keys}
    return replace(dose, said=said, **own)  # type: ignore[arg-type]  # both may be None
