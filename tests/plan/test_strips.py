"""Strip sets: loads from what only comes off, repetitions as a range, and the bar in its rack."""

from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from books import KG_ROOM, base, exercise, plates, slot, slots_of, work
from strength_handbook.calc.plates import PlateSize, load_table
from strength_handbook.model.methods import Strip
from strength_handbook.plan.scales import Scale, Step
from strength_handbook.plan.slot_strips import Strips, slot_strips, spread
from strength_handbook.plan.strips import scale_strip, strip_set, unit_strip

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


def test_plates_come_off_one_by_one() -> None:
    table = load_table(20_000, tuple(PlateSize(g, 3) for g in (10_000, 5_000, 2_500)))
    loads = strip_set(table, THREE, 61_000)
    assert loads is not None
    assert [one.amount for one in loads] == [60_000, 50_000, 40_000]
    assert [one.off for one in loads] == [(), (5_000,), (5_000,)]
    # By κ·30·(1/r − 1), κ 0.6 to 1.2: 50 of 60 leaves 3.6 to 7.2, 40 of 50 leaves 4.5 to 9.
    assert [(round(one.reps_low, 1), round(one.reps_high, 1)) for one in loads] == [
        (0, 0), (3.6, 7.2), (4.5, 9)
    ]  # fmt: skip


def test_where_the_plates_allow_none() -> None:
    # 20, 70 and 120 kg: nothing between 75 and 85 % of 120 or 70.
    table = load_table(20_000, (PlateSize(25_000, 2),))
    assert strip_set(table, THREE, 120_000) is None


def test_pins() -> None:
    # 32 and 26 are wanted: 32.5 with the small weight on; 25 is nearer to 26 than 27.5.
    steps = tuple(Step(kg * 500) for kg in range(10, 190, 5))
    scale = Scale("pin", "cable", 0, per_hand=False, rounding="down", steps=steps)
    loads = scale_strip(scale, THREE, 40_000)
    assert loads is not None
    assert [one.amount for one in loads] == [40_000, 32_500, 25_000]


def test_dumbbells_too_far_apart() -> None:
    scale = Scale("fixed", "bell", 0, per_hand=True, rounding="down",
                  steps=(Step(8_000), Step(16_000)))  # fmt: skip
    assert scale_strip(scale, THREE, 16_000) is None


def test_a_belt_is_a_share_of_body_and_plates() -> None:
    # 72 + 20 = 92 kg; four fifths are 73.6: a plate of 1.25 would be nearer than none, but what
    # hangs there only comes off.
    steps = (Step(0), Step(1_250, (1_250,)), Step(20_000, (20_000,)))
    scale = Scale("hung", "belt", 0, per_hand=False, rounding="down", steps=steps)
    loads = scale_strip(scale, Strip(loads=2), 20_000, 72_000)
    assert loads is not None
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
    # What is written needs no table.
    assert not strips(tmp_path / "written", "strip 2 loads -20 % @ 120 units", load, room).rows


@pytest.mark.parametrize("count", [0, 1, 9, 10, 11, 25, 200])
def test_rows_are_few_even_and_reach_the_heaviest(count: int) -> None:
    found = spread(range(count))
    assert len(found) <= 10
    assert not count or found[-1] == count - 1
    assert len({after - before for before, after in pairwise(found)}) <= 1
