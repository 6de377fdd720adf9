"""One mistake, one finding: what only echoes a slip, and what a slot says in several weeks."""

from collections.abc import Iterable, Iterator

from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding
from strength_handbook.review.slips import slips

SLIP = "typing-slip"
"""The check that tells slips; it is never an echo."""
DRAFT = "draft"
"""The check that tells exercises which are only begun."""
_MINUTES = "session-long"
"""A check that looks at the weeks beside a slip instead, so that what is accepted stays so."""


def without_echoes(desk: Desk, findings: Iterable[Finding]) -> Iterator[Finding]:
    """Findings but those that stand in a dose with a slip, or are only about it or its session."""
    doses = {(at.wave.file, at.dose_path) for at in slips(desk)}
    slots = {(at.program.id, at.at.what, at.number) for at in slips(desk)}
    sessions = {(at.program.id, at.session.id, at.number) for at in slips(desk)}
    for finding in findings:
        place = (finding.spot.source.file, finding.spot.path[:6])
        weeks = finding.at.weeks
        about = {(finding.program, finding.at.what, week) for week in weeks}
        of_session = finding.slug != _MINUTES and about <= sessions
        echo = place in doses or (bool(weeks) and (about <= slots or of_session))
        if finding.slug == SLIP or not echo:
            yield finding


def weeks_together(findings: Iterable[Finding]) -> Iterator[Finding]:
    """Findings that say the same of one thing in several weeks as one, at the first of them."""
    merged: dict[tuple[object, ...], Finding] = {}
    for finding in findings:
        key: tuple[object, ...] = (
            finding.slug, finding.severity, finding.program, finding.at.what, finding.text,
            finding.spot.source.file,
        )  # fmt: skip
        if not finding.at.weeks:  # about no week: each place is a finding of its own
            key = (*key, finding.spot.place)
        merged[key] = merged[key].and_also(finding) if key in merged else finding
    yield from merged.values()
