"""A new gym's folder: written beside its place, checked, and put there whole or not at all."""

import os
import shutil
import tempfile
from collections.abc import Mapping
from pathlib import Path

from strength_handbook.checked import check_folder, errors_in, shown_path
from strength_handbook.publish.command_errors import FailedError, MisuseError
from strength_handbook.publish.handwritten import open_places

PARTS = (".schema", "handbook", "programs", "mkdocs.yml")
"""What stands in a gym's folder; what makes it a handbook comes last."""

_MOST_NAMED = 8


def begin_gym(out: Path, files: Mapping[str, str]) -> int:
    """Write a gym's folder.

    Args:
        out: the folder; made if it is missing. Other files in it, such as notes, stay.
        files: text by address.

    Returns:
        How many places the files still leave open.

    Raises:
        MisuseError: where the answers don't go together; nothing was written then.
        FailedError: where a file of the same name has come in between.
        OSError: where nothing can be written there.
    """
    place = out.resolve()
    near = next(folder for folder in place.parents if folder.is_dir())
    with tempfile.TemporaryDirectory(prefix=f".{place.name}-beginning-", dir=near) as beside:
        new = Path(beside) / "new"
        for address, text in files.items():
            path = new / address
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8")
        checked = check_folder(new / "programs", shown_path(out / "programs"))
        if errors := errors_in(checked.problems):
            lines = "\n".join(map(str, errors))
            raise MisuseError(f"these answers don't go together; nothing was written\n{lines}")
        problems = [*checked.problems, *open_places(new / "programs")]
        _put(new, place)
    return sum(problem.slug == "not-filled-in" for problem in problems)


def refuse_files(out: Path) -> None:
    """Refuse a folder in which something would be written over, or mixed with what is there.

    Raises:
        MisuseError: naming what is in the way.
    """
    if out.exists() and not out.is_dir():
        raise MisuseError(f"'{out}' is a file; name a folder")
    there = [path for name in PARTS for path in _files_at(out / name)]
    if there:
        named = ", ".join(shown_path(path) for path in there[:_MOST_NAMED])
        more = f" and {len(there) - _MOST_NAMED} more" if len(there) > _MOST_NAMED else ""
        raise MisuseError(
            f"nothing was written, for these are there already: {named}{more}. Name another "
            "folder, or move them away"
        )


def _files_at(path: Path) -> list[Path]:
    """The file at a path, or all below it; the folder itself where it is empty."""
    if not os.path.lexists(path):
        return []
    inner = sorted(one for one in path.rglob("*") if not one.is_dir()) if path.is_dir() else []
    return inner or [path]


def _put(new: Path, place: Path) -> None:
    """Put a complete folder in its place; into one that is there, each part or none."""
    if not place.exists():
        place.parent.mkdir(parents=True, exist_ok=True)
        new.rename(place)
        return
    moved: list[Path] = []
    try:
        for name in PARTS:
            target = place / name
            if os.path.lexists(target):
                raise FailedError(f"'{target}' came in between; nothing was written")
            (new / name).rename(target)
            moved.append(target)
    except (OSError, FailedError):
        for target in moved:
            shutil.move(target, new / target.name)
        raise
