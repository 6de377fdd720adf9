"""Strip sets: loads from what only comes off, repetitions as a range, and the bar in its rack."""

from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from books import KG_ROOM, base, exercise, plates, slot, slots_of, work
from strength_handbook.model.drop import parse_drop
from strength_handbook.model.methods import Strip
from strength_handbook.plan.scale import Scale, Step
from strength_handbook.plan.slot_strips import Strips, slot_strips, spread
from strength_handbook.plan.strip_load import StripLoads, fixed_strip, unit_strip

THREE = Strip(loads=3)
P1 = {"P1": {"bodyweight": "72 kg", "bases": {}}}


def strips(
    root: Path, dose: str, load: Any, room: Any = KG_ROOM, bases: Any = None, **more: Any
) -> Strips:
    worked = work(
        root, room=room, lifters=P1, bases=bases, exercises={"lift": exercise(load=load, **more)},
        sessions={"a": [slot("A", "lift", dose, **({"base": "lift-1rm"} if bases else {}))]},
    )  # fmt: skip
    found = slot_strips(worked.book, slots_of(worked)["A"])
    assert found is not None
    return found


def of_p1(found: Strips) -> StripLoads:
    loads = found.by_lifter["P1"]
    assert loads is not None
    return loads


def test_plates_come_off_one_by_one(tmp_path: Path) -> None:
    room = {**KG_ROOM, "plates": plates("kg", (10, 3), (5, 3), (2.5, 3))}
    dose = "strip 3 loads -20 % @ 60 kg"
    loads = of_p1(strips(tmp_path, dose, {"kind": "bar", "bar": "bar"}, room))
    assert [one.amount for one in loads] == [60_000, 50_000, 40_000]
    assert [one.off for one in loads] == [(), (5_000,), (5_000,)]
    # By κ·30·(1/r − 1), κ 0.6 to 1.2: 50 of 60 leaves 3.6 to 7.2, 40 of 50 leaves 4.5 to 9.
    assert [(round(one.reps_low, 1), round(one.reps_high, 1)) for one in loads] == [
        (0, 0), (3.6, 7.2), (4.5, 9)
    ]  # fmt: skip
    # Rounded outwards.
    assert [one.expected for one in loads] == [(0, 0), (3, 8), (4, 9)]


def test_the_load_that_is_printed_is_the_one_that_strips_begin_with(tmp_path: Path) -> None:
    # 95 kg, 70 %: 66.5, so 65 kg is printed; a lighter first load would be another dose.
    bases = {"lift-1rm": base() | {"from": "40 kg", "to": "140 kg"}}
    room = {**KG_ROOM, "plates": plates("kg", (20, 2), (10, 2), (5, 2), (2.5, 2))}
    dose = "strip 3 loads -20 % @ 70 %"
    worked = work(
        tmp_path, room=room, bases=bases,
        lifters={"P1": {"bodyweight": "72 kg", "bases": {"lift-1rm": "95 kg"}}},
        exercises={"lift": exercise(load={"kind": "bar", "bar": "bar"})},
        sessions={"a": [slot("A", "lift", dose, base="lift-1rm")]},
    )  # fmt: skip
    found = slots_of(worked)["A"]
    plan = slot_strips(worked.book, found)
    assert plan is not None
    loads, today = of_p1(plan), found.loads["P1"]
    assert today.step is not None
    assert (loads[0].amount, loads[0].parts) == (today.actual_g, today.step.parts)
    assert sum(loads[0].parts) * 2 + 20_000 == 65_000
    for value, row in plan.rows:
        assert found.scale is not None
        step = found.scale.best(value * 0.7)
        assert row is None or (step is not None and row[0].amount == step.grams)


def test_where_the_plates_allow_none(tmp_path: Path) -> None:
    # 20, 70 and 120 kg: nothing between 75 and 85 % of 120 or 70.
    room = {**KG_ROOM, "plates": plates("kg", (25, 2))}
    dose = "strip 3 loads -20 % @ 120 kg"
    assert strips(tmp_path, dose, {"kind": "bar", "bar": "bar"}, room).by_lifter == {"P1": None}


