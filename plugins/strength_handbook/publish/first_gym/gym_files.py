"""All files of a new gym, from the texts beside this module and a coach's answers."""

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path
from string import Template

from strength_handbook.publish.first_gym.answers import Answers
from strength_handbook.publish.first_gym.page_words import page_words
from strength_handbook.publish.first_gym.room_lines import PLACES, RACKS, room_lines, straight_bar
from strength_handbook.publish.first_gym.without_rack import first_exercise
from strength_handbook.publish.json_schema import SCHEMAS, schema_line, schema_text
from strength_handbook.publish.measures import in_units
from strength_handbook.publish.shelf.ready import Ready, with_doors

TEXTS = Path(__file__).parent / "texts"
WITHOUT_RACK = Path(__file__).parent / "texts_without_rack"
"""Files that take the place of those of the same address where no bar lies in a rack."""

READY = (
    "back-squat", "bent-over-row", "bridge-hold", "plate-pinch", "push-up", "romanian-deadlift",
    "split-squat-hold", "standing-press",
)  # fmt: skip
"""Exercises of the shelf that the first program uses; every gym with a bar and a rack has them."""
READY_WITHOUT_RACK = (
    "bridge", "bridge-hold", "face-down-arm-lift", "plank", "sit-to-stand",
    "split-squat-hold", "wall-push-up",
)  # fmt: skip
"""The same where no bar lies in a rack; beside these, one with what weights there are."""
_THINGS = {key: key for key in ("rack", "floor", "mat", "chair", "dumbbell", "kettlebell")}
"""What the new room calls them."""
ROOM = "room.yml"
"""Its file's address in the program folder."""
_LASTS = timedelta(weeks=12)


def gym_files(answers: Answers, today: date) -> dict[str, str]:
    """Text of each file by its address in the folder.

    Args:
        answers: what is known of the gym.
        today: the day of the house rules; the first program is good for twelve weeks.

    Raises:
        MisuseError: where a name of a machine gives no short name.
    """
    files = dict(_written(answers, _values(answers, today)))
    return files | {f".schema/{kind}.json": schema_text(kind) for kind in SCHEMAS}


def room_text(answers: Answers, today: date) -> str:
    """The file of a room alone, without the line for an editor.

    Raises:
        MisuseError: where a name of a machine gives no short name.
    """
    text = (TEXTS / "programs" / ROOM).read_text(encoding="utf-8")
    return Template(in_units(text, answers.units)).substitute(_values(answers, today))


def _values(answers: Answers, today: date) -> dict[str, str]:
    """What stands for each sign of the texts."""
    bar, bars = straight_bar(answers)
    return {
        **_THINGS,
        **room_lines(answers),
        "bar": bar,
        "members": str(_members(answers, bars)),
        **first_exercise(answers).values(),
        **page_words(answers),
        "today": today.isoformat(),
        "until": (today + _LASTS).isoformat(),
        "monday": (today + timedelta(days=7 - today.weekday())).isoformat(),
    }


def _members(answers: Answers, bars: int) -> int:
    """Two at each rack that has a bar; elsewhere one at each place."""
    return 2 * min(bars, answers.racks or RACKS) if answers.lifts_from_racks else PLACES


def ready_exercises(answers: Answers) -> dict[str, Ready]:
    """Exercises of the first program, with those that their doors lead to."""
    if answers.lifts_from_racks:
        return with_doors(READY)
    return with_doors([*READY_WITHOUT_RACK, first_exercise(answers).key])


def _written(answers: Answers, values: dict[str, str]) -> Iterator[tuple[str, str]]:
    ready = {
        f"programs/exercises/{key}.yml": one.text for key, one in ready_exercises(answers).items()
    }
    own = _texts(TEXTS) if answers.lifts_from_racks else _texts(TEXTS) | _texts(WITHOUT_RACK)
    for address, template in sorted((own | ready).items()):
        text = in_units(template, answers.units)
        if address.startswith("programs/"):
            text = f"{schema_line(address)}\n{Template(text).substitute(values)}"
        elif address.endswith(".md"):
            text = Template(text).substitute(values)
        yield address, text


def _texts(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8")
        for path in folder.rglob("*.*")
    }
