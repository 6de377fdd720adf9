"""A large program folder made from the demo: varied copies, so that no two files are alike."""

import json
import re
import shutil
from pathlib import Path
from typing import Any

import yaml

from demo import PROGRAMS, ROOT
from strength_handbook.reading.yaml_source import read_source

WORDS = ("wide", "narrow", "paused", "slow", "high", "low", "heavy", "light", "long", "short",
         "deep", "steady")  # fmt: skip
WAVES = ("brakes", "holds", "goes")
WEEKS_IN_WAVE = 4
SLOTS = (7, 6)
"""Slots taken from the demo's two sessions."""

Data = dict[str, Any]


def generate(root: Path, exercises: int, programs: int) -> Path:
    """Write a handbook of so many exercises and 12-week programs; gives its folder back.

    Each program has two sessions a week, of seven and six slots at most.
    """
    shutil.copytree(ROOT / "handbook", root / "handbook")
    shutil.copy(ROOT / "mkdocs.yml", root)
    folder = root / "programs"
    for name in ("room.yml", "lifters.yml", "house-rules.yml"):
        _write(folder / name, _read(PROGRAMS / name))
    originals = sorted((PROGRAMS / "exercises").glob("*.yml"))
    for number in range(exercises):
        original, variant = originals[number % len(originals)], number // len(originals)
        data = _exercise(_read(original), variant)
        _write(folder / "exercises" / f"{variant_id(original.stem, variant)}.yml", data)
    source = min(PROGRAMS.glob("*/program.yml")).parent
    whole = exercises // len(originals)
    for number in range(programs):
        _program(source, folder / f"season-{number + 1}", number, whole)
    return root


def variant_id(exercise: str, variant: int) -> str:
    """Id of a copy of an exercise; the first copy keeps the demo's."""
    return exercise if variant == 0 else f"{exercise}-{WORDS[variant - 1]}"


def _exercise(data: Data, variant: int) -> Data:
    if variant == 0:
        return data
    word = WORDS[variant - 1]
    load = dict(data["load"])
    if "multiples" in load:
        load["multiples"] = [round(float(one) + 0.05 * variant, 2) for one in load["multiples"]]
    for key in ("body-mass-shares", "shares"):
        if key in load:
            load[key] = [_shifted(one, variant / 2) for one in load[key]]
    if "start" in load:
        shares = {name: _shifted(one, variant / 2) for name, one in load["start"]["shares"].items()}
        load["start"] = load["start"] | {"shares": shares}
    return data | {
        "name": f"{data['name']}, {word}",
        "why": f"{data['why']} This is the {word} way of doing it.",
        "load": load,
    }


def _program(source: Path, target: Path, number: int, variants: int) -> None:
    program = _read(source / "program.yml")
    title = f"{program['program']} {number + 1}"
    # One pair at a time: the floor is not what is measured, and nothing is accepted.
    alone = {"group": {"members": 2, "sharing": 2}, "accepted": []}
    _write(target / "program.yml", program | {"program": title} | alone)
    wave = _read(min(source.glob("1-*.yml")))
    for index, name in enumerate(WAVES):
        shift = index * WEEKS_IN_WAVE
        last = shift + WEEKS_IN_WAVE
        sessions = {
            key: session
            | {
                "rotate": [],
                "slots": [
                    _slot(slot, shift, -(index + number / 2), (place + index + number) % variants)
                    for place, slot in enumerate(session["slots"][:most])
                ],
                "variants": [
                    _among(variant, {slot["order"] for slot in session["slots"][:most]})
                    for variant in session.get("variants", ())
                ],
            }
            for (key, session), most in zip(wave["sessions"].items(), SLOTS, strict=False)
        }
        data = wave | {
            "wave": name.capitalize(),
            "weeks": f"{shift + 1}-{last}",
            "deload": last,
            "sessions": sessions,
        }
        _write(target / f"{index + 1}-{name}.yml", data)


def _among(variant: Data, orders: set[str]) -> Data:
    """A variant that leaves out only slots that are there."""
    return variant | {"leave-out": [o for o in variant.get("leave-out", ()) if o in orders]}


def _slot(slot: Data, shift: int, points: float, variant: int) -> Data:
    """A slot for later weeks, with another exercise of its kind and other percentages."""
    weeks = {
        str(int(week) + shift): _later(_lighter(dose, points), shift)
        for week, dose in slot["weeks"].items()
    }
    own = {"load": _lighter(slot["load"], points)} if "load" in slot else {}
    return slot | own | {"exercise": variant_id(slot["exercise"], variant), "weeks": weeks}


def _later(dose: Any, shift: int) -> Any:
    """A deload takes the dose of a week that is later by as much."""
    if not isinstance(dose, str):
        return dose
    return re.sub(r"deload of (\d+)", lambda m: f"deload of {int(m[1]) + shift}", dose)


def _lighter(dose: Any, points: float) -> Any:
    if isinstance(dose, dict):
        return dose | ({"load": _lighter(dose["load"], points)} if "load" in dose else {})
    if isinstance(dose, str):
        return re.sub(r"\d+(?:\.\d+)? %", lambda found: _shifted(found[0], points), dose)
    return dose


def _shifted(percent: str, points: float) -> str:
    value = float(percent.removesuffix("%"))
    return f"{value + (points if value > 20 else points / 10):g} %"


def _read(path: Path) -> Data:
    source, problems = read_source(path.read_bytes(), path.name)
    if source is None or problems or not isinstance(source.data, dict):
        raise ValueError(f"{path}: {problems}")
    return dict(source.data)


def _write(path: Path, data: Data) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    # Through JSON, so that nothing is shared and written as an alias.
    own = json.loads(json.dumps(data))
    text = yaml.safe_dump(own, sort_keys=False, allow_unicode=True, width=100)
    path.write_text(text, encoding="utf-8")
