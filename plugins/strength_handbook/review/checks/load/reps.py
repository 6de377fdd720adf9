"""Can the repetitions be done at that load and tempo, and are they enough?"""

import math
from collections.abc import Iterator
from dataclasses import replace

from strength_handbook.calc.repetitions import TEXTBOOK_CHART, feasible_reps, percent_for_reps
from strength_handbook.model.dose import ClusterSet, Dose, Reps
from strength_handbook.model.load import (
    PercentOfBase,
    PercentOfSystem,
    PercentOfTop,
    PercentOfTrainingMax,
    RepMax,
)
from strength_handbook.model.span import ends
from strength_handbook.plan.reference import is_estimate
from strength_handbook.plan.work_out import LOWEST_CHARTED
from strength_handbook.reading.problem import Severity
from strength_handbook.reading.source import Plain
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.lighter import is_light
from strength_handbook.review.words import number

PERCENT_STEP = 0.5
"""Percentages are offered in halves."""

_CHART = (
    "textbook chart of repetitions at a percentage; the room above it because people differ by "
    "about a third (Nuzzo and others 2024)"
)


def reps_possible(desk: Desk, dose: Dose, percent: float | None) -> float | None:
    """Repetitions to failure that most people can do; None where the chart says nothing."""
    if percent is None or not LOWEST_CHARTED <= percent <= 100:
        return None
    tempo, held = dose.tempo, dose.said.pause
    return feasible_reps(
        percent,
        tempo.lower if tempo else 0,
        max(tempo.longest_pause if tempo else 0, held.time if held else 0),
        slow_from_s=desk.rule("slow-lowering"),
        pause_from_s=desk.rule("long-pause"),
        slow_factor=desk.rule("slow-factor"),
    ).middle


def reps_in_a_row(dose: Dose) -> int | None:
    """Repetitions without a pause that every set has at least."""
    match dose.work:
        case Reps(count):
            return count.low
        case ClusterSet(cluster):
            return max(cluster.parts)
        case _:
            return None


def set_percent(at: SlotAt) -> float | None:
    """Percent of the best single that a set is done with, at most; an RM needs no base for it.

    None where the load is found on the day, and where only lowering or a test is asked.
    """
    dose = at.slot.dose
    if is_estimate(dose) or dose.said.return_by is not None or dose.said.test is not None:
        return None
    if isinstance(dose.load, RepMax):
        rm, share = dose.load.reps, ends(dose.load.percent)[1]
        return percent_for_reps(rm) * share / 100 if rm <= TEXTBOOK_CHART[-1][0] else None
    return at.slot.heaviest_percent


def is_far_over(desk: Desk, at: SlotAt) -> bool:
    """True where the repetitions are far more than most people can do at that load."""
    dose = at.slot.dose
    possible, reps = reps_possible(desk, dose, set_percent(at)), reps_in_a_row(dose)
    if possible is None or reps is None:
        return False
    return reps + (dose.fewest_left or 0.0) > desk.rule("reps-far-over") * possible


def is_over(desk: Desk, at: SlotAt) -> bool:
    """True where a set asks for more repetitions than most people can do at that load."""
    dose = at.slot.dose
    possible, reps = reps_possible(desk, dose, set_percent(at)), reps_in_a_row(dose)
    if possible is None or reps is None:
        return False
    return reps + (dose.fewest_left or 0.0) > possible + desk.rule("reps-over")


def load_text(dose: Dose, percent: float) -> str:
    """The load of a dose with another percentage, as written; empty where it is no percentage."""
    percents = PercentOfBase | PercentOfSystem | PercentOfTop | PercentOfTrainingMax
    load = dose.load
    return replace(load, percent=percent).text if isinstance(load, percents) else ""


@check(
    "reps-impossible",
    Family.LOAD,
    Severity.WARN,
    what="Repetitions and those left, against the repetitions most people can do at that "
    "percentage and tempo. Far more than those is an error. A cluster counts by its longest part.",
    why="A set that can't be done as written is done some other way, or ends under the bar.",
    rules=("reps-over", "reps-far-over", "slow-lowering", "long-pause", "slow-factor"),
    source=_CHART,
)
def reps_impossible(this: Check, desk: Desk) -> Iterator[Finding]:
    """More repetitions than there are."""
    over, far = desk.rule("reps-over"), desk.rule("reps-far-over")
    for at in desk.alike:
        dose = at.slot.dose
        percent = set_percent(at)
        possible = reps_possible(desk, dose, percent)
        if possible is None or percent is None:
            continue
        asked = [("work", reps_in_a_row(dose), dose.fewest_left or 0.0)]
        if dose.last_set is not None:
            asked.append(("last-set", dose.last_set.floor, float(dose.last_set.rir)))
        for part, reps, left in asked:
            allowed = min(possible + over, far * possible)
            if reps is None or reps + left <= allowed:
                continue
            most = math.floor(allowed - left + 1e-9)
            keys = ("last-set",) if part == "last-set" else ("reps", "cluster")
            yield this.finds(
                at, _asked(dose, reps, left, percent, possible), spot=at.spot_of(*keys),
                severity=Severity.ERROR if reps + left > far * possible else None,
                change=_fewer(desk, at, part, most, reps + left - over),
            )  # fmt: skip


