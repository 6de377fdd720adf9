"""All files of a new gym, from the texts beside this module and a coach's answers."""

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path
from string import Template

from strength_handbook.publish.first_gym.answers import Answers
from strength_handbook.publish.first_gym.room_lines import RACKS, room_lines, straight_bar
from strength_handbook.publish.json_schema import SCHEMAS, schema_line, schema_text
from strength_handbook.publish.measures import in_units
from strength_handbook.publish.shelf.ready import shelf

TEXTS = Path(__file__).parent / "texts"

READY = (
    "back-squat", "bent-over-row", "bridge-hold", "plate-pinch", "push-up", "romanian-deadlift",
    "split-squat-hold", "standing-press",
)  # fmt: skip
"""Exercises of the shelf that the first program uses; every gym with a bar and a rack has them."""
_THINGS = {"rack": "rack", "floor": "floor", "mat": "mat"}
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
    files = dict(_written(answers.units, _values(answers, today)))
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
        "members": str(2 * min(bars, answers.racks or RACKS)),
        "today": today.isoformat(),
        "until": (today + _LASTS).isoformat(),
        "monday": (today + timedelta(days=7 - today.weekday())).isoformat(),
    }


def _written(units: str, values: dict[str, str]) -> Iterator[tuple[str, str]]:
    ready = {f"programs/exercises/{key}.yml": shelf()[key].text for key in READY}
    own = {
        path.relative_to(TEXTS).as_posix(): path.read_text(encoding="utf-8")
        for path in TEXTS.rglob("*.*")
    }
    for address, template in sorted((own | ready).items()):
        text = in_units(template, units)
        if address.startswith("programs/"):
            text = f"{schema_line(address)}\n{Template(text).substitute(values)}"
        yield address, text
