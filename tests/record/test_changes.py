"""Two publications of a program held against each other: every kind of change, and no other."""

import copy
import json
import random
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from change_cases import CASES, LIFT, Data, publish, slots
from strength_handbook.pages.change_words import said, where
from strength_handbook.pages.member_lines import MOST, member_lines, what_changed
from strength_handbook.record.change import Change, ChangeKind, Changes
from strength_handbook.record.changes import compare
from strength_handbook.record.earlier import EarlierError, read_earlier


@pytest.fixture(scope="module")
def before(tmp_path_factory: pytest.TempPathFactory) -> Data:
    return publish(tmp_path_factory.mktemp("before") / "files")


def of(changes: Changes, kind: ChangeKind) -> list[Change]:
    return [item for item in changes.items if item.kind is kind]


def lines(changes: Changes, kind: ChangeKind) -> list[str]:
    return [f"{where(item)}: {said(item)}" for item in of(changes, kind)]


def test_nothing_changed_and_nothing_is_said(before: Data) -> None:
    changes = compare(before, before)
    assert changes.items == ()
    assert changes.unmarked == ()
    assert member_lines(changes) == ()
    assert what_changed(changes) is None
    assert what_changed(None) is None


@pytest.mark.parametrize("name", CASES)
def test_each_kind_of_change_is_found_and_said(name: str, before: Data, tmp_path: Path) -> None:
    change, kind, line, member = CASES[name]
    changes = compare(before, publish(tmp_path / "files", change))
    assert line in lines(changes, kind), [(i.kind, where(i), said(i)) for i in changes.items]
    told = member_lines(changes)
    assert (told[:1] == (member,)) if member else (name == "minutes" or not told), told
    # What is compared the other way round is different in the same places.
    back = compare(publish(tmp_path / "again", change), before)
    assert {(i.weeks, i.session) for i in back.items} == {
        (i.weeks, i.session) for i in changes.items
    }


def test_minutes_are_said_to_members_only_from_five_on(before: Data, tmp_path: Path) -> None:
    def longer(minutes: str) -> tuple[str, ...]:
        files = tmp_path / minutes.replace(" ", "")
        return member_lines(
            compare(before, publish(files, lambda p: p.update({"warm-up": minutes})))
        )

    assert longer("4 min") == ()
    assert "Weeks 1 to 3, Hold: about 8 minutes instead of 2." in longer("5 min")


def test_weeks_that_come_and_go(before: Data, tmp_path: Path) -> None:
    def shorter(parts: Data) -> None:
        for session in parts["sessions"].values():
            for one in session["slots"]:
                for week in "23":
                    del one["weeks"][week]

    after = publish(tmp_path / "files", shorter)
    gone, new = compare(before, after), compare(after, before)
    assert lines(gone, ChangeKind.WEEK_GONE) == ["weeks 2-3: taken out"]
    assert member_lines(gone) == ("Weeks 2 to 3 are no longer in the program.",)
    assert lines(new, ChangeKind.WEEK_NEW) == ["weeks 2-3: new"]
    assert member_lines(new) == ("Weeks 2 to 3 are new.",)
    # What a new week holds is not told again, one by one.
    assert {item.kind for item in gone.items} == {ChangeKind.WEEK_GONE}


def test_a_session_under_another_name_is_the_same_session(before: Data, tmp_path: Path) -> None:
    def renamed(parts: Data) -> None:
        parts["sessions"] = {
            key.replace("a-lift", "c-lift"): one for key, one in parts["sessions"].items()
        }
        slots(parts, "c-lift")[0].update(rest="2:30")

    changes = compare(before, publish(tmp_path / "files", renamed))
    assert lines(changes, ChangeKind.SESSION) == [
        "weeks 1-3, c-lift: called 'c-lift' instead of 'a-lift'"
    ]
    assert lines(changes, ChangeKind.DOSE) == [
        f"weeks 1-3, c-lift A {LIFT}: rest 2:30 instead of 2:00"
    ]
    kinds = {item.kind for item in changes.items}
    assert not kinds & {ChangeKind.SESSION_NEW, ChangeKind.SESSION_GONE}


def test_a_session_with_other_exercises_is_another_session(before: Data, tmp_path: Path) -> None:
    def swapped(parts: Data) -> None:
        parts["sessions"]["c-hold"] = parts["sessions"].pop("b-hold")
        slots(parts, "c-hold")[0].update(exercise="step-down", weeks=dict.fromkeys("123", "2x8"))

    changes = compare(before, publish(tmp_path / "files", swapped))
    assert lines(changes, ChangeKind.SESSION_NEW) == ["weeks 1-3, c-hold: new"]
    assert lines(changes, ChangeKind.SESSION_GONE) == ["weeks 1-3, b-hold: taken out"]


