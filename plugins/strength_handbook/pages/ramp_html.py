"""The way up on a page: warm-up steps, the steps of a test, back-off loads after a top."""

from collections.abc import Callable, Iterator

from strength_handbook.dose.best_of_day import REST_S
from strength_handbook.model.printed import NBSP, bare_mass, count_word, mass, percent
from strength_handbook.pages.load_html import DASH, per_side_head, plates
from strength_handbook.pages.method_parts import (
    bare_load,
    by_lifter,
    listed,
    load_words,
    plates_moved,
    small_table,
)
from strength_handbook.plan.attempts import Next
from strength_handbook.plan.ladder import Ladder, Ladders
from strength_handbook.plan.loads import PlannedLoad
from strength_handbook.plan.ramps import Ramp, Ramps, RampStep
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.top_sets import BackOffPlan
from strength_handbook.plan.worked import WorkedSlot

TIMES = f"{NBSP}×{NBSP}"


def ramps_html(ramps: Ramps, scale: Scale | None, units: str) -> str:
    """Warm-up steps: a table by tested value, and each example lifter's plates."""
    aim = "today's expected top set" if ramps.to_top else "today's load"
    parts = [f"<p>Steps to {aim}.</p>"]
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
    """Sets up to the first attempt, and what follows a good one and a miss."""
    shortest, longest = (seconds // 60 for seconds in REST_S)
    what = "single" if plan.rm == 1 else f"best {count_word(plan.rm)}"
    (least, most), (less, more) = plan.rules.up, plan.rules.down
    steps = (
        f"<p>5 to 10 light, 3 to 5, 2 or 3, then the first attempt: {percent(plan.rules.first)} of "
        f"the {what} to be expected. Rest 1{NBSP}min, 2{NBSP}min, then {shortest} to "
        f"{longest}{NBSP}min. At most {count_word(plan.attempts)} attempts.</p>"
    )
    cap = CAP if plan.rm > 1 else ""
    after = (
        f"<p>Good? {least:g} to {percent(most)} up.{cap} Missed? {less:g} to {percent(more)} down."
        "</p>"
    )
    parts = [steps, after]
    how = per_side_head(scale)
    under = f"; beside them: {how}" if how else ""
    if plan.rows:
        heads = ("your best", *_LADDER_HEADS)
        rows = [(bare_mass(value, units), *_cells(one, scale, units)) for value, one in plan.rows]
        parts.append(small_table(f"Steps and attempts, {units}{under}", heads, rows))
    parts += _by_body(plan, scale, units)
    note = f'<p class="sh-note">In brackets: {how}.</p>' if how else ""
    lines = ((name, _ladder(one, scale, units)) for name, one in plan.by_lifter.items())
    parts.append(by_lifter(lines, note))
    if scale is not None and scale.per_hand:
        parts.append("<p>Loads are for each hand.</p>")
    return "".join(parts)


_LADDER_HEADS = ("on the way", "first", "good?<br>missed?")


def _by_body(plan: Ladders, scale: Scale | None, units: str) -> Iterator[str]:
    """A table for each best of a lift in which the body moves too, and what its bands take off."""
    if not plan.body_rows:
        return
    how = per_side_head(scale)
    beside = f" Beside the first attempt: {how}." if how else ""
    yield (
        "<p>Find what you added (+) or took off (−) at your best single, then your body weight. "
        f"Between two rows take the lighter loads.{beside}</p>"
    )
    for label, rows in plan.body_rows.items():
        best = "body weight" if label == "BW" else f"{label} {units}"
        cells = [
            (bare_mass(body, units), *_cells(one, scale, units, short=True)) for body, one in rows
        ]
        heads = (f"body, {units}", *_LADDER_HEADS)
        yield small_table(f"Best single at {best}", heads, cells)
    bands = {
        load.band: load.help_g
        for rows in plan.body_rows.values()
        for _, one in rows
        for load in (*(step.load for step in one.steps), one.first)
        if load.band
    }
    if bands:
        easier = sorted(bands, key=lambda band: bands[band], reverse=True)
        each = (f"<b>{band}</b>{NBSP}= about {mass(bands[band], units)} off" for band in easier)
        yield f"<p>Bands: {'; '.join(each)}.</p>"


def _cells(
    one: Ladder, scale: Scale | None, units: str, *, short: bool = False
) -> tuple[str, str, str]:
    """The way up, the first attempt, and the next after a good one and a miss.

    Args:
        one: the ladder.
        scale: the loads that exist.
        units: kilograms or pounds.
        short: what is put together is said of the first attempt only.
    """

    def bare(load: PlannedLoad) -> str:
        return _bare(load, units)

    def put_on(load: PlannedLoad) -> str:
        hung = load.step and (load.step.grams > 0 or not load.body_g)
        how = plates(scale, load.step, units) if scale and load.step and hung else ""
        beside = f' <span class="sh-note">{how}</span>' if how else ""
        return f"{bare(load)}{beside}"

    way = ", ".join(map(bare, (step.load for step in one.steps))) or DASH
    words = bare if short else put_on
    good, missed = (_span(found, words) for found in (one.good, one.missed))
    return way, f"<b>{put_on(one.first)}</b>", f"{good}<br>{missed}"


def _bare(load: PlannedLoad, units: str) -> str:
    """A load in a narrow cell: a band by its number, nothing added as body weight."""
    if load.body_g and load.actual_g == 0:
        return "BW"
    return load.band or bare_load(load, units)


CAP = " Never above your best single."
"""Where several repetitions are tested."""


def _ladder(ladder: Ladder, scale: Scale | None, units: str) -> str:
    def built(load: PlannedLoad, words: str) -> str:
        how = plates(scale, load.step, units) if scale and load.step and not load.help_g else ""
        return f"{words} ({how})" if how else words

    def words(load: PlannedLoad) -> str:
        return load_words(load, units)

    steps = [built(step.load, load_words(step.load, units)) for step in ladder.steps]
    first = built(ladder.first, f"<b>{load_words(ladder.first, units)}</b>")
    text = f"{', '.join(steps)}{', ' if steps else ''}first {first}"
    if ladder.good:
        text += f"; good: {_span(ladder.good, words)}"
    if ladder.missed:
        text += f"; missed: {_span(ladder.missed, words)}"
    return text


def _span(found: Next | None, words: Callable[[PlannedLoad], str]) -> str:
    if found is None:
        return DASH
    low, high = words(found.low), words(found.high)
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
