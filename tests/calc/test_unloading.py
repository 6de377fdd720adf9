from functools import cache
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from strength_handbook.calc.barbell import BarShape, PlateShape
from strength_handbook.calc.tipping import BandPull, Side, off_centre_margin
from strength_handbook.calc.unloading import Order, PlateMove, order_margins, safe_order

BAR = BarShape()
L_PLATE, R_PLATE = PlateMove("left", "plate"), PlateMove("right", "plate")
L_BAND, R_BAND = PlateMove("left", "band"), PlateMove("right", "band")

# 25 + 25 + 20 kg a side, 60 mm each. Lowest margins worked by hand, bar 5 cm off-centre.
PLATES = (PlateShape(25, 0.060), PlateShape(25, 0.060), PlateShape(20, 0.060))
BANDS = (BandPull(40, 1.0),)
SPACINGS = (1.0, 1.1, 1.2)

stacks = st.lists(
    st.sampled_from([(25.0, 0.060), (20.0, 0.050), (10.0, 0.030), (5.0, 0.025), (2.5, 0.018)]),
    max_size=4,
).map(lambda sizes: tuple(PlateShape(*size) for size in sizes))
bands = st.lists(st.builds(BandPull, st.floats(1, 60), st.floats(0.7, 1.05)), max_size=2).map(tuple)
sides = st.builds(Side, stacks, bands)
spacings = st.floats(0.6, 1.2)


def moves_of(order: Order) -> list[PlateMove]:
    return [step.move for step in order.steps]


@pytest.mark.parametrize(
    ("moves", "expected"),
    [
        ([R_PLATE] * 3 + [L_PLATE] * 3, (0.40, 0.53, 0.71)),
        ([R_PLATE, L_PLATE] * 3, (1.36, 1.86, 2.67)),
    ],
)
def test_lowest_margin_without_bands(moves: list[PlateMove], expected: tuple[float, ...]) -> None:
    side = Side(PLATES)
    got = [order_margins(BAR, side, side, s, moves).lowest_margin for s in SPACINGS]
    assert got == pytest.approx(expected, abs=0.006)


@pytest.mark.parametrize(
    ("moves", "expected"),
    [
        ([R_BAND, L_BAND] + [R_PLATE, L_PLATE] * 3, (1.36, 1.86, 2.67)),
        ([R_PLATE, L_PLATE] * 3 + [R_BAND, L_BAND], (0.41, 0.50, 0.61)),
    ],
)
def test_lowest_margin_with_bands(moves: list[PlateMove], expected: tuple[float, ...]) -> None:
    side = Side(PLATES, BANDS)
    got = [order_margins(BAR, side, side, s, moves).lowest_margin for s in SPACINGS]
    assert got == pytest.approx(expected, abs=0.006)


def test_alike_sides_alternate_bands_first() -> None:
    side = Side(PLATES, BANDS)
    order = safe_order(BAR, side, side, 1.10)
    assert moves_of(order) == [L_BAND, R_BAND] + [L_PLATE, R_PLATE] * 3
    assert [step.load for step in order.steps] == [40, 40, 20, 20, 25, 25, 25, 25]
    assert order.lowest_margin == pytest.approx(1.86, abs=0.006)
    # Only the last plate against an empty sleeve is below 2: its removal and the one before it.
    assert [step.hold for step in order.steps] == [False] * 6 + [True, True]
    assert not order.safe_alone


def test_the_last_band_on_comes_off_first() -> None:
    side = Side((), (BandPull(40, 1.0), BandPull(15, 1.0)))
    order = safe_order(BAR, side, side, 1.10)
    assert [step.load for step in order.steps] == [15, 15, 40, 40]


def test_wide_hooks_need_no_partner() -> None:
    side = Side(PLATES, BANDS)
    order = safe_order(BAR, side, side, 1.20)
    assert order.safe_alone
    assert not any(step.hold for step in order.steps)


def test_a_margin_as_large_as_asked_for_is_enough() -> None:
    side = Side(PLATES, BANDS)
    lowest = safe_order(BAR, side, side, 1.10).lowest_margin
    order = safe_order(BAR, side, side, 1.10, factor=lowest)
    assert order.safe_alone
    assert not any(step.hold for step in order.steps)


def test_a_given_order_is_reported_as_given() -> None:
    moves = [R_PLATE, L_PLATE, L_PLATE]
    assert moves_of(order_margins(BAR, Side(PLATES), Side(PLATES), 1.1, moves)) == moves


