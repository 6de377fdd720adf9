"""The other spellings of a dose as a list, for the page that teaches how it is written."""

from collections.abc import Iterator
from html import escape

from strength_handbook.dose.spelled_units import UNITS
from strength_handbook.dose.spelling import house_example
from strength_handbook.dose.spellings import SPELLINGS

_NOTHING = "adds nothing"
"""What stands in place of a notation for words that are read and not counted."""


def spellings_list() -> str:
    """Each of the house's notations with all other ways to write it, then units; with examples."""
    return f'<dl class="sh-spellings">{"".join(map(_entry, [*_notations(), *_units()]))}</dl>'


def _notations() -> Iterator[tuple[str, list[str]]]:
    """Those that come to the same notation together, each example once."""
    rows: dict[str, list[str]] = {}
    for one in SPELLINGS:
        house = house_example(one)
        several = rows.setdefault(house, [])
        for way in one.ways:
            several += (text for text in way.examples if text not in (house, *several))
    return ((house, several) for house, several in rows.items() if several)


def _units() -> Iterator[tuple[str, list[str]]]:
    """Units with the other words and signs for them."""
    return ((unit, [one for one in several if one != unit]) for unit, several in UNITS.items())


def _entry(row: tuple[str, list[str]]) -> str:
    house, several = row
    shown = f"<code>{escape(house, quote=False)}</code>" if house else _NOTHING
    texts = " ".join(f"<code>{escape(one, quote=False)}</code>" for one in several)
    return f"<dt>{shown}</dt><dd>{texts}</dd>"
