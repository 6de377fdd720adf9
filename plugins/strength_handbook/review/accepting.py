"""Warnings that the coach lets stand: which they are, and which entries no longer hold."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from difflib import SequenceMatcher

from strength_handbook.model.program import Accepted
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Problem, Severity
from strength_handbook.reading.suggest import did_you_mean
from strength_handbook.review.catalogue import CHECKS
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding

_Wrong = tuple[str, str, str]
"""Key, slug and text of what is wrong with an entry."""


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
    """Take out the warnings that a program's `accepted` names.

    An entry silences the findings of its name and place and nothing else. One that is past its
    day silences nothing and is reported, as is one that names nothing or an error.
    """
    open_, accepted, entries = list(findings), [], []
    for program in desk.worked.programs:
        written = program.program.accepted
        named = [[one for one in findings if _names(entry, program, one)] for entry in written]
        for index, (entry, ours) in enumerate(zip(written, named, strict=True)):
            wrong = _twice(desk, program, index) or _wrong(desk, program, entry, ours)
            if wrong is None and not ours:
                taken = [one for others in named for one in others]
                free = [one for one in findings if one not in taken]
                text = _nothing(entry, program, free)
                wrong = "at", "accepted-nothing", text
            if wrong is not None:
                key, slug, text = wrong
                path = ("accepted", index, key)
                source = desk.written.programs[program.id].source
                entries.append(source.problem(path, slug, text, severity=Severity.WARN))
                continue
            accepted += [(one, entry) for one in ours if one in open_]
            open_ = [one for one in open_ if one not in ours]
    return Weighed(tuple(open_), tuple(accepted), tuple(entries))


def _names(entry: Accepted, program: WorkedProgram, finding: Finding) -> bool:
    return _may(entry, program, finding) and plain_place(entry.at) == plain_place(finding.at.text)


def _may(entry: Accepted, program: WorkedProgram, finding: Finding) -> bool:
    """True for a finding that an entry of this program could be about."""
    return finding.program in ("", program.id) and entry.finding == finding.slug


def _twice(desk: Desk, program: WorkedProgram, index: int) -> _Wrong | None:
    """The complaint about an entry that stands above already."""
    every = program.program.accepted
    same = [(entry.finding, plain_place(entry.at)) for entry in every]
    first = same.index(same[index])
    if first == index:
        return None
    line = desk.written.programs[program.id].source.at(("accepted", first, "finding")).line
    text = f"this is accepted in line {line} already; keep one of the two entries"
    return "finding", "accepted-twice", text


def _wrong(
    desk: Desk, program: WorkedProgram, entry: Accepted, named: Sequence[Finding]
) -> _Wrong | None:
    """What is wrong with an entry by itself, or None."""
    if entry.finding not in CHECKS:
        hint = did_you_mean(entry.finding, CHECKS)
        return "finding", "accepted-unknown", f"no finding is called '{entry.finding}'{hint}"
    if any(one.severity is Severity.ERROR for one in named):
        text = f"'{entry.finding}' is an error here and can't be accepted; fix it"
        return "finding", "accepted-error", text
    end = end_of(program, entry, named)
    if named and end is not None and end < desk.today:
        text = (
            f"accepted until {end}, which is past; look at it again, then fix it or write 'until'"
        )
        return "until", "accepted-expired", text
    return None


def _nothing(entry: Accepted, program: WorkedProgram, findings: Iterable[Finding]) -> str:
    """What to say of an entry that names nothing: where the nearest finding of its name is."""
    text = f"nothing is found as '{entry.finding}' at '{entry.at}'"
    near = nearest(entry.at, [one for one in findings if _may(entry, program, one)])
    if near is None:
        return (
            f"{text}; delete this entry, or copy the place word for word from "
            "strength-handbook check"
        )
    place = f'"{near.at.text}"'
    if near.severity is Severity.ERROR:
        return f"{text}; at {place} it is an error now: mend that, and delete this entry"
    return f"{text}; there is one at {place} now: look at it, and write that place or fix it"


def nearest(at: str, findings: Sequence[Finding]) -> Finding | None:
    """The finding whose place is most like another; warnings before errors; None of none."""
    if not findings:
        return None
    wanted = plain_place(at)

    def likeness(one: Finding) -> tuple[bool, bool, float]:
        place = plain_place(one.at.text)
        there = bool(one.at.what) and wanted.endswith(one.at.what)
        return there, one.severity is not Severity.ERROR, SequenceMatcher(
            None, wanted, place, autojunk=False
        ).ratio()  # fmt: skip

    return max(findings, key=likeness)


def plain_place(text: str) -> str:
    """A place as it is compared: spaces, a first capital and a last full stop do not matter.

    >>> plain_place(" Week 3,  a-lift A press. ")
    'week 3, a-lift A press'
    """
    words = " ".join(text.replace("\N{EN DASH}", "-").split()).rstrip(". ")
    return words[:1].lower() + words[1:]


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
