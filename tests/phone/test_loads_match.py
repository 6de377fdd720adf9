"""The phone has no opinion of its own: its loads are the build's, in kilograms and in pounds.

The loads of many random lifters are worked out twice: by the build, and by the phone's script under
node from the recipes and lists that the pages carry.
"""

import random
import re
from collections.abc import Iterator
from dataclasses import replace
from html import unescape
from pathlib import Path
from typing import Any

import pytest

import demo
import phone_rooms as rooms
from phone_script import ask
from strength_handbook.calc.repetitions import TEXTBOOK_CHART, percent_for_reps
from strength_handbook.model.book import Book
from strength_handbook.model.dose import StripSet
from strength_handbook.model.lifter import Lifter
from strength_handbook.model.quantities import GRAMS_PER_POUND, Mass, in_unit, stamped
from strength_handbook.pages.load_html import load_line
from strength_handbook.pages.variable_html import half
from strength_handbook.phone.lists import phone_lists
from strength_handbook.phone.recipes import full_recipe
from strength_handbook.plan.attempts import Next
from strength_handbook.plan.doors import slot_doors
from strength_handbook.plan.ladder import Ladder
from strength_handbook.plan.loads import PlannedLoad, achieved
from strength_handbook.plan.method_plan import method_plan
from strength_handbook.plan.next_written import what_follows
from strength_handbook.plan.progress import next_target
from strength_handbook.plan.reference import is_estimate
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.variable import Variable
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import (
    Use,
    Worked,
    WorkedProgram,
    WorkedSession,
    WorkedSlot,
    WorkedWeek,
)
from strength_handbook.reading.book import read_book
from thorough import tries

LIFTERS = tries(4, 8)
LEAST = 500 * LIFTERS
"""Comparisons below which the test says too little."""

Data = dict[str, Any]


def crowd(book: Book, seed: str) -> Book:
    """The same book with random lifters, far more varied than its examples."""
    rng, units = random.Random(seed), book.room.units
    bases = {key for one in book.programs for key in one.program.bases}

    def mass(low: float, high: float) -> Mass:
        kg = rng.uniform(low, high)
        step = rng.choice((1, 50, 100, 500, 2500) if units == "kg" else (0.1, 0.25, 0.5, 5))
        if units == "kg":
            return Mass(round(kg * 1000 / step) * round(step))
        return Mass(round(round(kg * 1000 / GRAMS_PER_POUND / step) * step * GRAMS_PER_POUND), "lb")

    people = {}
    for number in range(1, LIFTERS + 1):
        body = mass(40, 140)
        # Every other one lifts about the own body: there help ends and plates begin.
        low, high = (0.93 * body.kg, 1.25 * body.kg) if number % 2 else (20, 260)
        tested = {key: mass(low, high) for key in sorted(bases)}
        people[f"P{number}"] = Lifter.model_construct(bodyweight=body, bases=tested)
    return replace(book, lifters=people)


def uses(worked: Worked) -> Iterator[Use]:
    for program in worked.programs:
        for week in program.weeks:
            for session in week.sessions:
                for slot in session.slots:
                    yield Use(program, week, session, slot)


