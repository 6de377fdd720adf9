"""The exercises of the shelf, and which of them come along with others."""

import re
from collections.abc import Sequence, Set
from dataclasses import dataclass
from functools import cache
from pathlib import Path

TEXTS = Path(__file__).parent / "texts"

_THING = re.compile(r"\$\{?([a-z_]+)")
_WITH_PLATES = re.compile(r"^  kind: (?:bar|plate)$", re.MULTILINE)
_LEADS_TO = re.compile(r"^ +to: ([a-z0-9-]+)$", re.MULTILINE)
_NAMED = re.compile(r"^(name|also|pattern): (.+)$", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Ready:
    """An exercise of the shelf.

    Attributes:
        key: its short name, that of its file.
        text: the file, with signs for things and measures.
        name, also, pattern: what it says of itself.
        needs: keys of `THINGS` that it holds.
        leads_to: short names of the exercises its doors lead to.
    """

    key: str
    text: str
    name: str
    also: str
    pattern: str
    needs: frozenset[str]
    leads_to: tuple[str, ...]


@cache
def shelf() -> dict[str, Ready]:
    """All of them by short name, in the order of the alphabet."""
    return {path.stem: _ready(path) for path in sorted(TEXTS.glob("*.yml"))}


def _ready(path: Path) -> Ready:
    text = path.read_text(encoding="utf-8")
    said = dict(_NAMED.findall(text))
    return Ready(
        path.stem,
        text,
        said["name"],
        said.get("also", ""),
        said["pattern"],
        frozenset([*_THING.findall(text), *(["plates"] if _WITH_PLATES.search(text) else [])]),
        tuple(dict.fromkeys(_LEADS_TO.findall(text))),
    )


def with_doors(keys: Sequence[str], there: Set[str] = frozenset()) -> dict[str, Ready]:
    """Exercises with all those that doors lead to from them, and from those.

    Args:
        keys: short names, each on the shelf.
        there: exercises that a gym has already; they stay as they are.
    """
    every, todo, wanted = shelf(), list(keys), dict[str, Ready]()
    while todo:
        key = todo.pop(0)
        if key not in wanted and key not in there:
            wanted[key] = every[key]
            todo += every[key].leads_to
    return wanted