def test_what_follows_from_one_cause_is_one_line_for_each_slot(
    before: Data, tmp_path: Path
) -> None:
    changes = compare(before, publish(tmp_path / "files", CASES["plates"][0]))
    every = [(item.kind, item.session, item.order) for item in changes.items]
    assert len(set(every)) == len(every)
    assert every[0] == (ChangeKind.LOAD, "a-lift", "A")
    # 95, 100 and 105 kg after 97.5, 102.5 and 107.5 are 2.3 to 2.6 % less; 70 and 75 kg after
    # 72.5 and 77.5 are 3.4 and 3.2 % less.
    assert lines(changes, ChangeKind.VOLUME) == ["weeks 1-3: kilograms moved: 2 to 3 % less"]
    assert not [item for item in changes.unmarked if item.kind is ChangeKind.ROOM]


def test_members_read_three_lines_at_most_and_safety_first(before: Data, tmp_path: Path) -> None:
    every = ("rest", "sets", "load", "session-new", "caution", "door", "hold")

    def all_at_once(parts: Data) -> None:
        for name in every:
            CASES[name][0](parts)

    changes = compare(before, publish(tmp_path / "files", all_at_once))
    told = member_lines(changes)
    assert len(told) == MOST == 3
    assert told == (CASES["caution"][3], CASES["session-new"][3], CASES["load"][3])
    section = what_changed(changes)
    assert section == {"version": "1", "lines": told, "more": True}


def test_more_weight_goes_before_less(before: Data, tmp_path: Path) -> None:
    weeks = {"1": "3x5 @ 72 %", "2": "3x5 @ 76 %", "3": "3x5 @ 76 %"}
    after = publish(tmp_path / "files", lambda parts: slots(parts)[0].update(weeks=weeks))
    assert member_lines(compare(before, after)) == (
        "Weeks 1 to 2: trap-bar deadlift is heavier.",
        "Week 3: trap-bar deadlift is lighter, 76 % instead of 78 %.",
    )


def test_another_example_lifter_changes_nothing_for_members(before: Data, tmp_path: Path) -> None:
    changes = compare(before, publish(tmp_path / "files", CASES["lifter"][0]))
    assert of(changes, ChangeKind.LOAD)
    assert member_lines(changes) == ()


def test_a_version_that_was_not_raised_is_noticed(before: Data, tmp_path: Path) -> None:
    after = publish(tmp_path / "files", CASES["rest"][0])
    assert compare(before, after).unmarked
    assert not compare(before, after | {"version": "2"}).unmarked
    threshold = publish(tmp_path / "threshold", CASES["threshold"][0])
    assert compare(before, threshold).items
    assert not compare(before, threshold).unmarked  # it stands on no card


def test_an_older_file_may_lack_keys(before: Data) -> None:
    old = copy.deepcopy(before)
    for key in ("exercises", "rules", "notices", "version", "title"):
        del old[key]
    for week in old["weeks"]:
        del week["volume"]["contacts"]
        for session in week["sessions"]:
            for key in ("day", "words", "variants", "title", "volume"):
                del session[key]
            for one in session["slots"]:
                for key in ("plan", "said", "own_doors", "sets_low", "load", "base"):
                    del one[key]
    assert compare(old, before).items == ()
    old["weeks"][0]["sessions"][0]["slots"][0]["sets"] = 9
    (change,) = compare(old, before).items
    assert (where(change), said(change)) == (f"week 1, a-lift A {LIFT}", "3 sets instead of 9")


def shuffled(value: Any, chance: random.Random) -> Any:
    """The same data with every mapping, and every list of mappings, in another order."""
    if isinstance(value, dict):
        keys = list(value)
        chance.shuffle(keys)
        return {key: shuffled(value[key], chance) for key in keys}
    if isinstance(value, list):
        several = [shuffled(one, chance) for one in value]
        named = all(isinstance(one, dict) and one.keys() & NAMES for one in several)
        if named:
            chance.shuffle(several)
        return several
    return value


NAMES = {"id", "week", "order", "when", "door"}


