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
_MASS_RANGE_KG = (20.0, 250.0)


class StrengthTask(Enum):
    """Kind of task, with the exponents of body mass and of body height."""

    EXTERNAL_FORCE = (0.67, 2.0)
    RAPID_MOVEMENT = (0.0, 0.0)
    SUPPORTING_BODY_WEIGHT = (0.33, 1.0)

    @property
    def mass_exponent(self) -> float:
        """Exponent of body mass."""
        return self.value[0]

    @property
    def height_exponent(self) -> float:
        """Exponent of body height."""
        return self.value[1]


@formula(
    subject=_SUBJECT,
    title="Strength with body weight taken out",
    equation="result = P ÷ m^b;  b = 0.67 force on an outside load, 0 fast movement, 0.33 "
    "holding up one's own body",
    inputs={
        "performance": "P = result of the test, any unit",
        "body_mass_kg": "m = body weight, kg",
        "task": "b = exponent, by kind of task",
    },
    output="result per kg^b, to compare people of different size",
    ranges={"body_mass_kg": _MASS_RANGE_KG},
    source=_SOURCE,
    evidence=Evidence.PUBLISHED,
    error="77 men, 18 tests. Above 20 % body fat the exponent for force is nearer 0.45 "
    "(Folland 2008).",
)
def markovic_jaric_2004(performance: float, body_mass_kg: float, task: StrengthTask) -> float:
    """Performance normalised for body mass: comparable between people of different size.

    >>> markovic_jaric_2004(140, 70, StrengthTask.EXTERNAL_FORCE)
    8.13
    """
    return float(performance / body_mass_kg**task.mass_exponent)


@formula(
    subject=_SUBJECT,
    title="Strength expected at another body weight",
    equation="P₂ = P₁ × (m₂ ÷ m₁)^b",
    inputs={
        "performance": "P₁ = result at the known body weight, any unit",
        "from_mass_kg": "m₁ = known body weight, kg",
        "to_mass_kg": "m₂ = other body weight, kg",
        "task": "b = exponent, 0.67 for force on an outside load, 0 for fast movement, 0.33 for "
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
    task: StrengthTask = StrengthTask.EXTERNAL_FORCE,
) -> float:
    """Performance of a person of `to_mass_kg` as strong, for the size, as one of `from_mass_kg`.

    >>> scale_strength(100, 60, 120)
    159.1
    """
    return float(performance * (to_mass_kg / from_mass_kg) ** task.mass_exponent)


@formula(
    subject=_SUBJECT,
    title="Strength with height taken out",
    equation="result = P ÷ h^b;  b = 2 force on an outside load, 0 fast movement, 1 holding up "
    "one's own body",
    inputs={
        "performance": "P = result of the test, any unit",
        "height_m": "h = height of the person, m",
        "task": "b = exponent, by kind of task",
    },
    output="result per m^b, to compare people of different height",
    ranges={"height_m": (1.0, 2.5)},
    source=_SOURCE,
    evidence=Evidence.PUBLISHED,
    error="77 men, 18 tests.",
)
def normalise_for_height(performance: float, height_m: float, task: StrengthTask) -> float:
    """Performance normalised for body height.

    >>> normalise_for_height(140, 1.75, StrengthTask.EXTERNAL_FORCE)
    45.71
    """
    return float(performance / height_m**task.height_exponent)
