"""A book worked out: every slot of every week, its loads, minutes and volumes."""

from collections.abc import Mapping
from dataclasses import replace

from strength_handbook.calc.repetitions import RepBand, feasible_reps
from strength_handbook.model.book import Book, WrittenProgram
from strength_handbook.model.dose import Dose
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.program import Base, Program
from strength_handbook.model.session import Session, Slot
from strength_handbook.model.slot_dose import slot_dose
from strength_handbook.plan.aims import aim_strip
from strength_handbook.plan.help import assisted, help_bands, takes_bands, with_bands, with_help
from strength_handbook.plan.loads import PlannedLoad, plan_load
from strength_handbook.plan.minutes import session_minutes
from strength_handbook.plan.on_top import for_lifters, served
from strength_handbook.plan.reference import is_estimate, load_rules, reference_percent
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.scales import scale_for
from strength_handbook.plan.strip_lifters import (
    as_stripped,
    lifter_strips,
    loaded_for_strips,
    mean_moved_g,
)
from strength_handbook.plan.strip_load import StripLoad, StripLoads
from strength_handbook.plan.strips import felt_g
from strength_handbook.plan.timed import timed_slots
from strength_handbook.plan.volume import add_up, slot_volume
from strength_handbook.plan.worked import (
    Use,
    Worked,
    WorkedProgram,
    WorkedSession,
    WorkedSlot,
    WorkedWeek,
)


def work_out(book: Book) -> Worked:
    """Loads, minutes and volumes of all programs of a book."""
    shared: dict[tuple[str, bool], Scale | None] = {}
    bands = help_bands(book.room.bands)
    scales: dict[str, Scale | None] = {}
    for key, exercise in book.exercises.items():
        # Exercises loaded alike share one scale, and with it every table made from it.
        banded = takes_bands(exercise)
        alike = exercise.load.model_dump_json(exclude={"start"}), banded
        if alike not in shared:
            scale = scale_for(book.room, exercise.load)
            shared[alike] = with_bands(scale, bands) if banded else scale
        scales[key] = shared[alike]
    programs = tuple(_program(book, written, scales) for written in book.programs)
    uses: dict[str, list[Use]] = {}
    for program in programs:
        for week in program.weeks:
            for session in week.sessions:
                for slot in session.slots:
                    use = Use(program, week, session, slot)
                    uses.setdefault(slot.exercise_id, []).append(use)
    return Worked(book, programs, scales, {key: tuple(several) for key, several in uses.items()})


def _program(
    book: Book, written: WrittenProgram, scales: Mapping[str, Scale | None]
) -> WorkedProgram:
    weeks = []
    for wave_id, wave in zip(written.wave_ids, written.waves, strict=True):
        for number in wave.weeks:
            sessions = tuple(
                worked
                for key, session in sorted(wave.sessions.items(), key=_day)
                if (
                    worked := _session(
                        book,
                        written.program,
                        key,
                        session,
                        number,
                        scales,
                        easy=number in wave.deload,
                    )
                )
            )
            volume = add_up(session.volume for session in sessions if not session.session.optional)
            weeks.append(WorkedWeek(number, wave_id, wave, sessions, volume))
    weeks.sort(key=lambda week: week.week)
    return WorkedProgram(written.id, written.program, tuple(weeks))


_DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", None)


def _day(named: tuple[str, Session]) -> int:
    """Place in the week; sessions without a day come last, in the order of the file."""
    return _DAYS.index(named[1].day)


def _session(
    book: Book,
    program: Program,
    key: str,
    session: Session,
    week: int,
    scales: Mapping[str, Scale | None],
    *,
    easy: bool,
) -> WorkedSession | None:
    """A session in one week; None where nothing is done in it."""
    slots = tuple(
        replace(_slot(book, program, slot, week, scales[slot.exercise]), easy=easy)
        for slot in session.slots
        if slot.weeks.get(week) is not None
    )
    if not slots:
        return None
    minutes = session_minutes(book, program, timed_slots(book, program.group.sharing, slots))
    volume = add_up(slot.volume for slot in slots)
    return WorkedSession(key, week, session, slots, minutes, volume)


def _slot(book: Book, program: Program, slot: Slot, week: int, scale: Scale | None) -> WorkedSlot:
    exercise = book.exercises[slot.exercise]
    base_id = slot.base or own_base(exercise)
    base = program.bases.get(base_id) if base_id else None
    dose = slot_dose(slot, exercise, week)
    worked = work_slot(book, slot, slot.exercise, dose, base_id, base, scale)
    best = program.bests.get(base_id) if base_id else None
    return replace(worked, best=best, aims=aim_strip(best, dose))


