"""A new site is written beside the last one and takes its place when it is complete.

Whatever ends a build before that leaves the last site as it is. The folder itself stays the same
one, because web servers and containers hold on to it; what changes is what is in it, in a few
renamings. Hidden files in it, such as a server's settings, are not the build's and stay.
"""

import errno
import json
import os
import shutil
import sys
import tempfile
import time
from contextlib import suppress
from pathlib import Path

_MARK = "complete.json"
"""Stands beside a new site that has begun to take its place; it lists the names in it."""

_LAST = ("index.html", "sw.js")
"""What leads to everything else takes its place after it."""

_DAY_S = 86_400


class NewSite:
    """A site that is being written, and the place that it will take.

    Attributes:
        place: the folder of the site, links followed.
        folder: where the new one is written.
    """

    def __init__(self, site: Path) -> None:
        """Make a folder for the new site.

        Raises:
            OSError: where nothing can be written beside the site or in it.
        """
        self.place = site.resolve()
        self._beside, self._lock = _beside(self.place)
        self.folder = self._beside / "new"
        self.folder.mkdir()

    def publish(self) -> None:
        """Put the new site in the place of the last one.

        Raises:
            OSError: where that can't be done; the last site is there then.
        """
        try:
            _finish_abandoned(self._beside.parent, self.place)
            try:
                _take_place(self._beside, self.place)
            except OSError as error:
                if error.errno != errno.EXDEV:
                    raise
                self._move_in()
                _take_place(self._beside, self.place)
        finally:
            self.discard()

    def _move_in(self) -> None:
        """On to the site's own disk, which two mounts of one disk don't tell before."""
        inner, lock = _locked_folder(self.place, self.place)
        shutil.copytree(self.folder, inner / "new")
        self.discard()
        self._beside, self._lock = inner, lock

    def discard(self) -> None:
        """Remove what was written, and what it replaced."""
        shutil.rmtree(self._beside, ignore_errors=True)
        if self._lock is not None:
            with suppress(OSError):
                os.close(self._lock)
            self._lock = None


def _prefix(place: Path) -> str:
    return f".{place.name}-building-"


def _beside(place: Path) -> tuple[Path, int | None]:
    """A folder of our own on the same disk: next to the site, or in it where that can't be."""
    place.parent.mkdir(parents=True, exist_ok=True)
    for parent in (place.parent, place):
        if parent.is_dir():
            _finish_abandoned(parent, place)
    same_disk = not place.exists() or place.stat().st_dev == place.parent.stat().st_dev
    if same_disk:
        with suppress(OSError):
            return _locked_folder(place.parent, place)
    place.mkdir(exist_ok=True)
    return _locked_folder(place, place)


def _locked_folder(parent: Path, place: Path) -> tuple[Path, int | None]:
    while True:
        made = Path(tempfile.mkdtemp(prefix=_prefix(place), dir=parent))
        lock = _locked(made, wait=True)
        if made.is_dir():  # nobody took it for abandoned in between
            return made, lock


def _finish_abandoned(parent: Path, place: Path) -> None:
    """Clear away what killed builds left; a site that had begun to take its place goes on."""
    for left in sorted(parent.glob(f"{_prefix(place)}*")):
        try:
            lock = _locked(left, wait=False)
        except OSError:
            continue  # another build is writing there
        try:
            if (left / _MARK).is_file():
                _take_place(left, place)
        except (OSError, ValueError):
            continue
        finally:
            if lock is not None:
                os.close(lock)
        shutil.rmtree(left, ignore_errors=True)


def _locked(folder: Path, *, wait: bool) -> int | None:
    """A lock on a folder that ends with the process, however that ends.

    Raises:
        OSError: where we don't wait, and another process holds it or nobody can.
    """
    if sys.platform == "win32":  # no such locks there: what is a day old is abandoned
        if not wait and time.time() - folder.stat().st_mtime < _DAY_S:
            raise BlockingIOError
        return None
    import fcntl  # noqa: PLC0415  # only there where it is used

    number = os.open(folder, os.O_RDONLY)
    try:
        fcntl.flock(number, fcntl.LOCK_EX | (0 if wait else fcntl.LOCK_NB))
    except OSError:
        os.close(number)
        if wait:  # some network disks know no locks
            return None
        raise
    return number


def _take_place(beside: Path, place: Path) -> None:
    """Every part of the new site to its place, and what it replaces out of it; or none of it."""
    new, old, mark = beside / "new", beside / "old", beside / _MARK
    if not place.exists():
        new.rename(place)
        return
    lock = _locked(place, wait=True)  # two builds at a time put theirs in place one by one
    moved: list[tuple[Path, Path]] = []
    try:
        if not mark.is_file():
            _write_mark(mark, sorted(path.name for path in new.iterdir()))
        names = json.loads(mark.read_text(encoding="utf-8"))
        old.mkdir(exist_ok=True)
        for name in sorted(names, key=_turn):
            if os.path.lexists(new / name):
                if os.path.lexists(place / name):
                    _move(place / name, _free(old / name), moved)
                _move(new / name, place / name, moved)
        for path in sorted(place.iterdir()):
            if path.name not in names and not path.name.startswith("."):
                _move(path, _free(old / path.name), moved)
    except OSError:
        for source, target in reversed(moved):
            target.rename(source)
        mark.unlink(missing_ok=True)
        raise
    finally:
        if lock is not None:
            os.close(lock)


def _write_mark(mark: Path, names: list[str]) -> None:
    """All of it or nothing: a build may be killed while it is written."""
    draft = mark.with_suffix(".draft")
    draft.write_text(json.dumps(names), encoding="utf-8")
    draft.rename(mark)


def _turn(name: str) -> tuple[int, str]:
    return (_LAST.index(name) + 1 if name in _LAST else 0, name)


def _move(source: Path, target: Path, moved: list[tuple[Path, Path]]) -> None:
    source.rename(target)
    moved.append((source, target))


def _free(path: Path) -> Path:
    """The path, or one with a number where a build that was killed has used it."""
    number, free = 0, path
    while os.path.lexists(free):
        number += 1
        free = path.with_name(f"{path.name}.{number}")
    return free
