import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.registry import OutOfRangeError
from strength_handbook.calc.variable_load import haff_triplett_2016_bar, pull_for_share


@pytest.mark.parametrize(
    ("load", "bottom", "top", "bar"),
    # Haff & Triplett 2016, Essentials of Strength Training and Conditioning, 4th ed., ch. 16:
    # 150 kg with bands of 26.6 kg at the top, 120 kg with chains of 11.1 kg at the top.
    [(150, 0, 26.6, 136.7), (120, 0, 11.1, 114.45)],
)
def test_textbook_examples(load: float, bottom: float, top: float, bar: float) -> None:
    assert haff_triplett_2016_bar(load, bottom, top) == pytest.approx(bar)


@given(st.floats(1, 300), st.floats(0, 90))
def test_pull_makes_up_the_share_of_the_whole(weight: float, share: float) -> None:
    pull = pull_for_share(weight, share)
    assert 100 * pull / (weight + pull) == pytest.approx(share)


@pytest.mark.parametrize("share", [-1, 91])
def test_impossible_shares_are_refused(share: float) -> None:
    with pytest.raises(OutOfRangeError):
        pull_for_share(80, share)
