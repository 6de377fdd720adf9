"""The exercise's drawing at the head of its card, between name and code, where there is room."""

import re
from typing import NamedTuple

from strength_handbook.figures.outlines import SCALE
from strength_handbook.figures.sheet import figure_svg
from strength_handbook.model.paper import Size
from strength_handbook.pages.cards.card import Card
from strength_handbook.pages.cards.fit import CODE, FitStep, head_height
from strength_handbook.pages.cards.text_size import width
from strength_handbook.plan.remembered import remembered
from strength_handbook.plan.worked import Worked

LEAST = 36.0
"""Points that a standing body has at least: below it no joint is to be seen; tried on paper."""
GAP = 6.0
SLACK = 14.0
"""Points by which a line of the name may be wider than measured, or it takes one line more."""
_STEP = 4
_BOX = re.compile(r'viewBox="0 0 (\d+) (\d+)"')


class Drawing(NamedTuple):
    """A drawing with its room on a card.

    Attributes:
        svg: the drawing.
        words, height: width of the name beside it, and its own height, points.
    """

    svg: str
    words: float
    height: float


def drawing(worked: Worked, card: Card, step: FitStep, inside: Size) -> Drawing | None:
    """What fits beside the name without another line of it; None where that is too small.

    Args:
        worked: the programs.
        card: as it fits.
        step: its sizes.
        inside: where its words stand, as `fit.inside_of` says.
    """
    svg = _svg(worked, card.key)
    box = _BOX.search(svg)
    if box is None:
        return None
    beside = inside.width - CODE
    tall = head_height(card, step, beside)
    longest = max(width(word, step.name, bold=True) for word in card.name.split())
    words = next(
        (
            wide
            for wide in range(int(max(100, longest + SLACK)), int(beside), _STEP)
            if head_height(card, step, wide - SLACK) <= tall
        ),
        beside,
    )
    wide, high = map(int, box.groups())
    scale = min((beside - words - GAP) / wide, (tall - 2) / high)
    if scale * SCALE < LEAST:
        return None
    return Drawing(svg, words, scale * high)


@remembered(128)  # one exercise has a card in each wave
def _svg(worked: Worked, key: str) -> str:
    exercise = worked.book.exercises[key]
    if exercise.figure is None:
        return ""
    return figure_svg(exercise.figure, exercise.name, small=True)
