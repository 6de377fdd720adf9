"""Doses that refer to another week, and weeks that share one line."""

from pathlib import Path
from typing import Any

import pytest

from strength_handbook.dose.clause import NotationError
from strength_handbook.model.dose_part import DosePart
from strength_handbook.reading.doing import ANYTHING
from strength_handbook.reading.doses import Expanded, expand_doses
from strength_handbook.reading.last_week import as_last_week
from strength_handbook.reading.long_form import part_of, stored
from strength_handbook.reading.notation import read_dose
from strength_handbook.reading.source import value_at
from strength_handbook.reading.yaml_source import read_source


def cases(key: str) -> list[tuple[str, str, Any]]:
    file = Path(__file__).parent / "last-week.yml"
    source, problems = read_source(file.read_bytes(), file.name)
    assert source is not None, problems
    data: Any = source.data
    return [(before, *one) for before, lines in data[key].items() for one in lines.items()]


@pytest.mark.parametrize(("before", "line", "full"), cases("read"))
def test_another_week_with_a_change_is_that_week_in_full(before: str, line: str, full: str) -> None:
    earlier = {1: stored(read_dose(before))}
    found = as_last_week(line, 2, earlier, {}, ANYTHING)
    assert part_of(read_dose(found)) == part_of(read_dose(full))


@pytest.mark.parametrize(("before", "line", "words"), cases("refused"))
def test_what_can_not_be_worked_out_is_refused(before: str, line: str, words: list[str]) -> None:
    with pytest.raises(NotationError) as caught:
        as_last_week(line, 2, {1: stored(read_dose(before))}, {}, ANYTHING)
    assert [one for one in words if one not in str(caught.value)] == [], str(caught.value)


def expanded(*weeks: str, slot: str = "") -> Expanded:
    """A wave with one slot."""
    lines = "".join(f"          {week}\n" for week in weeks)
    text = f"sessions:\n  a:\n    slots:\n      - order: A\n{slot}        weeks:\n{lines}"
    source, problems = read_source(text.encode(), "1-wave.yml")
    assert source is not None, problems
    return expand_doses(source)


WEEKS = ("sessions", "a", "slots", 0, "weeks")


def doses(found: Expanded) -> dict[str, DosePart]:
    weeks: Any = value_at(found.source.data, WEEKS)
    return {week: DosePart.model_validate(dose) for week, dose in weeks.items()}


def line(text: str) -> DosePart | None:
    return part_of(read_dose(text))


def test_each_week_goes_on_from_the_one_before() -> None:
    found = expanded("1: 3x5 @ 60 kg", "2: last week +2.5 kg", "3: last week +2.5 kg")
    assert not found.problems
    assert doses(found)["3"] == line("3x5 @ 65 kg")
    assert [one.read_as for one in found.read_as] == ["3x5 @ 62.5 kg", "3x5 @ 65 kg"]


def test_weeks_in_any_order_of_the_file() -> None:
    found = expanded("2: last week +2.5 kg", "1: 3x5 @ 60 kg")
    assert doses(found)["2"] == line("3x5 @ 62.5 kg")


def test_a_week_in_keys_is_gone_on_from_without_its_note() -> None:
    found = expanded(
        "1: {sets: 3, reps: 5, load: 60 kg, note: 'One, two.'}", "2: last week, one set more"
    )
    assert doses(found)["2"] == line("4x5 @ 60 kg")


def test_what_the_slot_says_is_changed_where_the_week_says_nothing() -> None:
    found = expanded("1: 3x5", "2: last week +2.5 kg", slot="        load: 60 kg\n")
    assert doses(found)["2"] == line("3x5 @ 62.5 kg")


@pytest.mark.parametrize("weeks", [("1: last week +2.5 kg",), ("1: 3x5", "3: last week, RIR 2")])
def test_without_a_week_before_it_is_refused(weeks: tuple[str, ...]) -> None:
    (problem,) = expanded(*weeks).problems
    assert "last week has no dose" in problem.text
    assert "in full" in problem.text


def test_weeks_that_share_a_line_each_have_it() -> None:
    found = expanded("1-3: 3x10, RIR 2", "5, 7: 2x10, RIR 3", "4: 4x10")
    assert not found.problems
    assert list(doses(found)) == ["1", "2", "3", "4", "5", "7"]
    assert doses(found)["2"] == line("3x10, RIR 2")
    assert doses(found)["7"] == line("2x10, RIR 3")


def test_weeks_that_share_a_line_go_on_one_from_the_other() -> None:
    found = expanded("1: 3x5 @ 60 kg", "2-4: last week +2.5 kg")
    assert doses(found)["4"] == line("3x5 @ 67.5 kg")


def test_a_mistake_in_a_shared_line_is_told_once_where_it_stands() -> None:
    found = expanded("1: 3x10", "2-4: 3x10 @ 5 furlongs")
    (problem,) = found.problems
    assert (problem.line, problem.column) == (7, 21)


@pytest.mark.parametrize(
    ("weeks", "words"),
    [
        (("1-3: 3x10", "3: 3x8"), "week 3 is in '1-3' and in '3'"),
        (("3-1: 3x10",), "the first week before the last"),
        (("1-70: 3x10",), "weeks 1 to 60"),
        (("1, 1: 3x10",), "twice"),
    ],
)
def test_groups_that_are_none(weeks: tuple[str, ...], words: str) -> None:
    (problem,) = expanded(*weeks).problems
    assert words in problem.text
