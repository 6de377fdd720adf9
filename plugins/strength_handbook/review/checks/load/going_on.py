"""Do the written weeks go where the slot's own rule for going on leads?"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from strength_handbook.model.dose import Clock, Distance, Dose, Hold, Reps
from strength_handbook.model.pace import PaceOfBest
from strength_handbook.model.printed import clock, far_text
from strength_handbook.model.progress import Progress, RuleName, progress_text
from strength_handbook.plan.loads import PlannedLoad
from strength_handbook.plan.next_load import gap_above
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.slips import slips
from strength_handbook.review.weeks import EPSILON, is_training
from strength_handbook.review.words import number, weight


@dataclass(frozen=True)
class _Step:
    """From one week to the next, in the rule's own measure.

    Attributes:
        before: what the earlier week asks, in words.
        after: what the later one asks.
        steps: by how many of the rule's steps it is more; below 0 where it is less.
        key: the key of the dose that says it.
    """

    before: str
    after: str
    steps: float
    key: str


@check(
    "rule-against-week",
    Family.LOAD,
    Severity.WARN,
    what="What a training week asks against the last one of the same wave, in steps of the slot's "
    "own rule: less than before, or more steps than allowed. Loads are compared at the same or "
    "fewer repetitions, for every example lifter; the next load that exists is always allowed. "
    "Easy weeks, tests and doses of another kind are left out, and so is 'listed'.",
    why="The page tells a member both what the rule adds and what the next week asks; where they "
    "disagree, nobody knows which one counts.",
    rules=("rule-steps",),
)
def rule_against_week(this: Check, desk: Desk) -> Iterator[Finding]:
    """Weeks that go back, or further, than their slot's rule."""
    last: dict[tuple[str, str, str, int], SlotAt] = {}
    wrong = slips(desk)
    most = desk.rule("rule-steps")
    for at in desk.slots:
        rule, key = at.slot.slot.progress, (at.program.id, at.week.wave_id, at.session.id, at.index)
        apart = at.slot.easy or not is_training(at) or at.slot.dose.said.test is not None
        if rule is None or rule.rule not in _STEPS or apart or at in wrong:
            continue
        before, last[key] = last.get(key), at
        if before is None:
            continue
        step = _STEPS[rule.rule](rule, before, at, most, desk.book.room.units)
        if step is None or -EPSILON <= step.steps <= most + EPSILON:
            continue
        yield this.finds(
            at,
            f"{step.after} in week {at.number} after {step.before} in week {before.number}: "
            f"{_against(rule, step, most)}",
            spot=at.spot_of(step.key),
            change=_weeks_decide(at),
        )


def _against(rule: Progress, step: _Step, most: float) -> str:
    text = f"'{progress_text(rule)}'"
    if step.steps < 0:
        return f"{text} never goes back, and this is no easy week"
    return f"{number(round(step.steps, 1))} steps of {text} at once; at most {number(most)}"


def _weeks_decide(at: SlotAt) -> Mending:
    """The rule that only reads the weeks: the page then says one thing."""
    path = (*at.path, "progress")
    words = "write 'listed', so that the weeks alone decide; or let the week ask what the rule says"
    return Mending(words, (Edit(at.wave.file, path, "listed"),))


def _by_mass(rule: Progress, before: SlotAt, at: SlotAt, most: float, units: str) -> _Step | None:
    """Loads for every lifter who has both: the least rise, or the least fall where all fall."""
    one, other = before.slot.dose, at.slot.dose
    if rule.step is None or not _alike(one, other) or type(one.load) is not type(other.load):
        return None
    if rule.rule == "open-set" and one.last_set is None and not _open(one):
        return None  # without an open set nothing says how to go on
    assert isinstance(one.work, Reps)  # noqa: S101  # doses that are alike have them
    assert isinstance(other.work, Reps)  # noqa: S101
    if other.work.count.high > one.work.count.high:
        return None
    steps = []
    for name in sorted(before.slot.loads.keys() & at.slot.loads.keys()):
        old, new = before.slot.loads[name], at.slot.loads[name]
        rise = _rise(at, old, new)
        if rise is None or old.actual_g is None or new.actual_g is None:
            continue
        gap = gap_above(at.slot.scale, old.actual_g) if at.slot.scale is not None else None
        if 0 < new.actual_g - old.actual_g <= max(most * rule.step.grams, gap or 0):
            rise = 0.0
        text = tuple(f"{weight(load.actual_g or 0, units)} for {name}" for load in (old, new))
        steps.append(_Step(text[0], text[1], rise / rule.step.grams, "load"))
    fewer = other.work.count.high < one.work.count.high
    if not steps or (fewer and all(step.steps > 0 for step in steps)):
        return None  # for fewer repetitions more is usual
    return min(steps, key=lambda step: abs(step.steps))


def _rise(at: SlotAt, old: PlannedLoad, new: PlannedLoad) -> float | None:
    """Grams by which plan and load both go up or both go down; 0 where they don't agree."""
    if old.actual_g is None or new.actual_g is None:
        return None
    planned = new.planned_g + new.body_g - old.planned_g - old.body_g
    actual = float(new.actual_g - old.actual_g)
    slack = at.slot.scale.slack_g if at.slot.scale is not None else 0
    if planned * actual <= 0 or abs(actual) <= slack:
        return 0.0
    return min(planned, actual, key=abs)


