"""What a session needs for the whole group: things with counts, plates, bands, masses."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from strength_handbook.floor.floor import session_clock, session_floor
from strength_handbook.floor.needs import thing_name
from strength_handbook.floor.use import Stay, demand
from strength_handbook.model.book import Book
from strength_handbook.model.printed import NBSP, bare_mass
from strength_handbook.model.room import Room
from strength_handbook.plan.worked import WorkedProgram, WorkedSession, WorkedSlot

_FIXED = ("racks", "stacks", "machines", "lanes", "pivots")
"""Sections of the room whose things stay where they are."""

MOST_MASSES = 4
"""More masses than this are given as a range."""


@dataclass(frozen=True)
class NeededThing:
    """One thing that a session needs.

    Attributes:
        name: what members call it.
        section: where room.yml has it.
        count: how many are in use at once.
        has: how many there are, or None where nobody counts them.
        slots: the slots that use it, by order.
        end: minute from which nobody needs it any more,
        last: and the slot that ends then.
        stays: True for what is fixed in the room and need not be carried.
    """

    name: str
    section: str
    count: int
    has: int | None
    slots: tuple[str, ...]
    end: float
    last: str
    stays: bool = False

    @property
    def short(self) -> bool:
        """True where the group needs more at once than there are."""
        return self.has is not None and self.count > self.has


def things(
    book: Book, program: WorkedProgram, sessions: Sequence[WorkedSession]
) -> list[NeededThing]:
    """Everything that one session needs over several weeks, in the order of the room.

    The counts are those of the floor plan: the most that are in use at one minute of any week.
    """
    sections = dict(_sections(book.room))
    found: dict[str, NeededThing] = {}
    for session in sessions:
        floor = session_floor(session_clock(book, program.program, session))
        for key in dict.fromkeys(key for one in floor.intervals for key in one.needs.things):
            using = [one for one in floor.intervals if key in one.needs.things]
            now = NeededThing(
                thing_name(book.room, key),
                sections.get(key.partition(" ")[0], "bands"),
                max((count for _, count in demand(floor.intervals, key)), default=0),
                floor.units.get(key),
                tuple(sorted({one.order for one in using})),
                *_last(using),
                stays=_stays(book.room, key, sections),
            )
            found[key] = _more(found.get(key), now)
    order = list(sections)
    keys = sorted(found, key=lambda key: order.index(key) if key in order else len(order))
    return [found[key] for key in keys]


def _last(using: Sequence[Stay]) -> tuple[float, str]:
    last = max(using, key=lambda one: (one.end, one.order))
    return last.end, last.order


def _more(before: NeededThing | None, now: NeededThing) -> NeededThing:
    """The same thing in several weeks: the larger number, all slots, the latest end."""
    if before is None:
        return now
    late = max(before, now, key=lambda one: (one.end, one.last))
    slots = tuple(sorted({*before.slots, *now.slots}))
    most = max(before.count, now.count)
    return replace(now, count=most, slots=slots, end=late.end, last=late.last)


def _stays(room: Room, key: str, sections: Mapping[str, str]) -> bool:
    kit = room.kit.get(key)
    return sections.get(key) in _FIXED or (kit is not None and kit.fixed)


def _sections(room: Room) -> Iterator[tuple[str, str]]:
    """Every id of the room with its section."""
    for section, group in room:
        if isinstance(group, dict):
            yield from ((key, section) for key in group)


def plates_at_a_station(slots: Iterable[WorkedSlot], units: str) -> str:
    """The plates that one station needs for the heaviest of the example lifters.

    Pairs for a bar; single plates for what hangs, lies or stands on one end.
    """
    most: Counter[int] = Counter()
    pairs = False
    for slot in (one for whole in slots for one in whole.alike):
        if slot.scale is None or slot.scale.kind not in ("bar", "hung", "pivot"):
            continue
        pairs = pairs or slot.scale.kind == "bar"
        for load in slot.loads.values():
            if load.step is not None:
                most |= Counter(load.step.parts)
    noun = "pair" if pairs else "plate"
    words = [
        f"{count} {noun if count == 1 else noun + 's'} of {bare_mass(grams, units)}{NBSP}{units}"
        for grams, count in sorted(most.items(), reverse=True)
    ]
    return ", ".join(words)


def masses_to_lay_out(slots: Iterable[WorkedSlot], units: str) -> str:
    """Fixed masses that the example lifters take; by effort, the ends of the row they are on."""
    found: set[int] = set()
    names: dict[str, None] = {}
    row: list[int] = []
    per_hand = False
    for slot in (one for whole in slots for one in whole.alike):
        if slot.scale is None or slot.scale.kind not in ("fixed", "plate"):
            continue
        names[slot.scale.on] = None
        per_hand = per_hand or slot.scale.per_hand
        row += [step.grams for step in slot.scale.steps if step.grams > 0]
        found |= {load.step.grams for load in slot.loads.values() if load.step is not None}
    if not names:
        return ""
    end = ", in each hand" if per_hand else ""
    name = " or ".join(names)
    if not found and row:
        text = f"{bare_mass(min(row), units)} to {bare_mass(max(row), units)}{NBSP}{units}"
        return f"{name}: any of {text}, by effort{end}"
    if not found:
        return f"{name} by effort"
    shown = [bare_mass(grams, units) for grams in sorted(found)]
    text = f"{shown[0]} to {shown[-1]}" if len(shown) > MOST_MASSES else ", ".join(shown)
    return f"{name}: {text}{NBSP}{units}{end}"


def bands_and_chains(slots: Iterable[WorkedSlot]) -> list[str]:
    """Bands by number and pairs of chains, as the example lifters take them."""
    found: dict[str, None] = {}
    for slot in slots:
        found |= dict.fromkeys(one.what for one in slot.variable.values())
        if slot.on_top is not None and not slot.variable:
            found["bands or chains by the lifter's tested value"] = None
        assist = slot.dose.said.assist
        if assist is not None:
            found[f"band {assist.band}" if assist.band else f"help: {assist.by}"] = None
    return list(found)
