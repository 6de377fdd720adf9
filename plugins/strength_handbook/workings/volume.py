"""What slots and weeks add up to, sum by sum."""

from strength_handbook.dose.one_set import one_set
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Clock, Distance, Hold
from strength_handbook.model.span import out_of_ten
from strength_handbook.plan.volume import Volume, is_hard
from strength_handbook.plan.worked import WorkedSlot, WorkedWeek
from strength_handbook.workings.aim import aim_lines
from strength_handbook.workings.load import example_of, load_lines
from strength_handbook.workings.reps import reps_lines, variable_lines
from strength_handbook.workings.tables import by_body_lines
from strength_handbook.workings.working import (
    Line,
    Working,
    by_adding,
    by_formula,
    by_rule,
    equals,
    number,
    rounding_rule,
    seconds,
    times,
)

_SUMS = (
    ("eccentric_s", "Lowering", "total_tension", seconds),
    ("isometric_s", "Holding", "", seconds),
    ("fast_reps", "Fast repetitions", "fast_repetitions", number),
    ("sets", "Sets", "", number),
    ("reps", "Repetitions", "repetition_volume", number),
)
"""Field of a volume, its name on the pages, its formula and how it is printed."""


def slot_working(book: Book, slot: WorkedSlot) -> Working | None:
    """Load, repetitions possible and volume of one slot in one week; None where nothing is known.

    Shown for the first example lifter, or for a stated example where there is none.
    """
    example = example_of(book, slot)
    alike = slot.series if slot.loads_differ else (slot,)
    several = (line for one in alike for line in load_lines(book, one, example_of(book, one)))
    loads = list(dict.fromkeys(several))
    lines = [*loads, *variable_lines(book, slot, example.name), *reps_lines(book, slot)]
    lines += [*by_body_lines(slot, book.room.units), *volume_lines(book, slot)]
    lines += aim_lines(slot)
    if not lines:
        return None
    rounding = rounding_rule(slot.scale) if slot.scale is not None and loads else ""
    return Working(example.name if loads else "", tuple(lines), rounding)


def volume_lines(book: Book, slot: WorkedSlot) -> list[Line]:
    """Repetitions, seconds and hard sets of one slot."""
    return [*_reps(book, slot), *_seconds(slot), *_hard_sets(book, slot)]


def _reps(book: Book, slot: WorkedSlot) -> list[Line]:
    dose, volume = slot.dose, slot.volume
    reps = one_set(book.rule, dose).reps
    if not reps:
        return []
    each = " + ".join(map(number, reps))
    factors = [times(dose.sets.middle, "set"), each if len(reps) == 1 else f"({each})"]
    if dose.series:
        parts = [(one.sets.middle, one.reps.middle) for one in dose.series if one.reps is not None]
        summed = " + ".join(f"{number(sets)} × {number(each)}" for sets, each in parts)
        factors = [f"({summed})" if dose.each_side else summed]
    if dose.each_side:
        factors.append("2 sides")
    text = f"{' × '.join(factors)} = {times(volume.reps, 'repetition')}"
    lines = [by_formula("repetition_volume", text)]
    if volume.fast_reps:
        lines.append(by_formula("fast_repetitions", f"Fast: all {number(volume.fast_reps)}"))
    return lines


def _seconds(slot: WorkedSlot) -> list[Line]:
    dose, volume, lines = slot.dose, slot.volume, []
    sides = " × 2 sides" if dose.each_side else ""
    if volume.eccentric_s and volume.reps:
        each = volume.eccentric_s / volume.reps
        text = (
            f"{number(volume.reps)} × {seconds(each)} {equals(each, volume.eccentric_s)} "
            f"{seconds(volume.eccentric_s)} of lowering"
        )
        lines.append(by_formula("total_tension", text))
    if isinstance(dose.work, Hold):
        text = (
            f"{number(dose.sets.middle)} × {seconds(dose.work.seconds)}{sides} = "
            f"{seconds(volume.isometric_s)} of holding"
        )
        lines.append(by_formula("isometric_dose", text))
    elif volume.isometric_s and volume.reps:
        each = volume.isometric_s / volume.reps
        text = (
            f"{number(volume.reps)} × {seconds(each)} {equals(each, volume.isometric_s)} "
            f"{seconds(volume.isometric_s)} of holding"
        )
        lines.append(by_formula("total_tension", text))
    return lines


def _hard_sets(book: Book, slot: WorkedSlot) -> list[Line]:
    dose, sets = slot.dose, slot.volume.sets
    if dose.going is not None:
        return []
    held = isinstance(dose.work, Hold | Distance | Clock)
    rule = by_rule(book, "hard-hold-effort" if held else "hard-set-reserve")
    if not is_hard(book, dose):
        if held:
            why = (
                "No effort written"
                if dose.reserve is None
                else f"Effort {out_of_ten(dose.reserve):g}"
            )
        elif dose.every is not None and dose.fast:
            why = "Fast sets on an interval"
        else:
            why = f"{dose.reserve or 0:g} left"
        return [by_formula("pelland_2025", f"{why}: not counted as hard sets"), rule]
    direct = [muscle.value for muscle in slot.exercise.muscles.direct]
    helping = [muscle.value for muscle in slot.exercise.muscles.helping]
    text = f"{_list(direct)}: {number(sets)} × 1 = {times(sets, 'hard set')}"
    if helping:
        text += f"; {_list(helping)}: {number(sets)} × 0.5 {equals(sets / 2)} {number(sets / 2)}"
    return [by_formula("pelland_2025", _capital(text)), rule]


def week_working(book: Book, week: WorkedWeek) -> Working:
    """The sums of a week, session by session, and the hard sets of every muscle."""
    counted = [session for session in week.sessions if not session.session.optional]
    lines = []
    for field, name, formula, printed in _SUMS:
        total = float(getattr(week.volume, field))
        if not total:
            continue
        parts = [
            f"{session.session.title} {number(getattr(session.volume, field))}"
            for session in counted
            if getattr(session.volume, field)
        ]
        text = f"{name}: {' + '.join(parts)} {equals(total)} {printed(total)}"
        lines.append(by_formula(formula, text) if formula else by_adding(text))
    for muscle in sorted(week.volume.hard_sets, key=lambda one: (-week.volume.hard_sets[one], one)):
        parts = [
            f"{session.session.title} {slot.order} {_counted(slot.volume, muscle)}"
            for session in counted
            for slot in session.slots
            if muscle in slot.volume.hard_sets
        ]
        total = week.volume.hard_sets[muscle]
        text = f"{muscle.replace('-', ' ')}: {' + '.join(parts)} {equals(total)} {number(total)}"
        lines.append(by_formula("pelland_2025", _capital(text)))
    lines += [by_rule(book, slug) for slug in ("hard-set-reserve", "hard-hold-effort")]
    left_out = [one.session.title for one in week.sessions if one.session.optional]
    rounding = f"Not counted, because optional: {', '.join(left_out)}." if left_out else ""
    return Working(f"Week {week.week}", tuple(lines), rounding)


def _counted(volume: Volume, muscle: str) -> str:
    counted = volume.hard_sets[muscle]
    return f"{number(volume.sets)} × 0.5" if counted < volume.sets else number(counted)


def _list(names: list[str]) -> str:
    return ", ".join(name.replace("-", " ") for name in names)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