def work_slot(
    book: Book,
    slot: Slot,
    exercise_id: str,
    dose: Dose,
    base_id: str | None,
    base: Base | None,
    scale: Scale | None,
) -> WorkedSlot:
    """A dose of an exercise with its loads and volume.

    Args:
        book: exercises, lifters and house rules.
        slot: where it is written; a door or a variant may do another exercise or dose there.
        exercise_id: the exercise that is done.
        dose: what is done.
        base_id: what percentages refer to, or None.
        base: the same as an entry of the program, or None.
        scale: the loads that exist for the exercise, or None.
    """
    exercise = book.exercises[exercise_id]
    asked = with_help(dose, exercise.load, book.room.bands)
    if (named := assisted(dose, book.room.bands)) is not None:
        scale = with_bands(scale, (named.band,))
    scale = loaded_for_strips(book, exercise, dose, scale)
    loads = lifter_loads(book, exercise, dose, base_id, scale)
    strips = lifter_strips(book, exercise, dose, scale, loads)
    loads = as_stripped(loads, strips)
    percent = reference_percent(asked, load_rules(book)) if base else None
    possible = _reps_possible(book, dose, percent)
    moved = _moved(book, exercise, dose, scale, loads, strips, possible)
    on_top = served(book.room, exercise.load, dose)
    variable = for_lifters(
        on_top,
        {name: load.actual_g for name, load in loads.items()},
        {
            name: lifter.bases[base_id].grams
            for name, lifter in book.lifters.items()
            if base_id and base_id in lifter.bases
        },
    )  # fmt: skip
    series = tuple(
        work_slot(book, slot, exercise_id, one, base_id, base, scale) for one in dose.series
    )
    volume = slot_volume(book, exercise, dose, moved)
    return WorkedSlot(
        slot, exercise_id, exercise, dose, base_id, base, percent, scale, loads,
        possible, add_up(one.volume for one in series) if series else volume,
        on_top, variable, named, strips, series=series,
    )  # fmt: skip


def _moved(
    book: Book, exercise: Exercise, dose: Dose, scale: Scale | None,
    loads: Mapping[str, PlannedLoad], strips: Mapping[str, StripLoads | None],
    possible: RepBand | None,
) -> dict[str, int | None]:  # fmt: skip
    """What a repetition of each example lifter moves, in grams; of a strip set the mean."""
    pieces = 2 if scale is not None and scale.per_hand else 1
    moved: dict[str, int | None] = {}
    for name, load in loads.items():
        body_g = book.lifters[name].bodyweight.grams
        if stripped := strips.get(name):
            mean = mean_moved_g(book.room, exercise, dose, stripped, possible, body_g)
            moved[name] = pieces * mean
        elif load.actual_g is not None:
            parts = load.step.parts if load.step else ()
            each = StripLoad(pieces * load.actual_g, parts)
            moved[name] = round(felt_g(book.room, exercise.load, each, body_g, dose.said.height))
        else:
            moved[name] = None
    return moved


def lifter_loads(
    book: Book, exercise: Exercise, dose: Dose, base_id: str | None, scale: Scale | None
) -> dict[str, PlannedLoad]:
    """Load of each example lifter for whom it can be known."""
    asked = with_help(dose, exercise.load, book.room.bands)
    rules = load_rules(book)
    loads: dict[str, PlannedLoad] = {}
    for name, lifter in book.lifters.items():
        tested = lifter.bases.get(base_id) if base_id else None
        load = plan_load(
            asked, exercise.load, scale, body_g=lifter.bodyweight.grams,
            base_g=tested.grams if tested else None, units=book.room.units,
            rules=rules,
        )  # fmt: skip
        if load is not None:
            loads[name] = load
    return loads


def own_base(exercise: Exercise) -> str | None:
    """The tested value that an exercise itself refers to, or None."""
    # Asking a model for a field it lacks is slow, and this is asked for every door.
    known = "base" in type(exercise.load).model_fields
    return getattr(exercise.load, "base") if known else None  # noqa: B009  # some kinds have none


def _reps_possible(book: Book, dose: Dose, percent: float | None) -> RepBand | None:
    """Repetitions most people can do here; None off the chart or where reps are not counted."""
    if (
        percent is None
        or is_estimate(dose)
        or dose.reps is None
        or not LOWEST_CHARTED <= percent <= 100
    ):
        return None
    tempo = dose.tempo
    return feasible_reps(
        percent,
        tempo.lower if tempo else 0,
        max(tempo.longest_pause if tempo else 0, dose.said.pause.time if dose.said.pause else 0),
        slow_from_s=book.rule("slow-lowering"),
        pause_from_s=book.rule("long-pause"),
        slow_factor=book.rule("slow-factor"),
    )


LOWEST_CHARTED = 65.0
"""The textbook chart ends here; below it says nothing about repetitions."""
