"""Puts a copy where it was asked for: all of it or nothing, and never over somebody else's files.

A copy holds a list of its files with their hashes, in the form that `sha256sum -c` reads. A folder
is replaced only where that list accounts for everything in it.
"""

import hashlib
import os
import shutil
import tempfile
from collections.abc import Mapping
from pathlib import Path

from strength_handbook.publish.export import ForeignFolderError

LIST = ".strength-handbook-copy"
"""File that marks a folder as a copy and names what is in it."""

_FROM_THE_SYSTEM = (".DS_Store", "Thumbs.db", "desktop.ini")
"""What file managers leave in folders that were looked at."""


def with_list(files: Mapping[str, bytes]) -> dict[str, bytes]:
    """The files and their list."""
    lines = "".join(f"{_hash(files[address])}  {address}\n" for address in sorted(files))
    return {**files, LIST: lines.encode()}


def refuse_foreign(out: Path) -> None:
    """Make sure that a folder may be replaced.

    Raises:
        ForeignFolderError: where something would be lost; the message says what to do.
    """
    if not os.path.lexists(out):
        return
    if not out.is_dir():
        raise ForeignFolderError(f"'{out}' is a file; name a folder")
    found = {
        path.relative_to(out).as_posix(): path
        for path in sorted(out.rglob("*"))
        if (path.is_symlink() or not path.is_dir()) and path.name not in _FROM_THE_SYSTEM
    }
    if not found:
        return
    if LIST not in found:
        raise ForeignFolderError(
            f"'{out}' holds files that no copy wrote; name a new folder, or an earlier copy"
        )
    listed = _listed(out / LIST)
    for address, path in found.items():
        if address != LIST and address not in listed:
            raise ForeignFolderError(
                f"'{out}' also holds '{address}', which no copy wrote; move it elsewhere first"
            )
        if address != LIST and (path.is_symlink() or _hash(path.read_bytes()) != listed[address]):
            raise ForeignFolderError(
                f"'{path}' was changed since it was copied; move or delete it first"
            )


def put_in_place(files: Mapping[str, bytes], out: Path) -> None:
    """Write a folder beside the wanted one, then let it take its place.

    Raises:
        ForeignFolderError: where the folder holds something that would be lost.
    """
    refuse_foreign(out)
    out.parent.mkdir(parents=True, exist_ok=True)
    beside = Path(tempfile.mkdtemp(prefix=f".{out.name}-", dir=out.parent))
    new, old = beside / "new", beside / "old"
    try:
        for address, content in files.items():
            path = new / address
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(content)
        _swap(new, out, old)
    finally:
        # Whatever went wrong, an old copy that found no way back is not deleted.
        if out.exists() or not old.exists():
            shutil.rmtree(beside, ignore_errors=True)


def _swap(new: Path, out: Path, old: Path) -> None:
    """The new folder in place of the one that is there; or that one again."""
    if not out.exists():
        new.rename(out)
        return
    refuse_foreign(out)
    out.rename(old)
    try:
        new.rename(out)
    except OSError:
        old.rename(out)
        raise


def _listed(path: Path) -> dict[str, str]:
    lines = path.read_text(encoding="utf-8").splitlines()
    return {address: digest for digest, _, address in (line.partition("  ") for line in lines)}


def _hash(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()
