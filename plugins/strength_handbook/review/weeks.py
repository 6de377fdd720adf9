"""Weeks as the checks of volume see them: which of them are training, and what came before.

A training week is neither a lighter week, named or not, nor a week of tests. Optional sessions are
left out, as in the sums of a week, so that nobody has to come to them. Doses with a slip of the
keyboard are left out too.
"""

from collections.abc import Callable, Iterator

from strength_handbook.model.dose import Reps
from strength_handbook.model.words import Pattern
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.source import Plain
from strength_handbook.review.desk import Desk, SlotAt, WeekAt
from strength_handbook.review.finding import Edit, Mending
from strength_handbook.review.lighter import is_apart
from strength_handbook.review.slips import slips

TAPER_WEEKS = 2
"""Weeks before tests in which sets may be few; common practice, no source."""
EPSILON = 1e-9
"""Sums of floats may lie a hair over a limit that they only reach."""


def by_program(desk: Desk) -> Iterator[tuple[WorkedProgram, tuple[WeekAt, ...]]]:
    """Each program with its weeks in order."""
    for program in desk.worked.programs:
        yield program, tuple(at for at in desk.weeks if at.program is program)


def is_training(at: WeekAt) -> bool:
    """True for a week that is meant to train."""
    return not is_apart(at)


def training(weeks: tuple[WeekAt, ...]) -> tuple[WeekAt, ...]:
    """The training weeks among some weeks."""
    return tuple(at for at in weeks if is_training(at))


def is_taper(at: WeekAt, weeks: tuple[WeekAt, ...]) -> bool:
    """True in the last training weeks before a week of tests, where other training came before.

    There sets are few so that what was trained can show.
    """
    tests = [one.number for one in weeks if one.number in one.week.wave.tests]
    before = [one for one in training(weeks) if one.number < at.number]
    trained = any(not any(0 < test - one.number <= TAPER_WEEKS for test in tests) for one in before)
    return trained and any(0 < test - at.number <= TAPER_WEEKS for test in tests)


def recent_weeks(weeks: tuple[WeekAt, ...]) -> Iterator[tuple[tuple[WeekAt, ...], WeekAt]]:
    """Each training week with the one or two training weeks before it, the last one first.

    What was done two weeks ago is no news, even where the week between had less.
    """
    usual = training(weeks)
    for index in range(1, len(usual)):
        yield usual[max(0, index - 2) : index][::-1], usual[index]


def recent_numbers(desk: Desk) -> dict[tuple[str, int], list[int]]:
    """By program and training week, the numbers of its recent weeks; none for a first one."""
    return {
        (program.id, at.number): [one.number for one in recent]
        for program, weeks in by_program(desk)
        for recent, at in recent_weeks(weeks)
    }


def waves(weeks: tuple[WeekAt, ...]) -> tuple[tuple[WeekAt, ...], ...]:
    """The weeks of each wave, in order."""
    ids = dict.fromkeys(at.week.wave_id for at in weeks)
    return tuple(tuple(at for at in weeks if at.week.wave_id == one) for one in ids)


def slots_by_week(desk: Desk, program: WorkedProgram) -> dict[int, tuple[SlotAt, ...]]:
    """The slots of each week of a program, optional sessions included, slips left out."""
    found: dict[int, list[SlotAt]] = {week.week: [] for week in program.weeks}
    wrong = slips(desk)
    for at in desk.slots:
        if at.program is program and at not in wrong:
            found[at.number].append(at)
    return {week: tuple(slots) for week, slots in found.items()}


def slipped_muscles(desk: Desk, program: WorkedProgram, weeks: tuple[WeekAt, ...]) -> set[str]:
    """Muscles whose sums in some weeks lack a dose with a slip."""
    muscles = (at.slot.exercise.muscles for at in _slipped(desk, program, weeks))
    return {muscle.value for one in muscles for muscle in (*one.direct, *one.helping)}


def slipped_patterns(desk: Desk, program: WorkedProgram, weeks: tuple[WeekAt, ...]) -> set[Pattern]:
    """Patterns whose sums in some weeks lack a dose with a slip."""
    return {at.slot.exercise.pattern for at in _slipped(desk, program, weeks)}


