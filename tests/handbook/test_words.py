"""Words that members and coaches read: short, positive where they are cues, without claims."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import demo
import prose

CUE_WORDS = 8
"""In one cue. Common practice, no source."""

PROSE_WORDS = 20
"""In one sentence of a hand-written page; plain language asks for about 20. Common practice."""

PROGRAM_WORDS = 25
"""In one sentence of a program file."""

CLAIMS = {
    # No training program may promise any of these; a clinician's words are not ours.
    "safe for": r"\bsafe for\b",
    "injury-proof": r"\binjury[- ]proof",
    "prevents": r"\bprevent(s|ed|ing|ion)?\b",
    "fixes": r"\bfixes\b",  # fixed pins are no claim
    "rehab": r"\brehab",
    "cleared": r"\bcleared\b",
    "doctor-approved": r"\b(doctor|clinician)[- ]approved",
    "cures": r"\bcur(e|es|ed|ing)\b",
    "heals": r"\bheal(s|ed|ing)?\b",
    "protects": r"\bprotects?\b",
    "guaranteed": r"\bguarantee",
}

NEGATIVE = re.compile(r"\b(don't|do not|never|not|no|avoid|without letting)\b", re.IGNORECASE)

_EXERCISE_LINK = re.compile(r"exercises/([a-z0-9-]+)(?:\.md|/)")


def claims(text: str) -> list[str]:
    """Words in a text that promise something medical."""
    return [name for name, pattern in CLAIMS.items() if re.search(pattern, text, re.IGNORECASE)]


def cues() -> Iterator[tuple[str, str]]:
    for path in prose.EXERCISE_FILES:
        for place, text in prose.yaml_texts(path):
            if place.startswith("cues."):
                yield path.stem, text


def too_long(texts: list[str], most: int) -> list[str]:
    return [f"{len(prose.words(one))}: {one}" for one in texts if len(prose.words(one)) > most]


each_page = pytest.mark.parametrize("path", prose.HANDBOOK, ids=prose.name_of)
each_file = pytest.mark.parametrize("path", prose.PROGRAM_FILES, ids=prose.name_of)


def test_the_checks_find_what_they_are_for() -> None:
    assert claims("It prevents injuries and is Safe for everybody.") == ["safe for", "prevents"]
    assert claims("A rack fixed to the floor, and one fix for each fault.") == []
    assert NEGATIVE.search("Don't drop it")
    assert not NEGATIVE.search("Meet the box without a sound")
    assert too_long(["One two three."], 2) == ["3: One two three."]
    assert prose.markdown_sentences("# A\n\n- One `x`. Two [b](c.md) [1].\n- 3 × 5\n") == [
        "A", "One code.", "Two b.", "3 × 5"
    ]  # fmt: skip


def test_there_is_something_to_read() -> None:
    assert len(list(cues())) > 4 * len(prose.EXERCISE_FILES)
    assert len(prose.HANDBOOK) > 15


def test_cues_are_short() -> None:
    assert [cue for cue in cues() if len(cue[1].split()) > CUE_WORDS] == []


def test_cues_say_what_to_do() -> None:
    assert [cue for cue in cues() if NEGATIVE.search(cue[1])] == []


@each_page
def test_pages_promise_nothing_medical(path: Path) -> None:
    # Sources are titles of others.
    assert claims(prose.markdown_text(path.read_text(encoding="utf-8"))) == []


@each_file
def test_program_files_promise_nothing_medical(path: Path) -> None:
    assert [(place, text) for place, text in prose.yaml_texts(path) if claims(text)] == []


@each_page
def test_sentences_of_pages_are_short(path: Path) -> None:
    sentences = prose.markdown_sentences(path.read_text(encoding="utf-8"))
    assert too_long(sentences, PROSE_WORDS) == []


@each_file
def test_sentences_of_program_files_are_short(path: Path) -> None:
    sentences = [one for _, text in prose.yaml_texts(path) for one in prose.sentences(text)]
    assert too_long(sentences, PROGRAM_WORDS) == []


def missing_exercises(text: str) -> set[str]:
    """Exercises that a page links to or writes a dose for, and that nobody described."""
    named = set(_EXERCISE_LINK.findall(text))
    named |= set(re.findall(r"^\s*exercise: ([a-z0-9-]+)$", text, re.MULTILINE))
    named |= set(re.findall(r"^\s*to: ([a-z0-9-]+)$", text, re.MULTILINE))
    written = set(re.findall(r"example: programs/exercises/([a-z0-9-]+)\.yml -->", text))
    return named - written - {"index"} - set(demo.EXERCISES)


def test_missing_exercises_are_found() -> None:
    text = (
        "[a](../exercises/no-such.md#set-up) and\n  exercise: nor-this\n  to: trap-bar-deadlift\n"
    )
    assert missing_exercises(text) == {"no-such", "nor-this"}


@each_page
def test_every_exercise_that_a_page_names_exists(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert missing_exercises(text.replace("exercises/goblet-squat.yml`", "")) == set()


@each_page
def test_evidence_has_a_source_on_the_page(path: Path) -> None:
    """Each number in brackets stands in the list of sources, and each source is used."""
    text = re.sub(r"```.*?```", "", path.read_text(encoding="utf-8"), flags=re.DOTALL)
    body, _, listed = text.partition("## Sources\n")
    used = {
        one for group in re.findall(r"\[(\d+(?:, \d+)*)\](?!\()", body) for one in group.split(", ")
    }
    assert used == set(re.findall(r"^(\d+)\. ", listed, re.MULTILINE))
