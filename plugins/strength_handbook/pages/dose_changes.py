"""What is different in a dose or a load, in words that members and coaches both read."""

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from strength_handbook.pages.numbers import MINUS
from strength_handbook.plan.change import Change, Pair
from strength_handbook.plan.earlier import number
from strength_handbook.review.words import clock

_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_COUNTED: Mapping[str, tuple[str, str]] = {
    "sets": ("set", "sets"),
    "reps": ("repetition", "repetitions"),
    "rir": ("repetition left", "repetitions left"),
}
_UNITS = {"distance_m": "m"}
_TIMES = {"hold_s": "holds of", "time_s": "sets of", "rest_s": "rest", "every_s": "a set every"}


def dose_clauses(change: Change) -> list[str]:
    """Each part of a dose that is different: ``3 sets instead of 4``; at least one."""
    found = [text for pair in change.pairs if (text := _clause(change, pair))]
    method = change.pair("method")
    if method is not None and len(found) > 1:
        found.remove(_clause(change, method))  # the others say what it means
    return found or ["new details, such as a pause, a position or a setting"]


def _clause(change: Change, pair: Pair) -> str:
    key, then, now = pair.key, pair.before, pair.after
    if key in ("reps", "reps_low"):
        return _reps(change, pair)
    if key == "sets_low":
        # Where the most sets are different too, the clause about them is enough.
        return "" if change.pair("sets") else f"at least {value(now)} sets instead of {value(then)}"
    if key in _COUNTED:
        one, several = _COUNTED[key]
        amounts = _quantity(now, one, several), _quantity(then, one, several)
        return _instead(*amounts, f"no {several}", short=value(then))
    if key in _TIMES:
        word = _TIMES[key]
        return _instead(_time(now, word), _time(then, word), f"no more {word}", short=_time(then))
    if key in _UNITS:
        unit = _UNITS[key]
        return _instead(_unit(now, unit), _unit(then, unit), "no distance", short=_unit(then, unit))
    if key == "each_side":
        return "now on each side" if now else "no longer on each side"
    if key == "tempo":
        now_word = f"tempo {now}" if now else ""
        return _instead(now_word, f"tempo {then}" if then else "", "no tempo", short=str(then))
    if key == "said":
        return ""
    if key == "base":
        return f"percentages of {value(now)} instead of {value(then)}"
    if key == "method":
        return f"done as {value(now)} instead of {value(then)}"
    return f"{key.replace('_', ' ')} {value(now)} instead of {value(then)}"


def _reps(change: Change, pair: Pair) -> str:
    """Repetitions, or a range of them; both ends are one clause."""
    high, low = change.pair("reps"), change.pair("reps_low")
    if high is None:  # only the lower end is different
        return f"at least {value(pair.after)} repetitions instead of {value(pair.before)}"
    if pair.key == "reps_low":
        return ""
    then = _range(low.before if low else high.before, high.before)
    now = _range(low.after if low else high.after, high.after)
    if high.after is None:
        return "repetitions are no longer counted"
    return f"{now} repetitions instead of {then}"


def _range(low: Any, high: Any) -> str:
    if low == high or low is None or high is None:
        return value(high)
    return f"{value(low)}-{value(high)}"


def _instead(now: str, then: str, gone: str, *, short: str) -> str:
    if not now:
        return f"{gone} (before: {short})"
    return f"{now} instead of {short}" if then else f"{now}, new"


def _quantity(amount: Any, one: str, several: str) -> str:
    return "" if amount is None else f"{value(amount)} {one if amount == 1 else several}"


def _time(seconds: Any, word: str = "") -> str:
    if seconds is None:
        return ""
    amount = number(seconds)
    text = value(seconds) if amount is None else clock(amount)
    return f"{word} {text}".strip()


def _unit(amount: Any, unit: str) -> str:
    return "" if amount is None else f"{value(amount)} {unit}"


