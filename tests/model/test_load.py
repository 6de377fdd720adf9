"""The ways to say a load."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.model.load import (
    BodyWeight,
    FixedLoad,
    Load,
    PercentOfBase,
    PercentOfBodyMass,
    PercentOfSystem,
    PercentOfTop,
    PercentOfTrainingMax,
    RepMax,
    Setting,
    parse_load,
    scaled,
)
from strength_handbook.model.quantities import Mass


@pytest.mark.parametrize(
    ("text", "load"),
    [
        ("70 %", PercentOfBase(70)),
        ("72,5%", PercentOfBase(72.5)),
        ("70 % system", PercentOfSystem(70)),
        ("70 % of system", PercentOfSystem(70)),
        ("25 % BM", PercentOfBodyMass(25)),
        ("25 % of BM", PercentOfBodyMass(25)),
        ("25 % bm/hand", PercentOfBodyMass(25)),
        ("90 % of top", PercentOfTop(90)),
        ("90 % of the top", PercentOfTop(90)),
        ("85 % TM", PercentOfTrainingMax(85)),
        ("60 kg", FixedLoad(Mass(60_000))),
        ("135 lb", FixedLoad(Mass(61_235, "lb"))),
        ("BW", BodyWeight(Mass(0))),
        ("BW+10 kg", BodyWeight(Mass(10_000))),
        ("BW - 15 kg", BodyWeight(Mass(15_000), -1)),
        ("BW−15 kg", BodyWeight(Mass(15_000), -1)),
        ("8RM", RepMax(8)),
        ("8 rm", RepMax(8)),
        ("42 units", Setting(42)),
        ("1 unit", Setting(1)),
    ],
)
def test_a_load_is_read(text: str, load: Load) -> None:
    assert parse_load(text) == load


PERCENTS = st.integers(1, 600).map(lambda quarters: quarters / 4)
MASSES = st.integers(0, 40_000).map(lambda steps: Mass(steps * 25))
LOADS: st.SearchStrategy[Load] = st.one_of(
    st.builds(PercentOfBase, PERCENTS),
    st.builds(PercentOfSystem, PERCENTS),
    st.builds(PercentOfBodyMass, PERCENTS),
    st.builds(PercentOfTop, PERCENTS),
    st.builds(PercentOfTrainingMax, PERCENTS),
    st.builds(FixedLoad, MASSES),
    st.builds(BodyWeight, MASSES.filter(lambda mass: mass.grams > 0), st.sampled_from((1, -1))),
    st.builds(RepMax, st.integers(1, 20)),
    st.builds(Setting, st.integers(0, 10_000).map(float)),
)


@given(LOADS)
def test_what_a_page_prints_can_be_written_into_a_file(load: Load) -> None:
    assert parse_load(load.text) == load


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("75", "'75' has no unit; write '75 kg' or '75 %'"),
        ("0 %", "'0 %': a percentage of a load is above 0 and at most 150 %"),
        ("151 %", "'151 %': a percentage of a load is above 0 and at most 150 %"),
        ("0RM", "'0RM': an RM has 1 to 20 repetitions, such as '8RM'"),
        ("21RM", "'21RM': an RM has 1 to 20 repetitions, such as '8RM'"),
        ("1001 kg", "'1001 kg' is too large; the most is 1000 kg"),
        ("10001 units", "'10001 units' is too large; the most is 10000 units"),
        ("60 KG", "units are written small: '60 kg'"),
    ],
)
def test_a_refusal_says_what_to_write(text: str, message: str) -> None:
    with pytest.raises(ValueError, match=f"^{re.escape(message)}$"):
        parse_load(text)


@pytest.mark.parametrize("text", ["heavy", "", "BW10", "% 70", "70 % of lunch", "-20 kg", "8.5RM"])
def test_what_is_no_load_is_answered_with_examples(text: str) -> None:
    with pytest.raises(ValueError, match="is not a load; write it like '70 %'"):
        parse_load(text)


@given(LOADS, st.floats(0.1, 1))
def test_a_share_of_a_load_is_said_in_the_same_way(load: Load, factor: float) -> None:
    less = scaled(load, factor)
    assert type(less) is type(load)
    if isinstance(load, PercentOfBase) and isinstance(less, PercentOfBase):
        assert less.percent == pytest.approx(load.percent * factor, abs=0.05 + 1e-9)
    if isinstance(load, FixedLoad) and isinstance(less, FixedLoad):
        assert less.mass.grams == pytest.approx(load.mass.grams * factor, abs=0.5)
