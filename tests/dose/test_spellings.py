"""Every other spelling is read as its house notation says, and comes back from it the same."""

import re

import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from strength_handbook.dose.meant import There
from strength_handbook.dose.printing import dose_line
from strength_handbook.dose.spelling import Spelling, Unclear, Writing, house_example
from strength_handbook.dose.spelling_values import VALUES
from strength_handbook.dose.spelling_words import WORDS
from strength_handbook.dose.spellings import SPELLINGS
from strength_handbook.dose.texts import OneLineError
from strength_handbook.dose.unclear import UNCLEAR
from strength_handbook.model.dose_part import DosePart
from strength_handbook.reading.doing import ANYTHING, Doing
from strength_handbook.reading.doses import read_as
from strength_handbook.reading.long_form import part_of
from strength_handbook.reading.notation import NotationError, read_dose, read_house
from thorough import tries

MAY_BE = re.compile(r"\[([^\[\]]*)\]")
PLACE = re.compile(r"\{(([a-z_]+)\d*)\}")
WAYS = [(one, way) for one in SPELLINGS for way in one.ways]


def places(text: str) -> set[str]:
    return {found[1] for found in PLACE.finditer(text) if found[2] not in WORDS}


def house_part(text: str) -> DosePart | None:
    return part_of(read_house(text))


KINDS = (
    ANYTHING,
    Doing(kind="hands", hands=2),
    Doing(kind="hands", hands=1),
    Doing(kind="bar", hands=0),
    Doing(kind="body-weight", hands=0),
    Doing(kind="carrier", hands=0),
    Doing(kind="stack", hands=0),
    Doing(kind="body-weight", hands=0, jump=True),
    Doing(kind="endurance", hands=0),
)


def where(one: Spelling) -> tuple[str, Doing]:
    """What must stand before a spelling, and for which exercise, so that it is meant."""
    for loaded in (False, True):
        for before, sets, reps in (
            ("", False, False),
            ("3x30 s ", True, False),
            ("3x5 ", True, True),
            ("ramp to 5RM, 3x5 ", True, True),
            ("3x5 @ 60 %, ", True, True),
        ):
            if not one.house and not before:
                continue  # something must be done
            for doing in KINDS:
                there = There(
                    sets, reps, sets, sets, loaded, heavy="@" in before, topped="ramp" in before,
                    kind=doing.kind, hands=doing.hands, jump=doing.jump,
                )  # fmt: skip
                if one.only(there) and not (loaded and not before):
                    return before + ("@ BW+10 kg " if loaded else ""), doing
    raise AssertionError(one.house)


@pytest.mark.parametrize(("one", "way"), WAYS, ids=[way.text for _, way in WAYS])
def test_the_example_of_each_way_is_read(one: Spelling, way: Writing) -> None:
    before, doing = where(one)
    longest = PLACE.sub(
        lambda found: (WORDS.get(found[2]) or VALUES[found[2]]).example, MAY_BE.sub(r"\1", way.text)
    )
    for text in {way.example, longest}:
        part = part_of(read_dose(before + text, doing))
        assert part is not None
        assert part == house_part(before + house_example(one)), text


@pytest.mark.parametrize("one", SPELLINGS, ids=[one.house for one in SPELLINGS])
def test_all_ways_have_the_values_of_the_house(one: Spelling) -> None:
    assert one.ways
    for way in one.ways:
        assert places(one.house) <= places(way.text), way.text


@pytest.mark.parametrize("one", UNCLEAR, ids=[one.ways[0].text for one in UNCLEAR])
def test_what_can_not_be_read_says_what_to_write(one: Unclear) -> None:
    known = {"all", "unit", "bands", "chains", "pins"}
    for way in one.ways:
        assert places(one.says) - known <= places(way.text), way.text


@st.composite
def written(draw: st.DrawFn) -> tuple[str, str, Doing]:
    """A way with values in its places, its house notation with the same values, and where."""
    one, way = draw(st.sampled_from(WAYS))
    before, doing = where(one)
    values: dict[str, str] = {}

    def value(found: re.Match[str]) -> str:
        name, kind = found[1], found[2]
        if kind in WORDS:
            return draw(st.sampled_from(WORDS[kind].words))
        if kind == "again":
            return values["n"]
        if kind == "again_few":
            return values["few"]
        if kind == "same_sets":
            return values["sets"]
        if kind == "other":
            values[name] = str(int(values["n"]) + draw(st.integers(1, 9)))
            return values[name]
        values[name] = draw(st.from_regex(re.compile(VALUES[kind].pattern, re.A), fullmatch=True))
        return values[name]

    text = MAY_BE.sub(lambda found: found[1] if draw(st.booleans()) else "", way.text)
    line = before + PLACE.sub(value, text)
    house = PLACE.sub(lambda found: VALUES[found[2]].house(values[found[1]]), one.house)
    return line, before + house, doing


@settings(deadline=None, max_examples=tries(200, 2000))
@given(written())
@example(("3x5 31X1", "3x5 tempo 3-1-X-1", ANYTHING))
@example(("10+10", "reps 10 ES", ANYTHING))
@example(("3x5 help by 20 kg", "3x5 @ BW-20 kg", ANYTHING))
def test_a_spelling_means_its_house_notation_or_is_refused(both: tuple[str, str, Doing]) -> None:
    line, house, doing = both
    try:
        part = part_of(read_dose(line, doing))
    except NotationError:
        return  # another reading of the same words
    assume(part is not None)  # a number beyond its limit
    assert part == house_part(house)


@settings(deadline=None, max_examples=tries(100, 1000))
@given(written())
@example(("1.0000001 miles", "1x1.0000001 mi", Doing(kind="endurance", hands=0)))
def test_what_was_read_comes_back_from_its_notation(both: tuple[str, str, Doing]) -> None:
    try:
        found = read_dose(both[0], both[2])
        part = part_of(found)
        assume(part is not None)
        assert part is not None
        line = dose_line(part)
    except (NotationError, OneLineError):
        assume(False)  # noqa: FBT003
    assert house_part(line) == part
    assert read_as(both[0], found) in ("", line)
