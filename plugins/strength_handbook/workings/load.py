"""The load of a slot, step by step for one example lifter."""

from dataclasses import dataclass

from strength_handbook.calc.effort import percent_from_effort
from strength_handbook.calc.repetitions import percent_for_reps
from strength_handbook.model.book import Book
from strength_handbook.model.count import top_text
from strength_handbook.model.dose import Dose, by_effort_after_top
from strength_handbook.model.load import (
    BodyWeight,
    FixedLoad,
    PercentOfBase,
    PercentOfBodyMass,
    PercentOfEffort,
    PercentOfSystem,
    PercentOfTop,
    PercentOfTrainingMax,
    RepMax,
)
from strength_handbook.model.loading import PushUp
from strength_handbook.model.span import Span, middle_of
from strength_handbook.plan.loads import HELP_STEP_G, PlannedLoad, moved_g, plan_load
from strength_handbook.plan.reference import effort_factor, load_rules
from strength_handbook.plan.scale import Scale, Step
from strength_handbook.plan.tables import body_masses
from strength_handbook.plan.worked import WorkedSlot
from strength_handbook.workings.working import (
    Line,
    amount,
    as_tested,
    as_written,
    bare,
    by_adding,
    by_formula,
    by_looking,
    by_rule,
    equals,
    equals_mass,
    number,
    percent,
    share_of,
)


@dataclass(frozen=True, slots=True)
class Example:
    """For whom a working is shown.

    Attributes:
        name: of an example lifter, or ``Example``.
        body_g: body mass.
        base_g: tested value, or None.
        load: the load, or None where effort decides.
    """

    name: str
    body_g: float
    base_g: float | None
    load: PlannedLoad | None


