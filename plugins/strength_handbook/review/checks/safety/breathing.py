"""Does the page say how to breathe through a long, hard hold?"""

import re
from collections.abc import Iterator

from strength_handbook.model.dose import Dose, Hold
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.words import number

_GOES_ON = re.compile(
    r"\b(?:talk|speak|say|sing|hum|hiss|count|words?|aloud|breaths"
    r"|breathe (?:all|on|and|with|evenly|freely|steadily|calmly|slowly|normally|through\w*)"
    r"|keep (?:on )?breathing|breathing all)\b",
    re.IGNORECASE,
)
_HELD = re.compile(r"\b(?:hold(?:ing)? (?:your|the|a) breath|don[’']?t breathe|no breath)\b", re.I)
_NOT = re.compile(r"\b(?:never|not|don[’']t|without)\s+$", re.IGNORECASE)
_OUT = re.compile(r"\b(?:breathe out|breath out|hiss|exhale|out as|let the air)\b", re.IGNORECASE)


@check(
    "breathing-line",
    Family.SAFETY,
    Severity.WARN,
    what="Holds that are long and hard, and lines that hold the breath, against the words of the "
    "breathing line: it says how breathing goes on, or when to breathe out.",
    why="Straining on a held breath drives blood pressure far up.",
    rules=("long-hold", "hard-hold-effort"),
    source="Narloch and Brandstater 1995: 311/284 mmHg on a held breath, 198/175 breathing out",
)
def breathing_line(this: Check, desk: Desk) -> Iterator[Finding]:
    """Exercises whose breathing line leaves the breath held."""
    for name, exercise in desk.book.exercises.items():
        what, spot = f"exercise {name}", desk.exercise_spot(name, "breathing")
        if _says_held(exercise.breathing):
            change = Mending("write when to breathe out: 'Breathe in before, breathe out as you …'")
            text = "the breathing line holds the breath and never lets it out"
            yield this.finds_in(spot, what, text, change=change)
            continue
        for use in desk.worked.uses.get(name, ()):
            dose = use.slot.dose
            if not _long_and_hard(desk, dose):
                continue
            line = dose.said.breathe or exercise.breathing
            if not _GOES_ON.search(line):
                assert isinstance(dose.work, Hold)  # noqa: S101  # long and hard
                seconds = number(dose.work.longest_s)
                effort = (
                    "" if dose.fewest_left is None else f" at RPE {number(10 - dose.fewest_left)}"
                )
                text = (
                    f"a hold of {seconds} s{effort} (week {use.week.week}, {use.session.id} "
                    f"{use.slot.order}), and the line does not say that breathing goes on"
                )
                change = Mending("write 'breathing: Breathe all the time and talk in short words.'")
                yield this.finds_in(spot, what, text, change=change)
                break


def _says_held(line: str) -> bool:
    held = [m for m in _HELD.finditer(line) if not _NOT.search(line[: m.start()])]
    return bool(held) and not _OUT.search(line)


def _long_and_hard(desk: Desk, dose: Dose) -> bool:
    """A hold longer than the limit; hard where its effort says so or nothing does."""
    if not isinstance(dose.work, Hold) or dose.work.longest_s <= desk.rule("long-hold"):
        return False
    return dose.fewest_left is None or 10 - dose.fewest_left >= desk.rule("hard-hold-effort")
