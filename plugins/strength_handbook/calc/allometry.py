"""Strength of people of different size: scaling with a power of body mass.

The number is an exponent. Twice the body mass means 2^0.67 = 1.59 times the external force, not
1.34 times.
"""

from enum import Enum

from strength_handbook.calc.registry import Evidence, formula

_SUBJECT = "Body size"
_SOURCE = (
    "Marković and Jarić 2004. Eur J Appl Physiol 92:139–149; "
    "after Jaric 2002. Sports Med 32(10):615–631"
)
_MASS_RANGE_KG = (20.0, 300.0)


class StrengthTask(Enum):
    """Kind of task, with the exponent of body mass."""

    EXTERNAL_FORCE = 0.67
    RAPID_MOVEMENT = 0.0
    SUPPORTING_BODY_WEIGHT = 0.33

    @property
    def mass_exponent(self) -> float:
        """Exponent of body mass."""
        return self.value


@formula(
    subject=_SUBJECT,
    title="Strength expected at another body weight",
    equation="P₂ = P₁ × (m₂ ÷ m₁)^b",
    inputs={
        "performance": "P₁ = result at the known body weight, any unit",
        "from_mass_kg": "m₁ = known body weight, kg",
        "to_mass_kg": "m₂ = other body weight, kg",
        "power": "b = exponent, 0.67 for force on an outside load, 0 for fast movement, 0.33 for "
        "holding up one's own body",
    },
    output="P₂, same unit as the result",
    ranges={"from_mass_kg": _MASS_RANGE_KG, "to_mass_kg": _MASS_RANGE_KG},
    source=_SOURCE,
    evidence=Evidence.PUBLISHED,
    error="For people of similar build; added fat brings no strength.",
)
def scale_strength(
    performance: float,
    from_mass_kg: float,
    to_mass_kg: float,
    power: float = StrengthTask.EXTERNAL_FORCE.mass_exponent,
) -> float:
    """Performance of a person of `to_mass_kg` as strong, for the size, as one of `from_mass_kg`.

    >>> scale_strength(100, 60, 120)
    159.1
    """
    return float(performance * (to_mass_kg / from_mass_kg) ** power)
