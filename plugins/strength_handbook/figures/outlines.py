"""Rounded outlines of limbs and trunk as SVG paths, in small whole numbers."""

from collections.abc import Sequence

from strength_handbook.figures.chain import Point, distance

SCALE = 360
"""Units of a drawing for one stature; a unit is about half a centimetre."""

Profile = Sequence[tuple[float, float]]
"""How far the outline is from the axis at shares of a segment's length, in statures."""

# Front and back of each part, from its upper end; drawn by eye for an adult of middle build.
THIGH = (
    ((-0.06, 0.044), (0.1, 0.062), (0.4, 0.064), (0.75, 0.046), (1.0, 0.040), (1.1, 0.026)),
    ((-0.06, 0.055), (0.1, 0.070), (0.4, 0.057), (0.75, 0.040), (1.0, 0.034), (1.1, 0.022)),
)
SHANK = (
    ((-0.09, 0.023), (0.0, 0.039), (0.3, 0.031), (0.7, 0.023), (1.0, 0.026), (1.06, 0.016)),
    ((-0.09, 0.023), (0.0, 0.035), (0.28, 0.055), (0.5, 0.045), (0.8, 0.023), (1.0, 0.026),
     (1.06, 0.016)),
)  # fmt: skip
TRUNK = (
    ((-0.20, 0.024), (-0.1, 0.054), (0.1, 0.065), (0.35, 0.058), (0.6, 0.067), (0.8, 0.080),
     (0.97, 0.058), (1.1, 0.026)),
    ((-0.20, 0.037), (-0.1, 0.069), (0.05, 0.076), (0.32, 0.050), (0.6, 0.067), (0.85, 0.073),
     (1.0, 0.050), (1.1, 0.028)),
)  # fmt: skip
UPPER_ARM = (
    ((-0.17, 0.023), (0.0, 0.039), (0.2, 0.041), (0.55, 0.036), (1.0, 0.027), (1.1, 0.016)),
    ((-0.17, 0.023), (0.0, 0.041), (0.2, 0.042), (0.55, 0.034), (1.0, 0.027), (1.1, 0.016)),
)
FOREARM = (
    ((-0.1, 0.016), (0.0, 0.030), (0.28, 0.036), (0.7, 0.022), (1.0, 0.017), (1.2, 0.017)),
    ((-0.1, 0.016), (0.0, 0.028), (0.28, 0.030), (0.7, 0.021), (1.0, 0.017), (1.2, 0.017)),
)


def place(point: Point) -> Point:
    """A point of the body on the drawing: y counts down there.

    >>> place((1, 0.5))
    (360, -180.0)
    """
    return point[0] * SCALE, -point[1] * SCALE


def limb(upper: Point, lower: Point, profile: tuple[Profile, Profile], side: int = 1) -> str:
    """The outline of a segment as a path.

    Args:
        upper: its end nearer to the trunk; of the trunk, the hip.
        lower: the other end.
        profile: front and back.
        side: 1 where the front is on the left of the way down, -1 where it is on the right.
    """
    return smooth(around(upper, lower, profile, side))


def around(upper: Point, lower: Point, profile: tuple[Profile, Profile], side: int) -> list[Point]:
    """The corners of a segment's outline; arguments as of `limb`."""
    front, back = profile
    points = [_beside(upper, lower, share, side * off) for share, off in front]
    return points + [_beside(upper, lower, share, -side * off) for share, off in reversed(back)]


def lowest(corners: Sequence[Point]) -> float:
    """How high the lowest place of a smooth outline is: between its corners, as it is drawn.

    >>> lowest([(0, 0), (4, 0), (4, 4), (0, 4)])  # rounded at its corners, straight between
    0.0
    """
    high = [y for _, y in corners]
    ring = zip([high[-1], *high[:-1]], high, [*high[1:], high[0]], strict=True)
    return min(min((two + three) / 2, (one + 6 * two + three) / 8) for one, two, three in ring)


