"""Does a set go near failure with a plate on somebody's back?"""

from collections.abc import Iterator

from strength_handbook.model.dose import ClusterSet, Reps, StripSet
from strength_handbook.model.load import BodyWeight, FixedLoad
from strength_handbook.model.loading import PlateHeld, PushUp
from strength_handbook.model.words import Hazard
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.words import number


@check(
    "plate-near-failure",
    Family.SAFETY,
    Severity.ERROR,
    what="Sets with a plate on the back: the good repetitions that are left at the end. A strip "
    "set, an open set and a rest-pause that say none leave none.",
    why="Who fails under a plate falls with it, and the caution of the exercise forbids it.",
    rules=("back-plate-left",),
)
def plate_near_failure(this: Check, desk: Desk) -> Iterator[Finding]:
    """Doses that the exercise's own caution forbids."""
    least = desk.rule("back-plate-left")
    for at in desk.slots:
        if not _plate_on_back(at):
            continue
        what, left = _least_left(at)
        if left < least:
            text = f"{what} with a plate on the back and {number(left)} left; at least "
            text += f"{number(least)}"
            keys = ("last-set",) if what == _LAST else ("rir", "rpe", "strip", "cluster", "reps")
            yield this.finds(at, text, spot=at.spot_of(*keys), change=_change(at, what, least))


_LAST = "an open last set"


def _plate_on_back(at: SlotAt) -> bool:
    """True where this dose lays something on the back of at least one lifter."""
    load, dose = at.slot.exercise.load, at.slot.dose
    if isinstance(load, PlateHeld):
        hazards = at.slot.exercise.hazards
        return Hazard.PLATE_ON_BACK in hazards and Hazard.PLATE_HELD not in hazards
    if not isinstance(load, PushUp) or load.plate_limit is None:
        return False
    match dose.load:
        case FixedLoad():
            return True
        case BodyWeight() as body:
            return body.sign > 0 and body.change.grams > 0
        case _:
            laid = any(one.step and one.step.grams > 0 for one in at.slot.loads.values())
            return laid or isinstance(dose.work, StripSet)


def _least_left(at: SlotAt) -> tuple[str, float]:
    """The set that goes furthest, and the good repetitions left in it."""
    dose = at.slot.dose
    found = [("a set", dose.fewest_left)] if dose.fewest_left is not None else []
    if dose.last_set is not None:
        found.append((_LAST, float(dose.last_set.rir)))
    if dose.reserve is None:
        if isinstance(dose.work, StripSet):
            found.append(("a strip set", 0.0))
        elif isinstance(dose.work, ClusterSet) and dose.work.cluster.falling:
            found.append(("a rest-pause", 0.0))
        elif isinstance(dose.work, Reps) and dose.work.count.open:
            found.append(("an open set", 0.0))
    return min(found, key=lambda one: one[1], default=("", float("inf")))


def _change(at: SlotAt, what: str, least: float) -> Mending:
    dose, words = at.slot.dose, f"RIR {number(least)}"
    if what == _LAST and dose.last_set is not None:
        last = dose.last_set
        new = {"floor": last.floor, "cap": last.cap, "rir": int(least)}
        edits = at.rewritten(last_set=dict(new))
        return Mending(f"write 'last set {last.floor}+ cap {last.cap} {words}'", edits)
    if dose.said.rpe is not None:
        return Mending(f"write 'RPE {number(10 - least)}'", at.rewritten(rpe=10 - least))
    return Mending(f"write '{words}', or lay no plate on the back", at.rewritten(rir=least))
