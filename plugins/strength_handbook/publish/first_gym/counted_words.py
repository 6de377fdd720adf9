"""A line of counts and masses cut into its items, and each into its numbers and words."""

import re
from dataclasses import dataclass
from decimal import Decimal

_NUMBER_WORDS = {
    word: str(number)
    for number, word in enumerate(
        ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
         "twelve"), start=1,
    )
}  # fmt: skip
_UNITS = {"kg": "kg", "kgs": "kg", "kilo": "kg", "kilos": "kg", "lb": "lb", "lbs": "lb",
          "pound": "lb", "pounds": "lb", "#": "lb"}  # fmt: skip
_PAIR = {"pair", "pairs", "pr", "prs"}
_FILLERS = {"x", "×", "*", "@", "of", "a", "at", "the", "each", "per", "plates", "plate", "bars",
            "bar", "discs", "disc", "bumper", "bumpers", "-", "–", ":", "=", "(", ")", ".", "'s",
            "s", "in", "all", "have", "we", "bells", "bell", "barbell", "barbells", "olympic",
            "straight", "standard", "long", "short"}  # fmt: skip
_SIDE = {"side", "sides", "end", "ends"}

_COMMA = re.compile(r"((?:[x×*@]\s*\d{1,3})|\b[012]),(25|5|75|50)\b(?!\s*(?:kg|lb)?s?\s*[x×*:])")
"""A comma that is a point: after a mass that was counted, or in 0,5 and 1,25 and 2,5."""
_TOGETHER = re.compile(r"(\d[\d.]*\s*[a-z#]*\s*[x×*]\s*\d[\d.]*(?:\s*(?:kg|lb)s?)?)\s+(?=\d)")
_LINES = re.compile(r"[\r\n]+")
_CUT = re.compile(r"[,;/+&]|\band\b")
_MANY = rf"(?P<n>{'|'.join(_NUMBER_WORDS)}|a|\d{{1,2}})\s*[x×]?\s*"
_ALL = r"(?:each|every|all)(?:\s+(?:one|size|mass|weight|kind))?"
_OF_EACH = re.compile(
    rf"(?:\bin\s+(?P<pairs>pairs)|{_MANY}(?P<sets>pairs?\s+)?(?:of\s+{_ALL}|each))"
)
_AND = r"(?:[,;(]|\band\b|\bwith\b)"
_LAST = re.compile(
    rf"(?:(?:\s|{_AND})+(?:all\s+)?(?:{_OF_EACH.pattern})|{_AND}\s*(?P<alone>pairs))\s*\)?$"
)
"""How many there are of all that a line names: `two of each`, `a pair of every size`, `pairs`."""
_TOKEN = re.compile(r"\d+(?:\.\d+)?|'s\b|[^\W\d_]+|[^\s\w]|_")


@dataclass(frozen=True, slots=True)
class Number:
    """A number with what was said of it.

    Attributes:
        value: the number.
        unit: kg or lb, if one stands behind it.
        pairs: it counts pairs.
        plural: as in `four 45s`, so it is a mass.
    """

    value: Decimal
    unit: str = ""
    pairs: bool = False
    plural: bool = False

    @property
    def is_mass(self) -> bool:
        """True where it can't be a count."""
        return bool(self.unit) or self.plural


@dataclass(frozen=True, slots=True)
class Item:
    """One mass with its count.

    Attributes:
        text: as it stood in the line.
        numbers: in their order.
        rest: words that say nothing of number or mass.
        each_side: what is counted is at each side.
    """

    text: str
    numbers: tuple[Number, ...]
    rest: str = ""
    each_side: bool = False

    @property
    def units(self) -> tuple[str, ...]:
        """Units that it names."""
        return tuple(number.unit for number in self.numbers if number.unit)


def as_items(line: str) -> list[Item]:
    """Cut a line into its items.

    >>> [item.text for item in as_items("2x20,4x2,5 and 2 x 1.25")]
    ['2x20', '4x2.5', '2 x 1.25']
    >>> [item.text for item in as_items("45/35/25 lb")]
    ['45', '35', '25 lb']
    """
    text = _COMMA.sub(
        r"\1.\2", " ".join(_LINES.sub(", ", line.strip()).lower().replace("½", ".5").split())
    )
    text = _TOGETHER.sub(r"\1, ", text)
    items = [_item(part.strip()) for part in _CUT.split(text) if part.strip()]
    side = any(item.each_side for item in items)
    return [Item(item.text, item.numbers, item.rest, side) for item in items]


def take_of_each(line: str) -> tuple[str, int | None]:
    """A line without what it says at its end of all, and how many of each that is, or None.

    >>> take_of_each("10-60 by 5, two of each")
    ('10-60 by 5', 2)
    >>> take_of_each("20, 15 and two pairs of each size")
    ('20, 15', 4)
    >>> take_of_each("4x20, a pair of 10s")
    ('4x20, a pair of 10s', None)
    """
    found = _LAST.search(line)
    if found is None or ((found["n"] or "").isdecimal() and "of" not in found[0]):
        return line, None
    word = found["n"] or "1"
    number = int(_NUMBER_WORDS.get(word, "1" if word == "a" else word))
    paired = found["sets"] or found["pairs"] or found["alone"]
    return line[: found.start()], number * (2 if paired else 1)


def _item(text: str) -> Item:
    if _OF_EACH.fullmatch(text):
        return Item(text, ())
    numbers: list[Number] = []
    rest: list[str] = []
    side = pair_first = False
    for token in _TOKEN.findall(text):
        word = _NUMBER_WORDS.get(token, token)
        last = numbers[-1] if numbers else None
        if word[0].isdecimal():
            numbers.append(Number(Decimal(word)))
        elif last and word in _UNITS and not last.unit:
            numbers[-1] = Number(last.value, _UNITS[word], last.pairs, last.plural)
        elif last and word in ("s", "'s"):
            numbers[-1] = Number(last.value, last.unit, last.pairs, plural=True)
        elif last and word in _PAIR:
            numbers[-1] = Number(last.value, last.unit, pairs=True)
        elif word in _PAIR:
            pair_first = True
        elif word in _SIDE:
            side = True
        elif word not in _FILLERS:
            rest.append(word)
    if pair_first and len(numbers) == 1:  # a pair of 20s
        numbers.insert(0, Number(Decimal(1), pairs=True))
    return Item(text, tuple(numbers), " ".join(rest), side)
