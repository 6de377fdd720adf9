"""For one slot: where a member reads off how heavy."""

from dataclasses import dataclass, replace
from html import escape

from strength_handbook.dose.printing import core_notation
from strength_handbook.model.book import Book
from strength_handbook.model.dose import ClusterSet, Count, StripSet
from strength_handbook.model.load import (
    BodyWeight,
    FixedLoad,
    PercentOfBodyMass,
    PercentOfEffort,
    PercentOfSystem,
    PercentOfTop,
    RepMax,
    Setting,
)
from strength_handbook.model.loading import (
    BodyWeightLift,
    ByEffort,
    OnMachine,
    OnPivot,
    PushUp,
    StrapRow,
)
from strength_handbook.model.printed import count_word, mass, percent
from strength_handbook.model.quantities import Mass
from strength_handbook.model.span import Span, out_of_ten
from strength_handbook.pages.aim_html import aim_strip_html
from strength_handbook.pages.load_html import load_line, strip_html, table_html
from strength_handbook.pages.series_html import series_strip
from strength_handbook.pages.variable_html import example_note, help_words, variable_strip
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.strip_lifters import FIRST_REPS
from strength_handbook.plan.tables import (
    base_strip,
    body_masses,
    exercise_table,
    loading_table,
    share_table,
)
from strength_handbook.plan.worked import WorkedSlot

ROUNDED = {
    "nearest": "This lift takes the nearest load: it may be a little above the plan.",
    "up": "This lift takes the next load up, not the one below.",
}
"""Said where loads are not rounded down, as everywhere else."""


@dataclass(frozen=True, slots=True)
class Lookup:
    """How to find the load of a slot.

    Attributes:
        sentence: the answer, or how to get it, in one sentence.
        table: HTML of the strip to read off, or empty.
        by_body: HTML of the table by body weight for those without a tested value, or empty.
        by_body_below: the exercise's own table by body weight helps here.
        parts: what the sentence was put together from, for a card that says each once.
    """

    sentence: str
    table: str = ""
    by_body: str = ""
    by_body_below: bool = False
    parts: tuple[str, ...] = ()


def below_words(slot: WorkedSlot, units: str) -> str:
    """What the exercise's own page has for those without a tested value; empty where nothing."""
    loading = slot.exercise.load
    if exercise_table(loading, slot.scale, units) is not None:
        return "Starting loads by body weight"
    return "What the hands hold" if isinstance(loading, OnPivot) else ""


def slot_lookup(slot: WorkedSlot, units: str) -> Lookup:
    """The look-up of one slot in one week."""
    found = _of_series(slot, units) if slot.loads_differ else _lookup(slot, units)
    if found.by_body_below and not below_words(slot, units):
        found = replace(found, by_body_below=False)
    said = [found.sentence]
    if slot.scale is not None and found.table and (how := ROUNDED.get(slot.scale.rounding)):
        said.append(how)
    if found.table and (middle := _middle(slot)):
        said.append(middle)
    if slot.on_top is not None:
        what = "bands" if slot.on_top.chain is None else "chains"
        said.append(f"These are bar and plates; the {what} come on top.")
        found = replace(found, table=variable_strip(slot, units) or found.table)
    if words := help_words(slot, units):
        said = [*(said if slot.dose.load is not None else ()), words]
        found = replace(found, by_body_below=False)
    return replace(found, sentence=" ".join(said), parts=tuple(said))


def _middle(slot: WorkedSlot) -> str:
    """Where a percentage is a range, which one the table has."""
    asked = getattr(slot.dose.load, "percent", None)
    if not isinstance(asked, Span) or slot.loads_differ:
        return ""
    return f"The loads are those of {percent(asked + 0.0)}, the middle of the range."


def _of_series(slot: WorkedSlot, units: str) -> Lookup:
    """Sets that differ: one strip with a column for each load, or a look-up for each."""
    alike = {(one.dose.load, one.percent): one for one in slot.series}
    several = {core_notation(one.dose): _lookup(one, units) for one in alike.values()}
    by_body = "".join(
        f"<p>{escape(head)}</p>{found.by_body}" for head, found in several.items() if found.by_body
    )
    below = any(found.by_body_below for found in several.values())
    moves_body = isinstance(slot.dose.load, PercentOfSystem) or isinstance(
        slot.exercise.load, BodyWeightLift
    )
    if slot.base is not None and slot.percent is not None and not moves_body:
        sentence = "Find your best in the first column; each load has a column of its own."
        return Lookup(sentence, series_strip(slot, slot.base, units), by_body, below)
    sentences = " ".join(dict.fromkeys(found.sentence for found in several.values()))
    table = "".join(found.table for found in several.values())
    return Lookup(sentences, table, by_body, below)


