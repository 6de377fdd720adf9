"""What a session's page carries for session mode."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from books import base, exercise, slot, work
from strength_handbook.model.dose import complete
from strength_handbook.model.dose_part import DosePart
from strength_handbook.pages.train_html import train_data
from strength_handbook.plan.train import dose_guide, session_guide
from strength_handbook.reading.doses import store
from strength_handbook.reading.notation import read_dose


def guide(line: str) -> dict[str, Any]:
    long: dict[str, Any] = {}
    for value in read_dose(line):
        store(long, value)
    return dose_guide(complete(DosePart.model_validate(long)))


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("3x6 @ 60 kg, tempo 2-0-1-0, rest 2:00", {"s": 3, "r": 120}),
        ("3-4x6", {"s": [3, 4]}),
        ("3x6 ES, rest 0 s", {"s": 3, "r": 0, "b": 1}),
        ("ISO 3x30 s ES", {"s": 3, "w": 30, "h": 1, "b": 1}),
        ("6x40 s, rest 80 s", {"s": 6, "w": 40, "r": 80}),
        ("8x2 @ 50 % every 60 s", {"s": 8, "e": 60}),
        ("4 -> 40 m @ 25 % BM", {"s": 4}),
        ("3x(2+2+2)/20 s", {"s": 3, "c": [[2, 2, 2], 20]}),
        ("2x strip 3 loads -20 % to 36 reps", {"s": 2, "l": 3}),
        ("1x5+ cap 12, RIR 1", {"s": 1, "n": [5, 12, 1]}),
        ("2x5, last set 5+ cap 12 RIR 1", {"s": 2, "n": [5, 12, 0]}),
        ("ramp to 5RM", {"p": 5}),
        ("ramp to 5RM, 2x5 @ 90 % of top", {"s": 2, "p": 5}),
        # The shortest rest between attempts: Sheppard and Triplett 2016, ch. 17.
        ("test 3RM in 4 attempts", {"s": 4, "a": 1, "r": 120}),
    ],
)
def test_a_dose_in_short(line: str, expected: dict[str, Any]) -> None:
    assert guide(line) == expected


def test_the_block_of_a_page(tmp_path: Path) -> None:
    bottom = exercise(lifts_from="bottom", stop=["Stop when it is < good.", "Or when it hurts."])
    slots = [
        slot("A", "lift", "3x5 @ 70 %, tempo 3-0-1-0", base="best"),
        slot("B1", "other", "3x5 @ 60 kg, tempo 3-0-1-0"),
    ]
    worked = work(
        tmp_path,
        exercises={"lift": bottom, "other": exercise("Other")},
        sessions={"a": slots},
        bases={"best": base()},
    )
    program = worked.programs[0]
    week = program.week(1)
    block = train_data(worked, program, week, week.sessions[0])
    assert block.count("<") == 2  # the tags of the element
    found = re.search(r">(.*)</script>", block)
    assert found is not None
    first, second = json.loads(found[1])["slots"]
    assert json.loads(found[1])["at"] == "plan/1/a"
    assert first == {"o": "A", "s": 3, "g": 1, "u": 1, "x": "Stop when it is < good."}
    assert second["o"] == "B1"
    assert "u" not in second


def test_what_variants_change(tmp_path: Path) -> None:
    """Sets as a coach would count them: half of 4 is 2, of 5 to 6 it is 2 to 3, never below 1."""
    slots = [
        slot("A", "lift", "4x5 @ 60 kg, tempo 5-0-1-0"),
        slot("B1", "lift", "5-6x5"),
        slot("B2", "lift", "1x5+ cap 12, RIR 1"),
        slot("C", "lift", "ramp to 5RM"),
        slot("D", "lift", "3x5"),
    ]
    variants = [
        {"when": "Short", "keep-sets": "50 %", "leave-out": ["D"]},
        {"when": "Called out", "tempo": "2-0-1-0", "leave-out": ["C"]},
        {"when": "Sore", "keep-load": "80 %"},
    ]
    worked = work(
        tmp_path,
        exercises={"lift": exercise()},
        sessions={"a": {"slots": slots, "variants": variants}},
    )
    program = worked.programs[0]
    week = program.week(1)
    found = session_guide(worked.book, program, week, week.sessions[0])["slots"]
    assert {one["o"]: one["v"] for one in found} == {
        "A": [{"of": 2}, {"of": 4}, {"of": 4}],
        "B1": [{"few": 2, "of": 3}, {"few": 5, "of": 6}, {"few": 5, "of": 6}],
        # With fewer sets or less load, an open set becomes a plain one.
        "B2": [{"of": 1, "open": 0}, {"of": 1}, {"of": 1, "open": 0}],
        "C": [{"of": 1}, {"of": 0}, {"of": 1}],
        "D": [{"of": 0}, {"of": 3}, {"of": 3}],
    }


def test_a_test_has_a_result_in_the_room_s_unit(tmp_path: Path) -> None:
    slots = [slot("A", "lift", "test 3RM in 4 attempts", base="best")]
    worked = work(
        tmp_path, exercises={"lift": exercise()}, sessions={"a": slots}, bases={"best": base()}
    )
    program = worked.programs[0]
    week = program.week(1)
    (found,) = session_guide(worked.book, program, week, week.sessions[0])["slots"]
    assert (found["a"], found["s"]) == ("kg", 4)
    assert "v" not in found
