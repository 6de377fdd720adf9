"""Do carries and sleds get in each other's way, and is there floor to stop on?"""

from collections.abc import Iterator, Sequence
from itertools import combinations

from strength_handbook.floor.advice import met_shortages
from strength_handbook.floor.floor import FloorClock, Plan, session_floor
from strength_handbook.floor.use import Stay
from strength_handbook.model.dose import Distance
from strength_handbook.model.length import length_text
from strength_handbook.model.printed import far_text
from strength_handbook.plan.carries import carry_plan
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.floor.short import apart_change, apart_spot
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.floors import exercise_spot, floors
from strength_handbook.review.weeks import is_derived
from strength_handbook.review.words import number

Lanes = dict[str, int]


@check(
    "lane-crossed",
    Family.FLOOR,
    Severity.WARN,
    what="Two different exercises on one lane at the same minute, by pairs or start groups.",
    why="Whoever walks loaded can't step aside for a sled or a faster walker.",
)
def lane_crossed(this: Check, desk: Desk) -> Iterator[Finding]:
    """Lanes on which two exercises meet."""
    lanes = {key: lane.count for key, lane in desk.book.room.lanes.items()}

    def meet(clock: FloorClock, plan: Plan) -> bool:
        crossed = _meeting(session_floor(clock, plan).intervals, lanes) is not None
        return crossed or bool(met_shortages(clock, plan))

    for one in floors(desk):
        found = _meeting(one.floor.intervals, lanes)
        if found is None:
            continue
        lane, first, second = found
        name = desk.book.room.lanes[lane].name
        minute = max(first.start, second.start)
        both = " and ".join(sorted(f"{part.order} {part.exercise}" for part in (first, second)))
        text = f"minute {minute:.0f}: {both} on the {name} at once"
        if first.group != second.group:
            spot, change = apart_spot(desk, one), apart_change(desk, one, meet)
            yield this.finds(one.at, text, spot=spot, change=change)
        else:
            change = Mending("let one of them be done elsewhere, or leave it out of 'rotate'")
            at = one.slots[second.order]
            yield this.finds(at, text, spot=exercise_spot(at), change=change)


@check(
    "run-out-short",
    Family.FLOOR,
    Severity.WARN,
    what="Free floor beyond the end of a lane that a program uses, and whether the room says it.",
    why="A sled or a tired walker needs some steps to stop.",
    rules=("run-out",),
)
def run_out_short(this: Check, desk: Desk) -> Iterator[Finding]:
    """Lanes that end too near a wall."""
    least = desk.rule("run-out")
    used = {
        thing for at in desk.slots for thing in (*at.slot.exercise.stations, *at.slot.exercise.uses)
    }
    for key, lane in desk.book.room.lanes.items():
        if key not in used or (lane.run_out is not None and lane.run_out >= least):
            continue
        if lane.run_out is None:
            enough = length_text(least)
            text = f"nothing says how much free floor lies beyond its end; at least {enough}"
            change = Mending("measure it and write 'run-out', such as 'run-out: 3 m'")
            yield this.finds_in(
                desk.room_spot("lanes", key, key=True), f"room {key}", text, change=change
            )
            continue
        enough = length_text(least, like=lane.run_out)
        text = f"{length_text(lane.run_out)} of free floor beyond its end; at least {enough}"
        shorter = round(lane.length - (least - lane.run_out), 2)
        change = Mending("turn earlier, or clear the floor")
        if shorter >= 1:
            length = length_text(shorter, like=lane.run_out)
            spot = desk.room_spot("lanes", key)
            file = spot.source.file
            change = Mending(
                f"move the mark and write 'length: {length}, run-out: {enough}'",
                (
                    Edit(file, ("lanes", key, "length"), length),
                    Edit(file, ("lanes", key, "run-out"), enough),
                ),
            )
        yield this.finds_in(
            desk.room_spot("lanes", key, "run-out"), f"room {key}", text, change=change
        )


@check(
    "lane-turns",
    Family.FLOOR,
    Severity.WARN,
    what="Turns in one carry or drag: its metres against the length of its lane, and whether they "
    "are more than a house rule allows.",
    why="A turn under load twists knees and back and stops whoever follows; a walk of many turns "
    "is a walk of turns.",
    rules=("lane-turns",),
)
def lane_turns(this: Check, desk: Desk) -> Iterator[Finding]:
    """Walks that are much longer than their lane."""
    most = desk.rule("lane-turns")
    for at in desk.slots:
        walk, work = carry_plan(desk.book, at.slot), at.slot.dose.work
        if walk is None or not isinstance(work, Distance) or walk.turns <= most:
            continue
        exercise, lanes = at.slot.exercise, desk.book.room.lanes
        places = (*exercise.stations, *exercise.uses)
        length = next(lanes[place].length for place in places if place in lanes)
        text = (
            f"{far_text(work.metres)} on the {walk.lane} of {length_text(length)}: "
            f"{walk.turns} turn{'s' if walk.turns > 1 else ''}; at most {number(most)}"
        )
        shorter = length_text((int(most) + 1) * length, like=work.metres)
        edits = () if is_derived(at) else at.rewritten(distance=shorter)
        change = Mending(f"write '{shorter}' and another set, or use a longer lane", edits)
        yield this.finds(at, text, spot=at.spot_of("distance"), change=change)


def _meeting(intervals: Sequence[Stay], lanes: Lanes) -> tuple[str, Stay, Stay] | None:
    """The first two intervals of different pairs that put different exercises on one lane."""
    for lane, count in lanes.items():
        walks = sorted(
            (one for one in intervals if lane in one.needs.things),
            key=lambda one: (one.start, one.group, one.pair, one.order),
        )
        if len({one.exercise for one in walks}) <= count:
            continue
        for first, second in combinations(walks, 2):
            same = (first.group, first.pair) == (second.group, second.pair)
            if not same and first.exercise != second.exercise and second.start < first.end - 1e-6:
                return lane, first, second
    return None
