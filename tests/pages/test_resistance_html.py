"""Kilos at the hands, bands and chains on the pages: what changes with the room, and what is said.

Numbers are worked out by hand in the comments.
"""

import re
from pathlib import Path
from typing import Any

import pytest

from books import KG_ROOM, LB_ROOM, base, exercise, slot, work
from strength_handbook.calc.registry import all_formulas
from strength_handbook.pages.site import write_pages
from strength_handbook.pages.variable_html import error_of, half

BAR = {"name": "bar", "mass": "20 kg", "sleeve": "41.5 cm", "between-collars": "131 cm"}
PLATES = [
    {"mass": "25 kg", "pairs": 1, "thickness": "60 mm"},
    {"mass": "20 kg", "pairs": 1, "thickness": "54 mm"},
    {"mass": "10 kg", "pairs": 2, "thickness": "34 mm"},
]
BANDS: dict[str, Any] = {
    "22-a": {"width": "22 mm", "pulls": {"22 cm": "3 kg", "76 cm": "10 kg"}, "help": "14 kg",
             "until": "2027-09-30"},
    "22-b": {"width": "22 mm", "pulls": {"22 cm": "3 kg", "76 cm": "10 kg"}, "help": "14.5 kg"},
    "29-a": {"width": "29 mm", "pulls": {"22 cm": "5 kg", "76 cm": "14 kg"}, "help": "21 kg"},
}  # fmt: skip
CHAINS = {"chain": {"name": "steel chain", "pairs": 5, "mass-per-metre": "5.3 kg",
                    "length": "1.5 m"}}  # fmt: skip
ROOM: dict[str, Any] = {
    **KG_ROOM,
    "bars": {"bar": BAR},
    "plates": PLATES,
    "bands": BANDS,
    "chains": CHAINS,
    "pivots": {"pivot": {"name": "pivot", "count": 2}},
    "racks": {"rack": {"name": "rack", "hook-spacing": "1.10 m"}},
    "carriers": {"sled": {"name": "sled", "mass": "22 kg"}},
}
ON_BAR = {
    "kind": "bar", "bar": "bar", "rack": "rack", "chains": "chain",
    "travel": {"bottom": "22 cm", "top": "76 cm"},
}  # fmt: skip
ON_PIVOT = {
    "kind": "pivot", "bar": "bar", "pivot": "pivot",
    "reach": {"grip": "2.15 m", "bottom": "0 cm", "top": "107.5 cm"},
}  # fmt: skip
CHIN = {"kind": "body-weight", "help": "band"}
EIGHT = {"sets": 8, "reps": 2, "load": "50 %"}
PAIR = EIGHT | {"bands": {"pair": ["22-a", "22-b"]}}


def pages(root: Path, load: Any, dose: Any, room: Any = ROOM, **more: Any) -> dict[str, str]:
    """Text of all pages by their address; tables with a bar between cells."""
    kind = "system" if load["kind"] == "body-weight" else "1RM"
    worked = work(
        root,
        room=room,
        exercises={"lift": exercise(load=load, **more)},
        sessions={"a": [slot("A", "lift", {"1": dose}, base="best")]},
        bases={"best": base(kind=kind)},
        lifters={"P1": {"bodyweight": "80 kg", "bases": {"best": "140 kg"}}},
    )
    return {page.url: text_of(page.html) for page in write_pages(worked).pages}


def text_of(html: str) -> str:
    html = re.sub(r"</(td|th)>", "|", html)
    html = re.sub(r"</(tr|p|li|dd|dt|h2|caption)>", "\n", html)
    return re.sub(r"<[^>]+>", "", html).replace("\u00a0", " ")


def lift(root: Path, load: Any, dose: Any, room: Any = ROOM, **more: Any) -> str:
    """The exercise's page, and behind it its session with all loads."""
    found = pages(root, load, dose, room, **more)
    session = [text for url, text in found.items() if url.endswith(("/a/", "/a/loads/"))]
    assert len(session) == 2
    return "".join([found["exercises/lift/"], *session])


def test_plates_on_a_pivot(tmp_path: Path) -> None:
    text = lift(tmp_path, ON_PIVOT, "3x5 @ 20 kg")
    # Straight up (20·1.10 + 20·1.812) / 2.15 = 27.09, printed to the half: 27. The bottom is level,
    # so square is the same; at the top 30° high: 27.09·0.866 = 23.5. Bare bar 22 / 2.15 = 10.2.
    assert "20|27|27|23.5|" in text
    assert "bare bar|10|10|9|" in text
    assert "Two ways to push make a range." in text
    assert error_of("landmine_vertical") in text


@pytest.mark.parametrize(
    ("change", "row"),
    [
        ({"bars": {"bar": BAR | {"mass": "15 kg"}}}, "20|24.5|24.5|21|"),
        ({"pivots": {"pivot": {"name": "pivot", "offset": "5 cm"}}}, "20|27.5|27.5|24|"),
    ],
)
def test_another_bar_or_pivot_gives_another_table(
    tmp_path: Path, change: dict[str, Any], row: str
) -> None:
    # 15·1.10 + 36.24 = 52.74, by 2.15: 24.53. Offset: 60.24 / 2.20 = 27.38; sin θ = 1.075 / 2.2.
    assert row in lift(tmp_path, ON_PIVOT, "3x5 @ 20 kg", ROOM | change)


