"""The page about measuring: every key of a room stands in its section, and its lines are read."""

import re
from collections.abc import Iterator
from typing import Any, get_args

import pytest
import yaml
from pydantic import BaseModel

import demo
import prose
from strength_handbook.model.room import Room
from strength_handbook.publish.measures import in_units

SOURCE = prose.NEW_GYM / "handbook" / "for-coaches"
"""Where the pages are written; the demo's own are these in kilograms."""
PAGE = (SOURCE / "measure-the-room.md").read_text(encoding="utf-8")
SHARED = "Lines that many things have"
"""The section for keys that most things have."""


def sections(page: str) -> dict[str, str]:
    """Text of each section by its heading."""
    return {
        part.partition("\n")[0]: part for part in re.split(r"^## ", page, flags=re.MULTILINE)[1:]
    }


def yaml_of(text: str) -> str:
    return "".join(re.findall(r"^```yaml\n(.*?)^```", text, re.DOTALL | re.MULTILINE))


def explained(text: str) -> set[str]:
    """Keys before the colon of an item, such as ``- `from`, `to`: a row``."""
    heads = re.findall(r"^- ((?:`[\w-]+`(?:, )?)+):", text, re.MULTILINE)
    return {key for head in heads for key in re.findall(r"`([\w-]+)`", head)}


def keys_below(annotation: Any) -> Iterator[str]:
    """Every key of every model in a field."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        for name, field in annotation.model_fields.items():
            yield field.alias or name
            yield from keys_below(field.annotation)
    for inner in get_args(annotation):
        yield from keys_below(inner)


KEYS = {
    field.alias or name: set(keys_below(field.annotation))
    for name, field in Room.model_fields.items()
}
"""Keys below each key at the left of a room's file; none for a plain line."""


def not_explained(page: str) -> set[tuple[str, str]]:
    """Key at the left and key below it that the section with its example doesn't explain."""
    parts = sections(page)
    home = {key: text for text in parts.values() for key in yaml.safe_load(yaml_of(text)) or {}}
    shared, missing = explained(parts[SHARED]), set[tuple[str, str]]()
    for key, below in KEYS.items():
        there = explained(home.get(key, ""))
        missing |= {(key, one) for one in below - there - shared}
        missing |= set() if key in home and (below or key in there) else {(key, key)}
    return missing


def test_every_key_of_a_room_is_explained_in_its_section() -> None:
    assert len(KEYS) > 15
    assert {"masses", "by"} <= KEYS["hand-weights"]
    assert {"pins", "from", "ratio"} <= KEYS["stacks"]
    assert not_explained(in_units(PAGE, "kg")) == set()


def test_a_key_that_is_left_out_is_found() -> None:
    page = in_units(PAGE, "kg").replace("- `hook-spacing`:", "- the hooks:")
    page = page.replace("lanes:\n", "ways:\n")
    assert {("racks", "hook-spacing"), ("lanes", "run-out")} <= not_explained(page)


def test_only_keys_of_a_room_are_explained() -> None:
    of_a_room = set(KEYS) | {one for below in KEYS.values() for one in below}
    assert explained(PAGE) - of_a_room == set()


@pytest.mark.parametrize("units", ["kg", "lb"])
def test_the_examples_together_are_a_room_with_every_key(units: str) -> None:
    written = yaml.safe_load(yaml_of(in_units(PAGE, units)))
    room = Room.model_validate(written)
    assert room.units == units
    assert room.printed_on().key == ("letter" if units == "lb" else "A4")
    assert set(written) == set(KEYS)


@pytest.mark.parametrize("path", sorted(SOURCE.iterdir()), ids=lambda path: path.name)
def test_the_demo_has_the_same_page_in_kilograms(path: Any) -> None:
    own = demo.ROOT / "handbook" / "for-coaches" / path.name
    assert own.read_text("utf-8") == in_units(path.read_text("utf-8"), "kg")


def test_each_drawing_is_on_the_page_in_words_and_has_a_paper_of_its_own() -> None:
    drawn = dict(re.findall(r"!\[([^\]]+)\]\(([\w-]+\.svg)\)", PAGE))
    assert sorted(drawn.values()) == sorted(path.name for path in SOURCE.glob("*.svg"))
    assert all(len(words.split()) > 10 for words in drawn)
    for name in drawn.values():
        text = (SOURCE / name).read_text(encoding="utf-8")
        assert re.search(r'<rect class="p" width="320" height="\d+"', text)
        assert "prefers-color-scheme:dark" in text
        assert "http" not in text.replace("http://www.w3.org/2000/svg", "")
