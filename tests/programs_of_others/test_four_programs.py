"""Four invented programs in invented rooms: no error, and every number is what a hand gets.

A wave of percentages with sets that differ, beginners whose loads grow in a line, a rowing club's
winter in pounds, and a team's weeks of lifting and running before its season. The sums beside them
(`tests/by_hand.py`) import nothing of the product.
"""

import re
from collections.abc import Mapping
from datetime import date
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from books import EFFORT, KG_ROOM, LB_ROOM, base, exercise, plates, slot, write_files
from by_hand import POUND_G, below, clock, lifting_s, loads
from strength_handbook.checked import check_folder, errors_in
from strength_handbook.pages.lookup import slot_lookup
from strength_handbook.plan.worked import Worked, WorkedSlot
from strength_handbook.record.data import program_data

BESTS_KG = {"P1": 40, "P2": 62, "P3": 85, "P4": 117, "P5": 163, "P6": 240}
GARAGE = {**KG_ROOM, "plates": plates("kg", (20, 3), (15, 1), (10, 1), (5, 1), (2.5, 1), (1.25, 1))}
GARAGE_KG = loads(20, [(20, 3), (15, 1), (10, 1), (5, 1), (Fraction(5, 2), 1), (Fraction(5, 4), 1)])
BOATHOUSE = {**LB_ROOM, "plates": plates("lb", (45, 3), (25, 1), (10, 2), (5, 1), (2.5, 1))}
BOATHOUSE_LB = loads(45, [(45, 3), (25, 1), (10, 2), (5, 1), (Fraction(5, 2), 1)])
LIFTERS = {
    name: {"bodyweight": "75 kg", "bases": {"best": f"{best} kg"}}
    for name, best in BESTS_KG.items()
}
WARM_UP = {"warm-up": ["Walk for five minutes.", "Swing arms and legs, 8 each way."]}


def session(*slots: Mapping[str, Any]) -> dict[str, Any]:
    return {"slots": list(slots), **WARM_UP}


def built(root: Path, **parts: Any) -> tuple[Worked, dict[str, Any]]:
    """A folder without an error, worked out, and what is published of it."""
    checked = check_folder(write_files(root, **parts), "gym", today=date(2026, 12, 1))
    assert [str(one) for one in errors_in(checked.problems)] == []
    assert checked.worked is not None
    return checked.worked, program_data(checked.worked, checked.worked.programs[0])


def day(data: dict[str, Any], week: int, place: int = 0) -> dict[str, Any]:
    found: dict[str, Any] = data["weeks"][week - 1]["sessions"][place]
    return found


def slot_at(worked: Worked, week: int, order: str, place: int = 0) -> WorkedSlot:
    slots = worked.programs[0].weeks[week - 1].sessions[place].slots
    return next(one for one in slots if one.order == order)


def cells(worked: Worked, slot_: WorkedSlot) -> list[list[str]]:
    """The rows of a slot's strip as its page has them."""
    table = slot_lookup(slot_, worked.book.room.units).table.replace("\u00a0", " ")
    rows = re.findall(r"<tr><th scope=\"row\">(.*?)</tr>", table)
    return [[re.sub(r"<.*?>", "", cell) for cell in re.split(r"</th>|</td>", row)] for row in rows]


WAVE = {
    1: ((6, 62), (5, 68), (4, 74)),
    2: ((5, 66), (4, 73), (3, 80)),
    3: ((4, 70), (3, 78), (2, 86)),
}


def test_a_wave_of_percentages(tmp_path: Path) -> None:
    lines = {
        str(week): ", ".join(f"{reps} @ {share} %" for reps, share in sets) + ", RIR 1, rest 3:00"
        for week, sets in WAVE.items()
    }
    rows = {str(week): "4x8, RIR 3, rest 1:30" for week in WAVE}
    _, data = built(
        tmp_path, room=GARAGE, lifters=LIFTERS, bases={"best": base("lift")},
        exercises={
            "lift": exercise("Squat", hazards=["breath-hold"]),
            "row": exercise("Row", EFFORT, role="assistance"),
        },
        sessions={"a": session(slot("A", "lift", lines, base="best"), slot("B", "row", rows))},
    )  # fmt: skip
    for week, sets in WAVE.items():
        found = day(data, week)
        for name, best in BESTS_KG.items():
            ours = found["slots"][0]["plan"]["series"]["by_lifter"][name]
            assert [(one["reps"], one["load_kg"]) for one in ours] == [
                (reps, _number(below(GARAGE_KG, Fraction(best * share, 100))))
                for reps, share in sets
            ]
        seconds = lifting_s(([reps for reps, _ in sets], 180), ([8] * 4, 90))
        assert found["minutes"] == pytest.approx(seconds / 60, abs=0.05)


