"""What one key adds to a set: its seconds and repetitions, with the terms they are made of.

A number and its working come from here together: who needs the seconds adds them up, who shows how
they came about prints the terms.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

from strength_handbook.model.dose import Dose
from strength_handbook.model.going import Going
from strength_handbook.model.span import Span, middle_of

STRIP_REPS = 8
"""Repetitions reckoned for each load of a strip set that says no number."""


@dataclass(frozen=True, slots=True)
class Times:
    """So many of something that takes so long: repetitions, pauses."""

    count: float
    each_s: float


@dataclass(frozen=True, slots=True)
class Lasting:
    """Seconds as they are written.

    Attributes:
        seconds: how many.
        how: what is done in them, or empty.
    """

    seconds: float
    how: str = ""


@dataclass(frozen=True, slots=True)
class Walk:
    """A way at a speed."""

    metres: float
    speed_m_s: float


@dataclass(frozen=True, slots=True)
class Paced:
    """A way at a pace.

    Attributes:
        metres: how far.
        going: over what the pace is counted, and the pace.
    """

    metres: float
    going: Going


Term: TypeAlias = Times | Lasting | Walk | Paced


@dataclass(frozen=True, slots=True)
class Share:
    """What a key adds to one set, on one side.

    Attributes:
        seconds: how long it takes.
        terms: what those seconds are made of, in order.
        reps: repetitions, for what they add up to.
        held_s: seconds of holding, beside those inside a repetition.
        formula: what the seconds were worked out by; empty where it only adds to others.
        rules: house rules that were asked.
    """

    seconds: float = 0.0
    terms: tuple[Term, ...] = ()
    reps: float = 0.0
    held_s: float = 0.0
    formula: str = ""
    rules: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Pace:
    """What a share may depend on beside its value.

    Attributes:
        dose: the whole dose.
        rep_s: seconds of one repetition.
        rule: the house rules by their names.
    """

    dose: Dose
    rep_s: float
    rule: Callable[[str], float]

    def repetitions(self, count: float, *, counted: bool = True) -> Share:
        """So many repetitions, as part of a set."""
        rules = ("seconds-per-rep",) if self.dose.tempo is None else ()
        reps = count if counted else 0.0
        return Share(count * self.rep_s, (Times(count, self.rep_s),), reps, 0.0, "", rules)


AT_MOST_AS_QUICK = 2
"""How much quicker than usual a repetition may be while the clock runs. Common practice, no source;
chair stands in 30 s, 12 to 17 at 60 to 64 (Rikli and Jones 1999, from memory), lie inside."""


def open_reps(seconds: float, pace: Pace) -> Span:
    """How many there may be in a time: at the usual pace, up to one that is twice as quick.

    A tempo says how long each one is, whatever the clock says.
    """
    usual = seconds / pace.rep_s
    quick = usual if pace.dose.tempo is not None else usual * AT_MOST_AS_QUICK
    return Span(int(usual + 1e-9), int(quick + 1e-9))


def lasting(seconds: float, _: Pace) -> Share:
    """A set that is as long as it is written; of a range its middle."""
    planned = middle_of(seconds)
    return Share(planned, (Lasting(planned),))