def direction(change: Change) -> int:
    """1 where a load is heavier, -1 where it is lighter, 0 where that can't be said.

    What is asked decides; where that is the same, all example lifters must agree.
    """
    asked = change.pair("load")
    if asked is not None:
        return _asked_direction(asked)
    signs = {
        _sign(now - then)
        for pair in change.pairs
        if pair.key.endswith(".load_kg")
        and (then := number(pair.before)) is not None
        and (now := number(pair.after)) is not None
    }
    return signs.pop() if len(signs) == 1 else 0


def _asked_direction(pair: Pair) -> int:
    """By the one number in two loads that are written in the same way."""
    if not isinstance(pair.before, str) or not isinstance(pair.after, str):
        return 0
    then, now = _NUMBER.findall(pair.before), _NUMBER.findall(pair.after)
    alike = _NUMBER.sub("#", pair.before) == _NUMBER.sub("#", pair.after)
    if not alike or len(then) != 1:
        return 0
    sign = _sign(float(now[0]) - float(then[0]))
    # More help and more repetitions at the most are both less weight.
    less = MINUS in pair.after or pair.after.endswith("RM")
    return -sign if less else sign


def _sign(amount: float) -> int:
    return (amount > 0) - (amount < 0)


def lifter_clauses(change: Change) -> Iterator[str]:
    """What a load comes to for each example lifter: ``P1 105 kg instead of 107.5 kg``."""
    by_lifter: dict[str, list[Pair]] = {}
    for pair in change.pairs:
        lifter, dot, _ = pair.key.partition(".")
        if dot:
            by_lifter.setdefault(lifter, []).append(pair)
    for lifter, pairs in sorted(by_lifter.items()):
        # Plates and percentages follow from the load.
        shown = [pair for pair in pairs if pair.key.endswith(".load_kg")] or pairs
        if len({pair.key for pair in shown}) < len(shown):  # of several weeks
            yield f"{lifter} {_several(shown)}"
            continue
        words = ", ".join(_lifter_value(pair) for pair in shown)
        yield f"{lifter} {words}"


def _several(pairs: Sequence[Pair]) -> str:
    """Loads of several weeks as what they differ by."""
    both = [(number(pair.before), number(pair.after)) for pair in pairs
            if pair.key.endswith(".load_kg")]  # fmt: skip
    steps = [now - then for then, now in both if then is not None and now is not None]
    if not steps or len(steps) < len(pairs):
        return "other loads"
    least, most = min(steps), max(steps)
    if least < 0 < most:
        return f"from {-least:g} kg lighter to {most:g} kg heavier"
    ends = sorted({abs(least), abs(most)} - {0.0})
    return f"{' to '.join(f'{one:g}' for one in ends)} kg {'heavier' if most > 0 else 'lighter'}"


def _lifter_value(pair: Pair) -> str:
    key = pair.key.partition(".")[2]
    name, unit = (key.removesuffix("_kg"), " kg") if key.endswith("_kg") else (key, "")
    label = "" if name == "load" else name.replace("_", " ")
    return instead(label, pair, unit)


def instead(label: str, pair: Pair, unit: str = "") -> str:
    """Now instead of then.

    >>> instead("rest-heavy", Pair("rest-heavy", 180, 150), " s")
    'rest-heavy 150 s instead of 180 s'
    """
    now, then = (
        f"{value(one)}{unit if one is not None else ''}" for one in (pair.after, pair.before)
    )
    return f"{label} {now} instead of {then}".strip()


def value(one: Any) -> str:
    """A value of the data in words.

    >>> value(2.50), value(None), value([25, 1.25]), value(True), value("78 %")
    ('2.5', 'none', '25 · 1.25', 'yes', '78 %')
    """
    if one is None or one == []:
        return "none"
    if isinstance(one, bool):
        return "yes" if one else "no"
    if isinstance(one, int | float):
        return f"{one:.10g}"
    if isinstance(one, list):
        return " · ".join(map(value, one))
    return str(one) if isinstance(one, str) else "another"
