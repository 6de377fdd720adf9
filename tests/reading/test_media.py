"""Photos and films that exercises name: what is read of them, and what is refused."""

from pathlib import Path

import pytest

import camera
import demo
from strength_handbook.reading.book import Reading, read_book
from strength_handbook.reading.problem import Severity
from tiny import write_tiny

PHOTO = "  - {photo: step.jpg, shows: Standing on the box., people: agreed}\n"
FILM = "  - {film: step.mp4, shows: Two slow repetitions., people: nobody}\n"


def read(root: Path, media: str) -> Reading:
    """The smallest handbook with photos and films in its exercise."""
    file = root / "programs/exercises/chair-squat.yml"
    if not file.exists():
        write_tiny(root)
    demo.change(file, "\nset-up:", f"\nmedia:\n{media}\nset-up:")
    return read_book(root / "programs")


def said(reading: Reading) -> list[str]:
    return [f"{one.line}: {one.slug}: {one.text}" for one in reading.problems]


def test_what_is_there_is_read_with_its_size(tmp_path: Path) -> None:
    camera.photo(tmp_path / "programs/media/step.jpg")
    camera.film(tmp_path / "programs/media/step.mp4")
    book = read(tmp_path, PHOTO + FILM).book
    assert book is not None
    shown = book.media["step.jpg"]
    assert (shown.width, shown.height) == (1600, 1200)
    assert book.media["step.mp4"].size == 400_000
    assert len({file.digest for file in book.media.values()}) == 2


@pytest.mark.parametrize(("turned", "size"), [(1, (800, 600)), (3, (800, 600)), (6, (600, 800))])
def test_a_photo_has_the_size_of_what_is_seen_upright(
    tmp_path: Path, turned: int, size: tuple[int, int]
) -> None:
    camera.photo(tmp_path / "programs/media/step.jpg", size, turned)
    book = read(tmp_path, PHOTO).book
    assert book is not None
    assert (book.media["step.jpg"].width, book.media["step.jpg"].height) == size


@pytest.mark.parametrize(
    ("media", "problem"),
    [
        (PHOTO.replace("step", "stap"),
         "there is no 'stap.jpg' in media/ beside room.yml; did you mean 'step.jpg'?"),
        (PHOTO.replace("step", "small"),
         "'small.jpg' has 500 × 200 pixels; take one with at least 320 each way"),
        (PHOTO.replace("step", "text"),
         "'text.jpg' is no photo that can be read; save it again as JPEG"),
        (FILM.replace("step", "long"),
         ("'long.mp4' has 7.0 MB, the most is 6 MB: cut it to ten seconds, or save it at a phone's "
          "size")),
        (FILM.replace("step", "placed"),
         "'placed.mp4' says where it was taken; save it without its place"),
        (FILM.replace("step", "text"), "'text.mp4' is no .mp4 film; save it again in that form"),
        (PHOTO.replace("step.jpg", "step.heic"),
         "'step.heic' must end in .jpg, .jpeg, .png or .webp; save it in that form"),
        (PHOTO.replace("step.jpg", "../step.jpg"),
         "write the file's name alone, such as 'step-down.jpg'; it lies in media/"),
        ("  - {photo: step.jpg, film: step.mp4, shows: Both at once., people: agreed}\n",
         "write 'photo' or 'film', one of the two; a new '-' begins the next"),
    ],
)  # fmt: skip
def test_what_cannot_be_shown_is_refused_at_its_line(
    tmp_path: Path, media: str, problem: str
) -> None:
    folder = tmp_path / "programs/media"
    camera.photo(folder / "step.jpg")
    camera.photo(folder / "small.jpg", (500, 200))
    camera.film(folder / "long.mp4", size=7_000_000)
    camera.film(folder / "placed.mp4", b"udta\xa9xyz+54.43-002.96/")
    for name in ("text.jpg", "text.mp4"):
        (folder / name).write_text("no picture at all", encoding="utf-8")
    reading = read(tmp_path, media)
    assert reading.book is None
    errors = [one for one in reading.problems if one.severity is Severity.ERROR]
    assert [one.text for one in errors] == [problem]
    text = (tmp_path / "programs/exercises/chair-squat.yml").read_text(encoding="utf-8")
    assert text.splitlines()[errors[0].line - 1] == media.splitlines()[0]


def test_people_must_be_thought_of(tmp_path: Path) -> None:
    camera.photo(tmp_path / "programs/media/step.jpg")
    reading = read(tmp_path, PHOTO.replace(", people: agreed", ""))
    assert any("people" in one for one in said(reading))


def test_a_file_that_nothing_shows_is_a_note(tmp_path: Path) -> None:
    camera.photo(tmp_path / "programs/media/step.jpg")
    camera.photo(tmp_path / "programs/media/old.jpg")
    reading = read(tmp_path, PHOTO)
    assert reading.book is not None
    (note,) = said(reading)
    assert note.startswith("1: media-unused: no exercise shows 'old.jpg' of media/; name it there")
