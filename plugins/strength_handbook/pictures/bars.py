"""A small bar chart, one bar a week."""

from collections.abc import Sequence
from html import escape

_BAR, _GAP, _TOP, _HEIGHT, _FOOT = 22, 6, 16, 60, 16


def week_bars(title: str, values: Sequence[tuple[str, float]], unit: str) -> str:
    """A figure with one bar for each week; the numbers stand over the bars.

    Args:
        title: what is counted.
        values: label and value of each bar, in order.
        unit: unit of the values, or empty.
    """
    most = max((value for _, value in values), default=0) or 1
    width = len(values) * (_BAR + _GAP) + _GAP
    parts = []
    for index, (label, value) in enumerate(values):
        height = round(_HEIGHT * value / most, 1)
        x = _GAP + index * (_BAR + _GAP)
        y = _TOP + _HEIGHT - height
        middle = x + _BAR / 2
        parts.append(
            f'<rect x="{x}" y="{y:g}" width="{_BAR}" height="{height:g}"/>'
            f'<text x="{middle:g}" y="{y - 3:g}">{value:.0f}</text>'
            f'<text x="{middle:g}" y="{_TOP + _HEIGHT + 12}">{escape(label)}</text>'
        )
    said = ", ".join(f"week {label}: {value:.0f}" for label, value in values)
    suffix = f", {unit}" if unit else ""
    return (
        f'<figure class="sh-bars" data-search-exclude>'
        f"<figcaption>{escape(title)}{suffix}</figcaption>"
        f'<svg viewBox="0 0 {width} {_TOP + _HEIGHT + _FOOT}" role="img" '
        f'aria-label="{escape(title)} {escape(said)}">{"".join(parts)}</svg></figure>'
    )
