"""Every other spelling is read as its house notation says, and comes back from it the same."""

import re

import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from strength_handbook.dose.printing import dose_line
from strength_handbook.dose.spelling import Spelling, Unclear, Writing, house_example
from strength_handbook.dose.spelling_values import VALUES, WORDS
from strength_handbook.dose.spellings import SPELLINGS
from strength_handbook.dose.texts import OneLineError
from strength_handbook.dose.unclear import UNCLEAR
from strength_handbook.model.dose_part import DosePart
from strength_handbook.reading.doses import read_as
from strength_handbook.reading.long_form import part_of
from strength_handbook.reading.notation import NotationError, read_dose, read_house
from thorough import tries

PLACE = re.compile(r"\{(([a-z_]+)\d*)\}")
WAYS = [(one, way) for one in SPELLINGS for way in one.ways]


def places(text: str) -> set[str]:
    return {found[1] for found in PLACE.finditer(text) if found[1] not in WORDS}


def house_part(text: str) -> DosePart | None:
    return part_of(read_house(text))


def sets_before(one: Spelling) -> str:
    return "3x5 " if one.behind_sets else ""


@pytest.mark.parametrize(("one", "way"), WAYS, ids=[way.text for _, way in WAYS])
def test_the_example_of_each_way_is_read(one: Spelling, way: Writing) -> None:
    part = part_of(read_dose(sets_before(one) + way.example))
    assert part is not None
    assert part == house_part(sets_before(one) + house_example(one))


@pytest.mark.parametrize("one", SPELLINGS, ids=[one.house for one in SPELLINGS])
def test_all_ways_have_the_values_of_the_house(one: Spelling) -> None:
    assert one.ways
    for way in one.ways:
        assert places(one.house) <= places(way.text), way.text


@pytest.mark.parametrize("one", UNCLEAR, ids=[one.ways[0].text for one in UNCLEAR])
def test_what_can_not_be_read_says_what_to_write(one: Unclear) -> None:
    known = {"all", "unit"}
    for way in one.ways:
        assert places(one.says) - known <= places(way.text), way.text


@st.composite
def written(draw: st.DrawFn) -> tuple[str, str]:
    """A way with values in its places, and its house notation with the same values."""
    one, way = draw(st.sampled_from(WAYS))
    values: dict[str, str] = {}

    def value(found: re.Match[str]) -> str:
        name, kind = found[1], found[2]
        if kind in WORDS:
            return draw(st.sampled_from(WORDS[kind].words))
        if kind == "again":
            return values["n"]
        if kind == "other":
            values[name] = str(int(values["n"]) + draw(st.integers(1, 9)))
            return values[name]
        values[name] = draw(st.from_regex(re.compile(VALUES[kind].pattern, re.A), fullmatch=True))
        return values[name]

    line = sets_before(one) + PLACE.sub(value, way.text)
    house = PLACE.sub(lambda found: VALUES[found[2]].house(values[found[1]]), one.house)
    return line, sets_before(one) + house


@settings(deadline=None, max_examples=tries(200, 2000))
@given(written())
@example(("3x5 31X1", "3x5 tempo 3-1-X-1"))
@example(("10+10", "reps 10 ES"))
def test_a_spelling_means_its_house_notation_or_is_refused(both: tuple[str, str]) -> None:
    line, house = both
    try:
        part = part_of(read_dose(line))
    except NotationError:
        return  # another reading of the same words
    assume(part is not None)  # a number beyond its limit
    assert part == house_part(house)


@settings(deadline=None, max_examples=tries(100, 1000))
@given(written())
def test_what_was_read_comes_back_from_its_notation(both: tuple[str, str]) -> None:
    try:
        found = read_dose(both[0])
        part = part_of(found)
        assume(part is not None)
        assert part is not None
        line = dose_line(part)
    except (NotationError, OneLineError):
        assume(False)  # noqa: FBT003
    assert house_part(line) == part
    assert read_as(both[0], found) in ("", line)
