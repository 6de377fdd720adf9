"""What is different in a dose or a load, in words that members and coaches both read."""

import re
from collections.abc import Iterator, Sequence
from typing import Any

from strength_handbook.dose.key import Amount, Because
from strength_handbook.dose.table import KEYS
from strength_handbook.model.printed import MINUS
from strength_handbook.model.quantities import in_unit
from strength_handbook.record.change import BESIDES, BeforeAfter, Change
from strength_handbook.record.earlier import number
from strength_handbook.review.words import clock

_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_NUMBERS = re.compile(rf"{_NUMBER.pattern}(?:–{_NUMBER.pattern})?")
_TOLD = {
    datum.key: datum.told for key in KEYS if not isinstance(key.data, Because) for datum in key.data
}
"""How a change is told of each key that is published of a dose."""


def dose_clauses(change: Change) -> list[str]:
    """Each part of a dose that is different: ``3 sets instead of 4``; at least one."""
    found = [text for pair in change.pairs if (text := _clause(change, pair))]
    method = change.pair("method")
    if method is not None and len(found) > 1:
        found.remove(_clause(change, method))  # the others say what it means
    return found or ["new details, such as a pause, a position or a setting"]


def _clause(change: Change, pair: BeforeAfter) -> str:
    key, then, now = pair.key, pair.before, pair.after
    if told := _TOLD.get(key):
        return _told(change, pair, told)
    if key == "said":
        return ""
    if key.startswith(BESIDES):
        return f"{key.removeprefix(BESIDES).replace('-', ' ')}: changed"
    if key == "base":
        return f"percentages of {value(now)} instead of {value(then)}"
    if key == "method":
        return f"done as {value(now)} instead of {value(then)}"
    return f"{key.replace('_', ' ')} {value(now)} instead of {value(then)}"


def _told(change: Change, pair: BeforeAfter, told: Amount) -> str:
    then, now, one, several = pair.before, pair.after, told.one, told.several
    if change.pair(f"{pair.key.removesuffix('_s')}_range"):
        return ""  # both ends are told
    match told.kind:
        case "both ends":
            return _both_ends(change, pair, told)
        case "range":
            return _reps(change, pair)
        case "low end":
            # Where the most are different too, the clause about them is enough.
            most = change.pair(pair.key.removesuffix("_low"))
            return "" if most else f"at least {value(now)} {several} instead of {value(then)}"
        case "count":
            amounts = _quantity(now, one, several), _quantity(then, one, several)
            return _instead(*amounts, f"no {several}", short=value(then))
        case "time":
            return _instead(_time(now, one), _time(then, one), f"no more {one}", short=_time(then))
        case "length":
            amounts = _unit(now, several), _unit(then, several)
            return _instead(*amounts, f"no {one}", short=_unit(then, several))
        case "yes":
            return f"now {one}" if now else f"no longer {one}"
        case "text":
            amounts = f"{one} {now}" if now else "", f"{one} {then}" if then else ""
            return _instead(*amounts, f"no {one}", short=str(then))


def _reps(change: Change, pair: BeforeAfter) -> str:
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


def _both_ends(change: Change, pair: BeforeAfter, told: Amount) -> str:
    """A range, or the one number that stands or stood in its place."""
    base = pair.key.removesuffix("_range")
    middle = change.pair(f"{base}_s") or change.pair(base)
    seconds = middle is not None and middle.key.endswith("_s")
    one = _time if seconds else value
    now, then = pair.after or "", pair.before or ""
    if middle is not None:
        now = now or ("" if middle.after is None else one(middle.after))
        then = then or ("" if middle.before is None else one(middle.before))
    what = f"{told.one} {now} {told.several}".strip()
    if now and then:
        return f"{what} instead of {then}"
    if middle is not None:
        return f"{what}, new" if now else f"no more {told.one}{told.several} (before: {then})"
    # The middle of the range is the number that stands in its place.
    return f"{what}, as a range" if now else f"{told.one}{told.several}: no range (before: {then})"


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


