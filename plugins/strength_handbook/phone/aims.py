"""A pace or watts of a tested best as a recipe: `paces.js` does the sums of `plan/aims.py`.

b  the best                   o     its metres; 0 where it is in watts
r  metres of the pace         n     the same in words
u  seconds slower             h     or percent of its speed or power; both ends
i  metres of one piece        j     the same in words
w  1: a rowing machine, which shows watts
"""

from typing import Any

from strength_handbook.model.dose import Dose
from strength_handbook.model.length import length_text
from strength_handbook.model.load import PercentOfBase
from strength_handbook.model.pace import PaceOfBest
from strength_handbook.model.printed import NBSP
from strength_handbook.model.span import ends
from strength_handbook.plan.aims import AimStrip, aim_strip
from strength_handbook.plan.next_case import Outcome
from strength_handbook.plan.worked import WorkedSlot


def aim_recipe(slot: WorkedSlot) -> dict[str, Any] | None:
    """How a phone makes a slot's own pace or watts; None where it asks for none."""
    return _recipe(slot.base_id, slot.aims, slot.dose)


def next_aim(slot: WorkedSlot, then: WorkedSlot | None, result: Outcome) -> dict[str, Any] | None:
    """The same of the next time after a result; None where it stays as it is.

    Args:
        slot: the slot as it is done today.
        then: the same slot the next time, or None.
        result: what was done, and what follows.
    """
    dose = result.dose
    if dose is not None:
        found = _recipe(slot.base_id, aim_strip(slot.best, dose), dose)
    else:
        found = None if then is None else aim_recipe(then)
    return None if found == aim_recipe(slot) else found


def _recipe(base_id: str | None, strip: AimStrip | None, dose: Dose) -> dict[str, Any] | None:
    if strip is None or base_id is None:
        return None
    going = strip.going
    found: dict[str, Any] = {
        "b": base_id,
        "o": float(strip.best.over.metres),
        "r": going.per_m,
        "n": going.per.replace(" ", NBSP),
    }
    match dose.load:
        case PaceOfBest(seconds):
            found["u"] = list(dict.fromkeys(ends(seconds)))
        case PercentOfBase(percent):
            found["h"] = list(dict.fromkeys(ends(percent)))
    if strip.metres:
        found |= {"i": float(strip.metres), "j": length_text(strip.metres, gap=NBSP)}
    return found | ({"w": 1} if strip.rows[0][1].watts and strip.best.over.metres else {})
