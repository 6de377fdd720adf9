"""How many exercises of a session lower the same muscle slowly?"""

from collections.abc import Iterator
from dataclasses import replace
from math import ceil

from strength_handbook.model.words import Muscle
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.order.speed import name
from strength_handbook.review.desk import Desk, SessionAt, SlotAt
from strength_handbook.review.fatigue import named
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.joints import slow_lowering
from strength_handbook.review.words import number

_WORDS = "move one of them to another day, or lower the other one faster"


@check(
    "slow-twice",
    Family.RECOVERY,
    Severity.WARN,
    what="Exercises of one session that lower the same muscle slowly, only lower it, or lower more "
    "than the best single, each with hard sets for it.",
    why="The second one adds little strength and much soreness, for the days after.",
    rules=("slow-muscle", "slow-lowering"),
)
def slow_twice(this: Check, desk: Desk) -> Iterator[Finding]:
    """Two slow lowerings for one muscle in one session."""
    most = desk.rule("slow-muscle")
    found: list[tuple[SessionAt, list[SlotAt], list[str]]] = []
    for session, slots in desk.slots_by_session():
        slow = [at for at in slots if at.slot.volume.hard_sets and _is_slow(desk, at)]
        by_slots: dict[tuple[int, ...], list[str]] = {}
        for muscle in Muscle:
            works = tuple(at.index for at in slow if muscle in at.slot.exercise.muscles.direct)
            if len(works) > most:
                by_slots.setdefault(works, []).append(muscle.value)
        for works, muscles in by_slots.items():
            found.append((session, [at for at in slow if at.index in works], muscles))
    largest = _largest_weeks(desk)
    over = {(*_key(at), at.number) for _, slots, _ in found for at in slots[int(most) :]}
    for session, too_many, muscles in found:
        which = named(tuple(map(name, too_many)))
        text = f"{which} lower the {named(tuple(muscles))} slowly; at most {number(most)}"
        later = too_many[int(most) :]
        # The largest week is what first weeks are held against: whoever makes it smaller has to
        # look at those too.
        free = all((*_key(at), largest[_key(at)]) not in over for at in later)
        spot = too_many[-1].spot_of("tempo", "return-by")
        change = _faster(desk, later) if free else Mending(_WORDS)
        yield this.finds(session, text, spot=spot, change=change)


def _key(at: SlotAt) -> tuple[str, str]:
    return at.program.id, at.slot.exercise_id


def _largest_weeks(desk: Desk) -> dict[tuple[str, str], int]:
    """The week of the most seconds of lowering, for each exercise of each program."""
    most: dict[tuple[str, str], tuple[float, int]] = {}
    for at in desk.slots:
        most[_key(at)] = max(most.get(_key(at), (0, 0)), (at.slot.volume.eccentric_s, at.number))
    return {key: week for key, (_, week) in most.items()}


def _is_slow(desk: Desk, at: SlotAt) -> bool:
    dose = at.slot.dose
    only_lowered = dose.said.return_by is not None
    above_best = at.slot.heaviest_percent is not None and at.slot.heaviest_percent > 100
    return only_lowered or above_best or slow_lowering(desk.book, at.slot)


def _faster(desk: Desk, slow: list[SlotAt]) -> Mending:
    """The slowest lowering that does not count as slow, for the later exercises.

    What is only lowered stays so at any speed: it goes to another day.
    """
    lower = ceil(desk.rule("slow-lowering")) - 1
    if lower < 0 or any(
        at.slot.dose.said.return_by is not None or at.slot.dose.tempo is None for at in slow
    ):
        return Mending(_WORDS)
    words: list[str] = []
    edits: list[Edit] = []
    for at in slow:
        assert at.slot.dose.tempo is not None  # noqa: S101  # asked before
        tempo = replace(at.slot.dose.tempo, lower=lower).text
        words.append(f"'tempo {tempo}'" + (f" for {name(at)}" if len(slow) > 1 else ""))
        edits += at.rewritten(tempo=tempo)
    return Mending(f"write {named(tuple(words))}", tuple(edits))
