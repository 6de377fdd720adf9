"""What is different in the slots of one session in one week."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from strength_handbook.record.change import (
    BeforeAfter,
    Change,
    ChangeKind,
    besides,
    differences,
    same,
)
from strength_handbook.record.earlier import Data, pairs_of, part, parts

Key = tuple[str, str]
"""Order letter and exercise."""

_LIKENESS: tuple[Callable[[Key, Key], bool], ...] = (
    lambda before, after: before == after,
    lambda before, after: before[1] == after[1],
    lambda before, after: before[0] == after[0],
)


def week_slots(here: Change, then: Data, now: Data, names: Mapping[str, str]) -> Iterator[Change]:
    """Changes of all slots of a session.

    A slot is the same one where letter and exercise are the same, else where the exercise is,
    else where the letter is: then its exercise was swapped.

    Args:
        here: week and session.
        then: the session then.
        now: the session now.
        names: names of exercises.
    """
    old = pairs_of(then, "slots", "order", "exercise")
    new = pairs_of(now, "slots", "order", "exercise")
    matched = _matched(list(old), list(new))
    for before, after in matched:
        if before is None or after is None:
            letter, exercise = before or after or ("", "")
            kind = ChangeKind.EXERCISE_NEW if before is None else ChangeKind.EXERCISE_GONE
            word = (None, exercise) if before is None else (exercise, None)
            yield _at(here, kind, letter, exercise, names, BeforeAfter("exercise", *word))
            continue
        letter, exercise = after
        if before[1] != exercise:
            pair = BeforeAfter("exercise", before[1], exercise)
            yield _at(here, ChangeKind.EXERCISE_SWAPPED, letter, exercise, names, pair)
            yield from _dose(
                _at(here, ChangeKind.DOSE, letter, exercise, names), old[before], new[after]
            )
            continue
        if before[0] != letter:
            pair = BeforeAfter("order", before[0], letter)
            yield _at(here, ChangeKind.EXERCISE_MOVED, letter, exercise, names, pair)
        yield from _slot(
            _at(here, ChangeKind.DOSE, letter, exercise, names), old[before], new[after]
        )


def _matched(old: list[Key], new: list[Key]) -> list[tuple[Key | None, Key | None]]:
    """Which slot was which, in order of letters."""
    pairs: list[tuple[Key | None, Key | None]] = []
    for is_same in _LIKENESS:
        for before in sorted(old):
            after = next((one for one in sorted(new) if is_same(before, one)), None)
            if after is not None:
                pairs.append((before, after))
                old = [one for one in old if one != before]
                new = [one for one in new if one != after]
    pairs += [(before, None) for before in old]
    pairs += [(None, after) for after in new]
    return sorted(pairs, key=lambda pair: (pair[1] or pair[0] or ("", ""), pair[0] or ("", "")))


def _at(
    here: Change,
    kind: ChangeKind,
    letter: str,
    exercise: str,
    names: Mapping[str, str],
    *pairs: BeforeAfter,
) -> Change:
    name = names.get(exercise, exercise.replace("-", " "))
    return replace(here, kind=kind, pairs=pairs, order=letter, exercise=exercise, name=name)


def _dose(at: Change, then: Data, now: Data) -> Iterator[Change]:
    other = ("order", "exercise", "load", "by_lifter", "plan", "own_doors", "besides")
    pairs = (*differences(then, now, without=other), *besides(then, now))
    if pairs:
        yield replace(at, kind=ChangeKind.DOSE, pairs=(*pairs, *_other_end(pairs, then, now)))


def _other_end(pairs: tuple[BeforeAfter, ...], then: Data, now: Data) -> Iterator[BeforeAfter]:
    """The end of a range of repetitions that stayed, where only the other is different."""
    keys = {pair.key for pair in pairs}
    for changed, other in (("reps", "reps_low"), ("reps_low", "reps")):
        if changed in keys and other not in keys and other in then and other in now:
            yield BeforeAfter(other, then[other], now[other])


def _slot(at: Change, then: Data, now: Data) -> Iterator[Change]:
    doses = list(_dose(at, then, now))
    loads = tuple(_loads(then, now))
    yield from doses
    if loads:
        yield replace(at, kind=ChangeKind.LOAD, pairs=loads)
    follow = bool(doses or loads)
    plans = part(then, "plan"), part(now, "plan")
    doors = (
        *differences(part(then, "own_doors"), part(now, "own_doors"), both=False),
        *_doors(*plans, follow=follow),
    )
    if doors:
        yield replace(at, kind=ChangeKind.DOORS, pairs=doors)
    method = tuple(differences(*plans, without=("doors",)))
    # Warm-up sets, strips and next loads follow from dose and load.
    if method and not follow:
        yield replace(at, kind=ChangeKind.METHOD, pairs=method)


def _loads(then: Data, now: Data) -> Iterator[BeforeAfter]:
    """What is asked, and what it comes to for each lifter that both sides have."""
    yield from (pair for pair in differences(then, now) if pair.key == "load")
    old, new = part(then, "by_lifter"), part(now, "by_lifter")
    for lifter in sorted(old.keys() & new.keys()):
        before, after = part(old, lifter), part(new, lifter)
        yield from differences(before, after, prefix=f"{lifter}.", both=False)


def _doors(then: Data, now: Data, *, follow: bool) -> Iterator[BeforeAfter]:
    """Doors that lead elsewhere; their doses too where they don't follow from the slot's."""
    old, new = parts(then, "doors", "door"), parts(now, "doors", "door")
    sums = ("sets", "reps", "by_lifter") if follow else ()
    for door in sorted(old.keys() & new.keys()):
        yield from differences(old[door], new[door], without=sums, prefix=f"{door}.")


def variant_changes(then: Data, now: Data, *, follow: bool) -> Iterator[BeforeAfter]:
    """What is different in the variants of a session.

    Args:
        then: the session then.
        now: the session now.
        follow: slots have changed, so that those of the variants have too.
    """
    if "variants" not in then or "variants" not in now:
        return
    old, new = parts(then, "variants", "when"), parts(now, "variants", "when")
    for when in sorted(old.keys() | new.keys()):
        if when not in old or when not in new:
            yield BeforeAfter(when, *((None, when) if when in new else (when, None)))
            continue
        sums = ("minutes", "slots") if follow else ()
        before, after = old[when], new[when]
        yield from differences(before, after, without=("slots", *sums), prefix=f"{when}.")
        if not follow and not same(before.get("slots"), after.get("slots")):
            yield BeforeAfter(f"{when}.slots", before.get("slots"), after.get("slots"))
