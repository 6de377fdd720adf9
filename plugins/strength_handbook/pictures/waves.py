"""What a program asks for from week to week, as rows of bars: a row for each measure."""

from collections.abc import Sequence
from dataclasses import dataclass
from html import escape
from itertools import groupby

_SIDE, _COLUMN, _GAP = 54, 22, 4
_ROW, _BETWEEN, _TOP, _FOOT = 40, 10, 4, 46
_NARROWEST = 300
"""A program of two weeks would fill a phone with letters three times as large."""


@dataclass(frozen=True)
class WaveColumn:
    """One week of the chart.

    Attributes:
        week: its number.
        wave: title of its wave; neighbours with the same title share one label.
        quiet: an easy week or one of tests, drawn lighter.
    """

    week: int
    wave: str
    quiet: bool = False


@dataclass(frozen=True)
class WaveRow:
    """One measure over all weeks.

    Attributes:
        name: what stands beside the row, a word.
        counts: what is counted, for those who listen.
        values: one for each week, in the row's own unit.
    """

    name: str
    counts: str
    values: Sequence[float]


def wave_chart(columns: Sequence[WaveColumn], rows: Sequence[WaveRow]) -> str:
    """A figure: every row is drawn against its own largest week; nothing where there is nothing.

    Bars of a week carry its number, so that a script can mark today's. The numbers are said as the
    figure's name.

    Args:
        columns: weeks in order.
        rows: measures in order; one that is nought in all weeks is left out.

    >>> wave_chart([WaveColumn(1, "Brakes")], [WaveRow("lower", "Seconds of lowering", [0.0])])
    ''
    """
    rows = [row for row in rows if any(row.values)]
    if not rows:
        return ""
    parts = [part for place, row in enumerate(rows) for part in _row(columns, row, _top(place))]
    foot = _top(len(rows)) - _BETWEEN
    parts += _numbers(columns, foot + 16) + _waves(columns, foot + 38)
    width, height = max(_left(len(columns)), _NARROWEST), foot + _FOOT
    return (
        f'<figure class="sh-waves" data-search-exclude><svg viewBox="0 0 {width} {height}" '
        f'role="img" aria-label="{escape(_said(columns, rows))}">{"".join(parts)}</svg></figure>'
    )


def _top(row: int) -> int:
    return _TOP + row * (_ROW + _BETWEEN)


def _left(column: int) -> int:
    return _SIDE + column * (_COLUMN + _GAP)


def _row(columns: Sequence[WaveColumn], row: WaveRow, top: int) -> list[str]:
    most = max(row.values)
    bottom = top + _ROW
    parts = [f'<text class="is-name" x="0" y="{bottom}">{escape(row.name)}</text>']
    for place, (column, value) in enumerate(zip(columns, row.values, strict=True)):
        height = round(_ROW * value / most, 2)
        quiet = ' class="is-quiet"' if column.quiet else ""
        parts.append(
            f'<rect{quiet} data-week="{column.week}" x="{_left(place)}" '
            f'y="{round(bottom - height, 2):g}" width="{_COLUMN}" height="{height:g}"/>'
        )
    return parts


def _numbers(columns: Sequence[WaveColumn], y: int) -> list[str]:
    middle = _COLUMN / 2
    return [
        f'<text data-week="{one.week}" x="{_left(place) + middle:g}" y="{y}">{one.week}</text>'
        for place, one in enumerate(columns)
    ]


def _waves(columns: Sequence[WaveColumn], y: int) -> list[str]:
    """The waves' names under a line as long as each of them."""
    parts = []
    for wave, run in groupby(enumerate(columns), key=lambda item: item[1].wave):
        places = [place for place, _ in run]
        left, right = _left(places[0]), _left(places[-1]) + _COLUMN
        room = (right - left) // 7
        name = wave if len(wave) <= room else wave[: max(room - 1, 1)].rstrip() + "…"
        parts.append(
            f'<path d="M{left} {y - 14}H{right}"/>'
            f'<text x="{(left + right) / 2:g}" y="{y}">{escape(name)}</text>'
        )
    return parts


def _said(columns: Sequence[WaveColumn], rows: Sequence[WaveRow]) -> str:
    weeks = [column.week for column in columns]
    return " ".join(
        f"{row.counts}: "
        + ", ".join(
            f"week {week} {value:.0f}" for week, value in zip(weeks, row.values, strict=True)
        )
        + "."
        for row in rows
    )
