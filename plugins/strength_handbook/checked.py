"""A program folder from its files to the worked programs, with everything that is wrong.

The one road that the site, the export and the commands all take, so that none of them is more
lenient than the others.
"""

import os
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime
from pathlib import Path

from strength_handbook.model.program import Accepted
from strength_handbook.model.samples import samples_in
from strength_handbook.plan.remembered import forget_handbook
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import Reading, read_book
from strength_handbook.reading.doses import ReadAs
from strength_handbook.reading.problem import Problem, Severity, sorted_problems
from strength_handbook.reading.readable import Readable, read_readable
from strength_handbook.review.accepting import weigh
from strength_handbook.review.catalogue import reported, review
from strength_handbook.review.desk import Desk
from strength_handbook.review.echoes import DRAFT
from strength_handbook.review.finding import Finding
from strength_handbook.review.servable import NO_PAGE, unserved

Tell = Callable[[str], None]
"""Takes what is being done, such as `checking rest-short`."""

_LONGEST_EPOCH = 11
"""Seconds with more digits lie beyond the last year that there is a date for; they say nothing."""


@dataclass(frozen=True)
class Checked:
    """What came out of a folder.

    Attributes:
        worked: the programs worked out, or None where there is an error.
        problems: everything to report, in order of files; accepted warnings are left out.
        desk: what the checks looked at, or None where the files could not be read.
        findings: what the checks found and nobody has accepted, in order of families.
        accepted: findings that may stand, each with the entry that says so.
        read_as: doses in other spellings than the house's, and how each was understood.
        shown: the programs as `mkdocs serve` shows them: what the checks found holds nothing back,
            and of a file that can't be read what it held before.
        held: files of which earlier content is shown, by their names in messages.
        raw: what was read of each file, by its name in messages, where it all goes together.
    """

    worked: Worked | None
    problems: tuple[Problem, ...]
    desk: Desk | None = None
    findings: tuple[Finding, ...] = ()
    accepted: tuple[tuple[Finding, Accepted], ...] = ()
    read_as: tuple[ReadAs, ...] = ()
    shown: Worked | None = None
    held: frozenset[str] = frozenset()
    raw: Mapping[str, bytes] = field(default_factory=dict)


@dataclass(frozen=True)
class Drafted:
    """A folder read and worked out, not yet checked.

    Attributes:
        reading: what came out of its files.
        desk: what the checks look at, or None where the files could not be read.
        held: files of which the desk has earlier content.
    """

    reading: Reading
    desk: Desk | None
    held: frozenset[str] = frozenset()


def draft_folder(
    folder: Path,
    shown: str | None = None,
    today: date | None = None,
    tell: Tell = lambda _: None,
    kept: Mapping[str, bytes] | None = None,
) -> Drafted:
    """Read a folder and work it out; whatever the files say, nothing is raised.

    Args:
        folder: the folder with `room.yml` in it.
        shown: its name in messages; as seen from the current folder if left out.
        today: the day that dates are held against; the real one if left out.
        tell: takes what is being done, many times.
        kept: what the files held when all could last be read: shown of those that now can't be.
            None shows nothing then.
    """
    forget_handbook()  # or every handbook of a long `mkdocs serve` would stay in memory
    name = shown_path(folder) if shown is None else shown
    read = (
        Readable(read_book(folder, name, tell))
        if kept is None
        else read_readable(folder, name, kept, tell)
    )
    reading = read.reading
    if reading.book is None:
        return Drafted(reading, None)
    tell("working out the programs")
    worked = work_out(reading.book)
    desk = Desk(worked, reading.written, today or current_day())
    return Drafted(reading, desk, read.held)


def check_drafted(
    drafted: Drafted, tell: Tell = lambda _: None, *, drafts: bool = False
) -> Checked:
    """Check what was read and worked out.

    Args:
        drafted: the folder.
        tell: takes what is being done, many times.
        drafts: exercises that are only begun may be published: they are notes, not errors.
    """
    reading, desk = drafted.reading, drafted.desk
    if desk is None or reading.book is None:
        return Checked(None, tuple(reading.problems), read_as=tuple(reading.read_as))
    with samples_in(reading.book.room.units):
        found = review(desk, tell=tell)
        if drafts:
            found = [
                replace(one, severity=Severity.NOTE) if one.slug == DRAFT else one for one in found
            ]
        weighed = weigh(desk, found)
    review_of = [
        *unserved(desk.worked, reading.written),
        *weighed.entries,
        *(reported(finding) for finding in weighed.open),
    ]
    # Of a file that is shown as it was, lines and columns are those it had.
    problems = sorted_problems(
        [*reading.problems, *(one for one in review_of if one.file not in drafted.held)]
    )
    found = [one for one in weighed.open if reported(one).file not in drafted.held]
    good = None if errors_in(problems) else desk.worked
    no_page = any(one.slug in NO_PAGE for one in (*reading.problems, *review_of))
    shown = None if no_page else desk.worked
    read_as = tuple(reading.read_as)
    return Checked(
        good, tuple(problems), desk, tuple(found), weighed.accepted, read_as, shown,
        drafted.held, reading.raw,
    )  # fmt: skip


def check_folder(
    folder: Path,
    shown: str | None = None,
    today: date | None = None,
    tell: Tell = lambda _: None,
    *,
    drafts: bool = False,
    kept: Mapping[str, bytes] | None = None,
) -> Checked:
    """Read a folder, work it out and check it; arguments as for both steps."""
    return check_drafted(draft_folder(folder, shown, today, tell, kept), tell, drafts=drafts)


def current_day() -> date:
    """Today; the day of `SOURCE_DATE_EPOCH` where that is set, so that a build can be repeated."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH", "")
    if epoch.isdecimal() and len(epoch) <= _LONGEST_EPOCH:
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
