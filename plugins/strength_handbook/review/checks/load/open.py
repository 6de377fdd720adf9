"""Sets without a fixed end: may they be there, and how many?"""

from collections.abc import Iterator

from strength_handbook.model.dose import ClusterSet, Reps
from strength_handbook.model.loading import InHands, OnBar, OnPivot
from strength_handbook.model.words import Hazard
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Edit, Finding, Mending, Spot

PINNING = frozenset({Hazard.SUPINE_BAR, Hazard.BAR_ON_BACK})
"""The lifter ends up under the bar."""


@check(
    "open-set-alone",
    Family.LOAD,
    Severity.ERROR,
    what="Open sets, rest-pause and sets with nothing left, with a weight in the hands or on the "
    "back, where the exercise has neither safeties nor a way to get out alone.",
    why="The last repetition is the one that fails, and then the weight must have somewhere to go.",
)
def open_set_alone(this: Check, desk: Desk) -> Iterator[Finding]:
    """To the limit with no way out."""
    for at in desk.slots:
        exercise = at.slot.exercise
        what = _to_the_limit(at)
        if not what or exercise.spotting.safeties:
            continue
        if not isinstance(exercise.load, OnBar | InHands | OnPivot):
            continue
        if exercise.spotting.alone == "no" or PINNING & set(exercise.hazards):
            text = f"{what}, and the exercise has no safeties and no way out alone"
            words, edits = _closed(at)
            both = "write 'safeties' in the exercise"
            change = Mending(f"{words}, or {both}" if words else both, edits)
            yield this.finds(at, text, spot=_spot(at), change=change)


@check(
    "open-sets-many",
    Family.LOAD,
    Severity.WARN,
    what="Open sets of one session, and any open set in the first week of the program.",
    why="Each is a set to the limit; after time off the first of them is done too far.",
    rules=("open-sets",),
)
def open_sets_many(this: Check, desk: Desk) -> Iterator[Finding]:
    """Too many sets without an end."""
    most = desk.rule("open-sets")
    for session, slots in desk.slots_by_session():
        first = session.number == session.program.weeks[0].week
        limit, seen = 0.0 if first else most, 0
        for at in slots:
            open_ = _open_sets(at)
            seen += open_
            if not open_ or seen <= limit:
                continue
            text = f"{seen} open sets up to here in the session; at most {limit:g}"
            if first:
                text = "an open set in the first week"
            words, edits = _closed(at)
            yield this.finds(
                at, text, spot=_spot(at), change=Mending(words or "give it a fixed end", edits)
            )


def _open_sets(at: SlotAt) -> int:
    dose = at.slot.dose
    if dose.series:
        return int(dose.ends_open)
    if isinstance(dose.work, Reps) and dose.work.count.open:
        return dose.sets.high
    if dose.said.density is not None:
        return dose.sets.high
    return 1 if dose.last_set is not None else 0


def _to_the_limit(at: SlotAt) -> str:
    """What goes to the limit here; empty where nothing does."""
    dose = at.slot.dose
    if _open_sets(at):
        return "an open set"
    if isinstance(dose.work, ClusterSet) and dose.work.cluster.falling:
        return "rest-pause"
    if isinstance(dose.work, Reps) and dose.fewest_left == 0:
        return "a set with nothing left"
    return ""


def _spot(at: SlotAt) -> Spot:
    return at.spot_of("last-set", "density", "cluster", "reps")


def _closed(at: SlotAt) -> tuple[str, tuple[Edit, ...]]:
    """The same with a fixed end; empty where only a person can choose."""
    dose = at.slot.dose
    if dose.last_set is not None:
        spot = at.spot_of("last-set")
        if spot.path[-1] == "last-set":
            return "take 'last set' out", (Edit(spot.source.file, spot.path, remove=True),)
    last = dose.alike[-1].work
    if isinstance(last, Reps) and last.count.open:
        reps = last.count.low
        return f"write 'reps {reps}'", at.rewritten(reps=str(reps))
    if isinstance(dose.work, Reps) and dose.fewest_left == 0:
        return "write 'RIR 2'", at.rewritten("rpe", rir=2)
    return "", ()
