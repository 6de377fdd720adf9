"""Goals whose result is no load: what is counted, and what a change has to be."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from books import EFFORT, base, exercise, slot, work
from strength_handbook.pages.goal_results_html import results_block, session_results
from strength_handbook.plan.goal_results import goal_results
from strength_handbook.plan.worked import WorkedProgram

GOAL = {"goal": "Last longer.", "test": "As long as you can"}


def program(root: Path, goal: dict[str, str], dose: str = "ISO 3x30 s") -> WorkedProgram:
    worked = work(
        root,
        exercises={"lift": exercise(load=EFFORT)},
        sessions={"a": [slot("A", "lift", dose)]},
        bases={"best": base()},
        goals=[GOAL | goal],
    )
    return worked.programs[0]


@pytest.mark.parametrize(
    ("goal", "dose", "counted"),
    [
        ({"exercise": "lift"}, "ISO 3x30 s", "seconds"),
        ({"exercise": "lift"}, "3x20 m", "metres"),
        ({"exercise": "lift"}, "3x8, RIR 2", "repetitions"),
        ({"exercise": "lift", "result": "metres"}, "ISO 3x30 s", "metres"),
        ({"result": "seconds"}, "3x8, RIR 2", "seconds"),
        # A load answers it, or nothing is named.
        ({"base": "best"}, "3x8, RIR 2", None),
        ({}, "3x8, RIR 2", None),
    ],
)
def test_what_is_counted(
    tmp_path: Path, goal: dict[str, str], dose: str, counted: str | None
) -> None:
    found = goal_results(program(tmp_path, goal, dose))
    assert [one.counted for one in found] == ([counted] if counted else [])


def read(block: str) -> Any:
    found = re.fullmatch(r"<script[^>]*>(.*)</script>", block)
    assert found is not None
    return json.loads(found[1])


def test_limits_only_where_the_noise_is_known(tmp_path: Path) -> None:
    plain = read(str(results_block(program(tmp_path / "a", {"exercise": "lift"}))))
    assert plain == [{"test": GOAL["test"], "exercise": "lift", "counted": "seconds"}]
    # Two tests differ by √2 as much as one: 5 % make 7.07, nearly certain is 2.8 times: 14.
    known = read(str(results_block(program(tmp_path / "b", {"exercise": "lift", "noise": "5 %"}))))
    assert known[0]["limits"] == [7_500_000, 14_000_000]


def test_a_session_has_only_its_own_tests_and_only_in_a_test_week(tmp_path: Path) -> None:
    found = program(tmp_path, {"exercise": "lift"})
    week = found.weeks[0]
    assert not session_results(found, week, week.sessions[0])
    assert not results_block(found, {"another"})
    assert results_block(found, {"lift"})
