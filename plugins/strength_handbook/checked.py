"""A program folder from its files to the worked programs, with everything that is wrong.

The one road that the site, the export and the commands all take, so that none of them is more
lenient than the others.
"""

import os
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path

from strength_handbook.model.program import Accepted
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book
from strength_handbook.reading.problem import Problem, Severity, sorted_problems
from strength_handbook.review.accepting import weigh
from strength_handbook.review.catalogue import reported, review
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding
from strength_handbook.review.servable import unserved


@dataclass(frozen=True)
class Checked:
    """What came out of a folder.

    Attributes:
        worked: the programs worked out, or None where there is an error.
        problems: everything to report, in order of files; accepted warnings are left out.
        desk: what the checks looked at, or None where the files could not be read.
        findings: what the checks found and nobody has accepted, in order of families.
        accepted: findings that may stand, each with the entry that says so.
    """

    worked: Worked | None
    problems: tuple[Problem, ...]
    desk: Desk | None = None
    findings: tuple[Finding, ...] = ()
    accepted: tuple[tuple[Finding, Accepted], ...] = ()


def check_folder(folder: Path, shown: str | None = None, today: date | None = None) -> Checked:
    """Read a folder, check it and work it out; whatever the files say, nothing is raised.

    Args:
        folder: the folder with `room.yml` in it.
        shown: its name in messages; as seen from the current folder if left out.
        today: the day that dates are held against; the real one if left out.
    """
    reading = read_book(folder, shown_path(folder) if shown is None else shown)
    if reading.book is None:
        return Checked(None, tuple(reading.problems))
    worked = work_out(reading.book)
    desk = Desk(worked, reading.written, today or current_day())
    weighed = weigh(desk, review(desk))
    problems = sorted_problems(
        [
            *reading.problems,
            *unserved(worked, reading.written),
            *weighed.entries,
            *(reported(finding) for finding in weighed.open),
        ]
    )
    good = None if errors_in(problems) else worked
    return Checked(good, tuple(problems), desk, weighed.open, weighed.accepted)


def current_day() -> date:
    """Today; the day of `SOURCE_DATE_EPOCH` where that is set, so that a build can be repeated."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH", "")
    if epoch.isdecimal():
        return datetime.fromtimestamp(int(epoch), UTC).date()
    return datetime.now(UTC).astimezone().date()


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


def warnings_in(problems: Iterable[Problem]) -> list[Problem]:
    """Those that need a change or a reason."""
    return [problem for problem in problems if problem.severity is Severity.WARN]


def counted(number: int, noun: str) -> str:
    """A number with its noun.

    >>> counted(1, "error"), counted(2, "error"), counted(0, "note")
    ('1 error', '2 errors', '0 notes')
    """
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"
