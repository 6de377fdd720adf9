"""The pace or the watts of a slot, step by step, for a best in the middle of its strip."""

from collections.abc import Iterator

from strength_handbook.calc.pace import pace_of_time
from strength_handbook.model.best import Result
from strength_handbook.model.load import PercentOfBase
from strength_handbook.model.pace import PaceOfBest
from strength_handbook.model.printed import percent, split, whole_watts
from strength_handbook.plan.aims import Aim, AimStrip
from strength_handbook.plan.worked import WorkedSlot
from strength_handbook.workings.working import NBSP, Line, as_written, by_adding, by_formula, number


def aim_lines(slot: WorkedSlot) -> list[Line]:
    """From a tested best to what is gone at; empty where none is asked for."""
    strip = slot.aims
    if strip is None:
        return []
    result, aim = strip.rows[len(strip.rows) // 2]
    lines = [as_written(f"{strip.best.name}: {result.label}, say")]
    return [*lines, *_steps(slot, strip, result, aim)]


def _steps(slot: WorkedSlot, strip: AimStrip, result: Result, aim: Aim) -> Iterator[Line]:
    load, going, best = slot.dose.load, strip.going, strip.best
    if isinstance(load, PercentOfBase) and result.watts:
        text = f"{result.label} × {percent(load.percent)} = {_watts(aim.watts)}"
        yield by_formula("watts_at_percent", text)
        return
    tested = pace_of_time(result.amount, best.over.metres, going.per_m)
    text = f"{result.label} ÷ {number(best.over.metres)}{NBSP}m × {number(going.per_m)}{NBSP}m"
    yield by_formula("pace_of_time", f"{text} = {split(tested)} for {going.per}")
    if isinstance(load, PaceOfBest) and load.seconds:
        asked = load.text.removeprefix("pace ")
        yield by_adding(f"{split(tested)} {asked} = {split(aim.pace_s)}")
    elif isinstance(load, PercentOfBase):
        text = f"{split(tested)} × 100 ÷ {load.percent:g} = {split(aim.pace_s)}"
        yield by_formula("pace_at_percent", text)
    if strip.metres:
        text = f"{number(strip.metres)}{NBSP}m at that pace: {split(aim.piece_s)}"
        yield by_formula("pace_seconds", text)
    if aim.watts:
        yield by_formula("rowing_watts", f"{split(aim.pace_s)} for 500{NBSP}m: {_watts(aim.watts)}")


def _watts(watts: float) -> str:
    return f"{whole_watts(watts)}{NBSP}W"
