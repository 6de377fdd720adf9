"""What a slot's method comes to, beside its load: everything a lifter would have to work out."""

from collections.abc import Mapping
from dataclasses import dataclass

from strength_handbook.model.book import Book
from strength_handbook.model.loading import OnMachine
from strength_handbook.model.words import Hazard
from strength_handbook.plan.broken_sets import (
    BrokenSet,
    DensityPlan,
    SetInterval,
    TimedSets,
    broken_set,
    density,
    interval,
    timed_sets,
)
from strength_handbook.plan.carries import CarryPlan, TeamPlan, carry_plan, team_plan
from strength_handbook.plan.efforts import (
    EffortLoad,
    OpenSetPlan,
    TrainingMax,
    effort_load,
    open_set,
    training_max,
)
from strength_handbook.plan.ladder import Ladders, slot_ladders
from strength_handbook.plan.ramps import Ramps, slot_ramps
from strength_handbook.plan.reference import load_rules
from strength_handbook.plan.remembered import remembered
from strength_handbook.plan.series import SeriesPlan, series_plan
from strength_handbook.plan.slot_strips import Strips, slot_strips
from strength_handbook.plan.top_sets import BackOffPlan, back_off
from strength_handbook.plan.worked import WorkedSession, WorkedSlot, WorkedWeek


@dataclass(frozen=True, slots=True)
class Contacts:
    """Landings.

    Attributes:
        slot: of this exercise today.
        session: of the whole session.
        week: of the whole week, optional sessions left out.
        height_m: of the box, or None.
    """

    slot: int
    session: int
    week: int
    height_m: float | None


@dataclass(frozen=True, eq=False)
class MachineSettings:
    """Settings of a machine whose units are not kilograms.

    Attributes:
        unit: what its display counts.
        settings: seat, pin and so on.
    """

    unit: str
    settings: Mapping[str, str]


@dataclass(frozen=True, eq=False)
class MethodPlan:
    """Everything that a slot's method comes to; None where it has nothing to do with it."""

    ramps: Ramps | None
    test: Ladders | None
    back_off: BackOffPlan | None
    open_set: OpenSetPlan | None
    effort: EffortLoad | None
    training_max: TrainingMax | None
    strips: Strips | None
    series: SeriesPlan | None
    broken: BrokenSet | None
    interval: SetInterval | None
    timed: TimedSets | None
    density: DensityPlan | None
    carry: CarryPlan | None
    team: TeamPlan | None
    contacts: Contacts | None
    machine: MachineSettings | None


@remembered(4096)  # session page, exercise page and data ask for the same slot
def method_plan(
    book: Book, slot: WorkedSlot, session: WorkedSession, week: WorkedWeek
) -> MethodPlan:
    """What a slot's method comes to."""
    dose = slot.dose
    return MethodPlan(
        ramps=slot_ramps(book.room, slot),
        test=slot_ladders(book, slot),
        back_off=back_off(slot, book.room.units),
        open_set=open_set(slot),
        effort=effort_load(slot, load_rules(book)),
        training_max=training_max(book, slot),
        strips=slot_strips(book, slot),
        series=series_plan(slot, book.room.units),
        broken=broken_set(book, dose),
        interval=interval(book, dose),
        timed=timed_sets(dose),
        density=density(book, dose),
        carry=carry_plan(book, slot),
        team=team_plan(book, slot),
        contacts=_contacts(slot, session, week),
        machine=_machine(book, slot),
    )


def _contacts(slot: WorkedSlot, session: WorkedSession, week: WorkedWeek) -> Contacts | None:
    if slot.dose.going is not None or Hazard.IMPACT not in slot.exercise.hazards:
        return None
    return Contacts(
        round(slot.volume.contacts),
        round(session.volume.contacts),
        round(week.volume.contacts),
        slot.dose.said.height,
    )


def _machine(book: Book, slot: WorkedSlot) -> MachineSettings | None:
    load = slot.exercise.load
    if not isinstance(load, OnMachine):
        return None
    return MachineSettings(book.room.machines[load.machine].unit, slot.dose.said.settings)
