"""Does a session fit into its minutes, for as many as really come?"""

from collections.abc import Iterator
from dataclasses import replace

from strength_handbook.floor.advice import Cut, Fits, cut_that_fits, rotation_that_fits
from strength_handbook.floor.use import Floor
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SessionAt, SlotAt
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.floors import FloorAt, by_session, exercise_spot, floors
from strength_handbook.review.slips import slipped_sessions
from strength_handbook.review.words import clock, number

NO_SINGLE_CUT = "no single cut is enough; do one letter less, or on another day"


@check(
    "session-long",
    Family.FLOOR,
    Severity.ERROR,
    what="Minutes from door to door for those who share a station, with the waits of a rotation, "
    "against the program's time cap. Above it is an error, close below it a warning.",
    why="Whatever stands at the end of a session that is too long is left out by chance.",
    rules=("cap-share",),
    source="arithmetic; how near is too near is common practice, no source",
)
def session_long(this: Check, desk: Desk) -> Iterator[Finding]:
    """Sessions that take longer than the time there is, or nearly so."""
    share = desk.rule("cap-share") / 100
    wrong = slipped_sessions(desk)
    found: dict[tuple[str, int, str], Finding] = {}
    for one in floors(desk):
        cap, key = one.at.program.program.time_cap, _key(one.at)
        if cap is None or key in wrong:
            continue
        most, minutes = cap / 60, round(one.floor.minutes, 1)
        if minutes <= round(most * share, 1):
            continue
        over = minutes > most
        text = f"{number(minutes)} min for {_group(one)}; "
        if over:
            text += f"the cap is {number(most)} min"
        else:
            text += f"{number(100 * share)} % of the cap is {number(round(most * share, 1))} min"
        change = _cut_change(one, _within(round(most * share, 1)))
        severity = Severity.ERROR if over else Severity.WARN
        found[key] = this.finds(one.at, text, change=change, severity=severity)
    for at in desk.sessions:
        if _key(at) in found:
            yield found[_key(at)]
        elif _key(at) in wrong:  # a slip says nothing of its minutes; the week beside it does
            program, week, session = _key(at)
            earlier, later = (program, week - 1, session), (program, week + 1, session)
            beside = found.get(earlier, found.get(later))
            if beside is not None and beside.spot.place == at.spot.place:
                yield replace(beside, at=at.at, change=None)


def _key(at: SessionAt) -> tuple[str, int, str]:
    return at.program.id, at.number, at.session.id


@check(
    "wait-long",
    Family.FLOOR,
    Severity.WARN,
    what="The longest time that somebody stands and waits for the next station of a rotation, "
    "against the house's limit.",
    why="Those who wait get cold, and the session runs over.",
    rules=("longest-wait",),
)
def wait_long(this: Check, desk: Desk) -> Iterator[Finding]:
    """Rotations in which somebody waits long for a station."""
    most = desk.rule("longest-wait")

    for weeks in by_session(desk):
        cap = weeks[0].at.program.program.time_cap

        def short(floor: Floor, cap: float | None = cap) -> bool:
            wait = floor.longest_wait
            in_time = cap is None or floor.minutes <= cap / 60
            return in_time and not floor.shortages and (wait is None or round(wait.wait, 1) <= most)

        for one in weeks:
            waited = one.floor.longest_wait
            if waited is None or round(waited.wait, 1) <= most:
                continue
            text = (
                f"{number(round(waited.wait, 1))} min of waiting in the rotation; "
                f"at most {number(most)} min"
            )
            run = rotation_that_fits([week.clock for week in weeks], set(), short)
            change = rotate_change(one, run) if run else _cut_change(one, short)
            at = one.slots[waited.order]
            yield this.finds(at, text, spot=exercise_spot(at), change=change)


def rotate_change(one: FloorAt, run: tuple[str, ...]) -> Mending:
    """Letters done in turn, written into the session."""
    path = (*one.at.path, "rotate")
    words = f"write 'rotate: [{', '.join(run)}]' in {one.at.session.id}"
    return Mending(words, (Edit(one.at.wave.file, path, list(run)),))


def _within(limit: float) -> Fits:
    return lambda floor: round(floor.minutes, 1) <= limit


def _group(one: FloorAt) -> str:
    people = one.plan.members
    if people == 1:
        return "one member"
    shared = f" with {one.plan.sharing} at a station" if one.plan.sharing > 1 else ""
    return f"{people} members{shared}"


def _cut_change(one: FloorAt, fits: Fits) -> Mending:
    def can_cut(order: str) -> bool:
        return _writes_sets(one.slots[order])

    cut = cut_that_fits(one.clock, fits, can_cut)
    return Mending(NO_SINGLE_CUT) if cut is None else _change(one, cut)


def _writes_sets(at: SlotAt) -> bool:
    """True where this week's dose says how many sets, as a plain number."""
    return (*at.dose_path, "sets") in at.wave.marks and at.slot.dose.said.test is None


def _change(one: FloorAt, cut: Cut) -> Mending:
    slots = [one.slots[order] for order in cut.orders]
    names = " and ".join(slot.slot.order for slot in slots)
    if cut.sets is not None:
        words = f"write {cut.sets} {'set' if cut.sets == 1 else 'sets'} for {names}"
        edits = tuple(edit for at in slots for edit in at.rewritten(sets=cut.sets))
        return Mending(words, edits)
    rest = clock(cut.rest or 0.0)
    return Mending(f"write 'rest {rest}' for {names}", slots[-1].rewritten(rest=rest))
