"""A small room and one session in it, for tests of the floor plan."""

from pathlib import Path
from typing import Any

from books import EFFORT, EMERGENCY, KG_PLATES, exercise, slot, work
from strength_handbook.floor.floor import FloorClock, session_clock

ROOM: dict[str, Any] = {
    "gym": "The Test Room",
    "bars": {
        "bar": {"name": "bar", "mass": "20 kg", "count": 3},
        "handle": {"name": "handle", "mass": "10 kg", "count": 4},
    },
    "plates": KG_PLATES,
    "loose-plates": [{"mass": "25 kg", "pairs": 1}],
    "racks": {"rack": {"name": "rack", "count": 3, "hook-spacing": "1.10 m"}},
    "hand-weights": {
        "bell": {"name": "bell", "masses": [{"mass": "16 kg", "count": 2}, {"mass": "24 kg"}]}
    },
    "carriers": {"belt": {"name": "belt", "count": 2}},
    "lanes": {"lane": {"name": "lane", "length": "18 m", "width": "3 m"}},
    "machines": {"press": {"name": "leg press"}},
    "kit": {"floor": {"name": "floor", "count": 20}, "mat": {"name": "mat", "count": 4}},
    "emergency": EMERGENCY,
}
"""Three racks with their plates, two pairs of handles, one leg press."""


def clock_of(
    root: Path, slots: list[Any], *, rotate: list[str] | None = None, **more: Any
) -> FloorClock:
    """The clock of one session; no set-up, and a minute between letters."""
    session: dict[str, Any] = {"title": "A", "purpose": "To train.", "slots": slots}
    exercises = more.pop("exercises")
    if rotate:
        session["rotate"] = rotate
    worked = work(
        root,
        room=more.pop("room", ROOM),
        exercises=exercises,
        sessions={"a": session},
        rules={"change-time": "60 s", "swap-time": "0 s"},
        **more,
    )
    program = worked.programs[0]
    return session_clock(worked.book, program.program, program.week(1).sessions[0])


def timed(order: str, exercise_id: str, minutes: int) -> dict[str, Any]:
    """One set of so many minutes."""
    return slot(order, exercise_id, {"1": f"1x{minutes} min, RPE 6, rest 0:00"})


PRESS = exercise("Press", {"kind": "machine", "machine": "press"}, stations=["press"])
MAT = exercise("Roll", EFFORT, stations=["mat"])
FLOOR = exercise("Plank", EFFORT)
THREE = {"press": PRESS, "roll": MAT, "plank": FLOOR}
LETTERS = [timed("A", "press", 10), timed("B", "roll", 8), timed("C", "plank", 6)]
GROUP = {"members": 3, "sharing": 1}