def _lookup(slot: WorkedSlot, units: str) -> Lookup:
    dose, loading, scale = slot.dose, slot.exercise.load, slot.scale
    load = dose.load
    if slot.percent is not None and slot.base is not None:
        if isinstance(load, PercentOfSystem) or isinstance(loading, BodyWeightLift):
            table = loading_table(loading, scale, slot.percent, units)
            caption = (
                f"{percent(slot.percent)} of your best total. Columns: what you added (+) or took "
                f"off (−) at your best, {units}. Cells: what to add or take off today, {units}."
            )
            sentence = f"Find your body weight, then your best {slot.exercise.name.lower()}."
            return Lookup(sentence, table_html(table, caption, units) if table else "")
        strip = strip_html(base_strip(slot.base, scale, slot.percent), units)
        body = loading_table(loading, scale, slot.percent, units)
        caption = (
            f"Today by body weight, {units}. Columns: your best single as a multiple of your body "
            "weight."
        )
        by_body = table_html(body, caption, units) if body else ""
        return Lookup(_of_base(slot), strip, by_body)
    if isinstance(load, PercentOfBodyMass) and scale is not None:
        each = ", each hand" if scale.per_hand else ""
        table = share_table("carry", scale, (load.percent + 0.0,), body_masses(units))
        caption = f"{percent(load.percent + 0.0)} of body weight{each}, {units}"
        return Lookup("Find your body weight.", table_html(table, caption, units))
    if isinstance(load, FixedLoad):
        # What the hands hold stands on the exercise's page.
        lever = isinstance(loading, OnPivot)
        return Lookup(_for_everybody(load, scale), by_body_below=lever)
    if isinstance(load, BodyWeight):
        return Lookup(_body_weight(load), by_body_below=isinstance(loading, PushUp | StrapRow))
    if isinstance(load, Setting | RepMax | PercentOfTop):
        feel = "work up to it by feel"
        if isinstance(load, RepMax) and load.percent != 100:
            feel = f"{percent(load.percent)} of a load you could lift {count_word(load.reps)} times"
        return Lookup(f"{load.text}: {feel}.", by_body_below=True)
    if dose.going is not None:
        return _of_best(slot)
    return Lookup(_by_effort(slot), by_body_below=not isinstance(loading, ByEffort | OnMachine))


def _for_everybody(load: FixedLoad, scale: Scale | None) -> str:
    """A mass, or both ends of a range and what is worked out of it."""

    def real(asked: Mass) -> str:
        # A deload's share of a fixed load is rounded to one that exists.
        step = scale.best(asked.grams) if scale is not None else None
        return mass(step.grams if step else asked.grams, asked.unit)

    ends = tuple(dict.fromkeys(map(real, load.ends)))
    middle = f"; what is worked out here is for {real(load.mass)}" if len(ends) > 1 else ""
    return f"{' to '.join(ends)} for everybody{middle}."


def _of_base(slot: WorkedSlot) -> str:
    if slot.dose.top is not None:
        return (
            "Today's top set decides: take the given share of it. From your best single, expect "
            "about this."
        )
    return "Find your best in the first column."


def _body_weight(load: BodyWeight) -> str:
    if not load.change.grams:
        return "Body weight only; nothing added."
    what = mass(load.change.grams, load.change.unit)
    return f"Body weight {'plus' if load.sign > 0 else 'less'} {what}."


def _of_best(slot: WorkedSlot) -> Lookup:
    """Rowing, running and the like: a strip of paces or watts, and how to share out the effort."""
    strip, begin = slot.aims, _by_breath(slot)
    if strip is None or slot.dose.load is None:
        return Lookup(begin)
    table = aim_strip_html(strip, slot.dose.load.text)
    return Lookup(f"Find your best in the first column. {begin}", table)


def _by_breath(slot: WorkedSlot) -> str:
    """How hard rowing, running and the like should be: the dose says it, the rest is patience."""
    if slot.dose.sets.high > 1:
        return "Begin so that the last one is as fast as the first."
    return "Begin so that the second half is as fast as the first."


def _by_effort(slot: WorkedSlot) -> str:
    loading = slot.exercise.load
    if isinstance(loading, ByEffort):
        return loading.by
    if slot.dose.said.test is not None:
        return "The steps below lead up to the first attempt."
    reserve, load = slot.dose.reserve, slot.dose.load
    share = f" Take {percent(load.percent)} of it." if isinstance(load, PercentOfEffort) else ""
    if reserve is None:
        return "Choose a load that lets every repetition look the same."
    if slot.dose.reps is None:
        return f"Choose a load that feels like {out_of_ten(reserve):g} out of 10 by the end."
    count, first = slot.dose.reps, ""
    match slot.dose.work:
        case StripSet(strip):
            count, first = strip.reps or Count(*FIRST_REPS), "first "
        case ClusterSet(cluster) if cluster.falling:
            count = Count(cluster.parts[0], cluster.parts[0])
    reps = f"{count.high}" if count.low == count.high else f"{count.low} to {count.high}"
    choose = f"Choose a {first}load for {reps} good repetitions with {reserve:g} left."
    return f"{choose}{share} Write it down."


def example_lines(slot: WorkedSlot, book: Book) -> list[tuple[str, str]]:
    """Loads of the example lifters, as name and HTML."""
    units, show_from = book.room.units, book.rule("show-planned-from")
    alike = slot.series if slot.loads_differ else (slot,)
    return [
        (
            name,
            " → ".join(
                load_line(one.loads[name], one.scale, units, show_from)
                for one in alike
                if name in one.loads
            )
            + example_note(slot, name, units),
        )
        for name in slot.loads
    ]
