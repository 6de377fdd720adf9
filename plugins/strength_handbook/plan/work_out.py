"""A book worked out: every slot of every week, its loads, minutes and volumes."""

from collections.abc import Mapping

from strength_handbook.calc.repetitions import RepBand, feasible_reps
from strength_handbook.model.book import Book, WrittenProgram
from strength_handbook.model.dose import Dose
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.program import Base, Program, Session, Slot
from strength_handbook.model.slot_dose import slot_dose
from strength_handbook.plan.help import assisted, with_help
from strength_handbook.plan.loads import (
    PlannedLoad,
    is_estimate,
    moved_g,
    plan_load,
    reference_percent,
)
from strength_handbook.plan.minutes import TimedSlot, session_minutes
from strength_handbook.plan.on_top import for_lifters, served
from strength_handbook.plan.scales import Scale, scale_for
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
    shared: dict[str, Scale | None] = {}
    scales: dict[str, Scale | None] = {}
    for key, exercise in book.exercises.items():
        # Exercises loaded alike share one scale, and with it every table made from it.
        alike = exercise.load.model_dump_json(exclude={"start"})
        if alike not in shared:
            shared[alike] = scale_for(book.room, exercise.load)
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
                if (worked := _session(book, written.program, key, session, number, scales))
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
) -> WorkedSession | None:
    """A session in one week; None where nothing is done in it."""
    slots = tuple(
        _slot(book, program, slot, week, scales[slot.exercise])
        for slot in session.slots
        if slot.weeks.get(week) is not None
    )
    if not slots:
        return None
    timed = [TimedSlot(slot.order, slot.exercise, slot.dose) for slot in slots]
    minutes = session_minutes(book, program, timed)
    volume = add_up(slot.volume for slot in slots)
    return WorkedSession(key, week, session, slots, minutes, volume)


def _slot(book: Book, program: Program, slot: Slot, week: int, scale: Scale | None) -> WorkedSlot:
    exercise = book.exercises[slot.exercise]
    base_id = slot.base or own_base(exercise)
    base = program.bases.get(base_id) if base_id else None
    dose = slot_dose(slot, exercise, week)
    return work_slot(book, slot, slot.exercise, dose, base_id, base, scale)


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
    training_max = book.rule("training-max")
    asked = with_help(dose, exercise.load, book.room.bands)
    loads = lifter_loads(book, exercise, dose, base_id, scale)
    pieces = 2 if scale is not None and scale.per_hand else 1
    moved = {
        name: None
        if load.actual_g is None
        else moved_g(
            exercise.load,
            book.lifters[name].bodyweight.grams,
            pieces * load.actual_g,
            dose.said.height,
        )
        for name, load in loads.items()
    }
    percent = reference_percent(asked, training_max) if base else None
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
    return WorkedSlot(
        slot, exercise_id, exercise, dose, base_id, base, percent, scale, loads,
        _reps_possible(book, dose, percent), slot_volume(book, exercise, dose, moved),
        on_top, variable, assisted(dose, book.room.bands),
    )  # fmt: skip


def lifter_loads(
    book: Book, exercise: Exercise, dose: Dose, base_id: str | None, scale: Scale | None
) -> dict[str, PlannedLoad]:
    """Load of each example lifter for whom it can be known."""
    asked = with_help(dose, exercise.load, book.room.bands)
    training_max = book.rule("training-max")
    loads: dict[str, PlannedLoad] = {}
    for name, lifter in book.lifters.items():
        tested = lifter.bases.get(base_id) if base_id else None
        load = plan_load(
            asked, exercise.load, scale, body_g=lifter.bodyweight.grams,
            base_g=tested.grams if tested else None, units=book.room.units,
            training_max=training_max,
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
