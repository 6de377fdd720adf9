"""Warnings that the coach lets stand: which they are, and which entries no longer hold."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from strength_handbook.model.program import Accepted
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Problem, Severity
from strength_handbook.reading.suggest import did_you_mean
from strength_handbook.review.catalogue import CHECKS
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding


@dataclass(frozen=True)
class Weighed:
    """Findings after the coach's own decisions.

    Attributes:
        open: findings that nobody has accepted.
        accepted: findings that may stand, each with the entry that says so.
        entries: problems of the entries themselves.
    """

    open: tuple[Finding, ...]
    accepted: tuple[tuple[Finding, Accepted], ...]
    entries: tuple[Problem, ...]


def weigh(desk: Desk, findings: list[Finding]) -> Weighed:
    """Take out the warnings that a program's `accepted` names, word for word.

    An entry silences the findings of its name and place and nothing else. One that is past its
    day silences nothing and is reported, as is one that names nothing or an error.
    """
    open_, accepted, entries = list(findings), [], []
    for program in desk.worked.programs:
        for index, entry in enumerate(program.program.accepted):
            named = [one for one in findings if _names(entry, program, one)]
            wrong = _wrong(desk, program, entry, named)
            if wrong is not None:
                key, slug, text = wrong
                path = ("accepted", index, key)
                source = desk.written.programs[program.id].source
                entries.append(source.problem(path, slug, text, severity=Severity.WARN))
                continue
            accepted += [(one, entry) for one in named if one in open_]
            open_ = [one for one in open_ if one not in named]
    return Weighed(tuple(open_), tuple(accepted), tuple(entries))


def _names(entry: Accepted, program: WorkedProgram, finding: Finding) -> bool:
    ours = finding.program in ("", program.id)
    return ours and entry.finding == finding.slug and _plain(entry.at) == finding.at.text


def _wrong(
    desk: Desk, program: WorkedProgram, entry: Accepted, named: list[Finding]
) -> tuple[str, str, str] | None:
    """Key, slug and text of what is wrong with an entry, or None."""
    if entry.finding not in CHECKS:
        hint = did_you_mean(entry.finding, CHECKS)
        return "finding", "accepted-unknown", f"no finding is called '{entry.finding}'{hint}"
    if not named:
        text = (
            f"nothing is found as '{entry.finding}' at '{entry.at}'; delete this entry, or copy "
            "the place word for word from strength-handbook check"
        )
        return "at", "accepted-nothing", text
    if any(one.severity is Severity.ERROR for one in named):
        text = f"'{entry.finding}' is an error here and can't be accepted; mend it"
        return "finding", "accepted-error", text
    end = end_of(program, entry, named)
    if end is not None and end < desk.today:
        text = (
            f"accepted until {end}, which is past; look at it again, then mend it or write 'until'"
        )
        return "until", "accepted-expired", text
    return None


def end_of(program: WorkedProgram, entry: Accepted, named: Iterable[Finding]) -> date | None:
    """The day an entry ends: its own, else the last day of the wave of its last week."""
    if entry.until is not None:
        return entry.until
    return wave_end(program, [week for one in named for week in one.at.weeks])


def wave_end(program: WorkedProgram, weeks: Sequence[int]) -> date | None:
    """The last day of the wave of the last of some weeks; None where no date is known."""
    start = program.program.start
    if start is None or not weeks:
        return None
    last = max(program.week(max(weeks)).wave.weeks)
    return start + timedelta(weeks=last, days=-1)


def _plain(text: str) -> str:
    return " ".join(text.split())