def _slipped(desk: Desk, program: WorkedProgram, weeks: tuple[WeekAt, ...]) -> Iterator[SlotAt]:
    numbers = {at.number for at in weeks}
    return (at for at in slips(desk) if at.program is program and at.number in numbers)


def is_required(at: SlotAt) -> bool:
    """True in a session that everybody comes to."""
    return not at.session.session.optional


def first_weeks(program: WorkedProgram) -> dict[str, int]:
    """The first week of each exercise."""
    found: dict[str, int] = {}
    for week in program.weeks:
        for session in week.sessions:
            for slot in session.slots:
                found.setdefault(slot.exercise_id, week.week)
    return found


def is_paired(at: SlotAt) -> bool:
    """True where the slot is done in turn with another: their rounds go together."""
    letters = [slot.order[0] for slot in at.session.slots]
    return letters.count(at.slot.order[0]) > 1


def is_derived(at: SlotAt) -> bool:
    """True where the dose is that of another week and less of it."""
    part = at.slot.slot.weeks[at.number]
    return part is not None and part.deload_of is not None


def is_plain(at: SlotAt) -> bool:
    """True for sets of repetitions that can be written anew as two numbers."""
    alike = not at.slot.dose.series and at.place is None
    return isinstance(at.slot.dose.work, Reps) and alike and not is_derived(at)


def smaller(at: SlotAt, reps: float) -> Mending | None:
    """The most sets and repetitions that come to no more than some repetitions of one side.

    Sets stay as they are where another exercise is done in turn with this one.
    """
    if not is_plain(at) or at.slot.dose.reps is None:
        return None
    most_sets, most_reps = round(at.slot.dose.sets.high), round(at.slot.dose.reps.high)
    few = most_sets if is_paired(at) else 1
    possible = [
        (sets * (count := min(most_reps, int((reps + EPSILON) // sets))), sets, count)
        for sets in range(few, most_sets + 1)
    ]
    total, sets, count = max(possible)
    if total < 1:
        return None
    write: dict[str, Plain] = {}
    if sets != most_sets:
        write["sets"] = sets
    if count != most_reps:
        write["reps"] = count
    return Mending(f"write '{sets}x{count}'", at.rewritten(**write))


def fewer_sets(
    slots: tuple[SlotAt, ...], over: float, weigh: Callable[[SlotAt], float], *, under: bool = False
) -> Mending | None:
    """Take out sets one at a time, always where most are left, until it is enough.

    Exercises that are done in turn lose a set together; nothing goes below one set.

    Args:
        slots: the slots of one week.
        over: how much is too much.
        weigh: what one set of a slot counts.
        under: the limit itself is too much too.
    """
    groups: dict[tuple[str, str], list[SlotAt]] = {}
    for at in slots:
        groups.setdefault((at.session.id, at.slot.order[0]), []).append(at)
    open_ = [one for one in groups.values() if not any(map(is_derived, one))]
    left = {at: round(at.slot.dose.sets.high) for one in open_ for at in one}
    while over > EPSILON or (under and over > -EPSILON):
        able = [
            one for one in open_ if min(left[at] for at in one) > 1 and any(weigh(at) for at in one)
        ]
        if not able:
            return None
        largest = max(reversed(able), key=lambda one: max(left[at] for at in one))
        for at in largest:
            left[at] -= 1
            over -= weigh(at)
    changed = [at for at in left if left[at] < round(at.slot.dose.sets.high)]
    said = [f"{left[at]} at {at.at.what}" for at in changed]
    edits = tuple(edit for at in changed for edit in at.rewritten(sets=left[at]))
    return Mending(f"write sets: {', '.join(said)}", edits)


def left_out(at: SlotAt) -> Mending:
    """Leave an exercise out of a week; as edits only where nothing is done in turn with it."""
    words = f"leave {at.slot.exercise_id} out of week {at.number}"
    alone = not is_paired(at) and len(at.session.slots) > 1 and len(at.slot.slot.weeks) > 1
    return Mending(
        words, (Edit(at.wave.file, at.dose_path, remove=True),) if alone else ()
    )  # fmt: skip
