"""The examples of every method of the trade, from `methods/doses.yml`."""

from pathlib import Path
from typing import Any

from books import BAR, exercise, slot
from strength_handbook.model.dose import Dose, DosePart, complete
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.session import Slot
from strength_handbook.model.slot_dose import slot_dose
from strength_handbook.reading.long_form import store
from strength_handbook.reading.notation import read_dose
from strength_handbook.reading.yaml_source import read_source

FILE = Path(__file__).parent / "methods" / "doses.yml"


def examples() -> list[dict[str, Any]]:
    """The file, read as a coach's files are read."""
    source, problems = read_source(FILE.read_bytes(), "doses.yml")
    assert source is not None, problems
    assert isinstance(source.data, dict)
    doses: Any = source.data["doses"]
    return list(doses)


EXAMPLES = examples()


def part_of(line: str) -> DosePart:
    long: dict[str, Any] = {}
    for value in read_dose(line):
        store(long, value)
    return DosePart.model_validate(long)


def exercise_of(one: dict[str, Any]) -> Exercise:
    keys = {key: one[key] for key in ("sides", "hazards") if key in one}
    return Exercise.model_validate(exercise(load=one.get("load", BAR), **keys))


def dose_of(one: dict[str, Any]) -> Dose:
    part, lift = part_of(one["line"]), exercise_of(one)
    if "week-3" not in one:
        return complete(part, each_side=lift.sides == "each", going=lift.going)
    weeks = {"3": part_of(one["week-3"]), "4": part}
    return slot_dose(Slot.model_validate(slot("A", "lift", weeks)), lift, 4)