class Expected:
    """What the build says of one use and one lifter, in the form in which the script answers."""

    def __init__(self, worked: Worked, use: Use, name: str) -> None:
        self.book, self.worked, self.use, self.name = worked.book, worked, use, name
        self.slot: WorkedSlot = use.slot
        self.units = worked.book.room.units

    def plain(self, load: PlannedLoad | None, scale: Scale | None) -> Data | None:
        if load is None:
            return None
        line = unescape(re.sub(r"<[^>]*>", "", load_line(load, scale, self.units, self.show_from)))
        return {
            "wanted": round(load.planned_g * 1000),
            "grams": load.actual_g,
            "parts": list(load.step.parts) if load.step and not load.help_g else [],
            # The examples print help with a minus before it; that word alone says it.
            "line": line.removeprefix("−") if load.help_g else line,
        }

    @property
    def show_from(self) -> float:
        return self.book.rule("show-planned-from")

    def answer(self) -> Data:
        slot, name = self.slot, self.name
        program, week, session = self.use.program, self.use.week, self.use.session
        plan = method_plan(self.book, slot, session, week)
        found = plan.strips.by_lifter.get(name) if plan.strips else None
        return {
            "load": self.plain(slot.loads.get(name), slot.scale),
            "range": self.range(),
            "series": [
                (self.plain(one.load, slot.scale), list(one.off), list(one.on))
                for one in (plan.series.by_lifter.get(name, ()) if plan.series else ())
            ],
            "doors": self.doors(program),
            "next": self.next(program, session),
            "ramp": self.ramp(week, session),
            "ladder": self.ladder(plan.test.by_lifter.get(name) if plan.test else None),
            "strips": found
            and [
                {
                    "grams": one.amount, "off": list(one.off), "hold": one.hold,
                    "parts": list(one.parts),
                }
                for one in found
            ],
            "on_top": self.on_top(slot.variable.get(name)),
            "back_off": [
                (row.top_g, self.plain(row.load, slot.scale)) for row in self.back_off_rows(plan)
            ],
        }  # fmt: skip

    def back_off_rows(self, plan: Any) -> tuple[Any, ...]:
        return plan.back_off.by_lifter.get(self.name, ()) if plan.back_off else ()

    def range(self) -> list[Any] | None:
        slot, load = self.slot, self.slot.loads.get(self.name)
        dose = slot.dose
        if load is None or not is_estimate(dose) or dose.reps is None or dose.reserve is None:
            return None
        total, longest = dose.reps.high + dose.reserve, TEXTBOOK_CHART[-1][0]
        return [
            self.plain(
                achieved(
                    load.reference_g * percent_for_reps(reps) / 100 - load.body_g,
                    slot.scale, load.reference_g, load.body_g, self.units,
                ),
                slot.scale,
            )
            for reps in (min(total + 1, longest), max(total - 1, 1))
        ]  # fmt: skip

    def doors(self, program: WorkedProgram) -> Data:
        plans = slot_doors(self.book, program.program.bases, self.worked.scales, self.slot)
        return {
            plan.name: self.plain(plan.loads[self.name], plan.scale)
            for plan in plans
            if self.name in plan.loads and not (plan.share == 100 and not plan.changed)
        }

    def next(self, program: WorkedProgram, session: WorkedSession) -> Data:
        after = what_follows(program, session, self.slot)
        goal = next_target(self.slot, self.name, after=after, units=self.units)
        today = self.slot.loads.get(self.name)
        if goal is None or today is None or today.actual_g is None:
            return {}
        # Next time's strips put the same load together in their own way, which nobody reads today.
        strips = after.slot is not None and isinstance(after.slot.dose.work, StripSet)
        return {
            one.when: (
                one.load.actual_g,
                list(one.load.step.parts)
                if one.load.step and not one.load.help_g and not strips
                else None,
            )
            for one in goal.outcomes
            if one.load is not None and one.load.actual_g not in (None, today.actual_g)
        }

    def ramp(self, week: WorkedWeek, session: WorkedSession) -> list[Data]:
        ramps = method_plan(self.book, self.slot, session, week).ramps
        found = ramps.by_lifter.get(self.name) if ramps else None
        return [
            {
                "grams": one.grams, "reps": one.reps, "on": list(one.added), "off": list(one.off),
                "parts": list(one.parts),
            }
            for one in found or ()
        ]  # fmt: skip

    def ladder(self, found: Ladder | None) -> Data | None:
        if found is None:
            return None
        scale = self.slot.scale
        return {
            "steps": [[self.plain(one.load, scale), list(one.reps)] for one in found.steps],
            "first": self.plain(found.first, scale),
            "good": found.good and self.next_range(found.good, scale),
            "missed": found.missed and self.next_range(found.missed, scale),
            "attempts": [sequence(found, code) for code in range(8)],
        }

    def next_range(self, found: Next, scale: Scale | None) -> list[Data | None]:
        return [self.plain(found.low, scale), self.plain(found.high, scale)]

    def on_top(self, found: Variable | None) -> Data | None:
        if found is None:
            return None
        unit = GRAMS_PER_POUND if self.units == "lb" else 500.0
        load = found.load
        asked = self.slot.on_top
        of_best = asked is not None and asked.needs_base
        base = self.slot.loads[self.name].reference_g / 1000
        return {
            "what": found.what,
            "hangs": load.top_share > 0,
            "bottom": round(half(load.bottom, self.units) / unit),
            "middle": round(half(load.middle, self.units) / unit),
            "top": round(half(load.top, self.units) / unit),
            # Of the best where the dose's share is one, so that both lines say the same.
            "ofBest": of_best,
            "share": round(load.top * load.top_share / base if of_best else load.top_share),
        }


