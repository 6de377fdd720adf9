"""A change of any field is seen in a later comparison, unless the field says why not.

The fields whose values stand in the published data by themselves are each made different in the
files of a small program, one at a time; of all others a digest is compared, which is tried with
at least one field of each block.
"""

import copy
import json
from pathlib import Path
from typing import Annotated, Any

import pytest
from pydantic import BaseModel

from books import base, slot, write_files
from change_cases import LIFT, PARTS
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.goal import Goal
from strength_handbook.model.house_rules import HouseRules, Rule
from strength_handbook.model.lifter import Lifter
from strength_handbook.model.marks import Compared, NotCompared
from strength_handbook.model.plain import Name
from strength_handbook.model.program import Base, Group, Program, Wave
from strength_handbook.model.room import Emergency, Plate, Room
from strength_handbook.model.session import Session, Slot, Variant
from strength_handbook.model.shape import Shape
from strength_handbook.pages.change_words import said, where
from strength_handbook.plan.work_out import work_out
from strength_handbook.reading.book import read_book
from strength_handbook.record.changes import compare
from strength_handbook.record.data import program_data
from strength_handbook.record.digest import besides, elsewhere

Data = dict[str, Any]
BLOCKS: tuple[type[BaseModel], ...] = (
    Exercise, DosePart, Slot, Session, Variant, Wave, Program, Group, Base, Goal, Lifter, Room,
    Plate, Emergency, HouseRules, Rule,
)  # fmt: skip
FILES = {
    Exercise: f"exercises/{LIFT}.yml",
    Wave: "plan/1-first.yml",
    Program: "plan/program.yml",
    Room: "room.yml",
    HouseRules: "house-rules.yml",
    Lifter: "lifters.yml",
}
SESSION = ("sessions", "a-lift")
SLOT = (*SESSION, "slots", 0)
ROOM_SECTIONS: dict[str, Any] = {
    "bars": {"name": "Other bar", "mass": "15 kg"},
    "racks": {"name": "Rack", "hook-spacing": "1.09 m"},
    "hand-weights": {"name": "Bell", "masses": [{"mass": "8 kg", "count": 2}]},
    "carriers": {"name": "Sled"},
    "stacks": None,
    "machines": None,
    "lanes": {"name": "Lane", "length": "15 m"},
    "bands": {"help": "7 kg"},
    "chains": {"name": "Chain", "mass-per-metre": "2 kg", "length": "2 m"},
    "pivots": {"name": "Pivot"},
    "kit": {"name": "Mat", "count": 3},
}
DOSE: Data = {"sets": 3, "reps": 5, "load": "70 %", "rest": "2:00"}


def dose(drop: tuple[str, ...] = (), **keys: Any) -> Data:
    plain = {key: value for key, value in DOSE.items() if key not in drop}
    return plain | {key.replace("_", "-"): value for key, value in keys.items()}


HOLD = ("reps", "load")
DOSES: dict[str, tuple[Data, Data]] = {
    "sets": (dose(), dose(sets=4)),
    "reps": (dose(), dose(reps=6)),
    "hold": (dose(HOLD, hold="20 s"), dose(HOLD, hold="30 s")),
    "distance": (dose(HOLD, distance="20 m"), dose(HOLD, distance="30 m")),
    "time": (dose(HOLD, time="40 s"), dose(HOLD, time="50 s")),
    "series": (
        {
            "series": [
                {"sets": 1, "reps": 5, "load": "65 %"},
                {"sets": 1, "reps": 3, "load": "75 %"},
            ]
        },
        {
            "series": [
                {"sets": 1, "reps": 5, "load": "65 %"},
                {"sets": 1, "reps": 3, "load": "77 %"},
            ]
        },
    ),
    "load": (dose(), dose(load="75 %")),
    "tempo": (dose(), dose(tempo="3-0-1-0")),
    "rir": (dose(), dose(rir=3)),
    "rpe": (dose(), dose(rpe=7)),
    "rate": (dose(HOLD, time="40 s", rate=24), dose(HOLD, time="40 s", rate=26)),
    "talk": (dose(), dose(talk="can")),
    "rest": (dose(), dose(rest="3:00")),
    "every": (dose(("rest",), every="60 s"), dose(("rest",), every="90 s")),
    "each_side": (dose(), dose(each_side=True)),
    "deload_of": ({"deload-of": 1}, {"deload-of": 2}),
    "keep_sets": ({"deload-of": 1}, {"deload-of": 1, "keep-sets": "75 %"}),
    "keep_load": ({"deload-of": 1}, {"deload-of": 1, "keep-load": "80 %"}),
    "keep_hold": (
        {"deload-of": 2, "keep-sets": "100 %"},
        {"deload-of": 2, "keep-sets": "100 %", "keep-hold": "70 %"},
    ),
    "position": (dose(), dose(position="knee at 90°")),
    "note": (dose(), dose(note="Slowly.")),
}
"""Two doses of week 3 that differ in one field; weeks 1 and 2 differ in sets and load."""

