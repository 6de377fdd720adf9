"""Bands and chains of a room on a bar, from the readings and heights that are written."""

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from books import KG_PLATES, KG_ROOM, LB_ROOM, base, exercise, slot, slots_of, work
from strength_handbook.calc.bands import BandCurve, choose_band_pair
from strength_handbook.model.resistance import Travel
from strength_handbook.pages.site import write_pages
from strength_handbook.plan.variable import LARGEST_MISMATCH, OnTop, fitting_pairs
from strength_handbook.plan.worked import WorkedSlot

BANDS: dict[str, Any] = {
    "22-a": {"width": "22 mm", "pulls": {"22 cm": "3 kg", "76 cm": "10 kg"}, "help": "14 kg"},
    "22-b": {"width": "22 mm", "pulls": {"22 cm": "3 kg", "76 cm": "10 kg"}, "help": "14.5 kg"},
    "29-a": {"width": "29 mm", "pulls": {"22 cm": "5 kg", "76 cm": "14 kg"}, "help": "21 kg"},
    "29-b": {"width": "29 mm", "pulls": {"22 cm": "5 kg", "76 cm": "14 kg"}},
    "45-a": {"width": "45 mm", "pulls": {"22 cm": "8 kg", "76 cm": "20 kg"}, "help": "32 kg"},
    "45-b": {"width": "45 mm", "pulls": {"22 cm": "8 kg", "76 cm": "20 kg"}},
}
CHAINS: dict[str, Any] = {
    "chain": {
        "name": "16 mm chain", "pairs": 5, "mass-per-metre": "5.3 kg", "length": "1.5 m",
    }
}  # fmt: skip
ROOM: dict[str, Any] = {**KG_ROOM, "bands": BANDS, "chains": CHAINS}
ON_BAR = {
    "kind": "bar", "bar": "bar", "chains": "chain", "travel": {"bottom": "22 cm", "top": "76 cm"},
}  # fmt: skip
SQUAT = ON_BAR | {"travel": {"bottom": "45 cm", "top": "125 cm"}}
PAIR = {"sets": 8, "reps": 2, "load": "50 %", "bands": {"pair": ["22-a", "22-b"]}}
SHARE = {"sets": 8, "reps": 2, "load": "50 %", "bands": {"top-share": "20 %"}}
LIFTERS = {
    name: {"bodyweight": "75 kg", "bases": {"best": best}}
    for name, best in (("P1", "140 kg"), ("P2", "95 kg"), ("P3", "180 kg"))
}


def banded(root: Path, dose: Any, load: Any = ON_BAR, room: Any = ROOM) -> WorkedSlot:
    worked = work(
        root,
        room=room,
        exercises={"lift": exercise(load=load)},
        sessions={"a": [slot("A", "lift", {"1": dose}, base="best")]},
        bases={"best": base()},
        lifters=LIFTERS,
    )
    return slots_of(worked)["A"]


def test_a_pair_by_its_numbers(tmp_path: Path) -> None:
    found = banded(tmp_path, PAIR)
    # By hand: 50 % of 140 kg are 70 kg. Bottom 70 + 2·3 = 76, top 70 + 2·10 = 90, and two readings
    # make a straight line: half-way 70 + 2·6.5 = 83. Share at the top 20 / 90 = 22.2 %.
    variable = found.variable["P1"]
    assert variable.what == "bands 22-a and 22-b"
    assert (variable.load.bottom, variable.load.middle, variable.load.top) == pytest.approx(
        (76, 83, 90)
    )
    assert variable.load.top_share == pytest.approx(100 * 20 / 90)


def test_the_share_of_the_base_picks_the_pair(tmp_path: Path) -> None:
    found = banded(tmp_path, SHARE)
    # 20 % of 140 is 28 kg: both 29s, 14 a side. Of 95: 19, nearest 20. Of 180: 36, nearest 40.
    assert {name: one.what for name, one in found.variable.items()} == {
        "P1": "bands 29-a and 29-b",
        "P2": "bands 22-a and 22-b",
        "P3": "bands 45-a and 45-b",
    }
    # The plates are for the straight part alone: 50 % of 140.
    assert found.loads["P1"].actual_g == 70_000
    assert found.variable["P1"].load.top == pytest.approx(70 + 28)


def test_chains_by_hand(tmp_path: Path) -> None:
    dose = {"sets": 10, "reps": 2, "load": "50 %", "chains": {"pairs": 1}}
    found = banded(tmp_path, dose, SQUAT)
    # One strand of 5.3 kg/m on each side: 0.45 m off the floor make 2·5.3·0.45 = 4.77 kg, 1.25 m
    # make 13.25 kg; linear in height (McMaster 2010, J Strength Cond Res 24:2056–2064).
    load = found.variable["P1"].load
    assert (load.bottom, load.top) == pytest.approx((74.77, 83.25))
    assert load.middle == pytest.approx((load.bottom + load.top) / 2)
    assert found.variable["P1"].what == "1 pair of 16 mm chain"


