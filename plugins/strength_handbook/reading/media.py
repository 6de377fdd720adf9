"""Photos and films that exercises name: there, readable, small enough, and without a place in them.

A photo is made small by the build, so it may be as the camera wrote it. A film is published as it
is, so what it may weigh and say is held to here.
"""

import hashlib
from collections.abc import Iterator, Mapping
from functools import lru_cache
from pathlib import Path

from strength_handbook.model.media import FOLDER, Media, MediaFile
from strength_handbook.model.shape import quoted
from strength_handbook.reading.problem import Problem, Severity
from strength_handbook.reading.suggest import did_you_mean_name
from strength_handbook.reading.written import Written

LARGEST_PHOTO = 40_000_000
"""Bytes of a photo; cameras write less."""
LARGEST_FILM = 6_000_000
"""Bytes of a film: some fifteen seconds at a phone's size. Common practice, no source."""
NARROWEST = 320
"""Pixels of a photo's shorter side; less is a blur on a phone."""
_MOST_PIXELS = 120_000_000
_ORIENTATION, _LYING = 0x0112, (5, 6, 7, 8)
"""Where a camera says how it was held, and the values for a quarter turn: Exif 2.3, 4.6.4."""
_PLACES = (b"\xa9xyz", b"location.ISO6709", b"loci")
"""How films write where they were taken: QuickTime File Format and 3GPP TS 26.244, from memory."""
_LOOKED_AT = 65_536
"""Bytes at either end of a film, where its description is."""
_BEGINS = {".mp4": (4, b"ftyp"), ".webm": (0, b"\x1a\x45\xdf\xa3")}
"""Sign of the form, and at which byte: ISO/IEC 14496-12 and RFC 8794."""


class _UnfitError(ValueError):
    """A file that can't be shown; the message says what to do."""


def check_media(written: Written, root: Path) -> tuple[dict[str, MediaFile], list[Problem]]:
    """What exercises show of the gym's own.

    Args:
        written: the files; positions of problems are theirs.
        root: the program folder.

    Returns:
        Each file by its name, and what is wrong with the others.
    """
    found: dict[str, MediaFile] = {}
    problems: list[Problem] = []
    there = _there(root / FOLDER)
    for exercise in written.exercises.values():
        for number, media in enumerate(exercise.model.media):
            path = ("media", number, "photo" if media.photo else "film")
            try:
                found[media.file] = _looked_at(media, there)
            except _UnfitError as unfit:
                problems.append(exercise.source.problem(path, "media", str(unfit)))
    if written.room is not None and not written.broken:
        problems += _unused(there, written, written.room.source.file)
    return found, problems


def _there(folder: Path) -> dict[str, Path]:
    if not folder.is_dir():
        return {}
    return {
        path.name: path
        for path in sorted(folder.iterdir())
        if path.is_file() and not path.name.startswith(".")
    }


def _unused(there: Mapping[str, Path], written: Written, file: str) -> Iterator[Problem]:
    """Files that nothing shows, told at the top of a file: perhaps they were forgotten."""
    named = {media.file for one in written.exercises.values() for media in one.model.media}
    left = [name for name in there if name not in named]
    if left:
        names = ", ".join(map(quoted, left[:5])) + (" and more" if len(left) > 5 else "")
        text = f"no exercise shows {names} of {FOLDER}/; name it there under 'media', or delete it"
        yield Problem(file, 1, 1, "media-unused", text, Severity.NOTE)


def _looked_at(media: Media, there: Mapping[str, Path]) -> MediaFile:
    path = there.get(media.file)
    if path is None:
        meant = did_you_mean_name(media.file, there)
        raise _UnfitError(f"there is no {quoted(media.file)} in {FOLDER}/ beside room.yml{meant}")
    state = path.stat()
    look = _photo if media.photo else _film
    return look(path, state.st_mtime_ns, state.st_size)


@lru_cache(maxsize=512)  # in `mkdocs serve` most are as they were
def _photo(path: Path, changed: int, size: int) -> MediaFile:  # noqa: ARG001  # of the cache
    from PIL import Image  # noqa: PLC0415  # most handbooks have no photo

    name = quoted(path.name)
    if size > LARGEST_PHOTO:
        raise _UnfitError(_too_heavy(name, size, LARGEST_PHOTO, "save it smaller"))
    try:
        with Image.open(path) as image:
            (wide, high), turned = image.size, image.getexif().get(_ORIENTATION) in _LYING
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError):
        raise _UnfitError(f"{name} is no photo that can be read; save it again as JPEG") from None
    if wide * high > _MOST_PIXELS:
        raise _UnfitError(f"{name} has {wide} × {high} pixels; save it smaller")
    if min(wide, high) < NARROWEST:
        text = f"{name} has {wide} × {high} pixels; take one with at least {NARROWEST} each way"
        raise _UnfitError(text)
    return MediaFile(path, _digest(path), size, *((high, wide) if turned else (wide, high)))


@lru_cache(maxsize=512)
def _film(path: Path, changed: int, size: int) -> MediaFile:  # noqa: ARG001  # of the cache
    name = quoted(path.name)
    if size > LARGEST_FILM:
        advice = "cut it to ten seconds, or save it at a phone's size"
        raise _UnfitError(_too_heavy(name, size, LARGEST_FILM, advice))
    content = path.read_bytes()
    at, sign = _BEGINS[path.suffix.lower()]
    if content[at : at + len(sign)] != sign:
        raise _UnfitError(f"{name} is no {path.suffix.lower()} film; save it again in that form")
    if any(place in content[:_LOOKED_AT] + content[-_LOOKED_AT:] for place in _PLACES):
        text = f"{name} says where it was taken; save it without its place"
        raise _UnfitError(text)
    return MediaFile(path, _digest(path), size)


def _too_heavy(name: str, size: int, most: int, advice: str) -> str:
    return f"{name} has {size / 1e6:.1f} MB, the most is {most / 1e6:.0f} MB: {advice}"


def _digest(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()[:10]
