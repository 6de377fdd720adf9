"""What a pair takes off the floor, what the room has, and bars that are stripped in a rack."""

from pathlib import Path
from typing import Any

import pytest

from books import BAR, EFFORT, exercise, slot, work
from floors import FLOOR, ROOM
from strength_handbook.floor.needs import room_units, slot_needs, thing_name
from strength_handbook.floor.unloading import worst_step


def needs_of(root: Path, load: Any, dose: str, pair: int = 0, **more: Any) -> dict[str, int]:
    members = more.pop("members", 2)
    own, room = exercise("Lift", load, **more.pop("own", {})), more.pop("room", ROOM)
    worked = work(
        root, room=room, exercises={"lift": own}, sessions={"a": [slot("A", "lift", dose, **more)]},
        lifters={"P1": {"bodyweight": "80 kg"}, "P2": {"bodyweight": "60 kg"}},
    )  # fmt: skip
    one = worked.programs[0].week(1).sessions[0].slots[0]
    needs = slot_needs(worked.book, one, pair, members)
    return dict(needs.things) | dict(needs.sizes)


HANDLES = {"kind": "bar", "bar": "handle", "hands": 2}
BELLS = {"kind": "hands", "weight": "bell", "hands": 2}
BELT = {"kind": "body-weight", "carrier": "belt"}


@pytest.mark.parametrize(
    ("load", "dose", "expected"),
    [
        # 25 kg a side on the 20 kg bar.
        (BAR, "3x5 @ 70 kg, RIR 2", {"bar": 1, "plate 25000": 2}),
        (BAR | {"rack": "rack"}, "3x5 @ 20 kg, RIR 2", {"bar": 1, "rack": 1}),
        # Each of two handles of 10 kg with 5 kg a side.
        (HANDLES, "3 -> 20 m @ 20 kg", {"handle": 2, "plate 5000": 4}),
        # The same bells for everybody, or those that the body mass asks for: 24 of 25.6 kg.
        (BELLS, "3x5 @ 16 kg, RIR 2", {"bell 16000": 2}),
        (BELLS, "3x5 @ 32 % BM, RIR 2", {"bell 24000": 2}),
        (BELT, "3x5 @ BW, RIR 2", {}),
        (BELT, "3x5 @ BW+10 kg, RIR 2", {"belt": 1, "plate 10000": 1}),
        (EFFORT, "3x5, RIR 2", {}),
    ],
)
def test_what_a_pair_takes(tmp_path: Path, load: Any, dose: str, expected: dict[str, int]) -> None:
    assert needs_of(tmp_path, load, dose) == {"floor": 1} | expected


BANDS = {"a": {"pulls": {"20 cm": "5 kg", "80 cm": "15 kg"}},
         "b": {"pulls": {"20 cm": "5 kg", "80 cm": "15 kg"}}}  # fmt: skip
PEGS = {"name": "rack", "count": 3, "hook-spacing": "1.10 m", "band-pegs": 4}
PLATFORM = {"name": "platform", "count": 4, "band-pegs": 2}


@pytest.mark.parametrize(
    ("room", "rack", "more"),
    [
        # A bar on the floor takes a rack for its pegs; one in a rack with pegs takes that one.
        ({"racks": {"rack": PEGS}}, None, {"rack": 1}),
        ({"racks": {"rack": PEGS}}, "rack", {"rack": 1}),
        # Pegs elsewhere, there are four: one of those. In a rack with pegs: nothing more.
        ({"racks": {"rack": PEGS}, "kit": ROOM["kit"] | {"platform": PLATFORM}}, None,
         {"platform": 1}),
        ({"racks": {"rack": PEGS}, "kit": ROOM["kit"] | {"platform": PLATFORM}}, "rack",
         {"rack": 1}),
        # A rack without pegs, and the platform beside it.
        ({"kit": ROOM["kit"] | {"platform": PLATFORM}}, "rack", {"rack": 1, "platform": 1}),
        # One peg is not two, and none is none.
        ({"racks": {"rack": PEGS | {"band-pegs": 1}}}, None, {}),
        ({}, None, {}),
    ],
)  # fmt: skip
def test_bands_on_a_bar_take_a_place_with_rated_pegs(
    tmp_path: Path, room: Any, rack: str | None, more: dict[str, int]
) -> None:
    load = BAR | {"travel": {"bottom": "22 cm", "top": "76 cm"}} | ({"rack": rack} if rack else {})
    needs = needs_of(
        tmp_path, load, "8x2 @ 20 kg, every 60 s, bands a b", room=ROOM | {"bands": BANDS} | room
    )
    assert needs == {"floor": 1, "bar": 1, "a": 1, "b": 1} | more
    plain = needs_of(
        tmp_path / "plain", load, "8x2 @ 20 kg, every 60 s", room=ROOM | {"bands": BANDS} | room
    )
    assert plain == {"floor": 1, "bar": 1} | ({"rack": 1} if rack else {})


