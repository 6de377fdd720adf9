"""Number-only profiles of lifters, with which the pages show examples."""

from typing import Annotated

from pydantic import Field

from strength_handbook.model.marks import Compared, NotProse
from strength_handbook.model.masses import Weight
from strength_handbook.model.quantities import BodyMass
from strength_handbook.model.shape import Id, Shape

Profile = Annotated[
    str, Field(pattern=r"^P[1-9][0-9]?$"), NotProse("P1, P2 and so on, never a name")
]


class Lifter(Shape):
    """Numbers only, never a name."""

    bodyweight: Annotated[BodyMass, Compared("bodyweight_kg")]
    """Body mass, with its unit."""
    bases: Annotated[dict[Id, Weight], Compared("bases")] = Field(
        default_factory=dict, max_length=40
    )
    """Tested values, by the name of the base."""


class Lifters(Shape):
    """`lifters.yml`: number-only profiles that the pages use as examples."""

    lifters: dict[Profile, Lifter] = Field(default_factory=dict, max_length=12)
