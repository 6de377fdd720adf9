"""The room: the equipment that is really there, with counts, and the emergency panel."""

from typing import Annotated, Literal

from pydantic import Field, StringConstraints, model_validator

from strength_handbook.model.quantities import Mass, MassText, Metres
from strength_handbook.model.shape import Shape, refuse

Id = Annotated[str, StringConstraints(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=60)]
"""A short name for references: small letters, digits and hyphens."""

Number = Annotated[int, Field(ge=0, le=1000)]


class Thing(Shape):
    """Anything with a name and a count."""

    name: str
    """What members call it."""
    count: Number = 1
    """How many the room has."""
    note: str | None = None
    """One line shown on the room page."""


class Bar(Thing):
    """A bar or a plate-loaded handle: plates go on both ends."""

    mass: MassText
    """Without collars."""
    sleeve: Metres | None = Field(default=None, gt=0, le=1)
    """Length for plates on one side; leave out where it never runs short."""
    between_collars: Metres | None = Field(default=None, gt=0, le=3)
    """Distance between the inner collars, for the tip check."""
    collar: MassText = Mass(0)
    """Mass of one outer collar, if it counts."""
    limit: MassText | None = None
    """The maker's limit for everything on the bar, bar included."""


class Plate(Shape):
    """Plates of one size at each rack, by pairs."""

    mass: MassText
    pairs: int = Field(ge=0, le=100)
    """Pairs at each rack."""
    thickness: Metres = Field(default=0.0, ge=0, le=0.2)
    """Thickness of one plate."""


class Rack(Thing):
    """A rack with hooks and safeties."""

    hook_spacing: Metres = Field(gt=0.3, le=2)
    """Distance between the centres of the two hooks; measure it inside, not outside."""
    hole_spacing: Metres | None = Field(default=None, gt=0, le=0.5)
    """Distance from hole to hole."""
    holes: int | None = Field(default=None, ge=1, le=100)
    """How many numbered holes."""
    bolted: bool = False
    """Fixed to the floor."""


class Masses(Shape):
    """Fixed masses that exist: one mass, or a row of them."""

    mass: MassText | None = None
    """One mass …"""
    from_: MassText | None = None
    """… or the lightest of a row"""
    to: MassText | None = None
    """… its heaviest"""
    by: MassText | None = None
    """… and the step between."""
    count: Number = 2
    """How many of each: two make a pair."""

    @model_validator(mode="after")
    def _one_or_row(self) -> "Masses":
        row = (self.from_, self.to, self.by)
        if self.mass is not None and row == (None, None, None):
            return self
        if self.mass is None and self.from_ and self.to and self.by:
            if self.by.grams <= 0 or self.to.grams < self.from_.grams:
                raise refuse(
                    "range", "the row must go up: write from, to and by like 4 kg, 36 kg, 2 kg"
                )
            if (self.to.grams - self.from_.grams) // self.by.grams > 200:
                raise refuse("range", "this row has more than 200 masses; check 'by'")
            return self
        raise refuse("masses", "write either 'mass', or 'from', 'to' and 'by'")

    def each(self) -> tuple[Mass, ...]:
        """Every mass of the row, lightest first."""
        if self.mass is not None:
            return (self.mass,)
        if self.from_ is None or self.to is None or self.by is None:  # refused when read
            return ()
        # A row in pounds is stepped in pounds: whole grams would drift by half a gram a step.
        start, stop, step = self.from_.grams, self.to.grams, self.by.grams
        count = round((stop - start) / step)
        return tuple(
            Mass(round(start + (stop - start) * i / count) if count else start, self.from_.unit)
            for i in range(count + 1)
        )


class HandWeights(Shape):
    """Things held in the hand with a fixed mass: dumbbells, kettlebells, sandbags."""

    name: str
    """What members call one of them."""
    masses: list[Masses] = Field(min_length=1)
    note: str | None = None


class Carrier(Thing):
    """Something plates hang on or lie in: a chin-up belt, a pack, a sled."""

    mass: MassText = Mass(0)
    """Its own mass, where it counts."""
    limit: MassText | None = None
    """The most it may carry."""


class Stack(Thing):
    """A cable stack with pins."""

    pins: Masses
    add_on: MassText | None = None
    """A small extra weight that may be laid on, once."""
    ratio: float = Field(default=1.0, ge=0.25, le=8)
    """Stack moves this many times slower than the handle: 2 for a two-to-one pulley."""


class Machine(Thing):
    """A machine with a scale of its own that is no kilogram."""

    unit: str = "units"
    """What its display counts."""
    from_: float = 0
    to: float = 100
    by: float = Field(default=1, gt=0)


class Lane(Thing):
    """A strip of floor for carries and sleds."""

    length: Metres = Field(gt=0, le=1000)
    width: Metres | None = Field(default=None, gt=0, le=100)


class Emergency(Shape):
    """What stands on the emergency panel of every session page."""

    number: str
    """The emergency number."""
    address: str
    """Where the ambulance has to come."""
    entrance: str
    """Which door, and who opens it."""
    defibrillator: str
    first_aid: str
    phone: str
    """Where a phone is that always works."""
    eye_wash: str | None = None
    ice: str | None = None
    roles: list[str] = Field(min_length=1)
    """Who does what: one line each."""
    after_hours: str | None = None
    lone_training: str | None = None
    """What is allowed alone, and how to sign in and out."""


class Room(Shape):
    """A gym's room."""

    gym: str
    """The gym's name."""
    group: str | None = None
    """Who trains here in this program."""
    units: Literal["kg", "lb"] = "kg"
    """The unit that pages print."""
    bars: dict[Id, Bar] = Field(default_factory=dict)
    plates: list[Plate] = Field(default_factory=list)
    """At each rack."""
    loose_plates: list[Plate] = Field(default_factory=list)
    """In the room once, for whoever needs them; loads do not count on them."""
    racks: dict[Id, Rack] = Field(default_factory=dict)
    hand_weights: dict[Id, HandWeights] = Field(default_factory=dict)
    carriers: dict[Id, Carrier] = Field(default_factory=dict)
    stacks: dict[Id, Stack] = Field(default_factory=dict)
    machines: dict[Id, Machine] = Field(default_factory=dict)
    lanes: dict[Id, Lane] = Field(default_factory=dict)
    kit: dict[Id, Thing] = Field(default_factory=dict)
    """Everything else: benches, boxes, mats, rigs."""
    emergency: Emergency

    def names(self) -> dict[str, str]:
        """Name of every thing in the room by its id."""
        found: dict[str, str] = {}
        for group in (
            self.bars,
            self.racks,
            self.hand_weights,
            self.carriers,
            self.stacks,
            self.machines,
            self.lanes,
            self.kit,
        ):
            found.update({key: thing.name for key, thing in group.items()})
        return found
