"""How many exercises does one session teach?"""

from collections.abc import Iterator

from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.weeks import (
    by_program,
    first_weeks,
    is_required,
    slots_by_week,
)
from strength_handbook.review.words import number


@check(
    "new-skills",
    Family.VOLUME,
    Severity.NOTE,
    what="Exercises that a session has for the first time in the program, against the most; more "
    "are allowed in the first week of a program or wave. And those of a whole week, optional "
    "sessions left out.",
    why="Nobody learns many things in one evening, nor twice as many in one week.",
    rules=("new-skills", "new-skills-start", "new-skills-week"),
)
def new_skills(this: Check, desk: Desk) -> Iterator[Finding]:
    """Sessions that teach too much."""
    firsts = {program.id: first_weeks(program) for program in desk.worked.programs}
    taught: set[tuple[str, str]] = set()
    for at, slots in desk.slots_by_session():
        new: dict[str, None] = {}
        for slot in slots:
            key = (at.program.id, slot.slot.exercise_id)
            if firsts[at.program.id][slot.slot.exercise_id] == at.number and key not in taught:
                taught.add(key)
                new[slot.slot.exercise_id] = None
        begins = at.number == min(at.week.wave.weeks)
        most = desk.rule("new-skills-start" if begins else "new-skills")
        if len(new) > most:
            yield this.finds(
                at,
                f"{len(new)} new exercises ({', '.join(new)}); at most {most:g} in a session",
                change=Mending(f"start {len(new) - int(most)} of them in another session or week"),
            )
    yield from _of_a_week(this, desk)


@check(
    "teach-long",
    Family.VOLUME,
    Severity.NOTE,
    what="Minutes of a session with the coach, with the minutes of teaching each exercise that is "
    "new in it, against the time cap.",
    why="Teaching is not in the session's minutes; the last exercises are what then falls out.",
    rules=("teaching-time",),
    source="arithmetic",
)
def teach_long(this: Check, desk: Desk) -> Iterator[Finding]:
    """Sessions in which teaching does not fit before the cap."""
    firsts = {program.id: first_weeks(program) for program in desk.worked.programs}
    each = desk.rule("teaching-time")
    taught: set[tuple[str, str]] = set()
    for at, slots in desk.slots_by_session():
        keys = dict.fromkeys((at.program.id, slot.slot.exercise_id) for slot in slots)
        new = [key for key in keys if firsts[key[0]][key[1]] == at.number and key not in taught]
        taught |= set(new)
        cap, minutes = at.program.program.time_cap, at.session.minutes.total
        together = minutes + len(new) * each
        if cap is None or not new or not at.session.session.supervised or together <= cap / 60:
            continue
        text = (
            f"{round(minutes)} min and {number(len(new) * each)} min to teach {len(new)} new "
            f"exercises are {round(together)} min; the cap is {number(cap / 60)} min"
        )
        change = Mending("teach some of them on a day of their own, or start them in a later week")
        yield this.finds(at, text, change=change)


def _of_a_week(this: Check, desk: Desk) -> Iterator[Finding]:
    most = desk.rule("new-skills-week")
    for program, weeks in by_program(desk):
        firsts, slots = first_weeks(program), slots_by_week(desk, program)
        for at in weeks:
            required = filter(is_required, slots[at.number])
            new = {one.slot.exercise_id for one in required}
            new = {name for name in new if firsts[name] == at.number}
            if len(new) > most:
                words = f"start {len(new) - int(most)} of them in a later week"
                text = f"{len(new)} new exercises in one week; at most {most:g}"
                yield this.finds(at, text, change=Mending(words))