def test_bands_for_the_percentage_of_the_week(tmp_path: Path) -> None:
    text = lift(tmp_path, ON_BAR, PAIR)
    # 50 % of 140 is 70; these plates make 60 (10 · 10 a side) and 70 (25). Bands: 70 + 6 = 76 at
    # the bottom, 70 + 20 = 90 at the top, 20 / 90 = 22 % there.
    assert "140|70|25|22-a, 22-b|76 to 90|22 %|" in text
    assert "P1: 70 kg – 25 each side; with bands 22-a and 22-b 76 kg at the bottom, 83" in text
    assert "83 half-way, 90 at the top (22 % bands there)" in text
    assert "From the bottom to the top, since a band pulls more the longer it is" in text
    assert error_of("band_pull") in text
    assert "the bands come on top" in text
    # All pairs that fit: 22-a with 22-b alone; 29-a differs by a third from either.
    assert "22-a, 22-b|6|20|0 %|" in text
    assert "22-a, 29-a" not in text


def test_other_readings_and_other_plates_give_another_strip(tmp_path: Path) -> None:
    stiff = {key: {"pulls": {"22 cm": "4 kg", "76 cm": "12 kg"}} for key in BANDS}
    text = lift(tmp_path / "a", ON_BAR, PAIR, ROOM | {"bands": stiff})
    assert "140|70|25|22-a, 22-b|78 to 94|26 %|" in text
    few = [row for row in PLATES if row["mass"] != "25 kg"]
    text = lift(tmp_path / "b", ON_BAR, PAIR, ROOM | {"plates": few})
    assert "140|60|20|22-a, 22-b|66 to 80|25 %|" in text


def test_chains(tmp_path: Path) -> None:
    heights = ON_BAR | {"travel": {"bottom": "45 cm", "top": "125 cm"}}
    text = lift(tmp_path, heights, EIGHT | {"chains": {"pairs": 1}})
    # 2·5.3·0.45 = 4.8 and 2·5.3·1.25 = 13.25 kg: 74.77 to 83.25, to the half 75 (74.77) and 83.
    assert "140|70|25|1 pair|75 to 83|16 %|" in text
    assert "each pair adds 10.6 kg for every metre" in text


def test_pounds(tmp_path: Path) -> None:
    room = LB_ROOM | {key: ROOM[key] for key in ("bands", "chains", "pivots")}
    bare = {key: value for key, value in ON_BAR.items() if key != "rack"}
    text = lift(tmp_path / "a", bare, {"sets": 8, "reps": 2, "load": "50 %",
                                       "bands": {"pair": ["22-a", "22-b"]}}, room)  # fmt: skip
    # 50 % of 140 kg are 154.3 lb: 150 lb on the bar (45 + 2·52.5). 2·3 kg are 13.2 lb, 2·10 kg
    # are 44.1 lb: 163 at the bottom, 194 at the top.
    assert "with bands 22-a and 22-b 163 lb at the bottom" in text
    assert "194 at the top" in text
    room_text = pages(tmp_path / "b", ON_PIVOT, "3x5", room)["room/"]
    # 3, 10 and 14 kg by 0.45359237 kg a pound: 6.61, 22.05 and 30.86.
    assert re.search(r"22-a\|22 mm\|6.6 at 22, 22(\.0)? at 76\|30.9\|2027-09-30\|", room_text)
    assert " kg" not in room_text


def test_push_up_by_height(tmp_path: Path) -> None:
    load = {"kind": "push-up", "hands": ["61 cm", "0 cm"], "feet": ["30.5 cm"],
            "plate-limit": "20 kg"}  # fmt: skip
    text = lift(tmp_path, load, "3x10 @ BW")
    # Ebben 2011, J Strength Cond Res 25:2891–2894, measured 41 % with the hands at 61 cm, 64 % on
    # the floor and 70 % with the feet at 30.5 cm. The quadratic through them: 41.3, 64.1, 70.6.
    assert "body, kg|hands 61 cm: 41 %|hands on the floor: 64 %|feet 30.5 cm: 71 %|" in text
    assert "80|33|51.5|56.5|" in text
    # 1.26·64.1 %: a plate on the shoulder blades (statics with de Leva 1996).
    assert "counts about 81 % of its mass" in text
    assert error_of("ebben_2011_push_up") in text
    assert "P1: body weight" in text


def test_strap_row_by_angle(tmp_path: Path) -> None:
    text = lift(tmp_path, {"kind": "strap-row", "angles": ["30°", "75°"]}, "3x10 @ BW")
    # Melrose and Dawes 2015, J Athl Enhanc 4(1): 37.44 and 79.38 %. Of 80 kg: 29.95 and 63.5.
    assert "body, kg|30°: 37 %|75°: 79 %|" in text
    assert "80|30|63.5|" in text


