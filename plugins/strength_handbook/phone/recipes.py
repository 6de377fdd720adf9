"""How a phone makes a dose's load from the numbers kept in it: a recipe in whole numbers.

A recipe holds no load of anybody's. It says which tested value and which percentage, and which of
the site's lists (`phone_lists`) the phone picks from. All numbers are whole: grams, and millionths
of a percent, so that phone and build cannot round apart. Keys are short, for there are hundreds:

    a  a pace or watts of a tested best, and nothing else: `phone/aims.py`
    s  id of the scale                  b, p  tested value, and the percentage of it
    w  share of the body that moves     m     percentage of body mass
    f  the same grams for everybody     e     percentages for one repetition more and one less
    x  1: a top set, only expected      t, o  percentage of the top; the top's own of the base
    r  percentage to ramp to
    l  test: n repetitions, a attempts, p percentage of the base that is expected, f the first
       attempt as a share of it, w shares of that on the way up, u and d steps up and down
    c  id of strip loads, or where a body is part of what is moved: number of loads, percent that
       each leaves, and what a gram of the body counts beside the plates
    k  sets that differ in load, those that are alike together: their words, and what of the recipe
       is their own: p, f, m, e; what stands beside k is that of the heaviest
    v  id of bands or chains            q     percentage of the base that bands add at the top
    d  doors: place in the list of doors, and a recipe, or z as percentage of today's
    y  exercise whose table by body weight says where to start without a tested value
    n  next time: the result, and u up by grams, d down by a tenth, p percent, l or h as planned,
       a at a pace or watts
"""

from collections.abc import Iterator, Mapping
from typing import Any

from strength_handbook.calc.repetitions import percent_for_reps
from strength_handbook.dose.printing import core_notation
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Dose, StripSet
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.load import BodyWeight, FixedLoad, PercentOfBodyMass, PercentOfTop
from strength_handbook.model.loading import Loading
from strength_handbook.phone.aims import aim_recipe, next_aim
from strength_handbook.phone.lists import PhoneLists, millionths
from strength_handbook.plan.doors import NAMES, DoorPlan, doors_of
from strength_handbook.plan.help import with_help
from strength_handbook.plan.loads import body_share_g
from strength_handbook.plan.method_plan import MethodPlan, method_plan
from strength_handbook.plan.next_written import what_follows
from strength_handbook.plan.progress import next_target
from strength_handbook.plan.reference import (
    is_estimate,
    load_rules,
    one_off,
    reference_percent,
    top_percent,
)
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.strip_lifters import depends_on_body
from strength_handbook.plan.strip_load import aim_percent
from strength_handbook.plan.strips import counts_beside
from strength_handbook.plan.work_out import own_base
from strength_handbook.plan.worked import (
    Worked,
    WorkedProgram,
    WorkedSession,
    WorkedSlot,
    WorkedWeek,
)

Recipe = dict[str, Any]

MOST_FOR_SPEED = 65.0
"""Percent of a best up to which fast sets are for speed. Common practice, no source."""
LEAST_LEFT_FOR_SPEED = 5.0
"""Repetitions that such sets leave, where that is said. Common practice, no source."""


def load_recipe(
    book: Book,
    lists: PhoneLists,
    exercise: Exercise,
    dose: Dose,
    base_id: str | None,
    scale: Scale | None,
) -> Recipe | None:
    """The load alone; None where it takes no number or effort decides, as in `plan_load`.

    Args:
        book: exercises and house rules.
        lists: what the phone picks from.
        exercise: what is done.
        dose: what is asked.
        base_id: a tested value of a program, or None.
        scale: the loads that exist.
    """
    asked = with_help(dose, exercise.load, book.room.bands)
    recipe = _ground(lists, exercise.load, asked, scale)
    rules = load_rules(book)
    percent = reference_percent(asked, rules)
    if percent is not None:
        if base_id is None or base_id not in lists.bases:
            return None
        recipe |= {"b": base_id, "p": millionths(percent)}
        if off := one_off(asked, rules):
            recipe["e"] = [millionths(one) for one in off]
        return recipe
    match asked.load:
        case FixedLoad(mass):
            return recipe | {"f": mass.grams}
        case BodyWeight(change, sign):
            return recipe | {"f": sign * change.grams}
        case PercentOfBodyMass(share):
            return recipe | {"m": millionths(share)}
        case _:
            return None


