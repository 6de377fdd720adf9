"""The page on how a dose is written: every method is on it, and every line means what it says."""

import re
from pathlib import Path
from typing import Any

from pydantic import TypeAdapter

import coach_pages
import demo
from strength_handbook.model.progress import ProgressText
from strength_handbook.reading.notation import read_dose
from strength_handbook.reading.yaml_source import read_source

PAGE = (coach_pages.FOLDER / "dose-notation.md").read_text(encoding="utf-8")
METHODS: Path = demo.ROOT / "tests" / "methods" / "doses.yml"

EXAMPLES = re.findall(r"^\*\*(.+)\*\*\n\n`(.+)`\n\n(?:.+:\n\n)?> (.+)$", PAGE, re.MULTILINE)
"""Name, line and words of each example on the page."""


def methods() -> dict[str, Any]:
    """Every method with its line and the words that pages print; tested where it stands."""
    source, problems = read_source(METHODS.read_bytes(), METHODS.name)
    assert source is not None, problems
    assert isinstance(source.data, dict)
    return source.data


def test_every_method_is_on_the_page_with_the_words_that_are_printed() -> None:
    doses: Any = methods()["doses"]
    words = {one["line"]: (one["v"], one["words"].strip()) for one in doses}
    shown = {line: said for _, line, said in EXAMPLES}
    assert [line for line in shown if line not in words] == []
    assert {line: words[line][1] for line in shown} == shown
    assert {words[line][0] for line in shown} == {one["v"] for one in doses}


def test_every_example_is_a_dose() -> None:
    for _, line, _ in EXAMPLES:
        assert list(read_dose(line))


def test_every_rule_for_going_on_is_on_the_page() -> None:
    rules = re.findall(r"`progress: (.+?)`", PAGE)
    there: Any = methods()["progress"]
    assert sorted(rules) == sorted(one["line"] for one in there)
    for rule in rules:
        TypeAdapter(ProgressText).validate_python(rule)
