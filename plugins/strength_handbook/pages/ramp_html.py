"""The way up on a page: warm-up steps, the steps of a test, back-off loads after a top."""

from strength_handbook.pages.load_html import DASH, per_side_head, plates
from strength_handbook.pages.method_parts import (
    bare_load,
    by_lifter,
    listed,
    load_words,
    plates_moved,
    small_table,
)
from strength_handbook.pages.numbers import NBSP, bare_mass, count_word, mass, percent
from strength_handbook.plan.ladder import REST_S, Ladder, Ladders
from strength_handbook.plan.loads import PlannedLoad
from strength_handbook.plan.ramps import Ramp, Ramps, RampStep
from strength_handbook.plan.scales import Scale
from strength_handbook.plan.top_sets import BackOffPlan
from strength_handbook.plan.worked import WorkedSlot

TIMES = f"{NBSP}×{NBSP}"


def ramps_html(ramps: Ramps, scale: Scale | None, units: str) -> str:
    """Warm-up steps: a table by tested value, and each example lifter's plates."""
    aim = "today's expected top set" if ramps.to_top else "today's load"
    ramp_sets = (ramps.everybody, *ramps.by_lifter.values(), *(ramp for _, ramp in ramps.rows))
    only = "" if any(step.off for ramp in ramp_sets for step in ramp) else " Plates only go on."
    parts = [f"<p>Steps to {aim}.{only}</p>"]
    if ramps.everybody:
        parts.append(listed(_ramp_step(step, units) for step in ramps.everybody))
    if ramps.rows:
        goal = "top" if ramps.to_top else "today"
        rows = [
            (bare_mass(value, units), bare_mass(ramp[-1].grams, units), _short_ramp(ramp, units))
            for value, ramp in ramps.rows
        ]
        parts.append(
            small_table(f"Load × repetitions, {units}", ("your best", goal, "steps"), rows)
        )
    note = "" if scale is None else f'<p class="sh-note">In brackets: {per_side_head(scale)}.</p>'
    own = [
        (name, "; ".join(_ramp_step(step, units) for step in ramp))
        for name, ramp in ramps.by_lifter.items()
    ]
    parts += [by_lifter(own, "" if ramps.everybody else note), note if ramps.everybody else ""]
    return "".join(parts)


def _short_ramp(ramp: Ramp, units: str) -> str:
    steps = [f"{bare_mass(step.grams, units)}{TIMES}{step.reps}" for step in ramp[:-1]]
    return ", ".join(steps) or DASH


def _ramp_step(step: RampStep, units: str) -> str:
    off = f"off {plates_moved(step.off, units)}, " if step.off else ""
    change = f" ({off}on {plates_moved(step.added, units)})" if step.added else ""
    reps = f"{TIMES}{step.reps}" if step.reps else ""
    return f"<b>{mass(step.grams, units)}</b>{reps}{change}"


def ladders_html(plan: Ladders, scale: Scale | None, units: str) -> str:
    """Sets up to the expected result, and what follows a good attempt and a miss."""
    low, high = plan.step_percent
    shortest, longest = (seconds // 60 for seconds in REST_S)
    what = "single" if plan.rm == 1 else f"best {count_word(plan.rm)}"
    steps = (
        f"<p>5 to 10 light, 3 to 5, 2 or 3, then the first attempt at your {what}. Rest "
        f"1{NBSP}min, 2{NBSP}min, then {shortest} to {longest}{NBSP}min. At most "
        f"{count_word(plan.attempts)} attempts.</p>"
    )
    after = (
        f"<p>Good? {low:g} to {percent(high)} up. Missed? {low / 2:g} to {percent(high / 2)} "
        "down.</p>"
    )
    parts = [steps, after]
    if plan.rows:
        rows = [
            (bare_mass(value, units), _short_ladder(one, units), bare_load(one.first, units))
            for value, one in plan.rows
        ]
        heads = ("your best", "on the way", "first")
        parts.append(small_table(f"Expected result and steps, {units}", heads, rows))
    parts.append(by_lifter((name, _ladder(one, units)) for name, one in plan.by_lifter.items()))
    if scale is not None and scale.per_hand:
        parts.append("<p>Loads are for each hand.</p>")
    return "".join(parts)


def _short_ladder(ladder: Ladder, units: str) -> str:
    return ", ".join(bare_load(step.load, units) for step in ladder.steps) or DASH


def _ladder(ladder: Ladder, units: str) -> str:
    steps = [load_words(step.load, units) for step in ladder.steps]
    text = (
        f"{', '.join(steps)}{', ' if steps else ''}first <b>{load_words(ladder.first, units)}</b>"
    )
    if ladder.up:
        text += f"; good: {_span(ladder.up, units)}"
    if ladder.down:
        text += f"; missed: {_span(ladder.down, units)}"
    return text


def _span(two: tuple[PlannedLoad, PlannedLoad], units: str) -> str:
    low, high = (load_words(one, units) for one in two)
    return low if low == high else f"{low} to {high}"


def back_off_html(plan: BackOffPlan, slot: WorkedSlot, units: str) -> str:
    """What to take after each top."""
    parts = [f"<p>{percent(plan.percent)} of whatever today's top was.</p>"]
    scale = slot.scale
    if plan.rows and scale is not None:
        how = per_side_head(scale)
        rows = [
            (bare_mass(row.top_g, units), f"<b>{bare_load(row.load, units)}</b>")
            + ((plates(scale, row.load.step, units) if row.load.step else "",) if how else ())
            for row in plan.rows
        ]
        parts.append(small_table(f"After your top, {units}", ("top", "then", how), rows))
    parts.append(
        by_lifter(
            (name, "; ".join(_after(row.top_g, row.load, units) for row in rows))
            for name, rows in plan.by_lifter.items()
        )
    )
    return "".join(parts)


def _after(top_g: int, load: PlannedLoad, units: str) -> str:
    return f"{bare_mass(top_g, units)} → <b>{bare_load(load, units)}</b>"