CHANGES: dict[tuple[type[BaseModel], str], tuple[str, tuple[Any, ...], Any]] = {
    (Exercise, "name"): (FILES[Exercise], ("name",), "Other lift"),
    (Exercise, "hazards"): (FILES[Exercise], ("hazards",), ["box"]),
    (Exercise, "cautions"): (FILES[Exercise], ("cautions",), ["Chalk first."]),
    (Exercise, "poses"): (FILES[Exercise], ("poses", "turn"), "Sit lower."),
    (Exercise, "set_up"): (FILES[Exercise], ("set-up", 0), "Sweep the floor."),
    (Exercise, "cues"): (FILES[Exercise], ("cues", "before", 0), "Stand taller."),
    (Exercise, "breathing"): (FILES[Exercise], ("breathing",), "Breathe."),
    (Exercise, "stop"): (FILES[Exercise], ("stop", 0), "Stop when it slows."),
    (Exercise, "spotting"): (FILES[Exercise], ("spotting", "spotters"), 1),
    (Exercise, "doors"): (FILES[Exercise], ("doors", "hurts", "how"), "Stop."),
    (Exercise, "faults"): (FILES[Exercise], ("faults", 0, "fix"), "Take half."),
    (Exercise, "next_step"): (FILES[Exercise], ("next-step",), "Add a plate."),
    (Exercise, "also"): (FILES[Exercise], ("also",), "Big lift"),
    (Exercise, "load"): (
        FILES[Exercise], ("load", "start"), {"at": "75 kg", "shares": {"strong": "150 %"}}
    ),
    (Exercise, "stations"): (FILES[Exercise], ("stations",), ["bar"]),
    (Exercise, "why"): (FILES[Exercise], ("why",), "To carry."),
    (Exercise, "uses"): (FILES[Exercise], ("uses",), ["floor"]),
    (Slot, "order"): (FILES[Wave], (*SESSION, "slots", 1, "order"), "C"),
    (Slot, "exercise"): (FILES[Wave], (*SESSION, "slots", 1, "exercise"), "side-plank"),
    (Slot, "base"): (FILES[Wave], (*SLOT, "base"), "other"),
    (Slot, "doors"): (FILES[Wave], (*SLOT, "doors"), {"taken": "Wait."}),
    (Slot, "weeks"): (FILES[Wave], (*SLOT, "weeks", "2"), None),
    (Slot, "purpose"): (FILES[Wave], (*SLOT, "purpose"), "For strong legs"),
    (Slot, "progress"): (FILES[Wave], (*SLOT, "progress"), "linear +2.5 kg"),
    (Session, "title"): (FILES[Wave], (*SESSION, "title"), "Pull"),
    (Session, "purpose"): (FILES[Wave], (*SESSION, "purpose"), "To pull."),
    (Session, "day"): (FILES[Wave], (*SESSION, "day"), "tuesday"),
    (Session, "optional"): (FILES[Wave], (*SESSION, "optional"), True),
    (Session, "warm_up"): (FILES[Wave], (*SESSION, "warm-up"), ["March."]),
    (Session, "variants"): (FILES[Wave], (*SESSION, "variants"), [{"when": "Late"}]),
    (Session, "cut_first"): (FILES[Wave], (*SESSION, "cut-first"), "Leave out B."),
    (Session, "slots"): (FILES[Wave], (*SESSION, "slots"), [slot("A", LIFT, {"1": "3x5"})]),
    (Session, "supervised"): (FILES[Wave], (*SESSION, "supervised"), False),
    (Session, "rotate"): (FILES[Wave], (*SESSION, "rotate"), ["A", "B"]),
    (Wave, "wave"): (FILES[Wave], ("wave",), "Begin"),
    (Wave, "promise"): (FILES[Wave], ("promise",), "You pull."),
    (Wave, "weeks"): (FILES[Wave], ("weeks",), "1-4"),
    (Wave, "deload"): (FILES[Wave], ("deload",), 3),
    (Wave, "sessions"): (FILES[Wave], ("sessions", "b-hold", "title"), "Keep still"),
    (Wave, "emphasis"): (FILES[Wave], ("emphasis",), "speed"),
    (Wave, "tests"): (FILES[Wave], ("tests",), 3),
    (Program, "program"): (FILES[Program], ("program",), "Other plan"),
    (Program, "not_for"): (FILES[Program], ("not-for",), ["Ask first."]),
    (Program, "start"): (FILES[Program], ("start",), "2026-11-30"),
    (Program, "time_cap"): (FILES[Program], ("time-cap",), "60 min"),
    (Program, "group"): (FILES[Program], ("group",), {"members": 3}),
    (Program, "goals"): (FILES[Program], ("goals",), [{"goal": "Pull.", "test": "A pull."}]),
    (Program, "rules"): (FILES[Program], ("rules",), ["On call: rest."]),
    (Program, "version"): (FILES[Program], ("version",), "2"),
    (Program, "valid_until"): (FILES[Program], ("valid-until",), "2027-03-31"),
    (Program, "need"): (FILES[Program], ("need",), ["To carry."]),
    (Program, "weeks_off"): (FILES[Program], ("weeks-off",), 3),
    (Program, "warm_up"): (FILES[Program], ("warm-up",), "1 min"),
    (Program, "close"): (FILES[Program], ("close",), "1 min"),
    (Program, "events"): (FILES[Program], ("events",), [{"name": "Race", "week": 2}]),
    (Program, "bases"): (FILES[Program], ("bases", "third"), base(LIFT)),
    (Base, "name"): (FILES[Program], ("bases", "best", "name"), "Best pull"),
    (Base, "to"): (FILES[Program], ("bases", "best", "to"), "150 kg"),
    (Goal, "goal"): (FILES[Program], ("goals", 0, "goal"), "Be stronger."),
    (Goal, "test"): (FILES[Program], ("goals", 0, "test"), "Pull."),
    (Goal, "base"): (FILES[Program], ("goals", 0, "base"), "best"),
    (Goal, "exercise"): (FILES[Program], ("goals", 0, "exercise"), LIFT),
    (Goal, "result"): (FILES[Program], ("goals", 0, "result"), "metres"),
    (Goal, "noise"): (FILES[Program], ("goals", 0, "noise"), "6 %"),
    (Group, "sharing"): (FILES[Program], ("group",), {"sharing": 2}),
    (Group, "members"): (FILES[Program], ("group",), {"members": 4}),
    (Group, "starts"): (FILES[Program], ("group",), {"starts": 2}),
    (Group, "apart"): (FILES[Program], ("group",), {"apart": "10 min"}),
    (Group, "ages"): (FILES[Program], ("group",), {"ages": ["over-65"]}),
    (Lifter, "bodyweight"): (FILES[Lifter], ("lifters", "P1", "bodyweight"), "73 kg"),
    (Lifter, "bases"): (FILES[Lifter], ("lifters", "P1", "bases", "best"), "145 kg"),
    (Room, "gym"): (FILES[Room], ("gym",), "Other room"),
    (Room, "group"): (FILES[Room], ("group",), "The club"),
    (Room, "units"): (FILES[Room], ("units",), "lb"),
    (Room, "plates"): (FILES[Room], ("plates", 0, "pairs"), 3),
    (Room, "loose_plates"): (FILES[Room], ("loose-plates",), [{"mass": "1 kg", "pairs": 1}]),
    (Room, "emergency"): (FILES[Room], ("emergency", "ice"), "In the office"),
    (Plate, "mass"): (FILES[Room], ("plates", 0, "mass"), "24 kg"),
    (Plate, "pairs"): (FILES[Room], ("plates", 1, "pairs"), 1),
    (Plate, "thickness"): (FILES[Room], ("plates", 0, "thickness"), "4 cm"),
    (HouseRules, "owner"): (FILES[HouseRules], ("owner",), "Board"),
    (HouseRules, "date"): (FILES[HouseRules], ("date",), "2026-02-01"),
    (HouseRules, "rules"): (FILES[HouseRules], ("rules", "swap-time"), {"value": "25 s"}),
    (Rule, "value"): (FILES[HouseRules], ("rules", "swap-time", "value"), "30 s"),
    (Rule, "why"): (FILES[HouseRules], ("rules", "swap-time", "why"), "We are quick here."),
} | {
    (Room, key.replace("-", "_")): (FILES[Room], (key, "some"), thing)
    for key, thing in ROOM_SECTIONS.items()
    if thing
}  # fmt: skip
BY_OTHERS = {(Room, "stacks"), (Room, "machines")}
"""Sections of the room that are compared in the same way as the others."""


