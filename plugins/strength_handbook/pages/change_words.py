"""Every change in words, for the coach: where, and what it is now instead of then."""

from collections.abc import Iterator

from strength_handbook.model.house_rules import RULES
from strength_handbook.pages.dose_changes import dose_clauses, instead, lifter_clauses, value
from strength_handbook.plan.change import Change, Kind, Pair
from strength_handbook.review.finding import At

HEADINGS: dict[Kind, str] = {
    Kind.PROGRAM: "Program",
    Kind.RULE: "House rules",
    Kind.LIFTER: "Example lifters",
    Kind.NOTICE: "What is said before the start",
    Kind.SAFETY: "Safety texts",
    Kind.TEXT: "Other texts",
    Kind.WEEK_GONE: "Weeks",
    Kind.WEEK_NEW: "Weeks",
    Kind.WEEK: "Weeks",
    Kind.SESSION_GONE: "Sessions",
    Kind.SESSION_NEW: "Sessions",
    Kind.SESSION: "Sessions",
    Kind.EXERCISE_GONE: "Exercises",
    Kind.EXERCISE_NEW: "Exercises",
    Kind.EXERCISE_SWAPPED: "Exercises",
    Kind.EXERCISE_MOVED: "Exercises",
    Kind.LOAD: "Loads",
    Kind.DOSE: "Doses",
    Kind.DOORS: "Doors",
    Kind.METHOD: "Ramps, steps and next loads",
    Kind.VARIANT: "Variants of a session",
    Kind.MINUTES: "Minutes",
    Kind.VOLUME: "Volume",
}
"""Under what a kind of change stands in the full list."""

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
    if change.kind is Kind.RULE:
        return "house rules"
    if change.kind is Kind.LIFTER:
        return "example lifters"
    parts = [part for part in (change.session, change.order, change.exercise) if part]
    if change.exercise and not change.session:
        # The weeks of an exercise's texts are all of those that have it.
        return At(f"exercise {change.exercise}").text
    return At(" ".join(parts) or ("" if change.weeks else "program"), change.weeks).text


def said(change: Change) -> str:
    """What is different, in one line without a full stop."""
    match change.kind:
        case Kind.WEEK_GONE | Kind.SESSION_GONE | Kind.EXERCISE_GONE:
            return "taken out"
        case Kind.WEEK_NEW | Kind.SESSION_NEW | Kind.EXERCISE_NEW:
            return "new"
        case Kind.EXERCISE_SWAPPED | Kind.EXERCISE_MOVED:
            (pair,) = change.pairs
            return f"{value(pair.after)} instead of {value(pair.before)}"
        case Kind.DOSE:
            return ", ".join(dose_clauses(change))
        case Kind.LOAD:
            return "; ".join(_load(change))
        case Kind.METHOD:
            return f"worked out in another way: {', '.join(_names(change))}"
        case Kind.DOORS:
            return ", ".join(dict.fromkeys(_doors(change)))
        case _:
            return ", ".join(_pair(change.kind, pair) for pair in change.pairs)


def _load(change: Change) -> list[str]:
    asked = change.pair("load")
    first = [f"{value(asked.after)} instead of {value(asked.before)}"] if asked else []
    return [*first, *lifter_clauses(change)]


def _names(change: Change) -> list[str]:
    return [pair.key.replace("_", " ") for pair in change.pairs]


def _pair(kind: Kind, pair: Pair) -> str:
    match kind:
        case Kind.NOTICE:
            return f"{_NOTICES.get(pair.key, pair.key)}: other words"
        case Kind.SAFETY | Kind.TEXT if pair.key not in ("hazards", "name"):
            return f"{_SAFETY.get(pair.key, pair.key)}: other words"
        case Kind.SESSION if pair.key == "words":
            return "purpose, warm-up or what to cut: other words"
        case Kind.VARIANT:
            return _variant(pair)
        case Kind.RULE:
            unit = RULES[pair.key].unit if pair.key in RULES else ""
            return instead(pair.key, pair, f" {unit}" if unit else "")
        case Kind.LIFTER if "." not in pair.key:
            return f"{pair.key} {'taken out' if pair.after is None else 'new'}"
        case Kind.LIFTER:
            name = pair.key.replace(".", " ").replace("bodyweight_kg", "body weight")
            return instead(name, pair, " kg")
        case Kind.MINUTES:
            return instead("minutes", pair)
        case Kind.VOLUME:
            return _sum(pair)
        case _:
            return instead(pair.key.replace("_", " "), pair)


def _doors(change: Change) -> Iterator[str]:
    """Each door once, where its words are different, whatever else is."""
    own_words = {pair.key for pair in change.pairs if "." not in pair.key}
    for pair in change.pairs:
        if pair.key in own_words or pair.key.partition(".")[0] not in own_words:
            yield _door(pair)


def _door(pair: Pair) -> str:
    door, dot, key = pair.key.partition(".")
    if dot and key in ("exercise", "share_percent"):
        word = "load" if key == "share_percent" else "leads to"
        unit = " %" if key == "share_percent" else ""
        return instead(f"{door} {word}", pair, unit)
    return f"{door}: another dose" if dot else f"{door}: other words"


def _variant(pair: Pair) -> str:
    when, dot, key = pair.key.rpartition(".")
    if not dot or pair.key in (pair.before, pair.after):
        return f"'{pair.key}' {'taken out' if pair.after is None else 'new'}"
    if key == "slots":
        return f"'{when}': other sets, tempo or loads"
    return instead(f"'{when}' {key.replace('_', ' ')}", pair)


def _sum(pair: Pair) -> str:
    group, dot, name = pair.key.partition(".")
    if group == "hard_sets" and dot:
        return instead(f"hard sets {name}", pair)
    if group == "tonnage_kg" and dot:
        return instead(f"kilograms moved {name}", pair)
    label, unit = _SUMS.get(pair.key, (pair.key.replace("_", " "), ""))
    return instead(label, pair, unit)
