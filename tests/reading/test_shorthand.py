"""Doses as coaches write them: each is read with exactly the meaning that was written beside it."""

from pathlib import Path
from typing import Any

import pytest

from strength_handbook.dose.printing import dose_line
from strength_handbook.model.count import Count
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.load import (
    BodyWeight,
    FixedLoad,
    PercentOfBase,
    PercentOfBodyMass,
    PercentOfTop,
    PercentOfTrainingMax,
    RepMax,
)
from strength_handbook.model.methods import SeriesPart, Strip
from strength_handbook.model.span import Span, ends
from strength_handbook.reading.doing import ANYTHING, Doing, doing
from strength_handbook.reading.long_form import stored
from strength_handbook.reading.notation import Found, NotationError, read_dose, read_house
from strength_handbook.reading.yaml_source import read_source

FILE = Path(__file__).parent / "shorthand.yml"


def lines() -> dict[str, Any]:
    source, problems = read_source(FILE.read_bytes(), FILE.name)
    assert source is not None, problems
    assert isinstance(source.data, dict)
    return source.data


READ: dict[str, dict[str, Any]] = lines()["read"]
REFUSED: dict[str, list[str]] = lines()["refused"]
ROOM = lines()["room"]
EXERCISES = {name: doing(one, ROOM) for name, one in lines()["exercises"].items()}


def for_exercises(key: str) -> list[tuple[str, str, Any]]:
    return [(name, *one) for name, lines_ in lines()[key].items() for one in lines_.items()]


READ_FOR, REFUSED_FOR = for_exercises("read_for"), for_exercises("refused_for")
GRAMS = {"kg": 1000.0, "lb": 453.59237}
"""The pound is exact by definition: international yard and pound agreement, 1959."""


@pytest.mark.parametrize(
    "line", ["30 s AMRAP", "AMRAP in 30 s", "as many as possible in 30 s", "max reps in 30 seconds"]
)
def test_as_many_as_possible_in_a_short_time_needs_no_pace(line: str) -> None:
    found = {one.key: one.value for one in read_dose(line, ANYTHING)}
    assert found == {("time",): "30 s", ("density", "sharing"): 1}


def counted(count: Count) -> int | list[Any]:
    if count.open:
        return [count.low, "more"]
    return count.low if count.low == count.high else [count.low, count.high]


def both(value: float | None) -> float | list[float] | None:
    return [round(end, 6) for end in ends(value)] if isinstance(value, Span) else value


def load_meant(part: DosePart | SeriesPart) -> dict[str, Any]:
    """The load in plain numbers, in the unit that was written."""
    match part.load:
        case None:
            return {}
        case PercentOfBase(percent):
            return {"percent": both(percent)}
        case PercentOfTop(percent):
            return {"top_percent": both(percent)}
        case PercentOfTrainingMax(percent):
            return {"max_percent": both(percent)}
        case RepMax(reps, 100):
            return {"rm": reps}
        case PercentOfBodyMass(percent):
            return {"body_percent": percent}
        case FixedLoad(mass) as load:
            low, high = (round(end.grams / GRAMS[mass.unit], 2) for end in load.ends)
            return {mass.unit: low if low == high else [low, high]}
        case BodyWeight(change, sign):
            return {f"added_{change.unit}": sign * round(change.grams / GRAMS[change.unit], 2)}
    raise AssertionError(part.load)


def meant(part: DosePart) -> dict[str, Any]:
    """A dose in the plain numbers of the file."""
    tempo = part.tempo and [int(one) if one != "X" else "X" for one in part.tempo.text.split("-")]
    plain = {
        "sets": part.sets and counted(part.sets),
        "reps": part.reps and counted(part.reps),
        "work_s": both(part.time),
        "hold_s": both(part.hold),
        "metres": both(part.distance),
        "tempo": tempo,
        "left": both(part.rir),
        "effort": both(part.rpe),
        "rest_s": both(part.rest),
        "every_s": part.every,
        "each_side": part.each_side,
        "cap": part.cap,
        "top": part.top,
        "height_m": part.height,
        "intent": part.intent,
        "pause": part.pause and [part.pause.time, part.pause.at],
        "remark": part.remark,
        "last": part.last_set and [part.last_set.floor, part.last_set.cap, part.last_set.rir],
        "cluster": part.cluster and [*part.cluster.parts, part.cluster.pause],
        "chains": part.chains and part.chains.pairs,
        "test": part.test and [part.test.rm, part.test.attempts],
        "strip": part.strip and [part.strip.loads, part.strip.drop.text, *each_load(part.strip)],
        "a_minute": both(part.rate),
        "talk": part.talk,
    }
    found = {key: value for key, value in plain.items() if value is not None} | load_meant(part)
    return found | ({"series": [alike_meant(one) for one in part.series]} if part.series else {})


def each_load(strip: Strip) -> list[Any]:
    """Repetitions with each load, where they are written."""
    return [] if strip.reps is None else [counted(strip.reps)]


def alike_meant(one: SeriesPart) -> dict[str, Any]:
    """Sets that are alike among sets that differ, in the same numbers."""
    found: dict[str, Any] = {"sets": one.sets, "reps": counted(one.reps)} | load_meant(one)
    return found | ({} if one.rest is None else {"rest_s": one.rest})


def left_out(found: list[Found]) -> list[str]:
    return [str(one.value) for one in found if not one.key]


def check_meaning(line: str, doing: Doing, meaning: dict[str, Any]) -> None:
    found = read_dose(line, doing)
    part = DosePart.model_validate(stored(found))
    numbers = {key: value for key, value in meaning.items() if key != "left_out"}
    assert meant(part) == numbers
    assert left_out(found) == meaning.get("left_out", [])
    said = {key for key, value in part if value not in (None, {})}
    assert len(said) == len(numbers), "the line says more"
    assert DosePart.model_validate(stored(read_house(dose_line(part)))) == part


def check_refused(line: str, doing: Doing, words: list[str]) -> None:
    with pytest.raises(NotationError) as caught:
        read_dose(line, doing)
    text = str(caught.value)
    assert [one for one in words if one not in text] == [], text
    assert "did you mean" not in text
    assert 0 <= caught.value.start <= len(line)


@pytest.mark.parametrize(("line", "meaning"), READ.items(), ids=list(READ))
def test_a_line_means_what_was_written_beside_it(line: str, meaning: dict[str, Any]) -> None:
    check_meaning(line, ANYTHING, meaning)


@pytest.mark.parametrize(("exercise", "line", "meaning"), READ_FOR)
def test_a_line_means_it_for_its_exercise(
    exercise: str, line: str, meaning: dict[str, Any]
) -> None:
    check_meaning(line, EXERCISES[exercise], meaning)


@pytest.mark.parametrize(("line", "words"), REFUSED.items(), ids=list(REFUSED))
def test_a_line_is_refused_with_what_to_write_instead(line: str, words: list[str]) -> None:
    check_refused(line, ANYTHING, words)


@pytest.mark.parametrize(("exercise", "line", "words"), REFUSED_FOR)
def test_a_line_is_refused_for_its_exercise(exercise: str, line: str, words: list[str]) -> None:
    check_refused(line, EXERCISES[exercise], words)


def test_there_are_many_and_few_of_them_are_refused() -> None:
    assert len(READ) + len(REFUSED) > 200
    assert len(READ) > 150
