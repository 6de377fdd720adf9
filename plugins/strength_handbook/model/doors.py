"""Doors: what to do instead of an exercise, prepared before anybody needs it."""

from collections.abc import Iterator
from typing import Annotated

from pydantic import Field, model_validator

from strength_handbook.model.dose import DosePart
from strength_handbook.model.quantities import Share
from strength_handbook.model.shape import Id, Shape, refuse

Text = Annotated[str, Field(min_length=2, max_length=600)]
"""Words that members read."""


class Door(Shape):
    """A prepared alternative."""

    to: Id | None = None
    """Another exercise; leave out for the same exercise made different."""
    how: Text
    """What changes, in one sentence."""
    load: Share | None = None
    """Load as a share of today's load, where it carries over."""
    dose: DosePart | None = None
    """What changes in the dose."""


class HurtsDoor(Shape):
    """What to do when something hurts: one door for everything, or one for each part of the body.

    A part that is not named takes the door for everything; where there is none, the exercise ends.
    """

    to: Id | None = None
    """Another exercise; leave out for the same exercise made different."""
    how: Text | None = None
    """What changes, in one sentence; may be left out where parts have doors of their own."""
    load: Share | None = None
    """Load as a share of today's load, where it carries over."""
    dose: DosePart | None = None
    """What changes in the dose."""
    stop: Text | None = None
    """When nothing replaces it: a sudden pull, numbness, pain that runs down a limb."""
    neck: Door | None = None
    """A door for the neck."""
    shoulder: Door | None = None
    """A door for a shoulder."""
    elbow: Door | None = None
    """A door for an elbow."""
    wrist: Door | None = None
    """A door for a wrist."""
    hand: Door | None = None
    """A door for hand and fingers."""
    back: Door | None = None
    """A door for the back."""
    hip: Door | None = None
    """A door for hip and groin."""
    thigh: Door | None = None
    """A door for the thigh."""
    knee: Door | None = None
    """A door for a knee."""
    ankle: Door | None = None
    """A door for ankle, calf and foot."""

    @model_validator(mode="after")
    def _somewhere(self) -> "HurtsDoor":
        if self.how is None:
            if self.to is not None or self.load is not None or self.dose is not None:
                raise refuse("form", "say in 'how' what changes, in one sentence")
            if not self.by_part():
                text = "write 'how', or a door for a part of the body, such as 'knee: {how: …}'"
                raise refuse("form", text)
        return self

    def everywhere(self) -> Door | None:
        """The door for every part that has none of its own."""
        if self.how is None:
            return None
        # Its parts have been read already: a share is a number by now.
        return Door.model_construct(to=self.to, how=self.how, load=self.load, dose=self.dose)

    def by_part(self) -> dict[str, Door]:
        """The doors of single parts of the body."""
        found = {part: getattr(self, part) for part in BODY_PARTS}
        return {part: door for part, door in found.items() if door is not None}


BODY_PARTS = (
    "neck", "shoulder", "elbow", "wrist", "hand", "back", "hip", "thigh", "knee", "ankle",
)  # fmt: skip
"""Parts of the body that may have a door of their own."""

HURTS = "hurts"


class Doors(Shape):
    """The five doors every exercise has."""

    easier: Door
    """When it is too hard today."""
    harder: Door
    """When it is too easy."""
    hurts: HurtsDoor
    """When something hurts: one door, or one for each part of the body, and when to stop."""
    taken: Door
    """When the station is taken."""
    no_partner: Door
    """When there is nobody to help."""

    def each(self) -> Iterator[tuple[str, Door]]:
        """Every door with its key, in the order of the pages: `hurts`, then `hurts-knee` …"""
        yield "easier", self.easier
        yield "harder", self.harder
        if (door := self.hurts.everywhere()) is not None:
            yield HURTS, door
        yield from ((f"{HURTS}-{part}", door) for part, door in self.hurts.by_part().items())
        yield "taken", self.taken
        yield "no-partner", self.no_partner


def path_of(key: str) -> tuple[str, ...]:
    """Where a door is written in its exercise's file.

    >>> path_of("taken"), path_of("hurts-knee")
    (('doors', 'taken'), ('doors', 'hurts', 'knee'))
    """
    part = key.removeprefix(f"{HURTS}-")
    return ("doors", key) if part == key else ("doors", HURTS, part)