def test_sled(tmp_path: Path) -> None:
    load = {"kind": "carrier", "carrier": "sled", "body-mass-shares": ["40 %", "50 %"]}
    text = lift(tmp_path, load, "4 -> 20 m @ 50 % BM")
    # 32 of 80 kg: sled and one plate of 10 kg; 40: still 32, since the next is 42.
    assert "80|32|32|" in text
    assert "the sled alone weighs 22 kg" in text


def test_what_is_on_the_pin_is_not_what_the_hands_pull(tmp_path: Path) -> None:
    pins = {"from": "5 kg", "to": "35 kg", "by": "5 kg"}
    load = {"kind": "stack", "stack": "cable"}

    def text(folder: str, **more: Any) -> str:
        room = ROOM | {"stacks": {"cable": {"name": "cable", "pins": pins} | more}}
        return lift(tmp_path / folder, load, "3x8, RIR 3", room)

    assert "20 kg on the pin pull about 10 kg at the handle." in text("two", ratio=2)
    # The label of this one says the same as the hands.
    assert "on the pin pull" not in text("one")


def test_help_from_a_band_and_the_next_easier_one(tmp_path: Path) -> None:
    dose = {"sets": 3, "reps": 5, "assist": {"band": "22-a"}}
    text = lift(tmp_path, CHIN, dose, hazards=["band"])
    assert "Band 22-a takes about 14 kg off at the bottom and less higher up." in text
    # 22-b is of the same width, so 29-a is the next step.
    assert "Easier: band 29-a, about 21 kg." in text
    assert "P1: band 22-a, about 14 kg off" in text
    assert "22-a|14 kg|" in text


def test_the_band_for_the_help_that_a_percentage_asks_for(tmp_path: Path) -> None:
    worked_out = lift(tmp_path, CHIN, "3x5 @ 45 % system", hazards=["band"])
    # 45 % of 140 is 63 of the 80 kg body: 17 kg less. 14.5 kg are nearer than 21.
    assert "P1: band 22-b, about 14.5 kg off" in worked_out


def test_taking_plates_off_in_the_rack(tmp_path: Path) -> None:
    text = lift(tmp_path / "a", ON_BAR, EIGHT)
    # A lone 25 on 1.10 m, bar 5 cm off: 20·0.5 / (25·0.215) = 1.86, below 2.
    assert (
        "Taking 70 kg apart in the rack: 25 while somebody holds the bar; each off the left" in text
    )
    wide = ROOM | {"racks": {"rack": {"name": "rack", "hook-spacing": "1.20 m"}}}
    text = lift(tmp_path / "b", ON_BAR, EIGHT, wide)
    assert "Taking 70 kg apart in the rack: 25; each off the left" in text
    text = lift(tmp_path / "c", ON_BAR, PAIR, wide)
    assert "in the rack: bands off first, then 25; each" in text
    floor = {key: value for key, value in ON_BAR.items() if key != "rack"}
    assert "apart in the rack" not in lift(tmp_path / "d", floor, EIGHT)


def test_the_room_page(tmp_path: Path) -> None:
    text = pages(tmp_path, ON_BAR, EIGHT)["room/"]
    assert "22-a|22 mm|3 at 22, 10 at 76|14|2027-09-30|" in text
    # Safe lone load 23.8, rounded down; the full bar 25 · 20 · 10 · 10.
    assert "Alone on one side: 23 kg at most, so never a lone plate of 25 kg." in text
    assert "With 25 · 20 · 10 · 10 on each side, take off: 10, 10, 20, 25 while somebody" in text
    assert "Not without a partner." in text
    assert "5 pairs of steel chain, 1.5 m long. 5.3 kg a metre" in text
    assert "2 × pivot" in text
    plain = pages(tmp_path / "plain", {"kind": "bar", "bar": "bar"}, EIGHT, KG_ROOM)["room/"]
    # Hand-written pages lead to these headings, whatever is in the room.
    assert "Bars in the rack" in text
    assert "Bars in the rack" not in plain  # it has no rack
    assert "Nothing is worked out here." in plain
    for word in ("Bands", "Chains", "Pivots", "Tipping"):
        assert word in text or word == "Tipping"
        assert word in plain
    assert "There are none here." not in text
    assert plain.count("There are none here.") == 2
    assert "No band here has been read, so no load counts on one." in plain


def test_every_error_that_is_printed_is_stated_in_the_list_of_formulas() -> None:
    for name in ("band_pull", "chain_load", "landmine_vertical", "ebben_2011_push_up",
                 "melrose_dawes_2015_row", "tip_margin"):  # fmt: skip
        (stated,) = [one.error for one in all_formulas() if one.id == name]
        assert len(stated) > 10
        assert error_of(name).casefold().startswith(stated.removesuffix(".").casefold())


def test_kilos_to_the_half() -> None:
    assert half(74.77, "kg") == 75_000
    assert half(74.74, "kg") == 74_500
    assert half(10, "lb") == pytest.approx(22 * 453.59237)