def _asked_direction(pair: BeforeAfter) -> int:
    """By the one number in two loads that are written in the same way."""
    if not isinstance(pair.before, str) or not isinstance(pair.after, str):
        return 0
    then, now = _NUMBERS.findall(pair.before), _NUMBERS.findall(pair.after)
    alike = _NUMBERS.sub("#", pair.before) == _NUMBERS.sub("#", pair.after)
    if not alike or len(then) != 1:
        return 0
    sign = _sign(_middle(now[0]) - _middle(then[0]))
    # More help and more repetitions at the most are both less weight.
    less = MINUS in pair.after or pair.after.endswith("RM")
    return -sign if less else sign


def _middle(text: str) -> float:
    """A number, or the middle of a range."""
    both = text.split("–")
    return (float(both[0]) + float(both[-1])) / 2


def _sign(amount: float) -> int:
    return (amount > 0) - (amount < 0)


def lifter_clauses(change: Change, units: str) -> Iterator[str]:
    """What a load comes to for each example lifter: ``P1 105 kg instead of 107.5 kg``.

    Args:
        change: of a load.
        units: of the room, ``kg`` or ``lb``.
    """
    by_lifter: dict[str, list[BeforeAfter]] = {}
    for pair in change.pairs:
        lifter, dot, _ = pair.key.partition(".")
        if dot:
            by_lifter.setdefault(lifter, []).append(pair)
    for lifter, pairs in sorted(by_lifter.items()):
        # Plates and percentages follow from the load.
        shown = [pair for pair in pairs if pair.key.endswith(".load_kg")] or pairs
        if len({pair.key for pair in shown}) < len(shown):  # of several weeks
            yield f"{lifter} {_several(shown, units)}"
            continue
        words = ", ".join(_lifter_value(pair, units) for pair in shown)
        yield f"{lifter} {words}"


def _several(pairs: Sequence[BeforeAfter], units: str) -> str:
    """Loads of several weeks as what they differ by."""
    both = [(number(pair.before), number(pair.after)) for pair in pairs
            if pair.key.endswith(".load_kg")]  # fmt: skip
    steps = [now - then for then, now in both if then is not None and now is not None]
    if not steps or len(steps) < len(pairs):
        return "other loads"
    least, most = min(steps), max(steps)
    if least < 0 < most:
        return f"from {_mass(-least, units)} lighter to {_mass(most, units)} heavier"
    ends = sorted({abs(least), abs(most)} - {0.0})
    numbers = " to ".join(str(_in_units(one, units)) for one in ends)
    return f"{numbers} {units} {'heavier' if most > 0 else 'lighter'}"


def _lifter_value(pair: BeforeAfter, units: str) -> str:
    key = pair.key.partition(".")[2]
    name = key.removesuffix("_kg")
    label = "" if name == "load" else name.replace("_", " ")
    return instead_mass(label, pair, units) if key.endswith("_kg") else instead(label, pair)


def instead_mass(label: str, pair: BeforeAfter, units: str) -> str:
    """Masses, which the data have in kilograms, as the room has them.

    >>> plates = BeforeAfter("P1.plates_per_side_kg", [20.412, 4.536], [20.412])
    >>> instead_mass("plates", plates, "lb")
    'plates 45 lb instead of 45 · 10 lb'
    """
    here = BeforeAfter(pair.key, _in_units(pair.before, units), _in_units(pair.after, units))
    return instead(label, here, f" {units}")


def _mass(kilograms: float, units: str) -> str:
    return f"{_in_units(kilograms, units)} {units}"


def _in_units(kilograms: Any, units: str) -> Any:
    """A number, or several, in the room's units; whatever else an earlier file holds stays."""
    if isinstance(kilograms, list):
        return [_in_units(one, units) for one in kilograms]
    amount = number(kilograms)
    grams = None if amount is None else number(amount * 1000)
    return kilograms if grams is None else in_unit(round(grams), units)


def instead(label: str, pair: BeforeAfter, unit: str = "") -> str:
    """Now instead of then.

    >>> instead("rest-heavy", BeforeAfter("rest-heavy", 180, 150), " s")
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
