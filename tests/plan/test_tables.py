"""Tables by body weight and look-up strips, cell by cell against enumeration."""

from collections.abc import Iterable
from itertools import product
from pathlib import Path
from typing import Any

import pytest

from books import KG_ROOM, LB_ROOM, base, exercise, plates, slot, slots_of, work
from strength_handbook.model.quantities import GRAMS_PER_POUND
from strength_handbook.plan.loads import achievable
from strength_handbook.plan.tables import (
    Table,
    base_strip,
    body_masses,
    exercise_table,
    loading_table,
    share_table,
)
from strength_handbook.plan.worked import WorkedSlot

FEW = plates("kg", (20, 2), (10, 1), (5, 1), (2.5, 1), (1.25, 1))
ROOM: dict[str, Any] = {
    **KG_ROOM,
    "plates": FEW,
    "carriers": {"belt": {"name": "belt", "limit": "40 kg"}},
    "hand-weights": {
        "kettlebell": {
            "name": "kettlebell",
            "masses": [{"mass": f"{kg} kg"} for kg in (8, 12, 16, 24)],
        }
    },
}


def lift(root: Path, load: Any, room: Any = ROOM, dose: str = "3x5 @ 80 %") -> WorkedSlot:
    """The slot of one exercise with a base."""
    kind = "system" if load["kind"] == "body-weight" else "1RM"
    worked = work(
        root,
        room=room,
        exercises={"lift": exercise(load=load | {"base": "best"})},
        sessions={"a": [slot("A", "lift", dose)]},
        bases={"best": base(kind=kind)},
    )
    return slots_of(worked)["A"]


def loads_a_side(rows: Iterable[Any]) -> set[int]:
    """Every sum of plates on one side, by enumeration."""
    sizes = [(round(float(row["mass"].split()[0]) * 1000), row["pairs"]) for row in rows]
    counts = product(*(range(pairs + 1) for _, pairs in sizes))
    return {sum(n * grams for n, (grams, _) in zip(each, sizes, strict=True)) for each in counts}


def check_plate_list(table: Table) -> None:
    """`steps` names every load that occurs, once, rising."""
    occurring = {cell.step for _, cells in table.rows for cell in cells if cell.step is not None}
    assert set(table.steps) == occurring
    assert [step.grams for step in table.steps] == sorted(step.grams for step in occurring)
    assert table.scale is not None
    assert occurring <= set(table.scale.steps)


def test_rows_of_body_weight() -> None:
    kg, lb = body_masses("kg"), body_masses("lb")
    assert kg == tuple(range(45_000, 130_001, 5000))
    assert [round(grams / GRAMS_PER_POUND, 2) for grams in lb] == list(range(100, 291, 10))


def test_base_by_body_weight(tmp_path: Path) -> None:
    multiples = [0.5, 1, 1.5]
    found = lift(tmp_path, {"kind": "bar", "bar": "bar", "multiples": multiples})
    table = loading_table(found.exercise.load, found.scale, 80, "kg")
    assert table is not None
    assert table.columns == ("0.5 ×", "1 ×", "1.5 ×")
    totals = {20_000 + 2 * side for side in loads_a_side(FEW)}
    assert [mass for mass, _ in table.rows] == list(body_masses("kg"))
    for mass, cells in table.rows:
        for multiple, cell in zip(multiples, cells, strict=True):
            possible = [total for total in totals if total <= mass * multiple * 0.8 + 0.001]
            assert cell.grams == max(possible, default=None)
    check_plate_list(table)


def test_carry_by_body_weight(tmp_path: Path) -> None:
    load = {
        "kind": "hands",
        "weight": "kettlebell",
        "hands": 2,
        "body-mass-shares": ["15 %", "25 %"],
    }
    found = lift(tmp_path, load)
    table = exercise_table(found.exercise.load, found.scale, "kg")
    assert table is not None
    assert table.kind == "carry"
    for mass, cells in table.rows:
        for share, cell in zip((15, 25), cells, strict=True):
            possible = [kg * 1000 for kg in (8, 12, 16, 24) if kg * 1000 <= mass * share / 100]
            assert cell.grams == max(possible, default=None)
    check_plate_list(table)


