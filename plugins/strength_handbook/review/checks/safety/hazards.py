"""Does every danger of an exercise have its caution?"""

from collections.abc import Collection, Iterator

from strength_handbook.model.words import Hazard
from strength_handbook.reading.problem import Severity
from strength_handbook.reading.source import Plain
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.dangers import Danger, dangers
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Edit, Finding, Mending


@check(
    "hazard-missing",
    Family.SAFETY,
    Severity.ERROR,
    what="Dangers that follow from the loading, the station, the pattern, the words and all doses "
    "of an exercise, against its list of hazards; each hazard brings its caution to the page. A "
    "hold without a load that is far from the limit is no long hold.",
    why="Members read a caution only where its hazard is named.",
    rules=("slow-lowering", "long-hold", "brace-from", "hard-conditioning"),
)
def hazard_missing(this: Check, desk: Desk) -> Iterator[Finding]:
    """Exercises whose hazards leave one out."""
    for name, exercise in desk.book.exercises.items():
        missing = _fewest([one for one in dangers(desk, name) if not _named(one, exercise.hazards)])
        if not missing:
            continue
        reasons = " and ".join(f"'{one.hazards[0]}' ({one.because})" for one in missing)
        text = f"the hazards leave out {reasons}, so the page lacks the caution"
        whole: list[Plain] = [
            *(one.value for one in exercise.hazards),
            *(one.hazards[0].value for one in missing),
        ]
        spot = desk.exercise_spot(name, "hazards")
        change = Mending(
            f"write 'hazards: [{', '.join(map(str, whole))}]'",
            (Edit(spot.source.file, ("hazards",), whole),),
        )
        yield this.finds_in(spot, f"exercise {name}", text, change=change)


def _named(danger: Danger, hazards: Collection[Hazard]) -> bool:
    return any(one in hazards for one in danger.hazards)


def _fewest(missing: list[Danger]) -> list[Danger]:
    """Without those that are covered once the others are named, and each hazard once."""
    only = {one.hazards[0] for one in missing if len(one.hazards) == 1}
    kept = [one for one in missing if len(one.hazards) == 1 or not _named(one, only)]
    return list({one.hazards[0]: one for one in reversed(kept)}.values())[::-1]
