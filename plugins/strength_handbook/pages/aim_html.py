"""Paces and watts of tested bests as a look-up strip."""

from html import escape

from strength_handbook.model.length import length_text
from strength_handbook.model.printed import NBSP, split, whole_watts
from strength_handbook.plan.aims import Aim, AimStrip


def _cells(strip: AimStrip, aim: Aim) -> list[str]:
    found = [split(aim.pace_s)] if aim.pace_s else []
    found += [split(aim.piece_s)] if strip.metres else []
    return [*found, whole_watts(aim.watts)] if aim.watts else found


def aim_strip_html(strip: AimStrip, asked: str) -> str:
    """A strip to read off: the best, and today's pace, piece and watts.

    Args:
        strip: the strip.
        asked: what is asked of the best, as on a board.
    """
    first = strip.rows[0][1]
    heads = [f"for {strip.going.per}".replace(" ", NBSP)] if first.pace_s else []
    heads += [f"each {length_text(strip.metres, gap=NBSP)}"] if strip.metres else []
    heads += ["W"] if first.watts else []
    over = escape(strip.best.over.text.replace(" ", NBSP))
    columns = "".join(f'<th scope="col">{head}</th>' for head in (f"best, {over}", *heads))
    rows = "".join(
        f'<tr><th scope="row">{result.label.replace(" ", NBSP)}</th>'
        + "".join(f"<td><b>{cell}</b></td>" for cell in _cells(strip, aim))
        + "</tr>"
        for result, aim in strip.rows
    )
    return (
        f'<table class="sh-strip"><caption>{escape(strip.best.name)}, {escape(asked)}</caption>'
        f"<thead><tr>{columns}</tr></thead><tbody>{rows}</tbody></table>"
    )
