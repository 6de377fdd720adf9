"""Repetitions that a slot's load and tempo allow, and what bands or chains add to it."""

from strength_handbook.calc.repetitions import BETWEEN_PEOPLE, reps_at_percent, tempo_factor
from strength_handbook.model.book import Book
from strength_handbook.plan.reference import is_estimate
from strength_handbook.plan.worked import WorkedSlot
from strength_handbook.workings.working import (
    NBSP,
    Line,
    amount,
    by_formula,
    equals,
    number,
    percent,
    reps_text,
)


def reps_lines(book: Book, slot: WorkedSlot) -> list[Line]:
    """How many repetitions most people can do at this percentage and tempo, and why a band."""
    band, points = slot.reps_possible, slot.percent
    if band is None or points is None or is_estimate(slot.dose):
        return []
    fresh = reps_at_percent(points)
    lines = [
        by_formula(
            "reps_at_percent", f"Chart at {percent(points)}: {number(fresh)} repetitions, all out"
        )
    ]
    tempo, held = slot.dose.tempo, slot.dose.said.pause
    lower = tempo.lower if tempo else 0
    pause = max(tempo.longest_pause if tempo else 0, held.time if held else 0)
    slow_from, long_from = book.rule("slow-lowering"), book.rule("long-pause")
    factor = tempo_factor(
        lower, pause, slow_from_s=slow_from, pause_from_s=long_from,
        slow_factor=book.rule("slow-factor"),
    )  # fmt: skip
    if factor != 1:
        because = (
            f"Lowering {lower:g}{NBSP}s, slow from {slow_from:g}{NBSP}s on"
            if lower >= slow_from
            else f"Pause {pause:g}{NBSP}s, long from {long_from:g}{NBSP}s on"
        )
        result = number(fresh * factor)
        sign = equals(fresh, fresh * factor)
        text = f"{because}: {number(fresh)} × {number(factor, 2)} {sign} {result}"
        lines.append(by_formula("tempo_factor", text))
    middle, width = number(band.middle), percent(100 * BETWEEN_PEOPLE)
    text = f"{middle} ± {width}: {reps_text(band)}, a band because people differ"
    lines.append(by_formula("feasible_reps", text))
    return lines


def variable_lines(book: Book, slot: WorkedSlot, name: str) -> list[Line]:
    """Bar and plates with what hangs on them, for one example lifter; to the half kilogram."""
    load, found = slot.loads.get(name), slot.variable.get(name)
    if load is None or load.actual_g is None or found is None or slot.on_top is None:
        return []
    units = book.room.units
    low, middle, top = (
        amount(round(kg * 2) * 500, units)
        for kg in (found.load.bottom, found.load.middle, found.load.top)
    )
    share = percent(round(found.load.top_share))
    text = (
        f"{amount(load.actual_g, units)} with {found.what}: {low} at the bottom, {middle} "
        f"half-way, {top} at the top, {share} of it from what hangs on the bar"
    )
    return [by_formula("banded_load" if slot.on_top.chain is None else "chained_load", text)]
