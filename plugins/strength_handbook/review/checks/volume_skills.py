"""How many exercises does one session teach?"""

from collections.abc import Iterator

from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.volume_weeks import first_weeks
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Change, Finding


@check(
    "new-skills",
    Family.VOLUME,
    Severity.NOTE,
    what="Exercises that a session has for the first time in the program, against the most; more "
    "are allowed in the first week of a program or wave.",
    why="Nobody learns many things in one evening.",
    rules=("new-skills", "new-skills-start"),
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
                change=Change(f"start {len(new) - int(most)} of them in another session or week"),
            )
