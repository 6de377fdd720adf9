"""Why a build publishes nothing, in words."""

from collections.abc import Iterable, Sequence
from pathlib import Path

from strength_handbook.checked import counted
from strength_handbook.reading.problem import Problem

UNTOUCHED = "the last good site is untouched"

_NEEDED = "partials/language.html"
"""What our pages take from the theme."""


def refusal(kind: str, problems: Sequence[Problem]) -> str:
    """The files have problems that stop a publication.

    Args:
        kind: "error" or "warning".
        problems: all of them.
    """
    lines = "\n".join(map(str, problems))
    end = f"{counted(len(problems), kind)}: nothing was built, {UNTOUCHED}."
    how = " Mend each, or accept it with a reason in program.yml." if kind == "warning" else ""
    return f"The files have {kind}s.\n{lines}\n{end}{how}"


def late_refusal(number: int) -> str:
    """The builder has said something on the way that a strict build doesn't let pass."""
    lines = "the line" if number == 1 else "the lines"
    what = counted(number, "warning")
    return f"{what}: nothing was published, {UNTOUCHED}. Mend what {lines} above name."


def disk_refusal(error: OSError) -> str:
    """Something could not be read or written."""
    where = f" ('{error.filename}')" if error.filename else ""
    return f"the build can't go on: {error.strerror or error}{where}; {UNTOUCHED}."


def theme_refusal(folders: Iterable[str]) -> str:
    """What is wrong with the theme; empty where nothing is.

    Args:
        folders: where its templates come from.
    """
    if any((Path(folder) / _NEEDED).is_file() for folder in folders):
        return ""
    return "the handbook needs the theme 'material'; write 'theme: {name: material}' in mkdocs.yml"
