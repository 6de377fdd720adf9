"""Rules that ask for more of the same: longer, further, more repetitions or sets, or faster."""

from collections.abc import Callable
from dataclasses import replace
from math import inf

from strength_handbook.model.dose import Clock, Distance, Dose, Hold
from strength_handbook.model.load import Load, PercentOfBase
from strength_handbook.model.pace import PaceOfBest
from strength_handbook.model.printed import far_text
from strength_handbook.model.progress import time_text
from strength_handbook.model.span import between, ends, moved
from strength_handbook.plan.next_case import Case, Outcome, capital
from strength_handbook.plan.next_load import LoadMove
from strength_handbook.plan.next_written import next_number

_HARDER = "more load or a longer position, and begin shorter"
_FASTER = "go faster, and begin shorter"


def hold(case: Case) -> tuple[Outcome, ...]:
    """So many seconds longer."""
    done, rule = "Every hold complete, breathing steadily", case.rule
    return _more(case, done, _hold_s, rule.step_time, rule.cap_time, "{:g} s".format, _HARDER)


def time(case: Case) -> tuple[Outcome, ...]:
    """So much longer by the clock."""
    done, rule = _done(case, "Every set done to the end of its time"), case.rule
    advice = _FASTER if case.slot.dose.going else "more load, and begin shorter"
    return _more(case, done, _clock_s, rule.step_time, rule.cap_time, _times, advice)


def distance(case: Case) -> tuple[Outcome, ...]:
    """So much further."""
    done, rule = _done(case, "Every walk without setting down"), case.rule
    work = case.slot.dose.work
    like = work.metres if isinstance(work, Distance) else None
    advice = _FASTER if case.slot.dose.going else "more load, and begin shorter"
    return _more(
        case, done, _metres, rule.step_distance, rule.cap_distance,
        lambda metres: far_text(metres, like=like), advice,
    )  # fmt: skip


def reps(case: Case) -> tuple[Outcome, ...]:
    """So many repetitions more in each set."""
    done, rule = _done(case, "Every set done"), case.rule
    return _more(
        case, done, _reps, rule.step_reps, rule.cap_reps, _counted("repetition"),
        "more load, and begin lower",
    )  # fmt: skip


def sets(case: Case) -> tuple[Outcome, ...]:
    """So many sets or pieces more."""
    done, rule = _done(case, "Every set done"), case.rule
    what = "piece" if case.slot.dose.going else "set"
    return _more(
        case, done, _sets, rule.step_sets, rule.cap_sets, _counted(what),
        "go faster, and begin with fewer" if case.slot.dose.going
        else "more load, and begin with fewer",
    )  # fmt: skip


def pace(case: Case) -> tuple[Outcome, ...]:
    """So many seconds faster over what paces are counted over."""
    step, dose = case.rule.step_pace or 0.0, case.slot.dose
    per = f" for {dose.going.per}" if dose.going and dose.going.per else ""

    def faster(load: Load | None) -> Load | None:
        if not isinstance(load, PaceOfBest):
            return None
        return PaceOfBest(moved(load.seconds, -step, least=-inf))

    return _quicker(case, faster, f"{step:g} s faster{per}.")


def speed(case: Case) -> tuple[Outcome, ...]:
    """So many points of a best speed or power more."""
    points = case.rule.step_percent or 0.0

    def faster(load: Load | None) -> Load | None:
        if not isinstance(load, PercentOfBase):
            return None
        return PercentOfBase(moved(load.percent, points))

    return _quicker(case, faster, f"{points:g} points more.")


def _quicker(
    case: Case, faster: Callable[[Load | None], Load | None], plain: str
) -> tuple[Outcome, ...]:
    """What is gone at next; in words alone where today's refers to no best."""
    dose, later = case.slot.dose, case.following.dose if case.following else None
    one = dose.sets.high == 1
    done = f"{'Done' if one else 'Every piece'} at its pace, the {_LAST[one]}"
    load = faster(dose.load)
    if load is None:
        return Outcome(done, plain), case.again()
    written = later.load if later is not None and type(later.load) is type(load) else load
    text = next_number(case.slot, case.following, load.text, written.text if written else "")
    following = later if later is not None and later.load == written else dose
    asked = replace(following, load=written)
    return Outcome(done, capital(text), move=LoadMove("pace"), dose=asked), case.again()


_LAST = {True: "end no slower than the beginning", False: "last no slower than the first"}


def _more(
    case: Case,
    done: str,
    of: Callable[[Dose], float | None],
    step: float | None,
    cap: float | None,
    text: Callable[[float], str],
    advice: str,
) -> tuple[Outcome, ...]:
    """The next amount, up to a cap.

    Args:
        case: the slot and its rule.
        done: the result that everybody hopes for.
        of: the amount that a dose asks; None where it asks none of the kind.
        step: how much more.
        cap: the most, or None.
        text: an amount in words.
        advice: what comes after the most.
    """
    now, by, again = of(case.slot.dose), step or 0, case.again()
    if now is None:
        return Outcome(done, f"{text(by)} more.", case.today), again
    most = ends(now)[1] if cap is None else max(cap, ends(now)[1])
    longer = moved(now, by)
    if cap is not None:
        longer = between(*(min(end, most) for end in ends(longer)))
    later = of(case.following.dose) if case.following else None
    written = longer if later is None else later
    if cap is not None and ends(now)[1] >= cap and written == longer:
        be = "are" if text(cap).endswith(("sets", "pieces", "repetitions")) else "is"
        return Outcome(done, f"{text(cap)} {be} enough: {advice}."), again
    return case.written(done, text(longer), text(written)), again


def _done(case: Case, other: str) -> str:
    dose = case.slot.dose
    planned = "" if dose.reserve is None else ", at or under the planned effort"
    if dose.going is None:
        return f"{other}{planned}"
    one = dose.sets.high == 1
    return f"{'Done' if one else 'Every piece done'}, the {_LAST[one]}{planned}"


def _hold_s(dose: Dose) -> float | None:
    return dose.work.seconds if isinstance(dose.work, Hold) else None


def _clock_s(dose: Dose) -> float | None:
    return dose.work.seconds if isinstance(dose.work, Clock) else None


def _metres(dose: Dose) -> float | None:
    return dose.work.metres if isinstance(dose.work, Distance) else None


def _reps(dose: Dose) -> float | None:
    count = None if dose.series else dose.reps
    return None if count is None else between(count.low, count.high)


def _sets(dose: Dose) -> float | None:
    return None if dose.series else between(dose.sets.low, dose.sets.high)


def _times(seconds: float) -> str:
    low, high = ends(seconds)
    return time_text(low) if low == high else f"{time_text(low)} to {time_text(high)}"


def _counted(what: str) -> Callable[[float], str]:
    """So many of something, in words."""
    return lambda many: f"{many:g} {what}" + ("" if many == 1 else "s")