@pytest.mark.parametrize(
    ("dose", "amounts", "off"),
    [
        # 80 = 20 + 2 · 30, off 5 on each side every time.
        ("strip 4 loads -10 kg @ 80 kg", [80, 70, 60, 50], [(), (5,), (5,), (5,)]),
        # Two plates more than 20 a side, or 10 and 20: the outermost comes off first.
        ("strip 3 loads -1 plate @ 80 kg", [80, 60, 20], [(), (10,), (20,)]),
        # Four plates for 30: 15 and 5 three times are as few as it gets.
        ("strip 3 loads -2 plates @ 80 kg", [80, 60, 20], [(), (5, 5), (5, 15)]),
    ],
)
def test_by_mass_and_by_plates(
    tmp_path: Path, dose: str, amounts: list[int], off: list[tuple[int, ...]]
) -> None:
    room = {**KG_ROOM, "plates": plates("kg", (20, 1), (15, 1), (10, 1), (5, 3))}
    loads = of_p1(strips(tmp_path, dose, {"kind": "bar", "bar": "bar"}, room))
    assert [one.amount / 1000 for one in loads] == amounts
    assert [tuple(plate / 1000 for plate in one.off) for one in loads] == off
    for before, after in pairwise(loads):
        assert (*after.parts, *after.off[::-1]) == before.parts


def test_on_a_pivot_plates_only_come_off(tmp_path: Path) -> None:
    room = {
        **KG_ROOM, "plates": plates("kg", (20, 2), (10, 2), (5, 2), (2.5, 2)),
        "bars": {"bar": {"name": "bar", "mass": "20 kg", "sleeve": "41 cm",
                         "between-collars": "131 cm"}},
        "pivots": {"pivot": {"name": "pivot", "offset": "3 cm", "height": "6 cm"}},
    }  # fmt: skip
    load = {"kind": "pivot", "bar": "bar", "pivot": "pivot",
            "reach": {"grip": "2 m", "bottom": "60 cm", "top": "1.4 m"}}  # fmt: skip
    loads = of_p1(strips(tmp_path, "strip 3 loads -20 % @ 40 kg", load, room))
    assert loads[0].amount == 40_000
    for before, after in pairwise(loads):
        assert (*after.parts, *after.off[::-1]) == before.parts
    # The bar's own weight is at the hands too: half its length over the reach, 20 · 1.13 ÷ 2.03
    # = about 11 kg, and the plates count 2.0 ÷ 2.03 of theirs. A fifth off about 50 kg is 10 kg.
    # Then 20 kg: (20 + 11.2) ÷ (30 + 11.2) = 0.76; 22.5 were nearer, and a plate more to handle.
    assert [one.amount for one in loads[1:]] == [30_000, 20_000]
    # r = (30 + 11.2) ÷ (40 + 11.2) = 0.80: 30 · (1 ÷ 0.80 − 1) = 7.3, times 0.6 to 1.2.
    assert 4.0 < loads[1].reps_low < 5.0
    assert 8.0 < loads[1].reps_high < 10.0


def test_plates_come_off_a_back(tmp_path: Path) -> None:
    # A push-up from the floor moves 64 % of 72 kg = 46.1 kg, and a plate on the shoulder blades
    # counts 1.26 · 0.64 = 0.81 of itself: 20 kg make 62.2. A fifth off leaves 49.8; with 5 kg left
    # it is 50.1. What can be stripped so is 15 and 5, not one of 20.
    room = {**KG_ROOM, "plates": plates("kg", (20, 2), (15, 2), (10, 2), (5, 2))}
    load = {"kind": "push-up", "plate-limit": "30 kg", "plates": 3}
    loads = of_p1(strips(tmp_path, "strip 2 loads -20 % @ BW+20 kg", load, room))
    assert [(one.amount, one.parts) for one in loads] == [
        (20_000, (5_000, 15_000)), (5_000, (5_000,))
    ]  # fmt: skip
    by_plate = of_p1(strips(tmp_path / "plates", "strip 3 loads -1 plate @ BW+20 kg", load, room))
    assert [one.amount for one in by_plate] == [20_000, 10_000, 0]


