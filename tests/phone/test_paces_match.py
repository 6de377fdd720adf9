"""A phone shows the paces, pieces and watts of the build's own strip, row by row."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from books import LB_ROOM, exercise, slot, slots_of, work
from phone_script import ask
from strength_handbook.model.load import PercentOfBase
from strength_handbook.model.pace import PaceOfBest
from strength_handbook.model.printed import split, whole_watts
from strength_handbook.model.span import Span
from strength_handbook.phone.aims import aim_recipe
from strength_handbook.phone.lists import phone_lists
from strength_handbook.phone.recipes import full_recipe, slot_recipe
from strength_handbook.plan.aims import aim_strip

RUNNER = Path(__file__).parent / "run_paces.js"
EXERCISES = {
    "rower": exercise("Rower", {"kind": "endurance", "of": "row"}, pattern="endurance"),
    "run": exercise("Run", {"kind": "endurance", "of": "run", "per": "1 mile"}),
    "bike": exercise("Bike", {"kind": "endurance", "of": "ride"}),
}
BESTS: dict[str, Any] = {
    "row-2k": {"exercise": "rower", "over": "2 km", "from": "5:40", "to": "11:00", "by": "7 s"},
    "run-5k": {"exercise": "run", "over": "5 km", "from": "14:00", "to": "44:00", "by": "31 s"},
    "ride-20": {"exercise": "bike", "over": "20 min", "from": "61 W", "to": "420 W", "by": "7 W"},
}
DOSES = (
    ("rower", "row-2k", "6x500 m @ pace, rest 2:00"),
    ("rower", "row-2k", "6x500 m @ pace +8 s, rest 2:00"),
    ("rower", "row-2k", "3x2 km @ pace +7-12.5 s, rest 4:00"),
    ("rower", "row-2k", "8x250 m @ pace -3-5 s, rest 2:00"),
    ("rower", "row-2k", "1x30 min @ 71-77 %"),
    ("run", "run-5k", "3x1 mi @ pace -4 s, rest 3:00"),
    ("run", "run-5k", "1x7 miles @ 82.5 %"),
    ("run", "run-5k", "10x400 m @ 105 %, rest 90 s"),
    ("bike", "ride-20", "4x8 min @ 95 %, rest 3:00"),
    ("bike", "ride-20", "1x90 min @ 62-72.5 %"),
)


def test_every_row_of_every_strip(tmp_path: Path) -> None:
    bests = {key: {"name": key, **one} for key, one in BESTS.items()}
    cases, expected = [], []
    for number, (exercise_id, base, dose) in enumerate(DOSES):
        worked = work(
            tmp_path / str(number), exercises=EXERCISES, room=LB_ROOM, bests=bests,
            sessions={"a": [slot("A", exercise_id, dose, base=base)]},
        )  # fmt: skip
        one = slots_of(worked)["A"]
        strip, recipe, lists = one.aims, aim_recipe(one), phone_lists(worked)
        assert strip is not None
        assert slot_recipe(worked, lists, one) == {"a": recipe}
        assert lists.data["bests"][base] == base
        for result, aim in strip.rows:
            cases.append([recipe, round(10 * result.amount)])
            pace, piece = (split(one) if one else "" for one in (aim.pace_s, aim.piece_s))
            expected.append([pace, piece, whole_watts(aim.watts) if aim.watts else ""])
    assert len(cases) > 300
    answers = ask({"cases": cases, "typed": []}, RUNNER, ("paces",))
    assert answers == expected


@pytest.mark.parametrize(
    ("exercise_id", "base", "rule", "doses", "next_load"),
    [
        ("rower", "row-2k", "pace -1 s", ("6x500 m @ pace +8 s",), PaceOfBest(7)),
        ("rower", "row-2k", "pace -0.5 s", ("3x2 km @ pace +7-9 s",), PaceOfBest(Span(6.5, 8.5))),
        ("bike", "ride-20", "speed +2 %", ("1x30 min @ 80 %",), PercentOfBase(82)),
        ("run", "run-5k", "listed", ("1x7 mi @ 80 %", "1x7 mi @ 84 %"), PercentOfBase(84)),
    ],
)
def test_the_next_time_is_the_builds_own(
    exercise_id: str, base: str, rule: str, doses: tuple[str, ...], next_load: Any, tmp_path: Path
) -> None:
    weeks = {str(number): dose for number, dose in enumerate(doses, start=1)}
    worked = work(
        tmp_path, exercises=EXERCISES, room=LB_ROOM,
        bests={key: {"name": key, **one} for key, one in BESTS.items()},
        sessions={"a": [slot("A", exercise_id, weeks, base=base, progress=rule)]},
    )  # fmt: skip
    program, today = worked.programs[0], slots_of(worked)["A"]
    week = program.weeks[0]
    recipe = full_recipe(worked, phone_lists(worked), program, week, week.sessions[0], today)
    assert recipe is not None
    ((_, move),) = recipe["n"]
    strip = aim_strip(today.best, replace(today.dose, load=next_load))
    assert strip is not None
    cases = [[move["a"], round(10 * result.amount)] for result, _ in strip.rows]
    expected = [
        [
            *(split(one) if one else "" for one in (aim.pace_s, aim.piece_s)),
            whole_watts(aim.watts) if aim.watts else "",
        ]
        for _, aim in strip.rows
    ]
    assert ask({"cases": cases, "typed": []}, RUNNER, ("paces",)) == expected


@pytest.mark.parametrize(
    ("text", "kind", "amount"),
    [
        ("7:40", "time", 4600),
        ("7:40.5", "time", 4605),
        ("7:40,5", "time", 4605),
        ("123:59", "time", 74_390),
        ("740", "time", None),
        ("7:60", "time", None),
        ("0:00", "time", None),
        ("-7:40", "time", None),
        ("", "time", None),
        ("210", "watts", 2100),
        ("210.5", "watts", 2105),
        ("7:40", "watts", None),
        ("0", "watts", None),
        ("210 W", "watts", None),
    ],
)
def test_what_is_typed_is_read(text: str, kind: str, amount: int | None) -> None:
    assert ask({"cases": [], "typed": [[text, kind]]}, RUNNER, ("paces",)) == [amount]
