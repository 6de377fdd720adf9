"""Do carries and sleds get in each other's way, and is there floor to stop on?"""

from collections.abc import Iterator, Sequence
from itertools import combinations

from strength_handbook.plan.floor import Clock, Plan, session_floor
from strength_handbook.plan.floor_advice import met_shortages
from strength_handbook.plan.floor_use import Interval
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.floor_short import apart_change, apart_spot
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Change, Edit, Finding
from strength_handbook.review.floors import exercise_spot, floors
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

    def meet(clock: Clock, plan: Plan) -> bool:
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
            change = Change("let one of them be done elsewhere, or leave it out of 'rotate'")
            at = one.slots[second.order]
            yield this.finds(at, text, spot=exercise_spot(at), change=change)


@check(
    "run-out-short",
    Family.FLOOR,
    Severity.WARN,
    what="Free floor beyond the end of a lane that a program uses, where the room says it.",
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
        if lane.run_out is None or lane.run_out >= least or key not in used:
            continue
        text = f"{number(lane.run_out)} m of free floor beyond its end; at least {number(least)} m"
        shorter = round(lane.length - (least - lane.run_out), 2)
        change = Change("turn earlier, or clear the floor")
        if shorter >= 1:
            spot = desk.room_spot("lanes", key)
            file = spot.source.file
            change = Change(
                f"move the mark and write 'length: {number(shorter)} m, "
                f"run-out: {number(least)} m'",
                (
                    Edit(file, ("lanes", key, "length"), f"{number(shorter)} m"),
                    Edit(file, ("lanes", key, "run-out"), f"{number(least)} m"),
                ),
            )
        yield this.finds_in(
            desk.room_spot("lanes", key, "run-out"), f"room {key}", text, change=change
        )


def _meeting(intervals: Sequence[Interval], lanes: Lanes) -> tuple[str, Interval, Interval] | None:
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
