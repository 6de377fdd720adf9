"""What changed, in at most three lines for members: the most important first."""

from collections.abc import Callable, Iterator, Sequence
from typing import Any

from strength_handbook.pages.dose_changes import direction, dose_clauses, value
from strength_handbook.record.change import BESIDES, Change, ChangeKind, Changes
from strength_handbook.record.earlier import number

MOST = 3
"""More than this nobody reads before training. Common practice, no source."""

WORTH_SAYING_MIN = 5.0
"""Minutes that a session must be longer or shorter by. Common practice, no source."""

_SAFETY = {
    "hazards": "cautions", "cautions": "cautions", "stop": "stop rule", "spotting": "spotting"
}  # fmt: skip

_PLACES = (
    "Bulgarian",
    "Copenhagen",
    "Nordic",
    "Romanian",
    "Russian",
    "Spanish",
    "Swiss",
    "Turkish",
)
"""First words of exercises that keep their capital inside a sentence."""


def member_lines(changes: Changes) -> tuple[str, ...]:
    """Sentences for members; none where nothing changed for them.

    In the order of what can hurt: safety texts, weeks and sessions, exercises, heavier loads,
    lighter loads, doses, then the rest.
    """
    return tuple(_every_line(changes))[:MOST]


def _every_line(changes: Changes) -> dict[str, None]:
    return dict.fromkeys(line for tell in _TELLERS for line in tell(changes))


def what_changed(changes: Changes | None) -> dict[str, Any] | None:
    """What a page for members says under 'What changed'; None where it says nothing."""
    if changes is None:
        return None
    every = tuple(_every_line(changes))
    if not every:
        return None
    return {"version": changes.before, "lines": every[:MOST], "more": len(every) > MOST}


def _of(changes: Changes, *kinds: ChangeKind) -> list[Change]:
    return [item for item in changes.items if item.kind in kinds]


def _safety(changes: Changes) -> Iterator[str]:
    for item in _of(changes, ChangeKind.SAFETY):
        words = list(dict.fromkeys(_SAFETY[pair.key] for pair in item.pairs if pair.key in _SAFETY))
        if words:
            yield (f"{item.name}: {_and(words)} changed. Read the page again before your next set.")


def _notices(changes: Changes) -> Iterator[str]:
    for item in _of(changes, ChangeKind.NOTICE):
        if item.pair("not-for"):
            yield "The list of who asks first has changed. Read it before you train."
        if item.pair("rules"):
            yield "The special rules have changed. Read them again."


def _weeks(changes: Changes) -> Iterator[str]:
    for item in _of(changes, ChangeKind.WEEK_GONE, ChangeKind.WEEK_NEW):
        several = len(item.weeks) > 1
        gone = item.kind is ChangeKind.WEEK_GONE
        end = "no longer in the program" if gone else "new"
        yield f"{_weeks_of(item.weeks)} {'are' if several else 'is'} {end}."


def _sessions(changes: Changes) -> Iterator[str]:
    for item in _of(changes, ChangeKind.SESSION_GONE, ChangeKind.SESSION_NEW):
        what = "left out" if item.kind is ChangeKind.SESSION_GONE else "new"
        yield f"{_weeks_of(item.weeks)}: the session {item.title} is {what}."
    for item in _of(changes, ChangeKind.SESSION):
        day = item.pair("day")
        if day is not None and isinstance(day.after, str):
            yield f"{_weeks_of(item.weeks)}: {item.title} is on {day.after.capitalize()} now."


def _exercises(changes: Changes) -> Iterator[str]:
    for item in _of(changes, ChangeKind.EXERCISE_SWAPPED):
        (pair,) = item.pairs
        then = changes.names.get(str(pair.before), str(pair.before).replace("-", " "))
        yield f"{_place(item)}: {_small(item.name)} instead of {_small(then)}."
    for item in _of(changes, ChangeKind.EXERCISE_GONE):
        yield f"{_place(item)}: {_small(item.name)} is left out."
    for item in _of(changes, ChangeKind.EXERCISE_NEW):
        yield f"{_place(item)}: {_small(item.name)} is new."


def _heavier(changes: Changes) -> Iterator[str]:
    yield from _loads(changes, 1, "heavier")


def _lighter(changes: Changes) -> Iterator[str]:
    yield from _loads(changes, -1, "lighter")


def _other_loads(changes: Changes) -> Iterator[str]:
    yield from _loads(changes, 0, "loaded in another way")


