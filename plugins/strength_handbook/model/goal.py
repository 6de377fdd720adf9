"""What a program is for, and the test that shows it."""

from typing import Annotated, Literal

from strength_handbook.model.doors import Text
from strength_handbook.model.marks import Compared, NamesThings
from strength_handbook.model.plain import within
from strength_handbook.model.quantities import Percent, read_percent
from strength_handbook.model.shape import Id, Shape


class Goal(Shape):
    """What the program is for, and how we will know."""

    goal: Annotated[Text, NamesThings("what the program leads to"), Compared("goals")]
    """What members will be able to do."""
    test: Annotated[Text, NamesThings("a test has a name"), Compared("goals")]
    """What is measured."""
    base: Id | None = None
    """The tested value, where it is one."""
    exercise: Id | None = None
    """The exercise that is tested, where there is no tested value."""
    result: Literal["seconds", "metres", "repetitions"] | None = None
    """What is counted, where no weight is. Without it the doses of `exercise` say so: seconds of a
    hold, metres of a walk, else repetitions."""
    noise: Annotated[Percent, within(read_percent, "0.5 %", "30 %")] | None = None
    """How much such a result differs by itself from day to day (coefficient of variation), where
    the gym has measured it. Without it nobody can tell whether a change is real."""