def test_pins() -> None:
    # 32 and 26 are wanted: 32.5 with the small weight on; 25 is nearer to 26 than 27.5.
    steps = tuple(Step(kg * 500) for kg in range(10, 190, 5))
    scale = Scale("pin", "cable", 0, per_hand=False, rounding="down", steps=steps)
    loads = fixed_strip(scale, THREE, 40_000)
    assert loads is not None
    assert [one.amount for one in loads] == [40_000, 32_500, 25_000]
    by_mass = fixed_strip(scale, Strip(loads=3, drop=parse_drop("10 kg")), 40_000)
    assert by_mass is not None
    assert [one.amount for one in by_mass] == [40_000, 30_000, 20_000]
    assert fixed_strip(scale, Strip(loads=3, drop=parse_drop("1 plate")), 40_000) is None


def test_dumbbells_too_far_apart() -> None:
    scale = Scale("fixed", "bell", 0, per_hand=True, rounding="down",
                  steps=(Step(8_000), Step(16_000)))  # fmt: skip
    assert fixed_strip(scale, THREE, 16_000) is None


def test_a_belt_is_a_share_of_body_and_plates(tmp_path: Path) -> None:
    # 72 + 20 = 92 kg; four fifths are 73.6: a plate of 1.25 would be nearer than none, but what
    # hangs there only comes off.
    room = {**KG_ROOM, "plates": plates("kg", (20, 1), (1.25, 1)),
            "carriers": {"belt": {"name": "belt"}}}  # fmt: skip
    load = {"kind": "body-weight", "carrier": "belt"}
    loads = of_p1(strips(tmp_path, "strip 2 loads -20 % @ BW+20 kg", load, room))
    assert [(one.amount, one.off) for one in loads] == [(20_000, ()), (0, (20_000,))]


def test_a_machine_in_its_own_units(tmp_path: Path) -> None:
    room = {**KG_ROOM, "machines": {"press": {"name": "press", "to": 400, "by": 2}}}
    load = {"kind": "machine", "machine": "press"}
    dose = "strip 3 loads -20 % to 36 reps @ 120 units"
    found = strips(tmp_path, dose, load, room, pattern="squat")
    # 96; 76.8 lies between 76 and 78.
    assert [one.amount for one in found.settings] == [120, 96, 76]
    # Leg press: k = 52 (8.8 against 13.1 repetitions at 80 %, Nuzzo 2024): 13·κ.
    assert [round(one.reps_low, 1) for one in found.aims] == [0, 7.8, 7.8]
    assert [round(one.reps_high, 1) for one in found.aims] == [0, 15.6, 15.6]
    # First load 8 to 12. At best 12 + 15.6·2 ≥ 36: three loads. At least 8 + 7.8·4 ≥ 36: five.
    assert (found.fewest, found.most) == (3, 5)


def test_settings_end_where_the_machine_ends() -> None:
    assert [one.amount for one in unit_strip((10.0, 20.0), Strip(loads=4), 20)] == [20, 10]


def test_the_share_alone_where_no_load_is_known(tmp_path: Path) -> None:
    found = strips(tmp_path, "strip 4 loads -25 %", {"kind": "effort", "by": "Feel."})
    assert [round(one.amount) for one in found.aims] == [100, 75, 56, 42]
    # A quarter off: 30·(1/0.75 − 1) = 10, times 0.6 to 1.2.
    assert [(round(one.reps_low), round(one.reps_high)) for one in found.aims[1:]] == [(6, 12)] * 3
    assert (found.fewest, found.most) == (None, None)
    assert not found.by_lifter


