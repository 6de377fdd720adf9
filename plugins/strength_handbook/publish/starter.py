"""A new exercise file, complete and with every field explained, for a coach to write over."""

import json
import re
import unicodedata
from pathlib import Path
from string import Template

from strength_handbook.model.room import Room
from strength_handbook.model.words import Hazard, Muscle, Pattern
from strength_handbook.publish.command_errors import MisuseError
from strength_handbook.publish.starter_words import dose_keys, figure_keys, loading_keys, word_list
from strength_handbook.reading.book import read_book

TEMPLATE = Path(__file__).parent / "starter_exercise.yml"

_TAKEN_BY_PAGES = ("index",)
_LONGEST = 60
_USUAL_STATIONS = ("floor", "mat", "mats")


class StarterError(MisuseError):
    """A file that can't be begun; the message says why and what to do."""


def new_exercise(name: str, programs: Path) -> Path:
    """Begin an exercise's file.

    Args:
        name: what members call it.
        programs: the program folder; its room gives a station that exists.

    Returns:
        The new file.

    Raises:
        StarterError: where the name gives no file name, or the file is there already.
    """
    title = " ".join(name.split())
    if not title.isprintable():
        raise StarterError("the name holds a sign that is no letter; type it again")
    key = short_name(title)
    path = programs / "exercises" / f"{key}.yml"
    path.parent.mkdir(parents=True, exist_ok=True)
    text = Template(TEMPLATE.read_text(encoding="utf-8")).substitute(
        title=title,
        id=key,
        # A JSON text is a YAML text, whatever signs are in it.
        name=json.dumps(title, ensure_ascii=False),
        station=_station(programs),
        patterns=word_list(Pattern),
        hazards=word_list(Hazard),
        muscles=word_list(Muscle),
        load_kinds=loading_keys(),
        dose_keys=dose_keys(),
        figure_keys=figure_keys(),
    )
    try:
        with path.open("x", encoding="utf-8") as file:
            file.write(text)
    except FileExistsError:
        raise StarterError(f"'{path}' is there already; choose another name") from None
    return path


def short_name(name: str) -> str:
    """The file name of an exercise without its ending.

    >>> short_name("Rear-foot-elevated split squat"), short_name("Überzug 2 kg")
    ('rear-foot-elevated-split-squat', 'uberzug-2-kg')

    Raises:
        StarterError: where nothing is left of the name, or too much.
    """
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    key = "-".join(re.findall(r"[a-z0-9]+", plain))
    if not key:
        raise StarterError(f"'{name}' has no letter from a to z; give the exercise a name in words")
    if len(key) > _LONGEST:
        raise StarterError(f"'{name}' is too long for an address; at most {_LONGEST} letters")
    if key in _TAKEN_BY_PAGES:
        raise StarterError(f"'{key}' is the address of the list of exercises; take another name")
    return key


def _station(programs: Path) -> str:
    """Something in the room that an exercise without a load can occupy."""
    room = read_book(programs).written.room
    things = _things(room.model) if room else []
    usual = [key for key in _USUAL_STATIONS if key in things]
    return (usual or things or ["floor"])[0]


def _things(room: Room) -> list[str]:
    """Short names of the room, kit first."""
    return [*room.kit, *(key for key in room.names() if key not in room.kit)]