def test_nothing_is_printed_below_the_lightest(tmp_path: Path) -> None:
    load = {"kind": "hands", "weight": "kettlebell", "hands": 2}
    found = lift(tmp_path, load)
    assert found.scale is not None
    table = share_table("carry", found.scale, (15,), body_masses("kg"))
    cells = {mass: row[0] for mass, row in table.rows}
    assert cells[50_000].grams is None  # 7.5 kg, the lightest kettlebell is 8 kg
    assert cells[55_000].grams == 8000


def test_system_table_signs_and_help(tmp_path: Path) -> None:
    load = {"kind": "body-weight", "carrier": "belt", "shares": ["70 %", "100 %", "120 %", "160 %"]}
    found = lift(tmp_path, load, dose="3x5 @ 80 % system")
    table = exercise_table(found.exercise.load, found.scale, "kg")
    assert table is not None
    assert table.kind == "system"
    hung = loads_a_side([row | {"pairs": 2 * row["pairs"]} for row in FEW])
    for mass, (less, body, more, most) in table.rows:
        exact = mass * 0.3
        assert less.grams is not None
        assert less.grams % 1000 == 0
        assert -exact - 1000 < less.grams <= -exact + 0.001
        assert less.step is None
        assert body.grams == 0
        assert more.grams == max(one for one in hung if one <= mass * 0.2 + 0.001)
        # The belt carries 40 kg and no more.
        assert most.grams == max(one for one in hung if one <= min(40_000, mass * 0.6 + 0.001))
    check_plate_list(table)


@pytest.mark.parametrize("units", ["kg", "lb"])
def test_best_by_body_weight(tmp_path: Path, units: str) -> None:
    room = ROOM if units == "kg" else {**LB_ROOM, "carriers": ROOM["carriers"]}
    found = lift(tmp_path, {"kind": "body-weight", "carrier": "belt"}, room, "3x5 @ 75 % system")
    table = loading_table(found.exercise.load, found.scale, 75, units)
    assert table is not None
    unit = 1000 if units == "kg" else GRAMS_PER_POUND
    changes = (-20, -10, 0, 10, 20, 30) if units == "kg" else (-40, -20, 0, 20, 40, 60)
    assert [label.replace("−", "-").removeprefix("BW") or "0" for label in table.columns] == [
        f"{change:+d}" if change else "0" for change in changes
    ]
    for mass, cells in table.rows:
        for change, cell in zip(changes, cells, strict=True):
            target = (mass + change * unit) * 0.75 - mass
            assert cell.grams is not None
            if cell.help_g:
                whole = cell.help_g / unit
                assert whole == pytest.approx(round(whole), abs=0.002)
                assert -unit < -cell.help_g - target <= 0 or abs(cell.help_g + target) < 10
            else:
                assert 0 <= cell.grams <= target + 10
            assert cell.grams == found_load(found, target, units)
    check_plate_list(table)


def found_load(slot_: WorkedSlot, target: float, units: str) -> int | None:
    step, help_g = achievable(target, slot_.scale, units)
    return -help_g if help_g else step.grams if step else None


def start_load(at: str, share: float, **more: Any) -> dict[str, Any]:
    start = {"at": at, "shares": {"new to it": f"{share:g} %"}}
    return {"kind": "bar", "bar": "bar", "start": start | more}


