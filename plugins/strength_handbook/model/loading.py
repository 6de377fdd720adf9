"""How an exercise is loaded: on a bar, in the hands, on a belt, on a stack, or not at all.

Each kind says with which thing of the room, and what its table by body weight is made from.
"""

from typing import Annotated, Literal

from pydantic import Field, model_validator

from strength_handbook.model.going import Activity, Going, PaceText, Per, too_odd, usual
from strength_handbook.model.plain import DECIMAL, WHOLE, Name, within
from strength_handbook.model.quantities import (
    BodyMass,
    Degrees,
    MassText,
    Metres,
    Percent,
    Share,
    read_angle,
    read_length,
    read_percent,
)
from strength_handbook.model.resistance import Reach, Travel
from strength_handbook.model.shape import Id, Shape, refuse

FORCE_EXPONENT = 0.67
"""Strength against an outside load grows with body mass to this power (Jaric 2002)."""

Multiple = Annotated[float, Field(gt=0, le=5), DECIMAL]
BodyShare = Annotated[Percent, within(read_percent, "1 %", "150 %")]
Columns = Annotated[list[Share], Field(max_length=6)]
"""Columns of a table: six fit on the narrowest phone."""


class Start(Shape):
    """Where somebody without a tested value begins, as the coach sees it."""

    shares: dict[Name, Share] = Field(min_length=1, max_length=5)
    """Names of the coach's choosing, each with a share of body mass at the stated body mass."""
    at: BodyMass
    """The body mass for which the shares hold."""
    power: Annotated[float, Field(ge=0, le=1), DECIMAL] = FORCE_EXPONENT
    """How the load grows with body mass: 0.67 where it moves an outside load, 1 in proportion."""


class _Loading(Shape):
    start: Start | None = None
    """Starting loads for those who have not been tested."""
    rounding: Literal["down", "nearest", "up"] = "down"
    """Which achievable load to take; `down` never goes above the plan."""


class OnBar(_Loading):
    """Plates on both ends of a bar, or of a handle in each hand."""

    kind: Literal["bar"]
    bar: Id
    """Which bar of the room."""
    hands: Literal[1, 2] | None = None
    """For plate-loaded handles: how many are carried at once. The load is then per hand."""
    base: Id | None = None
    """The tested value that percentages refer to, unless the slot names another."""
    multiples: list[Multiple] = Field(
        default=[0.5, 0.75, 1, 1.25, 1.5, 2], min_length=1, max_length=6
    )
    """Columns of the table by body weight: base as a multiple of body weight."""
    body_mass_shares: Columns = Field(default_factory=list)
    """For carries: columns of the table, percent of body mass per hand."""
    rack: Id | None = None
    """The rack it starts from, for the tip check."""
    travel: Travel | None = None
    """Heights of the bar at the bottom and at the top, for bands and chains."""
    chains: Id | None = None
    """Which chains of the room hang from it."""


class InHands(_Loading):
    """Dumbbells, kettlebells or other fixed masses."""

    kind: Literal["hands"]
    weight: Id
    """Which hand weight of the room."""
    hands: Literal[1, 2]
    """One weight, or one in each hand. The load is that of one."""
    held: Literal["one-hand", "both-hands", "both-arms"] | None = None
    """How one weight is held: `one-hand`, `both-hands` or `both-arms`. Left out: in one hand where
    the sides are done in turn, otherwise in both hands."""
    base: Id | None = None
    body_mass_shares: Columns = Field(default_factory=list)
    """For carries: columns of the table, percent of body mass per hand."""


class BodyWeightLift(_Loading):
    """The body, with plates hung on or with help."""

    kind: Literal["body-weight"]
    share: BodyShare = 100.0
    """How much of the body is moved."""
    share_source: Name = "common practice, no source"
    """Where that share comes from."""
    carrier: Id | None = None
    """What added plates hang on or lie in."""
    help: Name | None = None
    """What takes weight off: a band, a machine, a partner."""
    base: Id | None = None
    """Best total (share plus added, or less the help) that percentages refer to."""
    shares: Columns = Field(default=[60, 75, 90, 100, 110, 120], min_length=1)
    """Columns of the table by body weight: percent of what the body alone weighs in this lift."""


