"""The block from which a phone leads through a session, one set at a time."""

from typing import Any

from markupsafe import Markup

from strength_handbook.dose.effort import tempo_in_words
from strength_handbook.model.dose import Dose
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.loading import (
    BodyWeightLift,
    InHands,
    OnBar,
    OnCarrier,
    OnPivot,
    OnStack,
    PlateHeld,
    PushUp,
)
from strength_handbook.pages.instead_html import variant_title, worked_variants
from strength_handbook.pages.media_html import first_photo
from strength_handbook.pages.tools_html import block
from strength_handbook.phone.train import session_guide
from strength_handbook.plan.doors import doors_of
from strength_handbook.plan.variants import offered, variant_dose
from strength_handbook.plan.worked import (
    Worked,
    WorkedProgram,
    WorkedSession,
    WorkedSlot,
    WorkedWeek,
)


def train_data(
    worked: Worked, program: WorkedProgram, week: WorkedWeek, session: WorkedSession
) -> Markup:
    """Data that a script of ours asks for; nothing is seen of it without."""
    data = session_guide(worked.book, program, week, session)
    variants = worked_variants(worked, program, session)
    data["variants"] = [
        {"number": number, "says": variant_title(one)}
        for number, one in zip(data["variants"], variants, strict=True)
    ]
    for slot, found in zip(session.slots, data["slots"], strict=True):
        found.update(_words(worked, program, slot))
        for variant, less in zip(offered(session), found.get("v", []), strict=True):
            if "t" in less:
                less.update({"y": []} | _tempo(variant_dose(slot.dose, variant), slot.exercise))
    data |= {"warm": warm_up_title(program), "close": closing(program)}
    return block("sh-train-data", data | {"units": worked.book.room.units})


def warm_up_title(program: WorkedProgram) -> str:
    """What comes before the first exercise, and how long it takes."""
    return f"Warm-up, {round(program.program.warm_up / 60)} min"


def closing(program: WorkedProgram) -> str:
    """What comes after the last one."""
    return f"Put away and cool down, {round(program.program.close / 60)} min"


def _words(worked: Worked, program: WorkedProgram, slot: WorkedSlot) -> dict[str, Any]:
    units = worked.book.room.units
    found: dict[str, Any] = {"name": slot.exercise.name} | load_field(slot.exercise, units)
    found |= _pictured(worked, slot.exercise)
    found |= _tempo(slot.dose, slot.exercise)
    doors = {
        plan.key: {"i": plan.to, "x": plan.exercise.stop[0]}
        | load_field(plan.exercise, units)
        | _pictured(worked, plan.exercise)
        for plan in doors_of(worked, program, slot)
        if plan.to
    }
    return found | ({"d": doors} if doors else {})


def _pictured(worked: Worked, exercise: Exercise) -> dict[str, Any]:
    """Whether there is a drawing, and the first photo with what it shows."""
    found: dict[str, Any] = {"F": 1} if exercise.figure is not None else {}
    photo = first_photo(worked, exercise)
    return found | ({"P": [*photo]} if photo else {})


def _tempo(dose: Dose, exercise: Exercise) -> dict[str, Any]:
    """A tempo as it is written, and in sentences; no key where there is nothing to say."""
    found: dict[str, Any] = {"z": dose.tempo.text} if dose.tempo is not None else {}
    words = tempo_words(dose, exercise)
    return found | ({"y": words} if words else {})


def tempo_words(dose: Dose, exercise: Exercise) -> list[str]:
    """A repetition in sentences, the planned pause among them."""
    words = tempo_in_words(dose.tempo, exercise.phases) if dose.tempo is not None else ""
    pause = dose.said.pause
    held = f"Hold {pause.time:g} s in each repetition: {pause.at}." if pause is not None else ""
    return [text for text in (words and f"{words[0].upper()}{words[1:]}.", held) if text]


def load_field(exercise: Exercise, units: str) -> dict[str, Any]:
    """What a member's number means for a lift; empty where there is none to write down."""
    match exercise.load:
        case OnBar(hands=None):
            return {"k": f"{units} with the bar"}
        case OnBar(hands=2) | InHands(hands=2):
            return {"k": f"{units} in each hand"}
        case OnBar() | InHands():
            return {"k": f"{units} in the hand" if exercise.sides == "each" else units}
        case BodyWeightLift(carrier=None, help=None):
            return {}
        case BodyWeightLift():
            return {"k": units, "j": 1}
        case OnStack():
            return {"k": f"{units} on the stack"}
        case OnPivot():
            return {"k": f"{units} on the free end"}
        case OnCarrier():
            return {"k": f"{units} in all"}
        case PlateHeld():
            return {"k": f"{units}, the plate"}
        case PushUp(plate_limit=limit) if limit is not None:
            return {"k": f"{units} on the back"}
        case _:
            return {}
