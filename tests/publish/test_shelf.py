"""The shelf: every exercise complete, fit for a room with its things, and taken without a rest."""

from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner, Result

import demo
import shelf_gym
from strength_handbook.checked import Checked, check_folder
from strength_handbook.cli import main
from strength_handbook.figures.sheet import figure_svg
from strength_handbook.model.room import Room
from strength_handbook.publish.first_gym.gym_files import READY
from strength_handbook.publish.measures import in_units
from strength_handbook.publish.shelf.ready import shelf, with_doors
from strength_handbook.publish.shelf.taking import gym, listed, missing_things
from strength_handbook.publish.shelf.things import THINGS, found
from strength_handbook.publish.starter import short_name
from strength_handbook.reading.book import read_book
from strength_handbook.reading.problem import Severity

UNITS = ("kg", "lb")
EVERYWHERE = {"floor", "mat", "chair"}
"""Things that a door may need beyond those of its exercise."""
LARGEST = 10_000
"""Bytes of a drawing."""


def run(*words: str) -> Result:
    result = CliRunner().invoke(main, [*words])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def take(programs: Path, *names: str) -> Result:
    return run("new", "exercise", "--from-shelf", *names, "--programs", str(programs))


@pytest.fixture(scope="module", params=UNITS)
def everything(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Checked:
    """A gym with the whole shelf, checked."""
    root = tmp_path_factory.mktemp("shelf") / "gym"
    return check_folder(shelf_gym.with_all_exercises(root, request.param))


@pytest.mark.slow
def test_all_of_them_pass_every_check_in_a_room_with_everything(everything: Checked) -> None:
    said = [
        str(problem)
        for problem in everything.problems
        if problem.severity is Severity.ERROR or "/exercises/" in problem.file
    ]
    assert said == []
    # Nothing about sides is left to the coach: each file says what its number counts.
    sides = {"side-uncounted", "side-doubled"}
    assert [str(problem) for problem in everything.problems if problem.slug in sides] == []
    assert everything.worked is not None
    assert set(everything.worked.book.exercises) == set(shelf())


@pytest.mark.slow
def test_each_is_drawn(everything: Checked) -> None:
    assert everything.worked is not None
    figures = {key: one.figure for key, one in everything.worked.book.exercises.items()}
    assert [key for key, figure in figures.items() if figure is None] == []
    sizes = {key: len(figure_svg(figure, key)) for key, figure in figures.items() if figure}
    assert {key: size for key, size in sizes.items() if size > LARGEST} == {}


def test_there_are_enough() -> None:
    assert len(shelf()) >= 80
    assert set(READY) <= set(shelf())
    # Every pattern of the trade that the model knows has some to choose from.
    patterns = [ready.pattern for ready in shelf().values()]
    assert {pattern for pattern in patterns if patterns.count(pattern) >= 2} == set(patterns)


@pytest.mark.parametrize("key", list(shelf()))
def test_its_doors_need_nothing_more_than_itself(key: str) -> None:
    ready = shelf()[key]
    assert short_name(ready.name) == key
    assert ready.needs <= set(THINGS)
    assert {
        target: more
        for target in ready.leads_to
        if (more := shelf()[target].needs - ready.needs - EVERYWHERE)
    } == {}


def test_one_is_taken_with_those_that_its_doors_lead_to(tmp_path: Path) -> None:
    programs = shelf_gym.with_everything(tmp_path / "gym", "lb")
    done = take(programs, "Goblet squat", "plank")
    assert done.exit_code == 0, done.output
    book = read_book(programs).book
    assert book is not None
    assert set(book.exercises) == set(READY) | set(with_doors(["goblet-squat", "plank"]))
    text = (programs / "exercises" / "goblet-squat.yml").read_text(encoding="utf-8")
    assert text.startswith("# yaml-language-server: $schema=../../.schema/exercise.json\n")
    assert "[[" not in text


@pytest.mark.parametrize("units", UNITS)
@pytest.mark.parametrize("name", THINGS)
def test_a_thing_is_found_by_its_own_sample(units: str, name: str) -> None:
    thing = THINGS[name]
    room = _room({thing.section: yaml.safe_load(in_units(thing.sample, units))}, units)
    called = "plates" if name == "plates" else thing.sample.split(":")[0]
    assert found(room, name) == called
    assert found(_room({}, units), name) is None


@pytest.mark.parametrize(
    ("name", "section", "things", "key"),
    # Names a gym might give; invented.
    [
        ("bar", "bars", {"trap-bar": "trap bar", "men": "men's bar"}, "men"),
        ("bar", "bars", {"a": "farmer handle", "b": "yoke bar"}, None),
        ("handle", "bars", {"thick-handle": "thick handle", "walk": "farmer handle"}, "walk"),
        ("kettlebell", "hand-weights", {"db": "dumbbell", "kb": "kettlebell"}, "kb"),
        ("bench", "kit", {"ib": "incline bench", "fb": "flat bench"}, "fb"),
        ("slanted_bench", "kit", {"fb": "flat bench", "ib": "incline bench"}, "ib"),
        ("bench", "kit", {"tb": "treatment bench", "mb": "massage bench"}, None),
        ("bench", "kit", {"treatment-bench": "couch", "b": "bench"}, "b"),
        ("mat", "kit", {"plyomatic": "jumping thing"}, None),
    ],
)
def test_things_are_told_apart(
    name: str, section: str, things: dict[str, str], key: str | None
) -> None:
    kinds: dict[str, dict[str, object]] = {
        "bars": {"mass": "20 kg"},
        "hand-weights": {"masses": [{"mass": "10 kg", "count": 2}]},
        "kit": {},
    }
    more = kinds[section]
    room = _room({section: {short: {"name": called, **more} for short, called in things.items()}})
    assert found(room, name) == key


def test_a_box_is_chosen_by_its_height() -> None:
    room = _room({"kit": {
        "a": {"name": "box", "height": "60 cm"}, "b": {"name": "box", "height": "20 cm"},
        "c": {"name": "box", "height": "45 cm"}, "d": {"name": "box"},
    }})  # fmt: skip
    assert (found(room, "low_box"), found(room, "stair"), found(room, "box")) == ("b", "b", "c")


def test_three_jumping_boxes_are_enough_for_a_box_jump() -> None:
    # Usual sizes, 12, 18 and 24 in; common practice, no source.
    room = _room({"kit": {f"b{one}": {"name": "box", "height": f"{one} in"}
                          for one in (24, 18, 12)}}, "lb")  # fmt: skip
    assert (found(room, "stair"), found(room, "box"), found(room, "low_box")) == (
        "b12",
        "b18",
        None,
    )


def test_what_the_room_lacks_is_named_with_its_line(tmp_path: Path) -> None:
    programs = shelf_gym.begun(tmp_path / "gym", "lb")
    before = sorted(programs.rglob("*"))
    done = take(programs, "goblet-squat", "back-squt", "kettlebell-swing", "back-squat")
    assert done.exit_code == 2
    said = done.output.splitlines()
    assert "Error: 'back-squt' is not on the shelf; did you mean 'back-squat'?" in said[3]
    assert "exercises/back-squat.yml is there already; it stays as it is" in said[4]
    line = "kettlebell: {name: kettlebell, masses: [{from: 20 lb, to: 70 lb, by: 10 lb, count: 2}]}"
    (asked,) = (one for one in said if "kettlebells" in one)
    assert asked.endswith(f"write under 'hand-weights': {line}")
    assert sorted(programs.rglob("*")) == before


def test_the_list_names_what_this_room_allows(tmp_path: Path) -> None:
    programs = shelf_gym.begun(tmp_path / "gym", "kg")
    names = run("new", "exercise", "--from-shelf", "--list", "--programs", str(programs))
    assert names.exit_code == 0, names.output
    allowed, waiting = listed(*gym(programs))
    assert names.output.split() == [ready.key for ready in allowed]
    assert {"plank", "deadlift"} <= set(names.output.split())
    assert not set(READY) & set(names.output.split())
    whole = run("new", "exercise", "--from-shelf", "--programs", str(programs)).output
    assert [key for key in (*names.output.split(), *waiting) if key not in whole] == []
    assert "a cable column" in whole
    done = take(programs, *names.output.split())
    assert done.exit_code == 0, done.output
    assert check_folder(programs).worked is not None
    again = run("new", "exercise", "--from-shelf", "--programs", str(programs)).output
    assert again.startswith("the gym has all that its room allows\n")


def test_the_demo_takes_all_that_its_room_allows(tmp_path: Path) -> None:
    programs = demo.copy_demo(tmp_path) / "programs"
    room, there = gym(programs)
    allowed, _ = listed(room, there)
    assert len(allowed) > 40
    done = take(programs, *(ready.key for ready in allowed))
    assert done.exit_code == 0, done.output
    checked = check_folder(programs)
    assert [str(one) for one in checked.problems if one.severity is Severity.ERROR] == []
    assert missing_things(room, "back-squat") == []


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((), "give it a NAME, or take ready ones with --from-shelf"),
        (("Step", "down"), 'one NAME is begun at a time; several words in quotes: "Step down"'),
        (("--list",), "--list goes with --from-shelf, without names"),
        (("--from-shelf", "--list", "plank"), "--list goes with --from-shelf, without names"),
    ],
)
def test_asked_wrongly(tmp_path: Path, words: tuple[str, ...], said: str) -> None:
    programs = shelf_gym.begun(tmp_path / "gym", "kg")
    done = run("new", "exercise", *words, "--programs", str(programs))
    assert (done.exit_code, done.output.splitlines()[-1]) == (2, f"Error: {said}")


def test_a_room_that_cannot_be_read_is_said(tmp_path: Path) -> None:
    programs = shelf_gym.begun(tmp_path / "gym", "kg")
    (programs / "room.yml").write_text("gym: [", encoding="utf-8")
    done = take(programs, "plank")
    assert done.exit_code == 2
    assert "room.yml can't be read; run 'strength-handbook check'" in done.output


def _room(more: dict[str, object], units: str = "kg") -> Room:
    said = "Beside the door"
    emergency = dict.fromkeys(
        ("number", "address", "entrance", "defibrillator", "first-aid", "phone"), said
    )
    return Room.model_validate(
        {"gym": "A gym", "units": units, "emergency": {**emergency, "roles": [said]}, **more}
    )
