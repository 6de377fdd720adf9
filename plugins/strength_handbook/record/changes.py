"""What is different between an earlier publication of a program and the present one.

The earlier data may be of an older handbook and lack keys: what one side does not know is not
compared. The order of lists does not matter; weeks, sessions, slots, lifters and doors are found
by their names.
"""

from collections.abc import Iterator, Mapping

from strength_handbook.record.change import (
    BeforeAfter,
    Change,
    ChangeKind,
    Changes,
    besides,
    differences,
    together,
)
from strength_handbook.record.earlier import Data, pairs_of, part, parts, weeks_of
from strength_handbook.record.slot_changes import variant_changes, week_slots

_HEAD = (
    "schema", "program", "version", "weeks", "lifters", "exercises", "rules", "notices", "group",
    "goals", "room", "besides", "rules_besides", "room_besides",
)  # fmt: skip
_ALIKE = 0.5
"""Share of exercises in common from which a session under another name is taken for the same."""
_SAFETY = ("hazards", "cautions", "stop", "spotting")


def compare(before: Data, after: Data) -> Changes:
    """All changes from one `data/<program>.json` to another; never raises."""
    names = _names(before) | _names(after)
    found = [
        *_program(before, after),
        *_room(before, after),
        *_rules(before, after),
        *_lifters(before, after),
        *_exercises(before, after),
        *_weeks(before, after, names),
    ]
    return Changes(
        str(after.get("program", "")),
        _version(before),
        _version(after),
        together(found),
        names,
    )


def _version(data: Data) -> str:
    version = data.get("version")
    return version if isinstance(version, str) else ""


def _names(data: Data) -> dict[str, str]:
    several = part(data, "exercises")
    found = {key: part(several, key).get("name") for key in several}
    return {key: name for key, name in found.items() if isinstance(name, str)}


def _program(before: Data, after: Data) -> Iterator[Change]:
    pairs = [*differences(before, after, without=_HEAD)]
    pairs += differences(part(before, "group"), part(after, "group"), prefix="group.")
    if "goals" in before and "goals" in after:
        goals = part(before, "goals"), part(after, "goals")
        pairs += differences(*goals, prefix="goals.", both=False)
    pairs += besides(before, after)
    if pairs:
        yield Change(ChangeKind.PROGRAM, tuple(pairs))
    notices = tuple(differences(part(before, "notices"), part(after, "notices")))
    if notices:
        yield Change(ChangeKind.NOTICE, notices)


def _room(then: Data, now: Data) -> Iterator[Change]:
    """Each thing of the room that is new, gone or different."""
    every = tuple(besides(then, now, "room_besides"))
    if every:
        yield Change(ChangeKind.ROOM, every, name="gym")
    before, after = part(then, "room"), part(now, "room")
    if not before or not after:
        return
    for key in sorted(before.keys() | after.keys()):
        if key not in before or key not in after:
            word = (None, key) if key in after else (key, None)
            yield Change(ChangeKind.ROOM, (BeforeAfter("", *word),), name=key)
            continue
        pairs = tuple(differences(part(before, key), part(after, key), both=False))
        if pairs:
            yield Change(ChangeKind.ROOM, pairs, name=key)


def _rules(before: Data, after: Data) -> Iterator[Change]:
    for pair in differences(part(before, "rules"), part(after, "rules")):
        yield Change(ChangeKind.RULE, (pair,))
    for pair in besides(before, after, "rules_besides"):
        yield Change(ChangeKind.RULE, (pair,))


def _lifters(before: Data, after: Data) -> Iterator[Change]:
    then, now = parts(before, "lifters", "id"), parts(after, "lifters", "id")
    for key in sorted(then.keys() | now.keys()):
        if key not in then or key not in now:
            word = (None, key) if key in now else (key, None)
            yield Change(ChangeKind.LIFTER, (BeforeAfter(key, *word),))
            continue
        pairs = [
            *differences(then[key], now[key], without=("id", "bases", "besides"), prefix=f"{key}."),
            *besides(then[key], now[key], prefix=f"{key}."),
            *differences(
                part(then[key], "bases"), part(now[key], "bases"), prefix=f"{key}.", both=False
            ),
        ]
        if pairs:
            yield Change(ChangeKind.LIFTER, tuple(pairs))


def _exercises(before: Data, after: Data) -> Iterator[Change]:
    then, now = part(before, "exercises"), part(after, "exercises")
    used = _weeks_of_exercises(after)
    for key in sorted(then.keys() & now.keys()):
        old, new = part(then, key), part(now, key)
        every = (*differences(old, new, without=("doors", "besides")), *besides(old, new))
        doors = tuple(differences(part(old, "doors"), part(new, "doors"), both=False))
        safety = tuple(pair for pair in every if pair.key in _SAFETY)
        other = tuple(pair for pair in every if pair.key not in _SAFETY)
        name = str(new.get("name") or key)
        for kind, pairs in (
            (ChangeKind.SAFETY, safety),
            (ChangeKind.TEXT, other),
            (ChangeKind.DOORS, doors),
        ):
            if pairs:
                weeks = used.get(key, ()) if kind is ChangeKind.SAFETY else ()
                yield Change(kind, pairs, weeks, exercise=key, name=name)