def sequence(found: Ladder, code: int) -> list[list[int | None] | None]:
    """The ranges after three results, good where a bit is set, the lower end taken each time."""
    now, good, missed = found.first.actual_g, None, None
    ranges: list[list[int | None] | None] = []
    for bit in range(3):
        if now is None:
            ranges.append(None)
            continue
        was = bool(code >> bit & 1)
        good, missed = (now, missed) if was else (good, now)
        then = found.tested.after(good, missed, was_good=was)
        now = None if then is None else then.low.actual_g
        ranges.append(None if then is None else [now, then.high.actual_g])
    return ranges


def same_load(phone: Data | None, build: Data | None, off_mg: int = 1) -> bool:
    """The same load from the same parts, in the same words, and wanted alike to a milligram.

    A door's share may be of a load that is a milligram off, so of that it may be two.
    """
    if phone is None or build is None:
        return phone is build
    line = build["line"]
    words = phone["amount"] == line[: len(phone["amount"])]
    if phone["grams"] is None:
        words = phone["amount"].startswith(line)  # the script also names the heaviest
    if phone["apart"]:
        words = words and line.endswith(phone["apart"])
    else:
        words = words and ", this is " not in line
    return (
        (phone["grams"], phone["parts"]) == (build["grams"], build["parts"])
        and abs(phone["wanted"] - build["wanted"]) <= off_mg
        and words
    )


def differences(phone: Data, build: Data, tops: list[int]) -> Iterator[str]:
    """Names of the answers in which phone and build differ."""
    if not same_load(phone["load"], build["load"]):
        yield "load"
    pairs = zip(phone["range"] or [], build["range"] or [], strict=True)
    if not all(same_load(*pair) for pair in pairs):
        yield "range"
    sets = list(zip(phone["series"] or [], build["series"], strict=True))
    if not all(same_load(one[0], other[0]) and tuple(one[1:]) == other[1:] for one, other in sets):
        yield "series"
    doors = {name: load for name, load in phone["doors"] or [] if load}
    if doors.keys() != build["doors"].keys() or not all(
        same_load(doors[name], build["doors"][name], off_mg=2) for name in doors
    ):
        yield "doors"
    following = {
        when: (load["grams"], build["next"].get(when, (0, None))[1] and load["parts"])
        for when, load in phone["next"] or []
        if load
    }
    if following != build["next"]:
        yield "next"
    for name in ("ramp", "strips", "on_top"):
        if phone[name] != build[name]:
            yield name
    if not same_ladder(phone["ladder"], build["ladder"]):
        yield "ladder"
    if tops and (
        not all(
            same_load(one, row)
            for one, (_, row) in zip(phone["back_off"], build["back_off"], strict=True)
        )
        or phone["expected"] not in tops
    ):
        yield "back-off"


def same_ladder(phone: Data | None, build: Data | None) -> bool:
    if phone is None or build is None:
        return phone is build
    ends = [(phone["first"], build["first"])]
    if phone["attempts"] != build["attempts"]:
        return False
    for name in ("good", "missed"):
        if (phone[name] is None) != (build[name] is None):
            return False
        ends += zip(phone[name] or [], build[name] or [], strict=True)
    steps = list(zip(phone["steps"], build["steps"], strict=False))
    return (
        len(phone["steps"]) == len(build["steps"])
        and all(one[1] == other[1] for one, other in steps)
        and all(same_load(*pair) for pair in [*ends, *((a[0], b[0]) for a, b in steps)])
    )


def compare(book: Book, seed: str) -> tuple[int, list[str]]:
    """How many answers were compared, and the differences found."""
    worked = work_out(crowd(book, seed))
    lists = phone_lists(worked)
    cases: list[Any] = []
    expected: list[tuple[str, Data, list[int]]] = []
    for use in uses(worked):
        recipe = full_recipe(worked, lists, use.program, use.week, use.session, use.slot)
        for name, lifter in worked.book.lifters.items():
            build = Expected(worked, use, name).answer()
            me = {
                "body": lifter.bodyweight.grams,
                "bases": {key: mass.grams for key, mass in lifter.bases.items()},
            }
            tops = [top for top, _ in build["back_off"]]
            where = f"{seed} {use.slot.order} {use.slot.dose.load} {me}"
            if recipe is None:
                known = [key for key in ("load", "ladder", "on_top") if build[key] is not None]
                expected.append((f"{where}: no recipe for {known}", {}, []))
                assert not known, where
                continue
            cases.append([recipe, me, tops])
            expected.append((where, build, tops))
    answers = iter(ask({"lists": lists.data, "cases": cases}))
    found = []
    for where, build, tops in expected:
        if build:
            found += [f"{where}: {name}" for name in differences(next(answers), build, tops)]
    return len(cases), found


