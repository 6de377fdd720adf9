"""What belongs to nobody but the member is found in every text that a file may hold."""

from dataclasses import replace
from typing import Any

import pytest
from pydantic import BaseModel

import desks
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.house_rules import HouseRules
from strength_handbook.model.lifter import Lifters
from strength_handbook.model.marks import CoachOnly, Label, NamesThings, NotProse
from strength_handbook.model.plain import Name
from strength_handbook.model.program import Program, Wave
from strength_handbook.model.room import Room
from strength_handbook.model.shape import Id, Shape
from strength_handbook.model.texts import EACH, FieldPath, marks_of, text_fields, words_at
from strength_handbook.reading.source import Source
from strength_handbook.reading.written import File, Written
from strength_handbook.review.catalogue import CHECKS
from strength_handbook.review.desk import Desk

ROOTS: tuple[type[BaseModel], ...] = (Exercise, Program, Wave, Room, HouseRules, Lifters)
INDEXES = {"need", "not-for", "rules", "goals", "events", "accepted", "slots", "warm-up",
           "variants", "cautions", "set-up", "before", "during", "finish", "voice", "stop",
           "faults", "roles"}  # fmt: skip
"""Keys whose entries are a list, as far as a text may stand in them."""


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Desk:
    found = desks.check(desks.edited({}), tmp_path_factory.mktemp("base")).desk
    assert found is not None
    return found


def way(root: type[BaseModel], path: FieldPath) -> FieldPath:
    """A path in a file for the path of a field: week 2, the first of a list, some key."""
    found: list[str | int] = []
    for part in path:
        last = str(found[-1]) if found else ""
        if part != EACH:
            found.append(part)
        elif last in INDEXES and not (root is HouseRules and last == "rules"):
            found.append(0)
        else:
            found.append("2" if last == "weeks" else "some-key")
    return tuple(found)


def nested(paths: dict[FieldPath, str]) -> Any:
    data: dict[Any, Any] = {}
    for path, text in paths.items():
        here = data
        for part in path[:-1]:
            here = here.setdefault(part, {})
        here[path[-1]] = text
    return _lists(data)


def _lists(data: Any) -> Any:
    if not isinstance(data, dict):
        return data
    inner = {key: _lists(value) for key, value in data.items()}
    return list(inner.values()) if set(inner) == {0} else inner


def with_file(desk: Desk, root: type[BaseModel], data: Any) -> Desk:
    """The same desk, with one file of a kind that says something else."""
    source = Source("file.yml", data, {}, {})
    written = desk.written
    parts: dict[str, Any] = {"room": None, "rules": None, "lifters": None, "exercises": {},
                             "programs": {}, "waves": {}}  # fmt: skip
    several = written.waves.values()
    kinds: dict[type[BaseModel], tuple[str, Any]] = {
        Exercise: ("exercises", next(iter(written.exercises.values()))),
        Program: ("programs", next(iter(written.programs.values()))),
        Wave: ("waves", next(iter(several))[0]),
        Room: ("room", written.room),
        HouseRules: ("rules", written.rules),
        Lifters: ("lifters", written.lifters),
    }
    key, file = kinds[root]
    other: File[Any] = replace(file, source=source)
    if key == "waves":
        parts["waves"] = {"brook": [other]}
        parts["programs"] = written.programs
    else:
        parts[key] = {"some": other} if isinstance(parts[key], dict) else other
    return Desk(desk.worked, Written(**parts), desk.today)


def found_at(desk: Desk, slug: str) -> set[tuple[FieldPath, bool]]:
    one = CHECKS[slug]
    return {
        (finding.spot.path, finding.spot.key)
        for finding in one.run(one, desk)
        if finding.spot.source.file == "file.yml"
    }


@pytest.mark.parametrize("sentence", ["After her knee operation.", "For Anna's bad knee"])
@pytest.mark.parametrize("root", ROOTS, ids=lambda root: str(root.__name__))
def test_health_is_found_in_every_text_of_every_file(
    desk: Desk, root: type[BaseModel], sentence: str
) -> None:
    fields = list(text_fields(root))
    assert bool(fields) == (root is not Lifters)
    planted = {way(root, path): sentence for path, is_key in fields if not is_key}
    keys = {(*way(root, path)[:-1], sentence): "20 kg" for path, is_key in fields if is_key}
    assert len(planted) == len([path for path, is_key in fields if not is_key])
    found = found_at(with_file(desk, root, nested(planted)), "health-data")
    assert found == {(path, False) for path in planted}
    in_keys = found_at(with_file(desk, root, nested(keys)), "health-data")
    assert in_keys == {(path, True) for path in keys}


def test_a_title_with_a_name_and_an_illness_is_an_error(tmp_path: Any) -> None:
    files = desks.edited(
        {"brook/1-slow.yml": {"sessions.a-lift.title": "For Anna after her knee operation"}}
    )
    checked = desks.check(files, tmp_path)
    assert [str(one.severity) for one in desks.findings(checked, "health-data")] == ["error"]
    assert [str(one.severity) for one in desks.findings(checked, "member-name")] == ["warn"]


class Bag(Shape):
    """A block that somebody adds."""

    colour: Name | None = None
    sort: Id | None = None
    owner: dict[Name, int] | None = None


def test_a_new_text_is_prose_unless_it_says_why_not() -> None:
    assert words_at(Bag, ("colour",)) is not None
    assert words_at(Bag, ("owner", "x"), key=True) is not None
    assert words_at(Bag, ("sort",)) is None
    assert words_at(Bag, ("owner", "x")) is None


@pytest.mark.parametrize("root", ROOTS, ids=lambda root: str(root.__name__))
def test_every_exception_has_its_reason(root: type[BaseModel]) -> None:
    reasons = [
        mark.why
        for mark in marks_of(root)
        if isinstance(mark, NotProse | Label | NamesThings | CoachOnly)
    ]
    assert reasons
    assert all(len(why) > 5 for why in reasons)
