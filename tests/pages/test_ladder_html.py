"""A test's ladder in tables: what is put on, for those without numbers on a phone, and on paper."""

import re
from pathlib import Path
from typing import Any

from books import BAR, KG_ROOM, base, exercise, slot, slots_of, work
from strength_handbook.pages.ramp_html import ladders_html
from strength_handbook.plan.ladder import slot_ladders

BAND = {"width": "22 mm", "pulls": {"22 cm": "3 kg", "76 cm": "10 kg"}, "until": "2027-06-30"}
BELT = {"kind": "body-weight", "carrier": "belt", "help": "looped band, by its number"}


def tables(root: Path, load: Any, dose: str, kind: str) -> dict[str, dict[str, list[str]]]:
    """Cells of each row, by caption and first cell."""
    hazards = ["band"] if load == BELT else []
    found = work(
        root,
        room={**KG_ROOM, "carriers": {"belt": {"name": "belt"}},
              "bands": {"22-a": BAND | {"help": "17 kg"}}},
        exercises={"lift": exercise(load=load, pattern="vertical-pull", hazards=hazards)},
        sessions={"a": [slot("A", "lift", dose, base="best")]},
        bases={"best": base(kind=kind)},
    )  # fmt: skip
    own = slots_of(found)["A"]
    plan = slot_ladders(found.book, own)
    assert plan is not None
    html = ladders_html(plan, own.scale, "kg")
    return {
        caption: {
            first: [re.sub(r"<br>", " / ", cell) for cell in re.findall(r"<td>(.*?)</td>", cells)]
            for first, cells in re.findall(r'<tr><th scope="row">(.*?)</th>(.*?)</tr>', rows)
        }
        for caption, rows in re.findall(r"<caption>(.*?)</caption>.*?<tbody>(.*?)</tbody>", html)
    }


def words(cell: str) -> str:
    return re.sub(r"<[^>]+>", "", cell).replace("\xa0", " ")


def test_attempts_on_a_bar_have_their_plates(tmp_path: Path) -> None:
    ((caption, rows),) = tables(tmp_path, BAR, "test 1RM in 3 attempts", "1RM").items()
    assert caption == "Steps and attempts, kg; beside them: plates each side of the bar"
    # 95 % of 120 is 114: 112.5, which is 46.25 on each side of a bar of 20 kg. 2 to 5 % up are
    # 114.75 to 118.1 and come to one step of plates; 2.5 to 5 % down 106.9 to 109.7.
    assert [words(cell) for cell in rows["120"]] == [
        "72.5, 92.5, 102.5",
        "112.5 25 · 20 · 1.25",
        " / ".join(
            (
                "115 25 · 20 · 2.5 to 117.5 25 · 20 · 2.5 · 1.25",
                "105 25 · 15 · 2.5 to 107.5 25 · 15 · 2.5 · 1.25",
            )
        ),
    ]


def test_a_lift_of_the_body_has_a_table_for_each_best(tmp_path: Path) -> None:
    found = tables(tmp_path, BELT, "test 1RM in 4 attempts", "system")
    assert list(found) == [
        f"Best single at {best}"
        for best in ("−20 kg", "−10 kg", "body weight", "+10 kg", "+20 kg", "+30 kg")
    ]
    # 75 kg of body and 20 kg: first 95 % of 95, 90.25, so 15 hang. Light 65 % of it, 58.7: 16.3 of
    # help, and the band takes 17; 74.6 are 0.4 less than the body and nearer to it than to a band;
    # 82.1 are 7 on the belt, which is 6.25.
    way, first, _ = found["Best single at +20 kg"]["75"]
    assert words(first) == "+15 15"
    assert words(way) == "22-a, BW, +6.25"
