"""A new site takes the last one's place whole, or not at all; a killed one is finished later."""

import errno
import subprocess
import sys
from pathlib import Path

import pytest

from strength_handbook.publish.switch_over import NewSite

OLD = {"index.html": "old home", "a/index.html": "old a", "gone/index.html": "g", "sw.js": "old",
       "x": "a file", ".htaccess": "server"}  # fmt: skip
NEW = {"index.html": "new home", "a/index.html": "new a", "b/index.html": "new b", "sw.js": "new",
       "x/index.html": "a folder"}  # fmt: skip
AFTER = NEW | {".htaccess": "server"}


def write(folder: Path, files: dict[str, str]) -> None:
    for name, text in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")


def read(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8")
        for path in folder.rglob("*")
        if path.is_file()
    }


@pytest.fixture
def site(tmp_path: Path) -> Path:
    write(tmp_path / "site", OLD)
    return tmp_path / "site"


def new_site(site: Path) -> NewSite:
    made = NewSite(site)
    write(made.folder, NEW)
    return made


def test_it_takes_the_place_of_the_last_and_keeps_hidden_files(site: Path) -> None:
    made = new_site(site)
    assert read(site) == OLD
    made.publish()
    assert read(site) == AFTER
    assert [path.name for path in site.parent.iterdir()] == ["site"]


def test_the_first_site_needs_no_folder(tmp_path: Path) -> None:
    new_site(tmp_path / "far/site").publish()
    assert read(tmp_path / "far/site") == NEW


def test_a_discarded_one_leaves_nothing(site: Path) -> None:
    new_site(site).discard()
    assert read(site.parent) == {f"site/{name}": text for name, text in OLD.items()}


def test_where_nothing_can_be_written_beside_it_is_written_inside(
    site: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    import tempfile

    real = tempfile.mkdtemp

    def inside(**words: object) -> str:
        if words["dir"] == site.parent:
            raise PermissionError(errno.EACCES, "Permission denied")
        return real(**words)  # type: ignore[call-overload, no-any-return]

    monkeypatch.setattr(tempfile, "mkdtemp", inside)
    made = new_site(site)
    assert made.folder.is_relative_to(site)
    made.publish()
    assert read(site) == AFTER


@pytest.mark.parametrize("number", range(11))
def test_a_renaming_that_fails_brings_everything_back(
    site: Path, monkeypatch: pytest.MonkeyPatch, number: int
) -> None:
    made = new_site(site)
    real, count = Path.rename, 0

    def failing(path: Path, target: Path) -> Path:
        nonlocal count
        count += 1
        if count == number + 1:
            raise PermissionError(errno.EACCES, "in use", str(path))
        return real(path, target)

    monkeypatch.setattr(Path, "rename", failing)
    with pytest.raises(PermissionError):
        made.publish()
    assert read(site) == OLD


def test_another_disk_in_disguise_is_copied_to(site: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    made = new_site(site)
    real = Path.rename

    def two_disks(path: Path, target: Path) -> Path:
        if path.is_relative_to(site) != target.is_relative_to(site):
            raise OSError(errno.EXDEV, "Invalid cross-device link", str(path))
        return real(path, target)

    monkeypatch.setattr(Path, "rename", two_disks)
    made.publish()
    assert read(site) == AFTER


KILLED = """
import os, signal, sys
from pathlib import Path
sys.path.insert(0, {tests!r})
from publish.test_switch_over import new_site
made = new_site(Path({site!r}))
real, count = Path.rename, 0
def killing(path, target):
    global count
    count += 1
    if count == {number}:
        os.kill(os.getpid(), signal.SIGKILL)
    return real(path, target)
Path.rename = killing
made.publish()
"""


@pytest.mark.parametrize("number", [1, 2, 3, 6, 10, 11])
def test_what_was_killed_while_it_took_the_place_is_finished_by_the_next(
    site: Path, number: int
) -> None:
    tests = str(Path(__file__).parent.parent)
    code = KILLED.format(tests=tests, site=str(site), number=number)
    done = subprocess.run([sys.executable, "-c", code], check=False)
    assert done.returncode < 0
    if number == 1:  # before it had begun
        assert read(site) == OLD
    NewSite(site).discard()
    assert read(site) == (OLD if number == 1 else AFTER)
    assert [path.name for path in site.parent.iterdir()] == ["site"]


def test_what_another_process_is_writing_is_left_alone(site: Path) -> None:
    first, second = new_site(site), new_site(site)
    assert first.folder.is_dir()
    second.publish()
    assert first.folder.is_dir()
    first.publish()
    assert read(site) == AFTER
