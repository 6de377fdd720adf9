"""What no room could serve: bands that were never read, loads that do not exist here.

Only what is impossible is reported, never what is unwise. The place is where it is written: the
word in the week's dose, else in the slot, else in the exercise.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from strength_handbook.floor.needs import boxes_of
from strength_handbook.model.length import length_text
from strength_handbook.model.load import BodyWeight, FixedLoad, Setting
from strength_handbook.model.loading import BodyWeightLift, OnBar, OnMachine, OnPivot, PushUp
from strength_handbook.model.quantities import in_unit
from strength_handbook.model.room import Room
from strength_handbook.plan.loads import PlannedLoad
from strength_handbook.plan.on_top import CannotServeError, on_top
from strength_handbook.plan.pivot import at_the_hands
from strength_handbook.plan.reference import is_estimate
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.scales import unit_scale
from strength_handbook.plan.worked import Worked, WorkedProgram, WorkedSlot
from strength_handbook.reading.problem import Problem
from strength_handbook.reading.source import Path, Source
from strength_handbook.reading.suggest import one_of
from strength_handbook.reading.written import Written

NO_PAGE = ("pivot",)
"""Kinds of problems with which no load can be worked out, so that there are no pages."""


@dataclass(frozen=True, slots=True)
class _Place:
    """Where a slot's dose of one week is written."""

    wave: Source
    slot: Path
    week: int
    exercise: Source

    def problem(self, key: str, slug: str, text: str, *, word: bool) -> Problem:
        """A problem at a key of the dose, or at its value where it is not the `word` itself."""
        week: Path = (*self.slot, "weeks", str(self.week))
        for path in ((*week, key), (*self.slot, key)):
            if path in self.wave.marks:
                return self.wave.problem(path, slug, text, key=word)
        if ("dose", key) in self.exercise.marks:
            return self.exercise.problem(("dose", key), slug, text, key=word)
        return self.wave.problem(week, slug, text, key=True)


def unserved(worked: Worked, written: Written) -> list[Problem]:
    """Everything in exercises and doses that this room cannot serve.

    Args:
        worked: the programs worked out.
        written: the files they were read from, for the places.
    """
    problems = list(_exercises(worked, written))
    for program in worked.programs:
        problems += _program(worked.book.room, program, written)
    return problems


def _exercises(worked: Worked, written: Written) -> Iterator[Problem]:
    room = worked.book.room
    for key, exercise in worked.book.exercises.items():
        source, load = written.exercises[key].source, exercise.load
        if isinstance(load, OnPivot):
            try:
                at_the_hands(room.bars[load.bar], room.pivots[load.pivot], load.reach, (), ())
            except ValueError as error:
                text = f"{error}; measure 'reach' again, or the pivot in room.yml"
                yield source.problem(("load", "reach"), "pivot", text)
        elif isinstance(load, OnBar) and load.rack is not None:
            rack, between = room.racks[load.rack], room.bars[load.bar].between_collars
            if between is not None and rack.hook_spacing > between:
                text = (
                    f"the hooks are {length_text(rack.hook_spacing)} apart and the bar has "
                    f"{length_text(between)} between its collars; measure both again, or "
                    "take another bar"
                )
                yield source.problem(("load", "rack"), "hooks", text)


def _program(room: Room, program: WorkedProgram, written: Written) -> Iterator[Problem]:
    files = {file.id: file for file in written.waves_of(program.id)}
    said: set[tuple[str, Path, str, str]] = set()
    for week in program.weeks:
        file = files[week.wave_id]
        for session in week.sessions:
            written_session = file.model.sessions[session.id]
            for slot in session.slots:
                index = written_session.place_of(slot.order, week.week)
                path: Path = ("sessions", session.id, "slots", index)
                exercise = written.exercises[slot.exercise_id].source
                place = _Place(file.source, path, week.week, exercise)
                for problem in _slot(room, slot, place):
                    # One correction mends all weeks.
                    once = (file.source.file, path, problem.slug, problem.text)
                    if once not in said:
                        said.add(once)
                        yield problem


def _slot(room: Room, slot: WorkedSlot, place: _Place) -> Iterator[Problem]:
    said = slot.dose.said
    try:
        asked = on_top(room, slot.exercise.load, slot.dose)
    except CannotServeError as error:
        if said.bands is not None:
            yield place.problem("bands", "bands", str(error), word=True)
        else:
            yield place.problem("chains", "chains", str(error), word=True)
    else:
        if asked is not None and asked.needs_base and slot.base is None:
            text = "'top-share' is a share of a tested value; name the slot's 'base', or a 'pair'"
            yield place.problem("bands", "bands", text, word=True)
    if text := _no_such_box(room, slot):
        yield place.problem("height", "no-such-box", text, word=False)
    if said.assist is not None and said.assist.band is not None:
        band = room.bands.get(said.assist.band)
        if band is not None and band.help is None:
            text = (
                f"band {said.assist.band} has no 'help' in room.yml; read it at the bottom with a "
                "scale in the loop"
            )
            yield place.problem("assist", "help", text, word=True)
    if text := _no_such_load(room, slot, derived=_is_derived(slot, place.week)):
        yield place.problem("load", "no-such-load", text, word=False)
    elif text := _too_heavy(slot):
        yield place.problem("load", "above-best", text, word=False)


