"""Methods, doors and variants in the data file."""

from pathlib import Path
from typing import Any

import pytest

from books import EFFORT, base, exercise, slot, work
from strength_handbook.record.data import program_data


def data(root: Path, dose: Any, **keys: Any) -> dict[str, Any]:
    lift = keys.pop("lift", {})
    variants = keys.pop("variants", [])
    worked = work(
        root,
        exercises={"lift": exercise(**lift)},
        sessions={"a": {"slots": [slot("A", "lift", dose, base="best", **keys)],
                        "variants": variants}},
        bases={"best": base()},
        lifters={"P1": {"bodyweight": "72 kg", "bases": {"best": "140 kg"}}},
    )  # fmt: skip
    found: dict[str, Any] = program_data(worked, worked.programs[0])
    session: dict[str, Any] = found["weeks"][0]["sessions"][0]
    return session


@pytest.mark.parametrize(
    ("dose", "key", "value"),
    [
        ("3x(2+2+2)/20 s @ 85 %", "cluster", {"reps": 6, "total": 18, "seconds": 58}),
        ("3x2, every 60 s", "starts_s", [0, 60, 120]),
        ("6x40 s, rest 80 s", "total_s", 640),
        ("6 min AMRAP, pace 8/min, shared by 2", "density", {"total": 48, "each": 24}),
        ("4 -> 100 m, team 6 x 100 kg turn 60 s", "team", {"each_kg": 16.7, "changes": 1}),
        ("4 -> 40 m", "carry", {"turns": 0, "seconds": 40}),
    ],
)
def test_methods(tmp_path: Path, dose: str, key: str, value: object) -> None:
    plan = data(tmp_path, dose, lift={"load": EFFORT})["slots"][0]["plan"]
    assert plan[key] == value
    # Only what this method has; the doors are always there.
    assert set(plan) - {key, "doors", "total_s", "work_s", "rest_s", "carry"} <= {"effort"}


def test_ramp(tmp_path: Path) -> None:
    plan = data(tmp_path, "3x5 @ 75 %")["slots"][0]["plan"]
    steps = plan["ramp"]["by_lifter"]["P1"]
    assert steps[-1]["load_kg"] == 105
    loaded = 20.0
    for step in steps:
        loaded += 2 * (sum(step["on_kg"]) - sum(step.get("off_kg", [])))
        assert step["load_kg"] == loaded


def test_next(tmp_path: Path) -> None:
    plan = data(tmp_path, "3x5 @ 60 kg", progress="linear +2.5 kg")["slots"][0]["plan"]
    assert plan["next"]["rule"] == "linear"
    assert plan["next"]["by_lifter"]["P1"] == {"loads_kg": [62.5, 60, 52.5], "warning": ""}


def test_doors(tmp_path: Path) -> None:
    doors = {key: {"how": "As it is."} for key in ("harder", "hurts", "taken", "no-partner")}
    lift = {"doors": doors | {"easier": {"how": "Less.", "load": "90 %"}}}
    plan = data(tmp_path, "3x5 @ 60 kg", lift=lift)["slots"][0]["plan"]
    assert plan["doors"][0] == {
        "door": "easier", "exercise": None, "sets": 3, "reps": 5, "share_percent": 90,
        "by_lifter": {"P1": 52.5},
    }  # fmt: skip


def test_variants(tmp_path: Path) -> None:
    session = data(
        tmp_path, "4x5 @ 60 kg, rest 60 s", variants=[{"when": "Late", "keep-sets": "50 %"}]
    )
    words = session["variants"][0].pop("words")
    assert set(words) <= set("0123456789abcdef")
    assert session["variants"] == [
        {
            "when": "Late", "minutes": 1.5, "left_out": [],
            "slots": [
                {
                    "order": "A", "sets": 2, "tempo": None, "rir": None, "rir_range": None,
                    "by_lifter": {"P1": 60},
                }
            ],
        }
    ]  # fmt: skip
