"""What a tested best of rowing, running and the like comes to today: pace, piece and watts."""

from collections.abc import Callable
from dataclasses import dataclass

from strength_handbook.calc.pace import (
    pace_at_percent,
    pace_of_time,
    pace_seconds,
    rowing_watts,
    watts_at_percent,
)
from strength_handbook.calc.registry import OutOfRangeError
from strength_handbook.model.best import Best, Result
from strength_handbook.model.dose import Distance, Dose
from strength_handbook.model.going import Going
from strength_handbook.model.load import PercentOfBase
from strength_handbook.model.pace import PaceOfBest
from strength_handbook.model.span import Span, between, ends


@dataclass(frozen=True, slots=True)
class Aim:
    """What one member goes at; of a range both ends.

    Attributes:
        pace_s: seconds for what paces are counted over; 0 where the best is in watts.
        piece_s: seconds of one piece of the dose; 0 where that is no distance of its own.
        watts: of the best, or of a rowing machine at this pace; 0 where nobody knows.
    """

    pace_s: float = 0.0
    piece_s: float = 0.0
    watts: float = 0.0


@dataclass(frozen=True, eq=False)
class AimStrip:
    """A look-up strip of paces or watts.

    Attributes:
        best: what was tested.
        going: over what paces are counted.
        metres: of one piece that has a column of its own; 0 where none has.
        rows: each result with what it comes to.
    """

    best: Best
    going: Going
    metres: float
    rows: tuple[tuple[Result, Aim], ...]


def aim_strip(best: Best | None, dose: Dose) -> AimStrip | None:
    """The strip of a dose that refers to a best; None of all others."""
    if best is None or dose.going is None or not isinstance(dose.load, PercentOfBase | PaceOfBest):
        return None
    rows = tuple((one, found) for one in best.rows if (found := aim(best, one, dose)) is not None)
    return AimStrip(best, dose.going, piece_m(dose), rows) if rows else None


def piece_m(dose: Dose) -> float:
    """Metres of one piece, where they are not those that paces are counted over; else 0."""
    going, work = dose.going, dose.work
    if going is None or not isinstance(work, Distance):
        return 0.0
    metres = work.metres + 0.0 if isinstance(work.metres, Span) else work.metres
    return 0.0 if abs(metres - going.per_m) < 1 else metres


def aim(best: Best, result: Result, dose: Dose) -> Aim | None:
    """What a result comes to in a dose; None where that is nothing that anybody goes at.

    Args:
        best: what was tested.
        result: what the test gave.
        dose: a dose of rowing, running or the like that asks for a pace or a share.
    """
    going = dose.going
    try:
        if result.watts and isinstance(dose.load, PercentOfBase):
            return Aim(
                watts=_each(dose.load.percent, lambda end: watts_at_percent(result.amount, end))
            )
        if going is None or not going.per_m:
            return None
        pace = _pace(best, result, dose, going)
        piece = _each(pace, lambda end: pace_seconds(piece_m(dose), end, going.per_m))
        rows = going.doing == "row" and going.per_m == 500
        return Aim(pace, piece, _each(pace, rowing_watts) if rows else 0.0)
    except OutOfRangeError:
        return None


def _pace(best: Best, result: Result, dose: Dose, going: Going) -> float:
    """Seconds for what paces are counted over."""
    tested = pace_of_time(result.amount, best.over.metres, going.per_m)
    if isinstance(dose.load, PaceOfBest):
        return _each(dose.load.seconds, lambda end: tested + end)
    percent = dose.load.percent if isinstance(dose.load, PercentOfBase) else 100.0
    return _each(percent, lambda end: pace_at_percent(tested, end))


def _each(value: float, of: Callable[[float], float]) -> float:
    """The same of a number, or of both ends of a range."""
    return between(*sorted(of(end) for end in ends(value)))
