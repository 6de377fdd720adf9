"""A bar on a pivot: what the hands hold, for the room's own bar, pivot, plates and reach."""

from typing import Any

import pytest
from pydantic import TypeAdapter

from books import KG_PLATES, KG_ROOM
from strength_handbook.model.loading import Loading, OnPivot
from strength_handbook.model.resistance import Pivot, Reach
from strength_handbook.model.room import Bar, Plate, Room
from strength_handbook.plan.pivot import AtTheHands, at_the_hands, bar_for_calc, plates_for_calc
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.scales import scale_for

# The 20 kg bar of the International Weightlifting Federation, Technical and Competition Rules &
# Regulations, 3.3: 2.20 m, 1.31 m between the collars, sleeves of 41.5 cm.
BAR = {"name": "bar", "mass": "20 kg", "sleeve": "41.5 cm", "between-collars": "131 cm"}
PLATES = [{"mass": "20 kg", "pairs": 2, "thickness": "54 mm"}, {"mass": "10 kg", "pairs": 1}]
PIVOT = {"name": "pivot"}
REACH = {"grip": "2.15 m", "bottom": "0 cm", "top": "107.5 cm"}


def hands(
    on_g: tuple[int, ...],
    bar: dict[str, Any] | None = None,
    pivot: dict[str, Any] | None = None,
    reach: dict[str, Any] | None = None,
    plates: list[dict[str, Any]] | None = None,
) -> AtTheHands:
    return at_the_hands(
        Bar.model_validate(BAR | (bar or {})),
        Pivot.model_validate(PIVOT | (pivot or {})),
        Reach.model_validate(REACH | (reach or {})),
        [Plate.model_validate(plate) for plate in plates or PLATES],
        on_g,
    )


def test_twenty_on_twenty_at_the_end_of_the_sleeve() -> None:
    # Moments about the pivot: bar 20·1.10 = 22; its mass and the sleeve put the first plate at
    # 2.20 − 0.415 + 0.027 = 1.812 m: 20·1.812 = 36.24. Hands at 2.15 m: 58.24 / 2.15 = 27.09 kg.
    found = hands((20_000,))
    assert found.vertical_kg == pytest.approx(27.09, abs=0.005)
    # Level, square to the bar is straight up. At 107.5 cm sin θ = 0.5, cos 30° = 0.866: 23.46.
    assert found.bottom_kg == pytest.approx(27.09, abs=0.005)
    assert found.top_kg == pytest.approx(23.46, abs=0.005)


def test_the_collar_counts_where_plates_are_on() -> None:
    # Beside the plate, 5 cm wide (common practice): 2.20 − 0.415 + 0.054 + 0.025 = 1.864 m.
    # (58.24 + 2.5·1.864) / 2.15 = 29.26 kg; the bare bar needs no collar.
    assert hands((20_000,), {"collar": "2.5 kg"}).vertical_kg == pytest.approx(29.26, abs=0.005)
    assert hands((), {"collar": "2.5 kg"}) == hands(())


def test_the_bare_bar_is_half_a_bar() -> None:
    # 20·1.10 / 2.15
    assert hands(()).vertical_kg == pytest.approx(10.233, abs=0.001)


@pytest.mark.parametrize(
    ("change", "expected"),
    [
        # Bar of 15 kg: 15·1.10 = 16.5, with the plate 52.74 / 2.15.
        ({"bar": {"mass": "15 kg"}}, 24.53),
        # A shorter sleeve makes a shorter bar, 1.90 m, mass centre at 0.95 m; the first plate is
        # at 1.90 − 0.265 + 0.027 = 1.662 m: (19 + 33.24) / 1.85.
        ({"bar": {"sleeve": "26.5 cm"}, "reach": {"grip": "1.85 m"}}, 28.24),
        # Hands at 1.74 m: 58.24 / 1.74.
        ({"reach": {"grip": "1.74 m"}}, 33.47),
        # Joint 5 cm beyond the end: (20·1.15 + 20·1.862) / 2.20.
        ({"pivot": {"offset": "5 cm"}}, 27.38),
        # A plate of 30 mm lies 12 mm further in: 20·1.80 = 36; 58 / 2.15.
        ({"plates": [{"mass": "20 kg", "pairs": 2, "thickness": "30 mm"}]}, 26.98),
    ],
)
def test_another_room_gives_other_kilos(change: dict[str, Any], expected: float) -> None:
    assert hands((20_000,), **change).vertical_kg == pytest.approx(expected, abs=0.006)


