"""Findings on the pages that show what they are about, for `mkdocs serve` only.

What concerns a slot stands under the slot's name, all else under the page's own title. What no page
shows, such as a house rule, stands on the home page.
"""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from html import escape

from strength_handbook.model.program import Wave
from strength_handbook.pages.coach.drafts import Reviewed
from strength_handbook.pages.coach.findings import SEVERITIES
from strength_handbook.pages.session_page import session_uri, week_uri
from strength_handbook.pages.week_page import overview_uri
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.reading.problem import Problem, Severity
from strength_handbook.reading.source import Path, Source
from strength_handbook.reading.written import File
from strength_handbook.review.catalogue import reported
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Reported

HOME = "index.md"

Place = tuple[str, str]
"""Source path of a page, and the id of a heading on it; empty for its first one."""


class Notes:
    """What stands on which page."""

    def __init__(self, found: Iterable[tuple[Place, Problem]] = ()) -> None:
        """Keep what the coach has to look at, each thing once on a page.

        Args:
            found: problems with their places.
        """
        self._pages: dict[str, dict[str, list[Problem]]] = {}
        for (uri, anchor), problem in found:
            here = self._pages.setdefault(uri, {}).setdefault(anchor, [])
            if problem not in here:
                here.append(problem)

    def __iter__(self) -> Iterator[str]:
        return iter(self._pages)

    def of(self, uri: str) -> dict[str, list[Problem]]:
        """What stands on a page, by the id of the heading above it."""
        return self._pages.get(uri, {})

    def others(self, before: "Notes") -> set[str]:
        """Source paths of the pages that say something else than before."""
        return {uri for uri in {*self, *before} if self.of(uri) != before.of(uri)}

    def on(self, uri: str, html: str) -> str:
        """A page's content with what stands on it."""
        for anchor, problems in self.of(uri).items():
            text = "".join(map(_note, problems))
            heading = _heading(html, anchor) or _heading(html, "")
            end = heading.end() if heading else 0
            html = html[:end] + text + html[end:]
        return html


def noted(reviewed: Reviewed, problems: Sequence[Problem], by_hand: Mapping[str, str]) -> Notes:
    """Every error and warning on its pages.

    Args:
        reviewed: what came out of reading and checking.
        problems: everything to report, with what the hand-written pages have.
        by_hand: source path of each of those by its file, as in problems.
    """
    if reviewed.desk is None:
        return Notes()
    places = _Places(reviewed.desk, by_hand)
    found: list[tuple[Place, Problem]] = [
        (place, reported(one))
        for one in filter(_serious, reviewed.findings)
        for place in places.of(one)
    ]
    for problem in filter(_serious, problems):
        if not isinstance(problem, Reported):
            found += ((place, problem) for place in places.of_problem(problem))
    return Notes(found)


def _serious(one: Problem | Finding) -> bool:
    return one.severity is not Severity.NOTE


def _heading(html: str, anchor: str) -> re.Match[str] | None:
    inner = rf'\bid="?{re.escape(anchor)}"?[\s>]' if anchor else ""
    level = "[1-6]" if anchor else "1"
    return re.search(rf"<(h{level})\b(?=[^>]*{inner})[^>]*>.*?</\1>", html, re.DOTALL)


def _note(problem: Problem) -> str:
    place = f"{problem.file}:{problem.line}:{problem.column}"
    return (
        '\n<div class="sh-finding" role="note" aria-label="For the coach" data-search-exclude>'
        f"<p><b>{SEVERITIES[problem.severity]}.</b> {escape(problem.text)} "
        f"<code>{escape(place)}</code></p></div>\n"
    )


class _Places:
    """Which pages show what stands at a place of a file."""

    def __init__(self, desk: Desk, by_hand: Mapping[str, str]) -> None:
        written = desk.written
        self._programs = {program.id: program for program in desk.worked.programs}
        self._pages: dict[str, str] = dict(by_hand)
        self._waves: dict[str, tuple[WorkedProgram, File[Wave]]] = {}
        files: list[Source] = []
        for key, exercise in written.exercises.items():
            self._pages[exercise.source.file] = f"exercises/{key}.md"
            files.append(exercise.source)
        for key, program in written.programs.items():
            self._pages[program.source.file] = overview_uri(self._programs[key])
            files.append(program.source)
            for wave in written.waves_of(key):
                self._waves[wave.source.file] = (self._programs[key], wave)
                files.append(wave.source)
        if written.room is not None:
            self._pages[written.room.source.file] = "room.md"
            files.append(written.room.source)
        self._files = {source.file: source for source in files}
        self._named = dict(_named(desk))

    def of(self, finding: Finding) -> list[Place]:
        """Pages of a finding: those of what it is about, else of where it is written."""
        keys = [(finding.program, finding.at.what, week) for week in finding.at.weeks]
        found = [self._named[key] for key in keys if key in self._named]
        return found or self._at(finding.spot.source.file, finding.spot.path, finding.at.weeks)

    def of_problem(self, problem: Problem) -> list[Place]:
        """Pages of what stands at a problem's line and column."""
        source, place = self._files.get(problem.file), (problem.line, problem.column)
        marks: list[Path] = []
        for table in (source.marks, source.key_marks) if source else ():
            marks += (path for path, mark in table.items() if (mark.line, mark.column) == place)
        return self._at(problem.file, max(marks, key=len, default=()), ())

    def _at(self, file: str, path: Path, weeks: tuple[int, ...]) -> list[Place]:
        if file not in self._waves:
            return [(self._pages.get(file, HOME), "")]
        program, wave = self._waves[file]
        match path:
            case ("sessions", str(session), "slots", int(index), *inner) if (
                session in wave.model.sessions
            ):
                order = wave.model.sessions[session].slots[index].order
                said = [int(one) for one in inner[1:2] if inner[0] == "weeks"]
                every = weeks or said or wave.model.weeks
                return [(session_uri(program, w, session), f"slot-{order.lower()}") for w in every]
            case ("sessions", str(session), *_):
                return [(session_uri(program, w, session), "") for w in weeks or wave.model.weeks]
        if weeks:
            return [(week_uri(program, week), "") for week in weeks]
        return [(overview_uri(program), "")]


def _named(desk: Desk) -> Iterator[tuple[tuple[str, str, int], Place]]:
    """Slots, sessions and weeks by program, name and week, with the pages that show them."""
    for week in desk.weeks:
        yield (
            (week.program.id, week.at.what, week.number),
            (week_uri(week.program, week.number), ""),
        )
    for session in desk.sessions:
        uri = session_uri(session.program, session.number, session.session.id)
        yield (session.program.id, session.at.what, session.number), (uri, "")
    for slot in desk.slots:
        uri = session_uri(slot.program, slot.number, slot.session.id)
        place = (uri, f"slot-{slot.slot.order.lower()}")
        yield (slot.program.id, slot.at.what, slot.number), place