def slot_recipe(worked: Worked, lists: PhoneLists, slot: WorkedSlot) -> Recipe | None:
    """A slot's load with what hangs on it, and today's top; None where nothing is to be known."""
    if found := aim_recipe(slot):
        return {"a": found}
    dose, base_id, scale = slot.dose, _known(lists, slot.base_id), slot.scale
    recipe = load_recipe(worked.book, lists, slot.exercise, dose, slot.base_id, scale)
    if isinstance(dose.load, PercentOfTop) and dose.top is not None and scale is not None:
        if recipe is None:
            recipe = _ground(lists, slot.exercise.load, dose, scale)
        recipe["t"] = millionths(dose.load.percent)
        if base_id and (expected := top_percent(dose)) is not None:
            recipe["o"] = millionths(expected)
    elif recipe is not None and dose.top is not None and not is_estimate(dose):
        recipe["x"] = 1
    if slot.exercise_id in lists.data["starts"] and _needs_start(slot):
        if recipe is None:
            recipe = _ground(lists, slot.exercise.load, dose, scale)
        recipe["y"] = slot.exercise_id
    if recipe is not None and slot.loads_differ:
        recipe["k"] = list(_series(worked.book, lists, slot))
    if recipe is not None and (on_top := lists.on_top_id(slot)):
        recipe["v"] = on_top
        if slot.on_top is not None and slot.on_top.top_share is not None:
            recipe["q"] = millionths(slot.on_top.top_share)
    return recipe


def _series(book: Book, lists: PhoneLists, slot: WorkedSlot) -> Iterator[list[Any]]:
    """What is its own of each of the sets that differ."""
    for one in slot.series:
        own = load_recipe(book, lists, one.exercise, one.dose, one.base_id, one.scale) or {}
        words = core_notation(one.dose, load=False)
        yield [words, {key: value for key, value in own.items() if key in "pfme"}]


def _needs_start(slot: WorkedSlot) -> bool:
    """True where the load follows from a tested value, or from effort alone.

    Not for tests and sets for speed: a starting load is one for a few hard repetitions.
    """
    dose = slot.dose
    hard = dose.said.test is None and slot.on_top is None and not _for_speed(slot)
    return hard and (slot.percent is not None or dose.load is None)


def _for_speed(slot: WorkedSlot) -> bool:
    """True for light sets as fast as possible; one that is only pushed up fast may be hard."""
    dose = slot.dose
    if slot.percent is None:
        return dose.said.intent == "fast"
    easy = dose.reserve is None or dose.reserve >= LEAST_LEFT_FOR_SPEED
    return dose.fast and easy and slot.percent <= MOST_FOR_SPEED


def list_recipe(worked: Worked, lists: PhoneLists, slot: WorkedSlot) -> Recipe | None:
    """The same for a list of doses, where nobody is asked for today's top."""
    recipe = slot_recipe(worked, lists, slot)
    if recipe is None or "t" not in recipe:
        return recipe
    return {key: value for key, value in recipe.items() if key not in "to"} | {"x": 1}


def full_recipe(
    worked: Worked,
    lists: PhoneLists,
    program: WorkedProgram,
    week: WorkedWeek,
    session: WorkedSession,
    slot: WorkedSlot,
) -> Recipe | None:
    """The same with steps, strips, doors and what comes next."""
    recipe = slot_recipe(worked, lists, slot) or {}
    plan = method_plan(worked.book, slot, session, week)
    if not recipe and plan.test is not None and _known(lists, slot.base_id):
        recipe = _ground(lists, slot.exercise.load, slot.dose, slot.scale) | {"b": slot.base_id}
    recipe |= _method(plan, lists, slot) if recipe else {}
    doors = doors_of(worked, program, slot)
    if found := list(_doors(worked.book, lists, program, slot, doors, recipe)):
        recipe["d"] = found
    if (has_load(recipe) or "a" in recipe) and (
        moves := list(_next(worked.book, lists, program, session, slot, recipe))
    ):
        recipe["n"] = moves
    return recipe or None


