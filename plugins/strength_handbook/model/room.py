"""The room: the equipment that is really there, with counts, and the emergency panel."""

from typing import Annotated, Literal, TypeVar

from pydantic import AfterValidator, Field, StringConstraints, model_validator

from strength_handbook.model.marks import Compared, Label, NamesThings, NotCompared
from strength_handbook.model.masses import Masses, Number, Weight
from strength_handbook.model.paper import A4, LETTER, PAPERS, Paper
from strength_handbook.model.plain import DECIMAL, WHOLE, Name, within
from strength_handbook.model.quantities import Mass, MassText, Metres, read_length
from strength_handbook.model.resistance import Band, Chain, Pivot
from strength_handbook.model.shape import Id, Shape, refuse
from strength_handbook.model.weeks import DateText

MOST_PAIRS = 40
"""Most pairs of plates at a rack."""
MOST_LOADS = 5000
"""Most different sums of the plates at a rack. A full set with quarter-kilo plates has 1600."""
MOST_SEARCHED_G = 1_000_000
"""Sums above this are no load."""


class Thing(Shape):
    """Anything with a name and a count."""

    name: Annotated[Name, Label("the name of a thing")]
    """What members call it."""
    count: Number = 1
    """How many the room has."""
    note: Name | None = None
    """One line shown on the room page."""


class Inspected(Thing):
    """A thing that is looked over from time to time."""

    until: DateText | None = None
    """The day by which it is looked over again, or thrown away."""


class Kit(Inspected):
    """A thing without any load of its own: a box, a mat, a place to hang."""

    fixed: bool = False
    """It stays where it is, such as a rig or a free floor: nobody puts it out or away."""
    height: Annotated[Metres, within(read_length, "5 cm", "1.5 m")] | None = None
    """Of a box: a dose such as `4x3, box 40 cm` then takes the box of that height."""
    band_pegs: Annotated[int, Field(ge=0, le=20), WHOLE] = 0
    """Of a platform or a frame: pegs that are rated for bands, by its maker's word."""


class Bar(Thing):
    """A bar or a plate-loaded handle: plates go on both ends."""

    mass: Annotated[MassText, within(Mass.parse, "0.5 kg", "100 kg")]
    """Without collars."""
    sleeve: Annotated[Metres, within(read_length, "1 cm", "1 m")] | None = None
    """Length of one sleeve as far as plates may stand on it: measure it, and take off what the
    outer collar needs, about 5 cm. Leave it out where it never runs short."""
    between_collars: Annotated[Metres, within(read_length, "10 cm", "3 m")] | None = None
    """Distance between the inner collars, for the tip check."""
    collar: Annotated[MassText, within(Mass.parse, "0 kg", "10 kg")] = Mass(0)
    """Mass of one outer collar, if it counts."""
    limit: MassText | None = None
    """The maker's limit for everything on the bar, bar included."""

    @model_validator(mode="after")
    def _carries_itself(self) -> "Bar":
        if self.limit is not None and self.limit.grams < self.mass.grams:
            raise refuse("range", f"the limit is below the bar's own mass, {self.mass.label}")
        return self


class Plate(Shape):
    """Plates of one size at each rack, by pairs."""

    mass: Annotated[MassText, within(Mass.parse, "50 g", "100 kg"), Compared("room")]
    """Mass of one plate."""
    pairs: Annotated[int, Field(ge=0, le=20), WHOLE, Compared("room")]
    """Pairs at each rack."""
    thickness: Annotated[Metres, within(read_length, "0 mm", "20 cm")] = 0.0
    """Thickness of one plate."""