def _number(load: Fraction | None) -> float | None:
    return None if load is None else float(load)


def test_beginners_in_a_line(tmp_path: Path) -> None:
    rule = {"progress": "linear +2.5 kg"}
    weeks = {"1": "3x5 @ 40 kg, RIR 2, rest 2:00"} | dict.fromkeys("234", "last week +2.5 kg")
    same = dict.fromkeys("1234", "3x8, RIR 2, rest 1:30")
    holds = dict.fromkeys("1234", "ISO 2x20 s, at elbows under shoulders, RPE 6, rest 60 s")
    worked, data = built(
        tmp_path, room=GARAGE, lifters=LIFTERS, bases={"best": base("lift")},
        exercises={
            "lift": exercise("Squat", hazards=["breath-hold"]), "row": exercise("Row", EFFORT),
            "plank": exercise("Plank", EFFORT, hazards=["long-hold"]),
        },
        sessions={"a": session(
            slot("A", "lift", weeks, **rule), slot("B", "row", same, progress="reps +1 to 12"),
            slot("C", "plank", holds, progress="hold +5 s to 60 s"),
        )},
    )  # fmt: skip
    for week in range(1, 5):
        lift, row, plank = day(data, week)["slots"]
        today = Fraction(40) + (week - 1) * Fraction(5, 2)
        assert slot_at(worked, week, "A").dose.load is not None
        assert {one["load_kg"] for one in lift["by_lifter"].values()} == {float(today)}
        assert today in GARAGE_KG
        after = lift["plan"]["next"]["by_lifter"].values()
        up = today + Fraction(5, 2)
        assert up in GARAGE_KG
        assert {one["loads_kg"][0] for one in after} == {float(up)}
        said = [one["plan"]["next"]["outcomes"][0]["then"] for one in (row, plank)]
        assert said == (
            ["8 repetitions, as the next week is written.", "20 s, as the next week is written."]
            if week < 4
            else ["9 repetitions.", "25 s."]
        )
        # A hold lasts as long as it says, twice, with one rest between.
        seconds = lifting_s(([5] * 3, 120), ([8] * 3, 90)) + 60 + 2 * 20 + 60
        assert day(data, week)["minutes"] == pytest.approx(seconds / 60, abs=0.05)


ROWER = exercise(
    "Rowing machine", {"kind": "endurance", "of": "row"}, pattern="endurance",
    hazards=["hard-conditioning"],
)  # fmt: skip
ROW_2K = {"name": "2 km row", "exercise": "rower", "over": "2 km",
          "from": "6:20", "to": "9:20", "by": "10 s"}  # fmt: skip