@pytest.mark.slow
@pytest.mark.parametrize("units", ["kg", "lb"])
def test_every_way_to_load_in_every_rounding(units: str, tmp_path: Path) -> None:
    compared, found = 0, []
    for place, book in enumerate(rooms.books(units, tmp_path)):
        count, differ = compare(book, f"{units} {place}")
        compared += count
        found += differ
    assert found == []
    assert compared >= LEAST


def test_every_written_example(tmp_path: Path) -> None:
    compared, found = compare(rooms.example_book(tmp_path), "examples")
    assert found == []
    assert compared > 20 * LIFTERS


def test_the_demo() -> None:
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    compared, found = compare(book, "demo")
    assert found == []
    assert compared > 100 * LIFTERS


def test_what_is_typed_becomes_the_same_grams() -> None:
    # The build's own reading of a mass is the oracle.
    kg = ["72", "72.5", "72,5", "107.125", "0.5", "9999.999"[-7:]]
    pounds = [f"{n / 4:g}" for n in range(1, 2400)]
    typed = [[text, "kg"] for text in kg] + [[text, "lb"] for text in pounds]
    assert ask({"typed": typed}) == [Mass.parse(f"{text} {unit}").grams for text, unit in typed]


@pytest.mark.parametrize("gym", ["kg", "lb"])
def test_a_unit_that_is_typed_counts(gym: str) -> None:
    # One pound is 0.45359237 kg: International Yard and Pound agreement, 1959.
    typed = {"82.5kg": 82_500, "82,5 kg": 82_500, "80 KG": 80_000, "90 kilos": 90_000,
             "180 lb": 81_647, "180\u00a0lbs": 81_647, "2.5 pounds": 1_134}  # fmt: skip
    assert ask({"typed": [[text, gym] for text in typed]}) == list(typed.values())
    said = ask({"understood": [[text, gym] for text in typed]})
    for text, line in zip(typed, said, strict=True):
        assert bool(line) == (("k" in text.lower()) == (gym == "lb")), text
    assert ask({"understood": [["180 lb", "kg"], ["100 kg", "lb"]]}) == [
        "180 lb = 81.647\u00a0kg. ",
        "100 kg = 220.5\u00a0lb. ",
    ]


@pytest.mark.parametrize(
    ("seen", "heard"),
    [
        (
            "= trap bar 25 + 25 · 15 · 1.25 a side",
            "= trap bar 25 each side: 25, then 15, then 1.25 kilograms",
        ),
        (
            "= 20 kg bar + collars 5 + 10 a side",
            "= 20 kg bar + collars 5 each side: 10 kilograms",
        ),
        ("off 2.5 · 5, on 10 a side", "each side: off 2.5, then 5, on 10 kilograms"),
        ("= 20 kg bar, empty", "= 20 kg bar, empty"),
        ("= 5 · 2.5 on the belt", "= 5, then 2.5 on the belt"),
        (
            "= bar 20 + 45\u00a0lb · 10\u00a0lb a side",
            "= bar 20 each side: 45\u00a0lb, then 10\u00a0lb",
        ),
    ],
)
def test_plates_for_ears(seen: str, heard: str) -> None:
    assert ask({"heard": [[seen, "kg"]]}) == [heard]
    assert ask({"heard": [[seen, "lb"]]}) == [heard.replace("kilograms", "pounds")]


@pytest.mark.parametrize("text", ["", "  ", "heavy", "-5", "1e3", "12.3456", "1.2.3", "12345"])
def test_what_is_no_number_is_none(text: str) -> None:
    assert ask({"typed": [[text, "kg"]]}) == [None]


def test_grams_print_alike() -> None:
    # `in_unit` is what the pages print with.
    plates = [round(n / 4 * GRAMS_PER_POUND) for n in range(1, 401)]
    grams = [*range(0, 60_000, 113), *range(0, 60_000, 250), 97_500, *plates]
    printed = ask({"grams": grams})
    assert printed == [
        [text for unit in ("kg", "lb") for text in (in_unit(one, unit), stamped(one, unit))]
        for one in grams
    ]
