"""Repetitions of a lift in one session by how heavy they are."""

from collections.abc import Iterator

from strength_handbook.model.load import (
    PercentOfBase,
    PercentOfSystem,
    PercentOfTop,
    PercentOfTrainingMax,
)
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.load.reps import is_over
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Finding
from strength_handbook.review.slips import slips
from strength_handbook.review.weeks import EPSILON, smaller

_ZONES = ((90.0, "from 90 % on", "zone-90"), (80.0, "at 80 to 89 %", "zone-80"),
          (70.0, "at 70 to 79 %", "zone-70"))  # fmt: skip
"""Lower end, words and rule of each zone, the heaviest first."""
_FOR_STRENGTH = ("strength", "speed", "eccentric", "isometric")
"""For size and endurance sets of six and more at 67 to 85 % are usual (textbook, from memory)."""
_PERCENT = (PercentOfBase, PercentOfSystem, PercentOfTrainingMax, PercentOfTop)


@check(
    "zone-reps",
    Family.VOLUME,
    Severity.WARN,
    what="Repetitions of one lift in one session within a zone of percent of its best single, "
    "tests and sets that cannot be done left out, against the most for that zone. From 70 to 79 % "
    "not in waves for size, endurance or all round, where sets of six to twelve are usual.",
    why="Past that number the later repetitions are slower and rougher than the first ones.",
    rules=("zone-70", "zone-80", "zone-90"),
    source="classical weightlifting table of repetitions per zone (1970s), top of its ranges; its "
    "24 at 70 to 79 % and 20 at 80 to 89 % are for few repetitions a set, so 30 and 25 are taken",
)
def zone_reps(this: Check, desk: Desk) -> Iterator[Finding]:
    """Lifts with too many heavy repetitions."""
    wrong = slips(desk)
    for session, slots in desk.slots_by_session():
        usual_there = session.week.wave.emphasis not in _FOR_STRENGTH
        sums: dict[tuple[str, str], float] = {}
        right = (at for at in slots if at not in wrong)
        for at in (one for whole in right for one in desk.alike_of(whole)):
            zone = _zone(at)
            if zone is None or is_over(desk, at):
                continue
            words, rule = zone
            if rule == "zone-70" and usual_there:
                continue
            key = (at.slot.exercise_id, rule)
            before = sums.get(key, 0.0)
            mine = _reps(at)
            sums[key] = before + mine
            most = desk.rule(rule)
            if sums[key] > most + EPSILON:
                yield this.finds(
                    at,
                    f"{sums[key]:g} repetitions {words}; at most {most:g} in a session",
                    spot=at.spot_of("reps", "cluster", "strip"),
                    change=smaller(at, most - before),
                )


def _zone(at: SlotAt) -> tuple[str, str] | None:
    """Words and rule of the zone of a slot; None for lighter work, tests and loads by effort."""
    percent = at.slot.heaviest_percent
    of_best = isinstance(at.slot.dose.load, _PERCENT)
    if percent is None or not of_best or at.slot.dose.said.test is not None:
        return None
    return next(((words, rule) for low, words, rule in _ZONES if percent >= low - EPSILON), None)


def _reps(at: SlotAt) -> float:
    """Repetitions of one side, at the most of what is asked."""
    reps = at.slot.dose.reps
    return 0.0 if reps is None else at.slot.dose.sets.high * reps.high