def numbers_in(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """Paths of all numbers that are compared by themselves."""
    if isinstance(value, dict):
        found = [numbers_in(one, (*path, key)) for key, one in value.items()]
    elif isinstance(value, list):
        found = [numbers_in(one, (*path, index)) for index, one in enumerate(value)]
    else:
        number = isinstance(value, int | float) and not isinstance(value, bool)
        return [path] if number and path[-1] not in ("schema", "week") else []
    return [one for several in found for one in several]


@given(st.integers(0, 999))
def test_order_says_nothing(before: Data, seed: int) -> None:
    assert compare(before, shuffled(before, random.Random(seed))).items == ()


@given(st.data())
def test_no_changed_number_is_lost_in_another_order(before: Data, data: st.DataObject) -> None:
    path = data.draw(st.sampled_from(numbers_in(before)))
    after = copy.deepcopy(before)
    part: Any = after
    for key in path[:-1]:
        part = part[key]
    part[path[-1]] = part[path[-1]] + 7
    changes = compare(before, shuffled(after, random.Random(data.draw(st.integers(0, 999)))))
    assert changes.items, path
    key = [one for one in path if isinstance(one, str)][-1]
    keys = [pair.key for item in changes.items for pair in item.pairs]
    inside = {"plan", "variants"} & set(path)  # said as a whole
    assert inside or any(key in one for one in keys), (path, keys)


json_values = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text(max_size=5),
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3)
    ),
    max_leaves=8,
)


@given(st.data())
def test_whatever_stands_in_an_earlier_file_nothing_is_raised(
    before: Data, data: st.DataObject
) -> None:
    old: Any = copy.deepcopy(before)
    part = old
    for _ in range(data.draw(st.integers(0, 8))):
        inner = part.values() if isinstance(part, dict) else part
        deeper = [one for one in inner if isinstance(one, dict | list) and one]
        if not deeper:
            break
        part = data.draw(st.sampled_from(deeper))
    key = data.draw(
        st.sampled_from(list(part) if isinstance(part, dict) else list(range(len(part))))
    )
    part[key] = data.draw(json_values)
    for changes in (compare(old, before), compare(before, old)):
        for item in changes.items:
            assert where(item)
            assert said(item)
            assert "\n" not in where(item) + said(item)
        assert len(member_lines(changes)) <= MOST


def first_paths(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """Every place, of lists the first entry only."""
    inner: list[tuple[Any, Any]] = []
    if isinstance(value, dict):
        inner = list(value.items())
    elif isinstance(value, list):
        inner = [(0, value[0])] if value else []
    return [path, *(found for key, one in inner for found in first_paths(one, (*path, key)))]


@pytest.mark.parametrize(
    "spoilt", [None, True, "x", 1e308, [], {}, [[1], {}], {"x": [1]}], ids=repr
)
def test_a_value_of_another_kind_at_any_place_raises_nothing(before: Data, spoilt: object) -> None:
    for path in first_paths(before)[1:]:
        old = copy.deepcopy(before)
        part: Any = old
        for key in path[:-1]:
            part = part[key]
        part[path[-1]] = spoilt
        for changes in (compare(old, before), compare(before, old)):
            assert all(where(item) and said(item) for item in changes.items)
            assert what_changed(changes) is None or member_lines(changes)


@pytest.mark.parametrize(
    ("raw", "says"),
    [
        (b"", "the file is not whole JSON"),
        (b'{"schema": 1, "weeks": [', "the file is not whole JSON"),
        (b"\xff\xfe\x00", "not UTF-8 text"),
        (b"[1, 2]", "not a data file of the handbook"),
        (b'{"weeks": []}', "not a data file of the handbook"),
        (b"[" * 100_000, "not plain JSON"),
        (b'{"schema": NaN}', "not plain JSON"),
        (b'{"schema": 1' + b"0" * 5000 + b"}", "not plain JSON"),
        (
            b'{"schema": 2, "program": "plan", "weeks": []}',
            "its schema is 2, and 1 can be compared",
        ),
        (b'{"schema": true, "program": "plan", "weeks": []}', "its schema is true"),
        (b'{"schema": 1, "program": 7, "weeks": []}', "names no program or has no weeks"),
        (b'{"schema": 1, "program": "plan", "weeks": {}}', "names no program or has no weeks"),
    ],
)
def test_a_broken_file_gives_a_message(raw: bytes, says: str) -> None:
    with pytest.raises(EarlierError) as caught:
        read_earlier(raw)
    assert says in str(caught.value)
    assert caught.value.line >= 1


def test_a_file_is_read_back_as_it_was_published(before: Data) -> None:
    earlier = read_earlier(b"\xef\xbb\xbf" + json.dumps(before).encode())
    assert earlier.program == "plan"
    assert compare(earlier.data, before).items == ()
