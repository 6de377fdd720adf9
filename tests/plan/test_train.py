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
from strength_handbook.plan.train import dose_guide
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
