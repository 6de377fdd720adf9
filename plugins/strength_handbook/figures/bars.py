"""Bars with plates, seen from their end."""

from strength_handbook.figures.body import HIGH_HANDLE, PLATE_RADIUS
from strength_handbook.figures.chain import Point, Points
from strength_handbook.figures.clearance import row
from strength_handbook.figures.drawn import Drawn
from strength_handbook.figures.outlines import SCALE, line, place
from strength_handbook.model.figure import Held

HUB = 7 / SCALE
"""Radius of a sleeve as it is drawn; a bar touches what is as far from its middle."""
_OVER = ((-0.035, 0.050), (0.035, 0.050), (0.085, 0.020))
"""Places ahead of the shoulder and above it where a yoke lies on it, drawn by eye."""
_SPINE, _SLEEVE = (-0.070, 0.0), (0.012, 0.005)
"""Where a yoke's bar lies on the upper back, and where its sleeves are: bent ahead, to about the
line of the shoulders; common practice, no source."""
FRAME = 66
"""Half of a trap bar's frame, units."""
TRAP_BARS = ("trap-bar", "empty-trap-bar")


def bar_place(points: Points, held: Held) -> Point | None:
    """Where the middle of a bar with plates is, seen from its end; None for what has none."""
    x, y = points["hand"]
    match held:
        case "bar" | "pivot-bar" | "empty-bar":
            return x, y
        case "trap-bar" | "empty-trap-bar":
            return x, y - HIGH_HANDLE
        case "yoke-bar":
            return _from_shoulder(points, *_SLEEVE)
        case _:
            return None


def yoke_spine(points: Points) -> Point:
    """Where the padded bar of a yoke lies on the upper back."""
    return _from_shoulder(points, *_SPINE)


def _from_shoulder(points: Points, ahead: float, up: float) -> Point:
    """A place near the shoulder, counted along the trunk and square to it."""
    hip, shoulder = points["hip"], points["shoulder"]
    x, y = (shoulder[0] - hip[0]) / 0.288, (shoulder[1] - hip[1]) / 0.288
    return shoulder[0] + up * x + ahead * y, shoulder[1] + up * y - ahead * x


def draw_bar(points: Points, held: Held, at: Point) -> Drawn:
    """A bar with or without plates; a trap bar with its frame, a yoke bar with its handles."""
    frame, ends = "", tuple[tuple[Point, float], ...]()
    if held in TRAP_BARS:
        frame = _trap_frame(at)
        ends = tuple(row([(at[0] - FRAME / SCALE, at[1]), (at[0] + FRAME / SCALE, at[1])], 0.02))
    if held == "yoke-bar":
        frame = _yoke(points)
    if held.startswith("empty"):
        return Drawn("", _circle(at, HUB, "hub"), ((at, 0.04), *ends), between=frame)
    x, y = place(at)
    ring = (
        f'<circle class="rim" cx="{x:.0f}" cy="{y:.0f}" r="{PLATE_RADIUS * SCALE:.0f}"/>'
        f'<circle class="rim" cx="{x:.0f}" cy="{y:.0f}" r="{PLATE_RADIUS * SCALE - 8:.0f}"/>'
        f'<circle class="hub" cx="{x:.0f}" cy="{y:.0f}" r="5"/>'
    )
    disc = _circle(at, PLATE_RADIUS, "disc")
    if held == "yoke-bar":
        return Drawn(disc, frame + ring, ((at, PLATE_RADIUS),))
    return Drawn(disc, ring, ((at, PLATE_RADIUS), *ends), between=frame)


def _circle(at: Point, radius: float, name: str) -> str:
    x, y = place(at)
    return f'<circle class="{name}" cx="{x:.0f}" cy="{y:.0f}" r="{radius * SCALE:.0f}"/>'


def _trap_frame(at: Point) -> str:
    """The frame round the lifter, level with the sleeves, and one high handle above it."""
    x, y = place(at)
    high = HIGH_HANDLE * SCALE
    return (
        f'<path class="rod" d="M{x - FRAME:.0f} {y:.0f}h{2 * FRAME}'
        f'M{x - 24:.0f} {y:.0f}l5-{high:.0f}h38l5 {high:.0f}"/>'
    )


def _yoke(points: Points) -> str:
    """From the bar on the upper back over the shoulder to the handle in front, below the jaw."""
    spine = yoke_spine(points)
    path = line([spine, *(_from_shoulder(points, *one) for one in _OVER), points["hand"]])
    bar = _circle(spine, HUB, "hub")
    return f'<path class="halo" d="{path}"/><path class="rod" d="{path}"/>{bar}'
