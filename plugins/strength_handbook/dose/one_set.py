"""How long one set takes, and how many repetitions it has: the shares of all keys together."""

from collections.abc import Callable
from dataclasses import dataclass

from strength_handbook.calc.set_duration import set_seconds
from strength_handbook.calc.tempo import rep_tension
from strength_handbook.dose.key import Because
from strength_handbook.dose.share import Pace, Term
from strength_handbook.dose.table import KEYS
from strength_handbook.model.dose import Dose

SIDE_CHANGE_S = 5.0
"""From one side to the other. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class OneSet:
    """One set by the clock and by count.

    Attributes:
        seconds: how long it takes, both sides counted.
        terms: what the seconds of one side are made of.
        formula: what they were worked out by.
        rep_s: seconds of one repetition.
        reps: repetitions of one side, share by share; empty where none are counted.
        held_s: seconds of holding of one side, beside those inside a repetition.
        rules: house rules that were asked.
    """

    seconds: float
    terms: tuple[Term, ...]
    formula: str
    rep_s: float
    reps: tuple[float, ...]
    held_s: float
    rules: frozenset[str]


def one_set(rule: Callable[[str], float], dose: Dose) -> OneSet:
    """One set of a dose; ranges are reckoned at their middle.

    Args:
        rule: the house rules by their names.
        dose: what is asked.
    """
    part, pace = dose.part, Pace(dose, rep_seconds(rule, dose), rule)
    shares = [
        key.use.one_set(value, pace)
        for key in KEYS
        if not isinstance(key.use.one_set, Because) and (value := key.value(part)) is not None
    ]
    one_side = sum(share.seconds for share in shares)
    return OneSet(
        set_seconds(
            0, hold_s=one_side, sides=2 if dose.each_side else 1, side_change_s=SIDE_CHANGE_S
        ),
        tuple(term for share in shares for term in share.terms),
        next((share.formula for share in shares if share.formula), "set_seconds"),
        pace.rep_s,
        tuple(share.reps for share in shares if share.reps),
        sum(share.held_s for share in shares),
        frozenset(slug for share in shares for slug in share.rules),
    )


def rep_seconds(rule: Callable[[str], float], dose: Dose) -> float:
    """Seconds of one repetition: by its tempo, or the house's, and a hold inside it."""
    tempo, held = dose.tempo, dose.said.pause.time if dose.said.pause else 0.0
    if tempo is None:
        return rule("seconds-per-rep") + held
    return rep_tension(tempo.lower, tempo.low_pause, tempo.lift, tempo.high_pause).total_s + held
