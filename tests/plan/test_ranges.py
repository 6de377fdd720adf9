"""A range is planned as its middle: the same loads, minutes and volume, whoever lifts where."""

from pathlib import Path
from typing import Any

import pytest

from books import BAR, EFFORT, KG_ROOM, LB_ROOM, base, exercise, slot, slots_of, work
from strength_handbook.dose.printing import notation

BESTS = {"kg": range(40, 241, 40), "lb": range(90, 531, 88)}
"""Of example lifters, in the room's unit."""
PAIRS = [
    ("3x5 @ 70-75 %", "3x5 @ 72.5 %", "70–75 %"),
    ("3x5 @ 75-85 % TM", "3x5 @ 80 % TM", "75–85 % TM"),
    ("ramp to 3RM, 3x5 @ 85-95 % of top", "ramp to 3RM, 3x5 @ 90 % of top", "85–95 % of top"),
    ("3x5, RPE 7-8", "3x5, RPE 7.5", "RIR 2–3"),
    ("3x5, RIR 1-3", "3x5, RIR 2", "RIR 1–3"),
    ("5 @ 60-70 %, 3 @ 75-80 %", "5 @ 65 %, 3 @ 77.5 %", "60–70 %"),
]
HELD = [
    ("ISO 3x20-30 s", "ISO 3x25 s", "20–30 s"),
    ("4x40-60 s ES, rest 60-90 s", "4x50 s ES, rest 75 s", "40 s–1:00"),
]


@pytest.mark.parametrize("room", [KG_ROOM, LB_ROOM], ids=["kg", "lb"])
@pytest.mark.parametrize(("ranged", "plain", "shown"), PAIRS + HELD)
def test_a_range_is_planned_as_its_middle(
    tmp_path: Path, room: dict[str, Any], ranged: str, plain: str, shown: str
) -> None:
    units, held = room["units"], (ranged, plain, shown) in HELD
    found = {}
    for name, line in (("ranged", ranged), ("plain", plain)):
        worked = work(
            tmp_path / name,
            room=room,
            exercises={"lift": exercise("Lift", EFFORT if held else BAR)},
            sessions={"a": [slot("A", "lift", line, **({} if held else {"base": "best"}))]},
            bases={} if held else {"best": base()},
            lifters={
                f"P{place}": {"bodyweight": "75 kg", "bases": {"best": f"{best} {units}"}}
                for place, best in enumerate(BESTS[units], start=1)
            }
            if not held
            else {},
        )
        one = slots_of(worked)["A"]
        (week,) = worked.programs[0].weeks
        found[name] = (one.loads, one.percent, one.volume, week.sessions[0].minutes)
        text = notation(one.dose).replace("\u00a0", " ")
        assert (shown in text) == (name == "ranged")
    assert found["ranged"] == found["plain"]
    assert held or len(found["plain"][0]) == len(BESTS[units])