def has_load(recipe: Mapping[str, Any]) -> bool:
    """True where the recipe makes a load without knowing today's top."""
    return any(key in recipe for key in ("p", "f", "m"))


def _ground(lists: PhoneLists, loading: Loading, dose: Dose, scale: Scale | None) -> Recipe:
    """Scale and share of the body, which every recipe begins with."""
    recipe: Recipe = {} if scale is None else {"s": lists.scale_ids[scale]}
    if share := body_share_g(loading, 100.0, dose.said.height):
        recipe["w"] = millionths(share)
    return recipe


def _known(lists: PhoneLists, base_id: str | None) -> str | None:
    return base_id if base_id in lists.bases else None


def _method(plan: MethodPlan, lists: PhoneLists, slot: WorkedSlot) -> Recipe:
    recipe: Recipe = {}
    if plan.ramps is not None and plan.ramps.percent is not None:
        recipe["r"] = millionths(plan.ramps.percent)
    if plan.test is not None and _known(lists, slot.base_id):
        test, rules = plan.test, plan.test.rules
        recipe["l"] = {
            "n": test.rm,
            "a": test.attempts,
            "p": millionths(percent_for_reps(test.rm)),
            "f": millionths(rules.first),
            "w": [millionths(one) for one in test.shares],
            "u": [millionths(one) for one in rules.up],
            "d": [millionths(one) for one in rules.down],
        }
    if plan.strips is not None and isinstance(slot.dose.work, StripSet) and slot.scale is not None:
        asked, load, height = slot.dose.work.strip, slot.exercise.load, slot.dose.said.height
        if depends_on_body(load, slot.scale, asked):
            counts = millionths(counts_beside(load, height))
            recipe["c"] = [asked.loads, aim_percent(asked.drop), counts]
        else:
            recipe["c"] = lists.strip_id(slot)
    return recipe


def _doors(
    book: Book,
    lists: PhoneLists,
    program: WorkedProgram,
    slot: WorkedSlot,
    doors: tuple[DoorPlan, ...],
    today: Recipe,
) -> Iterator[list[Any]]:
    """Doors whose load is known, those of a share once today's is."""
    places = list(NAMES)
    for plan in doors:
        if plan.dose is None:
            continue
        if plan.share is not None:
            if not has_load(today) or (plan.share == 100 and not plan.changed):
                continue
            ground = _ground(lists, plan.exercise.load, plan.dose, plan.scale)
            if plan.to is None:
                ground |= {"w": today["w"]} if "w" in today else {}
            yield [places.index(plan.key), ground | {"z": millionths(plan.share)}]
        elif plan.to is not None or (plan.own is not None and plan.own.load is not None):
            base_id = own_base(plan.exercise) if plan.to else slot.base_id
            if base_id not in program.program.bases:
                base_id = None
            found = load_recipe(book, lists, plan.exercise, plan.dose, base_id, plan.scale)
            if found is not None:
                yield [places.index(plan.key), found]


def _next(
    book: Book,
    lists: PhoneLists,
    program: WorkedProgram,
    session: WorkedSession,
    slot: WorkedSlot,
    today: Recipe,
) -> Iterator[list[Any]]:
    """Results after which the load is another one."""
    after = what_follows(program, session, slot)
    goal = next_target(slot, after=after, units=book.room.units)
    then = after.slot
    later = then and load_recipe(book, lists, then.exercise, then.dose, then.base_id, then.scale)
    for outcome in goal.outcomes if goal is not None else ():
        move = outcome.move
        if move is None:
            continue
        match move.kind:
            case "up":
                yield [outcome.when, {"u": round(move.amount)}]
            case "down":
                yield [outcome.when, {"d": 1}]
            case "pace" | "later" if "a" in today:
                if aim := next_aim(slot, then, outcome):
                    yield [outcome.when, {"a": aim}]
            case "percent" if "b" in today:
                yield [outcome.when, {"p": millionths(move.amount)}]
            case "later" if later and any(today.get(key) != later[key] for key in later):
                yield [outcome.when, {"l": later}]
            case "heavier" if later:
                yield [outcome.when, {"h": later}]
