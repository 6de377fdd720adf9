"""The rows of a test's ladder, for paper and phones without numbers, are the phone's own ladder."""

from pathlib import Path
from typing import Any

import pytest

from books import BAR, KG_ROOM, LB_ROOM, base, exercise, slot, slots_of, work
from phone_script import ask
from strength_handbook.phone.lists import phone_lists
from strength_handbook.phone.recipes import full_recipe
from strength_handbook.plan.attempts import Next
from strength_handbook.plan.ladder import Ladder, slot_ladders
from strength_handbook.plan.tables import best_changes
from strength_handbook.plan.worked import Worked

BELT = {"kind": "body-weight", "carrier": "belt", "help": "looped band, by its number"}
BANDS = {
    f"{width}-a": {
        "width": f"{width} mm",
        "pulls": {"22 cm": f"{pull / 4:g} kg", "76 cm": f"{pull:g} kg"},
        "help": f"{help_kg} kg",
        "until": "2027-06-30",
    }
    for width, pull, help_kg in ((13, 5, 7), (22, 10, 14), (29, 14, 21), (45, 20, 32))
}


def one_lift(root: Path, units: str, load: Any, dose: str, start: int) -> Worked:
    """A test of one lift, with a best every kilogram or two pounds; every fourth has a row."""
    strip = {
        "kg": {"from": f"{40 + start} kg", "to": f"{237 + start} kg", "by": "1 kg"},
        "lb": {"from": f"{88 + 2 * start} lb", "to": f"{484 + 2 * start} lb", "by": "2 lb"},
    }[units]
    room = KG_ROOM if units == "kg" else LB_ROOM
    hazards = ["band"] if load == BELT else []
    return work(
        root,
        room={**room, "bands": BANDS, "carriers": {"belt": {"name": "belt"}}},
        exercises={"lift": exercise(load=load, pattern="vertical-pull", hazards=hazards)},
        sessions={"a": [slot("A", "lift", dose, base="best")]},
        bases={"best": base(kind="system" if load == BELT else "1RM") | strip},
    )


def grams(one: Ladder) -> dict[str, Any]:
    def ends(found: Next | None) -> list[int | None] | None:
        return None if found is None else [found.low.actual_g, found.high.actual_g]

    steps = [[step.load.actual_g, *step.reps] for step in one.steps]
    return {"steps": steps, "first": one.first.actual_g, "good": ends(one.good),
            "missed": ends(one.missed)}  # fmt: skip


def on_phone(found: dict[str, Any] | None) -> dict[str, Any] | None:
    def ends(pair: list[Any] | None) -> list[int | None] | None:
        return pair and [one["grams"] for one in pair]

    return found and {
        "steps": [[load["grams"], *reps] for load, reps in found["steps"]],
        "first": found["first"]["grams"],
        "good": ends(found["good"]),
        "missed": ends(found["missed"]),
    }


@pytest.mark.parametrize("units", ["kg", "lb"])
@pytest.mark.parametrize("load", [BAR, BELT], ids=["bar", "belt"])
@pytest.mark.parametrize("dose", ["test 1RM in 3 attempts", "test 3RM in 4 attempts"])
def test_rows_are_the_phones(tmp_path: Path, units: str, load: Any, dose: str) -> None:
    compared = 0
    for start in range(1 if load == BELT else 4):
        worked = one_lift(tmp_path / str(start), units, load, dose, start)
        own, lists = slots_of(worked)["A"], phone_lists(worked)
        plan = slot_ladders(worked.book, own)
        assert plan is not None
        assert bool(plan.rows) is (load == BAR)
        rows = [(72_000, value, one) for value, one in plan.rows]
        for label, several in plan.body_rows.items():
            change = best_changes(units)[label]
            rows += [(body, body + change, one) for body, one in several]
        program = worked.programs[0]
        week = program.weeks[0]
        recipe = full_recipe(worked, lists, program, week, week.sessions[0], own)
        cases: list[Any] = [
            [recipe, {"body": body, "bases": {"best": best}}, []] for body, best, _ in rows
        ]
        answers = ask({"lists": lists.data, "cases": cases})
        for (body, best, one), answer in zip(rows, answers, strict=True):
            assert on_phone(answer["ladder"]) == grams(one), (body, best)
        compared += len(rows)
    # Every best, or seven or six bodies at six bests.
    assert compared >= (36 if load == BELT else 190)
