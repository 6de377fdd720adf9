"""Back-off loads: a share of whatever today's top set came to."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from strength_handbook.model.load import PercentOfTop
from strength_handbook.model.span import middle_of
from strength_handbook.plan.loads import PlannedLoad, achieved
from strength_handbook.plan.reference import top_percent
from strength_handbook.plan.worked import WorkedSlot

AROUND = 2
"""Steps of the scale shown on either side of an example lifter's expected top."""

MOST_ROWS = 30
"""Longest table; beyond it only every second or third load stands there."""


@dataclass(frozen=True, slots=True)
class BackOffRow:
    """One top and what follows from it.

    Attributes:
        top_g: load of the top set; what is added or taken off in body-weight lifts.
        load: the back-off load.
    """

    top_g: int
    load: PlannedLoad


@dataclass(frozen=True, eq=False)
class BackOffPlan:
    """Back-off loads of one slot.

    Attributes:
        top_reps: repetitions of the top set.
        percent: share of the top; of a range its middle.
        rows: for tops all along the tested values of the look-up strip.
        by_lifter: for tops around the one that is expected of each example lifter, which stands in
            the middle.
    """

    top_reps: int
    percent: float
    rows: tuple[BackOffRow, ...] = ()
    by_lifter: Mapping[str, tuple[BackOffRow, ...]] = field(default_factory=dict)


def back_off(slot: WorkedSlot, units: str) -> BackOffPlan | None:
    """Back-off loads for each top; None where no load refers to a top set."""
    load, top, scale, base = slot.dose.load, slot.dose.top, slot.scale, slot.base
    if not isinstance(load, PercentOfTop) or top is None:
        return None
    plain = BackOffPlan(top, middle_of(load.percent))
    expected_percent = top_percent(slot.dose)
    if scale is None or base is None or expected_percent is None:
        return plain
    share, of_base = load.percent / 100, expected_percent / 100

    def row(top_g: int, body_g: float) -> BackOffRow:
        wanted = (top_g + body_g) * share - body_g
        return BackOffRow(top_g, achieved(wanted, scale, top_g + body_g, body_g, units))

    by_lifter = {}
    for name, planned in slot.loads.items():
        body = planned.body_g
        expected = scale.best(max(round(planned.reference_g * of_base - body, 3), 0))
        if expected is None:
            continue
        middle = scale.steps.index(expected)
        near = scale.steps[max(0, middle - AROUND) : middle + AROUND + 1]
        by_lifter[name] = tuple(row(one.grams, body) for one in near)
    if base.kind == "system":
        return BackOffPlan(top, middle_of(load.percent), (), by_lifter)
    lowest, highest = base.from_.grams * of_base, base.to.grams * of_base
    tops = [one.grams for one in scale.steps if lowest <= one.grams <= highest]
    every = -(-len(tops) // MOST_ROWS) or 1
    rows = tuple(row(grams, 0) for grams in tops[::every])
    return BackOffPlan(top, middle_of(load.percent), rows, by_lifter)
