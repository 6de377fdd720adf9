"""Which dangers an exercise brings by its loading, its place, its words and its doses.

Each is named by the hazards whose caution would cover it; the first is the one to add.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from strength_handbook.calc.repetitions import percent_for_reps
from strength_handbook.model.dose import Hold
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.load import PercentOfBase
from strength_handbook.model.loading import (
    BodyWeightLift,
    ByEffort,
    InHands,
    OnBar,
    OnCarrier,
    OnMachine,
    OnPivot,
    OnStack,
    PlateHeld,
    PushUp,
)
from strength_handbook.model.pace import PaceOfBest
from strength_handbook.model.room import Room
from strength_handbook.model.span import ends
from strength_handbook.model.words import Hazard, Pattern
from strength_handbook.plan.reference import top_percent
from strength_handbook.plan.worked import WorkedSlot
from strength_handbook.review.desk import Desk
from strength_handbook.review.fatigue import is_easy_hold
from strength_handbook.review.misfits import misfitting
from strength_handbook.review.words import number

_PACKS = re.compile(r"\b(?:pack|backpack|rucksack|vest)s?\b", re.IGNORECASE)
_BELTS = re.compile(r"\bbelts?\b", re.IGNORECASE)
_BOXES = re.compile(r"\bbox(?:es)?\b", re.IGNORECASE)
_ON_BACK = re.compile(
    r"\b(?:bar|pads?)\b[^.;]*\b(?:on|across|over) (?:the |your |both )?(?:upper )?"
    r"(?:back|shoulders)\b|\bback squat\b",
    re.IGNORECASE,
)
_IN_FRONT = re.compile(
    r"\bfront squat\b|\bfront of (?:the|your|both) shoulders\b|\bzercher\b|\bcrook of\b",
    re.IGNORECASE,
)
_LYING = re.compile(
    r"^on (?:the|your) back\b|\bl(?:ie|ies|ying) (?:flat |down )?on (?:the|your) back\b"
    r"|\bface up\b",
    re.IGNORECASE,
)
_HANGING = re.compile(r"^hang(?:s|ing)?\b", re.IGNORECASE)
_SWING = re.compile(r"\bswings?\b", re.IGNORECASE)
_BY_PARTNER = re.compile(
    r"\bpartner(?:'s|s)?\b[^.;]*\b(?:hands?|push\w*|press\w*|resist\w*|sets?|pulls?)\b"
    r"|\b(?:partner-resisted|manual resistance)\b",
    re.IGNORECASE,
)
_BRACED = {Pattern.SQUAT, Pattern.HINGE, Pattern.VERTICAL_PUSH, Pattern.HORIZONTAL_PUSH}
_MOST_REPS = 15
"""The chart of repetitions and percentages ends there."""


@dataclass(frozen=True, slots=True)
class Danger:
    """Something that can hurt, and the hazards of which one must be named.

    Attributes:
        hazards: any of them brings a fitting caution; the first fits best.
        because: where it comes from, as a clause.
    """

    hazards: tuple[Hazard, ...]
    because: str


def dangers(desk: Desk, exercise_id: str) -> tuple[Danger, ...]:
    """Every danger of an exercise, in the order of the files: itself, then its doses."""
    exercise = desk.book.exercises[exercise_id]
    found = [*_of_loading(exercise, desk.book.room), *_of_place(exercise, desk.book.room)]
    found += _of_doors(exercise)
    for use in desk.worked.uses.get(exercise_id, ()):
        where = f"week {use.week.week}, {use.session.id} {use.slot.order}"
        if use.slot not in misfitting(desk):  # that dose is what has to be mended
            found += _of_dose(desk, use.slot, where)
    return tuple({danger.hazards: danger for danger in reversed(found)}.values())[::-1]


def may_pin(exercise: Exercise, room: Room) -> bool:
    """True where a bar can come to rest on the lifter: on the back, or over somebody lying."""
    if {Hazard.BAR_ON_BACK, Hazard.SUPINE_BAR} & set(exercise.hazards):
        return True
    pins = (Hazard.BAR_ON_BACK,), (Hazard.SUPINE_BAR,)
    return any(danger.hazards in pins for danger in _of_loading(exercise, room))


NEAR_BEST_S = 10.0
NEAR_BEST_PERCENT = 85.0
"""From here on a pace or a share of a tested best is hard. Common practice, no source."""


def reaches_percent(slot: WorkedSlot) -> float | None:
    """The highest percent of the best single that a slot asks for, tests and RMs included."""
    dose, heaviest = slot.dose, slot.heaviest_percent
    known = [one for one in (heaviest, top_percent(dose)) if one is not None]
    reps = [dose.said.test.rm if dose.said.test else None]
    reps.append(getattr(dose.load, "reps", None))
    known += [percent_for_reps(count) for count in reps if count and count <= _MOST_REPS]
    return max(known, default=None)


def _of_loading(exercise: Exercise, room: Room) -> Iterator[Danger]:
    load = exercise.load
    match load:
        case OnStack():
            yield Danger((Hazard.CABLE,), "it is loaded with a cable stack")
        case OnMachine():
            yield Danger((Hazard.MACHINE,), "it is done in a machine")
        case OnPivot():
            yield Danger((Hazard.PIVOT,), "the bar turns in a pivot")
        case OnCarrier():
            yield Danger((Hazard.SLED, Hazard.CARRY), "something loaded is dragged")
        case PlateHeld() if exercise.pattern is not Pattern.ISOLATED:
            held = (Hazard.PLATE_HELD, Hazard.PLATE_ON_BACK, Hazard.CARRY)
            yield Danger(held, "a plate is held")
        case PushUp() if load.plate_limit is not None:
            yield Danger((Hazard.PLATE_ON_BACK,), "a plate may lie on the back")
        case BodyWeightLift() if load.carrier is not None:
            name = f"{load.carrier} {room.carriers[load.carrier].name}".replace("-", " ")
            if _BELTS.search(name):
                yield Danger((Hazard.BELT,), "plates hang from a belt")
            elif _PACKS.search(name):
                yield Danger((Hazard.PACK,), "plates lie in a pack")
        case ByEffort() if _BY_PARTNER.search(f"{exercise.name}. {load.by}"):
            yield Danger((Hazard.PARTNER_CONTACT,), "a partner is the resistance")
        case OnBar() if load.hands is None:
            yield from _of_bar(exercise, load, room)
        case InHands() if exercise.pattern is Pattern.HORIZONTAL_PUSH:
            yield Danger((Hazard.DUMBBELLS_OVER_BODY,), "weights are pushed up over the body")
        case _:
            pass
    overhead = exercise.pattern is Pattern.VERTICAL_PUSH
    if overhead and isinstance(load, OnBar | InHands | OnPivot):
        yield Danger((Hazard.OVERHEAD,), "a weight is pushed overhead")


def _of_bar(exercise: Exercise, load: OnBar, room: Room) -> Iterator[Danger]:
    racked = {load.rack, *exercise.stations, *exercise.uses} & room.racks.keys()
    if racked:
        yield Danger((Hazard.RACK,), "the bar lies in a rack")
    if exercise.pattern is Pattern.HORIZONTAL_PUSH:
        yield Danger((Hazard.SUPINE_BAR,), "a bar is pushed up over somebody lying")
    words = ". ".join((exercise.name, exercise.also or "", exercise.poses.start))
    squat = exercise.pattern is Pattern.SQUAT and bool(racked)
    legs = exercise.pattern in {Pattern.SQUAT, Pattern.SINGLE_LEG, Pattern.HINGE}
    if not _IN_FRONT.search(words) and (squat or (legs and _ON_BACK.search(words))):
        yield Danger((Hazard.BAR_ON_BACK,), "the bar rests on the back")


def _of_place(exercise: Exercise, room: Room) -> Iterator[Danger]:
    names = room.names()
    things = " ".join(f"{one} {names[one]}" for one in (*exercise.stations, *exercise.uses))
    if _BOXES.search(things):
        yield Danger((Hazard.BOX, Hazard.HANGING), "it needs a box")
    if exercise.pattern is Pattern.JUMP:
        yield Danger((Hazard.IMPACT,), "it ends in a landing")
    if exercise.pattern is Pattern.CARRY and not isinstance(exercise.load, OnCarrier):
        yield Danger((Hazard.CARRY, Hazard.SLED), "something heavy is carried")
    pulls_up = exercise.pattern is Pattern.VERTICAL_PULL
    if (pulls_up and isinstance(exercise.load, BodyWeightLift)) or any(
        _HANGING.search(text) for text in (exercise.also or "", exercise.poses.start)
    ):
        yield Danger((Hazard.HANGING,), "the lifter hangs")
    swings = _SWING.search(exercise.name) and isinstance(exercise.load, InHands)
    if swings:
        yield Danger((Hazard.SWING,), "a bell is swung")
    elif (
        exercise.pattern is Pattern.HINGE
        and exercise.lifts_from == "bottom"
        and isinstance(exercise.load, OnBar | InHands)
    ):
        yield Danger((Hazard.HEAVY_PULL, Hazard.SWING), "it is pulled from the floor")
    start = exercise.poses.start
    if _LYING.search(start) and not re.search(r"\bside\b|face down", start, re.IGNORECASE):
        yield Danger((Hazard.SUPINE,), "somebody lies on the back")


def _of_doors(exercise: Exercise) -> Iterator[Danger]:
    """Doors that keep the exercise and hang something else on it."""
    doors = exercise.doors
    for name, door in (("easier", doors.easier), ("harder", doors.harder), ("taken", doors.taken)):
        if door.to is None and door.dose is not None:
            yield from _on_bar(door.dose, f"the door '{name}'")


def _on_bar(said: DosePart, where: str) -> Iterator[Danger]:
    if said.bands is not None or (said.assist is not None and said.assist.band is not None):
        yield Danger((Hazard.BAND,), f"{where} has bands")
    if said.chains is not None:
        yield Danger((Hazard.CHAIN,), f"{where} has chains")


def _of_dose(desk: Desk, slot: WorkedSlot, where: str) -> Iterator[Danger]:
    exercise, said = slot.exercise, slot.dose.said
    yield from _on_bar(said, where)
    yield from _of_seconds(desk, slot, where)
    if slot.dose.going is not None and (hard := _hard(desk, slot)):
        yield Danger((Hazard.HARD_CONDITIONING,), f"{where} {hard}")
    if said.push is not None:
        yield Danger((Hazard.PUSH_ON_PINS,), f"{where} pushes against something fixed")
    braced = exercise.pattern in _BRACED and isinstance(exercise.load, OnBar | OnMachine)
    percent = reaches_percent(slot)
    if braced and percent is not None and percent >= desk.rule("brace-from"):
        yield Danger((Hazard.BREATH_HOLD,), f"{where} asks for {number(percent)} %")


def _hard(desk: Desk, slot: WorkedSlot) -> str:
    """Why a dose of rowing or running is hard; empty where it is not."""
    if slot.dose.said.talk == "cannot":
        return "leaves no breath to talk"
    left = slot.dose.fewest_left
    effort = None if left is None else 10 - left
    if effort is not None and effort >= desk.rule("hard-conditioning"):
        return f"asks for effort {number(effort)}"
    match slot.dose.load:
        case PaceOfBest(seconds) if ends(seconds)[0] <= NEAR_BEST_S:
            return "is near the pace of the best"
        case PercentOfBase(percent) if ends(percent)[1] >= NEAR_BEST_PERCENT:
            return f"asks for {number(ends(percent)[1])} % of the best"
        case _:
            return ""


def _of_seconds(desk: Desk, slot: WorkedSlot, where: str) -> Iterator[Danger]:
    dose = slot.dose
    tempo, kinds = dose.tempo, (Hazard.HEAVY_ECCENTRIC,)
    if dose.said.return_by is not None:
        yield Danger(kinds, f"{where} is lowering only")
    elif tempo is not None and tempo.lower >= desk.rule("slow-lowering"):
        yield Danger(kinds, f"{where} lowers for {tempo.lower} s")
    long = isinstance(dose.work, Hold) and dose.work.longest_s > desk.rule("long-hold")
    if isinstance(dose.work, Hold) and long and not is_easy_hold(slot):
        yield Danger((Hazard.LONG_HOLD,), f"{where} holds for {number(dose.work.longest_s)} s")
