"""Does a lighter week come in time, and is it named as one?"""

from collections.abc import Iterator

from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.volume.deload import DEFINITION
from strength_handbook.review.desk import Desk, WeekAt
from strength_handbook.review.finding import At, Edit, Finding, Mending
from strength_handbook.review.lighter import is_named_apart, looks_lighter
from strength_handbook.review.weeks import by_program
from strength_handbook.review.words import number

_AT_THE_END = 2
"""Weeks that the last run of a program may have on top: rest may follow it. House's own rule."""


@check(
    "deload-late",
    Family.VOLUME,
    Severity.WARN,
    what="Training weeks in a row in which something rises, without a week that is named as a "
    "lighter one or as one of tests.",
    why="Tiredness piles up over weeks and hides what was gained.",
    rules=("deload-after",),
    source=f"{DEFINITION}; how often: survey of Rogerson and others 2024, 5.6 weeks on average, "
    "standard deviation 2.3, read about, not read in full",
)
def deload_late(this: Check, desk: Desk) -> Iterator[Finding]:
    """Too many hard weeks in a row."""
    most = desk.rule("deload-after")
    for program, weeks in by_program(desk):
        lighter = looks_lighter(program)
        for run in _runs(weeks):
            unnamed = [at for at in run if at.number in lighter]
            if len(run) < most:
                continue
            # What follows a program is not in its files: its last weeks need no lighter one yet.
            ends = run[-1] is weeks[-1] and len(run) <= most + _AT_THE_END
            if ends and not unnamed:
                continue
            for at in unnamed:
                yield this.finds(at, _looks(program, at), change=_named(at))
            if not unnamed and _rises(desk, run):
                place = run[int(most) - 1]
                yield this.finds(
                    place,
                    f"{len(run)} training weeks in a row; fewer than {most:g} between lighter ones",
                    at=At(weeks=tuple(one.number for one in run)),
                    change=Mending(
                        f"make week {place.number - 1} or {place.number} a lighter one: write "
                        f"{_deload_line(place)}, and its doses as 'deload of {place.number - 1}'"
                    ),
                )


def _runs(weeks: tuple[WeekAt, ...]) -> Iterator[list[WeekAt]]:
    """Weeks in a row that no line calls lighter or tests."""
    run: list[WeekAt] = []
    for at in weeks:
        if is_named_apart(at.week):
            yield run
            run = []
        else:
            run.append(at)
    yield run


def _looks(program: WorkedProgram, at: WeekAt) -> str:
    earlier = [one for one in program.weeks if one.week < at.number]
    before = next(
        one
        for one in reversed(earlier)
        if not is_named_apart(one) and one.week not in looks_lighter(program)
    )
    return (
        f"looks like a lighter week, {number(at.week.volume.sets)} sets after "
        f"{number(before.volume.sets)} in week {before.week}, and no line calls it one"
    )


def _named(at: WeekAt) -> Mending:
    numbers = sorted({*at.week.wave.deload, at.number})
    edit = Edit(at.wave.file, ("deload",), numbers[0] if len(numbers) == 1 else list(numbers))
    return Mending(f"write {_deload_line(at)}", (edit,))


def _deload_line(at: WeekAt) -> str:
    """The line as it must then stand; a second one beside it would be refused."""
    had = at.week.wave.deload
    if not had:
        return f"'deload: {at.number}'"
    both = ", ".join(map(str, sorted({*had, at.number})))
    return f"'deload: [{both}]' in place of the line there is"


def _rises(desk: Desk, run: list[WeekAt]) -> bool:
    """True where a slot asks for more than the week before, or its rule adds load by itself."""
    numbers = {at.number for at in run}
    last: dict[tuple[str, str, int], tuple[object, ...]] = {}
    for at in desk.slots:
        if at.program is not run[0].program or at.number not in numbers:
            continue
        progress = at.slot.slot.progress
        if progress is not None and progress.rule not in ("listed", "effort"):
            return True
        dose = at.slot.dose
        now = (dose.sets, dose.work, dose.load, dose.tempo, dose.reserve, dose.last_set)
        if last.setdefault((at.week.wave_id, at.session.id, at.index), now) != now:
            return True
    return len({at.week.wave_id for at in run}) > 1