def _weeks_of_exercises(data: Data) -> dict[str, tuple[int, ...]]:
    used: dict[str, set[int]] = {}
    for week, one in weeks_of(data).items():
        for session in parts(one, "sessions", "id").values():
            for _, exercise in pairs_of(session, "slots", "order", "exercise"):
                used.setdefault(exercise, set()).add(week)
    return {key: tuple(sorted(weeks)) for key, weeks in used.items()}


def _weeks(before: Data, after: Data, names: dict[str, str]) -> Iterator[Change]:
    then, now = weeks_of(before), weeks_of(after)
    for week in sorted(then.keys() | now.keys()):
        if week not in now:
            yield Change(ChangeKind.WEEK_GONE, weeks=(week,))
        elif week not in then:
            yield Change(ChangeKind.WEEK_NEW, weeks=(week,))
        else:
            yield from _week(week, then[week], now[week], names)


def _week(week: int, then: Data, now: Data, names: dict[str, str]) -> Iterator[Change]:
    own = ("week", "volume", "sessions", "besides")
    pairs = (*differences(then, now, without=own), *besides(then, now))
    if pairs:
        yield Change(ChangeKind.WEEK, pairs, (week,))
    volume = tuple(_volume(part(then, "volume"), part(now, "volume")))
    if volume:
        yield Change(ChangeKind.VOLUME, volume, (week,))
    old, new = parts(then, "sessions", "id"), parts(now, "sessions", "id")
    for was, key in _renamed(old, new):
        old[key] = old.pop(was)
    for key in sorted(old.keys() | new.keys()):
        title = str((new.get(key) or old.get(key) or {}).get("title") or key)
        here = Change(ChangeKind.SESSION, (), (week,), key, title)
        if key not in new:
            yield Change(ChangeKind.SESSION_GONE, (), (week,), key, title)
        elif key not in old:
            yield Change(ChangeKind.SESSION_NEW, (), (week,), key, title)
        else:
            # The week's sums already hold what changed in a session.
            yield from _session(here, old[key], new[key], names, sums=not volume)


def _renamed(old: Mapping[str, Data], new: Mapping[str, Data]) -> list[tuple[str, str]]:
    """Sessions that go by another name now: most of their exercises are the same ones."""
    found: list[tuple[str, str]] = []
    taken: set[str] = set()
    for was in sorted(old.keys() - new.keys()):
        likeness = {
            key: _likeness(old[was], new[key]) for key in sorted(new.keys() - old.keys() - taken)
        }
        best = max(likeness, key=lambda key: likeness[key], default="")
        if best and likeness[best] >= _ALIKE:
            found.append((was, best))
            taken.add(best)
    return found


def _likeness(then: Data, now: Data) -> float:
    """Exercises that two sessions have in common, as a share of all they have."""
    old = {exercise for _, exercise in pairs_of(then, "slots", "order", "exercise")}
    new = {exercise for _, exercise in pairs_of(now, "slots", "order", "exercise")}
    return len(old & new) / len(old | new) if old | new else 0.0


def _session(
    here: Change, then: Data, now: Data, names: dict[str, str], *, sums: bool
) -> Iterator[Change]:
    def change(kind: ChangeKind, pairs: tuple[BeforeAfter, ...]) -> Iterator[Change]:
        if pairs:
            yield Change(kind, pairs, here.weeks, here.session, here.title)

    own = ("slots", "variants", "volume", "minutes", "besides")
    yield from change(
        ChangeKind.SESSION, (*differences(then, now, without=own), *besides(then, now))
    )  # fmt: skip
    minutes = tuple(pair for pair in differences(then, now) if pair.key == "minutes")
    yield from change(ChangeKind.MINUTES, minutes)
    if sums:
        yield from change(
            ChangeKind.VOLUME, tuple(_volume(part(then, "volume"), part(now, "volume")))
        )
    slots = list(week_slots(here, then, now, names))
    yield from slots
    yield from change(ChangeKind.VARIANT, tuple(variant_changes(then, now, follow=bool(slots))))


def _volume(then: Data, now: Data) -> Iterator[BeforeAfter]:
    sums = ("hard_sets", "tonnage_kg")
    yield from differences(then, now, without=sums)
    # An example lifter that one side does not have says nothing about the program.
    for key, both in zip(sums, (False, True), strict=True):
        if key in then and key in now:
            yield from differences(part(then, key), part(now, key), prefix=f"{key}.", both=both)
