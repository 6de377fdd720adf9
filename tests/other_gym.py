"""The demo in another gym: its own name, pounds, other plates, other exercises.

The demo's files are read as plain data, changed, and written again.
"""

import json
import re
from pathlib import Path
from typing import Any

from books import EMERGENCY
from demo import PROGRAMS
from strength_handbook.reading.yaml_source import read_source

GYM, GROUP = "Dockside Barbell Hall", "Evening crew"
PLATES = ((45, 4), (35, 1), (25, 1), (10, 2), (5, 2), (2.5, 1))
BARS = {"bar-20": 45, "bar-15": 35, "trap-bar": 55, "yoke-bar": 65}
HANDLE = 15
REMOVED = ("suitcase-carry", "copenhagen-side-plank")
ADDED = "bag-carry"
POUND_KG = 0.45359237

Data = dict[str, Any]


def in_pounds(value: Any) -> Any:
    """Every mass in a text, to the nearest 5 lb."""
    if isinstance(value, dict):
        return {key: in_pounds(one) for key, one in value.items()}
    if isinstance(value, list):
        return [in_pounds(one) for one in value]
    if isinstance(value, str):
        return re.sub(r"\b(\d+(?:\.\d+)?)\s*kg\b", _pounds, value)
    return value


def _pounds(found: re.Match[str]) -> str:
    return f"{max(5, 5 * round(float(found[1]) / POUND_KG / 5))} lb"


def without(value: Any, names: tuple[str, ...]) -> Any:
    """No door leads to these exercises, and no list has an entry about them."""
    if isinstance(value, dict):
        return {k: without(one, names) for k, one in value.items() if (k, one) not in _doors(names)}
    if isinstance(value, list):
        gone = [isinstance(one, dict) and one.get("exercise") in names for one in value]
        return [without(one, names) for one, out in zip(value, gone, strict=True) if not out]
    return value


def _doors(names: tuple[str, ...]) -> list[tuple[str, str]]:
    return [("to", name) for name in names]


def other_room(room: Data) -> Data:
    """The room with pound plates, and bars, dumbbells and a stack to go with them."""
    bars = room["bars"]
    for key, bar in bars.items():
        bar["mass"] = f"{BARS.get(key, HANDLE)} lb"
    dumbbells = {"name": "dumbbell", "masses": [{"from": "5 lb", "to": "100 lb", "by": "5 lb"}]}
    cable = {
        "name": "cable column",
        "count": 4,
        "pins": {"from": "10 lb", "to": "200 lb", "by": "10 lb"},
    }
    return room | {
        "gym": GYM,
        "group": GROUP,
        "units": "lb",
        "plates": [{"mass": f"{pounds:g} lb", "pairs": pairs} for pounds, pairs in PLATES],
        "loose-plates": [],
        "hand-weights": room["hand-weights"] | {"dumbbell": dumbbells},
        "stacks": dict.fromkeys(room["stacks"], cable),
        "emergency": EMERGENCY,
    }


def with_new_exercise(wave: Data) -> Data:
    """One more slot at the end of the first session, in every week."""
    session = next(iter(wave["sessions"].values()))
    last = max(slot["order"][0] for slot in session["slots"])
    weeks = {week for slot in session["slots"] for week in slot["weeks"]}
    session["slots"].append(
        {
            "order": chr(ord(last) + 1),
            "exercise": ADDED,
            "weeks": dict.fromkeys(sorted(weeks, key=int), "2 -> 20 m @ 30 lb, rest 1:00"),
        }
    )
    return wave


def without_lost_orders(wave: Data) -> Data:
    """Variants leave out only slots that are still there."""
    for session in wave["sessions"].values():
        orders = {slot["order"] for slot in session["slots"]}
        for variant in session.get("variants", ()):
            variant["leave-out"] = [o for o in variant.get("leave-out", ()) if o in orders]
    return wave


def write_programs(root: Path) -> Path:
    """The changed files below a folder, which is returned."""
    for path in sorted(PROGRAMS.rglob("*.yml")):
        if path.parent.name == "exercises" and path.stem in REMOVED:
            continue
        source, problems = read_source(path.read_bytes(), path.name)
        assert source is not None
        assert problems == []
        data = without(in_pounds(source.data), REMOVED)
        if path.name == "room.yml":
            data = other_room(data)
        if path.name[0].isdigit():
            data = without_lost_orders(data)
        if path.name.startswith("1-"):
            data = with_new_exercise(data)
        write(root / path.relative_to(PROGRAMS), data)
        if path.stem == "farmer-carry":
            hands = {"kind": "hands", "weight": "dumbbell", "hands": 2}
            renamed = data | {"name": "Bag carry", "also": "Two bags", "load": hands}
            write(root / "exercises" / f"{ADDED}.yml", renamed)
    return root


def write(path: Path, data: Data) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(json.dumps(data, ensure_ascii=False, indent=1), encoding="utf-8")
