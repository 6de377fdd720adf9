"""Every change in words, for the coach: where, and what it is now instead of then."""

from collections.abc import Iterator

from strength_handbook.model.house_rules import RULES
from strength_handbook.pages.dose_changes import (
    dose_clauses,
    instead,
    instead_mass,
    lifter_clauses,
    value,
)
from strength_handbook.record.change import BESIDES, BeforeAfter, Change, ChangeKind
from strength_handbook.record.earlier import number
from strength_handbook.review.finding import At

HEADINGS: dict[ChangeKind, str] = {
    ChangeKind.LOAD: "Loads",
    ChangeKind.DOSE: "Doses",
    ChangeKind.WEEK_GONE: "Weeks",
    ChangeKind.WEEK_NEW: "Weeks",
    ChangeKind.WEEK: "Weeks",
    ChangeKind.SESSION_GONE: "Sessions",
    ChangeKind.SESSION_NEW: "Sessions",
    ChangeKind.SESSION: "Sessions",
    ChangeKind.EXERCISE_GONE: "Exercises",
    ChangeKind.EXERCISE_NEW: "Exercises",
    ChangeKind.EXERCISE_SWAPPED: "Exercises",
    ChangeKind.EXERCISE_MOVED: "Exercises",
    ChangeKind.ROOM: "Room",
    ChangeKind.PROGRAM: "Program",
    ChangeKind.RULE: "House rules",
    ChangeKind.LIFTER: "Example lifters",
    ChangeKind.NOTICE: "What is said before the start",
    ChangeKind.SAFETY: "Safety texts",
    ChangeKind.TEXT: "Other texts",
    ChangeKind.DOORS: "Doors",
    ChangeKind.METHOD: "Sets on the way up, steps and next loads",
    ChangeKind.VARIANT: "Variants of a session",
    ChangeKind.MINUTES: "Minutes",
    ChangeKind.VOLUME: "Volume",
}
"""Under what a kind of change stands in the full list."""

_PROGRAM = {
    "members": "members", "sharing": "at a station", "starts": "start groups",
    "apart_min": "minutes between start groups", "ages": "ages", "time_cap_min": "time cap",
}  # fmt: skip
_METHODS = {
    "ramp": "sets on the way up", "test": "attempts", "back_off": "sets after the top set",
    "strip": "plates that come off", "open_set": "repetitions of the open set",
    "effort": "what the effort comes to", "training_max": "training max",
    "cluster": "parts of a set", "starts_s": "starts by the clock", "total_s": "time in all",
    "work_s": "time of work", "rest_s": "time of rest", "next": "what comes next",
    "contacts": "landings", "machine": "settings", "team": "each one's share",
}  # fmt: skip
_NOTICES = {"not-for": "who asks first", "rules": "special rules"}
_SAFETY = {"stop": "stop rule", "words": "set-up, cues, faults or breathing"}
_SUMS = {
    "eccentric_s": ("lowering", " s"),
    "isometric_s": ("holding", " s"),
    "fast_reps": ("fast repetitions", ""),
    "reps": ("repetitions", ""),
}


def where(change: Change) -> str:
    """What a change is about, in the words of the findings."""
    if change.kind is ChangeKind.RULE:
        return "house rules"
    if change.kind is ChangeKind.LIFTER:
        return "example lifters"
    if change.kind is ChangeKind.ROOM:
        return f"room {change.name}"
    parts = [part for part in (change.session, change.order, change.exercise) if part]
    if change.exercise and not change.session:
        # The weeks of an exercise's texts are all of those that have it.
        return At(f"exercise {change.exercise}").text
    return At(" ".join(parts) or ("" if change.weeks else "program"), change.weeks).text


def said(change: Change, units: str = "kg") -> str:
    """What is different, in one line without a full stop.

    Args:
        change: one difference.
        units: of the room, ``kg`` or ``lb``.
    """
    match change.kind:
        case ChangeKind.WEEK_GONE | ChangeKind.SESSION_GONE | ChangeKind.EXERCISE_GONE:
            return "taken out"
        case ChangeKind.WEEK_NEW | ChangeKind.SESSION_NEW | ChangeKind.EXERCISE_NEW:
            return "new"
        case ChangeKind.EXERCISE_SWAPPED | ChangeKind.EXERCISE_MOVED:
            (pair,) = change.pairs
            return f"{value(pair.after)} instead of {value(pair.before)}"
        case ChangeKind.DOSE:
            return ", ".join(dose_clauses(change))
        case ChangeKind.LOAD:
            return "; ".join(_load(change, units))
        case ChangeKind.METHOD:
            return f"{', '.join(_names(change))}: other numbers"
        case ChangeKind.VOLUME:
            return ", ".join(_volume(change, units))
        case ChangeKind.ROOM if change.name.endswith("plates"):
            return ", ".join(map(_plates, change.pairs))
        case ChangeKind.DOORS:
            return ", ".join(dict.fromkeys(_doors(change)))
        case _:
            return ", ".join(_pair(change.kind, pair, units) for pair in change.pairs)


def _load(change: Change, units: str) -> list[str]:
    asked = change.pair("load")
    first = [f"{value(asked.after)} instead of {value(asked.before)}"] if asked else []
    return [*first, *lifter_clauses(change, units)]


def _names(change: Change) -> list[str]:
    return list(
        dict.fromkeys(_METHODS.get(pair.key, pair.key.replace("_", " ")) for pair in change.pairs)
    )