def _beside(upper: Point, lower: Point, share: float, off: float) -> Point:
    length = distance(upper, lower)
    across, up = (lower[0] - upper[0]) / length, (lower[1] - upper[1]) / length
    x, y = upper[0] + share * length * across, upper[1] + share * length * up
    return x - off * up, y + off * across


def foot(heel: Point, ball: Point, toe: Point, ankle: Point) -> str:
    """A shoe from the side, bent at the ball of the foot."""
    length = distance(heel, ball)
    level = ((ball[0] - heel[0]) / length, (ball[1] - heel[1]) / length)
    up = (ankle[0] - heel[0], ankle[1] - heel[1])
    raised = up[0] * -level[1] + up[1] * level[0]
    turn = 1 if raised > 0 else -1
    outline = (
        (-0.004, 0.000), (-0.010, 0.022), (0.006, 0.050), (0.040, 0.064), (0.064, 0.058),
        (0.090, 0.038),
    )  # fmt: skip
    tip = distance(ball, toe)
    ahead = ((toe[0] - ball[0]) / tip, (toe[1] - ball[1]) / tip)
    toes = ((0.016, 0.032), (0.046, 0.022), (0.048, 0.000), (0.036, 0.000))

    def at(start: Point, way: Point, x: float, y: float) -> Point:
        return start[0] + x * way[0] - turn * y * way[1], start[1] + x * way[1] + turn * y * way[0]

    return smooth(
        [
            *(at(heel, level, x, y) for x, y in outline),
            *(at(ball, ahead, x, y) for x, y in toes),
            ball,
            at(heel, level, 0.04, 0.0),
        ]
    )


def head(middle: Point, neck: Point) -> str:
    """A head that looks ahead of the neck, from the side."""
    length = distance(neck, middle)
    up = ((middle[0] - neck[0]) / length, (middle[1] - neck[1]) / length)
    ahead = (up[1], -up[0])
    outline = (
        (-0.046, -0.046), (-0.062, 0.006), (-0.052, 0.056), (0.0, 0.080), (0.046, 0.062),
        (0.056, 0.020), (0.066, -0.010), (0.056, -0.018), (0.054, -0.050), (0.036, -0.066),
        (0.004, -0.052),
    )  # fmt: skip
    return smooth(
        [
            (middle[0] + x * ahead[0] + y * up[0], middle[1] + x * ahead[1] + y * up[1])
            for x, y in outline
        ]
    )


def neck(shoulder: Point, skull: Point) -> str:
    """The neck, from between the shoulders into the head."""
    profile = ((-0.4, 0.040), (0.3, 0.030), (1.5, 0.027))
    return limb(shoulder, skull, (profile, profile))


def smooth(points: Sequence[Point]) -> str:
    """A closed curve that is drawn to each point and rounds it off, in whole units."""
    drawn = [place(point) for point in points]
    middles = [
        (round((one[0] + two[0]) / 2), round((one[1] + two[1]) / 2))
        for one, two in zip(drawn, [*drawn[1:], drawn[0]], strict=True)
    ]
    here = middles[-1]
    path = [f"M{here[0]} {here[1]}"]
    for corner, to in zip(drawn, middles, strict=True):
        bend = (round(corner[0]) - here[0], round(corner[1]) - here[1])
        path.append("q" + _short(*bend, to[0] - here[0], to[1] - here[1]))
        here = to
    return "".join(path) + "z"


def _short(*numbers: int) -> str:
    """Numbers with as few signs between them as a path may have.

    >>> _short(3, -4, 5)
    '3-4 5'
    """
    text = str(numbers[0])
    for number in numbers[1:]:
        text += str(number) if number < 0 else f" {number}"
    return text


def line(points: Sequence[Point]) -> str:
    """A line through points, in whole units."""
    drawn = [place(point) for point in points]
    return "M" + "L".join(f"{round(x)} {round(y)}" for x, y in drawn)


def middle_of(one: Point, other: Point, share: float = 0.5) -> Point:
    """A point between two others."""
    return one[0] + share * (other[0] - one[0]), one[1] + share * (other[1] - one[1])
