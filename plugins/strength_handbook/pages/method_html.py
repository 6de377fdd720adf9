"""What a slot's method comes to, as short lines and as parts to open."""

from dataclasses import dataclass

from markupsafe import Markup

from strength_handbook.model.printed import NBSP, count_word, mass, metres, percent
from strength_handbook.model.span import Span
from strength_handbook.pages.method_parts import only_examples, without_examples
from strength_handbook.pages.ramp_html import back_off_html, ladders_html, ramps_html
from strength_handbook.pages.render import safe
from strength_handbook.pages.series_html import series_html
from strength_handbook.pages.set_html import next_html, open_set_html, strips_html
from strength_handbook.plan.broken_sets import BrokenSet, DensityPlan, SetInterval, TimedSets
from strength_handbook.plan.carries import CarryPlan, TeamPlan
from strength_handbook.plan.efforts import EffortLoad, TrainingMax
from strength_handbook.plan.method_plan import Contacts, MachineSettings, method_plan
from strength_handbook.plan.next_written import what_follows
from strength_handbook.plan.progress import next_target
from strength_handbook.plan.remembered import remembered
from strength_handbook.plan.worked import (
    Worked,
    WorkedProgram,
    WorkedSession,
    WorkedSlot,
    WorkedWeek,
)

_OPEN_SET = "What the open set tells"
_UPWARDS = ("Warm-up steps", "Steps of the test")
_SERIES = "Sets in order"
_STRIPS = "Strips"
_ON_PAPER = (_UPWARDS[1], _SERIES, _STRIPS)


@dataclass(frozen=True, slots=True)
class MethodHtml:
    """What stands with a slot beside its load.

    Attributes:
        lines: short sentences.
        parts: title and HTML of what is opened by a tap.
    """

    lines: tuple[str, ...]
    parts: tuple[tuple[str, Markup], ...]

    @property
    def upwards(self) -> tuple[str, ...]:
        """Titles of what leads up to the first set."""
        return _UPWARDS

    @property
    def on_paper(self) -> tuple[str, ...]:
        """Titles of what is a load of the day itself: without it a printed session has none."""
        return _ON_PAPER


@remembered(4096)  # three pages ask for the same slot
def method_html(
    worked: Worked,
    program: WorkedProgram,
    week: WorkedWeek,
    session: WorkedSession,
    slot: WorkedSlot,
) -> MethodHtml:
    """Lines and parts of one slot."""
    units = worked.book.room.units
    plan = method_plan(worked.book, slot, session, week)
    after = what_follows(program, session, slot)
    goal = next_target(slot, after=after, units=units)
    own = {
        name: found
        for name in worked.book.lifters
        if (found := next_target(slot, name, after=after, units=units))
    }
    parts = [
        (_UPWARDS[0], plan.ramps and ramps_html(plan.ramps, slot.scale, units)),
        (_UPWARDS[1], plan.test and ladders_html(plan.test, slot.scale, units)),
        ("After today's top set", plan.back_off and back_off_html(plan.back_off, slot, units)),
        (_SERIES, plan.series and series_html(plan.series, slot.scale, units)),
        (_STRIPS, plan.strips and strips_html(plan.strips, slot.scale, units)),
        (_OPEN_SET, plan.open_set and open_set_html(plan.open_set, units)),
        ("What comes next", goal and next_html(goal, own, slot, units)),
    ]
    lines = (
        plan.machine and _machine(plan.machine),
        _effort(plan.effort) if plan.effort and slot.base else None,
        plan.training_max and _training_max(plan.training_max, units),
        plan.broken and _broken(plan.broken),
        plan.interval and _interval(plan.interval),
        plan.timed and _timed(plan.timed),
        plan.density and _density(plan.density),
        plan.team and _team(plan.team, units),
        plan.carry and _carry(plan.carry),
        plan.contacts and _contacts(plan.contacts),
    )
    return MethodHtml(
        tuple(line for line in lines if line),
        tuple((title, safe(html)) for title, html in parts if html),
    )


def brief(full: MethodHtml) -> MethodHtml:
    """What a session page has of it: nothing that can wait until the page of its loads."""
    parts = [(title, html) for title, html in full.parts if title != _OPEN_SET]
    short = [(title, without_examples(html)) for title, html in parts]
    return MethodHtml(full.lines, tuple((title, safe(html)) for title, html in short if html))


def left_out(full: MethodHtml) -> MethodHtml:
    """What `brief` leaves out."""
    parts = [
        (title, html if title == _OPEN_SET else only_examples(html)) for title, html in full.parts
    ]
    return MethodHtml((), tuple((title, safe(html)) for title, html in parts if html))


