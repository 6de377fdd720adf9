"""Two rooms with everything a load can be put on, in kilograms and pounds, and doses for them."""

from pathlib import Path
from typing import Any

from books import EMERGENCY, KG_PLATES, LB_PLATES, base, build_book, exercise, slot
from strength_handbook.model.book import Book
from strength_handbook.reading.yaml_source import read_source

DOSES = Path(__file__).parent / "methods" / "doses.yml"
ROUNDINGS = ("down", "nearest", "up")


def room(units: str) -> dict[str, Any]:
    """A room in one unit; masses are those that are sold in it."""
    pounds = units == "lb"

    def mass(kg: float, lb: float) -> str:
        return f"{lb:g} lb" if pounds else f"{kg:g} kg"

    plates = [{**one, "thickness": "30 mm"} for one in (LB_PLATES if pounds else KG_PLATES)]
    return {
        "gym": "The Test Room",
        "units": units,
        "bars": {
            "bar": {
                "name": "bar", "mass": mass(20, 45), "sleeve": "41 cm",
                "between-collars": "131 cm", "collar": mass(2.5, 5),
            },
            "handle": {"name": "handle", "mass": mass(10, 20), "sleeve": "20 cm"},
        },
        "plates": plates,
        "racks": {"rack": {"name": "rack", "hook-spacing": "1.10 m"}},
        "hand-weights": {
            "bell": {
                "name": "bell",
                "masses": [{"from": mass(4, 5), "to": mass(40, 100), "by": mass(2, 5)}],
            }
        },
        "carriers": {
            "belt": {"name": "belt", "limit": mass(60, 130)},
            "pack": {"name": "pack", "mass": mass(1.5, 3), "limit": mass(25, 55)},
            "sled": {"name": "sled", "mass": mass(22, 50)},
        },
        "stacks": {
            "cable": {
                "name": "cable", "add-on": mass(2.5, 5),
                "pins": {"from": mass(5, 10), "to": mass(90, 200), "by": mass(5, 10)},
            }
        },
        "machines": {"press": {"name": "press", "to": 400, "by": 2}},
        "lanes": {"turf": {"name": "turf", "length": "18 m"}},
        "pivots": {"pivot": {"name": "pivot", "offset": "3 cm", "height": "6 cm"}},
        "bands": {
            f"{width}-{twin}": {
                "width": f"{width} mm",
                "pulls": {"22 cm": f"{low + more} kg", "50 cm": f"{mid} kg", "76 cm": f"{top} kg"},
                "help": f"{2 * top - 6:g} kg",
            }
            for width, low, mid, top in (
                (13, 1.4, 3, 4.6), (22, 3, 7.1, 10), (29, 5, 10.2, 14), (45, 8, 15, 20),
            )
            for twin, more in (("a", 0.0), ("b", 0.1), ("c", 0.25))
        },
        "chains": {
            "chain": {"name": "chain", "pairs": 4, "mass-per-metre": "5.3 kg", "length": "1.5 m"}
        },
        "kit": {"floor": {"name": "floor", "count": 20}},
        "emergency": EMERGENCY,
    }  # fmt: skip


LOADS: dict[str, dict[str, Any]] = {
    "bar": {
        "kind": "bar", "bar": "bar", "chains": "chain", "rack": "rack",
        "travel": {"bottom": "22 cm", "top": "76 cm"},
    },
    "handles": {"kind": "bar", "bar": "handle", "hands": 2},
    "bells": {"kind": "hands", "weight": "bell", "hands": 2},
    "belt": {"kind": "body-weight", "share": "95 %", "carrier": "belt"},
    "pack": {"kind": "body-weight", "carrier": "pack"},
    "body": {"kind": "body-weight", "share": "62.5 %"},
    "sled": {"kind": "carrier", "carrier": "sled"},
    "stack": {"kind": "stack", "stack": "cable"},
    "pivot": {
        "kind": "pivot", "bar": "bar", "pivot": "pivot",
        "reach": {"grip": "2 m", "bottom": "60 cm", "top": "1.4 m"},
    },
    "plate": {"kind": "plate"},
    "push-up": {"kind": "push-up", "plate-limit": "15 kg"},
    "push-up-more": {"kind": "push-up", "plate-limit": "40 kg", "plates": 3},
}  # fmt: skip
"""Everything a load is put on, by a short name."""

