"""From the handbook's files to a copy of it: a folder, and beside it an archive of the same."""

import tempfile
from dataclasses import dataclass
from pathlib import Path

from strength_handbook.checked import Tell
from strength_handbook.publish.file_copy.archive import (
    archive,
    refuse_foreign_archive,
    write_archive,
)
from strength_handbook.publish.file_copy.assembling import file_copy
from strength_handbook.publish.file_copy.building import build_site
from strength_handbook.publish.file_copy.edition import archive_name, folder_name
from strength_handbook.publish.file_copy.in_place import put_in_place, refuse_foreign, with_list


@dataclass(frozen=True)
class Made:
    """What was written.

    Attributes:
        number: how many files the folder holds.
        archive: the archive beside it.
        size: of the archive, in bytes.
        warnings: what the build said, as it said it.
        broken: page and address of each link that leads to no file of the copy.
    """

    number: int
    archive: Path
    size: int
    warnings: str
    broken: tuple[tuple[str, str], ...]


def make_copy(
    config: Path, out: Path, *, strict: bool = False, tell: Tell = lambda _: None
) -> Made:
    """Build the handbook and write the copy; a refusal leaves everything as it was.

    Args:
        config: `mkdocs.yml`.
        out: the folder to write; an earlier copy there is replaced.
        strict: stop at warnings that nobody accepted.
        tell: takes what is being done.

    Raises:
        ForeignFolderError: where other files would be lost.
        FailedBuildError: where the build fails.
        NoIndexError: where the site has no search to make the copy's from.
    """
    out = out.resolve()
    refuse_foreign(out)
    with tempfile.TemporaryDirectory(prefix="handbook-") as folder:
        site = Path(folder) / "site"
        tell("building the site")
        warnings = build_site(config, site, strict=strict)
        tell("making the copy")
        copy = file_copy(site)
    files = with_list(copy.files)
    tell("packing the archive")
    packed = archive(files, folder_name(copy.known))
    beside = out.parent / archive_name(copy.known)
    refuse_foreign_archive(beside)
    put_in_place(files, out)
    write_archive(packed, beside)
    return Made(len(files), beside, len(packed), warnings, copy.broken)
