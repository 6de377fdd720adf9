"""The smallest handbook there is, for tests that build many times."""

import re
from pathlib import Path

from strength_handbook.publish.starter import new_exercise
from strength_handbook.review.checks.words.starter import example_sentences

ROOM = """\
gym: The Shed
kit:
  floor: {name: clear floor}
emergency:
  number: "112"
  address: 1 Mill Lane
  entrance: Front door
  defibrillator: Hall
  first-aid: Hall
  phone: Hall
  roles: [Nearest person stays.]
"""

PROGRAM = """\
program: Spring
version: "1"
valid-until: 2030-12-31
need: [Members carry boxes up stairs.]
goals:
  - {goal: Stand up with a box, test: Ten squats without a pause}
"""

WAVE = """\
wave: Start
emphasis: general
promise: You learn one lift.
weeks: 1-2
sessions:
  a-squat:
    title: Squat
    purpose: Learn to squat.
    slots:
      - order: A
        exercise: chair-squat
        weeks:
          1: 2x8
          2: 3x8
"""

MKDOCS = """\
site_name: Handbook
docs_dir: handbook
theme: {name: material, font: false}
plugins:
  - search
  - strength-handbook
"""


def write_tiny(root: Path, mkdocs: str = MKDOCS) -> Path:
    """Write it into a folder; returns the folder.

    Pages: one exercise, a program of two weeks with one session each, a hand-written note.
    """
    for name, text in {
        "programs/room.yml": ROOM,
        "programs/spring/program.yml": PROGRAM,
        "programs/spring/1-start.yml": WAVE,
        "mkdocs.yml": mkdocs,
        "handbook/note.md": "# A note\n\n<!-- handbook:emergency -->\n",
    }.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    exercise = new_exercise("Chair squat", root / "programs")
    exercise.write_text(_own_words(exercise.read_text(encoding="utf-8")), encoding="utf-8")
    return root


def _own_words(text: str) -> str:
    """The example with other ends to its sentences, which are errors as they are."""
    for sentence in sorted(example_sentences(), key=len, reverse=True):
        *begin, last = sentence.split()
        ending = re.escape(last.rstrip("."))
        whole = r"\s+".join([*map(re.escape, begin), ending])
        text = re.sub(whole, lambda found: f"{found[0]} here", text)
    return text
