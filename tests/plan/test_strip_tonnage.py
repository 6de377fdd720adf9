"""Tonnage of strip sets: each repetition counts at the load that was on for it, summed by hand."""

from pathlib import Path
from typing import Any

import pytest

from books import KG_ROOM, base, exercise, plates, slot, slots_of, work

ROOM = {
    **KG_ROOM, "plates": plates("kg", (20, 2), (15, 2), (10, 3), (5, 3), (2.5, 3)),
    "carriers": {"belt": {"name": "belt"}},
}  # fmt: skip
BAR = {"kind": "bar", "bar": "bar"}
BELT = {"kind": "body-weight", "carrier": "belt"}


def tonnage(root: Path, dose: str, load: Any, room: Any = ROOM, best: str = "") -> float:
    bases = {"lift-1rm": base() | {"from": "40 kg", "to": "140 kg"}} if best else None
    own = {"lift-1rm": best} if best else {}
    worked = work(
        root, room=room, bases=bases, lifters={"P1": {"bodyweight": "72 kg", "bases": own}},
        exercises={"lift": exercise(load=load)},
        sessions={"a": [slot("A", "lift", dose, **({"base": "lift-1rm"} if best else {}))]},
    )  # fmt: skip
    found = slots_of(worked)["A"].volume.tonnage_kg
    assert list(found) == ["P1"]
    return found["P1"]


@pytest.mark.parametrize(
    ("dose", "load", "kg"),
    [
        # Two sets, seven a load on average: 2 · 7 · (60 + 50 + 40); all at 60 would be 2520.
        ("2x strip 3 loads -10 kg, 6-8 a load @ 60 kg", BAR, 2100),
        # Eight a load: 8 · (80 + 70 + 60 + 50).
        ("strip 4 loads -10 kg, 8 a load @ 80 kg", BAR, 2080),
        # The body goes along every time: 5 · ((72 + 20) + (72 + 10)).
        ("strip 2 loads -10 kg, 5 a load @ BW+20 kg", BELT, 870),
    ],
)
def test_so_many_a_load(tmp_path: Path, dose: str, load: Any, kg: float) -> None:
    assert tonnage(tmp_path, dose, load) == pytest.approx(kg, abs=0.01)


def test_repetitions_that_are_only_counted_in_all(tmp_path: Path) -> None:
    # Only 10, 5 and 2.5 kg: 60, 50 and 40 kg. Nothing says how heavy 60 kg is, so ten with it.
    # Then 0.9 · 30 · (60/50 − 1) = 5.4 and 0.9 · 30 · (50/40 − 1) = 6.75: κ is 0.6 to 1.2.
    room = {**ROOM, "plates": plates("kg", (10, 3), (5, 3), (2.5, 3))}
    mean = (10 * 60 + 5.4 * 50 + 6.75 * 40) / (10 + 5.4 + 6.75)
    found = tonnage(tmp_path, "strip 3 loads -20 % to 24 reps @ 60 kg", BAR, room)
    assert found == pytest.approx(24 * mean, abs=0.05)
    assert found < 24 * 60


def test_of_a_percentage(tmp_path: Path) -> None:
    # 70 % of 100 kg: 70 kg, 60 kg and 50 kg, six each.
    found = tonnage(tmp_path, "strip 3 loads -10 kg, 6 a load @ 70 %", BAR, best="100 kg")
    assert found == pytest.approx(6 * (70 + 60 + 50), abs=0.01)
