"""A gym's own photos and films of an exercise."""

from dataclasses import dataclass
from pathlib import Path
from typing import Annotated, Literal

from pydantic import AfterValidator, Field, model_validator

from strength_handbook.model.plain import Name
from strength_handbook.model.shape import Shape, quoted, refuse

FOLDER = "media"
"""Beside `room.yml`: where photos and films lie."""
PHOTOS = (".jpg", ".jpeg", ".png", ".webp")
FILMS = (".mp4", ".webm")


def _plain_name(endings: tuple[str, ...], example: str) -> AfterValidator:
    def check(name: str) -> str:
        if "/" in name or "\\" in name or name.startswith("."):
            text = f"write the file's name alone, such as '{example}'; it lies in {FOLDER}/"
            raise refuse("form", text)
        if not name.lower().endswith(endings):
            *most, last = endings
            text = f"{quoted(name)} must end in {', '.join(most)} or {last}"
            raise refuse("form", f"{text}; save it in that form")
        return name

    return AfterValidator(check)


class Media(Shape):
    """One photo or one film."""

    photo: Annotated[Name, _plain_name(PHOTOS, "step-down.jpg")] | None = None
    """Name of a photo in `media/`."""
    film: Annotated[Name, _plain_name(FILMS, "step-down.mp4")] | None = None
    """Name of a short film in `media/`."""
    shows: Annotated[str, Field(min_length=10, max_length=300)]
    """What is to be seen, in a sentence for those who can't see it."""
    people: Literal["agreed", "nobody"]
    """`agreed`: whoever can be known in it has agreed that members see it, for the young a parent
    too. `nobody`: nobody can be known in it."""
    offline: bool = False
    """Kept on phones too, with the pages; left out where it is large."""

    @model_validator(mode="after")
    def _one(self) -> "Media":
        if (self.photo is None) == (self.film is None):
            text = "write 'photo' or 'film', one of the two; a new '-' begins the next"
            raise refuse("pair", text)
        return self

    @property
    def file(self) -> str:
        """The file's name."""
        return self.photo or self.film or ""


@dataclass(frozen=True, slots=True)
class MediaFile:
    """A photo or film that is there and can be shown.

    Attributes:
        path: where it is.
        digest: names its content.
        size: bytes.
        width, height: pixels as it is held upright; 0 for a film.
    """

    path: Path
    digest: str
    size: int
    width: int = 0
    height: int = 0