def _no_such_box(room: Room, slot: WorkedSlot) -> str:
    """What is wrong with a height, where the exercise is done on a box and boxes are measured."""
    height, boxes = slot.dose.said.height, boxes_of(room)
    if height is None or height in boxes.values() or not boxes.keys() & set(slot.exercise.stations):
        return ""
    there = one_of([length_text(one, "cm") for one in sorted(set(boxes.values()))])
    return f"no box of {length_text(height, 'cm')} in room.yml; there is {there}"


def _is_derived(slot: WorkedSlot, week: int) -> bool:
    """True where the load is a share of another week's: then it is rounded like a percentage."""
    part = slot.slot.weeks.get(week)
    return part is not None and part.deload_of is not None and part.load is None


def _no_such_load(room: Room, slot: WorkedSlot, *, derived: bool) -> str:
    """What is wrong with a load that nobody could put on here; empty where all is well."""
    load, loading, scale = slot.dose.load, slot.exercise.load, slot.scale
    body = isinstance(loading, BodyWeightLift | PushUp)
    if isinstance(load, BodyWeight) and load.change.grams and scale is not None and not body:
        more = _plain(load.change.grams, load.change.unit)
        text = f"{load.text} counts the body, and here only the {scale.on} is lifted"
        return f"{text}; write what is lifted, such as '{more}'"
    if derived:
        return _for_nobody(scale, list(slot.loads.values()), room.units, body=body)
    if isinstance(load, Setting) and isinstance(loading, OnMachine):
        settings = unit_scale(room, loading)
        if not any(abs(setting - load.value) < 1e-6 for setting in settings):
            machine = room.machines[loading.machine]
            return (
                f"the {machine.name} has no {load.value:g}; it goes from {machine.from_:g} to "
                f"{machine.to:g} by {machine.by:g}"
            )
        return ""
    if isinstance(load, FixedLoad) and scale is not None:
        several = dict.fromkeys(load.ends)
        return next(filter(None, (_not_exact(scale, one.grams, one.unit) for one in several)), "")
    if body and isinstance(load, BodyWeight) and load.sign > 0 and load.change.grams:
        if scale is None or not scale.on:
            text = "there is nothing to put the weight on; name a 'carrier' in the exercise"
            return f"{text}, or write 'BW'"
        return _not_exact(scale, load.change.grams, load.change.unit)
    if is_estimate(slot.dose):
        return ""
    return _for_nobody(scale, list(slot.loads.values()), room.units, body=body)


def _not_exact(scale: Scale, grams: int, units: str) -> str:
    """A load for everybody must be one that exists."""
    if any(abs(step.grams - grams) <= scale.slack_g for step in scale.steps):
        return ""
    below = max((s.grams for s in scale.steps if s.grams < grams), default=None)
    above = min((s.grams for s in scale.steps if s.grams > grams), default=None)
    near = " and ".join(_plain(one, units) for one in (below, above) if one is not None)
    there = f"; the nearest here: {near}" if near else "; there is none at all"
    return f"no {_plain(grams, units)} can be made with the {scale.on}{there}"


def _for_nobody(scale: Scale | None, loads: list[PlannedLoad], units: str, *, body: bool) -> str:
    """A load that lies beyond what is here for every example lifter.

    Without a scale nothing is known about the load, save in a lift of the `body`.
    """
    if not loads or (scale is None and not body):
        return ""
    if all(load.step is None and not load.help_g for load in loads):
        heaviest = max(load.planned_g for load in loads)
        if scale is None:
            return "weight must be added and there is nothing to put it on; name a 'carrier'"
        if not scale.steps:
            return f"nothing can be put on the {scale.on}: the room has no load for it"
        least = _plain(scale.lightest_g, units)
        if not heaviest:
            return (
                f"there is no 'BW' here: the lightest {scale.on} is {least}; write a load, or take "
                "an exercise of body weight"
            )
        return (
            f"lighter than all there is for every example lifter: {_plain(heaviest, units)} at "
            f"most, and the {scale.on} begins at {least}"
        )
    if scale is None or not scale.steps:
        return ""
    last = scale.steps[-2].grams if len(scale.steps) > 1 else 0
    gap = scale.heaviest_g - last
    lightest = min(load.planned_g for load in loads)
    if lightest >= scale.heaviest_g + gap:
        return (
            f"heavier than all there is for every example lifter: {_plain(lightest, units)} at "
            f"least, and the {scale.on} ends at {_plain(scale.heaviest_g, units)}"
        )
    return ""


def _too_heavy(slot: WorkedSlot) -> str:
    """Several whole repetitions above the best single; lowering alone and holds may lie above."""
    dose, reps, percent = slot.dose, slot.dose.reps, slot.heaviest_percent
    if percent is None or percent <= 100 or reps is None or reps.low < 2:
        return ""
    if dose.said.return_by is not None or dose.said.test is not None:
        return ""
    return (
        f"{percent:g} % of the tested value for {reps.text}: more than the best single is "
        "lifted once at most; write a lower percentage, or 'return-by' where it is only lowered"
    )


def _plain(grams: float, units: str) -> str:
    return f"{in_unit(round(grams), units)} {units}"
