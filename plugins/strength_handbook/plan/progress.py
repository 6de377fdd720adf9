"""What happens next: the rule of a slot, with its numbers, in plain words."""

from bisect import bisect_right
from dataclasses import dataclass, replace
from itertools import pairwise

from strength_handbook.model.dose import Distance, Hold
from strength_handbook.model.load import FixedLoad
from strength_handbook.model.loading import OnMachine
from strength_handbook.model.progress import Progress
from strength_handbook.model.quantities import in_unit
from strength_handbook.plan.loads import PlannedLoad, achieved
from strength_handbook.plan.scales import Scale
from strength_handbook.plan.worked import WorkedProgram, WorkedSession, WorkedSlot

LARGE_JUMP = 10.0
"""Percent above which a step is a jump. Common practice, no source."""

BACK = 0.9
"""Share of the load to go back to after misses. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """One result and what follows from it.

    Attributes:
        when: the result, as a clause: 'Every set done at the planned effort'.
        then: what to do next time.
        load: the load of the next time, where it is known.
    """

    when: str
    then: str
    load: PlannedLoad | None = None


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


def following_slot(
    program: WorkedProgram, session: WorkedSession, slot: WorkedSlot
) -> WorkedSlot | None:
    """The same slot the next time it is done; None after its last time."""
    for week in program.weeks:
        for later in week.sessions:
            if later.week <= session.week or later.id != session.id:
                continue
            for one in later.slots:
                if (one.order, one.exercise_id) == (slot.order, slot.exercise_id):
                    return one
    return None


def next_target(
    slot: WorkedSlot,
    lifter: str | None = None,
    *,
    following: WorkedSlot | None = None,
    units: str = "kg",
) -> NextTarget | None:
    """What happens next by the rule of a slot; None where it has no rule.

    Args:
        slot: the slot as it is done today.
        lifter: an example lifter whose loads are to be given, or None for the rule alone.
        following: the same slot the next time, for rules that follow the program.
        units: unit that the pages print.
    """
    rule = slot.slot.progress
    if rule is None:
        return None
    today = slot.loads.get(lifter) if lifter else None
    ways = _Ways(slot, rule, today, units)
    match rule.rule:
        case "linear":
            outcomes = ways.linear()
        case "two-for-two":
            outcomes = ways.two_for_two()
        case "double":
            outcomes = ways.double()
        case "open-set":
            outcomes = ways.open_set()
        case "hold":
            outcomes = ways.hold()
        case "distance":
            outcomes = ways.distance()
        case "speed":
            outcomes = ways.speed()
        case "effort":
            outcomes = ways.effort(following, lifter)
        case "listed":
            outcomes = ways.listed(following, lifter)
    return NextTarget(rule.rule, outcomes, ways.warning())


@dataclass(frozen=True, slots=True)
class _Ways:
    """The outcomes of each rule, for one slot and one lifter."""

    slot: WorkedSlot
    rule: Progress
    today: PlannedLoad | None
    units: str

    def linear(self) -> tuple[Outcome, ...]:
        limit = "" if self.slot.dose.reserve is None else ", at or under the planned effort"
        return (
            self._more(f"Every set done{limit}"),
            Outcome("One miss", "The same again.", self.today),
            self._less(f"{_times(self.rule.misses)} missed in a row"),
        )

    def two_for_two(self) -> tuple[Outcome, ...]:
        goal = self.slot.dose.reps.high if self.slot.dose.reps else None
        target = "two more than asked" if goal is None else f"{goal + 2} or more"
        return (
            self._more(f"{target[0].upper()}{target[1:]} in the last set, two sessions in a row"),
            Outcome("Otherwise", "The same again.", self.today),
        )

    def double(self) -> tuple[Outcome, ...]:
        reps = self.slot.dose.reps
        if reps is None:
            return (self._more("Every set reaches the top of the range"),)
        begin = "" if reps.low == reps.high else f" Begin again at {reps.low}."
        up = self._more(f"Every set reaches {reps.high}")
        return (
            replace(up, then=up.then + begin),
            Outcome("Otherwise", "The same load, one more where you can.", self.today),
        )

    def open_set(self) -> tuple[Outcome, ...]:
        last = self.slot.dose.last_set
        reps = self.slot.dose.reps
        floor = last.floor if last else (reps.low if reps else 1)
        cap = last.cap if last else (self.slot.dose.said.cap or floor + 5)
        rows = [
            self._less(f"Fewer than {floor}, {_times(self.rule.misses).lower()} in a row"),
            Outcome(f"{floor} or {floor + 1}", "The same again.", self.today),
        ]
        if cap >= floor + 2:
            high = min(cap, floor + 4)
            run = f"{floor + 2} to {high}" if high > floor + 2 else f"{high}"
            rows.append(self._more(run))
        if cap >= floor + 5:
            rows.append(self._more(f"{floor + 5} or more", steps=2))
        return (*rows[2:], *rows[1::-1])

    def hold(self) -> tuple[Outcome, ...]:
        work, step, cap = self.slot.dose.work, self.rule.step_time or 0.0, self.rule.cap_time
        done = "Every hold complete, breathing steadily"
        again = Outcome("Otherwise", "The same time again.", self.today)
        if not isinstance(work, Hold):
            return (Outcome(done, f"{step:g} s more."), again)
        longer = work.seconds + step
        if cap is not None and longer > cap:
            then = (
                f"{cap:g} s is the longest: add load, or take a longer position, and begin lower."
            )
            return (Outcome(done, then), again)
        end = "" if cap is None else f" Up to {cap:g} s."
        return (Outcome(done, f"{longer:g} s.{end}", self.today), again)

    def distance(self) -> tuple[Outcome, ...]:
        work, step = self.slot.dose.work, self.rule.step_distance or 0.0
        further = f"{step:g} m more."
        if isinstance(work, Distance):
            further = f"{work.metres + step:g} m."
        return (
            Outcome("Every walk without setting down", further, self.today),
            Outcome("Otherwise", "The same way again.", self.today),
        )

    def speed(self) -> tuple[Outcome, ...]:
        points, percent = self.rule.step_percent or 0.0, self.slot.percent
        then = f"{points:g} points more."
        load = None
        if percent is not None:
            then = f"{percent + points:g} %."
            if self.today is not None and self.today.reference_g:
                wanted = self.today.reference_g * (percent + points) / 100 - self.today.body_g
                load = self._at(wanted)
        return (
            Outcome("Every repetition fast, by a partner's eye or the sound", then, load),
            Outcome("One slow", "Stop these sets for today. Next time the same.", self.today),
        )

    def effort(self, following: WorkedSlot | None, lifter: str | None) -> tuple[Outcome, ...]:
        now, then = self.slot.dose.reserve, None
        if following is not None:
            then = following.dose.reserve
        elif now:
            then = now - 1
        if now is None or then is None or then >= now:
            return (
                Outcome("Every set done", "The same load, one repetition closer to the limit."),
            )
        load = self.today
        if load is None and following is not None and lifter:
            load = following.loads.get(lifter)
        text = f"The same load, with {then:g} left instead of {now:g}."
        return (Outcome("Every set done at the planned effort", text, load),)

    def listed(self, following: WorkedSlot | None, lifter: str | None) -> tuple[Outcome, ...]:
        if following is None:
            return (Outcome("After this time", "The program ends here. Ask the coach."),)
        load = following.dose.load
        then = "As the next week says."
        if load is not None:
            then = f"The next week says {load.text}."
        one = following.loads.get(lifter) if lifter else None
        return (Outcome("Done as planned", then, one),)

    def warning(self) -> str:
        """What stands in the way of a step by mass."""
        step, scale = self.rule.step, self.slot.scale
        if step is None:
            return ""
        if isinstance(self.slot.exercise.load, OnMachine):
            return "This machine has its own units: take its smallest step instead."
        if scale is None or len(scale.steps) < 2:
            return f"Nothing here goes up by {step.label}: the coach shows what is harder."
        grams = None if self.today is None else self.today.actual_g
        if grams is None and isinstance(self.slot.dose.load, FixedLoad):
            grams = self.slot.dose.load.mass.grams
        gap = gap_above(scale, grams)
        if gap is None or gap <= 0:
            return "This is the heaviest load here."
        where = " in each hand" if scale.per_hand else ""
        if gap > step.grams + scale.slack_g:
            text = (
                f"{_LOADS[scale.kind]} here go up by {self._mass(gap)}{where}, not by {step.label}"
            )
            return f"{text}: go up when that is good for every set."
        total = (grams or 0) + (self.today.body_g if self.today else 0)
        if grams and 100 * gap > LARGE_JUMP * total:
            more = 100 * max(gap, step.grams) / total
            return f"The step is {more:.0f} % of this load: expect fewer repetitions at first."
        return ""

    def _more(self, when: str, steps: int = 1) -> Outcome:
        step = self.rule.step
        if step is None:
            return Outcome(when, "One step more.")
        grams = steps * step.grams
        add = f"{in_unit(grams, step.unit)} {step.unit}"
        load = self._raised(grams)
        if load is None or load.actual_g is None or self.today is None:
            return Outcome(when, f"{add} more.")
        return Outcome(when, f"{self._load(load)}.", load)

    def _less(self, when: str) -> Outcome:
        then = "Go back by a tenth."
        today = self.today
        if today is None or today.actual_g is None:
            return Outcome(when, then)
        load = self._at(BACK * (today.actual_g + today.body_g) - today.body_g)
        if load.actual_g is None:
            return Outcome(when, then)
        return Outcome(when, f"Go back by a tenth: {self._load(load)}.", load)

    def _raised(self, grams: int) -> PlannedLoad | None:
        """The load one step up: always more than today's, even where the step is too small."""
        today, scale = self.today, self.slot.scale
        if today is None or today.actual_g is None:
            return None
        new = self._at(today.actual_g + grams)
        if new.actual_g is not None and new.actual_g > today.actual_g:
            return new
        if scale is None or today.actual_g < 0:
            return new
        place = bisect_right(scale.steps, today.actual_g + scale.slack_g, key=lambda s: s.grams)
        return self._at(scale.steps[place].grams) if place < len(scale.steps) else None

    def _at(self, grams: float) -> PlannedLoad:
        today = self.today
        reference, body = (today.reference_g, today.body_g) if today else (0.0, 0.0)
        return achieved(grams, self.slot.scale, reference, body, self.units)

    def _load(self, load: PlannedLoad) -> str:
        grams = load.actual_g or 0
        if load.help_g:
            return f"{self._mass(load.help_g)} of help"
        if load.body_g:
            return f"body weight +{self._mass(grams)}" if grams else "body weight"
        return self._mass(grams)

    def _mass(self, grams: float) -> str:
        return f"{in_unit(round(grams), self.units)} {self.units}"


_LOADS = {
    "bar": "Plates", "fixed": "Weights", "hung": "Plates", "pin": "Pins", "plate": "Plates"
}  # fmt: skip


def gap_above(scale: Scale, grams: int | None) -> int | None:
    """From a load to the next heavier one; the scale's smallest gap where the load is not known.

    None where nothing is heavier.
    """
    masses = [step.grams for step in scale.steps]
    if grams is None or grams < 0:
        return min((heavier - lighter for lighter, heavier in pairwise(masses)), default=None)
    place = bisect_right(masses, grams + scale.slack_g)
    return masses[place] - grams if place < len(masses) else None


def _times(number: int) -> str:
    return {1: "Once", 2: "Twice", 3: "Three times"}.get(number, f"{number} times")
