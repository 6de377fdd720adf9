"""Things whose load changes on the way: bands, chains, and bars on a pivot."""

from itertools import pairwise
from typing import Annotated, Any

from pydantic import (
    AfterValidator,
    BeforeValidator,
    SkipValidation,
    WithJsonSchema,
    model_validator,
)

from strength_handbook.model.marks import Label
from strength_handbook.model.masses import Number, Weight
from strength_handbook.model.plain import Name, within
from strength_handbook.model.quantities import (
    Mass,
    MassText,
    Metres,
    read_length,
    read_mass,
)
from strength_handbook.model.samples import sample
from strength_handbook.model.shape import Shape, refuse
from strength_handbook.model.weeks import DateText

Height = Annotated[Metres, within(read_length, "0 cm", "3 m")]


def _read_pulls(value: Any) -> Any:
    """Heights are the keys of the mapping; they become numbers in metres here."""
    if not isinstance(value, dict):
        raise refuse("pulls", sample("write readings as height: pull, such as '30 cm: 3 kg'"))
    found: dict[float, Mass] = {}
    for height, pull in value.items():
        metres = read_length(str(height))
        if metres in found:
            raise refuse("pulls", f"the height {height} is read twice; keep one")
        found[metres] = read_mass(pull)
    return dict(sorted(found.items()))


def _rising(pulls: dict[float, Mass]) -> dict[float, Mass]:
    if not 2 <= len(pulls) <= 6:
        raise refuse("pulls", "give two to six readings; three are enough for most bands")
    masses = [mass.grams for mass in pulls.values()]
    if any(later < earlier for earlier, later in pairwise(masses)):
        raise refuse("pulls", "a band pulls more the higher the bar; check the readings")
    return pulls


Pulls = Annotated[
    dict[Annotated[float, SkipValidation], Mass],
    BeforeValidator(_read_pulls),
    AfterValidator(_rising),
    WithJsonSchema(
        {
            "type": "object",
            "additionalProperties": {"type": "string"},
            "examples": [{"30 cm": "3 kg", "60 cm": "7 kg", "90 cm": "10 kg"}],
        }
    ),
]
"""Pull of one band by the height of the bar, as read with a scale in place."""


class Band(Shape):
    """One band with a number of its own."""

    width: Annotated[Metres, within(read_length, "3 mm", "15 cm")] | None = None
    pulls: Pulls | None = None
    """Readings between peg and bar, on one side."""
    help: Weight | None = None
    """What it takes off a body-weight lift, read at the bottom with a scale in the loop."""
    until: DateText | None = None
    """The day it is thrown away, by the maker's word or the house's."""
    note: Name | None = None


class Chain(Shape):
    """Chains that are all alike."""

    name: Annotated[Name, Label("the name of a thing")]
    pairs: Number = 1
    """How many pairs the room has."""
    mass_per_metre: Annotated[MassText, within(Mass.parse, "100 g", "50 kg")]
    """One strand. Weigh it: tables of chain mass often give a pair."""
    length: Annotated[Metres, within(read_length, "20 cm", "5 m")]
    leader: Annotated[Metres, within(read_length, "0 cm", "1.5 m")] = 0.0
    """From the bar down to the first link that counts."""
    until: DateText | None = None
    """When it is looked over next."""
    note: Name | None = None


class Pivot(Shape):
    """A joint for the end of a bar."""

    name: Annotated[Name, Label("the name of a thing")]
    count: Number = 1
    offset: Annotated[Metres, within(read_length, "0 cm", "20 cm")] = 0.0
    """From the joint to the end of the bar."""
    height: Annotated[Metres, within(read_length, "0 cm", "60 cm")] = 0.0
    """Of the joint above the floor."""
    until: DateText | None = None
    """When it is looked over next."""
    note: Name | None = None


class Travel(Shape):
    """Height of the bar at the bottom and at the top of a lift, measured once with a tape."""

    bottom: Height
    top: Height

    @model_validator(mode="after")
    def _upwards(self) -> "Travel":
        if self.top <= self.bottom:
            raise refuse("range", "the top must be above the bottom; check the two heights")
        return self


class Reach(Shape):
    """Where the hands are on a bar with a pivot."""

    grip: Annotated[Metres, within(read_length, "50 cm", "2.5 m")]
    """From the pivot end of the bar to the hands."""
    bottom: Height
    """Height of the hands at the bottom of the lift,"""
    top: Height
    """and at the top."""
