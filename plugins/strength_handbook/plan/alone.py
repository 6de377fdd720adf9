"""May a slot be done alone today? What the exercise says, and what the day's dose takes back."""

from dataclasses import dataclass
from typing import Literal

from strength_handbook.model.exercise import Exercise
from strength_handbook.model.room import Room
from strength_handbook.plan.worked import WorkedSlot

NOBODY_ALONE = "Nobody trains alone here."

NO_TEST_ALONE = "A test is never done alone. Come when the coach is here."

NO_NEW_SET_UP = "Hang {} as you have done before; no new set-up alone."


ANSWERS = {"no": "No.", "changed": "With a change.", "fine": "Fine."}
"""The answer in words, the strictest first."""


@dataclass(frozen=True, slots=True)
class Alone:
    """Whether something is done alone, and how.

    Attributes:
        answer: fine, changed or no.
        how: what to mind, to change or to do instead, in words.
    """

    answer: Literal["fine", "changed", "no"]
    how: str

    @property
    def words(self) -> str:
        """Answer and how, as a page prints them."""
        return f"{ANSWERS[self.answer]} {self.how}"


def alone_here(exercise: Exercise, room: Room) -> Alone:
    """How an exercise may be done alone in this room, whatever the day asks of it."""
    if room.emergency.nobody_alone:
        return Alone("no", NOBODY_ALONE)
    return Alone(exercise.spotting.alone, exercise.spotting.alone_how)


def alone_today(slot: WorkedSlot, room: Room) -> Alone:
    """How a slot may be done alone: tests never, bands or chains on a bar only as known.

    Common practice, no source.
    """
    own = alone_here(slot.exercise, room)
    if room.emergency.nobody_alone:
        return own
    if slot.dose.said.test is not None:
        return Alone("no", NO_TEST_ALONE)
    if slot.on_top is None or own.answer != "fine":
        return own
    what = "the bands" if slot.dose.said.bands else "the chains"
    return Alone("changed", NO_NEW_SET_UP.format(what))
