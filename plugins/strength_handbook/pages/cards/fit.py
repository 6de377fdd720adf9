"""The largest letters with which a card fits on one side, and what to shorten where none do.

Lengths are in points; `inside` is where a card's words stand. They mirror the rules for cards in
`print.css`; a test prints every card of the demo and of a book with very long texts, and counts
the sheets.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from strength_handbook.model.paper import MM, Paper, Size
from strength_handbook.pages.cards.card import Card, DoseRow
from strength_handbook.pages.cards.strips import CardStrip
from strength_handbook.pages.cards.text_size import height, width
from strength_handbook.plan.remembered import remembered

MARGIN = 7 * MM
"""On each side of a card."""
CODE = 62.0
"""The phone code at the top right, with the gap beside it."""
WEEK = 48.0
"""Column of the weeks beside the doses."""
GAP = 10.0
STRIP_SHARE = 0.58
LEGIBLE = 7.5
DOSES_SHARE = 0.32
"""Doses that take more of a card than this leave no room for the rest."""


@dataclass(frozen=True, slots=True)
class FitStep:
    """Sizes of the letters: name, dose, what is said of the dose, cues, the rest."""

    name: float
    dose: float
    details: float
    cue: float
    text: float
    rows: int
    """Most rows of a strip."""

    @property
    def stop(self) -> float:
        """Size of the line that ends a set."""
        return self.text + 1.5


_SIZES = (
    (30, 36, 22, 16, 10, (16,)), (28, 32, 20, 15, 9.5, (16,)), (28, 28, 18, 15, 9, (16, 12)),
    (26, 26, 18, 14, 9, (16, 12)), (26, 24, 18, 14, 8.5, (16, 12)), (26, 22, 18, 13, 8.5, (16, 12)),
    (24, 20, 18, 13, 8, (16, 12, 9)), (24, 18, 18, 12, 8, (16, 12, 9)),
    (24, 18, 18, 12, 7.5, (16, 12, 9)), (24, 18, 18, 11, 7, (16, 12, 9, 7)),
    (24, 18, 18, 11, 6.5, (9, 7, 5)),
)  # fmt: skip
STEPS = tuple(
    FitStep(name, dose, details, cue, text, most)
    for name, dose, details, cue, text, rows in _SIZES
    for most in rows
)
"""From the largest letters to the smallest, and a shorter strip before smaller ones."""


def inside_of(paper: Paper) -> Size:
    """Where the words of a card stand: whole points, and a little to spare.

    >>> from strength_handbook.model.paper import A4, LETTER
    >>> inside_of(A4), inside_of(LETTER)
    (Size(width=378, height=549), Size(width=355, height=566))
    """
    card = paper.card
    return Size(int(card.width - 2 * MARGIN) - 1, int(card.height - 2 * MARGIN) - 6)


def fit(card: Card, inside: Size) -> tuple[Card, FitStep]:
    """The card, shortened only where it must be, and the sizes with which it fits."""
    step = _largest(card, inside)
    if step is not None:
        return card, _grown(card, step, inside)
    last = STEPS[-1]
    for shorter in _shortened(card):
        card = shorter
        if card_height(card, last, inside) <= inside.height:
            break
    return card, last


def wants_two(card: Card, inside: Size) -> bool:
    """True where many doses leave too little for the rest: the weeks belong on several cards."""
    if len(card.doses) < 2:
        return False
    if _doses(card.doses, card.always, STEPS[-1], inside) <= inside.height * DOSES_SHARE:
        return False
    step = _largest(card, inside)
    return step is None or step.text < LEGIBLE


@remembered(256)  # asked whether weeks are to be parted, then for the sizes
def _largest(card: Card, inside: Size) -> FitStep | None:
    return next((step for step in STEPS if card_height(card, step, inside) <= inside.height), None)


def _grown(card: Card, step: FitStep, inside: Size) -> FitStep:
    """The same with a larger dose, then larger cues, as far as there is room."""
    for dose in range(36, int(step.dose), -1):
        if card_height(card, bigger := replace(step, dose=dose), inside) <= inside.height:
            step = bigger
            break
    for cue in range(18, int(step.cue), -1):
        if card_height(card, bigger := replace(step, cue=cue), inside) <= inside.height:
            return bigger
    return step


def card_height(card: Card, step: FitStep, inside: Size) -> float:
    """Height of a card with letters of some sizes."""
    return (
        head_height(card, step, inside.width - CODE)
        + _doses(card.doses, card.always, step, inside)
        + _body(card, step, inside)
        + 4
        + sum(height(f"“{cue}”", step.cue, inside.width, 1.18, bold=True) for cue in card.cues)
        + _box(f"Stop {card.stop}", step.stop, inside)
        + _help(card, step.text, inside)
        + 30
        + height(f"Card code XXXXX. {foot(card)}", 8, inside.width, 1.2)
    )


def foot(card: Card) -> str:
    """The last line, after the code."""
    until = f"Remove after {card.until}." if card.until else "Remove when the version changes."
    rest = "Where it says …, and more" if card.shortened else "More"
    return f"Version {card.version}. {until} {rest}: exercises/{card.key}/"


def head_height(card: Card, step: FitStep, wide: float) -> float:
    """Height of name and place in a column of some width, beside the phone code."""
    name = height(card.name, step.name, wide, 1.08, bold=True)
    return max(CODE, name + height(card.place, 9, wide, 1.25) + 4) + 2


def _doses(doses: tuple[DoseRow, ...], always: str, step: FitStep, inside: Size) -> float:
    wide = inside.width - WEEK - 4
    total = height(f"Always {always}", step.details, inside.width, 1.15) + 2 if always else 0.0
    for row in doses:
        core, details = row.core, row.details
        beside = width(core, step.dose, bold=True) + 8 + width(details, step.details)
        tall = step.dose * 1.12
        if beside > wide:
            tall = height(core, step.dose, wide, 1.12, bold=True)
            tall += height(details, step.details, wide, 1.15)
        total += max(tall, height(row.when, 9, WEEK, 1.2, bold=True)) + 3
    return total


def taken_at_right(card: Card, step: FitStep, inside: Size) -> bool:
    """True where the column of the set-up is the shorter one."""
    left, right, taken = _columns(card, step.text, step.rows, inside)
    return right + taken[1] < left + taken[0]


def _body(card: Card, step: FitStep, inside: Size) -> float:
    """Two columns: strips or how to choose, and the set-up."""
    left, right, taken = _columns(card, step.text, step.rows, inside)
    if right + taken[1] < left + taken[0]:
        return max(left, right + taken[1]) + 4
    return max(left + taken[0], right) + 4


@remembered(256)  # larger doses and cues are tried beside the same columns
def _columns(
    card: Card, size: float, most_rows: int, inside: Size
) -> tuple[float, float, tuple[float, float]]:
    """Heights of both columns, and of what may stand in either."""
    share = STRIP_SHARE if card.strips else 0.5
    left_room, right_room = (inside.width - GAP) * share, (inside.width - GAP) * (1 - share)
    left = sum(_strip(strip, size, most_rows, left_room) for strip in card.strips)
    left += _paragraph(f"{card.asked} {card.how}", size, left_room) if card.how else 0.0
    right = _paragraph("Set up", size, right_room)
    right += sum(_paragraph(line, size, right_room - 12) for line in card.set_up)
    taken = f"It's taken {card.taken}" if card.taken else ""
    return left, right, (_paragraph(taken, size, left_room), _paragraph(taken, size, right_room))


def strip_widths(strip: CardStrip) -> list[float]:
    """Shares of the columns of a strip: first figure, loads, plates."""
    parts = [1.2, *(1.0 for _ in strip.columns), *([2.6] if strip.plates_head else [])]
    return [part / sum(parts) for part in parts]


def _strip(strip: CardStrip, size: float, most_rows: int, wide: float) -> float:
    rows = strip.shown(most_rows)
    widths = [wide * share - 3 for share in strip_widths(strip)]
    heads = [strip.first, *(f"{column.weeks} {column.share}" for column in strip.columns)]
    heads += [strip.plates_head] if strip.plates_head else []
    head = max(
        height(text, size * 0.85, column, 1.25, bold=True)
        for text, column in zip(heads, widths, strict=True)
    )
    # Two lines of a head may stand apart: weeks above, share below.
    head += size * 1.1
    body = 0.0
    for _, loads, plates in rows:
        plain = max(height(load, size, widths[1], 1.2, bold=True) for load in loads)
        last = height(plates, size, widths[-1], 1.2) if plates else 0.0
        body += max(plain, last, size * 1.2) + size * 0.2 + 1
    return height(strip.name, size * 0.9, wide, 1.25) + head + body + 6


def _paragraph(text: str, size: float, wide: float) -> float:
    return height(text, size, wide, 1.22) + size * 0.25


def _box(text: str, size: float, inside: Size) -> float:
    return height(text, size, inside.width - 14, 1.2) + 10


def _help(card: Card, size: float, inside: Size) -> float:
    wide = inside.width - 14
    lines = [f"Spotting {card.spotting}", f"Alone? {card.alone}"]
    lines += [f"Care {card.caution}"] if card.caution else []
    return sum(_paragraph(line, size, wide) for line in lines) + 8


def _shortened(card: Card) -> Iterator[Card]:
    """Ever shorter versions; stop line, caution and training alone lose words last."""
    for most in (300, 220, 160, 110, 80, 55, 40):
        yield replace(
            card,
            shortened=True,
            doses=tuple(replace(row, details=_clip(row.details, most)) for row in card.doses),
            always=_clip(card.always, most),
            how=_clip(card.how, most),
            set_up=tuple(_clip(line, most // 2) for line in card.set_up),
            cues=tuple(_clip(cue, most) for cue in card.cues),
            stop=_clip(card.stop, most * 4),
            spotting=_clip(card.spotting, most * 2),
            alone=_clip(card.alone, most * 3),
            taken=_clip(card.taken, most),
            caution=_clip(card.caution, most * 3),
            strips=card.strips[:2] if most > 110 else card.strips[:1],
        )


def _clip(text: str, most: int) -> str:
    """The first words of a long text; the card's foot says where the rest is.

    >>> _clip("Set the safeties one hole below.", 40), _clip("Set the safeties below.", 14)
    ('Set the safeties one hole below.', 'Set the …')
    """
    if len(text) <= most:
        return text
    return f"{text[:most].rsplit(' ', 1)[0]} …"
