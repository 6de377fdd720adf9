import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.barbell import BarShape, PlateShape, plate_centres

# IWF Technical and Competition Rules & Regulations, 3.3: overall length, sleeve length, 1310 mm
# between the collars of both bars; the 30 mm inner collar closes the sums.
MEN = BarShape()
WOMEN = BarShape(mass=15.0, length=2.010)


@pytest.mark.parametrize(("bar", "sleeve"), [(MEN, 0.415), (WOMEN, 0.320)])
def test_sleeve_is_what_collars_leave_of_the_bar(bar: BarShape, sleeve: float) -> None:
    assert bar.length / 2 - bar.sleeve_start == pytest.approx(sleeve, abs=1e-9)


def test_masses_of_the_two_bars() -> None:
    # IWF Technical and Competition Rules & Regulations, 3.3: men's bar 20 kg, women's 15 kg.
    assert (MEN.mass, WOMEN.mass) == (20, 15)


def test_plates_are_pushed_together_outwards() -> None:
    plates = (PlateShape(25, 0.060), PlateShape(25, 0.060), PlateShape(5, 0.020))
    # By hand from 655 + 30 mm.
    assert plate_centres(MEN, plates) == pytest.approx((0.715, 0.775, 0.815), abs=1e-12)


@given(st.lists(st.floats(0.005, 0.10), min_size=1, max_size=6))
def test_neighbours_touch(thicknesses: list[float]) -> None:
    plates = [PlateShape(1, t) for t in thicknesses]
    centres = plate_centres(MEN, plates)
    assert centres[0] - plates[0].thickness / 2 == pytest.approx(MEN.sleeve_start)
    for i in range(1, len(plates)):
        gap = centres[i] - centres[i - 1]
        assert gap == pytest.approx((plates[i - 1].thickness + plates[i].thickness) / 2)


@pytest.mark.parametrize("mass_and_thickness", [(0, 0.03), (-5, 0.03), (5, 0), (5, -0.01)])
def test_impossible_plates_are_refused(mass_and_thickness: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="above 0"):
        PlateShape(*mass_and_thickness)


def test_impossible_bars_are_refused() -> None:
    with pytest.raises(ValueError, match="above 0"):
        BarShape(mass=0)
    for collars in ({"between_collars": 0.0}, {"inner_collar": -0.01}):
        with pytest.raises(ValueError, match="above 0"):
            BarShape(**collars)
    with pytest.raises(ValueError, match="no room for sleeves"):
        BarShape(length=1.30)
    with pytest.raises(ValueError, match="no room for sleeves"):
        BarShape(length=2.0, between_collars=1.9, inner_collar=0.05)  # sleeves of no length at all


def test_a_stick_without_collars_is_a_bar() -> None:
    stick = BarShape(mass=0.5, length=1.2, between_collars=0.9, inner_collar=0.0)
    assert plate_centres(stick, [PlateShape(0.5, 0.02)]) == pytest.approx((0.46,))
