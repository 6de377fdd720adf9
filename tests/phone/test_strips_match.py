"""A strip set on a bar: the phone takes off what the build prints, for every tested value.

The doses are those of the written examples that are strips on a bar; each stands there as written
and, so that every tested value begins with another load, at 70 % of the best too.
"""

import re
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest

import phone_rooms as rooms
from books import base, build_book, exercise, slot
from phone_script import ask
from strength_handbook.model.book import Book
from strength_handbook.model.lifter import Lifter
from strength_handbook.model.quantities import GRAMS_PER_POUND, Mass
from strength_handbook.phone.lists import phone_lists
from strength_handbook.phone.recipes import full_recipe
from strength_handbook.plan.method_plan import method_plan
from strength_handbook.plan.work_out import work_out

KILOGRAMS = [Mass(grams) for grams in range(40_000, 240_001, 2_500)]
POUNDS = [Mass(round(lb * GRAMS_PER_POUND), "lb") for lb in range(90, 531, 5)]
BESTS = {"kg": KILOGRAMS, "lb": [*KILOGRAMS, *POUNDS]}
BODY = Mass(75_000)


def strip_lines() -> list[str]:
    written = [
        one["line"]
        for one in rooms.written_examples()
        if "strip" in one["line"] and one.get("load", rooms.LOADS["bar"])["kind"] == "bar"
    ]
    assert len(written) >= 3
    by_best = [re.sub(r"@ [\d.]+ (kg|%)", "@ 70 %", line) for line in written]
    return list(dict.fromkeys([*written, *by_best]))


def strips_for_everybody(units: str, rounding: str, folder: Path) -> Book:
    lines = strip_lines()
    book = build_book(
        folder,
        room=rooms.room(units),
        exercises={"lift": exercise(load=rooms.LOADS["bar"] | {"rounding": rounding})},
        sessions={
            "a": [slot("ABCDEFGH"[n], "lift", line, base="best") for n, line in enumerate(lines)]
        },
        bases={"best": base()},
    )
    people = {
        f"B{place}": Lifter.model_construct(bodyweight=BODY, bases={"best": best})
        for place, best in enumerate(BESTS[units])
    }
    return replace(book, lifters=people)


@pytest.mark.slow
@pytest.mark.parametrize("rounding", rooms.ROUNDINGS)
@pytest.mark.parametrize("units", ["kg", "lb"])
def test_strips_from_every_best(units: str, rounding: str, tmp_path: Path) -> None:
    worked = work_out(strips_for_everybody(units, rounding, tmp_path))
    lists = phone_lists(worked)
    program = worked.programs[0]
    week = program.week(1)
    cases, expected = [], []
    for session in week.sessions:
        for one in session.slots:
            recipe = full_recipe(worked, lists, program, week, session, one)
            plan = method_plan(worked.book, one, session, week).strips
            assert recipe is not None
            assert plan is not None
            for name, lifter in worked.book.lifters.items():
                me = {"body": BODY.grams, "bases": {"best": lifter.bases["best"].grams}}
                cases.append([recipe, me, []])
                expected.append((one, name, plan.by_lifter[name]))
    assert len(cases) == len(strip_lines()) * len(BESTS[units])
    made = 0
    for answer, (one, name, loads) in zip(
        ask({"lists": lists.data, "cases": cases}), expected, strict=True
    ):
        where = f"{one.order} {one.dose.load} {worked.book.lifters[name].bases}"
        said = loads and [
            {"grams": at.amount, "off": list(at.off), "hold": at.hold, "parts": list(at.parts)}
            for at in loads
        ]
        assert answer["strips"] == said, where
        if not loads:
            continue
        made += 1
        today = one.loads[name]
        assert today.step is not None
        # It begins with today's load, from today's plates, and then they only come off.
        assert (loads[0].amount, loads[0].parts) == (today.step.grams, today.step.parts), where
        for before, after in pairwise(loads):
            assert (*after.parts, *after.off[::-1]) == before.parts, where
            assert before.amount - after.amount == pytest.approx(2 * sum(after.off)), where
    # Light bests have no plates to take off; most others do.
    assert made > len(cases) / 2
