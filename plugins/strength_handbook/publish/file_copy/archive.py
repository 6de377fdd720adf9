"""A copy as one file to carry around; the same copy gives the same bytes."""

import os
import tempfile
import zipfile
from collections.abc import Mapping
from io import BytesIO
from pathlib import Path

from strength_handbook.publish.export import ForeignFolderError
from strength_handbook.publish.file_copy.in_place import LIST

_FIRST_DAY = (1980, 1, 1, 0, 0, 0)
"""The earliest time the format knows; the real one would be another in every copy."""

_READABLE = 0o644 << 16
_UNIX = 3


def archive(files: Mapping[str, bytes], folder: str) -> bytes:
    """The files in one folder, in one archive.

    Args:
        files: content by address.
        folder: name of the folder that unpacking gives.
    """
    out = BytesIO()
    with zipfile.ZipFile(out, "w") as packed:
        for address in sorted(files):
            entry = zipfile.ZipInfo(f"{folder}/{address}", _FIRST_DAY)
            entry.create_system, entry.external_attr = _UNIX, _READABLE
            packed.writestr(entry, files[address], zipfile.ZIP_DEFLATED, 9)
    return out.getvalue()


def refuse_foreign_archive(path: Path) -> None:
    """Make sure that a file may be replaced.

    Raises:
        ForeignFolderError: where it is not the archive of a copy.
    """
    if os.path.lexists(path) and not _is_copy(path):
        raise ForeignFolderError(f"'{path}' is no copy of a handbook; move it elsewhere first")


def write_archive(content: bytes, path: Path) -> None:
    """Write the archive beside the wanted name, then let it take its place.

    Raises:
        ForeignFolderError: where another file has that name.
    """
    refuse_foreign_archive(path)
    number, name = tempfile.mkstemp(prefix=f".{path.name}-", dir=path.parent)
    new = Path(name)
    try:
        with os.fdopen(number, "wb") as file:
            file.write(content)
        new.chmod(0o644)
        refuse_foreign_archive(path)
        new.replace(path)
    finally:
        new.unlink(missing_ok=True)


def _is_copy(path: Path) -> bool:
    try:
        with zipfile.ZipFile(path) as packed:
            return any(name.endswith(f"/{LIST}") for name in packed.namelist())
    except (OSError, zipfile.BadZipFile):
        return False
