"""Phrases that are word by word out of another language, or say another thing to whoever grew up
with English: each stood here once, with what stands in its place now."""

import re
from collections.abc import Iterator
from pathlib import Path

import demo
import prose

BETTER = {
    "long night out": "long night on a rescue (a night out is for fun)",
    "lowering makes sore": "makes you sore",
    "surgery lately": "recent surgery",
    "concussion lately": "recent concussion",
    "birth lately": "recent birth",
    "are no kilograms": "are not kilograms",
    "stood up with as fast": "stand up with it as fast",
    "Hold: holding": "Hold: staying still under load",
    "Taking my load apart": "Unloading my bar, step by step",
    "Other order?": "Change the order?",
    "Tell me by": "Signal",
    "One set less": "One set fewer",
    "counts until": "is valid until",
    "; mend it": "; fix it",
    "loaded highly": "heavily",
    "s, much.": "high",
    "Bowing with": "hinging",
    "bow begins": "hinge",
    "Knees that push back": "Legs that push backwards",
    "Finish the arms": "arms, two sets to end with",
    "Find out your": "Test your",
    "Stand on the chalk": "Stand still on the marks",
    "Nobody is needed": "No helper needed",
    "only adding plates": "build up in three or four sets",
    "belt buckle": "hips or waistband: members wear shorts",
    "shirt hem": "waistband",
    "Put out, put away": "Set out, put away",
    "forearms under the plates": "hands under the ends of the sleeve",
}
WRITTEN = (".py", ".html", ".js", ".md", ".yml")
GREW = re.compile(r"\s+")


def texts() -> Iterator[tuple[str, str]]:
    """Every file with words that somebody reads, a line break being a space."""
    own = (path for path in demo.PACKAGE.rglob("*") if path.suffix in WRITTEN)
    for path in (*prose.HANDBOOK, *prose.PROGRAM_FILES, demo.PROGRAMS / "room.yml", *own):
        yield path.relative_to(demo.ROOT).as_posix(), GREW.sub(" ", _read(path))


def _read(path: Path) -> str:
    # Texts in code go on in the next line between quotation marks.
    return re.sub(r'"\s*\n\s*f?"', "", path.read_text(encoding="utf-8"))


def found_in(text: str) -> list[str]:
    return [phrase for phrase in BETTER if phrase in text]


def test_they_are_found() -> None:
    assert found_in("One set less? Tell me by: Sound") == ["Tell me by", "One set less"]
    assert len(list(texts())) > 300


def test_none_of_them_is_back() -> None:
    back = {name: phrases for name, text in texts() if (phrases := found_in(text))}
    assert back == {}
