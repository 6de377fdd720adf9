"""Where in the program files a change is written now."""

from strength_handbook.record.change import Change, ChangeKind
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Spot

_PROGRAM_KEYS = {
    "title": "program", "not-for": "not-for", "rules": "rules", "group": "group", "goals": "goals",
    "start": "start", "valid_until": "valid-until",
}  # fmt: skip
"""Where program.yml has what the published data call otherwise."""


def spot_of(desk: Desk, program: str, change: Change) -> Spot:
    """The nearest place to a change: its slot, session, week, exercise or file.

    What was taken out is written nowhere; the part that it was in is shown.
    """
    slots = [one for one in desk.slots if one.program.id == program]
    sessions = [one for one in desk.sessions if one.program.id == program]
    for slot in slots:
        here = (slot.session.id, slot.slot.order, slot.slot.exercise_id)
        if slot.number in change.weeks and here == (change.session, change.order, change.exercise):
            return slot.spot
    for session in sessions:
        if session.number in change.weeks and session.session.id == change.session:
            return session.spot
    for week in desk.weeks:
        own = change.session or not change.exercise
        if own and week.program.id == program and week.number in change.weeks:
            return week.spot
    return _in_no_week(desk, program, change)


def _in_no_week(desk: Desk, program: str, change: Change) -> Spot:
    written = desk.written
    if change.kind is ChangeKind.RULE and written.rules is not None:
        return Spot(written.rules.source, ("rules", *(pair.key for pair in change.pairs[:1])))
    if change.kind is ChangeKind.ROOM:
        section, _, key = change.name.rpartition(" ")
        if change.name in ("plates", "loose plates", "gym", "emergency panel"):
            section, key = change.name.removesuffix(" panel").replace(" ", "-"), ""
        return desk.room_spot(section.replace(" ", "-"), *([key] if key else []), key=True)
    if change.kind is ChangeKind.LIFTER and written.lifters is not None:
        lifter = change.pairs[0].key.partition(".")[0]
        return Spot(written.lifters.source, ("lifters", lifter))
    if change.exercise in written.exercises:
        keys = [pair.key for pair in change.pairs]
        key = "doors" if change.kind is ChangeKind.DOORS else keys[0] if keys else "name"
        return Spot(written.exercises[change.exercise].source, (key,), key=True)
    what = change.pairs[0].key.partition(".")[0] if change.pairs else ""
    key = _PROGRAM_KEYS.get(what, "version")
    return desk.program_spot(program, key, key=True)