LINES = (
    "3x5 @ 72.5 %", "3x5 @ 81.3 %", "5x3 @ 100 %", "2x5 @ 120 %", "3x8 @ 8 %", "3x5, RIR 3",
    "3x5 @ 82.5 % TM, TM 92.5 %", "3x6 @ 8RM", "3x8 @ 25 % BM", "3x8 @ 12.5 % BM", "3x5 @ 60 kg",
    "3x5 @ 35 lb", "3x5 @ BW", "3x5 @ BW+7.5 kg", "3x5 @ BW-15 kg", "3x5 @ 85 % system",
    "ramp to 5RM", "ramp to 5 @ RPE 8", "ramp to 5 @ RPE 8, 3x5, RPE 7",
    "ramp to 3 @ RPE 8.5, 2x5 @ 90 % of top", "ramp to 5RM, 2x5 @ 90 % of top",
    "ramp to 3RM, 2x5 @ 87.5 % of top",
    "2x strip 3 loads -20 % to 36 reps within 3 min @ 70 %", "strip 4 loads -15 % @ 77.5 %",
    "strip 3 loads -10 kg, 6-8 a load @ 70 %", "2x strip 3 loads -1 plate @ 65 %",
    "strip 3 loads -12.5 % @ BW+15 kg", "strip 2 loads -20 % @ BW+20 kg",
    "test 3RM in 4 attempts", "test 1RM in 3 attempts",
    "5 @ 65 %, 3 @ 75 %, 1+ @ 85 %", "1x5 @ 87.5 %, 3x5 @ 72.5 %", "10, 8, 6, 4 @ 70 %",
    "5 @ 60 kg, 3 @ 72.5 kg", "10, 8, 6, RIR 2", "8 @ 20 % BM, 6 @ 27.5 % BM",
    "5 @ BW, 3 @ BW+10 kg",
)  # fmt: skip
ON_BAR = (
    "8x2 @ 50 %, bands 20 % at top", "8x2 @ 62.5 %, bands 12.5 % at top",
    "8x2 @ 50 %, bands 22-a 22-c", "10x2 @ 52 %, chains 2 pairs", "10x2 @ 52 %, chains 20 % at top",
)  # fmt: skip
RULES = (
    "linear +2.5 kg", "two-for-two +5 lb", "open-set +2.5 kg", "double +2 kg", "speed +2 %",
    "effort", "listed", "linear +0.5 kg", "reps +1 to 12", "sets +1",
)  # fmt: skip
ELSEWHERE = {"machine", "effort"}
"""Ways to load that come to no mass."""


def written_examples() -> list[dict[str, Any]]:
    """The examples of every method whose load is a mass, as a coach's file is read."""
    source, problems = read_source(DOSES.read_bytes(), "doses.yml")
    assert source is not None, problems
    assert isinstance(source.data, dict)
    doses: Any = source.data["doses"]
    kinds = {one["line"]: one.get("load", LOADS["bar"])["kind"] for one in doses}
    return [
        one
        for one in doses
        if kinds[one["line"]] not in ELSEWHERE
        and "units" not in one["line"]
        and "week-3" not in one
    ]


def doors(other_dose: str) -> dict[str, Any]:
    """Doors of every kind: a share of today's load, another lift, a dose of its own."""
    return {
        "easier": {"how": "Less of it.", "load": "90 %"},
        "harder": {"how": "More of it.", "load": "107.5 %", "dose": "sets 2"},
        "hurts": {"how": "Another lift.", "to": "other", "load": "62.5 %"},
        "taken": {"how": "Another lift.", "to": "other", "dose": other_dose},
        "no-partner": {"how": "A load of its own.", "dose": "3x8 @ 55 %"},
    }


def books(units: str, folder: Path) -> list[Book]:
    """One book for each way to load and each rounding; the other lift's way to load takes turns."""
    made = []
    names = list(LOADS)
    for place, (name, load) in enumerate(LOADS.items()):
        for turn, rounding in enumerate(ROUNDINGS):
            body = load["kind"] == "body-weight"
            lines = [one for one in LINES if body or "system" not in one]
            lines += ON_BAR if name == "bar" else ()
            other = LOADS[names[(place + 1 + 4 * turn) % len(names)]] | {"rounding": rounding}
            lift = exercise(load=load | {"rounding": rounding}, hazards=["band"] if body else [])
            lift["doors"] = doors(("3x8 @ 40 %", "3x8 @ 20 % BM", "3x8 @ 20 kg")[turn])
            made.append(
                build_book(
                    folder / f"{units}-{name}-{rounding}",
                    room=room(units),
                    exercises={"lift": lift, "other": exercise(name="Other", load=other)},
                    sessions=_sessions(lines),
                    bases={"best": base(**({"kind": "system"} if body else {}))},
                )
            )
    return made


def example_book(folder: Path) -> Book:
    """Every written example, each as an exercise of its own in the room in kilograms."""
    found = written_examples()
    lifts = {}
    slots = []
    for place, (order, one) in enumerate(zip(_orders(), found, strict=False)):
        body = "system" in one["line"] or "BW" in one["line"]
        load = LOADS["belt"] if body else one.get("load", LOADS["bar"])
        lifts[f"lift-{place}"] = exercise(load=load, sides=one.get("sides", "both"))
        going = load["kind"] == "endurance"
        bases = {"base": "row-2k" if going else "total" if body else "best"}
        slots.append(slot(order, f"lift-{place}", one["line"], **bases))
    on_body = next(key for key, lift in lifts.items() if lift["load"] == LOADS["belt"])
    on_bar = next(key for key, lift in lifts.items() if lift["load"] == LOADS["bar"])
    to_go = next(key for key, lift in lifts.items() if lift["load"]["kind"] == "endurance")
    row = {"name": "2 km", "exercise": to_go, "over": "2 km"}
    return build_book(
        folder / "examples",
        room=room("kg"),
        exercises=lifts,
        sessions={f"s{start}": slots[start : start + 30] for start in range(0, len(slots), 30)},
        bases={"best": base(on_bar), "total": base(on_body, kind="system")},
        bests={"row-2k": {**row, "from": "6:00", "to": "10:00", "by": "10 s"}},
    )


def _sessions(lines: list[str]) -> dict[str, Any]:
    """Every line in week 1 with its neighbour in week 2, so that something follows it."""
    slots = [
        slot(
            order,
            "lift",
            {"1": line, "2": lines[(place + 1) % len(lines)]},
            base="best",
            progress=RULES[place % len(RULES)],
        )
        for place, (order, line) in enumerate(zip(_orders(), lines, strict=False))
    ]
    return {f"s{start}": slots[start : start + 30] for start in range(0, len(slots), 30)}


def _orders() -> list[str]:
    return [
        letter + digit for digit in ("", "1", "2", "3") for letter in "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
    ]
