"""The drawn body: lengths and masses as published, in shares of stature and body mass."""

from types import MappingProxyType

STATURE = 1.75
"""Metres; what a length in a file is divided by."""

SHANK, THIGH, TRUNK = 0.246, 0.245, 0.288
UPPER_ARM, FOREARM = 0.186, 0.146
FOOT, ANKLE_HEIGHT = 0.152, 0.039
"""Shares of stature: Drillis and Contini 1966, as printed in Winter, Biomechanics and Motor Control
of Human Movement (trunk: shoulder 0.818 less hip 0.530 of stature)."""

GRIP = 0.045
"""From the wrist to the middle of a closed hand: less than half of the hand's 0.108; drawn so."""
HEEL = 0.042
"""From the ankle back to the heel: about a quarter of the foot; from memory."""
BALL = 0.072
"""From the ankle ahead to the ball of the foot; about three quarters of the foot from the heel."""
NECK, HEAD_UP = 0.052, 0.112
"""From the shoulder up to the base of the skull, and to the middle of the head, shares of stature:
chin 0.870 and crown 1.000 as in Winter, less the shoulder's 0.818."""

MASSES = MappingProxyType(
    {
        "foot": (0.0145, 0.5),
        "shank": (0.0465, 0.433),
        "thigh": (0.100, 0.433),
        "trunk": (0.497, 0.5),
        "head": (0.081, 1.0),
        "upper arm": (0.028, 0.436),
        "forearm": (0.022, 0.682),
    }
)
"""Mass of a segment as a share of the body, and where its middle is, from its upper end: Dempster
as printed in Winter, Table 4.1; the forearm is taken with the hand, the trunk without the head."""

LOAD = MappingProxyType(
    {
        "bar": 0.6,
        "yoke-bar": 0.6,
        "trap-bar": 0.6,
        "pivot-bar": 0.2,
        "dumbbells": 0.3,
        "dumbbell": 0.2,
        "bells": 0.4,
        "bell": 0.2,
        "handles": 0.4,
        "bag": 0.4,
    }
)
"""What is held, as a share of body mass, for balance only: common practice, no source. A real load
moves the balance by a few degrees; the picture says nothing about how much to lift."""

# Half widths, shares of stature, for drawing and to see a bar inside a body: drawn by eye.
TORSO_HALF = 0.062
THIGH_HALF, KNEE_HALF, ANKLE_HALF = 0.050, 0.033, 0.020
PLATE_RADIUS = 0.225 / STATURE
"""A full plate has 450 mm across, as the rules of weightlifting have it."""
HIGH_HANDLE = 0.10 / STATURE
"""How far the high handles of a trap bar are above its sleeves: common practice, no source."""
BAG_HALF = 0.12 / STATURE
"""Half of a bag's thickness: a bag of some 30 kg of sand, drawn by eye."""