def _by_seconds(
    rule: Progress, before: SlotAt, at: SlotAt, _most: float, _units: str
) -> _Step | None:
    one, other = before.slot.dose, at.slot.dose
    if (
        rule.step_time is None
        or not isinstance(one.work, Hold)
        or not isinstance(other.work, Hold)
        or not _same_task(one, other)
        or (rule.cap_time is not None and one.work.longest_s >= rule.cap_time)
    ):
        return None  # at the cap more load comes, and the hold begins shorter
    old, new = one.work.seconds, other.work.seconds
    return _Step(f"{old:g} s", f"{new:g} s", (new - old) / rule.step_time, "hold")


def _by_metres(
    rule: Progress, before: SlotAt, at: SlotAt, _most: float, _units: str
) -> _Step | None:
    one, other = before.slot.dose, at.slot.dose
    if (
        rule.step_distance is None
        or not isinstance(one.work, Distance)
        or not isinstance(other.work, Distance)
        or not _same_task(one, other)
    ):
        return None
    old, new = one.work.metres, other.work.metres
    texts = (far_text(old), far_text(new, like=old))
    return _Step(*texts, (new - old) / rule.step_distance, "distance")


def _by_clock(
    rule: Progress, before: SlotAt, at: SlotAt, _most: float, _units: str
) -> _Step | None:
    one, other = before.slot.dose, at.slot.dose
    works = one.work, other.work
    if rule.step_time is None or one.load != other.load:
        return None
    if not isinstance(works[0], Clock) or not isinstance(works[1], Clock):
        return None
    old, new = works[0].seconds, works[1].seconds
    if rule.cap_time is not None and old >= rule.cap_time:
        return None
    return _Step(clock(old), clock(new), (new - old) / rule.step_time, "time")


def _by_count(
    rule: Progress, before: SlotAt, at: SlotAt, _most: float, _units: str
) -> _Step | None:
    """Repetitions, or sets, of the same load; at the cap more load comes, and fewer of them."""
    one, other = before.slot.dose, at.slot.dose
    if one.load != other.load or one.series or other.series:
        return None
    if rule.rule == "sets":
        same, step, cap = one.work == other.work, rule.step_sets, rule.cap_sets
        old, new, key = one.sets, other.sets, "sets"
    else:
        same, step, cap = _alike(one, other), rule.step_reps, rule.cap_reps
        if one.reps is None or other.reps is None:
            return None
        old, new, key = one.reps, other.reps, "reps"
    if not same or step is None or (cap is not None and old.high >= cap):
        return None
    word = "sets" if key == "sets" else "repetitions"
    texts = (f"{old.text} {word}", f"{new.text} {word}")
    return _Step(*texts, (new.middle - old.middle) / step, key)


def _by_pace(rule: Progress, before: SlotAt, at: SlotAt, _most: float, _units: str) -> _Step | None:
    """Paces of the same best for the same piece; faster is more."""
    one, other = before.slot.dose, at.slot.dose
    loads = one.load, other.load
    if rule.step_pace is None or one.work != other.work:
        return None
    if not isinstance(loads[0], PaceOfBest) or not isinstance(loads[1], PaceOfBest):
        return None
    old, new = loads[0], loads[1]
    return _Step(old.text, new.text, (old.seconds - new.seconds) / rule.step_pace, "load")


def _by_points(
    rule: Progress, before: SlotAt, at: SlotAt, _most: float, _units: str
) -> _Step | None:
    old, new = before.slot.percent, at.slot.percent
    one, other = before.slot.dose, at.slot.dose
    if rule.step_percent is None or old is None or new is None or not _alike(one, other):
        return None
    return _Step(f"{old:g} %", f"{new:g} %", (new - old) / rule.step_percent, "load")


def _by_reserve(
    _rule: Progress, before: SlotAt, at: SlotAt, _most: float, _units: str
) -> _Step | None:
    """The same load and repetitions, closer to the limit: one repetition is one step."""
    one, other = before.slot.dose, at.slot.dose
    if one.reserve is None or other.reserve is None or one.load != other.load:
        return None
    if one.work != other.work or not _alike(one, other):
        return None
    texts = (f"{one.reserve:g} left", f"{other.reserve:g} left")
    return _Step(*texts, one.reserve - other.reserve, "rir")


def _alike(one: Dose, other: Dose) -> bool:
    """Repetitions, done in the same way: a slower or another kind of set is another matter."""
    way = ("pause", "bands", "chains", "assist", "height", "position", "range_", "intent")
    return (
        isinstance(one.work, Reps)
        and isinstance(other.work, Reps)
        and one.tempo == other.tempo
        and one.each_side == other.each_side
        and all(getattr(one.said, key) == getattr(other.said, key) for key in way)
    )


def _same_task(one: Dose, other: Dose) -> bool:
    """A hold or a walk with the same load, in the same position, against the same push."""
    before, after = one.said, other.said
    return one.load == other.load and all(
        getattr(before, key) == getattr(after, key) for key in ("position", "push", "range_")
    )


def _open(dose: Dose) -> bool:
    return dose.ends_open


_STEPS: dict[RuleName, Callable[[Progress, SlotAt, SlotAt, float, str], _Step | None]] = {
    "linear": _by_mass,
    "two-for-two": _by_mass,
    "double": _by_mass,
    "open-set": _by_mass,
    "hold": _by_seconds,
    "time": _by_clock,
    "distance": _by_metres,
    "reps": _by_count,
    "sets": _by_count,
    "pace": _by_pace,
    "speed": _by_points,
    "effort": _by_reserve,
}
