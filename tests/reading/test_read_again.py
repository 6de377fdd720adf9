"""A folder read again after a save: what did not change is not read anew, what did is."""

from pathlib import Path

import pytest

import base_folder
from demo import change
from strength_handbook.reading import book
from strength_handbook.reading.yaml_source import read_source


@pytest.fixture
def parsed(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The files whose text is taken apart from now on."""
    names: list[str] = []

    def spy(raw: bytes, file: str) -> object:
        names.append(file)
        return read_source(raw, file)

    monkeypatch.setattr(book, "read_source", spy)
    book.said_in.cache_clear()
    return names


def test_only_the_changed_file_is_taken_apart_again(tmp_path: Path, parsed: list[str]) -> None:
    folder = base_folder.copy_base(tmp_path)
    first = base_folder.read(folder)
    every = [path.relative_to(tmp_path).as_posix() for path in folder.rglob("*.yml")]
    assert sorted(parsed) == sorted(every)
    parsed.clear()
    change(folder / "exercises/box-squat.yml", "role: main", "role: assistance")
    second = base_folder.read(folder)
    assert parsed == ["gym/exercises/box-squat.yml"]
    assert first.book is not None
    assert second.book is not None
    assert first.book.exercises["box-squat"].role == "main"
    assert second.book.exercises["box-squat"].role == "assistance"


def test_the_room_s_units_reach_the_messages_about_unchanged_files(tmp_path: Path) -> None:
    folder = base_folder.copy_base(tmp_path)
    change(folder / "harbour/1-climb.yml", "1: 3x5 @ 70 %", "1: 3x5 @ 70")
    for units, other in (("kg", "lb"), ("lb", "kg")):
        texts = [one.text for one in base_folder.read(folder).problems if one.slug == "dose"]
        assert [f"write '@ 70 {units}'" in text for text in texts] == [True]
        change(folder / "room.yml", f"units: {units}", f"units: {other}")


def test_problems_are_told_again_and_belong_to_one_reading(tmp_path: Path) -> None:
    folder = base_folder.copy_base(tmp_path)
    (folder / "room.yml").write_text("gym: A\ngym: B\n", encoding="utf-8")
    first = base_folder.read(folder).problems
    told = [str(one) for one in first]
    first.clear()
    assert [str(one) for one in base_folder.read(folder).problems] == told


def test_a_very_large_file_is_not_kept(tmp_path: Path, parsed: list[str]) -> None:
    folder = base_folder.copy_base(tmp_path)
    lifters = folder / "lifters.yml"
    text = lifters.read_text(encoding="utf-8")
    lifters.write_text(text + "#" * book.MOST_KEPT + "\n", encoding="utf-8")
    for _ in range(2):
        assert base_folder.read(folder).book is not None
    assert parsed.count("gym/lifters.yml") == 2