def test_the_height_of_the_joint_counts_for_the_angle_only() -> None:
    low, high = hands((20_000,)), hands((20_000,), None, {"height": "5 cm"}, {"bottom": "10 cm"})
    assert high.vertical_kg == low.vertical_kg
    assert high.top_kg > low.top_kg


def test_a_plate_that_was_not_measured_is_taken_as_thick() -> None:
    rows = [Plate.model_validate(plate) for plate in PLATES]
    assert [one.thickness for one in plates_for_calc(rows, (20_000, 10_000))] == [0.054, 0.05]


def test_a_bar_that_was_not_measured_is_a_standard_bar() -> None:
    steel = bar_for_calc(Bar.model_validate({"name": "bar", "mass": "20 kg"}))
    assert steel.length == pytest.approx(2.20)
    assert steel.between_collars == pytest.approx(1.31)


@pytest.mark.parametrize(
    "reach", [{"grip": "2.25 m"}, {"grip": "1 m", "top": "1.2 m"}], ids=["too far", "too high"]
)
def test_hands_where_there_is_no_bar(reach: dict[str, Any]) -> None:
    with pytest.raises(ValueError, match="hands"):
        hands((), reach=reach)


def scale(load: dict[str, Any], **room: Any) -> Scale:
    adapter: TypeAdapter[Loading] = TypeAdapter(Loading)
    pivots = {"pivot": {"name": "pivot"}}
    whole = Room.model_validate({**KG_ROOM, "pivots": pivots} | room)
    found = scale_for(whole, adapter.validate_python(load))
    assert found is not None
    return found


ON_PIVOT = {"kind": "pivot", "bar": "bar", "pivot": "pivot", "reach": REACH}


def test_plates_stand_on_one_end_only() -> None:
    found = scale(ON_PIVOT)
    assert found.kind == "pivot"
    assert found.lightest_g == 0
    # Both plates of a pair can stand on the one end: twice 2·25 and so on, 127.5·2 kg in all.
    pairs = sum(float(str(p["mass"]).removesuffix(" kg")) * p["pairs"] for p in KG_PLATES)
    assert found.heaviest_g == round(2000 * pairs)
    step = found.best(27_000)
    assert step is not None
    assert (step.grams, step.parts) == (26_250, (25_000, 1_250))


def test_the_sleeve_and_the_limit_of_the_bar_bound_it() -> None:
    rows = [{"mass": "20 kg", "pairs": 4, "thickness": "54 mm"}]
    short = {"bar": {"name": "bar", "mass": "20 kg", "sleeve": "12 cm"}}
    weak = {"bar": {"name": "bar", "mass": "20 kg", "limit": "75 kg"}}
    assert scale(ON_PIVOT, plates=rows, bars=short).heaviest_g == 40_000  # 2·54 ≤ 120 < 3·54 mm
    assert scale(ON_PIVOT, plates=rows, bars=weak).heaviest_g == 40_000  # 75 − 20 = 55 kg


def test_a_sled_weighs_something_itself() -> None:
    carriers = {"sled": {"name": "sled", "mass": "22 kg", "limit": "60 kg"}}
    found = scale({"kind": "carrier", "carrier": "sled"}, carriers=carriers)
    assert (found.lightest_g, found.heaviest_g) == (22_000, 59_500)
    assert found.best(21_999) is None
    step = found.best(40_000)
    assert step is not None
    assert (step.grams, step.parts) == (39_500, (15_000, 2_500))


def test_one_plate_on_the_back() -> None:
    found = scale({"kind": "push-up", "plate-limit": "15 kg"})
    assert [step.grams for step in found.steps] == [0, 1_250, 2_500, 5_000, 10_000, 15_000]


def test_the_kind_is_read_with_its_reach() -> None:
    adapter: TypeAdapter[Loading] = TypeAdapter(Loading)
    load = adapter.validate_python(ON_PIVOT)
    assert isinstance(load, OnPivot)
    assert load.reach.grip == 2.15
