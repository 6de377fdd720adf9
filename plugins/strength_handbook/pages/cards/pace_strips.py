"""The strips of a card for what is rowed, run or ridden: from a tested best to each week's pace."""

from collections.abc import Iterator
from itertools import pairwise

from strength_handbook.model.best import Best
from strength_handbook.model.length import length_text
from strength_handbook.model.printed import NBSP, split, whole_watts
from strength_handbook.pages.cards.strips import CardStrip, Column
from strength_handbook.pages.cards.weeks import weeks_apart
from strength_handbook.pages.load_html import DASH
from strength_handbook.plan.aims import Aim, AimStrip
from strength_handbook.plan.worked import Use

MOST_COLUMNS = 4
"""Paces in one strip; a range is wider than a load."""

_Asked = tuple[str, float, bool]
"""What is asked of a best, metres of a piece, and whether its time is the column."""


def pace_strips_of(uses: tuple[Use, ...]) -> Iterator[CardStrip]:
    """The strips of an exercise's uses by pace or watts, one or more for each tested best."""
    groups: dict[Best, dict[_Asked, list[tuple[Use, AimStrip]]]] = {}
    for use in uses:
        if (strip := use.slot.aims) is None or use.slot.dose.load is None:
            continue
        columns = groups.setdefault(strip.best, {})
        asked = use.slot.dose.load.text
        columns.setdefault((asked, 0.0, False), []).append((use, strip))
        if strip.metres:
            columns.setdefault((asked, strip.metres, True), []).append((use, strip))
    for best, found in groups.items():
        several = list(found.items())
        starts = [*range(0, len(several), MOST_COLUMNS), len(several)]
        for start, end in pairwise(starts):
            yield _strip(best, several[start:end])


def _strip(best: Best, columns: list[tuple[_Asked, list[tuple[Use, AimStrip]]]]) -> CardStrip:
    whole, pieces = ([one for one in columns if one[0][2] is timed] for timed in (False, True))
    weeks = {
        asked: head
        for some in (whole, pieces)
        for (asked, _), head in zip(
            some, weeks_apart([[use for use, _ in found] for _, found in some]), strict=True
        )
    }
    heads = tuple(Column(weeks[asked], _share(asked, found[0][1])) for asked, found in columns)
    aims = [{one.label: aim for one, aim in found[0][1].rows} for _, found in columns]
    rows = tuple(
        (
            one.label.replace(" ", NBSP),
            tuple(
                _cell(own.get(one.label), timed=asked[2])
                for (asked, _), own in zip(columns, aims, strict=True)
            ),
            "",
        )
        for one in best.rows
    )
    first = f"your best, {best.over.text.replace(' ', NBSP)}"
    return CardStrip(best.name, first, heads, rows)


def _share(asked: _Asked, strip: AimStrip) -> str:
    text, metres, timed = asked
    if timed:
        return f"each {length_text(metres, gap=NBSP)}"
    per = "" if not strip.best.over.metres else f", for {strip.going.per.replace(' ', NBSP)}"
    return f"{text.replace(' ', NBSP)}{per or ', W'}"


def _cell(aim: Aim | None, *, timed: bool) -> str:
    if aim is None:
        return DASH
    if timed:
        return split(aim.piece_s)
    return split(aim.pace_s) if aim.pace_s else whole_watts(aim.watts)
