"""Does the dose fit the ages that the group has said it has?"""

from collections.abc import Iterator

from strength_handbook.model.load import PercentOfBase, PercentOfSystem
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Change, Edit, Finding
from strength_handbook.review.words import clock, number


@check(
    "young-group",
    Family.SAFETY,
    Severity.WARN,
    what="Tests of few repetitions and sessions without the coach, where under-18s are in the "
    "group.",
    why="Young people gain from lifting with technique first and a qualified coach beside them.",
    rules=("young-test-reps",),
    source="paediatric clinical report 2020 (Stricker and others): qualified supervision, "
    "technique first; the number of repetitions is common practice",
)
def young_group(this: Check, desk: Desk) -> Iterator[Finding]:
    """Near-limit tests and unwatched sessions with under-18s."""
    least = desk.rule("young-test-reps")
    for session, slots in desk.slots_by_session():
        if "under-18" not in session.program.program.group.ages:
            continue
        if not session.session.session.supervised:
            text = "under-18s in the group, and the coach is not in the room"
            change = Change("take out 'supervised: false', and be there")
            yield this.finds(session, text, change=change)
        for at in slots:
            test = at.slot.dose.said.test
            if test is not None and test.rm < least:
                reps = round(least)
                text = f"a {test.rm}RM test with under-18s in the group; at least {reps}RM"
                change = Change(
                    f"write 'test {reps}RM in {test.attempts} attempts'",
                    at.rewritten(test={"rm": reps, "attempts": test.attempts}),
                )
                yield this.finds(at, text, spot=at.spot_of("test"), change=change)


@check(
    "older-group",
    Family.SAFETY,
    Severity.WARN,
    what="Percent of the best single and minutes of warm-up, where over-65s are in the group.",
    why="Older lifters gain fully at 70 to 85 %, and their joints ask for a longer warm-up.",
    rules=("older-percent", "older-warm-up"),
    source="position statement on older adults 2019 (Fragala and others); the warm-up is common "
    "practice",
)
def older_group(this: Check, desk: Desk) -> Iterator[Finding]:
    """Very heavy sets and short warm-ups with over-65s."""
    for program in desk.worked.programs:
        if "over-65" in program.program.group.ages:
            yield from _short_warm_up(this, desk, program)
    most = desk.rule("older-percent")
    for at in desk.slots:
        percent = at.slot.percent
        if "over-65" not in at.program.program.group.ages or percent is None or percent <= most:
            continue
        if at.slot.dose.said.test is None:
            text = f"{number(percent)} % with over-65s in the group; at most {number(most)} %"
            yield this.finds(at, text, spot=at.spot_of("load"), change=_lighter(at, most))


def _short_warm_up(this: Check, desk: Desk, program: WorkedProgram) -> Iterator[Finding]:
    had, least = program.program.warm_up, desk.rule("older-warm-up")
    if had < least:
        text = f"{clock(had)} of warm-up, over-65s in the group; at least {clock(least)}"
        spot = desk.program_spot(program.id, "warm-up")
        edit = Edit(spot.source.file, ("warm-up",), clock(least))
        change = Change(f"write 'warm-up: {clock(least)}'", (edit,))
        yield this.finds_in(spot, "program", text, change=change, program=program.id)


def _lighter(at: SlotAt, most: float) -> Change | None:
    match at.slot.dose.load:
        case PercentOfBase():
            load = f"{number(most)} %"
        case PercentOfSystem():
            load = f"{number(most)} % system"
        case _:
            return None
    return Change(f"write '@ {load}'", at.rewritten(load=load))