def test_loading_is_unloading_backwards() -> None:
    side = Side(PLATES, BANDS)
    off = safe_order(BAR, side, side, 1.10)
    on = safe_order(BAR, side, side, 1.10, loading=True)
    assert moves_of(on) == moves_of(off)[::-1]
    assert moves_of(on)[-2:] == [R_BAND, L_BAND]
    assert on.lowest_margin == off.lowest_margin
    # The state after the first plate on is the state before the last plate off.
    assert on.steps[0].margin == off.steps[-2].margin
    assert [step.hold for step in on.steps] == [step.hold for step in off.steps][::-1]
    assert [step.load for step in on.steps] == [step.load for step in off.steps][::-1]


def test_a_strip_leaves_the_inner_plates() -> None:
    side = Side(PLATES)
    order = safe_order(BAR, side, side, 1.0, keep=2)
    assert moves_of(order) == [L_PLATE, R_PLATE]
    assert order.safe_alone


def test_unlike_sides_begin_where_more_is_on() -> None:
    left, right = (
        Side((PlateShape(25, 0.060),)),
        Side((PlateShape(10, 0.030),) * 2 + (PlateShape(5, 0.025),)),
    )
    # Down to one piece each, then the heavier one first.
    assert moves_of(safe_order(BAR, left, right, 1.0)) == [R_PLATE, R_PLATE, L_PLATE, R_PLATE]


@cache
def best_lowest_margin(plates: tuple[PlateShape, ...], spacing: float) -> float:
    """Best lowest margin of any order of taking equal stacks off, by trying all of them."""

    @cache
    def best(left: int, right: int) -> float:
        here = off_centre_margin(BAR, Side(plates[:left]), Side(plates[:right]), spacing)
        onward = [best(left - 1, right)] if left else []
        onward += [best(left, right - 1)] if right else []
        return min(here, max(onward)) if onward else here

    return best(len(plates), len(plates))


@settings(deadline=None)
@given(stacks, st.sampled_from([0.6, 0.8, 1.0, 1.1, 1.2]))
def test_no_order_of_equal_stacks_has_a_better_lowest_margin(
    plates: tuple[PlateShape, ...], spacing: float
) -> None:
    order = safe_order(BAR, Side(plates), Side(plates), spacing)
    assert order.lowest_margin == pytest.approx(best_lowest_margin(plates, spacing))


@settings(deadline=None)
@given(left=sides, right=sides, spacing=spacings, loading=st.booleans())
def test_everything_moves_once_and_sides_stay_level(
    left: Side, right: Side, spacing: float, *, loading: bool
) -> None:
    order = safe_order(BAR, left, right, spacing, loading=loading)
    moves = moves_of(order)[::-1] if loading else moves_of(order)
    for item in ("band", "plate"):
        counts = [
            len(side.plates) if item == "plate" else len(side.bands) for side in (left, right)
        ]
        for move in (m for m in moves if m.item == item):
            before = abs(counts[0] - counts[1])
            counts[move.side == "right"] -= 1
            assert abs(counts[0] - counts[1]) <= max(1, before)
        assert counts == [0, 0]
    kinds = [move.item for move in moves]
    assert kinds == sorted(kinds), "bands come off before plates"


@settings(deadline=None)
@given(sides, sides, spacings)
def test_steps_agree_with_the_states(left: Side, right: Side, spacing: float) -> None:
    order = safe_order(BAR, left, right, spacing)
    margins = [off_centre_margin(BAR, left, right, spacing), *(s.margin for s in order.steps)]
    assert order.lowest_margin == min(margins)
    assert [s.hold for s in order.steps] == [min(pair) < 2 for pair in pairwise(margins)]
    assert order.safe_alone == (min(margins) >= 2)


def test_what_is_not_there_cannot_be_taken_off() -> None:
    with pytest.raises(ValueError, match="no band on the left side"):
        order_margins(BAR, Side(PLATES), Side(PLATES), 1.1, [L_BAND])
    with pytest.raises(ValueError, match="no plate on the right side"):
        order_margins(BAR, Side(PLATES), Side(), 1.1, [R_PLATE])


def test_a_negative_rest_is_refused() -> None:
    with pytest.raises(ValueError, match="cannot keep"):
        safe_order(BAR, Side(), Side(), 1.1, keep=-1)
