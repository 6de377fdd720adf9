"""The seven days before a test: nothing new, nothing very slow, and not more than usual."""

from collections.abc import Iterator
from dataclasses import replace

from strength_handbook.calc.volume import percent_change
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SessionAt, SlotAt, WeekAt
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.slips import slipped_weeks
from strength_handbook.review.weeks import (
    EPSILON,
    by_program,
    first_weeks,
    is_derived,
    left_out,
    training,
)
from strength_handbook.review.words import number

_SEVEN_DAYS = 7 * 24
"""Hours."""


@check(
    "before-test",
    Family.VOLUME,
    Severity.WARN,
    what="In the seven days before a test: exercises that are new, lowering longer than the "
    "limit, and a rise of the week's sets. Where no weekdays are written, in the week before.",
    why="A test after unaccustomed work measures soreness.",
    rules=("test-lowering", "test-volume"),
)
def before_test(this: Check, desk: Desk) -> Iterator[Finding]:
    """What would spoil a test."""
    for program, weeks in by_program(desk):
        firsts = first_weeks(program)
        tests = [at for at in desk.sessions if at.program is program and _is_test(at)]
        tests += _weeks_of_tests(desk, program, tests)
        near = [at for at in desk.slots if at.program is program and _is_near(at, tests)]
        for at in near:
            yield from _unaccustomed(this, desk, at, firsts)
        for number_ in sorted({one.number for one in tests}):
            yield from _more_than_usual(this, desk, weeks, number_)


def _is_test(at: SessionAt) -> bool:
    return any(slot.dose.said.test is not None for slot in at.session.slots)


def _weeks_of_tests(desk: Desk, program: WorkedProgram, tests: list[SessionAt]) -> list[SessionAt]:
    """The first session of each week of tests in which no dose is written as a test."""
    known = {at.number for at in tests}
    found: dict[int, SessionAt] = {}
    for at in desk.sessions:
        if at.program is program and at.number in at.week.wave.tests and at.number not in known:
            found.setdefault(at.number, at)
    return list(found.values())


def _is_near(at: SlotAt, tests: list[SessionAt]) -> bool:
    """True in the seven days before a test that this is no part of."""
    for test in tests:
        if at.session is test.session:
            return False
    return any(_before(at, test) for test in tests)


def _before(at: SessionAt, test: SessionAt) -> bool:
    mine, then = at.hours, test.hours
    if mine is None or then is None:
        return at.number == test.number - 1
    return 0 < then - mine <= _SEVEN_DAYS


def _unaccustomed(this: Check, desk: Desk, at: SlotAt, firsts: dict[str, int]) -> Iterator[Finding]:
    if firsts[at.slot.exercise_id] == at.number and at.number != at.program.weeks[0].week:
        text = "new in the seven days before a test; nothing new then"
        yield this.finds(at, text, change=left_out(at))
    tempo, most = at.slot.dose.tempo, desk.rule("test-lowering")
    if tempo is not None and tempo.lower > most:
        shorter = replace(tempo, lower=int(most)).text
        edits = () if is_derived(at) else at.rewritten(tempo=shorter)
        yield this.finds(
            at,
            f"{tempo.lower} s of lowering in the seven days before a test; at most {most:g} s",
            spot=at.spot_of("tempo"),
            change=Mending(f"write 'tempo {shorter}'", edits),
        )


def _more_than_usual(
    this: Check, desk: Desk, weeks: tuple[WeekAt, ...], test: int
) -> Iterator[Finding]:
    """The week before a test against the training week before that."""
    week = next((at for at in weeks if at.number == test - 1), None)
    earlier = training(tuple(at for at in weeks if at.number < test - 1))
    wrong = slipped_weeks(desk)
    if week is None or not earlier:
        return
    if {(at.program.id, at.number) for at in (week, earlier[-1])} & wrong:
        return
    had, now = earlier[-1].week.volume.sets, week.week.volume.sets
    rise, most = percent_change(had, now), desk.rule("test-volume")
    if rise is not None and rise > most + EPSILON:
        left = int(had * (1 + most / 100) + EPSILON)
        yield this.finds(
            week,
            f"{number(now)} sets in the week before a test after {number(had)} in week "
            f"{earlier[-1].number}; at most {most:g} % more",
            change=Mending(f"take out {number(now - left)} sets, whichever matter least"),
        )
