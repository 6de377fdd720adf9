"""A gym with everything that the shelf may need, and a program that does all of its exercises."""

import re
from pathlib import Path

import yaml
from click.testing import CliRunner

from strength_handbook.cli import main
from strength_handbook.model.words import Pattern
from strength_handbook.publish.first_gym.gym_files import READY
from strength_handbook.publish.measures import in_units
from strength_handbook.publish.shelf.ready import shelf
from strength_handbook.publish.shelf.things import THINGS

SIGN = re.compile(r"Not yet filled in \([^()\n]+\)")
A_SESSION = 8
"""Exercises in each session of the program."""
HOLDS = frozenset({
    "bridge-hold", "cable-anti-rotation-hold", "hang", "hollow-hold", "one-leg-stand", "plank",
    "plate-pinch", "push-up-hold", "split-squat-hold", "wall-sit",
})  # fmt: skip
"""Exercises that are stayed in."""
PROGRAM = """\
program: All of it
version: "1"
valid-until: 2030-12-31
time-cap: 180 min
group: {members: 1, sharing: 1}
need: [Everybody knows every exercise.]
goals:
  - {goal: Know all exercises, test: One set of each}
"""


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
        if thing.section == "plates" or key in there.get(thing.section, {}):
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
    """A week in which everything is done once, each in light sets of a kind that fits it."""
    folder = programs / "all-of-it"
    folder.mkdir()
    (folder / "program.yml").write_text(PROGRAM, encoding="utf-8")
    sessions = {
        f"part-{number // A_SESSION + 1:02}": {
            "title": f"Part {number // A_SESSION + 1}",
            "purpose": "Know them all.",
            "warm-up": ["March, and two easy jumps.", "Build up to each lift in two light sets."],
            "slots": [
                {"order": chr(ord("A") + place), "exercise": key} | _dose(key)
                for place, key in enumerate(list(shelf())[number : number + A_SESSION])
            ],
        }
        for number in range(0, len(shelf()), A_SESSION)
    }
    wave = {"wave": "All", "emphasis": "general", "promise": "You see every exercise once.",
            "weeks": 1, "sessions": sessions}  # fmt: skip
    units = yaml.safe_load((programs / "room.yml").read_text(encoding="utf-8"))["units"]
    text = in_units(yaml.safe_dump(wave, sort_keys=False), units)
    (folder / "1-all.yml").write_text(text, encoding="utf-8")


def _dose(key: str) -> dict[str, object]:
    """Two light sets, by what the exercise's own file says of it."""
    said = yaml.safe_load(shelf()[key].text)
    if key in HOLDS:
        position = said["poses"]["turn"].rstrip(".")
        return {"position": position, "weeks": {1: "ISO 2x15 s, RPE 5, rest 60 s"}}
    if said["pattern"] == Pattern.CARRY:
        share = 40 if said["load"]["kind"] == "carrier" else 20
        return {"weeks": {1: f"2 -> 20 m @ {share} % BM, rest 60 s"}}
    if "first-height" in said:
        return {"weeks": {1: "2x3, box [[40 cm|16 in]], intent fast, rest 60 s"}}
    if said["pattern"] == Pattern.JUMP:
        return {"weeks": {1: "2x3, intent fast, rest 60 s"}}
    return {"weeks": {1: "2x10, RPE 5, rest 60 s"}}
