"""What tires and what needs freshness: sets near the limit, and work that is done for speed."""

from strength_handbook.calc.repetitions import percent_for_reps
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Clock, Distance, Hold, Reps, StripSet
from strength_handbook.model.load import PercentOfBodyMass, RepMax
from strength_handbook.model.span import ends
from strength_handbook.model.words import Hazard, Muscle, Pattern
from strength_handbook.plan.reference import is_estimate
from strength_handbook.plan.worked import WorkedSlot
from strength_handbook.review.words import clock, number

SHORT_HOLD_S = 10.0
"""A shorter hold, such as a push against pins, readies more than it tires."""

CHART_END = 15
"""The chart of repetitions and percentages ends there."""

EASY_EFFORT, LIGHT_CARRY_PERCENT = 4.0, 15.0
"""RPE of work that tires nothing, and percent of body mass of a carry that leaves the grip fresh.
Common practice, no source."""

QUICK_REPS, QUICK_RESERVE, QUICK_PERCENT = 4, 4.0, 75.0
"""Sets so short, so easy and so light are done for speed. Power is trained at 30 to 70 % (position
stand 2026, seen in summaries); the rest is common practice, no source."""


def reckoned_percent(slot: WorkedSlot) -> float:
    """Percent of the best single, 0 where nobody knows it.

    What is only estimated from the effort counts for main lifts.
    """
    if is_estimate(slot.dose) and slot.exercise.role != "main":
        return 0.0
    return slot.heaviest_percent or 0.0


def left(slot: WorkedSlot) -> float | None:
    """Good repetitions left after a set: as written, or by the load; None where nobody knows."""
    dose = slot.dose
    if dose.fewest_left is not None:
        return dose.fewest_left
    if not isinstance(dose.work, Reps):
        return None
    if isinstance(dose.load, RepMax) and dose.load.percent == 100:
        return float(max(0, dose.load.reps - dose.work.count.high))
    if slot.reps_possible is None or is_estimate(dose) or is_quick(slot):
        return None
    return float(max(0, int(slot.reps_possible.middle) - dose.work.count.high))


def leaves_more(slot: WorkedSlot, most: float) -> bool:
    """True where a set surely leaves more good repetitions than some number.

    The larger of what is written and what the load leaves counts: whoever writes a cautious
    'RIR 4' at 65 % has far more left. People differ in repetitions at one percentage, so the load
    has to leave twice as many.
    """
    if slot.series:
        return all(leaves_more(one, most) for one in slot.series)
    dose, chart = slot.dose, slot.reps_possible
    if dose.fewest_left is not None and dose.fewest_left > most:
        return True
    if not isinstance(dose.work, Reps) or is_estimate(dose):
        return False
    if chart is None:  # lighter than the end of the chart, or no percentage at all
        heaviest = slot.heaviest_percent
        beyond = heaviest is not None and heaviest < percent_for_reps(CHART_END)
        return beyond and CHART_END - dose.work.count.high > 2 * most
    return int(chart.middle) - dose.work.count.high > 2 * most


def is_easy_hold(slot: WorkedSlot) -> bool:
    """True for holds without a load that are far from the limit, such as a stand on one leg."""
    dose = slot.dose
    unloaded = slot.exercise.load.kind in ("effort", "body-weight") and dose.load is None
    easy = dose.fewest_left is not None and 10 - dose.fewest_left <= EASY_EFFORT
    return isinstance(dose.work, Hold) and unloaded and easy and dose.said.push is None


def is_light_carry(slot: WorkedSlot) -> bool:
    """True for carries so light that no hand opens: little of body mass, and no effort named."""
    load, reserve = slot.dose.load, slot.dose.fewest_left
    easy = reserve is None or 10 - reserve <= EASY_EFFORT
    light = isinstance(load, PercentOfBodyMass) and ends(load.percent)[1] <= LIGHT_CARRY_PERCENT
    return slot.exercise.pattern is Pattern.CARRY and light and easy


def near_limit(book: Book, slot: WorkedSlot) -> str:
    """What makes a slot tire its muscles, in words: ``leaves 1 in reserve``; empty if nothing."""
    if slot.series:
        return next((found for one in slot.series if (found := near_limit(book, one))), "")
    dose, reserve = slot.dose, left(slot)
    most_left = book.rule("tired-reserve")
    if dose.said.test is not None:
        return "is a test"
    match dose.work:
        case StripSet():
            return "is a strip set"
        case Hold() if dose.work.longest_s < SHORT_HOLD_S:
            return ""
        case Hold() | Clock() | Distance() if reserve is not None and reserve <= most_left:
            return f"ends at RPE {number(10 - reserve)}"
        case Hold() if dose.work.longest_s >= book.rule("tired-hold"):
            hard = reserve is None or 10 - reserve >= book.rule("hard-hold-effort")
            return f"lasts {clock(dose.work.longest_s)}" if hard else ""
        case Hold() | Clock() | Distance():
            return ""
        case Reps(count) if count.open or dose.last_set is not None:
            return "has an open set"
        case _ if reserve is not None and reserve <= most_left:
            return f"leaves {number(reserve)} in reserve"
        case _:
            return ""


def is_jump(slot: WorkedSlot) -> bool:
    """True for jumps and whatever else is landed."""
    landing = slot.dose.going is None and Hazard.IMPACT in slot.exercise.hazards
    return slot.exercise.pattern is Pattern.JUMP or landing


def is_quick(slot: WorkedSlot, *, deload: bool = False) -> bool:
    """True for work that is done for speed: jumps, fast sets on an interval, short easy fast sets.

    A heavy lift that is only meant to go up fast is none; neither is a swing that nobody calls
    fast, since many end a session with it. In a deload short easy sets are meant to be easy.
    """
    dose = slot.dose
    if is_jump(slot) or dose.said.intent == "fast":
        return True
    if not dose.fast or dose.reps is None or dose.said.test is not None:
        return False
    if dose.every is not None:
        return True
    easy = dose.fewest_left is None or dose.fewest_left >= QUICK_RESERVE
    light = slot.percent is not None and (slot.heaviest_percent or 0.0) <= QUICK_PERCENT
    from_effort = is_estimate(dose) and dose.reserve is not None
    return not deload and easy and (light or from_effort) and dose.reps.high <= QUICK_REPS


def shared(one: WorkedSlot, other: WorkedSlot) -> tuple[str, ...]:
    """Muscles that both work directly, in the handbook's order."""
    both = set(one.exercise.muscles.direct) & set(other.exercise.muscles.direct)
    return tuple(muscle.value for muscle in Muscle if muscle in both)


def named(words: tuple[str, ...]) -> str:
    """A list in a sentence.

    >>> named(("quads",)), named(("quads", "glutes", "calves"))
    ('quads', 'quads, glutes and calves')
    """
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"
