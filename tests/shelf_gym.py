"""A gym with everything that the shelf may need, and a program that does all of its exercises."""

import re
from pathlib import Path

import yaml
from click.testing import CliRunner

from strength_handbook.cli import main
from strength_handbook.publish.first_gym.gym_files import READY
from strength_handbook.publish.measures import in_units
from strength_handbook.publish.shelf.ready import shelf
from strength_handbook.publish.shelf.things import THINGS
from strength_handbook.reading.doing import doing

SIGN = re.compile(r"Not yet filled in \([^()\n]+\)")
A_SESSION = 8
"""Exercises in each of the program."""


def begun(root: Path, units: str) -> Path:
    """A new gym, with its open places filled in; returns its program folder."""
    answers = ["--yes", "--units", units, "--racks", "2", "--hands", "none", "--machines", "none"]
    result = CliRunner().invoke(main, ["init", str(root), *answers])
    assert result.exit_code == 0, result.output
    for path in [*root.rglob("*.yml"), *root.rglob("*.md")]:
        text = path.read_text(encoding="utf-8")
        path.write_text(SIGN.sub("Beside the door", text), encoding="utf-8")
    return root / "programs"


def with_everything(root: Path, units: str) -> Path:
    """A gym whose room has a line for every thing of the shelf; returns its program folder."""
    programs = begun(root, units)
    path = programs / "room.yml"
    text = path.read_text(encoding="utf-8")
    there = yaml.safe_load(text)
    for thing in THINGS.values():
        sample = in_units(thing.sample, units)
        key = sample.split(":")[0]
        if key in there.get(thing.section, {}):
            continue
        head = re.search(rf"^{thing.section}:\n", text, re.MULTILINE)
        if head is None:
            text += f"{thing.section}:\n  {sample}\n"
        else:
            text = f"{text[: head.end()]}  {sample}\n{text[head.end() :]}"
    path.write_text(text, encoding="utf-8")
    return programs


def with_all_exercises(root: Path, units: str) -> Path:
    """Such a gym with the whole shelf, all of it in one program."""
    programs = with_everything(root, units)
    rest = sorted(set(shelf()) - set(READY))
    command = ["new", "exercise", "--from-shelf", *rest, "--programs", str(programs)]
    result = CliRunner().invoke(main, command)
    assert result.exit_code == 0, result.output
    write_program(programs)
    return programs


def write_program(programs: Path) -> None:
    """A week in which everything is done once, each with the dose that messages offer for it."""
    folder = programs / "all-of-it"
    folder.mkdir()
    first = (programs / "first-weeks" / "program.yml").read_text(encoding="utf-8")
    head = first.partition("goals:")[0].replace("First two weeks", "All of it")
    goal = "goals:\n  - {goal: Know all exercises, test: One set of each}\n"
    (folder / "program.yml").write_text(head + goal, encoding="utf-8")
    sessions = {
        f"part-{number // A_SESSION + 1:02}": {
            "title": f"Part {number // A_SESSION + 1}",
            "purpose": "Know them all.",
            "slots": [
                {"order": chr(ord("A") + place), "exercise": key, "weeks": {1: _dose(key)}}
                for place, key in enumerate(list(shelf())[number : number + A_SESSION])
            ],
        }
        for number in range(0, len(shelf()), A_SESSION)
    }
    wave = {"wave": "All", "emphasis": "general", "promise": "You see every exercise once.",
            "weeks": 1, "sessions": sessions}  # fmt: skip
    (folder / "1-all.yml").write_text(yaml.safe_dump(wave, sort_keys=False), encoding="utf-8")


def _dose(key: str) -> str:
    """Two light sets in the form that fits the exercise."""
    example = doing(yaml.safe_load(shelf()[key].text)).example.strip("'")
    light = re.sub(r"@ [^,]*", "", re.sub(r"(RIR|RPE) \d", "RPE 5", example))
    return re.sub(r"^(ISO )?\d", r"\g<1>2", light).replace(" ,", ",")