class Rack(Inspected):
    """A rack with hooks and safeties."""

    hook_spacing: Annotated[Metres, within(read_length, "30 cm", "2 m")]
    """Distance between the centres of the two hooks; measure it inside, not outside."""
    hole_spacing: Annotated[Metres, within(read_length, "1 cm", "50 cm")] | None = None
    """Distance from hole to hole."""
    holes: Annotated[int, Field(ge=1, le=100), WHOLE] | None = None
    """How many numbered holes."""
    bolted: bool = False
    """Fixed to the floor."""
    unload: Literal["alternate", "one-side"] = "alternate"
    """How bars are stripped here: changing sides after each plate, or one side bare first."""
    plate_sets: Annotated[int, Field(ge=0, le=4), WHOLE] = 1
    """How many sets of the room's `plates` stand at each of these racks."""
    band_pegs: Annotated[int, Field(ge=0, le=20), WHOLE] = 0
    """How many pegs of each are rated for bands, by the maker's word. A lift with bands on the bar
    takes a place with two of them."""


class HandWeights(Shape):
    """Things held in the hand with a fixed mass: dumbbells, kettlebells, sandbags."""

    name: Annotated[Name, Label("the name of a thing")]
    """What members call one of them."""
    masses: list[Masses] = Field(min_length=1, max_length=40)
    """Which of them exist."""
    note: Name | None = None


class Carrier(Inspected):
    """Something plates hang on or lie in: a chin-up belt, a pack, a sled."""

    mass: MassText = Mass(0)
    """Its own mass, where it counts."""
    limit: MassText | None = None
    """The most it may carry."""


class Stack(Inspected):
    """A cable stack with pins."""

    pins: Masses
    """What the pin can lift: from, to and by."""
    add_on: Weight | None = None
    """A small extra weight that may be laid on, once."""
    ratio: Annotated[float, Field(ge=0.25, le=8), DECIMAL] = 1.0
    """How many times slower than the handle the stack moves: 2 for a two-to-one pulley."""


Setting = Annotated[float, Field(ge=0, le=10_000), DECIMAL]


class Machine(Inspected):
    """A machine with a scale of its own that is no kilogram."""

    unit: Name = "units"
    """What its display counts."""
    from_: Setting = 0
    """Its lowest setting,"""
    to: Setting = 100
    """its highest,"""
    by: Annotated[float, Field(gt=0, le=1000), DECIMAL] = 1
    """and the step between."""

    @model_validator(mode="after")
    def _row(self) -> "Machine":
        if self.to < self.from_:
            raise refuse("range", "the settings must go up: write 'from' below 'to'")
        if (self.to - self.from_) / self.by > 1000:
            raise refuse("range", "this machine has more than 1000 settings; check 'by'")
        return self


class Lane(Thing):
    """A strip of floor for carries and sleds."""

    length: Annotated[Metres, within(read_length, "1 m", "1000 m")]
    """How far it goes before you turn."""
    width: Annotated[Metres, within(read_length, "10 cm", "100 m")] | None = None
    """How wide it is; leave out where only one thing moves on it at a time."""
    run_out: Annotated[Metres, within(read_length, "0 m", "50 m")] | None = None
    """Free floor beyond its end, to stop in."""


Line = Annotated[str, StringConstraints(min_length=1, max_length=300)]


class Emergency(Shape):
    """What stands on the emergency panel of every session page."""

    number: Annotated[Name, Label("a telephone number")]
    """The emergency number."""
    address: Annotated[Line, NamesThings("an address", place=True)]
    """Where the ambulance has to come."""
    entrance: Annotated[Line, NamesThings("doors and yards have names", place=True)]
    """Which door, and who opens it."""
    defibrillator: Line
    """Where it hangs."""
    first_aid: Line
    """Where the first-aid box is."""
    phone: Line
    """Where a phone is that always works."""
    eye_wash: Line | None = None
    ice: Line | None = None
    roles: list[Line] = Field(min_length=1, max_length=12)
    """Who does what: one line each."""
    after_hours: Line | None = None
    lone_training: Line | None = None
    """What is allowed alone, and how to sign in and out."""
    nobody_alone: bool = False
    """Nobody trains alone here: every page then says so, whatever exercises say of it."""


