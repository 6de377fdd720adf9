import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.chains import (
    ChainShape,
    all_off_floor,
    chain_load,
    chain_mass_per_metre,
    chain_pairs_for_share,
    chained_load,
)
from strength_handbook.calc.registry import OutOfRangeError

chains = st.builds(
    ChainShape, st.floats(0.5, 10), st.floats(0.5, 3), st.floats(0, 1), st.sampled_from([1, 2])
)


@pytest.mark.parametrize(
    ("diameter", "masses"),
    # DIN 766 short-link chain, kg/m, as makers print it (two makers where they differ).
    [
        (6, (0.80,)),
        (7, (1.10, 1.15)),
        (8, (1.40,)),
        (10, (2.20,)),
        (13, (3.80, 3.90)),
        (14, (4.25, 4.40)),
        (16, (5.70, 5.80)),
        (18, (7.3,)),
        (20, (9.0,)),
    ],
)
def test_mass_per_metre_of_standard_chain(diameter: float, masses: tuple[float, ...]) -> None:
    for mass in masses:
        assert chain_mass_per_metre(diameter) == pytest.approx(mass, rel=0.05)


@pytest.mark.parametrize(("diameter", "pair"), [(9.5, 3.7), (12.7, 7.4), (19.1, 14.0)])
def test_textbook_table_is_for_a_pair(diameter: float, pair: float) -> None:
    # Haff & Triplett 2016, ch. 16: kg/m printed there are 1.7 to 2.0 times one strand.
    assert 1.7 <= pair / chain_mass_per_metre(diameter) <= 2.05


@pytest.mark.parametrize("height", [0.10, 0.50, 1.00, 1.50, 2.00])
def test_textbook_row(height: float) -> None:
    # Haff & Triplett 2016, ch. 16, 12.7 mm row: 0.7, 3.7, 7.4, 11.1, 14.8 kg for the pair.
    printed = {0.10: 0.7, 0.50: 3.7, 1.00: 7.4, 1.50: 11.1, 2.00: 14.8}[height]
    pair = 2 * chain_load(ChainShape(3.7, 3.0), height)
    assert pair == pytest.approx(printed, abs=0.051)


def test_both_sides_at_bottom_and_top() -> None:
    # By hand: 2 × 5.3 kg/m × 0.45 m and × 1.25 m.
    load = chained_load(20, ChainShape(5.3, 1.5), 0.45, 1.25)
    assert (load.bottom, load.top) == pytest.approx((24.77, 33.25))
    assert load.top_share == pytest.approx(100 * 13.25 / 33.25)


@given(chains, st.floats(0, 4))
def test_load_stays_between_nothing_and_the_whole_chain(chain: ChainShape, height: float) -> None:
    whole = chain.strands * chain.mass_per_metre * chain.length
    assert 0 <= chain_load(chain, height) <= whole
    if height <= chain.leader:
        assert chain_load(chain, height) == 0
    if all_off_floor(chain, height):
        assert chain_load(chain, height) == pytest.approx(whole)


@given(chains, st.floats(20, 200), st.integers(0, 5), st.floats(0, 1), st.floats(0.01, 1))
def test_middle_is_the_mean_while_links_lie_on_the_floor(
    chain: ChainShape, weight: float, pairs: int, low: float, high: float
) -> None:
    # A straight line (McMaster 2010, R = 1): its mean is its value half-way.
    bottom = chain.leader + low * chain.length / 2
    top = bottom + high * chain.length / 2
    load = chained_load(weight, chain, bottom, top, pairs)
    assert load.middle == pytest.approx((load.bottom + load.top) / 2)
    one = chained_load(weight, chain, bottom, top, 1)
    assert load.top - weight == pytest.approx(pairs * (one.top - weight), abs=1e-9)


def test_hung_by_the_middle_counts_twice_over_half_the_length() -> None:
    single, looped = ChainShape(5.3, 1.5), ChainShape(5.3, 0.75, strands=2)
    assert chain_load(looped, 0.4) == pytest.approx(2 * chain_load(single, 0.4))
    assert chain_load(looped, 2.0) == pytest.approx(chain_load(single, 2.0))
    assert all_off_floor(looped, 0.8)
    assert not all_off_floor(single, 0.8)


def test_a_leader_takes_up_height_without_load() -> None:
    chain = ChainShape(5.3, 1.5, leader=0.5)
    assert chain_load(chain, 0.5) == 0
    assert chain_load(chain, 1.5) == pytest.approx(5.3)


@given(chains, st.floats(20, 200), st.floats(0.3, 2), st.floats(0, 60), st.integers(0, 6))
def test_no_other_number_of_pairs_is_nearer(
    chain: ChainShape, weight: float, top: float, share: float, available: int
) -> None:
    def share_of(pairs: int) -> float:
        return chained_load(weight, chain, 0.0, top, pairs).top_share

    chosen = chain_pairs_for_share(weight, chain, top, share, available)
    distances = [abs(share_of(n) - share) for n in range(available + 1)]
    assert distances[chosen] == pytest.approx(min(distances), abs=1e-9)


@pytest.mark.parametrize(("share", "pairs"), [(9.9, 0), (10.1, 1), (26.5, 1), (26.8, 2), (90, 3)])
def test_pairs_by_hand(share: float, pairs: int) -> None:
    # 80 kg and pairs of 2 × 10 kg: 0, 20, 33.3 and 42.9 % of the load at the top.
    assert chain_pairs_for_share(80, ChainShape(10, 1), 1, share, 3) == pairs


def test_the_last_link_leaves_the_floor_at_the_chains_own_length() -> None:
    assert all_off_floor(ChainShape(5, 1.0, leader=0.5), 1.5)
    assert not all_off_floor(ChainShape(5, 1.0, leader=0.5), 1.499)


def test_chains_on_a_stick() -> None:
    assert chained_load(0.4, ChainShape(5.3, 1.5), 0.5, 1.0).top == pytest.approx(0.4 + 2 * 5.3)
    assert chain_pairs_for_share(0.4, ChainShape(5.3, 1.5), 1.0, 90, 3) == 1


def test_impossible_inputs_are_refused() -> None:
    for mass, length, leader, strands in (
        (0, 1.5, 0, 1),
        (5, 0, 0, 1),
        (5, 1, -0.1, 1),
        (5, 1, 0, 0),
    ):
        with pytest.raises(ValueError, match="above 0"):
            ChainShape(mass, length, leader, strands)
    with pytest.raises(ValueError, match="pairs"):
        chained_load(80, ChainShape(5.3, 1.5), 1.0, 0.9)
    with pytest.raises(ValueError, match="pairs"):
        chained_load(80, ChainShape(5.3, 1.5), 0.9, 0.9)
    with pytest.raises(ValueError, match="pairs"):
        chained_load(80, ChainShape(5.3, 1.5), 0.5, 0.9, -1)
    with pytest.raises(ValueError, match="pairs"):
        chained_load(0, ChainShape(5.3, 1.5), 0.5, 0.9)
    with pytest.raises(ValueError, match="pairs"):
        chain_pairs_for_share(80, ChainShape(5.3, 1.5), 1.0, 20, -1)
    with pytest.raises(ValueError, match="pairs"):
        chain_pairs_for_share(0, ChainShape(5.3, 1.5), 1.0, 20, 1)
    with pytest.raises(OutOfRangeError):
        chain_mass_per_metre(25.4)