@pytest.mark.parametrize(("spacing", "hold"), [("0.80 m", True), ("1.10 m", False)])
def test_tipping(tmp_path: Path, spacing: str, *, hold: bool) -> None:
    """Two plates of 25 kg on each side, one off on one side.

    The plates' centres lie 0.715 and 0.775 m from the middle (collars 1.31 m apart and 3 cm wide,
    plates 6 cm thick); the bar may lie 5 cm off. About the hook on the full side, 0.40 m out:
    turning 25·0.365 + 25·0.425 = 19.75, holding 20·0.35 + 25·1.065 = 33.6, a margin of 1.7, less
    than 2. Hooks 0.55 m out: 12.25 against 20·0.5 + 25·1.215 = 40.4, a margin of 3.3.
    """
    room = {
        **KG_ROOM,
        "bars": {"bar": {"name": "bar", "mass": "20 kg", "between-collars": "131 cm"}},
        "plates": [one | {"thickness": "60 mm"} for one in plates("kg", (25, 2))],
        "racks": {"rack": {"name": "rack", "hook-spacing": spacing}},
    }
    load = {"kind": "bar", "bar": "bar", "rack": "rack"}
    found = strips(tmp_path, "strip 2 loads -40 % @ 120 kg", load, room)
    loads = found.by_lifter["P1"]
    assert loads is not None
    assert [(one.amount, one.off, one.hold) for one in loads] == [
        (120_000, (), False), (70_000, (25_000,), hold)
    ]  # fmt: skip
    assert found.rack == "rack"


def test_a_bar_that_was_not_measured_is_held(tmp_path: Path) -> None:
    room = {**KG_ROOM, "racks": {"rack": {"name": "rack", "hook-spacing": "1.10 m"}}}
    load = {"kind": "bar", "bar": "bar", "rack": "rack"}
    loads = strips(tmp_path, "strip 3 loads -20 % @ 60 kg", load, room).by_lifter["P1"]
    assert loads is not None
    assert [one.hold for one in loads] == [False, True, True]


def test_everybody_finds_a_row_by_tested_value(tmp_path: Path) -> None:
    bases = {"lift-1rm": base() | {"from": "60 kg", "to": "140 kg"}}
    dose = "strip 3 loads -20 % @ 70 %"
    found = strips(tmp_path, dose, {"kind": "bar", "bar": "bar"}, bases=bases)
    assert found.by_best
    assert [value for value, _ in found.rows] == [60_000, 80_000, 100_000, 120_000, 140_000]
    # 70 % of 100 is 70; 56 and 44.8 are wanted, and both sides carry the same plates.
    loads = dict(found.rows)[100_000]
    assert loads is not None
    assert [one.amount for one in loads] == [70_000, 55_000, 45_000]


def test_without_a_tested_value_the_rows_go_by_first_load(tmp_path: Path) -> None:
    room = {**KG_ROOM, "machines": {"press": {"name": "press", "to": 400, "by": 2}}}
    load = {"kind": "machine", "machine": "press"}
    found = strips(tmp_path, "strip 2 loads -20 %", load, room)
    assert not found.by_best
    assert [(first, [one.amount for one in loads or ()]) for first, loads in found.rows][-2:] == [
        (358, [358, 286]), (400, [400, 320])
    ]  # fmt: skip
    # What is written in units stands in a line of its own.
    assert not strips(tmp_path / "written", "strip 2 loads -20 % @ 120 units", load, room).rows


@pytest.mark.parametrize("bases", [None, {"lift-1rm": base()}])
def test_a_load_for_everybody_has_its_row(tmp_path: Path, bases: Any) -> None:
    """Members read no example lifters: what comes off stands there for all of them."""
    room = {**KG_ROOM, "plates": plates("kg", (10, 3), (5, 3), (2.5, 3))}
    dose = "strip 3 loads -20 % @ 61 kg"
    found = strips(tmp_path, dose, {"kind": "bar", "bar": "bar"}, room, bases)
    ((first, loads),) = found.rows
    # 60 is what there is below 61; a fifth off each time.
    assert first == 60_000
    assert [one.amount for one in loads or ()] == [60_000, 50_000, 40_000]
    assert not found.by_best
    # A body of any mass moves along: there is no row for all.
    push_up = {"kind": "push-up", "plate-limit": "30 kg", "plates": 3}
    dose = "strip 2 loads -20 % @ BW+20 kg"
    assert not strips(tmp_path / "body", dose, push_up, room).rows


@pytest.mark.parametrize("count", [0, 1, 9, 10, 11, 25, 200])
def test_rows_are_few_even_and_reach_the_heaviest(count: int) -> None:
    found = spread(range(count))
    assert len(found) <= 10
    assert not count or found[-1] == count - 1
    assert len({after - before for before, after in pairwise(found)}) <= 1
