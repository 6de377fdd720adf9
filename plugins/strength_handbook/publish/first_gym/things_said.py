"""Machines, cable columns and everything else of a room, in one line as people write it.

    leg press 1-20, cable column 2.5-50 by 2.5, 4 chairs, mats x6, steps 15 cm, 20 cm

A scale makes a machine, pins a stack, a height a box; chairs, mats, bands and the like are kit.
What can't be told from these words is refused, with what to write.
"""

import re
from dataclasses import dataclass, replace
from decimal import Decimal

from strength_handbook.publish.first_gym.counted import plain
from strength_handbook.publish.first_gym.listed import NONE

EXAMPLES = {
    "kg": "leg press 1-20, cable column 5-50 by 5, 4 chairs, steps 15 cm",
    "lb": "leg press 1-20, cable column 10-100 by 10, 4 chairs, steps 6 in",
}
"""Lines by the unit of the room."""
_N = r"\d+(?:\.\d+)?"
_CUT = re.compile(r"[,;\n]|\band\b")
_COUNTED = re.compile(r"(?:(\d{1,4})\s*[x×*]?\s+)?(.*?)(?:\s*[x×*]\s*(\d{1,4}))?")
_SCALE = re.compile(
    rf"(?:pins?\s+|from\s+)?({_N})\s*(kg|lb)?s?\s*(?:-|–|to)\s*({_N})\s*(kg|lb)?s?"
    rf"(?:\s*(?:by|in steps of)\s*({_N})\s*(?:kg|lb)?s?)?"
)
_HEIGHT = re.compile(rf"({_N})\s*(cm|inches|inch|in)\b(?:\s*high)?")
_STACK = re.compile(r"\b(cable|stack|pulley|pulldown)", re.IGNORECASE)
_KIT = re.compile(
    r"\b(chair|stool|mat|bench|couch|table|band|towel|stick|wall|rail|strap|ball|box|step|block|"
    r"cushion|mirror|rig|pull-?up bar|chin-?up bar|knee pad|pad|rope|cone|roller)(e?s)?\b",
    re.IGNORECASE,
)
_HIGH = re.compile(r"\b(box|step|block|stool)(e?s)?\b", re.IGNORECASE)
_FIXED = re.compile(r"\b(wall|rail|rig|pull-?up bar|chin-?up bar|mirror)s?\b", re.IGNORECASE)
_LATER = (
    "leave it out here; in room.yml it goes under '{section}', with its mass, as the page Measure "
    "the room says"
)
_ELSEWHERE = (
    (r"\bsled(ge)?s?\b", _LATER.format(section="carriers")),
    (r"\bsand ?bags?\b|\b(medicine|med|slam)[ -]balls?\b", _LATER.format(section="hand-weights")),
    (r"\bchains?\b", _LATER.format(section="chains")),
    (r"\b(bar ?bells?|trap bars?|hex bars?|ez bars?|yokes?)\b", "write it among the bars"),
    (r"\b(dumb|kettle)bells?\b", "write it among the hand weights"),
)
"""What has a place of its own in a room, because its mass counts, and where that is."""
_HEIGHTS = {"cm": (5, 150), "in": (2, 59)}
"""What a room may say of a height."""
_MOST_SETTINGS = 200


@dataclass(frozen=True, slots=True)
class RoomItem:
    """A thing of the room.

    Attributes:
        section: of `room.yml`: machines, stacks or kit.
        name: what members will call it.
        number: how many; None where nobody said.
        scale: from, to and by, where it has one.
        unit: of the scale of a stack: kg or lb.
        height: as a room writes it, such as `15 cm`.
        fixed: it stays where it is.
    """

    section: str
    name: str
    number: int | None = None
    scale: tuple[Decimal, Decimal, Decimal] | None = None
    unit: str = ""
    height: str = ""
    fixed: bool = False

    @property
    def words(self) -> str:
        """How it was understood."""
        if self.scale is None:
            unsaid = self.section == "kit" and self.number is None and not self.fixed
            return f"{self.name} (how many?)" if unsaid else f"{self.number or 1} × {self.name}"
        low, high, by = map(plain, self.scale)
        return f"{self.number or 1} × {self.name}, {low} to {high}{self._unit} by {by}"

    @property
    def _unit(self) -> str:
        return f" {self.unit}" if self.unit else ""


