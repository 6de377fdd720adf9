"""Does a dose say everything that members would otherwise guess?"""

from collections.abc import Iterator

from strength_handbook.model.dose import Clock, Hold
from strength_handbook.model.loading import BodyWeightLift, ByEffort, PushUp, StrapRow
from strength_handbook.model.samples import sample
from strength_handbook.model.shape import quoted
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Edit, Finding, Mending, Spot

LONGEST_POSITION = 120


@check(
    "rest-missing",
    Family.COMPLETE,
    Severity.ERROR,
    what="Doses of two sets or more that say neither a rest nor an interval, in week, slot and "
    "exercise; in a pair the rest after the last one is enough.",
    why="Members guess the rest, and the later sets become another exercise.",
)
def rest_missing(this: Check, desk: Desk) -> Iterator[Finding]:
    """Several sets with nothing between them."""
    for _, slots in desk.slots_by_session():
        for place, at in enumerate(slots):
            # Who goes straight on to the next of a pair rests after that one.
            round_ = [one for one in slots[place:] if one.slot.order[0] == at.slot.order[0]]
            rested = any(
                (one.slot.dose.rest, one.slot.dose.every) != (None, None) for one in round_
            )
            if at.slot.dose.sets.high > 1 and not rested:
                text = f"{at.slot.dose.sets.text} sets and no rest between them"
                change = Mending("write how long, such as 'rest 2:00' or 'every 60 s'")
                yield this.finds(at, text, spot=Spot(at.wave, at.path), change=change)


@check(
    "load-missing",
    Family.COMPLETE,
    Severity.ERROR,
    what="Doses that say neither a load nor how hard a set is, where the exercise has loads to "
    "choose from; of rowing, running and the like those without an effort.",
    why="Members guess the load, and everybody guesses something else.",
)
def load_missing(this: Check, desk: Desk) -> Iterator[Finding]:
    """Nothing says how heavy."""
    for at in desk.slots:
        if _says_how_heavy(at):
            continue
        if at.slot.dose.going is not None:
            text, spot = "nothing says how hard it is", Spot(at.wave, at.path)
            change = Mending("write an effort, such as 'RPE 6', or 'can talk'")
            yield this.finds(at, text, spot=spot, change=change)
            continue
        example = sample("'@ 60 kg' or '@ 70 %'")
        if isinstance(at.slot.exercise.load, BodyWeightLift):
            example = "'@ BW'"
        effort = "'RPE 7'" if isinstance(at.slot.dose.work, Hold | Clock) else "'RIR 3'"
        change = Mending(f"write how heavy, such as {example}, or {effort}")
        text, spot = "neither a load nor an effort is written", Spot(at.wave, at.path)
        yield this.finds(at, text, spot=spot, change=change)


def _says_how_heavy(at: SlotAt) -> bool:
    dose, loading = at.slot.dose, at.slot.exercise.load
    if isinstance(loading, ByEffort | PushUp | StrapRow):
        return True
    if isinstance(loading, BodyWeightLift) and loading.carrier is None and loading.help is None:
        return True
    said = dose.said
    if dose.going is not None:
        return (dose.load, dose.reserve, said.talk) != (None, None, None)
    given = (dose.load, dose.top, dose.reserve, said.test, said.team, said.assist, said.push)
    return any(one is not None for one in given)


@check(
    "hold-position",
    Family.COMPLETE,
    Severity.ERROR,
    what="Holds whose position is said by neither week, slot nor exercise, as an angle or a "
    "landmark.",
    why="A hold makes strong near the joint angle at which it is held.",
    source="isometric training gives most at the length it is done at; Oranchuk and others 2019",
)
def hold_position(this: Check, desk: Desk) -> Iterator[Finding]:
    """Holds anywhere."""
    for at in desk.slots:
        said = at.slot.dose.said
        if not isinstance(at.slot.dose.work, Hold) or said.position or said.push:
            continue
        text = f"a hold of {at.slot.dose.work.seconds:g} s without its position"
        pose = at.slot.exercise.poses.turn.strip().removesuffix(".")
        words = "write the angle or landmark, such as 'position: front knee at 90°'"
        edits: tuple[Edit, ...] = ()
        if len(pose) <= LONGEST_POSITION:
            pose = pose[0].lower() + pose[1:]
            words = f"write {quoted('position: ' + pose, LONGEST_POSITION + 10)} in the slot"
            edits = (Edit(at.wave.file, (*at.path, "position"), pose),)
        yield this.finds(at, text, spot=Spot(at.wave, at.path), change=Mending(words, edits))