def test_the_second_pair_lifts_like_the_second_example(tmp_path: Path) -> None:
    # 32 % of 60 kg are 19.2 kg: the 16 kg bells.
    assert needs_of(tmp_path, BELLS, "3x5 @ 32 % BM, RIR 2", 1)["bell 16000"] == 2


def test_a_team_takes_one_of_each(tmp_path: Path) -> None:
    for pair, expected in ((0, {"floor": 1}), (1, {})):
        folder = tmp_path / str(pair)
        needs = needs_of(folder, EFFORT, "2 -> 50 m, team 6 x 100 kg", pair, members=6)
        assert needs == expected


def test_what_the_room_has(tmp_path: Path) -> None:
    worked = work(
        tmp_path, room=ROOM, exercises={"a": FLOOR}, sessions={"a": [slot("A", "a", "3x5, RIR 2")]}
    )
    units = room_units(worked.book)
    # Three racks with two pairs each, and a loose pair.
    assert units["plate 25000"] == 2 * 2 * 3 + 2
    assert (units["handle"], units["lane"], units["bell 16000"], units["belt"]) == (4, 3, 2, 2)
    room = worked.book.room
    assert thing_name(room, "plate 25000") == "25 kg plate"
    assert thing_name(room, "bell 16000") == "16 kg bell"
    assert thing_name(room, "belt") == "belt"


def test_taking_65_kg_off_one_side_first(tmp_path: Path) -> None:
    """30 kg bar, 25 + 25 + 15 a side of 6, 6 and 4.2 cm, hooks 0.95 m apart, 5 cm off-centre.

    Places: 0.685 + 0.03, + 0.06, + 0.051 = 0.715, 0.775, 0.826 m; a = 0.475 m. Left side bare:
    holds 30 × 0.425 = 12.75; turns 25 × 0.29 + 25 × 0.35 + 15 × 0.401 = 22.015: margin 0.579.
    """
    plates = [
        {"mass": f"{mass} kg", "pairs": 2, "thickness": f"{thick} mm"}
        for mass, thick in ((25, 60), (15, 42))
    ]
    bar = {"name": "yoke bar", "mass": "30 kg", "between-collars": "131 cm"}
    for unload, step, margin in (("one-side", 3, 0.579), ("alternate", 5, 0.0)):
        rack = {"name": "rack", "hook-spacing": "0.95 m", "unload": unload}
        room = ROOM | {"bars": {"bar": bar}, "plates": plates, "racks": {"rack": rack}}
        worked = work(
            tmp_path / unload, room=room, exercises={"a": FLOOR},
            sessions={"a": [slot("A", "a", "3x5, RIR 2")]},
        ).book.room  # fmt: skip
        worst = worst_step(
            worked.bars["bar"], worked.racks["rack"], worked.plates, (25000, 25000, 15000)
        )
        assert worst.step == step
        if unload == "one-side":
            assert worst.margin == pytest.approx(margin, abs=0.001)
            assert not worst.held
        else:
            # The last plate against a bare sleeve: 12.75 ÷ (25 × 0.29) = 1.76, and held.
            assert worst.margin == pytest.approx(1.759, abs=0.001)
            assert worst.held


def test_the_box_of_the_height_that_is_asked_for(tmp_path: Path) -> None:
    room = ROOM | {
        "kit": {
            **ROOM["kit"],
            "low": {"name": "low box", "height": "30 cm"},
            "high": {"name": "high box", "height": "40 cm"},
        }
    }
    jump = exercise("Jump", EFFORT, stations=["low", "floor"], uses=["low"])
    for dose, expected in (
        ("4x3, box 40 cm", {"high": 1, "floor": 1, "low": 1}),
        ("4x3, box 30 cm", {"low": 1, "floor": 1}),
        ("4x3", {"low": 1, "floor": 1}),
    ):
        folder = tmp_path / dose
        worked = work(
            folder, room=room, exercises={"lift": jump}, sessions={"a": [slot("A", "lift", dose)]}
        )
        one = worked.programs[0].week(1).sessions[0].slots[0]
        assert dict(slot_needs(worked.book, one, 0, 2).things) == expected
