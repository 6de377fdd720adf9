"""A copy takes its place complete or not at all, and nothing that somebody else wrote is lost."""

import zipfile
from pathlib import Path

import pytest

from strength_handbook.publish.export import ForeignFolderError
from strength_handbook.publish.file_copy.archive import archive, write_archive
from strength_handbook.publish.file_copy.in_place import LIST, put_in_place, with_list

OLD = with_list({"index.html": b"old", "gone/index.html": b"gone"})
NEW = with_list({"index.html": b"new", "room/index.html": b"room"})


def state(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


@pytest.fixture
def out(tmp_path: Path) -> Path:
    """An earlier copy."""
    put_in_place(OLD, tmp_path / "copy")
    return tmp_path / "copy"


def test_an_earlier_copy_is_replaced_whole(out: Path) -> None:
    put_in_place(NEW, out)
    assert state(out) == NEW
    assert [path.name for path in out.parent.iterdir()] == ["copy"]


def test_folders_above_are_made_and_an_empty_one_is_used(tmp_path: Path) -> None:
    put_in_place(NEW, tmp_path / "a/b")
    (tmp_path / "empty").mkdir()
    put_in_place(NEW, tmp_path / "empty")
    assert state(tmp_path / "a/b") == state(tmp_path / "empty") == NEW


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("mine.txt", "also holds 'mine.txt', which no copy wrote"),
        ("room/notes/mine.txt", "also holds 'room/notes/mine.txt'"),
        ("index.html", "was changed since it was copied"),
        (LIST, "also holds 'gone/index.html'"),
    ],
)
def test_what_somebody_wrote_there_is_kept(out: Path, name: str, says: str) -> None:
    (out / name).parent.mkdir(parents=True, exist_ok=True)
    (out / name).write_text("mine")
    before = state(out.parent)
    with pytest.raises(ForeignFolderError, match=says):
        put_in_place(NEW, out)
    assert state(out.parent) == before


def test_a_link_to_elsewhere_is_no_part_of_a_copy(out: Path, tmp_path: Path) -> None:
    (tmp_path / "precious").write_bytes(b"old")
    (out / "index.html").unlink()
    (out / "index.html").symlink_to(tmp_path / "precious")
    with pytest.raises(ForeignFolderError, match="was changed"):
        put_in_place(NEW, out)
    assert (tmp_path / "precious").read_bytes() == b"old"


def test_another_folder_or_a_file_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "folder").mkdir()
    (tmp_path / "folder/index.html").write_text("a site")
    (tmp_path / "file").write_text("a file")
    before = state(tmp_path)
    with pytest.raises(ForeignFolderError, match="holds files that no copy wrote"):
        put_in_place(NEW, tmp_path / "folder")
    with pytest.raises(ForeignFolderError, match="is a file"):
        put_in_place(NEW, tmp_path / "file")
    assert state(tmp_path) == before


def test_what_file_managers_leave_does_not_count(out: Path) -> None:
    (out / ".DS_Store").write_text("x")
    put_in_place(NEW, out)
    assert state(out) == NEW


@pytest.mark.parametrize("failing", [1, 2])
def test_a_failure_half_way_leaves_the_earlier_copy(
    out: Path, monkeypatch: pytest.MonkeyPatch, failing: int
) -> None:
    real, number = Path.rename, 0

    def rename(self: Path, target: Path) -> Path:
        nonlocal number
        number += 1
        if number == failing:
            raise OSError(28, "no room", str(target))
        return real(self, target)

    monkeypatch.setattr(Path, "rename", rename)
    with pytest.raises(OSError, match="no room"):
        put_in_place(NEW, out)
    assert state(out) == OLD
    assert [path.name for path in out.parent.iterdir()] == ["copy"]


def test_an_earlier_copy_without_a_way_back_is_not_deleted(
    out: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    real, number = Path.rename, 0

    def rename(self: Path, target: Path) -> Path:
        nonlocal number
        number += 1
        if number > 1:
            raise OSError(5, "disk is gone", str(target))
        return real(self, target)

    monkeypatch.setattr(Path, "rename", rename)
    with pytest.raises(OSError, match="disk is gone"):
        put_in_place(NEW, out)
    (kept,) = out.parent.glob(".copy-*/old")
    assert state(kept) == OLD


def test_the_same_files_give_the_same_archive(tmp_path: Path) -> None:
    packed = archive(NEW, "gym")
    assert packed == archive(dict(reversed(NEW.items())), "gym")
    (tmp_path / "a.zip").write_bytes(packed)
    with zipfile.ZipFile(tmp_path / "a.zip") as opened:
        assert opened.testzip() is None
        assert opened.namelist() == sorted(f"gym/{address}" for address in NEW)
        assert {entry.date_time for entry in opened.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        assert opened.read("gym/index.html") == b"new"


def test_only_the_archive_of_a_copy_is_replaced(tmp_path: Path) -> None:
    path = tmp_path / "gym-1.zip"
    write_archive(archive(OLD, "gym"), path)
    write_archive(archive(NEW, "gym"), path)
    assert path.read_bytes() == archive(NEW, "gym")
    path.write_bytes(archive({"photo.jpg": b"x"}, "holiday"))
    with pytest.raises(ForeignFolderError, match="is no copy of a handbook"):
        write_archive(archive(NEW, "gym"), path)
    assert path.read_bytes() == archive({"photo.jpg": b"x"}, "holiday")
    assert [one.name for one in tmp_path.iterdir()] == ["gym-1.zip"]
