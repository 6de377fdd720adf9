"""The answers as lines of `room.yml`."""

import json
from collections.abc import Iterator, Mapping
from decimal import Decimal

from strength_handbook.publish.command_errors import MisuseError
from strength_handbook.publish.first_gym.answers import Answers
from strength_handbook.publish.first_gym.counted import Counted, plain
from strength_handbook.publish.first_gym.listed import Hands, Row
from strength_handbook.publish.first_gym.things_said import RoomItem
from strength_handbook.publish.starter import short_name
from strength_handbook.reading.unfilled import sign

_BAR = {"kg": Counted(Decimal(20), "kg", 2), "lb": Counted(Decimal(45), "lb", 2)}
_PLATES = {
    "kg": (("20", 4), ("15", 2), ("10", 4), ("5", 2), ("2.5", 2), ("1.25", 2)),
    "lb": (("45", 4), ("35", 2), ("25", 2), ("10", 4), ("5", 2), ("2.5", 2)),
}
"""What stands there until somebody has counted: usual in the trade, no source."""
_HOOKS = {"kg": "1.1 m", "lb": "43 in"}
_PLATE_EXAMPLES = {"kg": ("- {mass: 5 kg, pairs: 2}",), "lb": ("- {mass: 10 lb, pairs: 2}",)}
_RACK_EXAMPLES = {
    unit: (f"rack: {{name: rack, count: 1, hook-spacing: {hooks}}}",)
    for unit, hooks in _HOOKS.items()
}

_SHORT = {"plates", "racks"}
"""Keys whose own lines show how another would look; their examples stand only without any."""

_HAND_EXAMPLES = {
    "kg": (
        "kettle: {name: kettlebell, masses: [{mass: 12 kg, count: 2}, {mass: 16 kg, count: 2}]}",
        "sandbag: {name: sandbag, masses: [{mass: 20 kg, count: 1}], note: Weighed.}",
    ),
    "lb": (
        "kettle: {name: kettlebell, masses: [{mass: 25 lb, count: 2}, {mass: 35 lb, count: 2}]}",
        "sandbag: {name: sandbag, masses: [{mass: 45 lb, count: 1}], note: Weighed.}",
    ),
}
_STACK_EXAMPLES = {
    unit: (f"cable: {{name: cable column, count: 1, pins: {{{pins}}}, ratio: 2}}",)
    for unit, pins in (
        ("kg", "from: 5 kg, to: 90 kg, by: 5 kg"),
        ("lb", "from: 10 lb, to: 200 lb, by: 10 lb"),
    )
}
_MACHINE_EXAMPLES = ("calf-machine: {name: calf machine, unit: units, from: 0, to: 400, by: 2}",)

_CALL = (
    "Not responding, and not breathing normally? Call {}, phone on loudspeaker, and start "
    "resuscitation. Slow gasps are not breathing."
)
RACKS = 2
"""How many stand there until somebody has counted."""
PLACES = 4
"""How many come at once to a room without racks, until somebody has counted."""


def room_lines(answers: Answers) -> dict[str, str]:
    """Parts of the room's file, by their names in its template.

    Raises:
        MisuseError: where a name gives no short name.
    """
    return {
        "gym": _said(answers.gym, "the gym's name"),
        "units": answers.units,
        "bars": _section("bars", [*_bars(answers)]),
        "plates": _section("plates", [*_plates(answers)], _PLATE_EXAMPLES[answers.units]),
        "racks": _section("racks", [*_racks(answers)], _RACK_EXAMPLES[answers.units]),
        "hands": _section("hand-weights", [*_hands(answers)], _HAND_EXAMPLES[answers.units]),
        "machines": _section("machines", [*_machines(answers)], _MACHINE_EXAMPLES),
        "number": _said(answers.number, "the number that brings help here"),
        "place": _said(answers.place, "where the ambulance has to come"),
        "stacks": _section("stacks", [*_stacks(answers)], _STACK_EXAMPLES[answers.units]),
        "kit": "\n".join(_kit(answers)),
        "call": json.dumps(_CALL.format(answers.number or "the emergency number"),
                           ensure_ascii=False),
    }  # fmt: skip


def straight_bar(answers: Answers) -> tuple[str, int]:
    """Short name and count of the bar for the ready exercises: the first that has no name.

    Where there is none, of a usual one; no text names it then.
    """
    bars = answers.bars or (_BAR[answers.units],)
    bar = next((bar for bar in bars if not bar.name), bars[0])
    return _bar_id(bar), bar.number


def _said(text: str | None, what: str) -> str:
    """A text of the coach's; a JSON text is a YAML text, whatever signs are in it."""
    return json.dumps(text or sign(what), ensure_ascii=False)


def _section(key: str, lines: list[str], examples: tuple[str, ...] = ()) -> str:
    """A key with what the room has of it and what it may have; all a comment where that is all."""
    if lines and key in _SHORT:
        return "\n".join([f"{key}:", *lines])
    if lines:
        return "\n".join([f"{key}:", *lines, *(f"  # {line}" for line in examples)])
    return "\n".join([f"# {key}:", *(f"#   {line}" for line in examples)])


def _bar_id(bar: Counted) -> str:
    return short_name(f"{bar.name} bar" if bar.name else f"bar {plain(bar.mass)}")


