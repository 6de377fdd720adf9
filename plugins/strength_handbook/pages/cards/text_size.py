"""How much room a text takes on paper, reckoned without a browser.

Widths are those of Liberation Sans, which has the widths of the usual sans-serif letters of
office computers. The style sheet asks for those letters and evens out others.
"""

from functools import lru_cache

_REGULAR = {
    191: "'", 222: "ijl’", 260: "|", 278: " \u00a0!,./:;I[]ft·", 333: "()-`r“”{}", 355: '"',
    400: "*°", 500: "Jcksvxyz↓", 556: "#$0123456789?L_abdeghnopqu–", 584: "+<=>~×−", 618: "FTZΣ",
    667: "&ABEKPSVXY", 722: "CDHNRUw", 778: "GOQ", 834: "Mm½", 889: "%", 944: "W", 1015: "→…@",
}  # fmt: skip
_BOLD = {
    238: "'", 278: " \u00a0,./I\\ijl·’", 333: "!()-:;[]`ft|", 400: "*r{}°", 474: '"', 500: "z↓“”",
    556: "#$0123456789J_aceksvxy–", 584: "+<=>~×−", 611: "?FLTZbdghnopquΣ", 667: "EPSVXY",
    722: "&ABCDHKNRU", 778: "GOQw", 834: "M½", 889: "%m", 944: "W", 1000: "→…@",
}  # fmt: skip
_USUAL = 611
_WIDE = 1000
_FIRST_WIDE = 0x2E80
SPARE = 1.03
"""Other letters than those measured run a little wider."""


def _by_letter(widths: dict[int, str]) -> dict[str, int]:
    return {letter: width for width, letters in widths.items() for letter in letters}


_WIDTHS = {False: _by_letter(_REGULAR), True: _by_letter(_BOLD)}


@lru_cache(maxsize=65536)
def width(text: str, size: float, *, bold: bool = False) -> float:
    """Width of a text on one line, in the unit of its size.

    >>> width("4 × 5", 36)
    83.50
    """
    known = _WIDTHS[bold]
    units = sum(
        known.get(letter, _WIDE if ord(letter) >= _FIRST_WIDE else _USUAL) for letter in text
    )
    return units * size * SPARE / 1000


@lru_cache(maxsize=65536)
def lines(text: str, size: float, room: float, *, bold: bool = False) -> int:
    """Lines that a text takes in a column; a word longer than the column is broken.

    >>> lines("one two three", 10, 1000), lines("one two three", 10, 45), lines("", 10, 45)
    (1, 2, 0)
    """
    if not text.strip():
        return 0
    space = width(" ", size, bold=bold)
    count, used = 1, 0.0
    for word in text.split(" "):
        wide = width(word, size, bold=bold)
        if used and used + space + wide > room:
            count, used = count + 1, 0.0
        used += wide + (space if used else 0.0)
        while used > room:
            count, used = count + 1, used - room
    return count


def height(text: str, size: float, room: float, leading: float, *, bold: bool = False) -> float:
    """Height of a text in a column; `leading` is the height of a line in parts of the size."""
    return lines(text, size, room, bold=bold) * size * leading
