"""What a session's page carries for session mode."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from books import KG_ROOM, base, exercise, slot, work
from strength_handbook.model.dose import complete
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.exercise import Exercise
from strength_handbook.pages.instead_html import variant_rows
from strength_handbook.pages.train_html import closing, load_field, train_data, warm_up_title
from strength_handbook.phone.train import dose_guide, session_guide, tempo_parts
from strength_handbook.reading.long_form import store
from strength_handbook.reading.notation import read_dose


def guide(line: str) -> dict[str, Any]:
    long: dict[str, Any] = {}
    for value in read_dose(line):
        store(long, value)
    return dose_guide(complete(DosePart.model_validate(long)))


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("3x6 @ 60 kg, tempo 2-0-1-0, rest 2:00", {"s": 3, "r": 120, "q": [6, 6]}),
        ("3-4x6", {"s": [3, 4], "q": [6, 6]}),
        ("3x6 ES, rest 0 s", {"s": 3, "r": 0, "b": 1, "q": [6, 6]}),
        ("ISO 3x20-30 s", {"s": 3, "w": 30, "W": 20, "h": 1}),
        ("ISO 3x30 s ES", {"s": 3, "w": 30, "h": 1, "b": 1}),
        ("6x40 s, rest 80 s", {"s": 6, "w": 40, "r": 80}),
        ("8x2 @ 50 % every 60 s", {"s": 8, "e": 60, "q": [2, 2]}),
        ("4 -> 40 m @ 25 % BM", {"s": 4, "m": 40}),
        ("3x(2+2+2)/20 s", {"s": 3, "c": [[2, 2, 2], 20]}),
        ("2x strip 3 loads -20 % to 36 reps", {"s": 2, "l": 3, "u": [36, 36]}),
        ("strip 3 loads -20 %, 6-8 a load", {"s": 1, "l": 3, "q": [6, 8]}),
        ("1x5+ cap 12, RIR 1", {"s": 1, "n": [5, 12, 1], "q": [5, 5]}),
        ("2x5, last set 5+ cap 12 RIR 1", {"s": 2, "n": [5, 12, 0], "q": [5, 5]}),
        ("ramp to 5RM", {"p": 5, "q": [5, 5]}),
        ("ramp to 5RM, 2x5 @ 90 % of top", {"s": 2, "p": 5, "q": [5, 5]}),
        # The shortest rest between attempts: Sheppard and Triplett 2016, ch. 17.
        ("test 3RM in 4 attempts", {"s": 4, "a": 1, "r": 120, "q": [3, 3]}),
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
    assert first == {
        "o": "A", "i": "lift", "s": 3, "q": [5, 5], "g": 1,
        "t": [["up", 1, "Up"], ["down", 3, "Down"]],
        "x": "Stop when it is < good.", "k": "kg with the bar", "name": "Lift",
        "y": ["Three seconds down, one second up."], "z": "3-0-1-0",
    }  # fmt: skip
    assert (second["o"], second["t"]) == ("B1", [["down", 3, "Down"], ["up", 1, "Up"]])


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
        "A": [{"of": 2}, {"of": 4, "t": [["down", 2, "Down"], ["up", 1, "Up"]]}, {"of": 4}],
        "B1": [{"few": 2, "of": 3}, {"few": 5, "of": 6}, {"few": 5, "of": 6}],
        # With fewer sets or less load, an open set becomes a plain one; a ramp is left out.
        "B2": [{"of": 1, "open": 0}, {"of": 1}, {"of": 1, "open": 0}],
        "C": [{"of": 0}, {"of": 0}, {"of": 0}],
        "D": [{"of": 0}, {"of": 3}, {"of": 3}],
    }


@pytest.mark.parametrize(
    ("line", "from_bottom", "parts"),
    [
        ("3x5, tempo 5-1-X-0", False, [["down", 5], ["still", 1], ["fast", 1]]),
        ("3x5, tempo 5-1-X-0", True, [["fast", 1], ["down", 5], ["still", 1]]),
        # The hold in the way counts as well: 2 + 2 + 1 s.
        ("3x5, tempo 2-0-X-0, pause 2 s at the knee", True,
         [["hold", 2], ["fast", 1], ["down", 2]]),
        ("3x5, tempo 2-0-1-3, pause 2 s at the knee", False,
         [["down", 2], ["hold", 2], ["up", 1], ["still", 3]]),
        ("3x5, pause 2 s at the knee", False, []),
    ],
)  # fmt: skip
def test_a_repetition_second_by_second(
    line: str, *, from_bottom: bool, parts: list[list[Any]]
) -> None:
    long: dict[str, Any] = {}
    for value in read_dose(line):
        store(long, value)
    dose = complete(DosePart.model_validate(long))
    found = Exercise.model_validate(exercise(lifts_from="bottom" if from_bottom else "top"))
    told = {"down": "Down", "still": "Still", "hold": "Hold", "up": "Up", "fast": "Up, fast"}
    assert tempo_parts(dose, found) == [[*part, told[part[0]]] for part in parts]


@pytest.mark.parametrize(
    ("load", "said"),
    [
        ({"kind": "bar", "bar": "bar"}, {"k": "kg with the bar"}),
        ({"kind": "bar", "bar": "bar", "hands": 2}, {"k": "kg in each hand"}),
        ({"kind": "hands", "weight": "dumbbells", "hands": 1}, {"k": "kg"}),
        ({"kind": "body-weight"}, {}),
        ({"kind": "body-weight", "help": "a band"}, {"k": "kg", "j": 1}),
        ({"kind": "stack", "stack": "cable"}, {"k": "kg on the stack"}),
        ({"kind": "effort", "by": "A partner's hands"}, {}),
    ],
)
def test_what_a_number_for_a_load_means(load: dict[str, Any], said: dict[str, Any]) -> None:
    lift = Exercise.model_validate(exercise(load=load))
    assert load_field(lift, "kg") == said


def test_a_test_is_as_many_attempts(tmp_path: Path) -> None:
    slots = [slot("A", "lift", "test 3RM in 4 attempts", base="best")]
    worked = work(
        tmp_path, exercises={"lift": exercise()}, sessions={"a": slots}, bases={"best": base()}
    )
    program = worked.programs[0]
    week = program.week(1)
    (found,) = session_guide(worked.book, program, week, week.sessions[0])["slots"]
    assert (found["a"], found["s"]) == (1, 4)
    assert "v" not in found


def test_what_session_mode_says_comes_as_data(tmp_path: Path) -> None:
    """Titles of variants with their minutes, the other tempo of a variant, before and after."""
    slots = [slot("A", "lift", "4x5 @ 60 kg, tempo 5-0-1-0"), slot("B", "lift", "3x5")]
    variants = [
        {"when": "Only 10 minutes", "time": "10 min", "keep-sets": "50 %"},
        {"when": "Sore", "keep-load": "80 %"},
        {"when": "Slept <badly>", "tempo": "2-0-1-0", "leave-out": ["B"]},
    ]
    worked = work(
        tmp_path,
        exercises={"lift": exercise()},
        sessions={"a": {"slots": slots, "variants": variants}},
    )
    program = worked.programs[0]
    week = program.week(1)
    session = week.sessions[0]
    block = train_data(worked, program, week, session)
    found = re.search(r">(.*)</script>", block)
    assert found is not None
    data = json.loads(found[1])
    titles = [row["title"] for row in variant_rows(worked, program, session)]
    assert [one["says"] for one in data["variants"]] == titles
    assert all(re.fullmatch(r".+: about \d+ min", title) for title in titles)
    # The session takes less than ten minutes: its first variant has no place on the page.
    assert [one["number"] for one in data["variants"]] == [1, 2]
    first, second = data["slots"]
    assert (first["z"], first["v"][1]["z"]) == ("5-0-1-0", "2-0-1-0")
    assert "z" not in first["v"][0]
    assert "z" not in second
    assert (data["warm"], data["close"]) == (warm_up_title(program), closing(program))


BELL = {"name": "bell", "masses": [{"mass": "10 kg", "count": 2}]}


@pytest.mark.parametrize(
    ("load", "expected"),
    [
        ({"kind": "bar", "bar": "bar"}, None),
        ({"kind": "hands", "weight": "bell", "hands": 2}, [2, 0]),
        ({"kind": "hands", "weight": "bell", "hands": 1}, None),
        ({"kind": "body-weight"}, [1, 100_000_000]),
        ({"kind": "body-weight", "share": "60 %"}, [1, 60_000_000]),
        ({"kind": "push-up"}, 0),
    ],
)
def test_how_often_a_load_counts(tmp_path: Path, load: Any, expected: Any) -> None:
    worked = work(
        tmp_path,
        room={**KG_ROOM, "hand-weights": {"bell": BELL}},
        exercises={"lift": exercise(load=load)},
        sessions={"a": [slot("A", "lift", "3x5, RIR 2")]},
    )
    week = worked.programs[0].week(1)
    guided = session_guide(worked.book, worked.programs[0], week, week.sessions[0])
    assert guided["slots"][0].get("f") == expected
