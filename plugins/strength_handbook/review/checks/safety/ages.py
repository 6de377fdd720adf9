"""Does the dose fit the ages that the group has said it has?"""

from collections.abc import Iterator

from strength_handbook.model.load import PercentOfBase, PercentOfSystem
from strength_handbook.model.words import Pattern
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.dangers import reaches_percent
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.words import clock, number


@check(
    "young-group",
    Family.SAFETY,
    Severity.WARN,
    what="Tests of few repetitions, sets near the best single and sessions without the coach, "
    "where under-18s are in the group.",
    why="Young people gain from lifting with technique first and a qualified coach beside them.",
    rules=("young-test-reps", "young-percent"),
    source="paediatric clinical report 2020 (Stricker and others): qualified supervision, "
    "technique first; repetitions and percent are rules of this house, no source",
)
def young_group(this: Check, desk: Desk) -> Iterator[Finding]:
    """Near-limit tests and unwatched sessions with under-18s."""
    least = desk.rule("young-test-reps")
    for session, slots in desk.slots_by_session():
        if "under-18" not in session.program.program.group.ages:
            continue
        if not session.session.session.supervised:
            text = "under-18s in the group, and the coach is not in the room"
            change = Mending("take out 'supervised: false', and be there")
            yield this.finds(session, text, change=change)
        for at in slots:
            test = at.slot.dose.said.test
            if test is not None and test.rm < least:
                reps = round(least)
                text = f"a {test.rm}RM test with under-18s in the group; at least {reps}RM"
                change = Mending(
                    f"write 'test {reps}RM in {test.attempts} attempts'",
                    at.rewritten(test={"rm": reps, "attempts": test.attempts}),
                )
                yield this.finds(at, text, spot=at.spot_of("test"), change=change)
            percent, most = _percent(at), desk.rule("young-percent")
            if percent > most:
                text = f"{number(percent)} % with under-18s in the group; at most {number(most)} %"
                spot = at.spot_of("load", "top")
                yield this.finds(at, text, spot=spot, change=_lighter(at, most))


@check(
    "older-group",
    Family.SAFETY,
    Severity.WARN,
    what="Percent of the best single, repetitions of tests, jumps, lifts that are only lowered and "
    "minutes of warm-up, where over-65s are in the group.",
    why="Older lifters gain fully at 70 to 85 %; tendons and bones learn landings and heavy "
    "lowering slowly, and joints ask for a longer warm-up.",
    rules=("older-percent", "older-test-reps", "older-warm-up"),
    source="position statement on older adults 2019 (Fragala and others) for the percent; the "
    "others are rules of this house, no source",
)
def older_group(this: Check, desk: Desk) -> Iterator[Finding]:
    """Very heavy sets and short warm-ups with over-65s."""
    for program in desk.worked.programs:
        if "over-65" in program.program.group.ages:
            yield from _short_warm_up(this, desk, program)
    for at in desk.slots:
        if "over-65" in at.program.program.group.ages:
            yield from _hard_for_old(this, desk, at)


def _hard_for_old(this: Check, desk: Desk, at: SlotAt) -> Iterator[Finding]:
    most, percent, test = desk.rule("older-percent"), _percent(at), at.slot.dose.said.test
    if percent > most:
        text = f"{number(percent)} % with over-65s in the group; at most {number(most)} %"
        yield this.finds(at, text, spot=at.spot_of("load", "top"), change=_lighter(at, most))
    least = round(desk.rule("older-test-reps"))
    if test is not None and test.rm < least:
        text = f"a {test.rm}RM test with over-65s in the group; at least {least}RM"
        edits = at.rewritten(test={"rm": least, "attempts": test.attempts})
        change = Mending(f"write 'test {least}RM in {test.attempts} attempts'", edits)
        yield this.finds(at, text, spot=at.spot_of("test"), change=change)
    if at.slot.exercise.pattern is Pattern.JUMP:
        change = Mending(
            "step up fast instead, or ask each one alone and accept this with a reason"
        )
        yield this.finds(at, "jumps with over-65s in the group", change=change)
    if at.slot.dose.said.return_by is not None:
        text = "lowered only, with over-65s in the group"
        change = Mending("take a load that can be lifted too, or accept this with a reason")
        yield this.finds(at, text, spot=at.spot_of("return-by"), change=change)


def _percent(at: SlotAt) -> float:
    """Percent of the best single, ramps and RMs included; 0 for tests and unknown loads."""
    return 0.0 if at.slot.dose.said.test is not None else reaches_percent(at.slot) or 0.0


def _short_warm_up(this: Check, desk: Desk, program: WorkedProgram) -> Iterator[Finding]:
    had, least = program.program.warm_up, desk.rule("older-warm-up")
    if had < least:
        text = f"{clock(had)} of warm-up, over-65s in the group; at least {clock(least)}"
        spot = desk.program_spot(program.id, "warm-up")
        edit = Edit(spot.source.file, ("warm-up",), clock(least))
        change = Mending(f"write 'warm-up: {clock(least)}'", (edit,))
        yield this.finds_in(spot, "program", text, change=change, program=program.id)


def _lighter(at: SlotAt, most: float) -> Mending | None:
    match at.slot.dose.load:
        case PercentOfBase():
            load = f"{number(most)} %"
        case PercentOfSystem():
            load = f"{number(most)} % system"
        case _:
            return None
    return Mending(f"write '@ {load}'", at.rewritten(load=load))
