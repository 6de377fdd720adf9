"""A dose in another spelling is echoed; what can't be read is answered by what is done."""

import json
from pathlib import Path

import pytest

import tiny
from strength_handbook.checked import check_folder
from strength_handbook.model.samples import samples_in
from strength_handbook.publish.report import as_json
from strength_handbook.reading.doing import Doing, doing
from strength_handbook.reading.notation import NotationError, read_dose


def checked(root: Path, wave: str, room: str = "") -> list[str]:
    tiny.write_tiny(root)
    programs = root / "programs"
    (programs / "room.yml").write_text(tiny.ROOM + room, encoding="utf-8")
    (programs / "spring/1-start.yml").write_text(wave, encoding="utf-8")
    return [problem.text for problem in check_folder(programs).problems]


def test_a_spelling_is_echoed_with_its_place(tmp_path: Path) -> None:
    wave = tiny.WAVE.replace("1: 2x8", "1: 2 sets of 8 each, 60s rest")
    checked(tmp_path, wave)
    found = check_folder(tmp_path / "programs", "programs")
    data = json.loads(as_json(found, found.problems))
    line = next(n for n, text in enumerate(wave.split("\n"), 1) if "2 sets of 8" in text)
    assert data["read_as"] == [
        {
            "file": "programs/spring/1-start.yml",
            "line": line,
            "column": wave.split("\n")[line - 1].index("2 sets") + 1,
            "path": ["sessions", "a-squat", "slots", 0, "weeks", "1"],
            "written": "2 sets of 8 each, 60s rest",
            "read_as": "2x8 ES, rest 60 s",
            "left_out": [],
        }
    ]


def test_words_that_add_nothing_are_echoed_too(tmp_path: Path) -> None:
    checked(tmp_path, tiny.WAVE.replace("1: 2x8", "1: chair squat 2x8, strict"))
    (found,) = check_folder(tmp_path / "programs").read_as
    assert (found.read_as, found.left_out) == ("2x8, remark strict", ("chair squat",))
    data = json.loads(as_json(check_folder(tmp_path / "programs"), ()))
    assert data["read_as"][0]["left_out"] == ["chair squat"]


def test_the_house_s_own_notation_is_not_echoed(tmp_path: Path) -> None:
    checked(tmp_path, tiny.WAVE.replace("1: 2x8", "1: 2×8 ES, rest 1:00, RIR2"))
    assert check_folder(tmp_path / "programs").read_as == ()


def test_echoes_are_there_beside_errors_too(tmp_path: Path) -> None:
    checked(tmp_path, tiny.WAVE.replace("1: 2x8", "1: 2 sets of 8").replace("3x8", "gibberish"))
    found = check_folder(tmp_path / "programs")
    assert [one.read_as for one in found.read_as] == ["2x8"]
    assert found.worked is None


@pytest.mark.parametrize(
    ("pattern", "kind", "example"),
    [
        ("carry", "hands", "'4 -> 40 m @ 25 % BM, rest 90 s'"),
        ("trunk", "effort", "'ISO 3x30 s, RPE 7, rest 60 s'"),
        ("jump", "body-weight", "'4x3, box 45 cm, intent fast, rest 90 s'"),
        ("squat", "bar", "'4x5 @ 74 %, tempo 4-1-X-0, RIR 2, rest 2:30'"),
        ("vertical-pull", "body-weight", "'3x5 @ BW+7.5 kg, RIR 2, rest 2:00'"),
        ("horizontal-push", "hands", "'3x10 @ 16 kg, RIR 2, rest 90 s'"),
    ],
)
def test_the_example_is_of_the_kind(pattern: str, kind: str, example: str) -> None:
    assert doing({"pattern": pattern, "load": {"kind": kind}}).example == example


def test_a_wave_is_answered_by_its_exercise_and_in_its_units(tmp_path: Path) -> None:
    wave = tiny.WAVE.replace("1: 2x8", "1: gibberish")
    path = tmp_path / "programs/exercises/chair-squat.yml"
    (text,) = checked(tmp_path, wave)
    assert text == "can't read 'gibberish' in a dose; write it like '3x8-12, RPE 7, rest 90 s'"
    hands = doing({"pattern": "squat", "load": {"kind": "hands"}})
    with samples_in("lb"):
        assert hands.shown == "'3x10 @ 35 lb, RIR 2, rest 90 s'"
    text = path.read_text(encoding="utf-8")
    assert "pattern: squat" in text
    path.write_text(text.replace("pattern: squat", "pattern: trunk"), encoding="utf-8")
    problems = check_folder(tmp_path / "programs").problems
    assert problems[0].text.endswith("write it like 'ISO 3x30 s, RPE 7, rest 60 s'")


def test_a_slot_with_holds_is_answered_with_a_hold(tmp_path: Path) -> None:
    wave = tiny.WAVE.replace("1: 2x8", "1: gibberish").replace("3x8", "ISO 3x20 s")
    texts = checked(tmp_path, wave)
    assert any(text.endswith("write it like 'ISO 3x30 s, RPE 7, rest 60 s'") for text in texts)


def test_more_on_a_bar_has_two_meanings_and_on_a_body_one() -> None:
    with pytest.raises(NotationError, match=r"'last week \+10 kg', or more than the bar"):
        read_dose("3x5 +10 kg", Doing(kind="bar"))
    assert [one.value for one in read_dose("3x5 +10 kg", Doing(kind="body-weight"))] == [
        "3",
        "5",
        "BW+10 kg",
    ]