def _few_loads(plates: list[Plate]) -> list[Plate]:
    """Refuse so many plates, or plates of such odd masses, that their sums can't be searched.

    Bit `n` of `sums` is set where some of the plates weigh `n` grams together.
    """
    pairs = sum(plate.pairs for plate in plates)
    if pairs > MOST_PAIRS:
        raise refuse("too-many", f"there are {pairs} pairs here; the most is {MOST_PAIRS}")
    sums, limit = 1, (1 << MOST_SEARCHED_G + 1) - 1
    for plate in plates:
        left, group = plate.pairs * 2, 1
        while left:
            group = min(group, left)
            sums |= sums << group * plate.mass.grams & limit
            left -= group
            group *= 2
    if sums.bit_count() > MOST_LOADS:
        raise refuse(
            "too-many",
            f"these plates make more than {MOST_LOADS} different loads; list only those that are "
            "used together, kg or lb",
        )
    return plates


Plates = Annotated[list[Plate], Field(max_length=24), AfterValidator(_few_loads)]
T = TypeVar("T")
Section = Annotated[dict[Id, T], Field(max_length=40)]


class Room(Shape):
    """A gym's room."""

    gym: Annotated[Name, Label("the name of a place", place=True), Compared("room")]
    """The gym's name."""
    group: Annotated[Annotated[Name, Label("the name of a group")] | None, Compared("room")] = None
    """Who trains here in this program."""
    units: Annotated[Literal["kg", "lb"], Compared("units")] = "kg"
    """The unit that pages print."""
    paper: Annotated[
        Literal["A4", "letter"] | None, NotCompared("the same words on other sheets")
    ] = None
    """What the printer takes: A4, or US Letter. Without it a gym that counts in pounds prints on
    Letter, any other on A4; cards for the stations take half of it."""
    bars: Annotated[dict[Id, Bar], Compared("room")] = Field(default_factory=dict, max_length=20)
    plates: Annotated[Plates, Compared("room")] = Field(default_factory=list)
    """At each rack."""
    loose_plates: Annotated[list[Plate], Compared("room")] = Field(
        default_factory=list, max_length=24
    )
    """In the room once, for whoever needs them; loads do not count on them."""
    racks: Annotated[Section[Rack], Compared("room")] = Field(default_factory=dict)
    hand_weights: Annotated[Section[HandWeights], Compared("room")] = Field(default_factory=dict)
    carriers: Annotated[Section[Carrier], Compared("room")] = Field(default_factory=dict)
    stacks: Annotated[Section[Stack], Compared("room")] = Field(default_factory=dict)
    machines: Annotated[Section[Machine], Compared("room")] = Field(default_factory=dict)
    lanes: Annotated[Section[Lane], Compared("room")] = Field(default_factory=dict)
    bands: Annotated[dict[Id, Band], Compared("room")] = Field(default_factory=dict, max_length=100)
    """Each band with a number of its own: two of one width rarely pull alike."""
    chains: Annotated[Section[Chain], Compared("room")] = Field(default_factory=dict)
    pivots: Annotated[Section[Pivot], Compared("room")] = Field(default_factory=dict)
    """Joints for the end of a bar."""
    kit: Annotated[dict[Id, Kit], Compared("room")] = Field(default_factory=dict, max_length=200)
    """Everything else: benches, boxes, mats, rigs."""
    emergency: Annotated[Emergency, Compared("room")]
    """What stands on the emergency panel."""

    def printed_on(self) -> Paper:
        """The paper: what is written, or what goes with the units."""
        if self.paper is not None:
            return PAPERS[self.paper]
        return LETTER if self.units == "lb" else A4

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
            self.chains,
            self.pivots,
            self.kit,
        ):
            found.update({key: thing.name for key, thing in group.items()})
        found.update({key: f"band {key}" for key in self.bands})
        return found
