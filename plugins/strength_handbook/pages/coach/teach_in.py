"""What to teach each week: exercises done for the first time, and new ways to do known ones."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from strength_handbook.dose import key
from strength_handbook.dose.printing import notation
from strength_handbook.dose.table import lessons_of
from strength_handbook.model.book import Book
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.words import Pattern
from strength_handbook.pages.coach.frame import coach_page, coach_uri, head_of
from strength_handbook.pages.page import Heading, Page, link, url_of
from strength_handbook.pages.session_page import exercise_link, session_uri
from strength_handbook.plan.worked import (
    Worked,
    WorkedProgram,
    WorkedSession,
    WorkedSlot,
    WorkedWeek,
)

VIEWS = {
    Pattern.SQUAT: "from the side, then from the front for the knees",
    Pattern.HINGE: "from the side, for the back",
    Pattern.SINGLE_LEG: "from the front, for the knee and the hips",
    Pattern.HORIZONTAL_PUSH: "from the side, level with the hands",
    Pattern.VERTICAL_PUSH: "from the side, for bar and ribs",
    Pattern.HORIZONTAL_PULL: "from the side, for the back and elbow",
    Pattern.VERTICAL_PULL: "from behind, for the shoulder blades",
    Pattern.CARRY: "from the front, walking towards the group",
    Pattern.TRUNK: "from the side, for the line of the body",
    Pattern.ISOLATED: "from the side, close up",
    Pattern.JUMP: "from the front, for the landing",
}
"""From which side a lift shows what matters. Common practice, no source."""


@dataclass(frozen=True, eq=False)
class TaughtSlot:
    """One thing that is new in one session.

    Attributes:
        session: where it is done first.
        slot: as it is done there.
        ways: what is new about a known exercise; empty for a new exercise.
    """

    session: WorkedSession
    slot: WorkedSlot
    ways: tuple[key.Lesson, ...] = ()


def teach_in_page(worked: Worked, program: WorkedProgram) -> Page:
    """The lessons of each week."""
    uri = coach_uri("teach-in", program.id)
    url = url_of(uri)
    minutes = worked.book.rule("teaching-time")
    weeks = [
        {
            "number": week.week,
            "sessions": [
                {
                    "title": session.session.title,
                    "minutes": f"{minutes * len(several):g}",
                    "lessons": [_lesson(worked.book, program, week, one, url) for one in several],
                }
                for session, several in _by_session(found)
            ],
        }
        for week, found in lessons(program)
    ]
    return coach_page(
        uri,
        "What to teach, week by week",
        "coach_teach_in.html",
        head_of(program)
        | {
            "weeks": weeks,
            "each": f"{minutes:g}",
            "rule": link(url, "numbers/#rule-teaching-time"),
        },
        says="What is new each week, with what to say, show and ask",
        headings=tuple(Heading(2, f"week-{week['number']}", f"Week {week['number']}")
                       for week in weeks),
    )  # fmt: skip


def lessons(program: WorkedProgram) -> Iterator[tuple[WorkedWeek, list[TaughtSlot]]]:
    """What is new in each week, in order of time."""
    known: dict[str, set[key.Lesson]] = {}
    for week in program.weeks:
        found = []
        for session in week.sessions:
            for slot in session.slots:
                ways = lessons_of(slot.dose)
                if slot.exercise_id not in known:
                    found.append(TaughtSlot(session, slot))
                elif fresh := [way for way in ways if way not in known[slot.exercise_id]]:
                    found.append(TaughtSlot(session, slot, tuple(fresh)))
                known.setdefault(slot.exercise_id, set()).update(ways)
        yield week, found


def _by_session(found: Sequence[TaughtSlot]) -> list[tuple[WorkedSession, list[TaughtSlot]]]:
    """The lessons of a week by their session: nobody teaches a week at once."""
    groups: dict[str, list[TaughtSlot]] = {}
    for one in found:
        groups.setdefault(one.session.id, []).append(one)
    return [(several[0].session, several) for several in groups.values()]


def _lesson(
    book: Book, program: WorkedProgram, week: WorkedWeek, one: TaughtSlot, url: str
) -> dict[str, Any]:
    exercise = one.slot.exercise
    question, answer = _question(exercise)
    fault = exercise.faults[0]
    return {
        "name": exercise.name,
        "link": exercise_link(url, one.slot.exercise_id),
        "ways": [way.name for way in one.ways],
        "where": one.slot.order,
        "where_link": link(url, url_of(session_uri(program, week.week, one.session.id))),
        "dose": notation(one.slot.dose),
        "view": VIEWS[exercise.pattern],
        "say": sentences(exercise, one.ways),
        "question": question,
        "answer": answer,
        "see": fault.see,
        "fix": fault.fix,
        "minutes": f"{book.rule('teaching-time'):g}",
    }


def sentences(exercise: Exercise, ways: Sequence[key.Lesson] = ()) -> list[str]:
    """Three sentences: the set-up, or what a new way is; a cue; and what is said aloud."""
    first = [way.say for way in ways] or exercise.set_up[:1]
    cues = exercise.cues
    aloud = list(cues.voice) or list(cues.finish)
    others = [one for one in (*cues.during, *cues.before, *cues.finish) if one not in aloud[:1]]
    spare = [] if ways else exercise.set_up[1:]
    several = (*first[:2], *others[: 1 if len(first) == 1 else 0], *aloud[:1], *others, *spare)
    chosen = list(dict.fromkeys(several))[:3]
    # Said in the order in which it is done, whichever was picked first.
    done = list(dict.fromkeys((*first, *spare, *cues.before, *cues.during, *cues.finish, *aloud)))
    return sorted(chosen, key=done.index)


def _question(exercise: Exercise) -> tuple[str, str]:
    """One question that shows whether it was understood, and the answer."""
    spotting = exercise.spotting
    if spotting.safeties:
        return "Where do the safeties go?", spotting.safeties
    if spotting.spotters:
        return "Where does the helper stand?", spotting.where
    return "When does a set end?", exercise.stop[0]
