"""What is different in a slot from one week to the next, in words."""

from collections.abc import Iterator

from strength_handbook.dose.key import WAY
from strength_handbook.dose.table import KEYS
from strength_handbook.model.count import top_text
from strength_handbook.model.dose import Dose
from strength_handbook.pages.coach.short import short_pieces
from strength_handbook.plan.worked import WorkedSlot


def steps(before: WorkedSlot, now: WorkedSlot) -> list[str]:
    """Everything that changed in a slot, the load first; empty where nothing did.

    Whatever no word here covers is given as it stands now.
    """
    a, b = before.dose, now.dose
    found = [*_load(before, now)]
    for key in KEYS:
        if callable(key.step):
            found += key.step(a, b)
    if not found and short_pieces(a) != short_pieces(b):
        return [f"otherwise: {' · '.join(short_pieces(b))}"]
    if _how(a) != _how(b):
        found.append(f"done in another way: {' · '.join(short_pieces(b))}")
    return found


def _load(before: WorkedSlot, now: WorkedSlot) -> Iterator[str]:
    a, b = before.dose, now.dose
    was, is_ = (a.load.text if a.load else "by effort"), (b.load.text if b.load else "by effort")
    ramps = [
        f"ramp to {top_text(one.top, one.top_left)}" if one.top else "no ramp" for one in (a, b)
    ]
    if was == is_ and ramps[0] == ramps[1]:
        return
    text = f"{is_} instead of {was}"
    if ramps[0] != ramps[1]:
        yield f"{ramps[1]} instead of {ramps[0]}"
        if was == is_:
            return
    direction = _direction(before, now)
    yield f"{direction}: {text}" if direction else f"load: {text}"


def _direction(before: WorkedSlot, now: WorkedSlot) -> str:
    """Heavier or lighter, where it can be known: by the percentage, or for all example lifters."""
    if before.percent is not None and now.percent is not None and before.base == now.base:
        difference = [now.percent - before.percent]
    else:
        shared = before.loads.keys() & now.loads.keys()
        difference = [now.loads[key].planned_g - before.loads[key].planned_g for key in shared]
    if difference and all(one > 0 for one in difference):
        return "heavier"
    if difference and all(one < 0 for one in difference):
        return "lighter"
    return ""


def _how(dose: Dose) -> tuple[object, ...]:
    """Everything that makes it another way to do a set: its kind, bands, pauses, open sets …"""
    part = dose.part
    return type(dose.work), dose.fast, *(key.value(part) for key in KEYS if key.step is WAY)
