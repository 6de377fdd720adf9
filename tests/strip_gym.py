"""A small handbook whose first session is a strip set on a bar."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

import demo
from once import once
from phones import serving
from tiny import ROOM, write_tiny

BAR = """\
bars:
  bar: {name: bar, mass: 20 kg, count: 2}
plates:
  - {mass: 10 kg, pairs: 2}
  - {mass: 5 kg, pairs: 2}
  - {mass: 2.5 kg, pairs: 2}
"""
EFFORT = """\
load:
  kind: effort
  by: Slower lowering, a pause at the bottom, or a deeper squat makes it heavier here.
"""


def made(dose: str) -> Callable[[Path], None]:
    def make(folder: Path) -> None:
        root = write_tiny(folder / "gym")
        demo.change(root / "programs/room.yml", ROOM, ROOM + BAR)
        demo.change(
            root / "programs/exercises/chair-squat.yml", EFFORT, "load: {kind: bar, bar: bar}\n"
        )
        demo.change(root / "programs/spring/1-start.yml", "1: 2x8", f"1: {dose}")
        demo.build_site(root, folder / "site")

    return make


def strip_gym(factory: pytest.TempPathFactory, name: str, dose: str) -> Iterator[str]:
    """Address of the handbook with that dose; built once under its name."""
    with serving(once(factory, name, made(dose)) / "site") as port:
        yield f"http://127.0.0.1:{port}/"
