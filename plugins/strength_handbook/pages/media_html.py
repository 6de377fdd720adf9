"""A gym's own photos and films on an exercise's page, and the files that the site has of them."""

import re
from collections.abc import Callable, Iterator
from functools import partial
from html import escape

from strength_handbook.model.exercise import Exercise
from strength_handbook.model.media import FOLDER, Media, MediaFile
from strength_handbook.pages.page import link
from strength_handbook.pictures.photo import small_photo
from strength_handbook.plan.worked import Worked

WIDTHS = (480, 960)
"""Pixels of a photo's sizes: a phone's width at one and at two to a point."""
_SIZES = "(min-width: 60em) 40rem, 100vw"
KEPT = f"{FOLDER}/kept"
"""Where files lie that phones keep with the pages."""


def media_html(worked: Worked, exercise: Exercise, url: str) -> str:
    """All that the gym has of an exercise; a film is fetched only when somebody starts it.

    Args:
        worked: the programs, with the files.
        exercise: whose.
        url: address of the page.
    """
    files = worked.book.media
    first = first_photo(worked, exercise)
    shown: list[str] = []
    for media in exercise.media:
        file = files[media.file]
        if media.photo:
            shown.append(_photo(media, file, url, lazy=bool(shown)))
        else:
            shown.append(_film(media, file, url, link(url, first[0]) if first else ""))
    return "".join(shown)


def first_photo(worked: Worked, exercise: Exercise) -> tuple[str, str] | None:
    """Address of the smaller size of an exercise's first photo, and what it shows."""
    for media in exercise.media:
        if media.photo:
            _, address = _addresses(media, worked.book.media[media.file])[0]
            return address, media.shows
    return None


def media_files(worked: Worked) -> dict[str, Callable[[], bytes]]:
    """Address of every file that pages show, and what makes its content."""
    return {
        address: make
        for exercise in worked.book.exercises.values()
        for media in exercise.media
        for address, make in _files(media, worked.book.media[media.file])
    }


def _files(media: Media, file: MediaFile) -> Iterator[tuple[str, Callable[[], bytes]]]:
    if media.film:
        yield _address(media, file), file.path.read_bytes
        return
    for width, address in _addresses(media, file):
        yield address, partial(small_photo, file.path, file.digest, width)


def _addresses(media: Media, file: MediaFile) -> list[tuple[int, str]]:
    """Width and address of each size of a photo, the smallest first; none wider than it is."""
    widths = sorted({min(width, file.width) for width in WIDTHS})
    return [(width, _address(media, file, f"-{width}.webp")) for width in widths]


def _address(media: Media, file: MediaFile, ending: str | None = None) -> str:
    """Named after the file and its content, so that a browser never shows an old one."""
    stem = "-".join(re.findall(r"[a-z0-9]+", file.path.stem.lower())) or "file"
    folder = KEPT if media.offline else FOLDER
    return f"{folder}/{stem}-{file.digest}{ending or file.path.suffix.lower()}"


def _photo(media: Media, file: MediaFile, url: str, *, lazy: bool) -> str:
    sizes = _addresses(media, file)
    width, address = sizes[-1]
    height = round(file.height * width / file.width)
    others = ", ".join(f"{link(url, one)} {wide}w" for wide, one in sizes)
    return (
        f'<figure class="sh-photo"><img src="{link(url, address)}" srcset="{others}" '
        f'sizes="{_SIZES}" width="{width}" height="{height}" alt="{escape(media.shows)}"'
        f"{' loading=lazy' if lazy else ''}></figure>"
    )


def _film(media: Media, file: MediaFile, url: str, poster: str) -> str:
    shows = escape(media.shows)
    picture = f' poster="{poster}"' if poster else ""
    megabytes = max(0.1, file.size / 1e6)
    return (
        f'<figure class="sh-photo"><video src="{link(url, _address(media, file))}"{picture} '
        f'controls playsinline preload="none" aria-label="{shows}"></video>'
        f"<figcaption>Film, {megabytes:.1f} MB: {shows}</figcaption></figure>"
    )
