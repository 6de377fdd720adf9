"""The pages for the coach: drafts, which only `mkdocs serve` shows."""

from collections.abc import Mapping, Sequence
from typing import Any, Protocol

from strength_handbook.model.program import Accepted
from strength_handbook.pages.coach.changes import changes_page
from strength_handbook.pages.coach.dates import calendar_page
from strength_handbook.pages.coach.findings import findings_page
from strength_handbook.pages.coach.floor import floor_page
from strength_handbook.pages.coach.frame import TITLE, coach_page, coach_uri
from strength_handbook.pages.coach.handover import handover_page
from strength_handbook.pages.coach.put_out import put_out_page
from strength_handbook.pages.coach.sheet import sheet_page
from strength_handbook.pages.coach.since import since_page
from strength_handbook.pages.coach.stress import stress_page
from strength_handbook.pages.coach.substitutes import substitutes_page
from strength_handbook.pages.coach.teach_in import teach_in_page
from strength_handbook.pages.page import Page, link, url_of
from strength_handbook.reading.problem import Problem
from strength_handbook.record.change import Changes
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding


class Reviewed(Protocol):
    """What came out of reading and checking a folder."""

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Everything to report."""

    @property
    def desk(self) -> Desk | None:
        """What the checks looked at, or None where the files could not be read."""

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What the checks found and nobody has accepted."""

    @property
    def accepted(self) -> tuple[tuple[Finding, Accepted], ...]:
        """What may stand."""


def coach_pages(reviewed: Reviewed, since: Mapping[str, Changes] | None = None) -> tuple[Page, ...]:
    """All pages for the coach, the list of them first.

    They are made from what could be worked out, errors or not. Where nothing could be read, only
    the findings are there.

    Args:
        reviewed: what came out of reading and checking.
        since: what changed since an earlier publication, by program.
    """
    desk, findings, accepted = reviewed.desk, reviewed.findings, reviewed.accepted
    found = findings_page(reviewed.problems, desk, findings, accepted)
    if desk is None:
        return (found,)
    worked, units = desk.worked, desk.book.room.units
    for_all = [found, substitutes_page(worked), calendar_page(worked)]
    programs = [
        (
            program.program.program,
            [
                sheet_page(program, desk.book.room.printed_on()),
                changes_page(program),
                teach_in_page(worked, program),
                floor_page(worked, program),
                put_out_page(worked, program),
                stress_page(worked, program),
                handover_page(desk, program, findings, accepted),
                *filter(
                    None,
                    [since_page(program, (since or {}).get(program.id), units)],
                ),
            ],
        )
        for program in worked.programs
    ]
    rest = [page for _, several in programs for page in several]
    return (_index(for_all, programs), *for_all, *rest)


def _index(for_all: Sequence[Page], programs: Sequence[tuple[str, Sequence[Page]]]) -> Page:
    """The list of all of them, a sentence each."""
    uri = coach_uri("index")
    url = url_of(uri)

    def lines(pages: Sequence[Page]) -> list[dict[str, Any]]:
        return [
            {"title": page.title, "link": link(url, page.url), "says": page.description}
            for page in pages
        ]

    return coach_page(
        uri,
        TITLE,
        "coach_index.html",
        {
            "pages": lines(for_all),
            "programs": [(name, lines(several)) for name, several in programs],
            "tasks": link(url, "for-coaches/"),
        },
        says="Findings, sheets and lists for whoever leads the session",
    )
