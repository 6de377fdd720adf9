"""Which loads exist for an exercise in this room: the scale of every way to load."""

from collections.abc import Iterable, Sequence

from strength_handbook.calc.plates import LoadTable, PlateSize, load_table
from strength_handbook.model.loading import (
    BodyWeightLift,
    InHands,
    Loading,
    OnBar,
    OnCarrier,
    OnMachine,
    OnPivot,
    OnStack,
    PlateHeld,
    PushUp,
)
from strength_handbook.model.quantities import MOST_KG, Mass
from strength_handbook.model.room import Carrier, Plate, Room
from strength_handbook.plan.scale import POUND_SLACK_G, Kind, Rounding, Scale, Step


def scale_for(room: Room, loading: Loading) -> Scale | None:
    """The loads that exist for a loading; None where there is nothing to choose in mass."""
    if isinstance(loading, OnBar):
        return _bar(room, loading)
    if isinstance(loading, InHands):
        weights = room.hand_weights[loading.weight]
        masses = sorted(
            {
                mass.grams
                for row in weights.masses
                if row.count >= loading.hands
                for mass in row.each()
            }
        )
        steps = tuple(Step(grams) for grams in masses)
        slack = _slack(mass for row in weights.masses for mass in row.each())
        return Scale("fixed", weights.name, 0, loading.hands == 2, loading.rounding, steps, slack)
    if isinstance(loading, BodyWeightLift) and loading.carrier:
        return _carried(room, room.carriers[loading.carrier], loading.rounding, without=True)
    if isinstance(loading, OnCarrier):
        return _carried(room, room.carriers[loading.carrier], loading.rounding, without=False)
    if isinstance(loading, OnPivot):
        return _pivot(room, loading)
    if isinstance(loading, PlateHeld):
        return _one_plate(room.plates, loading.limit, loading.rounding)
    if isinstance(loading, PushUp) and loading.plate_limit is not None:
        return _on_the_back(room.plates, loading.plate_limit, loading.plates, loading.rounding)
    if isinstance(loading, OnStack):
        return _stack(room, loading)
    return None


def unit_scale(room: Room, loading: OnMachine) -> tuple[float, ...]:
    """Every setting of a machine that has its own units, rising."""
    machine = room.machines[loading.machine]
    count = int((machine.to - machine.from_) / machine.by + 1e-9)
    return tuple(machine.from_ + i * machine.by for i in range(min(count, 1000) + 1))


def _slack(masses: Iterable[Mass]) -> int:
    return POUND_SLACK_G if any(mass.unit == "lb" for mass in masses) else 0


def _sizes(plates: Sequence[Plate], share: int = 1) -> tuple[PlateSize, ...]:
    """Plates of a station, divided among things loaded alike at the same time."""
    return tuple(
        PlateSize(plate.mass.grams, plate.pairs // share, plate.thickness * 1000)
        for plate in plates
        if plate.mass.grams > 0
    )


def bar_table(room: Room, loading: OnBar) -> LoadTable:
    """Every load of a bar with the plates of one station, for ramps and strips."""
    bar = room.bars[loading.bar]
    return load_table(
        bar.mass.grams,
        # Two handles carried at once share the plates of one station.
        _sizes(room.plates, loading.hands or 1),
        sleeve_mm=None if bar.sleeve is None else bar.sleeve * 1000,
        collar_g=bar.collar.grams,
        limit_g=bar.limit.grams if bar.limit else MOST_KG * 1000,
    )


def _bar(room: Room, loading: OnBar) -> Scale:
    bar, table = room.bars[loading.bar], bar_table(room, loading)
    steps = tuple(Step(load.total_g, load.side_g) for load in table.loads)
    per_hand = loading.hands == 2
    slack = _slack((bar.mass, bar.collar, *(plate.mass for plate in room.plates)))
    return Scale("bar", bar.name, table.empty_g, per_hand, loading.rounding, steps, slack, table)


def _carried(room: Room, carrier: Carrier, rounding: Rounding, *, without: bool) -> Scale:
    """Single plates on or in something; `without` it too, where the body alone is a load."""
    table = load_table(
        carrier.mass.grams,
        _sizes(room.plates),
        limit_g=carrier.limit.grams if carrier.limit else MOST_KG * 1000,
        sides=1,
    )
    steps = tuple(Step(load.total_g, load.side_g) for load in table.loads)
    if without and carrier.mass.grams:
        steps = (Step(0), *steps)
    own = carrier.mass
    slack = _slack((own, *(plate.mass for plate in room.plates)))
    return Scale(
        "hung",
        carrier.name,
        own.grams,
        per_hand=False,
        rounding=rounding,
        steps=steps,
        slack_g=slack,
        table=table,
    )


def _pivot(room: Room, loading: OnPivot) -> Scale:
    """Plates on the one free end of a bar; its sleeve and its limit bound them."""
    bar = room.bars[loading.bar]
    limit = bar.limit.grams if bar.limit else MOST_KG * 1000
    table = load_table(
        0,
        _sizes(room.plates),
        sleeve_mm=None if bar.sleeve is None else bar.sleeve * 1000,
        limit_g=max(0, limit - bar.mass.grams - bar.collar.grams),
        sides=1,
    )
    steps = tuple(Step(load.total_g, load.side_g) for load in table.loads)
    slack = _slack(plate.mass for plate in room.plates)
    return Scale(
        "pivot", bar.name, 0, per_hand=False, rounding=loading.rounding, steps=steps,
        slack_g=slack, table=table,
    )  # fmt: skip


def _one_plate(plates: Sequence[Plate], limit: Mass | None, rounding: Rounding) -> Scale:
    """Single plates up to a limit."""
    most = limit.grams if limit else MOST_KG * 1000
    masses = {plate.mass.grams for plate in plates if plate.pairs and plate.mass.grams <= most}
    steps = tuple(Step(grams, (grams,)) for grams in sorted(masses))
    slack = _slack(plate.mass for plate in plates)
    return Scale("plate", "plate", 0, per_hand=False, rounding=rounding, steps=steps, slack_g=slack)


def _on_the_back(plates: Sequence[Plate], limit: Mass, most: int, rounding: Rounding) -> Scale:
    """Plates that a partner lays on a back: none, or up to so many and so heavy together."""
    table = load_table(0, _sizes(plates), limit_g=limit.grams, sides=1)
    steps = tuple(
        Step(load.total_g, load.side_g) for load in table.loads if len(load.side_g) <= most
    )
    slack = _slack(plate.mass for plate in plates)
    # One plate is named by its mass; several are listed.
    kind: Kind = "plate" if most == 1 else "hung"
    return Scale(kind, "back", 0, False, rounding, steps, slack, table, most)  # noqa: FBT003


def _stack(room: Room, loading: OnStack) -> Scale:
    stack = room.stacks[loading.stack]
    pins = [mass.grams for mass in stack.pins.each()]
    found: dict[int, tuple[int, ...]] = {pin: (pin,) for pin in pins}
    if stack.add_on:
        extra = stack.add_on.grams
        for pin in pins:
            found.setdefault(pin + extra, (pin, extra))
    steps = tuple(Step(total, parts) for total, parts in sorted(found.items()))
    slack = _slack(stack.pins.each())
    return Scale(
        "pin", stack.name, 0, per_hand=False, rounding=loading.rounding, steps=steps, slack_g=slack
    )
