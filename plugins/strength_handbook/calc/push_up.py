"""Push-ups: the share of body mass at the hands, and what a load on the back adds.

Two baselines exist and must not be mixed: the series of Ebben 2011 (changes with height) and static
measurements (Suprak 2011). They differ by up to five points, so every function names its own.
"""

from typing import Literal

from strength_handbook.calc.registry import Evidence, formula

_SUBJECT = "Push-up"

EBBEN_2011_KNEELING = 49.0
"""Push-up on the knees in the series of Ebben 2011, % of body mass."""

# Suprak 2011, (arms straight, chest down), % of body mass.
_SUPRAK = {"toes": (69.16, 75.04), "knees": (53.56, 61.80)}

# Distance of the load's centre below the shoulder line in m, and its leverage at the hands against
# that of the body's own mass centre: rigid-body statics with de Leva 1996 segments.
_BACK_DISTANCE = (0.10, 0.15, 0.20, 0.30, 0.40)
_BACK_LEVERAGE = (1.31, 1.26, 1.21, 1.11, 1.02)


@formula(
    subject=_SUBJECT,
    title="Share of body weight at the hands, by height of hands or feet",
    equation="% = 64.1 − 0.266 x − 0.00177 x²;  x = 100 × D × 1.73 ÷ H, in cm, kept within ±70",
    inputs={
        "hands_above_feet": "D = hands above feet, m (feet raised counts negative)",
        "stature": "H = height of the person, m",
    },
    output="% of body weight",
    source="quadratic through Ebben 2011, J Strength Cond Res 25:2891–2894; stature by statics",
    evidence=Evidence.PUBLISHED,
    error="0.7 points on the heights measured, about 3 points between them; people differ by 4.",
    ranges={"hands_above_feet": (-1.5, 1.5), "stature": (1.2, 2.3)},
)
def ebben_2011_push_up(hands_above_feet: float, stature: float = 1.73) -> float:
    """Share of body mass at the hands in %, on the toes (flat: 64 %).

    Args:
        hands_above_feet: height of the hands minus height of the feet, m.
        stature: m; leave out where it is not known.

    Raises:
        OutOfRangeError: for a height or a stature nobody uses.

    Example:
        >>> ebben_2011_push_up(0.30)
        54.5
    """
    x = min(max(100 * hands_above_feet * 1.73 / stature, -70.0), 70.0)
    return 64.1 - 0.266 * x - 0.00177 * x * x


@formula(
    subject=_SUBJECT,
    title="Share of body weight in a still push-up on the floor",
    equation="on the toes 69.16 % (arms straight), 75.04 % (chest down); on the knees 53.56 %, "
    "61.80 %",
    inputs={
        "on": "toes or knees",
        "position": "arms straight or chest down",
    },
    output="% of body weight",
    source="Suprak 2011, J Strength Cond Res 25:497–503",
    evidence=Evidence.PUBLISHED,
    error="People differ by 4 points; a fast repetition peaks far higher.",
)
def suprak_2011_push_up(on: Literal["toes", "knees"], position: Literal["top", "bottom"]) -> float:
    """Share of body mass at the hands in %, held still on a level floor.

    Example:
        >>> suprak_2011_push_up("toes", "top")
        69.16
    """
    top, bottom = _SUPRAK[on]
    return top if position == "top" else bottom


@formula(
    subject=_SUBJECT,
    title="Leverage of a load on the back",
    equation="leverage = 1.31 at 10 cm, 1.26 at 15, 1.21 at 20, 1.11 at 30, 1.02 at 40; "
    "straight between",
    inputs={
        "below_shoulder": "middle of the load below the line of the shoulders, m",
    },
    output="leverage, against that of the body's own weight",
    source="rigid-body statics with the segments of de Leva 1996, J Biomech 29:1223–1230",
    evidence=Evidence.ARITHMETIC,
    error="0.02 between builds; hardly changes with the height of hands or feet.",
    ranges={"below_shoulder": (0.10, 0.40)},
)
def back_load_leverage(below_shoulder: float) -> float:
    """How much more a load on the back counts at the hands than the same mass of body.

    Raises:
        OutOfRangeError: for a load higher than 10 cm or lower than 40 cm below the shoulders.

    Example:
        >>> back_load_leverage(0.15)
        1.26
    """
    for i in range(1, len(_BACK_DISTANCE)):
        left, right = _BACK_DISTANCE[i - 1], _BACK_DISTANCE[i]
        if below_shoulder <= right:
            break
    t = (below_shoulder - left) / (right - left)
    return _BACK_LEVERAGE[i - 1] * (1 - t) + _BACK_LEVERAGE[i] * t


@formula(
    subject=_SUBJECT,
    title="Load at the hands, with a plate or pack on the back",
    equation="load = BM × p ÷ 100 + extra × the smaller of 1 and (leverage × p ÷ 100)",
    inputs={
        "body_mass": "BM = body weight, kg",
        "percent": "p = share of body weight at the hands, %",
        "extra": "extra = plate or pack on the back, kg",
        "below_shoulder": "leverage = from the load's place below the line of the shoulders, m",
    },
    output="load, kg at the hands",
    source="rigid-body statics with the segments of de Leva 1996, J Biomech 29:1223–1230",
    evidence=Evidence.ARITHMETIC,
    error="As the share of body weight it starts from.",
)
def push_up_load(
    body_mass: float, percent: float, extra: float = 0.0, below_shoulder: float = 0.15
) -> float:
    """Load at the hands in kg for a push-up that puts `percent` of body mass there.

    Args:
        body_mass: kg.
        percent: share of body mass at the hands, %.
        extra: kg on the back.
        below_shoulder: its centre below the shoulder line, m; shoulder blades about 0.15.

    Raises:
        OutOfRangeError: for a load outside 10–40 cm below the shoulders.

    Example:
        >>> push_up_load(80, 64, extra=10)
        59.264
    """
    leverage = min(1.0, back_load_leverage(below_shoulder) * percent / 100)
    return body_mass * percent / 100 + extra * leverage
