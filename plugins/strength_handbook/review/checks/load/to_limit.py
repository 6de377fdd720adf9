"""How often does a main lift go to the limit?"""

from collections.abc import Iterator

from strength_handbook.model.dose import Hold
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt, WeekAt
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.lighter import is_light
from strength_handbook.review.weeks import by_program, is_derived
from strength_handbook.review.words import number


@check(
    "limit-often",
    Family.LOAD,
    Severity.WARN,
    what="Main lifts with nothing left in reserve, ramps to today's best among them, tests left "
    "out: sessions of one week that have one, and weeks in a row.",
    why="A set with nothing left costs more days than it gives, and technique goes first.",
    rules=("limit-sessions", "limit-weeks"),
)
def limit_often(this: Check, desk: Desk) -> Iterator[Finding]:
    """Main lifts to the limit again and again."""
    sessions, in_a_row = desk.rule("limit-sessions"), desk.rule("limit-weeks")
    for program, weeks in by_program(desk):
        to_limit = [at for at in desk.slots if at.program is program and _to_the_limit(at)]
        run = 0
        for week in weeks:
            slots = [at for at in to_limit if at.number == week.number]
            run = run + 1 if slots else 0
            yield from _of_week(this, week, slots, run, (sessions, in_a_row))


def _of_week(
    this: Check, week: WeekAt, slots: list[SlotAt], run: int, limits: tuple[float, float]
) -> Iterator[Finding]:
    sessions, in_a_row = limits
    seen: list[str] = []
    for at in slots:
        if at.session.id not in seen:
            seen.append(at.session.id)
        if run > in_a_row:
            text = f"nothing left for {run} weeks in a row; at most {number(in_a_row)}"
        elif len(seen) > sessions:
            text = (
                f"nothing left in {len(seen)} sessions of week {week.number}; at most "
                f"{number(sessions)}"
            )
        else:
            continue
        yield this.finds(at, text, spot=at.spot_of(*_keys(at)), change=_one_left(at))


def _keys(at: SlotAt) -> tuple[str, ...]:
    """What says that nothing is left."""
    return ("top",) if at.slot.dose.top is not None else ("rir", "rpe", "last-set")


def _to_the_limit(at: SlotAt) -> bool:
    dose = at.slot.dose
    if at.slot.exercise.role != "main" or dose.said.test is not None:
        return False
    if isinstance(dose.work, Hold):  # pushing hard at something fixed is what such holds are
        return False
    if dose.top is not None and not dose.top_left and not is_light(at):
        return True
    return dose.fewest_left == 0 or (dose.last_set is not None and dose.last_set.rir == 0)


def _one_left(at: SlotAt) -> Mending:
    dose, words, edits = at.slot.dose, [], list[Edit]()
    if dose.fewest_left == 0:
        words.append("RIR 1" if dose.said.rpe is None else "RPE 9")
        edits += at.rewritten(rir=1) if dose.said.rpe is None else at.rewritten(rpe=9)
    if dose.last_set is not None and dose.last_set.rir == 0:
        last = dose.last_set
        words.append(f"last set {last.floor}+ cap {last.cap} RIR 1")
        new = {"floor": last.floor, "cap": last.cap, "rir": 1}
        edits += at.rewritten(last_set=dict(new))
    if dose.top is not None:
        words.append("ramp none")
    said = " and ".join(f"'{one}'" for one in words)
    return Mending(f"write {said}", () if is_derived(at) else tuple(edits))
