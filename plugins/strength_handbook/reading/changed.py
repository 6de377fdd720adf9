"""A dose with more or less of one thing than another: kilograms, sets, repetitions, seconds."""

from dataclasses import dataclass
from typing import Any

from strength_handbook.dose.clause import NotationError
from strength_handbook.model.count import Count
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.load import BodyWeight, FixedLoad, Load
from strength_handbook.model.quantities import Mass
from strength_handbook.model.samples import unit
from strength_handbook.model.span import ends, moved

_MASSES = {"k": "kg", "l": "lb", "p": "lb"}
"""By the first letter of the unit."""


@dataclass(frozen=True, slots=True)
class MoreOf:
    """So much more, or less.

    Attributes:
        by: how much; negative for less.
        what: a unit or a word, in small letters.
    """

    by: float
    what: str


def changed(part: DosePart, change: MoreOf, slot: DosePart) -> DosePart:
    """A dose with a change.

    Args:
        part: what is changed.
        change: how.
        slot: what holds where the part says nothing.

    Raises:
        NotationError: where it has none of what is changed, or nothing would be left.
    """
    what = change.what
    if what in ("%", "percent"):
        raise _refused(
            f"{abs(change.by):g} % more or less can mean points, or a share of the load; write the "
            "load itself, such as '@ 72.5 %'"
        )
    if what.startswith(("set", "rep")):
        return _counted(part, change, slot)
    if what.startswith(("kg", "kilo", "lb", "pound")):
        return _heavier(part, change, slot)
    return _longer(part, change, slot)


def fields_of(change: MoreOf) -> tuple[str, ...]:
    """The fields of a dose that a change is about.

    >>> fields_of(MoreOf(1, "set")), fields_of(MoreOf(2.5, "kg"))
    (('sets', 'series'), ('load', 'series'))
    """
    if change.what.startswith("set"):
        return "sets", "series"
    if change.what.startswith("rep"):
        return "reps", "series"
    if change.what.startswith(("kg", "kilo", "lb", "pound", "%", "percent")):
        return "load", "series"
    return "hold", "time", "distance"


def _refused(text: str) -> NotationError:
    return NotationError(0, text)


def _counted(part: DosePart, change: MoreOf, slot: DosePart) -> DosePart:
    """More or fewer sets or repetitions."""
    key = "sets" if change.what.startswith("set") else "reps"
    if change.by != int(change.by):
        raise _refused(f"{key} are whole numbers; write '+1 {key[:-1]}'")
    if part.series:
        raise _refused(f"the sets of that week differ; write this week's {key} in full")
    count: Count | None = getattr(part, key) or getattr(slot, key)
    if count is None:
        raise _refused(f"that week has no {key} to change; write this week's dose in full")
    by = int(change.by)
    if count.low + by < 1:
        raise _refused(f"no {key} are left; write this week's dose in full")
    return part.model_copy(update={key: Count(count.low + by, count.high + by, count.open)})


def _longer(part: DosePart, change: MoreOf, slot: DosePart) -> DosePart:
    """Longer or shorter, in seconds or metres."""
    key: Any = next(
        (
            one
            for one in (("distance",) if change.what.startswith("m") else ("hold", "time"))
            if getattr(part, one) is not None or getattr(slot, one) is not None
        ),
        None,
    )
    if key is None:
        what = "metres" if change.what.startswith("m") else "seconds"
        raise _refused(f"that week has no {what} to change; write this week's dose in full")
    value = getattr(part, key)
    value = getattr(slot, key) if value is None else value
    if ends(value)[0] + change.by <= 0:
        raise _refused("nothing is left of that; write this week's dose in full")
    return part.model_copy(update={key: moved(value, change.by)})


def _heavier(part: DosePart, change: MoreOf, slot: DosePart) -> DosePart:
    """More or less mass."""
    if part.series and any(one.load is not None for one in part.series):
        series = [one.model_copy(update={"load": _load(one.load, change)}) for one in part.series]
        return part.model_copy(update={"series": series})
    return part.model_copy(update={"load": _load(part.load or slot.load, change)})


def _load(load: Load | None, change: MoreOf) -> Load:
    """A load with so much more; in the unit in which it is written.

    Raises:
        NotationError: for a percentage, for another unit, and where nothing is left.
    """
    theirs = _MASSES[change.what[0]]
    match load:
        case FixedLoad():
            low, high = (_moved(end, 1, change.by, theirs) for end in load.ends)
            if low[0] <= 0:
                raise _refused("nothing is left of that load; write this week's, '@ 60 kg'")
            return FixedLoad.between(Mass(*low), Mass(*high))
        case BodyWeight(change=mass, sign=sign):
            same = mass if mass.grams else Mass(0, theirs)
            grams, of = _moved(same, sign, change.by, theirs)
            return BodyWeight(Mass(abs(grams), of), -1 if grams < 0 else 1)
        case None:
            raise _refused(
                f"that week has no load to change; write this week's, such as '@ 60 {unit()}'"
            )
    raise _refused(
        f"that week's load is '{load.text}', and a mass can't be added to it; write this week's, "
        "such as '@ 76 %'"
    )


def _moved(mass: Mass, sign: int, by: float, theirs: str) -> tuple[int, str]:
    """Grams of a mass with more, and the unit.

    Raises:
        NotationError: where the units differ.
    """
    if mass.unit != theirs:
        raise _refused(
            f"that week's load is in {mass.unit}; write the change in {mass.unit} too, such as "
            f"'+5 {mass.unit}'"
        )
    return sign * mass.grams + round(
        Mass.parse(f"{abs(by):g} {theirs}").grams * (-1) ** (by < 0)
    ), theirs