def files(folder: Path) -> Path:
    parts = copy.deepcopy(PARTS)
    parts["bases"]["other"] = base(LIFT)
    parts["lifters"]["P1"]["bases"]["other"] = "90 kg"
    return write_files(folder, rules={"swap-time": "20 s"}, **parts)


def read(folder: Path) -> Data:
    reading = read_book(folder)
    assert reading.book is not None, "\n".join(map(str, reading.problems))
    worked = work_out(reading.book)
    data: Data = json.loads(json.dumps(program_data(worked, worked.programs[0])))
    return data


def edited(folder: Path, file: str, path: tuple[Any, ...], value: Any) -> Path:
    data = json.loads((folder / file).read_text(encoding="utf-8"))
    here = data
    for part in path[:-1]:
        here = here[part] if isinstance(part, int) else here.setdefault(part, {})
    if value is None:
        del here[path[-1]]
    else:
        here[path[-1]] = value
    (folder / file).write_text(json.dumps(data), encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def before(tmp_path_factory: pytest.TempPathFactory) -> Data:
    return read(files(tmp_path_factory.mktemp("before")))


@pytest.mark.parametrize(
    "key", CHANGES, ids=lambda key: f"{key[0].__name__}-{key[1]}" if isinstance(key, tuple) else ""
)
def test_a_change_of_a_field_is_reported(
    key: tuple[type[BaseModel], str], before: Data, tmp_path: Path
) -> None:
    changes = compare(before, read(edited(files(tmp_path), *CHANGES[key])))
    assert changes.items or changes.before != changes.after
    for item in changes.items:
        assert where(item)
        assert said(item)
        # A digest tells nobody anything.
        assert not any(
            str(one) in said(item)
            for pair in item.pairs
            for one in (pair.before, pair.after)
            if isinstance(one, str) and len(one) == 12 and set(one) <= set("0123456789abcdef")
        )


@pytest.mark.parametrize("field", DOSES)
def test_a_change_of_a_field_of_a_dose_is_reported(field: str, tmp_path: Path) -> None:
    def with_dose(name: str, one: Data) -> Data:
        folder = edited(files(tmp_path / name), FILES[Wave], (*SLOT, "weeks", "3"), one)
        edited(folder, FILES[Wave], (*SLOT, "rest"), None)
        first = "4x5 @ 60 %" if field != "keep_hold" else "ISO 4x30 s"
        second = "2x5 @ 74 %" if field != "keep_hold" else "ISO 2x20 s"
        edited(folder, FILES[Wave], (*SLOT, "weeks", "1"), first)
        return read(edited(folder, FILES[Wave], (*SLOT, "weeks", "2"), second))

    then, now = DOSES[field]
    assert compare(with_dose("then", then), with_dose("now", now)).items


@pytest.mark.parametrize("block", BLOCKS, ids=lambda block: str(block.__name__))
def test_a_field_that_is_not_compared_by_its_digest_is_tried_here(block: type[BaseModel]) -> None:
    skipped = {
        name
        for name, field in block.model_fields.items()
        if any(isinstance(mark, NotCompared) for mark in field.metadata)
    }
    mine = elsewhere(block) - skipped
    if block is Slot:
        mine -= set(DosePart.model_fields)
    tried = {name for of, name in CHANGES.keys() | BY_OTHERS if of is block}
    assert mine - tried - (set(DOSES) if block is DosePart else set()) == set()


class Boots(Shape):
    """A block that somebody adds."""

    colour: Name | None = None
    size: int = 40


def test_a_new_field_is_compared_by_itself() -> None:
    assert besides(Boots()).keys() == {"colour", "size"}
    assert besides(Boots(size=41)) != besides(Boots())
    assert besides(Boots(colour="red")) != besides(Boots())


class Gloves(Shape):
    """A block with fields that are compared elsewhere or by nobody."""

    colour: Name | None = None
    note: Annotated[int, NotCompared("no page shows it")] = 5
    size: Annotated[int, Compared("glove_size")] = 9


def test_what_is_compared_elsewhere_has_no_digest_so_that_nothing_is_told_twice() -> None:
    assert besides(Gloves()).keys() == {"colour"}
    assert besides(Gloves(), without=["colour"]) == {}
