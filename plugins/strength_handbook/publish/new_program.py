"""A new program: its folder with a file for each wave, every session with a slot to begin from."""

import json
import re
import tempfile
from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from pathlib import Path

from strength_handbook.model.exercise import Exercise
from strength_handbook.model.weeks import WEEKDAYS
from strength_handbook.model.words import Hazard, Pattern
from strength_handbook.publish.command_errors import MisuseError
from strength_handbook.publish.json_schema import schema_head
from strength_handbook.publish.starter import short_name
from strength_handbook.reading.book import read_book
from strength_handbook.reading.files import RESERVED
from strength_handbook.reading.unfilled import sign
from strength_handbook.reading.written import Written

_ORDINALS = ("First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth")
_LONGEST_WAVE = 4
"""Weeks of a wave where nobody says; more without a week of less is reported. Common practice."""
_MOST_WEEKS = 60
_GRACE = timedelta(weeks=4)
_MASSES = {
    "kg": "from: 40 kg, to: 200 kg, by: 5 kg",
    "lb": "from: 95 lb, to: 455 lb, by: 10 lb",
}
_NOT_BY_REPETITIONS = (Pattern.CARRY, Pattern.TRUNK, Pattern.JUMP)


def new_program(
    name: str, weeks: int | None, waves: str | None, days: str, programs: Path, today: date
) -> Path:
    """Begin a program's folder.

    Args:
        name: what members call it.
        weeks: how many; what `waves` adds up to if left out, else eight.
        waves: weeks of each wave, such as `4+2`; fours and a rest if left out.
        days: weekdays, such as `mon,thu`.
        programs: the program folder; its exercises give the first slots.
        today: the program is valid from now for its weeks and four more.

    Returns:
        The new folder.

    Raises:
        MisuseError: everything that can't be done so, with what to write instead.
    """
    key, wrong = _key(name)
    lengths, slips = _lengths(weeks, waves)
    weekdays, others = _weekdays(days)
    written = read_book(programs).written
    exercises = _exercises(written)
    wrong += [*slips, *others]
    if not exercises:
        wrong.append("no exercise here is done by repetitions yet; run: strength-handbook new "
                     "exercise NAME")  # fmt: skip
    if key and (programs / key).exists():
        wrong.append(f"'{programs / key}' is there already; choose another name")
    if wrong:
        raise MisuseError("\n".join(wrong))
    masses = _MASSES[written.room.model.units if written.room else "kg"]
    until = today + timedelta(weeks=sum(lengths)) + _GRACE
    files = {
        "program.yml": _program(" ".join(name.split()), exercises[0][0], masses, until),
        **dict(_waves(lengths, weekdays, exercises)),
    }
    with tempfile.TemporaryDirectory(prefix=f".{key}-", dir=programs) as beside:
        new = Path(beside) / key
        new.mkdir()
        for file, text in files.items():
            head = schema_head(programs, f"{key}/{file}")
            (new / file).write_text(f"{head}{text}", encoding="utf-8")
        new.rename(programs / key)
    return programs / key


def _key(name: str) -> tuple[str, list[str]]:
    try:
        key = short_name(name)
    except MisuseError as error:
        return "", [str(error).replace("the exercise", "the program")]
    taken = f"the site needs the name '{key}' itself; give the program another"
    return key, [taken] if key in RESERVED else []


def _lengths(weeks: int | None, waves: str | None) -> tuple[list[int], list[str]]:
    """Weeks of each wave.

    >>> _lengths(6, None), _lengths(None, "4+2")
    (([4, 2], []), ([4, 2], []))
    """
    if waves is None:
        whole = 8 if weeks is None else weeks
        if not 0 < whole <= _LONGEST_WAVE * len(_ORDINALS):
            most = _LONGEST_WAVE * len(_ORDINALS)
            return [], [f"--weeks: write a number from 1 to {most}, or say --waves, such as 4+3"]
        full, rest = divmod(whole, _LONGEST_WAVE)
        return [_LONGEST_WAVE] * full + [rest] * (rest > 0), []
    parts = re.split(r"\s*[+,]\s*", waves.strip())
    if not all(part.isascii() and part.isdecimal() and int(part[:4]) > 0 for part in parts):
        return [], [f"--waves: can't read '{waves}'; write weeks of each, such as 4+2"]
    lengths = [int(part[:4]) for part in parts]
    if len(lengths) > len(_ORDINALS) or sum(lengths) > _MOST_WEEKS:
        text = f"--waves: at most {len(_ORDINALS)} waves and {_MOST_WEEKS} weeks"
        return [], [text]
    if weeks is not None and weeks != sum(lengths):
        text = f"--waves: {waves} are {sum(lengths)} weeks and not {weeks}; leave --weeks out"
        return [], [text]
    return lengths, []


