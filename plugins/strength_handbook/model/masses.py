"""Fixed masses that exist in a room: single ones, and rows from the lightest to the heaviest."""

from typing import Annotated

from pydantic import Field, model_validator

from strength_handbook.model.plain import WHOLE, within
from strength_handbook.model.quantities import Mass, MassText
from strength_handbook.model.shape import Shape, refuse

MOST_STEPS = 200

Number = Annotated[int, Field(ge=0, le=1000), WHOLE]
"""How many there are."""

Weight = Annotated[MassText, within(Mass.parse, "50 g", "500 kg")]
"""The mass of something that is lifted."""


class Masses(Shape):
    """Fixed masses that exist: one mass, or a row of them."""

    mass: Weight | None = None
    """One mass …"""
    from_: Weight | None = None
    """… or the lightest of a row"""
    to: Weight | None = None
    """… its heaviest"""
    by: Weight | None = None
    """… and the step between."""
    count: Number = 2
    """How many of each: two make a pair."""

    @model_validator(mode="after")
    def _one_or_row(self) -> "Masses":
        row = (self.from_, self.to, self.by)
        if self.mass is not None and row == (None, None, None):
            return self
        if self.mass is None and self.from_ and self.to and self.by:
            if self.to.grams < self.from_.grams:
                raise refuse(
                    "range",
                    f"the row must go up; it begins at {self.from_.label} and ends at "
                    f"{self.to.label}",
                )
            steps, rest = divmod(self.to.grams - self.from_.grams, self.by.grams)
            if steps > MOST_STEPS:
                raise refuse("range", f"this row has more than {MOST_STEPS} masses; check 'by'")
            # A row in pounds is kept in whole grams, so each step may be half a gram off.
            if min(rest, self.by.grams - rest) > steps + 1:
                raise refuse(
                    "range",
                    f"steps of {self.by.label} from {self.from_.label} do not end at "
                    f"{self.to.label}; check 'by' and 'to'",
                )
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
