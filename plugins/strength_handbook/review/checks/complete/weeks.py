"""Is a week of a lift, a test or a warm-up missing?"""

from collections.abc import Iterator

from strength_handbook.model.dose import Reps
from strength_handbook.reading.problem import Severity
from strength_handbook.reading.source import Plain
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import At, Edit, Finding, Mending, Spot
from strength_handbook.review.lighter import is_named_apart
from strength_handbook.review.words import listed


@check(
    "main-gap",
    Family.COMPLETE,
    Severity.NOTE,
    what="Training weeks between a main lift's first and last week in a wave in which no session "
    "has it, where only one such week is missing.",
    why="A dose that was deleted by mistake leaves no trace but the gap.",
)
def main_gap(this: Check, desk: Desk) -> Iterator[Finding]:
    """A main lift that leaves a week out."""
    by_lift: dict[tuple[str, str, str], list[SlotAt]] = {}
    for at in desk.slots:
        if at.slot.exercise.role == "main":
            key = (at.program.id, at.week.wave_id, at.slot.exercise_id)
            by_lift.setdefault(key, []).append(at)
    for slots in by_lift.values():
        had = {at.number for at in slots}
        missing = [
            week.week
            for week in slots[0].program.weeks
            if week.wave is slots[0].week.wave
            and min(had) < week.week < max(had)
            and week.week not in had
            and not is_named_apart(week)
        ]
        if len(missing) != 1:
            continue
        at = next(one for one in reversed(slots) if one.number < missing[0])
        text = f"weeks {at.number} and {min(n for n in had if n > missing[0])} have it, and no"
        yield this.finds(
            at, f"{text} session of week {missing[0]}", spot=Spot(at.wave, (*at.path, "weeks")),
            at=At(at.at.what, (missing[0],)),
            change=Mending(f"write its dose for week {missing[0]}"),
        )  # fmt: skip


@check(
    "tests-week",
    Family.COMPLETE,
    Severity.NOTE,
    what="Tests in a week that 'tests' does not name; and, in longer programs, goals whose lift "
    "has neither a test, nor a ramp to a top set, an open set or a hold in a week of tests or in "
    "the last week.",
    why="Whether a goal was reached is then never found out, or in a week that also trains.",
    rules=("tests-from",),
)
def tests_week(this: Check, desk: Desk) -> Iterator[Finding]:
    """Tests that are missing, or stand in a week of training."""
    told: set[tuple[str, int]] = set()
    for at in desk.slots:
        week = (at.program.id, at.number)
        if at.slot.dose.said.test is None or at.number in at.week.wave.tests:
            continue
        if week not in told:
            told.add(week)
            numbers = sorted({*at.week.wave.tests, at.number})
            line = str(numbers[0]) if len(numbers) == 1 else str(numbers)
            value: Plain = numbers[0] if len(numbers) == 1 else [*numbers]
            change = Mending(f"write 'tests: {line}'", (Edit(at.wave.file, ("tests",), value),))
            text = f"{at.session.id} has a test, and 'tests' does not name the week"
            yield this.finds(
                at, text, spot=at.spot_of("test"), at=At(weeks=(at.number,)), change=change
            )
    yield from _untested(this, desk)


def _untested(this: Check, desk: Desk) -> Iterator[Finding]:
    for program in desk.worked.programs:
        if len(program.weeks) < desk.rule("tests-from"):
            continue
        tested = {
            at.slot.exercise_id for at in desk.slots if at.program is program and _is_tested(at)
        }
        for index, goal in enumerate(program.program.goals):
            base = program.program.bases.get(goal.base) if goal.base else None
            lift = goal.exercise or (base.exercise if base else None)
            if lift is not None and lift not in tested:
                spot = desk.program_spot(program.id, "goals", index, "test")
                text = f"no week tests {lift}, which this goal is measured by"
                change = Mending("test it in the last week, such as 'test 5RM in 3 attempts'")
                yield this.finds_in(spot, f"goal {lift}", text, change=change, program=program.id)


def _is_tested(at: SlotAt) -> bool:
    dose = at.slot.dose
    open_ = dose.ends_open
    if dose.said.test is not None:
        return True
    late = at.number in at.week.wave.tests or at.number == at.program.weeks[-1].week
    # Sets at a percentage that was fixed before find nothing out.
    fixed = isinstance(dose.work, Reps) and not open_ and dose.top is None
    return late and not fixed


@check(
    "warm-up-missing",
    Family.COMPLETE,
    Severity.NOTE,
    what="Sessions without a line of warm-up.",
    why="The page then says nothing of what to do before the first set.",
)
def warm_up_missing(this: Check, desk: Desk) -> Iterator[Finding]:
    """Sessions that begin with the first set."""
    for at in desk.sessions:
        if at.session.session.warm_up:
            continue
        same = [
            one.session.warm_up
            for week in at.program.weeks
            for one in week.sessions
            if one.session.warm_up and week.wave_id == at.week.wave_id
        ]
        lines = list(same[0]) if same else ["March and step up for 3 minutes."]
        edit = Edit(at.wave.file, (*at.path, "warm-up"), list(lines))
        shown = listed([f"'{line}'" for line in lines[:1]])
        words = f"write 'warm-up:' and a line for each thing, such as {shown}"
        yield this.finds(at, "no warm-up", change=Mending(words, (edit,)))
