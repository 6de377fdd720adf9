"""Carries: lengths of the lane, turns, seconds, and what each bearer of a team holds."""

import math
from dataclasses import dataclass

from strength_handbook.calc.set_duration import carry_seconds
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Distance
from strength_handbook.model.length import Length, own_unit
from strength_handbook.model.span import ends, middle_of
from strength_handbook.plan.worked import WorkedSlot


@dataclass(frozen=True, slots=True)
class CarryPlan:
    """One walk.

    Attributes:
        lane: name of the lane, or empty where none is among the stations.
        lengths: whole lengths of it; of a range its longer way.
        more_m: metres beyond them, in the unit of the dose.
        turns: turns on the way.
        seconds: of one walk, one side, at the house's walking speed.
    """

    lane: str
    lengths: int
    more_m: float
    turns: int
    seconds: float


@dataclass(frozen=True, slots=True)
class TeamPlan:
    """One thing carried by several.

    Attributes:
        bearers: how many carry at once.
        total_g: everything together.
        each_g: what one bearer holds, if all hold alike.
        changes: changes of places in one walk.
    """

    bearers: int
    total_g: int
    each_g: float
    changes: int


def carry_plan(book: Book, slot: WorkedSlot) -> CarryPlan | None:
    """Turns and seconds of a walk; None where nothing is carried over a distance."""
    if slot.dose.going is not None or not isinstance(slot.dose.work, Distance):
        return None
    # A range is planned at its middle; whoever goes its longer way has these turns.
    metres, planned = ends(slot.dose.work.metres)[1], middle_of(slot.dose.work.metres)
    seconds = carry_seconds(planned, book.rule("walking-speed"))
    places = (*slot.exercise.stations, *slot.exercise.uses)
    lane = next((book.room.lanes[place] for place in places if place in book.room.lanes), None)
    if lane is None:
        return CarryPlan("", 0, 0.0, 0, seconds)
    # A hair of a millimetre is no further length: 40 m are two lengths of 20 m, not three.
    lengths = int(metres / lane.length + 1e-6)
    # Whole centimetres; finer where the dose is in feet or yards, to be as even there.
    rest = round(metres - lengths * lane.length, 4 if own_unit(metres) else 2)
    more = Length(rest, own_unit(metres) or "m") if rest > 0 else 0.0
    turns = lengths if more else max(0, lengths - 1)
    return CarryPlan(lane.name, lengths, more, turns, seconds)


def team_plan(book: Book, slot: WorkedSlot) -> TeamPlan | None:
    """What each bearer holds; None where nobody carries together."""
    team = slot.dose.said.team
    if team is None:
        return None
    walk = carry_plan(book, slot)
    changes = 0
    if team.turn_every is not None and walk is not None:
        changes = max(0, math.ceil(walk.seconds / team.turn_every - 1e-9) - 1)
    grams = team.mass.grams
    return TeamPlan(team.bearers, grams, grams / team.bearers, changes)
