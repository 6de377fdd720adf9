"""An exercise: everything a member needs to do it without the coach in the room."""

from typing import Annotated, Literal

from pydantic import Field, model_validator

from strength_handbook.model.dose import DosePart
from strength_handbook.model.loading import Loading
from strength_handbook.model.plain import WHOLE, Name
from strength_handbook.model.quantities import Share
from strength_handbook.model.shape import Id, Shape, refuse
from strength_handbook.model.words import CAUTIONS, Hazard, Muscle, Pattern

Text = Annotated[str, Field(min_length=2, max_length=600)]
"""Words that members read."""

Lines = Annotated[list[Text], Field(max_length=12)]
"""A few of them."""


IF_IT_STAYS = "If a fault stays for two sets: take the easier door and tell the coach."


class Cues(Shape):
    """What to think of, in the order of the lift."""

    before: Lines = Field(default_factory=list)
    during: Lines = Field(default_factory=list)
    finish: Lines = Field(default_factory=list)
    voice: list[Text] = Field(default_factory=list, max_length=2)
    """The one or two of them that the coach says aloud; printed in bold."""

    def spoken(self) -> tuple[str, ...]:
        """All cues, in order."""
        return (*self.before, *self.during, *self.finish)


class Spotting(Shape):
    """Who helps, and what to do without help."""

    spotters: Annotated[int, Field(ge=0, le=4), WHOLE]
    """How many helpers the lift needs at its heaviest in this program."""
    where: Text
    """Where they stand and what they do; or why none is needed."""
    word: Name | None = None
    """The word that means: take it."""
    alone: Literal["fine", "changed", "no"]
    """May it be done alone?"""
    alone_how: Text
    """What changes alone, or what to do instead."""
    safeties: Text | None = None
    """Where the rack safeties go; needed for lifts that can pin the lifter."""


class Fault(Shape):
    """What goes wrong, as a partner sees it, with one fix."""

    see: Text
    """What a partner sees, hears or the lifter feels."""
    because: Text | None = None
    """The likeliest reason."""
    fix: Text
    """One change of task: height, load, tempo or object."""
    if_it_stays: Text = IF_IT_STAYS


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


class Doors(Shape):
    """The five doors every exercise has."""

    easier: Door
    """When it is too hard today."""
    harder: Door
    """When it is too easy."""
    hurts: Door
    """When something hurts."""
    taken: Door
    """When the station is taken."""
    no_partner: Door
    """When there is nobody to help."""


class Muscles(Shape):
    """Which muscles do the work: direct counts one set, helping half a set."""

    direct: list[Muscle] = Field(min_length=1, max_length=18)
    """Muscles for which a set is a whole set."""
    helping: list[Muscle] = Field(default_factory=list, max_length=18)
    """Muscles for which it is half a set."""

    @model_validator(mode="after")
    def _direct_or_helping(self) -> "Muscles":
        for muscle in self.helping:
            if muscle in self.direct:
                raise refuse("twice", f"'{muscle}' is both direct and helping; keep one")
        return self


class Poses(Shape):
    """The positions in words; a drawing never says more than these."""

    start: Text
    """Where a repetition begins."""
    turn: Text
    """Where it turns round."""
    end: Text
    """Where it ends."""


class Exercise(Shape):
    """One file in `programs/exercises/`."""

    name: Name
    """The trade's name; the same everywhere."""
    also: Name | None = None
    """One plain other name."""
    pattern: Pattern
    """The movement it belongs to."""
    role: Literal["main", "assistance", "prehab"]
    """Its place in a session."""
    sides: Literal["both", "each"] = "both"
    """`each`: one limb at a time, so time and volume count twice."""
    lifts_from: Literal["top", "bottom"] = "top"
    """Where a repetition begins; the tempo is written lower-pause-lift-pause all the same."""
    stations: list[Id] = Field(min_length=1, max_length=10)
    """What of the room it occupies."""
    uses: list[Id] = Field(default_factory=list, max_length=20)
    """Further things it needs."""
    load: Loading
    """How it is loaded."""
    dose: DosePart = Field(default_factory=DosePart)
    """What holds for this exercise wherever a program says nothing else."""
    setup_seconds: Annotated[int, Field(ge=0, le=900), WHOLE] = 60
    """Time to set up once."""
    hazards: list[Hazard] = Field(default_factory=list, max_length=len(Hazard))
    """Each brings its caution to the page."""
    cautions: Lines = Field(default_factory=list)
    """Further cautions for this exercise only."""
    poses: Poses
    """The positions in words."""
    set_up: list[Text] = Field(min_length=3, max_length=6)
    """Three to six steps until the first repetition."""
    cues: Cues
    """What to think of, in the order of the lift."""
    breathing: Text
    """When to breathe in and out."""
    stop: list[Text] = Field(min_length=1, max_length=4)
    """When to end the set or the exercise."""
    spotting: Spotting
    """Who helps, and what to do without help."""
    doors: Doors
    """The prepared alternatives."""
    faults: list[Fault] = Field(min_length=1, max_length=5)
    """What goes wrong, each with one fix."""
    why: Text
    """One sentence tied to the need."""
    muscles: Muscles
    """Which muscles do the work."""
    next_step: Text | None = None
    """What happens when it gets easy."""

    def all_cautions(self) -> tuple[str, ...]:
        """Cautions that follow from the hazards, then the exercise's own."""
        return (*(CAUTIONS[hazard] for hazard in self.hazards), *self.cautions)
