"""In a room in pounds every example is in pounds: 225 copied as kilograms is more than twice it."""

from pathlib import Path

import pytest

import tiny
from strength_handbook.checked import check_folder
from strength_handbook.pages.change_words import said
from strength_handbook.publish.explained import explained
from strength_handbook.record.change import BeforeAfter, Change, ChangeKind

POUNDS = "units: lb\n"
BAR = """\
bars: {bar: {name: bar, mass: 45 lb, between-collars: 131 cm}}
plates: [{mass: 45 lb, pairs: 2}]
"""


def messages(root: Path, wave: str = tiny.WAVE, room: str = "", units: str = POUNDS) -> str:
    tiny.write_tiny(root)
    programs = root / "programs"
    (programs / "room.yml").write_text(tiny.ROOM + units + room, encoding="utf-8")
    (programs / "spring/1-start.yml").write_text(wave, encoding="utf-8")
    return "\n".join(problem.text for problem in check_folder(programs).problems)


@pytest.mark.parametrize(
    ("dose", "says"),
    [
        ("5x5 @ 225", "'225' has no unit; write '@ 225 lb'"),
        ("5x5 @ 60", "'60' has no unit; write '@ 60 lb' or '@ 60 %'"),
        ("{sets: 5, reps: 5, load: 225}", "'225' has no unit; write '225 lb'"),
        ("{sets: 5, reps: 5, load: heavy}", "such as '70 %', '70 % system', '25 % BM', '130 lb'"),
        ("5x5 @", "such as '@ 74 %', '@ 130 lb', '@ 25 % BM' or '@ BW+20 lb'"),
        ("5x5 load", "such as '@ 74 %' or '@ 130 lb'"),
        ("5x5 @ 3000 lb", "is too large; the most is 2204 lb"),
        ("5x5 team", "'team 6 x 220 lb turn 60 s'"),
    ],
)
def test_a_dose_is_answered_in_pounds(tmp_path: Path, dose: str, says: str) -> None:
    text = messages(tmp_path, tiny.WAVE.replace("2x8", dose))
    assert says.removeprefix("such as ") in text
    assert "kg" not in text
    assert "225 %" not in text


def test_the_room_itself_too(tmp_path: Path) -> None:
    text = messages(tmp_path, room="bars: {bar: {name: bar, mass: 45}}\n")
    assert "'45' has no unit; write '45 lb' or '45 kg'" in text
    text = messages(tmp_path / "b", room="bars: {bar: {name: bar, mass: heavy}}\n")
    assert "write it like '45 lb' or '20 kg'" in text


def test_a_rule_for_going_on_too(tmp_path: Path) -> None:
    wave = tiny.WAVE.replace("        weeks:\n", "        progress: more\n        weeks:\n")
    text = messages(tmp_path, wave)
    assert "'linear +5 lb'" in text
    assert "kg" not in text


def test_kilograms_offer_no_percentage_above_a_hundred_either(tmp_path: Path) -> None:
    wave = tiny.WAVE.replace("2x8", "5x5 @ 225")
    assert "write '@ 225 kg'" in messages(tmp_path, wave, units="")
    assert "%" not in messages(tmp_path / "b", wave, units="")


def test_an_explanation_too(tmp_path: Path) -> None:
    messages(tmp_path)
    assert "kg" not in explained("load", tmp_path / "programs")
    assert "lb" in explained("load", tmp_path / "programs")
    assert "60 kg" in explained("load", None)


@pytest.mark.parametrize(
    ("kind", "pair", "words"),
    [
        (ChangeKind.LOAD,
         BeforeAfter("P1.plates_per_side_kg", [20.412, 4.536], [20.412, 2.268, 2.268]),
         "P1 plates per side 45 · 5 · 5 lb instead of 45 · 10 lb"),
        (ChangeKind.LOAD, BeforeAfter("P1.planned_kg", 50.973, 51.324),
         "P1 planned 113.2 lb instead of 112.4 lb"),
        (ChangeKind.LIFTER, BeforeAfter("P1.bodyweight_kg", 81.647, 83.915),
         "P1 body weight 185 lb instead of 180 lb"),
    ],
)  # fmt: skip
def test_what_changed_is_said_in_pounds(kind: ChangeKind, pair: BeforeAfter, words: str) -> None:
    assert said(Change(kind, (pair,)), "lb") == words