def _bars(answers: Answers) -> Iterator[str]:
    if answers.bars == ():
        return
    note = "" if answers.bars else f", note: {_said(None, 'which bars, weighed and counted')}"
    for bar in answers.bars or (_BAR[answers.units],):
        name = json.dumps(f"{bar.name} bar" if bar.name else f"{bar.label} bar")
        about = f"name: {name}, mass: {bar.label}, count: {bar.number}{note}"
        yield f"  {_bar_id(bar)}: {{{about}}}"


def _plates(answers: Answers) -> Iterator[str]:
    if not answers.has_plates:
        return
    unit = answers.units
    guess = (Counted(Decimal(mass), unit, number) for mass, number in _PLATES[unit])
    for plate in answers.plates or guess:
        yield f"  - {{mass: {plate.label}, pairs: {plate.number // 2}}}"


def _racks(answers: Answers) -> Iterator[str]:
    if not answers.has_racks:
        return
    yield from ("  rack:", "    name: rack", f"    count: {answers.racks or RACKS}")
    yield f"    hook-spacing: {_HOOKS[answers.units]} # between the middles of the two hooks"
    yield "    # bolted: true # if it is fixed to the floor"
    left = ["the hook-spacing as measured"]
    left += [] if answers.racks else ["how many racks"]
    left += [] if answers.plates or not answers.has_plates else ["the plates at each"]
    yield f"    note: {_said(None, ', '.join(left))}"


def _hands(answers: Answers) -> Iterator[str]:
    if answers.hands is None:
        low, high, step = ("4 kg", "20 kg", "2 kg") if answers.units == "kg" else (
            "5 lb", "40 lb", "5 lb")  # fmt: skip
        yield from ("  dumbbell:", "    name: dumbbell")
        yield f"    note: {_said(None, 'which dumbbells, or no such lines')}"
        yield from ("    masses:", f"      - {{from: {low}, to: {high}, by: {step}, count: 2}}")
    for one in answers.hands or ():
        yield from (f"  {one.kind}:", f"    name: {one.kind}", "    masses:")
        yield from _masses(one)


def _masses(hands: Hands) -> Iterator[str]:
    for one in hands.masses:
        if isinstance(one, Row):
            low, high, step = (
                f"{plain(each)} {one.unit}" for each in (one.low, one.high, one.step)
            )
            yield f"      - {{from: {low}, to: {high}, by: {step}, count: {one.number}}}"
        else:
            yield f"      - {{mass: {one.label}, count: {one.number}}}"


def _machines(answers: Answers) -> Iterator[str]:
    if answers.machines is None:
        note = _said(None, "which machines, or no such line")
        yield f"  machine: {{name: machine, note: {note}}}"
    for thing in _said_of(answers, "machines"):
        row = _named(thing)
        if thing.scale is None:
            row["note"] = _said(None, "its unit, from, to and by")
        else:
            row["unit"] = thing.unit or "units"
            row |= zip(("from", "to", "by"), map(plain, thing.scale), strict=True)
        yield _row(thing.name, row)


def _said_of(answers: Answers, section: str) -> Iterator[RoomItem]:
    return (thing for thing in answers.machines or () if thing.section == section)


def _named(thing: RoomItem) -> dict[str, object]:
    name = json.dumps(thing.name, ensure_ascii=False)
    return {"name": name, "count": thing.number or 1}


def _stacks(answers: Answers) -> Iterator[str]:
    for thing in _said_of(answers, "stacks"):
        low, high, by = (f"{plain(one)} {thing.unit}" for one in thing.scale or ())
        pins = f"{{from: {low}, to: {high}, by: {by}}}"
        yield _row(thing.name, _named(thing) | {"pins": pins})


def _kit(answers: Answers) -> Iterator[str]:
    """Floor and mats, a chair where the first program needs one, and what else was said."""
    places = 4 * (answers.racks or RACKS) if answers.has_racks else PLACES
    lines = {
        "floor": f"  floor: {{name: clear floor, count: {places}, fixed: yes, "
        f"note: {sign('how many can lie down at once')}}}",
        "mat": f"  mat: {{name: mat, count: {places}, note: {sign('how many mats there are')}}}",
    }
    if not answers.lifts_from_racks:
        lines["chair"] = (
            f"  chair: {{name: sturdy chair, count: {PLACES}, "
            f"note: {sign('how many chairs with four legs and no wheels')}}}"
        )
    for thing in _said_of(answers, "kit"):
        key = _machine_id(thing.name)
        row = _named(thing)
        row |= {"height": thing.height} if thing.height else {}
        row |= {"fixed": "yes"} if thing.fixed else {}
        if thing.number is not None or thing.fixed:
            lines[key] = _row(thing.name, row)
        else:
            lines.setdefault(key, _row(thing.name, row | {"note": sign("how many there are")}))
    yield from lines.values()


def _row(name: str, row: Mapping[str, object]) -> str:
    said = ", ".join(f"{key}: {value}" for key, value in row.items())
    return f"  {_machine_id(name)}: {{{said}}}"


def _machine_id(name: str) -> str:
    try:
        return short_name(name)
    except MisuseError as error:
        raise MisuseError(f"machines: {error}") from None