def read_things(line: str, unit: str) -> tuple[tuple[RoomItem, ...], tuple[str, ...]]:
    """Read a line of machines and everything else.

    Args:
        line: as typed.
        unit: kg or lb, where a stack says none; a height without its unit is refused.

    Returns:
        What was read, and all that is wrong, with what to write.

    >>> found, _ = read_things("steps 15 cm, 20 cm; leg press 1-20, rower x2", "kg")
    >>> [one.words for one in found]
    ['15 cm step (how many?)', '20 cm step (how many?)', '1 × leg press, 1 to 20 by 1', '2 × rower']
    """
    found: list[RoomItem] = []
    wrong: list[str] = []
    before = ""
    for part in _CUT.split(" ".join(line.replace("\n", ";").split())):
        text = part.strip(" .:")
        if text.lower() in NONE:
            continue
        again = f"{before} {text}" if before and _HEIGHT.fullmatch(text.lower()) else text
        read = _one(again, unit)
        before = ""
        if isinstance(read, str):
            wrong.append(read)
            continue
        found.append(read)
        before = read.name.removeprefix(f"{read.height} ") if read.height else ""
    wrong += [
        f"'{one.name}' stands there twice; write it once, with its count"
        for number, one in enumerate(found)
        if any(one.name.lower() == other.name.lower() for other in found[:number])
    ]
    return tuple(found), tuple(wrong)


def things_words(things: tuple[RoomItem, ...]) -> str:
    """How a line was read, for whoever typed it."""
    heads = (("machines", "machines"), ("stacks", "cable columns"), ("kit", "everything else"))
    parts = []
    for section, head in heads:
        if said := "; ".join(one.words for one in things if one.section == section):
            parts.append(f"{head}: {said}")
    return ". ".join(parts)


def _one(text: str, unit: str) -> RoomItem | str:
    for words, where in _ELSEWHERE:
        if re.search(words, text, re.IGNORECASE):
            return f"'{text}': {where}"
    height, scale = _HEIGHT.search(text.lower()), _SCALE.search(text.lower())
    measure = height or scale
    rest = text if measure is None else f"{text[: measure.start()]} {text[measure.end() :]}"
    counted = _COUNTED.fullmatch(" ".join(rest.split()).strip(" .:()-"))
    name = counted[2].strip(" .:()-") if counted else ""
    name = re.sub(r"^(a|an|the|some|with)\s+", "", name, flags=re.IGNORECASE)
    if not re.search("[A-Za-z]", name) or re.search(r"\d", name):
        return f"can't read '{text}'; write things like '{EXAMPLES[unit]}'"
    said = (counted[1] or counted[3]) if counted else None
    number = int(said) if said else None
    if number is not None and not 0 < number <= 100:
        return f"'{text}': from 1 to 100 of a thing, not {number}"
    thing = RoomItem("machines", name, number)
    if height is not None:
        return _high(thing, text, height)
    if scale is not None:
        return _scaled(thing, text, scale, unit)
    if _STACK.search(name):
        return f"'{text}' says no pins; write it like '{name} 5-50 by 5'"
    if _HIGH.search(name):
        return f"'{text}' says no height; write it like '{_single(name)} {_sample(unit)}'"
    if _KIT.search(name):
        return replace(thing, section="kit", name=_single(name), fixed=bool(_FIXED.search(name)))
    return thing


def _high(thing: RoomItem, text: str, height: re.Match[str]) -> RoomItem | str:
    unit = "cm" if height[2] == "cm" else "in"
    low, high = _HEIGHTS[unit]
    if not low <= Decimal(height[1]) <= high:
        return f"'{text}': a height from {low} to {high} {unit}"
    measure = f"{plain(Decimal(height[1]))} {unit}"
    return replace(thing, section="kit", name=f"{measure} {_single(thing.name)}", height=measure)


def _scaled(thing: RoomItem, text: str, scale: re.Match[str], unit: str) -> RoomItem | str:
    low, high = Decimal(scale[1]), Decimal(scale[3])
    is_stack = bool(_STACK.search(thing.name))
    if _KIT.search(thing.name) and not is_stack:
        return f"can't tell what '{scale[0].strip()}' is in '{text}'; write its count or height"
    if is_stack and scale[5] is None:
        return f"'{text}' says no step; write it like '{thing.name} {scale[0].strip()} by 5'"
    by = Decimal(scale[5] or 1)
    if by <= 0 or low > high or (is_stack and low <= 0):
        return f"'{text}': write the lowest first, such as '{thing.name} 5-50 by 5'"
    if (high - low) / by > _MOST_SETTINGS:
        return f"'{text}' has too many settings; check the step"
    if (high - low) % by:
        end = plain(low + (high - low) // by * by)
        return (
            f"'{text}' does not end there; write '{thing.name} {plain(low)}-{end} by {plain(by)}'"
        )
    said = scale[2] or scale[4] or (unit if is_stack else "")
    section = "stacks" if is_stack else "machines"
    return replace(thing, section=section, scale=(low, high, by), unit=said)


def _single(name: str) -> str:
    """One of several, of the words that are known."""
    found = _KIT.search(name)
    if found is None or found[2] is None:
        return name
    return f"{name[: found.start()]}{found[1]}{name[found.end() :]}"


def _sample(unit: str) -> str:
    return "20 cm" if unit == "kg" else "8 in"
