"""Room to write on a printed session: a box for every set, for what was on and how often."""

from markupsafe import Markup, escape

from strength_handbook.model.dose import (
    Clock,
    ClusterSet,
    Distance,
    Dose,
    Hold,
    StripSet,
    only_a_top,
)
from strength_handbook.model.exercise import Exercise
from strength_handbook.pages.render import safe
from strength_handbook.pages.train_html import load_field
from strength_handbook.plan.worked import WorkedSlot

_LOADS = "abcdefghij"


def write_in(slot: WorkedSlot, units: str) -> Markup:
    """A line that is seen on paper only: what is written, and a box for every set.

    Both sides are one set, as in the log. A strip set has a box for each of its loads.

    Args:
        slot: what is done.
        units: kilograms or pounds.
    """
    load = _load(slot.exercise, units)
    count = _count(slot.dose)
    asked = " × ".join(filter(None, (load, count)))
    boxes = "".join(f"<span>{escape(name)}</span> " for name in box_names(slot.dose))
    return safe(f'<p class="sh-write" data-search-exclude><b>Done, {escape(asked)}</b> {boxes}</p>')


def box_names(dose: Dose) -> tuple[str, ...]:
    """Names of the boxes: today's top, every set, every load of a strip.

    Args:
        dose: what is asked; of a range of sets the most.
    """
    top = ("top",) if dose.top is not None else ()
    if dose.said.test is not None:
        return (*top, *(str(place + 1) for place in range(dose.said.test.attempts)))
    if only_a_top(dose):
        return top
    sets = [str(place + 1) for place in range(dose.sets.high)]
    if isinstance(dose.work, StripSet):
        loads = _LOADS[: dose.work.strip.loads]
        return (*top, *(one + load for one in sets for load in loads))
    return (*top, *sets)


def _count(dose: Dose) -> str:
    """What is counted in a set."""
    match dose.work:
        case Hold() | Clock():
            return "s"
        case Distance():
            return "m"
        case ClusterSet():
            return "reps in all"
        case _:
            return "reps"


def _load(exercise: Exercise, units: str) -> str:
    """What a number for the load means; empty where there is none to write down."""
    field = load_field(exercise, units)
    return f"{units} added (+) or taken off (−)" if "j" in field else str(field.get("k", ""))
