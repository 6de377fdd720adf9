"""Does a lighter week leave the hard things out?"""

from collections.abc import Iterator

from strength_handbook.model.dose import Clock, StripSet
from strength_handbook.model.load import PercentOfTop, RepMax
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.volume.deload import DEFINITION
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.fatigue import left as left_after
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.weeks import (
    first_weeks,
    is_derived,
    is_training,
    left_out,
)
from strength_handbook.review.words import clock

MOST_RM = 20
"""The most repetitions that a load may be named by."""


@check(
    "deload-hard",
    Family.VOLUME,
    Severity.WARN,
    what="Open sets, ramps to a top set, strip and rest-pause sets, tests, new exercises and sets "
    "near the limit in a lighter week; and main lifts at the dose of the week before.",
    why="Sets to the limit and unaccustomed work are what a lighter week is there to leave out.",
    rules=("deload-reserve",),
    source=f"{DEFINITION}; what it leaves out is common practice, no source",
)
def deload_hard(this: Check, desk: Desk) -> Iterator[Finding]:
    """Hard things in a lighter week."""
    firsts: dict[str, dict[str, int]] = {
        program.id: first_weeks(program) for program in desk.worked.programs
    }
    before: dict[tuple[str, str, str, int], SlotAt] = {}
    for at in desk.slots:
        key = (at.program.id, at.week.wave_id, at.session.id, at.index)
        last = before.get(key)
        before[key] = at
        if not at.week.deload or at.number in at.week.wave.tests:
            continue
        found = (
            _hard(at)
            or _new(at, firsts[at.program.id], at.program)
            or _same(at, last)
            or _near_limit(at, desk.rule("deload-reserve"))
        )
        if found is not None:
            what, spot, change = found
            text = f"{what} in a lighter week; leave it for a training week"
            yield this.finds(at, text, spot=at.spot_of(*spot), change=change)


def _hard(at: SlotAt) -> tuple[str, tuple[str, ...], Mending | None] | None:
    """What is hard in a slot, the keys that say it, and the change."""
    dose = at.slot.dose
    if dose.said.test is not None:
        return "a test", ("test",), left_out(at)
    if dose.last_set is not None:
        return "an open last set", ("last-set",), _dropped(at, "last-set")
    if dose.said.density is not None:
        return "as many as possible in the time", ("density",), _timed(at)
    reps = dose.alike[-1].reps
    if reps is not None and reps.open:
        change = Mending(f"write '{reps.low}'", at.rewritten(reps=reps.low))
        return "open sets", ("reps",), None if is_derived(at) else change
    if isinstance(dose.work, StripSet):
        return "a strip set", ("strip",), left_out(at)
    cluster = dose.said.cluster
    if cluster is not None and cluster.falling:
        return "rest-pause sets", ("cluster",), left_out(at)
    if dose.top is not None:
        # What the top set is for may be the load of the other sets; then a person must choose.
        alone = dose.load is None or not isinstance(dose.load, PercentOfTop)
        edits = at.rewritten(top="none") if alone and not is_derived(at) else ()
        words = "write 'top: none'" if alone else "write 'top: none' and a load of its own"
        return "a ramp to a top set", ("top",), Mending(words, edits)
    return None


def _near_limit(at: SlotAt, least: float) -> tuple[str, tuple[str, ...], Mending | None] | None:
    """Sets that leave little; what is made of another week with less load leaves more."""
    # A load that goes so often says it as surely as a number that is written.
    left = left_after(at.slot)
    if left is None or left >= least or is_derived(at):
        return None
    if at.slot.dose.reserve is None:
        return _heavy(at, left, least)
    if at.slot.dose.said.rpe is not None:
        change = Mending(f"write 'RPE {10 - least:g}'", at.rewritten(rpe=10 - least))
        return f"an effort of RPE {10 - left:g}", ("rpe",), change
    change = Mending(f"write 'RIR {least:g}'", at.rewritten(rir=int(least)))
    return f"only {left:g} left" if left else "nothing left", ("rir",), change


def _heavy(at: SlotAt, left: float, least: float) -> tuple[str, tuple[str, ...], Mending]:
    """The same where the load alone says how much is left."""
    load, reps = at.slot.dose.load, at.slot.dose.reps
    text = load.text if load is not None else "this load"
    what = f"only {left:g} left with {text}" if left else f"nothing left with {text}"
    if not isinstance(load, RepMax) or reps is None or reps.high + least > MOST_RM:
        return what, ("load",), Mending("write a lighter load")
    lighter = f"{reps.high + least:g}RM"
    return what, ("load",), Mending(f"write '@ {lighter}'", at.rewritten(load=lighter))


def _same(at: SlotAt, before: SlotAt | None) -> tuple[str, tuple[str, ...], Mending | None] | None:
    """A main lift that is not made lighter at all."""
    if before is None or at.slot.exercise.role != "main" or not is_training(before):
        return None
    mine, other = at.slot.dose, before.slot.dose
    if (mine.sets, mine.work, mine.load) != (other.sets, other.work, other.load):
        return None
    # Where nobody says how heavy, what is left in reserve is the load.
    if mine.load is None and (mine.reserve or 0) > (other.reserve or 0):
        return None
    words = f"deload of {before.number}, sets 60 %, load 90 %"
    change = Mending(f"write '{words}'", (Edit(at.wave.file, at.dose_path, words),))
    return f"the dose of week {before.number}", (), change


def _timed(at: SlotAt) -> Mending:
    """The same time without a count to beat."""
    work = at.slot.dose.work
    how_long = clock(work.seconds) if isinstance(work, Clock) else "the time"
    own = (*at.dose_path, "density") in at.wave.marks
    edits = at.rewritten("density", sets=1) if own else ()
    shown = how_long if how_long.endswith("s") else f"{how_long.removesuffix(':00')} min"
    return Mending(f"write '1x{shown}' in place of 'AMRAP', at an easy pace", edits)


def _new(
    at: SlotAt, firsts: dict[str, int], program: WorkedProgram
) -> tuple[str, tuple[str, ...], Mending | None] | None:
    if firsts[at.slot.exercise_id] != at.number or at.number == program.weeks[0].week:
        return None
    return "a new exercise", (), left_out(at)


def _dropped(at: SlotAt, key: str) -> Mending | None:
    """Take an open last set out, where it stands in the week's own dose."""
    own = (*at.dose_path, key)
    if own not in at.wave.marks:
        return None
    return Mending(f"take out '{key.replace('-', ' ')}'", (Edit(at.wave.file, own, remove=True),))
