"""An exercise: everything a member needs to do it without the coach in the room."""

from typing import Annotated, Literal

from pydantic import Field, model_validator

from strength_handbook.model.doors import Doors, Text
from strength_handbook.model.dose import DosePart
from strength_handbook.model.figure import Figure
from strength_handbook.model.going import Going
from strength_handbook.model.loading import Endurance, Loading
from strength_handbook.model.marks import Compared, Label
from strength_handbook.model.media import Media
from strength_handbook.model.phases import PHASES, Lifts, Phases, usual_way
from strength_handbook.model.plain import WHOLE, Name, within
from strength_handbook.model.quantities import Metres, read_length
from strength_handbook.model.shape import Id, Shape, refuse
from strength_handbook.model.words import CAUTIONS, Hazard, Muscle, Pattern

Lines = Annotated[list[Text], Field(max_length=12)]
"""A few of them."""


DRAFT = "(DRAFT)"
"""Stands behind the name of an exercise that is only begun, wherever it is named."""

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

    name: Annotated[Name, Label("the name of an exercise"), Compared("name")]
    """The trade's name; the same everywhere."""
    also: Annotated[Name, Label("another name of an exercise")] | None = None
    """One plain other name."""
    pattern: Pattern
    """The movement it belongs to."""
    role: Literal["main", "assistance", "prehab"]
    """Its place in a session."""
    sides: Literal["both", "each"] = "both"
    """`each`: one limb at a time, so time and volume count twice; `both`: together or in turns."""
    lifts_from: Literal["top", "bottom"] = "top"
    """Where a repetition begins; the tempo is written lower-pause-lift-pause all the same."""
    lifts: Lifts | None = None
    """The way the lift goes, for the words of a tempo: up, pull, push, bend, straighten or weight.
    Left out: pull or push for rows, pulldowns and presses on a cable or machine, weight for what
    else is done there, up for all others."""
    stations: list[Id] = Field(min_length=1, max_length=10)
    """What of the room it occupies."""
    uses: list[Id] = Field(default_factory=list, max_length=20)
    """Further things it needs."""
    load: Loading
    """How it is loaded."""
    dose: DosePart = Field(default_factory=DosePart)
    """What holds for this exercise wherever a program says nothing else."""
    first_height: Annotated[Metres, within(read_length, "5 cm", "1.5 m")] | None = None
    """The highest box or step for the first week of it: `first-height: 30 cm`."""
    setup_seconds: Annotated[int, Field(ge=0, le=900), WHOLE] = 60
    """Time to set up once."""
    hazards: Annotated[list[Hazard], Compared("hazards")] = Field(
        default_factory=list, max_length=len(Hazard)
    )
    """Each brings its caution to the page."""
    cautions: Annotated[Lines, Compared("cautions")] = Field(default_factory=list)
    """Further cautions for this exercise only."""
    poses: Annotated[Poses, Compared("words")]
    """The positions in words."""
    figure: Figure | None = None
    """The positions as a drawing: a base pose and a few angles each."""
    media: Annotated[list[Media], Field(max_length=6)] = Field(default_factory=list)
    """Photos and short films of the gym's own, shown before the drawing."""
    set_up: Annotated[list[Text], Compared("words")] = Field(min_length=3, max_length=6)
    """Three to six steps until the first repetition."""
    cues: Annotated[Cues, Compared("words")]
    """What to think of, in the order of the lift."""
    breathing: Annotated[Text, Compared("words")]
    """When to breathe in and out."""
    stop: Annotated[list[Text], Compared("stop")] = Field(min_length=1, max_length=4)
    """When to end the set or the exercise."""
    spotting: Annotated[Spotting, Compared("spotting")]
    """Who helps, and what to do without help."""
    doors: Annotated[Doors, Compared("doors")]
    """The prepared alternatives."""
    faults: Annotated[list[Fault], Compared("words")] = Field(min_length=1, max_length=5)
    """What goes wrong, each with one fix."""
    why: Text
    """One sentence tied to the need."""
    muscles: Muscles
    """Which muscles do the work."""
    next_step: Annotated[Text | None, Compared("words")] = None
    """What happens when it gets easy."""

    @property
    def going(self) -> Going | None:
        """How it gets from here to there; None for what is lifted, carried or held."""
        return self.load.going if isinstance(self.load, Endurance) else None

    @property
    def phases(self) -> Phases:
        """What lowering and lifting are called in it."""
        return PHASES[self.lifts or usual_way(self.pattern, self.load)]

    def all_cautions(self) -> tuple[str, ...]:
        """Cautions that follow from the hazards, then the first height and the exercise's own."""
        first = self.first_height
        height = () if first is None else (f"The first time, no higher than {100 * first:g} cm.",)
        return (*(CAUTIONS[hazard] for hazard in self.hazards), *height, *self.cautions)


class DraftMuscles(Muscles):
    """Muscles of an exercise of which nobody has said yet which ones work."""

    direct: list[Muscle] = Field(max_length=18)


class DraftExercise(Exercise):
    """An exercise that is only begun; it is shown to the coach and published only on request."""

    stations: list[Id] = Field(max_length=10)
    set_up: Annotated[list[Text], Compared("words")] = Field(min_length=1, max_length=6)
    muscles: DraftMuscles
    missing: list[str] = Field(min_length=1)
    """What is still to be written, by the keys of its file."""
