"""All files of a new gym, from the texts beside this module and a coach's answers."""

import re
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path
from string import Template

from strength_handbook.publish.first_gym.answers import Answers
from strength_handbook.publish.first_gym.room_lines import RACKS, room_lines, straight_bar
from strength_handbook.publish.json_schema import SCHEMAS, schema_text

TEXTS = Path(__file__).parent / "texts"

_BOTH = re.compile(r"\[\[([^\[\]|]*)\|([^\[\]|]*)\]\]")
"""Two ways to say a measure, `[[75 kg|165 lb]]`: the first in kilograms, the second in pounds."""
_LASTS = timedelta(weeks=12)


def gym_files(answers: Answers, today: date) -> dict[str, str]:
    """Text of each file by its address in the folder.

    Args:
        answers: what is known of the gym.
        today: the day of the house rules; the first program is good for twelve weeks.

    Raises:
        MisuseError: where a name of a machine gives no short name.
    """
    bar, bars = straight_bar(answers)
    values = room_lines(answers) | {
        "bar": bar,
        "members": str(2 * min(bars, answers.racks or RACKS)),
        "today": today.isoformat(),
        "until": (today + _LASTS).isoformat(),
        "monday": (today + timedelta(days=7 - today.weekday())).isoformat(),
    }
    files = dict(_written(answers.units, values))
    return files | {f".schema/{kind}.json": schema_text(kind) for kind in SCHEMAS}


def _written(units: str, values: dict[str, str]) -> Iterator[tuple[str, str]]:
    for path in sorted(TEXTS.rglob("*.*")):
        address = path.relative_to(TEXTS).as_posix()
        text = _BOTH.sub(r"\2" if units == "lb" else r"\1", path.read_text(encoding="utf-8"))
        if address.startswith("programs/"):
            text = f"{schema_line(address)}\n{Template(text).substitute(values)}"
        yield address, text


def schema_line(address: str) -> str:
    """What tells an editor the kind of a program file.

    >>> schema_line("programs/winter/1-brakes.yml")
    '# yaml-language-server: $schema=../../.schema/wave.json'
    """
    *folders, name = address.split("/")
    kind = name.removesuffix(".yml")
    if len(folders) > 1:
        kind = (
            "exercise" if folders[1] == "exercises" else "program" if kind == "program" else "wave"
        )
    return f"# yaml-language-server: $schema={'../' * len(folders)}.schema/{kind}.json"
