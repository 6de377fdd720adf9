"""A curve through measured points that never overshoots them.

Band tension and strap load are known at a few measured points only. A plain cubic spline or a
fitted parabola through such points can turn downwards between or beyond them; this curve cannot.
"""

from bisect import bisect_right
from collections.abc import Sequence
from itertools import pairwise

from strength_handbook.calc.registry import Evidence, OutOfRangeError, formula


def _end_slope(h0: float, h1: float, d0: float, d1: float) -> float:
    """Slope at the first point from the two nearest intervals (widths h, slopes d)."""
    slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1)
    if slope * d0 <= 0:
        return 0.0
    if d0 * d1 <= 0 and abs(slope) > 3 * abs(d0):
        return 3 * d0
    return slope


def _inner_slope(h0: float, h1: float, d0: float, d1: float) -> float:
    """Weighted harmonic mean of the slopes beside a point; 0 where the data turn."""
    if d0 * d1 <= 0:
        return 0.0
    w0, w1 = 2 * h1 + h0, h1 + 2 * h0
    return (w0 + w1) / (w0 / d0 + w1 / d1)


def _slopes(h: Sequence[float], d: Sequence[float]) -> list[float]:
    if len(d) == 1:
        return [d[0], d[0]]
    inner = [_inner_slope(h[i], h[i + 1], d[i], d[i + 1]) for i in range(len(d) - 1)]
    first = _end_slope(h[0], h[1], d[0], d[1])
    last = _end_slope(h[-1], h[-2], d[-1], d[-2])
    return [first, *inner, last]


@formula(
    subject="Interpolation",
    title="Smooth curve through measured points, without overshoot",
    equation="monotone cubic: the slope at a point is the weighted harmonic mean of the slopes "
    "beside it, 0 where they change sign",
    inputs={
        "xs": "places that were measured, rising",
        "ys": "values that were measured there",
        "x": "place wanted, between them",
    },
    output="value at that place, in the unit of the measured ones",
    source="Fritsch FN, Butland J 1984, SIAM J Sci Stat Comput 5:300–304",
    evidence=Evidence.PUBLISHED,
    error="Passes through every point; between them as good as the points are dense.",
)
def fritsch_butland_1984(xs: Sequence[float], ys: Sequence[float], x: float) -> float:
    """Value at `x` of the monotone cubic through the points; a straight line through two.

    Raises:
        ValueError: for fewer than two points, unequal lengths or places that do not rise.
        OutOfRangeError: for an `x` outside the points; the curve is never extended.

    Example:
        >>> fritsch_butland_1984([0.2, 0.6, 1.0], [3.0, 9.0, 12.0], 0.8)
        10.8125
    """
    if len(xs) != len(ys) or len(xs) < 2:
        raise ValueError(f"needs two or more points, has {len(xs)} places and {len(ys)} values")
    h = [b - a for a, b in pairwise(xs)]
    if min(h) <= 0:
        raise ValueError(f"places must rise from point to point: {', '.join(map(str, xs))}")
    if not xs[0] <= x <= xs[-1]:
        raise OutOfRangeError("fritsch_butland_1984", "x", x, xs[0], xs[-1])
    d = [(ys[i + 1] - ys[i]) / h[i] for i in range(len(h))]
    m = _slopes(h, d)
    i = min(bisect_right(xs, x) - 1, len(h) - 1)
    t = (x - xs[i]) / h[i]
    rise = h[i] * (m[i] * t * (1 - t) ** 2 - m[i + 1] * t * t * (1 - t))
    return ys[i] * (1 - t) ** 2 * (1 + 2 * t) + ys[i + 1] * t * t * (3 - 2 * t) + rise