def test_chains_by_share_of_the_whole_load(tmp_path: Path) -> None:
    dose = {"sets": 10, "reps": 2, "load": "50 %", "chains": {"top-share": "25 %"}}
    found = banded(tmp_path, dose, SQUAT)
    # P1, 70 kg: one pair 13.25 / 83.25 = 15.9 %, two 27.5 %, which is nearer to 25 %.
    assert found.variable["P1"].what == "2 pairs of 16 mm chain"
    assert found.variable["P1"].load.top_share == pytest.approx(100 * 26.5 / 96.5)


def test_the_data_have_what_a_phone_needs(tmp_path: Path) -> None:
    worked = work(
        tmp_path,
        room=ROOM,
        exercises={"lift": exercise(load=ON_BAR)},
        sessions={"a": [slot("A", "lift", {"1": SHARE}, base="best")]},
        bases={"best": base()},
        lifters=LIFTERS,
    )
    data = json.loads(write_pages(worked).data["data/plan.json"])
    lifter = data["weeks"][0]["sessions"][0]["slots"][0]["by_lifter"]["P1"]
    assert lifter["load_kg"] == 70
    expected = {
        "with": "bands 29-a and 29-b", "bottom_kg": 80, "middle_kg": 89, "top_kg": 98,
        "top_share_percent": 29,
    }  # fmt: skip
    assert {key: lifter[key] for key in expected} == expected


@pytest.mark.parametrize(
    ("change", "bottom", "top"),
    [
        # P1 with bands 22: 70 kg on the bar unless the change makes it another.
        ({"bands": BANDS | {"22-a": {"pulls": {"22 cm": "4 kg", "76 cm": "10 kg"}},
                            "22-b": {"pulls": {"22 cm": "4 kg", "76 cm": "10 kg"}}}}, 78, 90),
        # A bar of 15 kg with the same plates makes 70 kg too; one of 15.5 kg only 68: 26.25 a side.
        ({"bars": {"bar": {"name": "bar", "mass": "15 kg"}}}, 76, 90),
        ({"bars": {"bar": {"name": "bar", "mass": "15.5 kg"}}}, 74, 88),
        # With nothing but 20s and 10s the most below 70 is 60.
        ({"plates": [p for p in KG_PLATES if p["mass"] in ("20 kg", "10 kg")]}, 66, 80),
        # Readings in pounds: 6.6 lb is 2.994 kg, 22 lb is 9.979 kg.
        ({"bands": BANDS | {"22-a": {"pulls": {"22 cm": "6.6 lb", "76 cm": "22 lb"}},
                            "22-b": {"pulls": {"22 cm": "6.6 lb", "76 cm": "22 lb"}}}},
         75.988, 89.958),
    ],
)  # fmt: skip
def test_another_room_gives_other_loads(
    tmp_path: Path, change: dict[str, Any], bottom: float, top: float
) -> None:
    load = banded(tmp_path, PAIR, room=ROOM | change).variable["P1"].load
    assert (load.bottom, load.top) == pytest.approx((bottom, top), abs=0.002)


def test_in_pounds(tmp_path: Path) -> None:
    room = LB_ROOM | {"bands": BANDS, "chains": CHAINS}
    dose = {"sets": 8, "reps": 2, "load": "100 lb", "bands": {"pair": ["22-a", "22-b"]}}
    # 45 lb bar and 25 + 2.5 lb a side are 100 lb, 45.36 kg; 2·3 kg come on top at the bottom.
    assert banded(tmp_path, dose, room=room).variable["P1"].load.bottom == pytest.approx(
        100 * 0.45359237 + 6, abs=0.003
    )


pulls = st.tuples(st.floats(0.5, 40), st.floats(0, 40)).map(lambda p: (p[0], p[0] + p[1]))


@given(st.lists(pulls, min_size=2, max_size=8), st.floats(0, 60))
def test_the_pair_is_the_one_that_the_formula_chooses(
    read: list[tuple[float, float]], share: float
) -> None:
    curves = {f"b{n}": BandCurve((0.2, 0.9), pair) for n, pair in enumerate(read)}
    travel = Travel.model_validate({"bottom": "30 cm", "top": "80 cm"})
    pairs = fitting_pairs(curves, travel)
    whole = choose_band_pair(curves, 200 * share / 100, 0.3, 0.8, LARGEST_MISMATCH)
    if whole is None:
        assert pairs == ()
        return
    assert whole in pairs
    found = OnTop(travel, curves, pairs, share).on(100, 200)
    assert found is not None
    assert found.what == f"bands {whole.left} and {whole.right}"


def test_no_tested_value_and_a_share_of_it(tmp_path: Path) -> None:
    dose = {"sets": 8, "reps": 2, "load": "70 kg", "bands": {"top-share": "20 %"}}
    worked = work(
        tmp_path,
        room=ROOM,
        exercises={"lift": exercise(load=ON_BAR)},
        sessions={"a": [slot("A", "lift", {"1": dose}, base="best")]},
        bases={"best": base()},
        lifters={"P1": {"bodyweight": "75 kg"}},
    )
    found = slots_of(worked)["A"]
    assert found.loads["P1"].actual_g == 70_000
    assert found.variable == {}
