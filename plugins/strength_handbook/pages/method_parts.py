"""Small tables, lists and loads that the parts of a method are made of."""

import re
from collections.abc import Iterable, Sequence
from html import escape
from math import ceil, floor

from strength_handbook.model.printed import NBSP, bare_mass, mass
from strength_handbook.model.quantities import GRAMS_PER_POUND, stamped
from strength_handbook.pages.load_html import DASH
from strength_handbook.plan.loads import PlannedLoad

_UNIT = re.compile(r"(?<=\d) (?=(?:(?:kg|lb|s|m)\b|%))")

_EXAMPLES = re.compile(r'<div class="sh-examples">.*?</div>', re.DOTALL)


def spaced(text: str) -> str:
    r"""Numbers stay with their units.

    >>> spaced("62.5 kg, two more"), spaced("20 sets of 5 s.")
    ('62.5\xa0kg, two more', '20 sets of 5\xa0s.')
    """
    return _UNIT.sub(NBSP, text)


def plates_moved(grams: Sequence[int], units: str) -> str:
    """Plates of one side, in the order in which they are handled."""
    return " · ".join(stamped(one, units) for one in grams)


def bare_load(load: PlannedLoad, units: str) -> str:
    """A load as a number for a cell; added to a body with its sign."""
    grams = load.actual_g
    if grams is None:
        return DASH
    if load.band:
        return f"band {load.band}"
    text = bare_mass(grams, units)
    return f"+{text}" if load.body_g and grams > 0 else text


def load_words(load: PlannedLoad, units: str) -> str:
    """A load with its unit."""
    grams = load.actual_g
    if grams is None:
        return DASH
    if load.band:
        return f"band {load.band}, about {mass(load.help_g, units)} off"
    if load.help_g:
        return f"{mass(load.help_g, units)} of help"
    if load.body_g:
        return f"+{mass(grams, units)}" if grams else "body weight"
    return mass(grams, units)


def whole_span(low_g: float, high_g: float, units: str) -> str:
    r"""A reckoned range in whole units, rounded outwards: it is never made to look narrower.

    >>> whole_span(115_000, 121_400, "kg"), whole_span(100_100, 100_900, "kg")
    ('115 to 122\xa0kg', '100 to 101\xa0kg')
    """
    unit = 1000 if units == "kg" else GRAMS_PER_POUND
    return f"{floor(low_g / unit + 1e-6)} to {ceil(high_g / unit - 1e-6)}{NBSP}{units}"


def listed(items: Iterable[str]) -> str:
    """A list."""
    return "<ul>" + "".join(f"<li>{item}</li>" for item in items) + "</ul>"


def by_lifter(lines: Iterable[tuple[str, str]], note: str = "") -> str:
    """A line for each example lifter, and a note on them; empty where there are none."""
    items = [f"{escape(name)}: {text}" for name, text in lines]
    if not items:
        return ""
    return f'<div class="sh-examples"><p>Examples:</p>{listed(items)}{note}</div>'


def without_examples(html: str) -> str:
    """The same without the example lifters.

    >>> without_examples("<p>Up.</p>" + by_lifter([("P1", "40")]) + "<p>Down.</p>")
    '<p>Up.</p><p>Down.</p>'
    """
    return _EXAMPLES.sub("", html)


def only_examples(html: str) -> str:
    """The example lifters without the rest.

    >>> only_examples("<p>Up.</p>" + by_lifter([("P1", "40")]) + "<p>Down.</p>")
    '<div class="sh-examples"><p>Examples:</p><ul><li>P1: 40</li></ul></div>'
    """
    return "".join(_EXAMPLES.findall(html))


def small_table(caption: str, heads: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """A narrow table; columns with an empty head are left out of the head."""
    head = "".join(f'<th scope="col">{text}</th>' for text in heads if text)
    body = "".join(
        f'<tr><th scope="row">{first}</th>'
        + "".join(f"<td>{cell}</td>" for cell in cells)
        + "</tr>"
        for first, *cells in rows
    )
    return (
        f'<table class="sh-strip"><caption>{escape(caption)}</caption>'
        f"<thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"
    )