def _loads(changes: Changes, sign: int, word: str) -> Iterator[str]:
    """One line for each exercise whose load went that way."""
    lifters = {
        pair.key.partition(".")[0] for one in _of(changes, ChangeKind.LIFTER) for pair in one.pairs
    }
    groups: dict[str, list[Change]] = {}
    for item in _of(changes, ChangeKind.LOAD):
        # Loads that follow from another example lifter are nobody's but theirs.
        theirs = all(pair.key.partition(".")[0] in lifters for pair in item.pairs)
        printed = item.pair("load") or any(pair.key.endswith(".load_kg") for pair in item.pairs)
        if printed and not theirs and direction(item) == sign:
            groups.setdefault(item.exercise, []).append(item)
    for several in groups.values():
        start = f"{_weeks_of(_all_weeks(several))}: {_small(several[0].name)} is {word}"
        # As words: in a file that somebody has spoilt a load may be anything.
        asked = {
            (value(pair.before), value(pair.after)) if (pair := item.pair("load")) else None
            for item in several
        }
        both = asked.pop() if len(asked) == 1 else None
        if both is None:
            yield f"{start}."
        else:
            yield f"{start}, {both[1]} instead of {both[0]}."


def _doses(changes: Changes) -> Iterator[str]:
    swapped = {
        (item.session, item.order, week)
        for item in _of(changes, ChangeKind.EXERCISE_SWAPPED)
        for week in item.weeks
    }
    groups: dict[str, list[Change]] = {}
    for item in _of(changes, ChangeKind.DOSE):
        # A new exercise brings its own dose.
        if not all((item.session, item.order, week) in swapped for week in item.weeks):
            groups.setdefault(item.exercise, []).append(item)
    for several in groups.values():
        start = f"{_weeks_of(_all_weeks(several))}: {_small(several[0].name)}"
        clauses = {tuple(dose_clauses(item)) for item in several}
        if len(clauses) == 1:
            yield f"{start}: {', '.join(clauses.pop()[:3])}."
        else:
            yield f"{start} has another dose."


def _rest(changes: Changes) -> Iterator[str]:
    for item in _of(changes, ChangeKind.EXERCISE_MOVED):
        (pair,) = item.pairs
        yield f"{_place(item)}: {_small(item.name)} is {pair.after} now, not {pair.before}."
    for item in _of(changes, ChangeKind.DOORS):
        # Loads that follow from a plate or a base are on the page; what to do is the same.
        doors = dict.fromkeys(
            pair.key.partition(".")[0] for pair in item.pairs if not pair.key.endswith(".by_lifter")
        )
        if not doors:
            continue
        yield f"{item.name}: what to do instead has changed ({', '.join(doors)})."
    for item in _of(changes, ChangeKind.TEXT):
        if item.pair(f"{BESIDES}load"):
            yield f"{item.name}: how it is loaded has changed, or its starting loads."
    for item in _of(changes, ChangeKind.VARIANT):
        yield f"{_place(item)}: the shorter or easier version has changed."
    for item in _of(changes, ChangeKind.MINUTES):
        (pair,) = item.pairs
        then, now = number(pair.before), number(pair.after)
        if then is not None and now is not None and abs(now - then) >= WORTH_SAYING_MIN:
            yield f"{_place(item)}: about {now:.0f} minutes instead of {then:.0f}."


_TELLERS: Sequence[Callable[[Changes], Iterator[str]]] = (
    _safety, _notices, _weeks, _sessions, _exercises, _heavier, _other_loads, _lighter, _doses,
    _rest,
)  # fmt: skip


def _place(item: Change) -> str:
    return f"{_weeks_of(item.weeks)}, {item.title}"


def _all_weeks(several: Sequence[Change]) -> tuple[int, ...]:
    return tuple(sorted({week for item in several for week in item.weeks}))


def _weeks_of(weeks: Sequence[int]) -> str:
    """``Week 3``, ``Weeks 1 to 3 and 5``."""
    runs: list[list[int]] = []
    for week in weeks:
        if runs and week == runs[-1][-1] + 1:
            runs[-1].append(week)
        else:
            runs.append([week])
    words = [str(run[0]) if len(run) == 1 else f"{run[0]} to {run[-1]}" for run in runs]
    return f"{'Week' if len(weeks) == 1 else 'Weeks'} {_and(words)}"


def _and(words: Sequence[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def _small(name: str) -> str:
    """A name inside a sentence; one with a second capital letter keeps the first.

    >>> _small("Trap-bar deadlift"), _small("RDL"), _small("Nordic lower")
    ('trap-bar deadlift', 'RDL', 'Nordic lower')
    """
    kept = name.startswith(_PLACES) or any(letter.isupper() for letter in name[1:])
    return name if kept else name[:1].lower() + name[1:]
