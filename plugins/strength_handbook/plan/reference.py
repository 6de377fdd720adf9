"""Percent of a tested value that a dose's load comes to."""

from dataclasses import dataclass

from strength_handbook.calc.effort import percent_from_effort, reserve_is_reliable
from strength_handbook.calc.repetitions import TEXTBOOK_CHART, percent_for_reps, tempo_factor
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Dose, Reps, by_effort_after_top
from strength_handbook.model.load import (
    PercentOfBase,
    PercentOfEffort,
    PercentOfSystem,
    PercentOfTop,
    PercentOfTrainingMax,
    RepMax,
)
from strength_handbook.model.span import middle_of

LONGEST = TEXTBOOK_CHART[-1][0]
"""Repetitions at which the chart ends."""


@dataclass(frozen=True, slots=True)
class LoadRules:
    """What the house says about loads.

    Attributes:
        training_max: percent of the tested value. Common practice, no source.
        slow_from_s: seconds from which a lowering is slow.
        pause_from_s: seconds from which a pause is long.
        slow_factor: share of the repetitions that a slow tempo leaves.
    """

    training_max: float = 90.0
    slow_from_s: float = 4.0
    pause_from_s: float = 2.0
    slow_factor: float = 0.7


def load_rules(book: Book) -> LoadRules:
    """The house's own numbers."""
    return LoadRules(
        book.rule("training-max"),
        book.rule("slow-lowering"),
        book.rule("long-pause"),
        book.rule("slow-factor"),
    )


def reference_percent(dose: Dose, rules: LoadRules) -> float | None:
    """Percent of the base that a dose's load comes to, where it refers to a base.

    An RM is looked up in the textbook chart; percent of the top set refers to that, and percent of
    a training max to its share of the base. A dose with nothing but repetitions and a reserve is
    estimated from the chart at their sum, a slow tempo counting as more repetitions. Beyond the
    chart's repetitions nothing is known.

    Args:
        dose: what is asked.
        rules: the house's own numbers.
    """
    match dose.load:
        case PercentOfBase(percent) | PercentOfSystem(percent):
            return middle_of(percent)
        case RepMax(reps, share):
            return _share(share, _charted(reps))
        case PercentOfTop(percent):
            return _share(percent, _charted(1) if dose.top is None else top_percent(dose))
        case PercentOfTrainingMax(percent):
            share = dose.said.training_max or rules.training_max
            return percent * share / 100
        case PercentOfEffort(percent, _):
            return _share(percent, _from_effort(dose, rules))
        case None if dose.top is not None and not by_effort_after_top(dose):
            return top_percent(dose)
        case None:
            return _from_effort(dose, rules)
        case _:
            return None


def is_estimate(dose: Dose) -> bool:
    """True where the load follows from effort alone."""
    by_effort = dose.top is None or by_effort_after_top(dose)
    return isinstance(dose.load, PercentOfEffort) or (dose.load is None and by_effort)


def top_percent(dose: Dose) -> float | None:
    """Percent of the base that today's top set is expected to come to; None off the chart.

    One that leaves some is looked up at the sum of those done and those left.
    """
    if dose.top is None or dose.top + dose.top_left > LONGEST:
        return None
    return percent_from_effort(dose.top, dose.top_left)


def effort_factor(dose: Dose, rules: LoadRules) -> float:
    """Share of the chart's repetitions that the dose's tempo and pause leave."""
    tempo, held = dose.tempo, dose.said.pause
    return tempo_factor(
        tempo.lower if tempo else 0,
        max(tempo.longest_pause if tempo else 0, held.time if held else 0),
        slow_from_s=rules.slow_from_s,
        pause_from_s=rules.pause_from_s,
        slow_factor=rules.slow_factor,
    )


def one_off(dose: Dose, rules: LoadRules) -> tuple[float, float] | None:
    """Percentages where somebody judges one repetition off, the lighter first.

    None where the load does not follow from effort.
    """
    if not is_estimate(dose) or dose.reps is None or dose.reserve is None:
        return None
    share = dose.load.percent if isinstance(dose.load, PercentOfEffort) else 100.0
    total, factor = dose.reps.high + dose.reserve, effort_factor(dose, rules)
    more, less = (
        percent_for_reps(min(max(reps / factor, 1), LONGEST)) for reps in (total + 1, total - 1)
    )
    return more * share / 100, less * share / 100


def _share(percent: float, of: float | None) -> float | None:
    return None if of is None else percent * of / 100


def _from_effort(dose: Dose, rules: LoadRules) -> float | None:
    """Percent for the repetitions done and those left, where both are known and few enough."""
    reps, reserve = dose.reps, dose.reserve
    if reps is None or reserve is None or not isinstance(dose.work, Reps):
        return None
    factor = effort_factor(dose, rules)
    if not reserve_is_reliable(reserve) or reps.high + reserve > LONGEST * factor:
        return None
    return percent_from_effort(reps.high, reserve, factor)


def _charted(reps: int) -> float | None:
    return percent_for_reps(reps) if reps <= LONGEST else None
