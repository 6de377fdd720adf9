"""Which handbook a copy holds: the gym, and each program with its version and last day."""

import json
import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from html import escape


@dataclass(frozen=True)
class EditionProgram:
    """A program as its published data names it."""

    folder: str
    title: str
    version: str
    valid_until: str | None = None


@dataclass(frozen=True)
class Edition:
    """The gym's name, and what is in this copy."""

    gym: str
    programs: tuple[EditionProgram, ...]


def edition(data: Iterable[str]) -> Edition:
    """What the site's data files say.

    Args:
        data: the text of `data/<program>.json` of every program.
    """
    gym, programs = "", []
    for text in data:
        known = json.loads(text)
        gym = known["room"]["gym"]["name"]
        programs.append(
            EditionProgram(known["program"], known["title"], known["version"], known["valid_until"])
        )
    return Edition(gym, tuple(programs))


def folder_name(known: Edition) -> str:
    """Name of the copy's folder in the archive: the same for every version.

    What a member enters belongs to the place where the pages are, so it stays when a newer
    version takes the place of an older one.

    >>> folder_name(Edition("The Wool Hall, Östra", ()))
    'the-wool-hall-ostra'
    """
    return _name(known.gym) or "handbook"


def archive_name(known: Edition) -> str:
    """Name of the archive: gym and version.

    >>> two = (EditionProgram("a", "A", "2026.1"), EditionProgram("b", "B", "7"))
    >>> archive_name(Edition("The Shed", two))
    'the-shed-2026.1-7.zip'
    """
    versions = dict.fromkeys(_name(program.version) for program in known.programs)
    return "-".join([folder_name(known), *filter(None, versions)])[:100] + ".zip"


def copy_line(known: Edition) -> str:
    """What the copy's first page says of itself, as HTML text.

    >>> copy_line(Edition("The Shed", (EditionProgram("a", "Spring", "7", "2027-03-31"),)))
    'A copy: Spring, version 7. It does not update itself. Remove it after 2027-03-31.'
    """
    programs = "; ".join(f"{one.title}, version {one.version}" for one in known.programs)
    days = sorted(one.valid_until for one in known.programs if one.valid_until)
    end = f"Remove it after {days[0]}." if days else "Ask the coach now and then for the newest."
    return escape(f"A copy: {programs}. It does not update itself. {end}", quote=False)


def _name(text: str) -> str:
    """A name for files: small letters, digits, points and strokes."""
    apart = unicodedata.normalize("NFKD", text.casefold())
    plain = "".join(sign for sign in apart if not unicodedata.combining(sign))
    return re.sub(r"[^a-z0-9.]+", "-", plain).strip("-.")
