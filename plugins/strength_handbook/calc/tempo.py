"""Time under tension from a tempo written lower – pause – lift – pause.

The order never changes, even when a lift starts from the floor. A lift done as fast as possible
(X) counts as one second: a convention, not a measurement.
"""

from dataclasses import dataclass

from strength_handbook.calc.registry import Evidence, formula

FAST_LIFT_S = 1.0
"""What X counts as."""

_SUBJECT = "Tempo"


@dataclass(frozen=True, slots=True)
class TensionTime:
    """Seconds under tension by kind of muscle action.

    Attributes:
        eccentric_s: lowering.
        isometric_s: both pauses.
        concentric_s: lifting.
    """

    eccentric_s: float
    isometric_s: float
    concentric_s: float

    @property
    def total_s(self) -> float:
        """All three together."""
        return self.eccentric_s + self.isometric_s + self.concentric_s


@formula(
    subject=_SUBJECT,
    title="Time under tension of one repetition",
    equation="seconds = lower + pause + lift + top pause;  X counts as 1 s",
    inputs={
        "lower_s": "lower = lowering, s",
        "pause_s": "pause = after lowering, s",
        "lift_s": "lift, X = lifting, s, or as fast as possible",
        "top_pause_s": "top pause = after lifting, s",
    },
    output="seconds of lowering, of holding and of lifting",
    ranges={
        "lower_s": (0, 60),
        "pause_s": (0, 120),
        "lift_s": (0, 60),
        "top_pause_s": (0, 120),
    },
    source="sum of the digits: definition; X as 1 s: common practice, no source",
    evidence=Evidence.ARITHMETIC,
)
def rep_tension(
    lower_s: float, pause_s: float, lift_s: float | None, top_pause_s: float
) -> TensionTime:
    """Seconds of one repetition; `lift_s` None means as fast as possible.

    >>> rep_tension(5, 1, None, 0)
    TensionTime(eccentric_s=5, isometric_s=1, concentric_s=1.0)
    """
    return TensionTime(
        eccentric_s=lower_s,
        isometric_s=pause_s + top_pause_s,
        concentric_s=FAST_LIFT_S if lift_s is None else lift_s,
    )


@formula(
    subject=_SUBJECT,
    title="Time under tension of several repetitions",
    equation="seconds = reps × sides × seconds of one repetition",
    inputs={
        "rep": "seconds of one repetition = of lowering, holding and lifting, s",
        "reps": "reps = of all sets, one side",
        "sides": "sides = 2 for one-sided work, else 1",
    },
    output="seconds of lowering, of holding and of lifting",
    ranges={"reps": (0, 10000), "sides": (1, 2)},
    source="definition",
    evidence=Evidence.ARITHMETIC,
)
def total_tension(rep: TensionTime, reps: float, sides: int = 1) -> TensionTime:
    """Seconds of `reps` repetitions, on each side where `sides` is 2.

    >>> total_tension(rep_tension(5, 1, None, 0), reps=20)
    TensionTime(eccentric_s=100, isometric_s=20, concentric_s=20.0)
    """
    count = reps * sides
    return TensionTime(rep.eccentric_s * count, rep.isometric_s * count, rep.concentric_s * count)
