"""What is done only with the coach in the room."""

from collections.abc import Iterator

from strength_handbook.model.load import PercentOfBase, PercentOfSystem
from strength_handbook.model.words import Hazard, Muscle
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.dangers import reaches_percent
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.words import number


@check(
    "needs-coach",
    Family.SAFETY,
    Severity.ERROR,
    what="Tests and sets above the limit, a partner's hands on the neck, and bands on a lift that "
    "had none before, against sessions that are optional or not supervised.",
    why="These need somebody who watches, and in such a session nobody has to be there.",
    rules=("near-max",),
)
def needs_coach(this: Check, desk: Desk) -> Iterator[Finding]:
    """Optional or unsupervised sessions with something that needs the coach."""
    shown: set[tuple[str, str]] = set()
    for at in desk.slots:
        session = at.session.session
        with_bands = _banded(at)
        if session.supervised and not session.optional:
            if with_bands:
                shown.add((at.program.id, at.slot.exercise_id))
            continue
        kind = "optional" if session.optional else "unsupervised"
        asks, limit = _percent(desk, at)
        if asks:
            change = _lighter(desk, at) or _moved(at)
            spot = at.spot_of("test", "top", "load")
            yield this.finds(at, f"{asks} in an {kind} session; {limit}", spot=spot, change=change)
        if _neck(at):
            text = f"a partner's hands on the neck in an {kind} session"
            yield this.finds(at, text, spot=at.spot_of("exercise"), change=_moved(at))
        if with_bands and (at.program.id, at.slot.exercise_id) not in shown:
            shown.add((at.program.id, at.slot.exercise_id))
            text = f"bands for the first time, in an {kind} session"
            spot = at.spot_of("bands", "assist")
            yield this.finds(at, text, spot=spot, change=_moved(at))


def _banded(at: SlotAt) -> bool:
    said = at.slot.dose.said
    return said.bands is not None or (said.assist is not None and said.assist.band is not None)


def _neck(at: SlotAt) -> bool:
    exercise = at.slot.exercise
    by_hand = Hazard.PARTNER_CONTACT in exercise.hazards
    return by_hand and Muscle.NECK in (*exercise.muscles.direct, *exercise.muscles.helping)


def _percent(desk: Desk, at: SlotAt) -> tuple[str, str]:
    """What is above the limit and the limit, in words; empty where nothing is."""
    percent, limit = reaches_percent(at.slot), desk.rule("near-max")
    if percent is None or percent <= limit:
        return "", ""
    test, most = at.slot.dose.said.test, f"at most {number(limit)} % without the coach"
    if test is not None:
        return f"a {test.rm}RM test", f"that is {number(percent)} % of the best single; {most}"
    return f"{number(percent)} % of the best single", most


def _lighter(desk: Desk, at: SlotAt) -> Mending | None:
    """The load at the limit, where a plain percentage is what is too heavy."""
    dose, limit = at.slot.dose, number(desk.rule("near-max"))
    if dose.said.test is not None or dose.top is not None:
        return None
    match dose.load:
        case PercentOfBase():
            load = f"{limit} %"
        case PercentOfSystem():
            load = f"{limit} % system"
        case _:
            return None
    return Mending(f"write '@ {load}'", at.rewritten(load=load))


def _moved(at: SlotAt) -> Mending:
    """Another session of the same week with the coach, by its name."""
    others = [
        one.id
        for one in at.week.sessions
        if one.session.supervised and not one.session.optional
    ]  # fmt: skip
    where = f"'{others[0]}'" if others else "a session that is neither optional nor unsupervised"
    return Mending(f"move it to {where}, where the coach is in the room")
