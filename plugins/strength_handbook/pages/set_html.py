"""What happens inside a set and after it: strips, open sets, what comes next."""

from collections.abc import Callable, Mapping
from html import escape

from strength_handbook.model.printed import bare_mass, count_word, mass, percent
from strength_handbook.pages.load_html import DASH
from strength_handbook.pages.method_parts import (
    by_lifter,
    listed,
    load_words,
    plates_moved,
    small_table,
    spaced,
    whole_span,
)
from strength_handbook.plan.efforts import OpenRow, OpenSetPlan
from strength_handbook.plan.next_case import Outcome
from strength_handbook.plan.progress import NextTarget
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.slot_strips import Strips
from strength_handbook.plan.strip_load import StripLoad, StripLoads
from strength_handbook.plan.worked import WorkedSlot


def strips_html(plan: Strips, scale: Scale | None, units: str) -> str:
    """Loads of a strip set and the repetitions to expect."""
    parts = [_shares(plan)] if plan.aims else []
    total = plan.asked.total
    if total is not None and plan.fewest is not None and plan.most is not None:
        few, many = count_word(plan.fewest), count_word(plan.most)
        loads = few if few == many else f"{few} to {many}"
        parts.append(
            f"<p>{total.text} in all take about {loads} loads. The total ends the set, not the "
            "number of loads.</p>"
        )
    if plan.aims:
        parts.append(
            "<p>A range, because nobody has counted strips in a study: it follows from how much "
            "lighter each load is, and people differ.</p>"
        )
    if plan.settings:
        parts.append(f"<p>Settings: {' → '.join(f'{one.amount:g}' for one in plan.settings)}.</p>")
    if plan.rows:
        heads = ("your best" if plan.by_best else "first", "one after the other")
        what = "settings" if scale is None else units
        table = [
            (f"{value:g}", " → ".join(f"{one.amount:g}" for one in loads or ()) or DASH)
            if scale is None
            else (bare_mass(value, units), _strip(loads, scale, units, bare_mass))
            for value, loads in plan.rows
        ]
        parts.append(small_table(f"Loads of a set, {what}", heads, table))
    parts.append(
        by_lifter((name, _strip(loads, scale, units)) for name, loads in plan.by_lifter.items())
    )
    shown = [*plan.by_lifter.values(), *(loads for _, loads in plan.rows)]
    if any(one.hold for loads in shown for one in loads or ()):
        parts.append(
            f"<p><b>Hold the bar</b> in the {escape(plan.rack)} while plates come off, or take "
            "both sides off together: one side alone could tip it.</p>"
        )
    elif plan.rack and shown:
        parts.append("<p>One plate at a time, changing sides.</p>")
    return "".join(parts)


def _shares(plan: Strips) -> str:
    """Every load as a share of the first, with the repetitions to expect on it."""
    asked = plan.asked.reps
    rows = [
        (
            f"{number}",
            percent(round(aim.amount)),
            _expected(aim) if number > 1 else _first(plan) if asked is None else asked.text,
        )
        for number, aim in enumerate(plan.aims, start=1)
    ]
    return small_table("Each load as a share of the first", ("load", "share", "expect"), rows)


def _strip(
    loads: StripLoads | None,
    scale: Scale | None,
    units: str,
    written: Callable[[float, str], str] = mass,
) -> str:
    if loads is None:
        return "what is here allows no such strips; take the next lighter load each time"
    on_bar = scale is not None and scale.kind == "bar"
    return " → ".join(
        f"<b>{written(one.amount, units)}</b>"
        + (
            f" (off {plates_moved(one.off, units)}{' each side' if on_bar else ''})"
            if one.off
            else ""
        )
        for one in loads
    )


def _expected(one: StripLoad) -> str:
    low, high = one.expected
    return DASH if not high else (f"{low}" if low == high else f"{low} to {high}")


def _first(plan: Strips) -> str:
    low, high = plan.first_reps
    return f"{low}" if low == high else f"{low} to {high}"


def _single(row: OpenRow) -> str:
    if row.factors is None:
        return "too many to tell"
    low, high = row.factors
    return f"× {low:.2f} to {high:.2f}{', roughly' if row.caution else ''}"


def open_set_html(plan: OpenSetPlan, units: str) -> str:
    """What each result says about the best single."""
    left = "" if not plan.reserve else f", with {plan.reserve:g} left"
    rows = [
        (
            f"{row.reps}",
            _single(row),
        )
        for row in plan.rows
    ]
    known = [row for row in plan.rows if row.low is not None and row.high is not None]
    ends = [known[0], known[-1]] if len(known) > 1 else known
    lines = []
    for name, grams in plan.by_lifter.items():
        said = [
            f"{row.reps} → {whole_span(grams * (row.low or 0), grams * (row.high or 0), units)}"
            for row in ends
        ]
        lines.append((name, f"{mass(grams, units)}: {', '.join(said)}"))
    return (
        small_table(
            f"Best single from this load, by repetitions done{left}", ("done", "best single"), rows
        )
        + by_lifter(lines)
        + "<p>An estimate. Change your best once a wave, not every week.</p>"
    )


SAME_PLATES = "the same plates as today"
"""A point or two more may be less than the next plate."""


def _by_points(one: Outcome) -> bool:
    return one.move is not None and one.move.kind == "percent"


def _next_load(one: Outcome, today: int | None, units: str) -> str:
    if one.load is None:
        return ""
    same = one.load.actual_g == today
    return f"{load_words(one.load, units)}, {SAME_PLATES}" if same else load_words(one.load, units)


def next_html(goal: NextTarget, own: Mapping[str, NextTarget], slot: WorkedSlot, units: str) -> str:
    """What follows from each result, and the next loads of each example lifter."""
    parts = [
        listed(
            f"<b>{escape(spaced(one.when))}:</b> {escape(spaced(one.then))}"
            for one in goal.outcomes
        )
    ]
    if goal.warning and not any(target.warning for target in own.values()):
        parts.append(f"<p>{escape(spaced(goal.warning))}</p>")
    lines = []
    for name, target in own.items():
        today = slot.loads[name].actual_g if name in slot.loads else None
        said = [
            (one.when, _next_load(one, today, units))
            for one in target.outcomes
            if one.load is not None
            and one.load.actual_g is not None
            and (one.load.actual_g != today or _by_points(one))
        ]
        text = "; ".join(f"{when}: {load}" if len(said) > 1 else load for when, load in said)
        text = " ".join(part for part in (f"{text}." if text else "", target.warning) if part)
        if text and (said or target.warning != goal.warning):
            lines.append((name, escape(spaced(text))))
    return "".join(parts) + by_lifter(lines)