def test_a_rowing_clubs_winter_in_pounds(tmp_path: Path) -> None:
    pieces = {
        "1": "4x1 km @ pace +6 s, rest 3:00", "2": "5x1 km @ pace +5 s, rest 3:00",
        "3": "6x500 m @ pace, rest 2:00",
    }  # fmt: skip
    pulls = {"1": "3x6 @ 70 %", "2": "3x6 @ 74 %", "3": "3x5 @ 78 %"}
    worked, data = built(
        tmp_path, room=BOATHOUSE, bases={"best": base("lift")}, bests={"row-2k": ROW_2K},
        lifters=LIFTERS,
        exercises={"rower": ROWER, "lift": exercise("Deadlift", hazards=["breath-hold"])},
        sessions={
            "a": session(slot("A", "rower", pieces, base="row-2k", progress="pace -1 s")),
            "b": session(slot("A", "lift", pulls, base="best", rest="2:00")),
        },
    )  # fmt: skip
    asked = {1: (4, 1000, 6, 180), 2: (5, 1000, 5, 180), 3: (6, 500, 0, 120)}
    for week, (many, metres, slower, rest) in asked.items():
        rows = cells(worked, slot_at(worked, week, "A"))
        assert len(rows) == 19
        for place, row in enumerate(rows):
            best_s = Fraction(380 + 10 * place)
            pace = best_s / 4 + slower  # 2 km are four times 500 m
            # The relation of air-braked rowing machines: 2.80 over the cube of seconds for 1 m.
            watts = Fraction(28, 10) / (pace / 500) ** 3
            piece = [clock(pace * 2)] if metres == 1000 else []
            assert row[:-1] == [
                clock(best_s), clock(pace), *piece, str(int(watts + Fraction(1, 2))),
            ]  # fmt: skip
        # 2:20 for 500 m are the middle of what most members need.
        seconds = many * metres // 500 * 140 + (many - 1) * rest
        assert day(data, week)["minutes"] == pytest.approx(seconds / 60, abs=0.05)
    for week, share in ((1, 70), (2, 74), (3, 78)):
        (lift,) = day(data, week, 1)["slots"]
        for name, best in BESTS_KG.items():
            wanted = Fraction(best * 1000 * share, 100) / POUND_G
            load = below(BOATHOUSE_LB, wanted)
            found = lift["by_lifter"][name]["load_kg"]
            # Each plate counts in whole grams: a few grams of a load at most.
            pounds = None if found is None else round(Fraction(found) * 1000 / POUND_G, 1)
            assert pounds == load
    said = [day(data, week)["slots"][0]["plan"]["next"]["outcomes"][0]["then"] for week in asked]
    assert said[0] == "Pace +5 s."
    assert said[2] == "Pace −1 s."


def test_a_team_before_its_season(tmp_path: Path) -> None:
    runs = {"1": "6x400 m @ 105 %, rest 90 s", "2": "8x400 m @ 105 %, rest 90 s"}
    easy = {"1": "1x20 min, can talk", "2": "1x25 min, can talk"}
    squats = {"1": "4x4 @ 76 %, RIR 2, rest 2:30", "2": "4x3 @ 82 %, RIR 2, rest 2:30"}
    run = exercise(
        "Run", {"kind": "endurance", "of": "run"}, pattern="endurance",
        hazards=["hard-conditioning", "impact"],
    )  # fmt: skip
    worked, data = built(
        tmp_path, room=GARAGE, bases={"best": base("lift")}, lifters=LIFTERS,
        bests={"run-5k": {"name": "5 km run", "exercise": "run", "over": "5 km",
                          "from": "17:00", "to": "32:00", "by": "30 s"}},
        exercises={"run": run, "lift": exercise("Squat", hazards=["breath-hold"])},
        sessions={
            "a": session(
                slot("A", "lift", squats, base="best"),
                slot("B", "run", runs, base="run-5k", progress="sets +2 to 10"),
            ),
            "b": session(slot("A", "run", easy, progress="time +5 min to 40 min")),
        },
    )  # fmt: skip
    for week, (reps, share, many) in {1: (4, 76, 6), 2: (3, 82, 8)}.items():
        lift = day(data, week)["slots"][0]
        for name, best in BESTS_KG.items():
            load = below(GARAGE_KG, Fraction(best * share, 100))
            assert lift["by_lifter"][name]["load_kg"] == _number(load)
        rows = cells(worked, slot_at(worked, week, "B"))
        assert len(rows) == 31
        for place, row in enumerate(rows):
            best_s = Fraction(1020 + 30 * place)
            pace = best_s / 5 * Fraction(100, 105)
            assert row[:-1] == [clock(best_s), clock(pace), clock(pace * Fraction(2, 5))]
        # 5:45 for 1 km are the middle of what most members need: 138 s for 400 m.
        running = many * 138 + (many - 1) * 90
        seconds = lifting_s(([reps] * 4, 150)) + 60 + running
        assert day(data, week)["minutes"] == pytest.approx(seconds / 60, abs=0.05)
        assert day(data, week, 1)["minutes"] == 15 + 5 * week
    said = [day(data, 2, place)["slots"][-1]["plan"]["next"]["outcomes"][0]["then"]
            for place in (0, 1)]  # fmt: skip
    assert said == ["10 pieces.", "30 min."]
