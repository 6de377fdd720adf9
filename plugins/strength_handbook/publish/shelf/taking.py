"""Exercises of the shelf copied into a gym's folder, with those that their doors lead to."""

from collections.abc import Iterator, Sequence, Set
from pathlib import Path
from string import Template

from strength_handbook.model.room import Room
from strength_handbook.publish.command_errors import MisuseError
from strength_handbook.publish.json_schema import schema_head
from strength_handbook.publish.measures import in_units
from strength_handbook.publish.shelf.ready import Ready, shelf, with_doors
from strength_handbook.publish.shelf.things import THINGS, found
from strength_handbook.publish.starter import short_name
from strength_handbook.reading.book import read_book
from strength_handbook.reading.suggest import did_you_mean_name


def missing_things(room: Room, key: str, there: Set[str] = frozenset()) -> list[str]:
    """What a room has not of all that an exercise and its doors need: keys of `THINGS`."""
    needs = {thing for ready in with_doors([key], there).values() for thing in ready.needs}
    return [thing for thing in THINGS if thing in needs and found(room, thing) is None]


def take(names: Sequence[str], programs: Path) -> tuple[list[Path], list[Path]]:
    """Copy exercises into a gym's folder.

    Args:
        names: what members call them, or their short names.
        programs: the program folder; its room says what things are called.

    Returns:
        The new files: those that were asked for, and those that doors lead to.

    Raises:
        MisuseError: all that is in the way, with what to write; then nothing is written.
    """
    room, there = gym(programs)
    keys = list(dict.fromkeys(map(short_name, names)))
    wrong = list(_in_the_way(keys, room, there))
    if wrong:
        raise MisuseError("\n".join(wrong))
    folder = programs / "exercises"
    folder.mkdir(exist_ok=True)
    asked, along = list[Path](), list[Path]()
    for key, ready in with_doors(keys, there).items():
        path = folder / f"{key}.yml"
        head = schema_head(programs, f"exercises/{key}.yml")
        with path.open("x", encoding="utf-8") as file:
            file.write(head + _for_room(ready, room))
        (asked if key in keys else along).append(path)
    return asked, along


def gym(programs: Path) -> tuple[Room, frozenset[str]]:
    """A folder's room, and the short names of the exercises it has.

    Raises:
        MisuseError: where the room can't be read.
    """
    written = read_book(programs).written
    if written.room is None:
        text = "room.yml can't be read; run 'strength-handbook check' and mend it first"
        raise MisuseError(text)
    there = frozenset(path.stem for path in (programs / "exercises").glob("*.yml"))
    return written.room.model, there


def _in_the_way(keys: Sequence[str], room: Room, there: Set[str]) -> Iterator[str]:
    lacks: dict[str, str] = {}
    for key in keys:
        if key not in shelf():
            meant = did_you_mean_name(key, shelf())
            yield f"'{key}' is not on the shelf{meant}; --from-shelf without a name lists all"
        elif key in there:
            yield f"exercises/{key}.yml is there already; it stays as it is"
        else:
            lacks |= dict.fromkeys(missing_things(room, key, there), key)
    for name, key in lacks.items():
        thing = THINGS[name]
        yield (
            f"{key} needs {thing.says}, and room.yml names none; if the gym has that, write under "
            f"'{thing.section}': {in_units(thing.sample, room.units)}"
        )


def _for_room(ready: Ready, room: Room) -> str:
    things = {name: found(room, name) for name in ready.needs}
    return Template(in_units(ready.text, room.units)).substitute(things)


def listed(room: Room, there: Set[str]) -> tuple[list[Ready], dict[str, list[str]]]:
    """What of the shelf a gym may take, and what the others wait for.

    Args:
        room: the gym's.
        there: exercises that it has already; they are left out.

    Returns:
        Those that the room allows; short name of each other one, and what the room lacks for it.
    """
    lacking = {key: missing_things(room, key, there) for key in shelf() if key not in there}
    allowed = [shelf()[key] for key, things in lacking.items() if not things]
    return allowed, {
        key: [THINGS[thing].says for thing in things] for key, things in lacking.items() if things
    }
