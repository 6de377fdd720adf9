"""Does a dose fit what its exercise is?"""

from collections.abc import Iterator
from dataclasses import replace

from strength_handbook.model.dose import Clock, Hold
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.misfits import not_held, slow_throw
from strength_handbook.review.weeks import is_derived
from strength_handbook.review.words import clock, number

USUAL_HOLD_S = 20.0
"""Offered where no other week shows how long a hold lasts."""


@check(
    "dose-odd",
    Family.LOAD,
    Severity.WARN,
    what="Repetitions, or time without 'ISO', for an exercise that is a hold; holds that are very "
    "long, or long and to the limit; and, as an error, slow lowering of a jump or a swing, which "
    "nobody can do.",
    why="Whoever reads such a line does something else than was meant.",
    rules=("slow-lowering", "hold-most", "hold-effort", "long-hold"),
)
def dose_odd(this: Check, desk: Desk) -> Iterator[Finding]:
    """Doses that belong to another exercise."""
    for at in desk.slots:
        if slow_throw(desk, at.slot):
            yield _slow(this, at)
    for at in not_held(desk):
        yield _as_hold(this, at)
    for at in desk.slots:
        if isinstance(at.slot.dose.work, Hold):
            yield from _long(this, desk, at, at.slot.dose.work.longest_s)


def _slow(this: Check, at: SlotAt) -> Finding:
    tempo = at.slot.dose.tempo
    assert tempo is not None  # noqa: S101  # a slow lowering is part of a tempo
    fast = replace(tempo, lower=1, low_pause=0).text
    text = f"{tempo.lower} s of lowering in {at.slot.exercise_id}, which can't be lowered slowly"
    change = Mending(
        f"write another tempo, such as 'tempo {fast}'",
        () if is_derived(at) else at.rewritten(tempo=fast),
    )
    return this.finds(at, text, spot=at.spot_of("tempo"), change=change, severity=Severity.ERROR)


def _as_hold(this: Check, at: SlotAt) -> Finding:
    """Words alone where a position would have to be written too."""
    dose = at.slot.dose
    by_clock = isinstance(dose.work, Clock)
    seconds = dose.work.seconds if isinstance(dose.work, Clock) else _usual(at)
    shown = clock(seconds) if seconds < 60 else f"{number(seconds)} s"
    what = "time without 'ISO'" if by_clock else "repetitions"
    text = f"{what} for {at.slot.exercise_id}, which is a hold"
    edits: tuple[Edit, ...] = ()
    if at.says("position") and not is_derived(at):
        edits = at.rewritten("reps", "time", "tempo", hold=shown)
    change = Mending(f"write 'ISO {dose.sets.text.replace('–', '-')}x{shown}'", edits)
    return this.finds(at, text, spot=at.spot_of("reps", "time"), change=change)


def _usual(at: SlotAt) -> float:
    """Seconds of this slot's holds in other weeks."""
    for week in at.program.weeks:
        for session in week.sessions:
            for slot in session.slots:
                if slot.slot is at.slot.slot and isinstance(slot.dose.work, Hold):
                    return slot.dose.work.seconds
    return USUAL_HOLD_S


def _long(this: Check, desk: Desk, at: SlotAt, seconds: float) -> Iterator[Finding]:
    most, hardest = desk.rule("hold-most"), desk.rule("hold-effort")
    if seconds > most:
        change = Mending(
            f"write '{number(most)} s', or a harder position",
            () if is_derived(at) else at.rewritten(hold=f"{number(most)} s"),
        )
        text = f"a hold of {number(seconds)} s; at most {number(most)} s"
        yield this.finds(at, text, spot=at.spot_of("hold"), change=change)
    left = at.slot.dose.fewest_left
    if left is not None and 10 - left > hardest and seconds > desk.rule("long-hold"):
        text = (
            f"a hold of {number(seconds)} s at RPE {number(10 - left)}; at most {number(hardest)}"
        )
        edits = () if is_derived(at) else at.rewritten("rir", rpe=hardest)
        change = Mending(f"write 'RPE {number(hardest)}'", edits)
        yield this.finds(at, text, spot=at.spot_of("rpe", "rir"), change=change)