def _weekdays(days: str) -> tuple[list[str], list[str]]:
    """Days in the order of the week.

    >>> _weekdays("fri, Mon")
    (['monday', 'friday'], [])
    """
    found, wrong = set(), []
    for word in filter(None, re.split(r"[\s,;+]+", days.lower())):
        fitting = [day for day in WEEKDAYS if len(word) > 1 and day.startswith(word)]
        if len(fitting) == 1:
            found.add(fitting[0])
        else:
            wrong.append(f"--days: '{word}' is no weekday; write them like mon,wed,fri")
    if not found and not wrong:
        wrong.append("--days: write at least one, such as mon")
    return [day for day in WEEKDAYS if day in found], wrong


def _exercises(written: Written) -> list[tuple[str, Exercise]]:
    """Exercises that are done by repetitions, main lifts first."""
    found = [
        (key, file.model)
        for key, file in sorted(written.exercises.items())
        if file.model.pattern not in _NOT_BY_REPETITIONS
        and not {Hazard.LONG_HOLD, Hazard.PUSH_ON_PINS} & set(file.model.hazards)
    ]
    return sorted(found, key=lambda one: one[1].role != "main")


def _waves(
    lengths: Sequence[int], days: Sequence[str], exercises: Sequence[tuple[str, Exercise]]
) -> Iterator[tuple[str, str]]:
    """Name and text of each wave's file."""
    first = 1
    for number, (word, length) in enumerate(zip(_ORDINALS, lengths, strict=False), start=1):
        last = first + length - 1
        yield f"{number}-{word.lower()}.yml", _wave(word, first, last, days, exercises)
        first = last + 1


def _program(title: str, exercise: str, masses: str, until: date) -> str:
    return f"""\
# What all waves have in common. Lines that begin with # are examples; an editor that knows YAML
# explains every key, and 'strength-handbook check' says what does not fit.
program: {json.dumps(title, ensure_ascii=False)}
version: "1"
valid-until: {until.isoformat()}
# start: 2027-01-04 # the Monday of week 1
time-cap: 75 min
warm-up: 10 min
close: 5 min
# group: {{members: 4, sharing: 2}} # how many come at once, and how many share a place
need:
  - {sign("what members do outside the gym, and what that asks for")}
goals:
  - goal: {sign("what members will be able to do")}
    test: {sign("how that is measured")}
# Tested values that percentages refer to:
# bases:
#   best-single: {{name: Best single, exercise: {exercise}, {masses}}}
"""


def _wave(
    word: str, first: int, last: int, days: Sequence[str], exercises: Sequence[tuple[str, Exercise]]
) -> str:
    weeks = f"{first}-{last}" if last > first else str(first)
    head = f"""\
# A wave: its sessions, and in each week the dose of every exercise. A slot is one exercise; copy
# one for the next letter. B1 and B2 are done in turn.
wave: {word} wave
emphasis: general
promise: {sign("what members will feel, in one sentence")}
weeks: {weeks}
# deload: {last} # a week of less
sessions:
"""
    return head + "".join(
        _session(number, day, exercises[number % len(exercises)][0], range(first, last + 1))
        for number, day in enumerate(days)
    )


def _session(number: int, day: str, exercise: str, weeks: range) -> str:
    doses = "".join(f"          {week}: 2x8, RIR 3, rest 2:00\n" for week in weeks)
    return f"""\
  {chr(ord("a") + number)}-{day}:
    title: {day.capitalize()}
    day: {day}
    purpose: {sign("what this session is for, in one line")}
    # warm-up: [Walk for 3 minutes., "Circle hips and shoulders, 8 each way."]
    # cut-first: What to leave out when late.
    slots:
      - order: A
        exercise: {exercise}
        weeks:
{doses}"""
