"""Bands and chains in proportion, and speed sets that stay fast."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace

from strength_handbook.model.dose import Dose, Reps
from strength_handbook.model.load import parse_load
from strength_handbook.model.methods import BandsOn, ChainsOn
from strength_handbook.plan.on_top import for_lifters, served
from strength_handbook.plan.reference import is_estimate
from strength_handbook.plan.variable import Variable
from strength_handbook.plan.work_out import lifter_loads
from strength_handbook.reading.problem import Severity
from strength_handbook.reading.source import Plain
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.load.reps import PERCENT_STEP, load_text
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.words import clock, number

MOST_SHARE = 40
"""Largest share that is offered."""


@check(
    "top-share",
    Family.LOAD,
    Severity.WARN,
    what="What bands or chains are of the load at the top, in whole percent, for every example "
    "lifter.",
    why="Below that they hardly change the lift; above it the bar is light where the lift is hard.",
    rules=("top-share-least", "top-share-most"),
)
def top_share(this: Check, desk: Desk) -> Iterator[Finding]:
    """Too much or too little of a bar that changes."""
    least, most = desk.rule("top-share-least"), desk.rule("top-share-most")
    for at in desk.slots:
        off = _off(at.slot.variable, least, most)
        if not off:
            continue
        told = ", ".join(f"{name} {share} % with {what}" for name, share, what in off)
        text = f"share of the load at the top: {told}; {least:g} to {most:g} %"
        yield this.finds(
            at, text, spot=at.spot_of("bands", "chains"), change=_in_range(desk, at, least, most)
        )


def _off(variable: Mapping[str, Variable], least: float, most: float) -> list[tuple[str, int, str]]:
    # As the pages print it: whole percent.
    shares = [(name, round(v.load.top_share), v.what) for name, v in variable.items()]
    return [one for one in shares if not least <= one[1] <= most]


def _in_range(desk: Desk, at: SlotAt, least: float, most: float) -> Mending:
    """What to hang on the bar so that all example lifters come within the limits."""
    asked = at.slot.dose.said
    if asked.bands is not None and at.slot.base_id is not None:
        wanted = asked.bands.top_share or 20.0
        for share in sorted(range(5, MOST_SHARE + 1), key=lambda one: (abs(one - wanted), one)):
            bands = BandsOn.model_validate({"top-share": f"{share} %"})
            if _all_in(desk, at, {"bands": bands}, least, most):
                new: Plain = {"top-share": f"{share} %"}
                return Mending(f"write 'bands {share} % at top'", at.rewritten(bands=new))
    elif asked.chains is not None:
        for share in sorted(range(5, MOST_SHARE + 1), key=lambda one: (abs(one - 22), one)):
            chains = ChainsOn.model_validate({"top-share": f"{share} %"})
            if _all_in(desk, at, {"chains": chains}, least, most):
                new = {"top-share": f"{share} %"}
                return Mending(f"write 'chains {share} % at top'", at.rewritten(chains=new))
    return Mending("take other bands, more or fewer chains, or another load on the bar")


def _all_in(desk: Desk, at: SlotAt, said: Mapping[str, object], least: float, most: float) -> bool:
    slot = at.slot
    dose = replace(slot.dose, said=slot.dose.said.model_copy(update=dict(said)))
    found = _variable(desk, at, dose)
    return bool(found) and not _off(found, least, most)


def _variable(desk: Desk, at: SlotAt, dose: Dose) -> dict[str, Variable]:
    """Load with bands or chains of every example lifter, for another dose."""
    slot, base = at.slot, at.slot.base_id
    loads = lifter_loads(desk.book, slot.exercise, dose, base, slot.scale)
    tested = {
        name: lifter.bases[base].grams
        for name, lifter in desk.book.lifters.items()
        if base and base in lifter.bases
    }
    on_bar = {name: load.actual_g for name, load in loads.items()}
    return for_lifters(served(desk.book.room, slot.exercise.load, dose), on_bar, tested)


@check(
    "speed-set",
    Family.LOAD,
    Severity.WARN,
    what="Sets lifted fast on an interval with a percentage: their load at the top with bands or "
    "chains, their repetitions and their interval.",
    why="Outside these limits the bar gets slow, and the sets train something else.",
    rules=(
        "speed-load-least", "speed-load-most", "speed-reps", "speed-every-least", "speed-every-most"
    ),
    source="position stand 2009: up to 60 % for power; that of 2026, from a summary: 30 to 70 %; "
    "repetitions and interval are common practice, no source",
)  # fmt: skip
def speed_set(this: Check, desk: Desk) -> Iterator[Finding]:
    """Speed sets that will not be fast."""
    for at in desk.slots:
        dose = at.slot.dose
        if not dose.fast or dose.every is None or at.slot.percent is None or is_estimate(dose):
            continue
        if not isinstance(dose.work, Reps):
            continue
        most = math.floor(desk.rule("speed-reps"))
        if dose.work.count.high > most:
            text = f"{dose.work.count.text.replace('–', '-')} reps in a speed set; at most {most}"
            change = Mending(f"write 'reps {most}'", at.rewritten(reps=str(most)))
            yield this.finds(at, text, spot=at.spot_of("reps"), change=change)
        short, long = desk.rule("speed-every-least"), desk.rule("speed-every-most")
        if not short <= dose.every <= long:
            to = clock(short if dose.every < short else long)
            text = f"a speed set every {clock(dose.every)}; {clock(short)} to {clock(long)}"
            change = Mending(f"write 'every {to}'", at.rewritten(every=to))
            yield this.finds(at, text, spot=at.spot_of("every"), change=change)
        yield from _load(this, desk, at)


def _load(this: Check, desk: Desk, at: SlotAt) -> Iterator[Finding]:
    least, most = desk.rule("speed-load-least"), desk.rule("speed-load-most")
    off = _slow_or_light(at, _tops(desk, at, at.slot.dose), least, most)
    if not off:
        return
    told = ", ".join(f"{name} {number(percent)} %" for name, percent in off.items())
    text = f"load of a speed set at the top: {told}; {least:g} to {most:g} %"
    change = Mending("take another load, or hang less on the bar")
    asked = getattr(at.slot.dose.load, "percent", None)
    if asked is not None and load_text(at.slot.dose, asked):
        heavy = any(percent > most for percent in off.values())
        for number_ in range(1, int(100 / PERCENT_STEP)):
            percent = asked + (-1 if heavy else 1) * number_ * PERCENT_STEP
            if not 0 < percent <= 100:
                break
            dose = replace(at.slot.dose, load=parse_load(load_text(at.slot.dose, percent)))
            if not _slow_or_light(at, _tops(desk, at, dose), least, most):
                to = load_text(at.slot.dose, percent)
                change = Mending(f"write '{to}'", at.rewritten(load=to))
                break
    yield this.finds(at, text, spot=at.spot_of("load"), change=change)


def _tops(desk: Desk, at: SlotAt, dose: Dose) -> dict[str, float]:
    """Load at the top as percent of the tested value, by example lifter."""
    loads = lifter_loads(desk.book, at.slot.exercise, dose, at.slot.base_id, at.slot.scale)
    variable = _variable(desk, at, dose)
    tops = {}
    for name, load in loads.items():
        actual = load.actual_percent
        if actual is not None:
            extra = variable[name].load.top - (load.actual_g or 0) / 1000 if name in variable else 0
            tops[name] = actual + 100_000 * extra / load.reference_g
    return tops


def _slow_or_light(
    at: SlotAt, tops: Mapping[str, float], least: float, most: float
) -> dict[str, float]:
    """Those outside the limits; the percentage itself where no example lifter has a value."""
    values = tops or {"the plan": at.slot.percent or least}
    return {name: round(one, 1) for name, one in values.items() if not least <= one <= most}
