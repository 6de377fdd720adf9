"""One difference between two publications of a program."""

import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Any


class ChangeKind(StrEnum):
    """What changed, in the order of a list for the coach."""

    LOAD = "load"
    DOSE = "dose"
    WEEK_GONE = "week-gone"
    WEEK_NEW = "week-new"
    WEEK = "week"
    SESSION_GONE = "session-gone"
    SESSION_NEW = "session-new"
    SESSION = "session"
    EXERCISE_GONE = "exercise-gone"
    EXERCISE_NEW = "exercise-new"
    EXERCISE_SWAPPED = "exercise-swapped"
    EXERCISE_MOVED = "exercise-moved"
    ROOM = "room"
    PROGRAM = "program"
    RULE = "house-rule"
    LIFTER = "lifter"
    NOTICE = "notice"
    SAFETY = "safety"
    TEXT = "text"
    DOORS = "doors"
    METHOD = "method"
    VARIANT = "variant"
    MINUTES = "minutes"
    VOLUME = "volume"


@dataclass(frozen=True, slots=True)
class BeforeAfter:
    """One value then and now; None where there was or is none.

    Attributes:
        key: its name in the data, such as ``rest_s`` or ``P1.load_kg``.
        before: then.
        after: now.
    """

    key: str
    before: Any
    after: Any


@dataclass(frozen=True)
class Change:
    """Something that is different, in all weeks in which it is different in the same way.

    Attributes:
        kind: what changed.
        pairs: the values.
        weeks: where; empty where it is about no week.
        session: id of the session, or empty.
        title: its title.
        order: letter of the slot, or empty.
        exercise: id of the exercise, or empty.
        name: its name; of a change of the room the thing.
    """

    kind: ChangeKind
    pairs: tuple[BeforeAfter, ...] = ()
    weeks: tuple[int, ...] = ()
    session: str = ""
    title: str = ""
    order: str = ""
    exercise: str = ""
    name: str = ""

    def pair(self, key: str) -> BeforeAfter | None:
        """The value of a name, where it is different."""
        return next((pair for pair in self.pairs if pair.key == key), None)


_ON_NO_CARD = (ChangeKind.RULE, ChangeKind.ROOM)


@dataclass(frozen=True)
class Changes:
    """Everything that is different in one program.

    Attributes:
        program: id of the program.
        before: the version then; empty where none was written.
        after: the version now.
        items: the changes, in order of kinds, weeks, sessions and slots.
        names: names of all exercises by id, the present ones first.
    """

    program: str
    before: str
    after: str
    items: tuple[Change, ...]
    names: Mapping[str, str]

    @property
    def unmarked(self) -> tuple[Change, ...]:
        """Changes that may stand on a page or card, while the version is still the same.

        A threshold of a check alone stands on none; what a change of the room comes to does.
        """
        if self.before != self.after:
            return ()
        return tuple(item for item in self.items if item.kind not in _ON_NO_CARD)


def differences(
    before: Mapping[str, Any],
    after: Mapping[str, Any],
    *,
    without: Iterable[str] = (),
    prefix: str = "",
    both: bool = True,
) -> Iterator[BeforeAfter]:
    """Keys whose values differ, in a fixed order.

    Args:
        before: then.
        after: now.
        without: keys that are looked at elsewhere.
        prefix: put before each key.
        both: leave out keys that only one side has: the other side may not have known them.
    """
    left_out = set(without)
    keys = before.keys() & after.keys() if both else before.keys() | after.keys()
    for key in sorted(keys - left_out):
        then, now = before.get(key), after.get(key)
        if not same(then, now):
            yield BeforeAfter(f"{prefix}{key}", then, now)


BESIDES = "besides."
"""Before the key of a field that is compared by a digest: nobody can read what it says."""


def besides(
    before: Mapping[str, Any], after: Mapping[str, Any], key: str = "besides", prefix: str = ""
) -> Iterator[BeforeAfter]:
    """Fields without a place of their own in the data whose digests differ."""
    then, now = before.get(key), after.get(key)
    if isinstance(then, dict) and isinstance(now, dict):
        yield from differences(then, now, prefix=f"{prefix}{BESIDES}")


def same(then: Any, now: Any) -> bool:
    """True for equal values; a number is the same with and without a decimal point.

    >>> same(2, 2.0), same(1, True), same([1], [1.0]), same({"a": 1}, {"a": 2})
    (True, False, True, False)
    """
    if isinstance(then, bool) or isinstance(now, bool):
        return then is now
    if isinstance(then, dict) and isinstance(now, dict):
        return then.keys() == now.keys() and all(same(then[key], now[key]) for key in then)
    if isinstance(then, list) and isinstance(now, list):
        return len(then) == len(now) and all(map(same, then, now))
    return bool(then == now)


def together(changes: Iterable[Change]) -> tuple[Change, ...]:
    """The same change in several weeks as one, and all in order.

    What follows from something else, such as loads from a plate that is gone, is one change for
    each slot, with the values of all its weeks.
    """
    merged: dict[str, Change] = {}
    for one in changes:
        pairs = "" if _follows(one) else _plain(one.pairs)
        key = repr((one.kind, one.session, one.order, one.exercise, one.name, pairs))
        known = merged.get(key, one)
        further = tuple(pair for pair in one.pairs if pair not in known.pairs)
        weeks = tuple(sorted({*known.weeks, *one.weeks}))
        merged[key] = replace(known, weeks=weeks, pairs=(*known.pairs, *further))
    return tuple(sorted(merged.values(), key=_order))


def _follows(one: Change) -> bool:
    """True for what nobody wrote: it comes of another change."""
    match one.kind:
        case ChangeKind.METHOD:
            return True
        case ChangeKind.LOAD:
            return one.pair("load") is None
        case ChangeKind.VOLUME:
            return all(pair.key.startswith("tonnage_kg.") for pair in one.pairs)
        case _:
            return False


def _plain(pairs: tuple[BeforeAfter, ...]) -> str:
    values = [[pair.key, pair.before, pair.after] for pair in pairs]
    return json.dumps(values, sort_keys=True, default=str)


def _order(one: Change) -> tuple[Any, ...]:
    kinds = list(ChangeKind)
    return (
        kinds.index(one.kind), one.weeks[:1], one.session, one.order, one.exercise,
        one.name, _plain(one.pairs),
    )  # fmt: skip