class OnStack(_Loading):
    """A pin in a cable stack."""

    kind: Literal["stack"]
    stack: Id
    """Which cable stack of the room."""
    base: Id | None = None


class OnMachine(_Loading):
    """A machine with its own units; never turned into kilograms."""

    kind: Literal["machine"]
    machine: Id
    """Which machine of the room."""


class PlateHeld(_Loading):
    """Single plates, held or laid on."""

    kind: Literal["plate"]
    limit: MassText | None = None
    """Heaviest plate allowed here."""


class ByEffort(_Loading):
    """No load to look up: a partner's hands or the lifter's own weight set the effort."""

    kind: Literal["effort"]
    by: Name
    """What makes it heavier or lighter, in one sentence."""
    share: BodyShare | None = None
    """How much of the body is moved, where that is known."""
    share_source: Name | None = None

    @model_validator(mode="after")
    def _share_has_source(self) -> "ByEffort":
        if (self.share is None) != (self.share_source is None):
            raise refuse("pair", "'share' and 'share-source' are given together or not at all")
        return self


class OnPivot(_Loading):
    """A bar with one end in a pivot; the load is what the plates weigh."""

    kind: Literal["pivot"]
    bar: Id
    """Which bar of the room."""
    pivot: Id
    """Which pivot of the room."""
    reach: Reach
    """Where the hands are, for what they hold."""
    base: Id | None = None


class OnCarrier(_Loading):
    """Plates in or on something that is moved: a sled. The load is everything together."""

    kind: Literal["carrier"]
    carrier: Id
    """Which carrier of the room."""
    body_mass_shares: Columns = Field(default_factory=list)
    """Columns of the table, percent of body mass."""


HandHeight = Annotated[Metres, within(read_length, "0 cm", "70 cm")]


class PushUp(_Loading):
    """A push-up: the share of the body follows from how high hands and feet are."""

    kind: Literal["push-up"]
    hands: list[HandHeight] = Field(default=[0.6, 0.3, 0.0], max_length=6)
    """Columns: heights of the hands."""
    feet: list[HandHeight] = Field(default_factory=list, max_length=3)
    """Columns: heights of the feet, hands on the floor."""
    plate_limit: MassText | None = None
    """Most that a partner may lay on the back, all plates together."""
    plates: Annotated[int, Field(ge=1, le=6), WHOLE] = 1
    """How many plates may lie there at once; for strips, one comes off after the other."""


class StrapRow(_Loading):
    """A row in straps: the share of the body follows from its angle."""

    kind: Literal["strap-row"]
    angles: list[Annotated[Degrees, within(read_angle, "30°", "75°")]] = Field(
        default=[30, 45, 60, 75], min_length=1, max_length=6
    )
    """Columns: angle of the body from upright, feet under the anchor."""


class Endurance(_Loading):
    """Rowing, skiing, riding, running, walking, swimming, stepping: by time, distance and pace."""

    kind: Literal["endurance"]
    of: Activity
    """What one does."""
    per: Per | None = None
    """Over what its pace is counted; if left out 500 m for rowing and skiing, 100 m for swimming,
    1 km for all else. Stepping has no distance."""
    base: Id | None = None
    """The tested best that a pace or a percentage refers to, unless the slot names another."""
    typical: PaceText | None = None
    """The time over that distance in which most members go easily, such as `2:00-2:40`; from it
    come the minutes of a distance. If left out, a usual one."""

    @model_validator(mode="after")
    def _has_distance(self) -> "Endurance":
        if self.of == "step" and (self.per or self.typical is not None):
            raise refuse("pair", "stepping has no distance: leave 'per' and 'typical' out")
        if self.typical is not None and (odd := too_odd(self.typical, self.going.per)):
            raise refuse("range", f"{odd}; check 'typical' and 'per'")
        return self

    @property
    def going(self) -> Going:
        """What it is, over what its pace is counted, and how fast most go."""
        return usual(self.of, self.per, self.typical)


Loading = Annotated[
    OnBar
    | InHands
    | BodyWeightLift
    | OnStack
    | OnMachine
    | OnPivot
    | OnCarrier
    | PushUp
    | StrapRow
    | PlateHeld
    | Endurance
    | ByEffort,
    Field(discriminator="kind"),
]
