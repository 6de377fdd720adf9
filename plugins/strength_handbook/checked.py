"""A program folder from its files to the worked programs, with everything that is wrong.

The one road that the site, the export and the commands all take, so that none of them is more
lenient than the others.
"""

import os
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book
from strength_handbook.reading.problem import Problem, Severity, sorted_problems
from strength_handbook.review.servable import unserved


@dataclass(frozen=True)
class Checked:
    """What came out of a folder.

    Attributes:
        worked: the programs worked out, or None where there is an error.
        problems: everything to report, in order of files.
    """

    worked: Worked | None
    problems: tuple[Problem, ...]


def check_folder(folder: Path, shown: str | None = None) -> Checked:
    """Read a folder, check it and work it out; whatever the files say, nothing is raised.

    Args:
        folder: the folder with `room.yml` in it.
        shown: its name in messages; as seen from the current folder if left out.
    """
    reading = read_book(folder, shown_path(folder) if shown is None else shown)
    if reading.book is None:
        return Checked(None, tuple(reading.problems))
    worked = work_out(reading.book)
    problems = sorted_problems([*reading.problems, *unserved(worked, reading.written)])
    return Checked(None if errors_in(problems) else worked, tuple(problems))


def shown_path(path: Path) -> str:
    """A path as somebody in the current folder would type it; absolute where that is far away."""
    try:
        relative = os.path.relpath(path)
    except ValueError:  # another drive
        return path.as_posix()
    return path.as_posix() if relative.startswith("..") else Path(relative).as_posix()


def errors_in(problems: Iterable[Problem]) -> list[Problem]:
    """Those that stop a publication."""
    return [problem for problem in problems if problem.severity is Severity.ERROR]


def counted(number: int, noun: str) -> str:
    """A number with its noun.

    >>> counted(1, "error"), counted(2, "error"), counted(0, "note")
    ('1 error', '2 errors', '0 notes')
    """
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"