def _asked(dose: Dose, reps: int, left: float, percent: float, possible: float) -> str:
    tempo = f" and {dose.tempo.text}" if dose.tempo else ""
    more = f" and {left:g} left" if left else ""
    held = f" and {dose.said.pause.time:g} s of pause" if dose.said.pause else ""
    load = dose.load.text if isinstance(dose.load, RepMax) else f"{number(percent)} %"
    return f"{reps} reps{more} at {load}{tempo}{held}; most people can do {possible:.1f} in all"


def _fewer(desk: Desk, at: SlotAt, part: str, most: int, needed: float) -> Mending:
    """So many repetitions as can be done, or the percentage that allows those written."""
    dose = at.slot.dose
    lighter = _percent_that_allows(desk, at, needed) if part == "work" else ""
    if most < 1:
        if not lighter:
            return Mending("take a lighter load")
        return Mending(f"write '{lighter}'", at.rewritten(load=lighter))
    alternative = f", or keep the reps and write '{lighter}'" if lighter else ""
    if part == "last-set" and dose.last_set is not None:
        last: Plain = {"floor": most, "cap": dose.last_set.cap, "rir": dose.last_set.rir}
        return Mending(f"write 'last set {most}+'", at.rewritten(last_set=last))
    if isinstance(dose.work, ClusterSet):
        cluster = dose.work.cluster
        parts: list[Plain] = [min(one, most) for one in cluster.parts]
        words = f"write '({'+'.join(map(str, parts))})/{cluster.pause:g} s'"
        new: Plain = {"parts": parts, "pause": f"{cluster.pause:g} s"}
        return Mending(f"{words}{alternative}", at.rewritten(cluster=new))
    reps = f"{most}+" if dose.reps and dose.reps.open else str(most)
    return Mending(f"write 'reps {reps}'{alternative}", at.rewritten(reps=reps))


def _percent_that_allows(desk: Desk, at: SlotAt, needed: float) -> str:
    """The nearest lower load, as written, at which so many repetitions can be done; or empty."""
    percent = set_percent(at)
    asked = getattr(at.slot.dose.load, "percent", None)
    asked = asked and ends(asked)[1]
    if percent is None or asked is None:
        return ""
    step = asked
    while step > PERCENT_STEP:
        step = math.ceil(step / PERCENT_STEP - 1) * PERCENT_STEP
        possible = reps_possible(desk, at.slot.dose, percent * step / asked)
        if possible is None:
            return ""
        if possible >= needed:
            return load_text(at.slot.dose, step)
    return ""


@check(
    "reps-few",
    Family.LOAD,
    Severity.NOTE,
    what="Main lifts in straight sets that ask for a small part of the repetitions possible at "
    "their percentage; not in the first week, in a deload, before tests, or lifted fast.",
    why="It is probably too light for what the slot is there for.",
    rules=("light-share", "slow-lowering", "long-pause", "slow-factor"),
)
def reps_few(this: Check, desk: Desk) -> Iterator[Finding]:
    """Main lifts that are far from hard."""
    share = desk.rule("light-share") / 100
    for at in desk.slots:
        dose = at.slot.dose
        first = at.number == at.program.weeks[0].week
        easy_week = first or is_light(at) or at.number in at.week.wave.tests
        if at.slot.exercise.role != "main" or dose.fast or easy_week or dose.said.chains:
            continue
        percent = set_percent(at)
        possible = reps_possible(desk, dose, percent)
        if possible is None or percent is None or not isinstance(dose.work, Reps):
            continue
        asked = dose.work.count.high + _most_left(dose)
        few = all(_is_few(desk, one, share) for one in desk.alike_of(at))
        if dose.last_set is None and few:
            text = (
                f"{asked:g} of {possible:.1f} reps that most people can do at {number(percent)} % "
                f"{'with those left' if dose.reserve else 'and none said to be left'}"
            )
            more = math.floor(share * possible - _most_left(dose) + 1e-9) + 1
            change = Mending(f"write 'reps {more}', or more load", at.rewritten(reps=str(more)))
            yield this.finds(at, text, spot=at.spot_of("reps"), change=change)


def _most_left(dose: Dose) -> float:
    """Good repetitions left where a set is as easy as it may be."""
    return ends(dose.reserve or 0.0)[1]


def _is_few(desk: Desk, at: SlotAt, share: float) -> bool:
    """True where repetitions and those left are at most a share of those that can be done."""
    dose = at.slot.dose
    possible = reps_possible(desk, dose, set_percent(at))
    if possible is None or not isinstance(dose.work, Reps):
        return False
    return dose.work.count.high + _most_left(dose) <= share * possible
