"""What happens next: the rule of a slot, with its numbers, in plain words."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from strength_handbook.dose.series import series_text
from strength_handbook.model.load import FixedLoad
from strength_handbook.model.loading import BodyWeightLift, PushUp
from strength_handbook.model.progress import RuleName
from strength_handbook.model.quantities import in_unit
from strength_handbook.model.span import moved
from strength_handbook.plan import next_amount
from strength_handbook.plan.loads import PlannedLoad, achieved
from strength_handbook.plan.next_case import Case, Outcome, times
from strength_handbook.plan.next_load import LARGE_JUMP, LoadMove, NextLoad
from strength_handbook.plan.next_written import NOTHING, Following, instead_of_rule, next_number
from strength_handbook.plan.worked import WorkedSlot


@dataclass(frozen=True, slots=True)
class NextTarget:
    """What happens next by a slot's rule.

    Attributes:
        rule: its name.
        outcomes: each result with what follows; the first one is what everybody hopes for.
        warning: what stands in the way of the rule's step, or empty.
    """

    rule: str
    outcomes: tuple[Outcome, ...]
    warning: str = ""


def next_target(
    slot: WorkedSlot,
    lifter: str | None = None,
    *,
    after: Following = NOTHING,
    units: str = "kg",
) -> NextTarget | None:
    """What happens next by the rule of a slot; None where it has no rule.

    Args:
        slot: the slot as it is done today.
        lifter: an example lifter whose loads are to be given, or None for the rule alone.
        after: what comes after it in its program, for rules that follow that.
        units: unit that the pages print.
    """
    rule = slot.slot.progress
    if rule is None:
        return None
    today = slot.loads.get(lifter) if lifter else _for_everybody(slot, units)
    later = after.slot.loads.get(lifter) if after.slot and lifter else None
    case = Case(slot, rule, NextLoad(slot, today, units), after.slot, later)
    planned = instead_of_rule(slot, after.slot, rule.rule)
    outcomes = _RULES[rule.rule](case)
    if planned:
        outcomes = (Outcome("Done as planned", planned, case.later, LoadMove("later")),)
    elif after.ends:
        outcomes = (Outcome("Done as planned", after.ends),)
    steps = any(one.move is not None and one.move.kind == "up" for one in outcomes)
    warning = case.next.warning(rule.step) if steps else ""
    return NextTarget(rule.rule, outcomes, warning)


def _for_everybody(slot: WorkedSlot, units: str) -> PlannedLoad | None:
    """The load of a dose that says its mass; None where it depends on who lifts."""
    load = slot.dose.load
    if not isinstance(load, FixedLoad) or isinstance(slot.exercise.load, BodyWeightLift | PushUp):
        return None
    return achieved(load.mass.grams, slot.scale, 0.0, 0.0, units)


def _linear(case: Case) -> tuple[Outcome, ...]:
    limit = "" if case.slot.dose.reserve is None else ", at or under the planned effort"
    return case.more(f"Every set done{limit}"), case.again(), case.less()


def _two_for_two(case: Case) -> tuple[Outcome, ...]:
    """Two over the goal in the last set of two sessions: Sheppard and Triplett 2016, ch. 17."""
    reps = case.slot.dose.reps
    goal = "Two more than asked" if reps is None else f"{reps.high + 2} or more"
    return case.more(f"{goal} in the last set, two sessions in a row"), case.again()


def _double(case: Case) -> tuple[Outcome, ...]:
    reps = case.slot.dose.reps
    end = "the top of the range" if reps is None else f"{reps.high}"
    begin = f" Begin again at {reps.low}." if reps and reps.low < reps.high else ""
    up = case.more(f"Every set reaches {end}")
    again = case.again(then="The same load, one repetition more where you can.")
    return replace(up, then=up.then + begin), again


def _open_set(case: Case) -> tuple[Outcome, ...]:
    """Over the floor by 0 or 1: the same; by 2 to 4: a step; by 5 and more: two.

    Common practice, no source.
    """
    dose = case.slot.dose.alike[-1]
    reps, last = dose.reps, dose.last_set
    floor = last.floor if last else (reps.low if reps else 1)
    cap = last.cap if last else (dose.said.cap or floor + 5)
    found = []
    if cap >= floor + 5:
        found.append(case.more(f"{floor + 5} or more", steps=2))
    if cap >= floor + 2:
        high = min(cap, floor + 4)
        found.append(case.more(f"{floor + 2} to {high}" if high > floor + 2 else f"{high}"))
    found.append(case.again(f"{floor} or {floor + 1}"))
    return (
        *found,
        replace(case.less(), when=f"Under {floor}, {times(case.rule.misses)} in a row"),
    )


def _speed(case: Case) -> tuple[Outcome, ...]:
    if case.slot.dose.going is not None:
        return next_amount.speed(case)
    points, percent, today = case.rule.step_percent or 0.0, case.slot.percent, case.today
    then, load, move = f"{points:g} points more.", None, None
    if percent is not None:
        following = case.following
        written = following.percent if following and following.percent else percent + points
        now = f"{percent + points:g} %"
        then = next_number(case.slot, following, now, f"{written:g} %")
        move = LoadMove("percent", written)
        if today is not None and today.reference_g:
            load = case.next.at(today.reference_g * written / 100 - today.body_g)
    return (
        Outcome("Every repetition fast, by a partner's eye or the sound", then, load, move),
        case.again("One slow", "Stop these sets for today. The same next time."),
    )


def _effort(case: Case) -> tuple[Outcome, ...]:
    now = case.slot.dose.reserve
    then = case.following.dose.reserve if case.following else (moved(now, -1) if now else None)
    if now is None or then is None or then >= now:
        return (Outcome("Every set done", "The same load, one repetition closer to the limit."),)
    text = f"The same load, {then:g} left instead of {now:g}."
    move = LoadMove("heavier") if case.following else None
    outcome = Outcome("Every set done at the planned effort", text, case.today, move)
    today, later = case.today, case.later
    if today and later and today.actual_g and later.actual_g and later.actual_g > today.actual_g:
        more = in_unit(later.actual_g - today.actual_g, case.next.units)
        text = f"{then:g} left instead of {now:g}: about {more} {case.next.units} more."
        return (replace(outcome, then=text, load=later),)
    return (outcome,)


def _listed(case: Case) -> tuple[Outcome, ...]:
    following = case.following
    if following is None:
        return (Outcome("Done as planned", "It ends here. Ask the coach."),)
    load, jump = following.dose.load, _jump(case.slot, following)
    says = series_text(following.dose) or (load and load.text)
    then = f"The next week says {says}." if says else "As the next week says."
    if jump > LARGE_JUMP:
        then += f" That is {jump:.0f} % more load: a large step."
    return (Outcome("Done as planned", then, case.later, LoadMove("later")),)


def _jump(today: WorkedSlot, following: WorkedSlot) -> float:
    """Percent by which the load goes up; 0 where it is not said as a percentage of the same."""
    before, after = (getattr(slot.dose.load, "percent", None) for slot in (today, following))
    if not before or not after or type(today.dose.load) is not type(following.dose.load):
        return 0.0
    return float(100 * (after / before - 1))


_RULES: dict[RuleName, Callable[[Case], tuple[Outcome, ...]]] = {
    "linear": _linear,
    "two-for-two": _two_for_two,
    "double": _double,
    "listed": _listed,
    "open-set": _open_set,
    "hold": next_amount.hold,
    "time": next_amount.time,
    "distance": next_amount.distance,
    "reps": next_amount.reps,
    "sets": next_amount.sets,
    "pace": next_amount.pace,
    "effort": _effort,
    "speed": _speed,
}
