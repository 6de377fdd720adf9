"""What a bar and its plates are to the lever formulas: masses, lengths, places along the bar."""

from collections.abc import Sequence
from dataclasses import dataclass

from strength_handbook.calc.registry import Evidence, formula


@dataclass(frozen=True, slots=True)
class PlateShape:
    """One plate.

    Attributes:
        mass: kg.
        thickness: m, along the bar.
    """

    mass: float
    thickness: float

    def __post_init__(self) -> None:
        if self.mass <= 0 or self.thickness <= 0:
            raise ValueError(f"a plate has a mass and a thickness above 0, not {self}")


@dataclass(frozen=True, slots=True)
class BarShape:
    """A straight bar, alike on both sides; its mass centre is in the middle.

    The defaults are the 20 kg weightlifting bar (International Weightlifting Federation, Technical
    and Competition Rules & Regulations, 3.3); the 30 mm inner collar closes the sum of the lengths:
    1.310 + 2 × 0.030 + 2 × 0.415 = 2.200 m.

    Attributes:
        mass: kg.
        length: m, over all.
        between_collars: m, free length between the two inner collars.
        inner_collar: m, width of one inner collar.
    """

    mass: float = 20.0
    length: float = 2.20
    between_collars: float = 1.31
    inner_collar: float = 0.030

    def __post_init__(self) -> None:
        if self.mass <= 0 or self.between_collars <= 0 or self.inner_collar < 0:
            raise ValueError(f"a bar has masses and lengths above 0, not {self}")
        if self.sleeve_start >= self.length / 2:
            raise ValueError(f"a bar of {self.length:g} m leaves no room for sleeves: {self}")

    @property
    def sleeve_start(self) -> float:
        """Distance in m from the middle of the bar to the face the first plate rests against."""
        return self.between_collars / 2 + self.inner_collar


@formula(
    subject="Bar and plates",
    title="Where the plates sit along the bar",
    equation="d₁ = w/2 + c + t₁/2;  dᵢ = dᵢ₋₁ + tᵢ₋₁/2 + tᵢ/2",
    inputs={
        "bar": "w = distance between the collars, m; c = width of the inner collar, m",
        "plates": "t = thickness of each plate, inner to outer, m",
    },
    output="d, distance of each plate's middle from the middle of the bar, m",
    source="geometry",
    evidence=Evidence.ARITHMETIC,
)
def plate_centres(bar: BarShape, plates: Sequence[PlateShape]) -> tuple[float, ...]:
    """Distance of each plate's centre from the middle of the bar, in m.

    Args:
        bar: the bar.
        plates: the plates of one side, from the collar outwards.

    Example:
        >>> plate_centres(BarShape(), [PlateShape(25, 0.060), PlateShape(20, 0.050)])
        (0.715, 0.77)
    """
    face = bar.sleeve_start
    centres = []
    for plate in plates:
        centres.append(face + plate.thickness / 2)
        face += plate.thickness
    return tuple(centres)