def example_of(book: Book, slot: WorkedSlot) -> Example:
    """The first example lifter whose load is known, else somebody in the middle of the tables."""
    for name in slot.loads:
        lifter = book.lifters[name]
        base = lifter.bases.get(slot.base_id) if slot.base_id else None
        grams = None if base is None else base.grams
        return Example(name, lifter.bodyweight.grams, grams, slot.loads[name])
    masses = body_masses(book.room.units)
    body_g = masses[len(masses) // 2]
    base_g = None
    if slot.base is not None:
        entry = slot.base
        steps = (entry.to.grams - entry.from_.grams) // entry.by.grams
        base_g = entry.from_.grams + steps // 2 * entry.by.grams
    load = plan_load(
        slot.dose, slot.exercise.load, slot.scale, body_g=body_g, base_g=base_g,
        units=book.room.units, rules=load_rules(book),
    )  # fmt: skip
    return Example("Example", body_g, base_g, load)


def load_lines(book: Book, slot: WorkedSlot, example: Example) -> list[Line]:
    """From what the dose says to a load that can be put on."""
    load = example.load
    if load is None:
        return []
    units = book.room.units
    if isinstance(slot.dose.load, BodyWeight) and not slot.dose.load.change.grams:
        return _bare_body(slot, example, load, units)
    lines = _reference(slot, example, units)
    lines += _planned(book, slot, example, load)
    if load.body_g:
        lines += _less_the_body(slot, example, load, units)
    lines += _achievable(slot.scale, load, units)
    actual = load.actual_percent
    if actual is not None and load.actual_g is not None:
        top = amount(load.actual_g + load.body_g, units)
        of = amount(load.reference_g, units)
        # Percentages are whole or half.
        text = f"{top} ÷ {of} {equals(2 * actual, decimals=0)} {percent(actual)}"
        lines.append(by_formula("percent_of_base", text))
    return lines


def _reference(slot: WorkedSlot, example: Example, units: str) -> list[Line]:
    load = slot.dose.load
    if example.base_g is not None and example.load is not None and example.load.reference_g:
        name = slot.base.name if slot.base else "Tested value"
        text = f"{name}: {amount(example.base_g, units)}"
    elif isinstance(load, PercentOfBodyMass):
        text = f"Body weight: {amount(example.body_g, units)}"
    else:
        return []
    return [as_tested(text) if example.name != "Example" else as_written(f"{text}, say")]


def _planned(book: Book, slot: WorkedSlot, example: Example, load: PlannedLoad) -> list[Line]:
    asked = slot.dose.load
    written = []
    if asked is not None and isinstance(getattr(asked, "percent", None), Span):
        written = [as_written(f"Written: {asked.text}, planned at its middle")]
    return [*written, *_planned_at(book, slot, example, load)]


def _planned_at(book: Book, slot: WorkedSlot, example: Example, load: PlannedLoad) -> list[Line]:
    units, dose = book.room.units, slot.dose
    base_g = example.base_g or 0.0

    def share(of_g: float, points: float, what: str = "") -> Line:
        return by_formula("load_at_percent", share_of(of_g, points + 0.0, units) + what)

    match dose.load:
        case PercentOfBase(points) | PercentOfSystem(points):
            return [share(base_g, points)]
        case PercentOfTrainingMax(points):
            own = dose.said.training_max
            tm = own or book.rule("training-max")
            rule = by_rule(book, "training-max")
            said = rule if own is None else as_written(f"Training max: {percent(own)}")
            return [said, share(base_g, tm, ", the training max"), share(base_g * tm / 100, points)]
        case PercentOfBodyMass(points):
            return [share(example.body_g, points)]
        case PercentOfTop(points):
            lines, charted = _top(dose)
            top = top_text(dose.top or 1, dose.top_left)
            return [
                *lines,
                share(base_g, charted, f", expected of a {top}; the real one decides"),
                share(base_g * charted / 100, points),
            ]
        case RepMax(reps, points):
            charted = percent_for_reps(reps)
            less = [] if points == 100 else [share(base_g * charted / 100, points)]
            return [_charted(reps, f"{reps} repetitions"), share(base_g, charted), *less]
        case FixedLoad() | BodyWeight():
            middle = ", planned at its middle" if getattr(dose.load, "both", None) else ""
            return [as_written(f"Written: {dose.load.text}{middle}")]
        case None if dose.top is not None and not by_effort_after_top(dose):
            lines, charted = _top(dose)
            return [*lines, share(base_g, charted)]
        case None | PercentOfEffort() if dose.reps is not None and dose.reserve is not None:
            done, left = dose.reps.high, dose.reserve
            factor = effort_factor(dose, load_rules(book))
            points = percent_from_effort(done, left, factor)
            middle = f", {middle_of(left):g} in the middle," if isinstance(left, Span) else ""
            count = f"{done} done and {left:g} left{middle} = {done + left:g} repetitions"
            if factor != 1:
                fresh = (done + left) / factor
                count += f"; at this tempo ÷ {number(factor, 2)} {equals(fresh)} {number(fresh)}"
            least = dose.load.percent if isinstance(dose.load, PercentOfEffort) else 100.0
            less = [] if least == 100 else [share(base_g * points / 100, least)]
            return [
                by_formula("percent_from_effort", f"{count}: {percent(points)}, an estimate"),
                share(base_g, points, ", where to start; the effort decides"),
                *less,
            ]
        case _:
            return [as_written(f"Planned: {amount(load.planned_g, units)}")]


def _top(dose: Dose) -> tuple[list[Line], float]:
    """How the percentage of today's top set was found, and that percentage."""
    top, left = dose.top or 1, dose.top_left
    points = percent_from_effort(top, left)
    if not left:
        return [_charted(top, f"{top} repetitions")], points
    count = f"{top} done and {left:g} left = {top + left:g} repetitions"
    line = by_formula("percent_from_effort", f"{count}: {percent(points)}, an estimate")
    return [line], points


def _charted(reps: float, what: str) -> Line:
    return by_formula("percent_for_reps", f"{what}: {percent(percent_for_reps(reps))} by the chart")


def _less_the_body(slot: WorkedSlot, example: Example, load: PlannedLoad, units: str) -> list[Line]:
    """What has to be added to the body's own share, or taken off."""
    lines, share = _bare_body(slot, example, load, units), amount(load.body_g, units)
    if load.reference_g:
        wanted = amount(load.planned_g + load.body_g, units)
        sign = equals_mass(load.planned_g, load.body_g, units=units)
        text = f"{wanted} − {share} of body {sign} {amount(load.planned_g, units)} to add"
        return [*lines, by_adding(text)]
    if isinstance(slot.exercise.load, PushUp):
        grams = moved_g(
            slot.exercise.load, example.body_g, round(load.planned_g), slot.dose.said.height
        )
        added = amount(load.planned_g, units)
        text = f"{share} of body, and {added} on the back: {amount(grams, units)} at the hands"
        return [*lines, by_formula("push_up_load", text)]
    total = amount(load.planned_g + load.body_g, units)
    sign = equals_mass(load.planned_g, load.body_g, units=units)
    text = f"{share} of body + {amount(load.planned_g, units)} {sign} {total}"
    return [*lines, by_adding(text)]


def _bare_body(slot: WorkedSlot, example: Example, load: PlannedLoad, units: str) -> list[Line]:
    """The share of the body that moves, where it is not all of it."""
    points = 100 * load.body_g / example.body_g
    if not points or abs(points - 100) < 0.01:
        return []
    body, share = amount(example.body_g, units), amount(load.body_g, units)
    text = f"Of {body} of body about {percent(points)} move: {share}"
    name = "ebben_2011_push_up" if isinstance(slot.exercise.load, PushUp) else "load_at_percent"
    return [by_formula(name, text)]


def _achievable(scale: Scale | None, load: PlannedLoad, units: str) -> list[Line]:
    if load.band:
        text = f"Of the bands here {load.band} is nearest: about {amount(load.help_g, units)} off"
        return [as_written(text)]
    if load.help_g:
        step = amount(HELP_STEP_G[units], units)
        text = f"{amount(load.help_g, units)} of help: up to the next {step}, never too little"
        return [as_written(text)]
    if scale is None:
        return []
    if load.step is None:
        return [_none(scale, load, units)]
    return [built(scale, load.step, load.planned_g, units)]


def _none(scale: Scale, load: PlannedLoad, units: str) -> Line:
    if scale.steps and load.planned_g < scale.lightest_g:
        end = f"the lightest here is {amount(scale.lightest_g, units)}"
    elif scale.steps:
        end = f"the heaviest here is {amount(scale.heaviest_g, units)}"
    else:
        end = "nothing of the kind exists here"
    return by_looking(f"{amount(load.planned_g, units)}: {end}")


def built(scale: Scale, step: Step, target_g: float, units: str) -> Line:
    """How a load that exists is put together, and why it is the one."""
    result = amount(step.grams, units)
    each = " in each hand" if scale.per_hand else ""
    why = {
        "down": f"the most up to {amount(target_g, units)}",
        "up": f"the least from {amount(target_g, units)} on",
        "nearest": f"the nearest to {amount(target_g, units)}",
    }[scale.rounding]
    parts = " + ".join(bare(grams, units) for grams in step.parts)
    side = f"({parts})" if len(step.parts) > 1 else parts
    own = f"{amount(scale.empty_g, units)} {_named(scale.on)}"
    match scale.kind:
        case "bar" if parts:
            how = f"{own} + 2 × {side} = {result}"
        case "hung" if parts and scale.empty_g and step.grams:
            how = f"{own} + {parts} = {result}"
        case "hung" | "pivot" | "pin" if len(step.parts) > 1:
            how = f"{parts} = {result}"
        case "bar" if step.grams:
            how = f"{own}, empty = {result}"
        case _:
            how = result
    text = f"{how}{each}, {why}"
    built_of_plates = scale.kind in ("bar", "hung", "pivot")
    return by_formula("load_table", text) if built_of_plates else by_looking(text)


def _named(thing: str) -> str:
    """A thing's name without the mass in it: ``20 kg bar`` is a bar."""
    words = thing.split(" ")
    return " ".join(words[2:]) if len(words) > 2 and words[0][:1].isdigit() else thing
