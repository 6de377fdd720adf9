"""Does every exercise, and every wave of a program, have a name of its own?"""

from collections.abc import Iterator

from strength_handbook.model.shape import quoted
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending, Spot
from strength_handbook.review.weeks import by_program, waves


@check(
    "name-twice",
    Family.COMPLETE,
    Severity.WARN,
    what="Names and other names of all exercises, and names of the waves of one program, held "
    "against each other without regard to capitals, spaces and hyphens.",
    why="Under one name two histories are mixed, and members open the wrong page.",
)
def name_twice(this: Check, desk: Desk) -> Iterator[Finding]:
    """Two exercises, or two waves of a program, that are called the same."""
    yield from _exercises(this, desk)
    for _, weeks in by_program(desk):
        waves_by_name: dict[str, str] = {}
        for wave in waves(weeks):
            at = wave[0]
            other = waves_by_name.setdefault(_plain(at.week.wave.wave), at.week.wave_id)
            if other != at.week.wave_id:
                text = f"{quoted(at.week.wave.wave)} is what wave {other} is called too"
                change = Mending("give one of them another name")
                yield this.finds(
                    at, text, spot=Spot(at.wave, ("wave",)), at=at.wave_at, change=change
                )


def _exercises(this: Check, desk: Desk) -> Iterator[Finding]:
    first: dict[str, str] = {}
    for key, exercise in sorted(desk.book.exercises.items()):
        for place, name in (("name", exercise.name), ("also", exercise.also)):
            if name is None:
                continue
            other = first.setdefault(_plain(name), key)
            if other != key:
                text = f"{quoted(name)} is what exercise {other} is called too"
                change = Mending("give one of them another name, or keep one file")
                spot = desk.exercise_spot(key, place)
                yield this.finds_in(spot, f"exercise {key}", text, change=change)


def _plain(name: str) -> str:
    return "".join(letter for letter in name.casefold() if letter.isalnum())