def test_start_grows_with_body_mass_to_the_power_of_two_thirds(tmp_path: Path) -> None:
    # Jaric 2002, Sports Med 32(10):615–631; Marković and Jarić 2004, Eur J Appl Physiol
    # 92:139–149: external force grows with body mass to the power 0.67, so a body twice as heavy
    # lifts 2^0.67 = 1.591 times as much, not 1.34 times. A fine scale shows the plan itself.
    fine = {
        **ROOM,
        "hand-weights": {
            "weight": {
                "name": "weight",
                "masses": [{"from": f"{low} kg", "to": f"{low + 20} kg", "by": "0.1 kg"}
                           for low in range(20, 160, 20)],
            }
        },
    }  # fmt: skip
    load = start_load("60 kg", 100) | {"kind": "hands", "weight": "weight", "hands": 1}
    del load["bar"]
    found = lift(tmp_path, load, fine)
    table = exercise_table(found.exercise.load, found.scale, "kg")
    assert table is not None
    cells = {mass: row[0].grams for mass, row in table.rows}
    assert cells[60_000] == 60_000
    assert cells[120_000] is not None
    assert cells[120_000] / 60_000 == pytest.approx(1.591, abs=0.002)
    assert cells[120_000] <= 60_000 * 2**0.67


@pytest.mark.parametrize("power", [0, 0.67, 1])
def test_start_table(tmp_path: Path, power: float) -> None:
    found = lift(tmp_path, start_load("75 kg", 60, power=power))
    table = exercise_table(found.exercise.load, found.scale, "kg")
    assert table is not None
    assert table.columns == ("new to it",)
    totals = {20_000 + 2 * side for side in loads_a_side(FEW)}
    for mass, (cell,) in table.rows:
        planned = 75_000 * 0.6 * (mass / 75_000) ** power
        assert cell.grams == max(total for total in totals if total <= planned + 0.001)
    check_plate_list(table)


def test_moved_table(tmp_path: Path) -> None:
    load = {"kind": "effort", "by": "Feet higher.", "share": "64 %", "share-source": "a study"}
    worked = work(
        tmp_path,
        exercises={"lift": exercise(load=load)},
        sessions={"a": [slot("A", "lift", "3x5")]},
    )
    table = exercise_table(worked.book.exercises["lift"].load, None, "kg")
    assert table is not None
    for mass, (cell,) in table.rows:
        assert cell.grams is not None
        assert cell.grams % 500 == 0
        assert abs(cell.grams - mass * 0.64) <= 250


@pytest.mark.parametrize(
    ("strip", "unit", "values"),
    [
        ({"from": "40 kg", "to": "240 kg", "by": "5 kg"}, 1000, range(40, 241, 5)),
        ({"from": "40 kg", "to": "53 kg", "by": "5 kg"}, 1000, (40, 45, 50)),
        ({"from": "20 kg", "to": "27.5 kg", "by": "2.5 kg"}, 1000, (20, 22.5, 25, 27.5)),
        ({"from": "60 kg", "to": "60 kg", "by": "5 kg"}, 1000, (60,)),
        ({"from": "45 lb", "to": "245 lb", "by": "5 lb"}, GRAMS_PER_POUND, range(45, 246, 5)),
        ({"from": "45 lb", "to": "145 lb", "by": "1 lb"}, GRAMS_PER_POUND, range(45, 146)),
        ({"from": "45 lb", "to": "57.5 lb", "by": "2.5 lb"}, GRAMS_PER_POUND,
         (45, 47.5, 50, 52.5, 55, 57.5)),
    ],
)  # fmt: skip
def test_strip_from_end_to_end(
    tmp_path: Path, strip: dict[str, str], unit: float, values: Iterable[float]
) -> None:
    worked = work(
        tmp_path,
        room=ROOM,
        exercises={"lift": exercise()},
        sessions={"a": [slot("A", "lift", "3x5 @ 80 %", base="best")]},
        bases={"best": base(**strip)},
    )
    found = slots_of(worked)["A"]
    assert found.base is not None
    rows = base_strip(found.base, found.scale, 80).rows
    assert [round(value / unit, 2) for value, _ in rows] == list(values)
    totals = {20_000 + 2 * side for side in loads_a_side(FEW)}
    for value, cell in rows:
        possible = [total for total in totals if total <= value * 0.8 + 0.001]
        assert cell.grams == max(possible, default=None)