def _pair(kind: ChangeKind, pair: BeforeAfter, units: str) -> str:
    lifter, _, field = pair.key.rpartition(BESIDES)
    if field != pair.key:
        name = "loading" if field == "load" else field.replace("-", " ")
        return f"{lifter.replace('.', ' ')}{name}: changed"
    match kind:
        case ChangeKind.NOTICE:
            return f"{_NOTICES.get(pair.key, pair.key)}: other words"
        case ChangeKind.SAFETY | ChangeKind.TEXT if pair.key not in ("hazards", "name"):
            return f"{_SAFETY.get(pair.key, pair.key)}: other words"
        case ChangeKind.SESSION if pair.key == "words":
            return "purpose, warm-up or what to cut: other words"
        case ChangeKind.VARIANT:
            return _variant(pair)
        case ChangeKind.RULE:
            unit = RULES[pair.key].unit if pair.key in RULES else ""
            return instead(pair.key, pair, f" {unit}" if unit else "")
        case ChangeKind.LIFTER if "." not in pair.key:
            return f"{pair.key} {'taken out' if pair.after is None else 'new'}"
        case ChangeKind.LIFTER:
            name = pair.key.replace(".", " ").replace("bodyweight_kg", "body weight")
            return instead_mass(name, pair, units)
        case ChangeKind.MINUTES:
            return instead("minutes", pair)
        case ChangeKind.ROOM:
            return _room(pair, units)
        case ChangeKind.PROGRAM:
            return _program(pair)
        case ChangeKind.SESSION if pair.key == "id":
            return f"called '{pair.after}' instead of '{pair.before}'"
        case _:
            return instead(pair.key.replace("_", " "), pair)


def _doors(change: Change) -> Iterator[str]:
    """Each door once, where its words are different, whatever else is."""
    own_words = {pair.key for pair in change.pairs if "." not in pair.key}
    for pair in change.pairs:
        if pair.key in own_words or pair.key.partition(".")[0] not in own_words:
            yield _door(pair)


def _door(pair: BeforeAfter) -> str:
    door, dot, key = pair.key.partition(".")
    if dot and key in ("exercise", "share_percent"):
        word = "load" if key == "share_percent" else "leads to"
        unit = " %" if key == "share_percent" else ""
        return instead(f"{door} {word}", pair, unit)
    if key == "by_lifter":
        return f"{door}: other loads"
    return f"{door}: another dose" if dot else f"{door}: other words"


def _variant(pair: BeforeAfter) -> str:
    when, dot, key = pair.key.rpartition(".")
    if not dot or pair.key in (pair.before, pair.after):
        return f"'{pair.key}' {'taken out' if pair.after is None else 'new'}"
    if key == "slots":
        return f"'{when}': other sets, tempo or loads"
    return instead(f"'{when}' {key.replace('_', ' ')}", pair)


def _room(pair: BeforeAfter, units: str) -> str:
    """A field of a thing, or a size of plates."""
    if not pair.key or (pair.key in ("words", "pulls")):
        gone, new = pair.after is None, pair.before is None
        return "taken out" if gone else "new" if new else f"other {pair.key}"
    if pair.key.endswith("_kg"):
        return instead_mass(pair.key.removesuffix("_kg").replace("_", " "), pair, units)
    return instead(pair.key.replace("_", " "), pair)


def _plates(pair: BeforeAfter) -> str:
    """One size of plates: how many pairs there are of it."""
    if pair.before is None or pair.after is None:
        return f"{pair.key} {'new' if pair.before is None else 'taken out'}".strip()
    return f"{pair.key}: {value(pair.after)} pairs instead of {value(pair.before)}"


def _program(pair: BeforeAfter) -> str:
    part, dot, key = pair.key.partition(".")
    if not dot:
        return instead(part.replace("_", " "), pair)
    if part == "group":
        return instead(_PROGRAM.get(key, key.replace("_", " ")), pair)
    if pair.before is None or pair.after is None:
        return f"goal '{key}': {'new' if pair.before is None else 'taken out'}"
    return f"test of '{key}': {instead('', pair)}"


def _volume(change: Change, units: str) -> Iterator[str]:
    """The sums; kilograms or pounds moved as one share for all example lifters."""
    moved = "pounds moved" if units == "lb" else "kilograms moved"
    yield from (_sum(pair) for pair in change.pairs if not pair.key.startswith("tonnage_kg."))
    tonnage = [pair for pair in change.pairs if pair.key.startswith("tonnage_kg.")]
    shares = [share for pair in tonnage if (share := _share(pair)) is not None]
    if shares:
        yield f"{moved}: {_more_or_less(min(shares), max(shares))}"
    elif tonnage:
        yield f"{moved}: other sums"


def _share(pair: BeforeAfter) -> float | None:
    """Percent more than before; None where one of them is no number, or nothing."""
    then, now = number(pair.before), number(pair.after)
    return 100 * (now / then - 1) if then and now is not None else None


def _more_or_less(least: float, most: float) -> str:
    """A range of percents.

    >>> _more_or_less(3.6, 4.2), _more_or_less(-5, -2), _more_or_less(-1, 2)
    ('4 % more', '2 to 5 % less', 'from 1 % less to 2 % more')
    >>> _more_or_less(0.1, 0.2)
    'less than 1 % different'
    """
    low, high = round(least), round(most)
    if low == high == 0:
        return "less than 1 % different"
    if low < 0 < high:
        return f"from {-low} % less to {high} % more"
    ends = sorted({abs(low), abs(high)})
    if not ends[0]:
        return f"up to {ends[1]} % {'more' if high > 0 else 'less'}"
    return f"{' to '.join(map(str, ends))} % {'more' if high > 0 else 'less'}"


def _sum(pair: BeforeAfter) -> str:
    group, dot, name = pair.key.partition(".")
    if group == "hard_sets" and dot:
        return instead(f"hard sets {name}", pair)
    label, unit = _SUMS.get(pair.key, (pair.key.replace("_", " "), ""))
    return instead(label, pair, unit)
