"""Tip limits of a room's bars and racks, and the order in which plates come off."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from books import KG_ROOM
from strength_handbook.model.room import Bar, Plate, Rack, Room
from strength_handbook.plan.tipover import (
    TipLimit,
    fits,
    lone_limit_kg,
    pairs_off,
    tip_limits,
    unloading,
)

BARS = {
    "bar-20": {"name": "bar", "mass": "20 kg", "between-collars": "131 cm", "sleeve": "41.5 cm"},
    "bar-15": {"name": "bar", "mass": "15 kg", "between-collars": "131 cm"},
    "trap-bar": {"name": "trap bar", "mass": "25 kg"},
}
RACKS = {"rack": {"name": "rack", "hook-spacing": "1.10 m"}}
PLATES = [
    {"mass": "25 kg", "pairs": 2, "thickness": "60 mm"},
    {"mass": "20 kg", "pairs": 1, "thickness": "54 mm"},
]
ROOM: dict[str, Any] = {**KG_ROOM, "bars": BARS, "racks": RACKS, "plates": PLATES}


def limits(**change: Any) -> dict[str, TipLimit]:
    return {one.bar: one for one in tip_limits(Room.model_validate(ROOM | change))}


def bar(**more: Any) -> Bar:
    return Bar.model_validate(BARS["bar-20"] | more)


def rack(spacing: str) -> Rack:
    return Rack.model_validate({"name": "rack", "hook-spacing": spacing})


@pytest.mark.parametrize(
    ("spacing", "twenty", "fifteen"),
    [("0.6 m", 5, 4), ("0.8 m", 9, 7), ("1 m", 17, 12), ("1.1 m", 23, 17), ("1.2 m", 34, 25)],
)
def test_lone_plates(spacing: str, twenty: int, fifteen: int) -> None:
    # By hand for 1.10 m: a = 0.55, plate of 5 cm at d = 0.685 + 0.025 = 0.71, bar 5 cm off:
    # 20·(0.55 − 0.05) / (0.71 + 0.05 − 0.55) = 47.6, half of it 23.8. The others the same way.
    heavy, light = bar(), bar(mass="15 kg")
    assert int(lone_limit_kg(heavy, rack(spacing))) == twenty
    assert int(lone_limit_kg(light, rack(spacing))) == fifteen


def test_only_bars_that_were_measured_for_a_rack_and_fit() -> None:
    assert set(limits()) == {"bar-20", "bar-15"}
    wide = {"rack": {"name": "rack", "hook-spacing": "1.40 m"}}
    assert limits(racks=wide) == {}
    assert not fits(bar(), rack("1.4 m"))
    assert limits(racks={}) == {}


def test_the_full_bar_comes_off_in_pairs() -> None:
    full = limits()["bar-20"]
    assert full.side_g == (25_000, 25_000, 20_000)
    assert [pair.grams for pair in full.pairs] == [20_000, 25_000, 25_000]
    # A lone 25 kg plate of 60 mm on 1.10 m has 1.86, below 2: somebody holds the bar for the last
    # pair (20·0.5 + nothing on the other side) / (25·(0.715 + 0.05 − 0.55)) = 1.860.
    assert [pair.hold for pair in full.pairs] == [False, False, True]
    assert full.lowest_margin == pytest.approx(1.860, abs=0.001)


@pytest.mark.parametrize(
    ("change", "hold"),
    [
        ({"racks": {"rack": {"name": "rack", "hook-spacing": "1.20 m"}}}, [False, False, False]),
        # 25 on one side against 25 and 25: (20·0.35 + 25·1.065) / (25·0.365 + 25·0.425) = 1.70.
        ({"racks": {"rack": {"name": "rack", "hook-spacing": "0.80 m"}}}, [False, True, True]),
        ({"bars": {"bar-20": BARS["bar-20"] | {"mass": "25 kg"}}}, [False, False, False]),
        ({"plates": [PLATES[1]]}, [False]),
    ],
)
def test_another_rack_bar_or_plate(change: dict[str, Any], hold: list[bool]) -> None:
    assert [pair.hold for pair in limits(**change)["bar-20"].pairs] == hold


sides = st.lists(st.sampled_from((25_000, 20_000, 10_000, 5_000, 1_250)), max_size=5).map(
    lambda grams: tuple(sorted(grams, reverse=True))
)


@given(sides, st.sampled_from(("0.7 m", "0.9 m", "1.1 m", "1.3 m")))
def test_never_more_than_one_plate_of_difference(side: tuple[int, ...], spacing: str) -> None:
    rows = [Plate.model_validate(plate) for plate in PLATES]
    order = unloading(bar(), rack(spacing), rows, side)
    left = right = len(side)
    for step in order.steps:
        left -= step.move.side == "left"
        right -= step.move.side == "right"
        assert abs(left - right) <= 1
    assert left == right == 0
    assert [pair.grams for pair in pairs_off(order)] == sorted(side)


def test_a_collar_pulls_until_the_first_plate_of_its_side_is_off() -> None:
    # With one side bare, only the plate and its collar pull outside the hooks: the margin falls as
    # 20 to 22.5 kg (statics of a lever).
    rows = [Plate.model_validate(plate) for plate in PLATES]
    bare = unloading(bar(), rack("1.10 m"), rows, (20_000,))
    held = unloading(bar(collar="2.5 kg"), rack("1.10 m"), rows, (20_000,))
    assert held.steps[0].margin / bare.steps[0].margin == pytest.approx(20 / 22.5, rel=0.01)
    # What is named is the plate; once both sides are bare the collars are gone as well.
    assert [step.load for step in held.steps] == [20, 20]
    assert held.steps[1].margin == bare.steps[1].margin
    assert [pair.grams for pair in pairs_off(held)] == [20_000]


def test_a_lone_plate_comes_with_its_collar() -> None:
    alone = lone_limit_kg(bar(), rack("1.10 m"))
    assert lone_limit_kg(bar(collar="2.5 kg"), rack("1.10 m")) == pytest.approx(alone - 2.5)


def test_an_empty_bar_has_nothing_to_take_off() -> None:
    assert limits(plates=[])["bar-20"].pairs == ()
