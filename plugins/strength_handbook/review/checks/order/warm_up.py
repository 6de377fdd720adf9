"""Does the warm-up lead up to the first heavy or fast set?"""

import re
from collections.abc import Iterator

from strength_handbook.model.load import FixedLoad
from strength_handbook.model.loading import OnBar
from strength_handbook.plan.reference import is_estimate
from strength_handbook.reading.problem import Severity
from strength_handbook.reading.source import Plain
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SessionAt, SlotAt
from strength_handbook.review.fatigue import is_jump, is_quick, reckoned_percent
from strength_handbook.review.finding import Edit, Finding, Mending, Spot
from strength_handbook.review.lighter import is_light
from strength_handbook.review.words import clock, number

_RAMP = re.compile(
    r"\bramp|\b(?:build|work)(?:ing)? up\b|\blight(?:er)? sets?\b|\bwarm-up sets?\b|\bempty bar\b"
    r"|\badd(?:ing)? plates?\b",
    re.IGNORECASE,
)
_SPRING = re.compile(r"\bjump|\bhop|\bskip|\bbound|\bstep(?:ping)?[- ]?ups?\b|\bstep up\b", re.I)
_STRETCH = re.compile(r"\bstretch(?:es|ing)?\b", re.IGNORECASE)
_LASTS = re.compile(
    r"(?:(\d+)\s*[x×]\s*)?(\d+(?:\.\d+)?)\s*(s|secs?|seconds?|min|mins|minutes?)\b", re.IGNORECASE
)


@check(
    "ramp-missing",
    Family.ORDER,
    Severity.WARN,
    what="The first heavy lift of a movement, or a jump, in a session whose warm-up says nothing "
    "of lighter sets (or easy jumps) and for which the pages print no warm-up steps.",
    why="The first heavy or fast set on cold legs is the worst of the day.",
    rules=("heavy-lift",),
)
def ramp_missing(this: Check, desk: Desk) -> Iterator[Finding]:
    """Heavy or fast from the first set on."""
    for session, slots in desk.slots_by_session():
        warm_up = " ".join(session.session.session.warm_up)
        for index, at in enumerate(slots):
            jump = is_jump(at.slot)
            known = _RAMP.search(warm_up) or (jump and _SPRING.search(warm_up))
            if known or _readied(slots[:index], at) or not (jump or _unready(desk, at)):
                continue
            if jump:
                text = "the first jump of the day, and the warm-up has no easy one"
                line = "Two easy jumps or fast step-ups."
            else:
                text = (
                    f"begins at {number(reckoned_percent(at.slot))} %, and the warm-up has no "
                    f"lighter sets; from {number(desk.rule('heavy-lift'))} % on they are needed"
                )
                line = "Two lighter sets before the first heavy one."
            yield this.finds(at, text, spot=_warm_up_spot(session), change=_add(session, line))


@check(
    "stretch-long",
    Family.ORDER,
    Severity.NOTE,
    what="Still stretches in the warm-up that are longer than the limit, where speed, jumps or a "
    "heavy lift come after.",
    why="A long still stretch costs a little force and speed for a while.",
    rules=("stretch-most", "heavy-lift"),
    source="textbook, Haff and Triplett 2016, from memory",
)
def stretch_long(this: Check, desk: Desk) -> Iterator[Finding]:
    """Long stretches before what needs force."""
    most, heavy = desk.rule("stretch-most"), desk.rule("heavy-lift")
    for session, slots in desk.slots_by_session():
        needs = any(
            is_quick(at.slot, deload=is_light(session)) or reckoned_percent(at.slot) >= heavy
            for at in slots
        )
        for index, line in enumerate(session.session.session.warm_up):
            seconds = _stretched(line)
            if needs and seconds > most:
                had = f"a stretch of {clock(seconds)} before fast or heavy work"
                text = f"{had}; at most {clock(most)}"
                change = Mending("stretch for a shorter time, or after the last exercise")
                spot = Spot(session.wave, (*session.path, "warm-up", index))
                yield this.finds(session, text, spot=spot, change=change)


def _unready(desk: Desk, at: SlotAt) -> bool:
    """True for a heavy lift whose pages print no steps that lead up to it."""
    slot = at.slot
    if slot.dose.top is not None or slot.dose.said.test is not None:
        return False
    if reckoned_percent(slot) < desk.rule("heavy-lift"):
        return False
    loading = slot.exercise.load
    on_bar = isinstance(loading, OnBar) and loading.hands is None and slot.scale is not None
    known = isinstance(slot.dose.load, FixedLoad) or (
        slot.base is not None and not is_estimate(slot.dose)
    )
    return not (slot.exercise.role == "main" and on_bar and known)


def _readied(before: tuple[SlotAt, ...], at: SlotAt) -> bool:
    return any(one.slot.exercise.pattern is at.slot.exercise.pattern for one in before)


def _warm_up_spot(session: SessionAt) -> Spot:
    path = (*session.path, "warm-up")
    return Spot(session.wave, path) if path in session.wave.marks else session.spot


def _add(session: SessionAt, line: str) -> Mending:
    path = (*session.path, "warm-up")
    lines: list[Plain] = [*session.session.session.warm_up, line]
    return Mending(f"add '{line}' to its warm-up", (Edit(session.wave.file, path, lines),))


def _stretched(line: str) -> float:
    """Seconds of stretching that a line asks for; 0 where it asks for none.

    >>> _stretched("Stretch each calf, 2 x 45 s."), _stretched("Carry the stretcher for 2 minutes.")
    (90.0, 0.0)
    """
    if not _STRETCH.search(line):
        return 0.0
    return max(
        (
            float(times or 1) * float(value) * (60 if unit.lower().startswith("m") else 1)
            for times, value, unit in _LASTS.findall(line)
        ),
        default=0.0,
    )