def _machine(plan: MachineSettings) -> str:
    set_up = ", ".join(f"{key} {value}" for key, value in plan.settings.items())
    return f"Set: {set_up}." if set_up else ""


def _effort(plan: EffortLoad) -> str:
    if plan.percent is None:
        return "" if plan.reliable else "So many left are hard to judge: begin light."
    sum_ = f"{plan.reps} done and {plan.reserve:g} left"
    slow = ", which are as hard as more at this tempo" if plan.slow else ""
    less = "" if plan.share == 100 else f", and {percent(plan.share)} of that"
    points = percent(plan.percent)
    return f"{sum_}{slow}{less}: about {points} of your best. People guess about one off."


def _training_max(plan: TrainingMax, units: str) -> str:
    text = (
        f"{percent(plan.percent)} of a training max that is {percent(plan.share)} of your best: "
        f"{percent(plan.of_best)} of your best."
    )
    if not plan.by_lifter:
        return text
    each = ", ".join(f"{name} {_whole(grams, units)}" for name, grams in plan.by_lifter.items())
    return f"{text} Training max: {each}."


def _broken(plan: BrokenSet) -> str:
    text = f"{plan.reps} a set, {plan.total} in all, about {_about(plan.seconds)} a set."
    if plan.falling:
        return f"{text} End a part when the next one would not be good."
    return text


def _interval(plan: SetInterval) -> str:
    starts = plan.starts_s
    shown = [*starts[:3], *starts[-1:]] if len(starts) > 4 else starts
    times = ", ".join(clock_face(second) for second in shown[:-1])
    text = f"{times}{' …' if len(starts) > 4 else ','} {clock_face(shown[-1])}".lstrip(", ")
    minutes = max(1, round(plan.total_s / 60))
    line = f"Sets start at {text}; about {minutes}{NBSP}min in all."
    if not plan.fits:
        line += f" One takes about {_about(plan.work_s)}: that does not fit. Ask the coach."
    return line


def _timed(plan: TimedSets) -> str:
    work, rest = (1, plan.ratio) if plan.ratio >= 1 else (1 / plan.ratio, 1)
    parts = f"{round(work * 2) / 2:g}{NBSP}:{NBSP}{round(rest * 2) / 2:g}"
    return f"Work to rest {parts}; about {max(1, round(plan.total_s / 60))}{NBSP}min in all."


def _density(plan: DensityPlan) -> str:
    if isinstance(plan.total, Span):
        return f"About {plan.total:g} are usual in that time; that is no target."
    share = f", {plan.each} each for {count_word(plan.sharing)}" if plan.sharing > 1 else ""
    return f"The pace gives {plan.total} in all{share}. When the pace is lost, the set is over."


def _team(plan: TeamPlan, units: str) -> str:
    text = (
        f"{_whole(plan.total_g, units)} between {count_word(plan.bearers)}: about "
        f"{_whole(plan.each_g, units)} each."
    )
    if plan.changes:
        text += f" They change places {_times(plan.changes)} on the way."
    return text


def _carry(plan: CarryPlan) -> str:
    time = f"about {_about(plan.seconds)}"
    if not plan.lane:
        return f"One walk takes {time}."
    if not plan.lengths:
        return f"Part of the {plan.lane}, {time}."
    lengths = f"{count_word(plan.lengths)} length{'' if plan.lengths == 1 else 's'}"
    more = f" and {metres(plan.more_m)} more" if plan.more_m else ""
    turns = f", {count_word(plan.turns)} turn{'' if plan.turns == 1 else 's'}"
    return f"{lengths.capitalize()} of the {plan.lane}{more}{turns}, {time}."


def _contacts(plan: Contacts) -> str:
    rest = "" if plan.week == plan.slot else f", {plan.session} this session, {plan.week} this week"
    return f"{plan.slot} landings{rest}."


def clock_face(seconds: float) -> str:
    """A moment on the clock, minutes and seconds.

    >>> clock_face(0), clock_face(90)
    ('0:00', '1:30')
    """
    whole = round(seconds)
    return f"{whole // 60}:{whole % 60:02d}"


def _about(seconds: float) -> str:
    """A reckoned time: to five seconds, from two minutes on to a minute."""
    if seconds < 120:
        return f"{max(5, 5 * round(seconds / 5))}{NBSP}s"
    return f"{round(seconds / 60)}{NBSP}min"


def _whole(grams: float, units: str) -> str:
    """A reckoned mass: whole kilograms or pounds."""
    gram = 1000 if units == "kg" else 453.59237
    return mass(round(grams / gram) * gram, units)


def _times(number: int) -> str:
    return {1: "once", 2: "twice"}.get(number, f"{count_word(number)} times")
