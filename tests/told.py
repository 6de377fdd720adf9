"""What the findings of a case say in all, in a form that can stand in a file."""

from pathlib import Path
from typing import Any

import desks
from strength_handbook.review.finding import Edit, Finding

TOLD = Path(__file__).parent / "review" / "told.yml"
"""What each case that fires is told, whole; `review/tell_again.py` writes it."""


def case_name(case: desks.Case, cases: list[desks.Case]) -> str:
    """A case's check and kind, and its place among the cases of these."""
    same = [one for one in cases if (one.slug, one.kind) == (case.slug, case.kind)]
    return f"{case.slug}-{case.kind}-{same.index(case)}"


def told(found: list[Finding]) -> list[dict[str, Any]]:
    """Of each finding what it is about, its text, and the change: in words, and what to write."""
    return [_told(one) for one in found]


def _told(finding: Finding) -> dict[str, Any]:
    said: dict[str, Any] = {"at": finding.at.text, "text": finding.text}
    if finding.change is not None:
        said["change"] = finding.change.words
    if finding.edits:
        said["write"] = [_written(edit) for edit in finding.edits]
    return said


def _written(edit: Edit) -> str:
    place = ".".join(map(str, edit.path))
    return f"{edit.file} {place}: {'(nothing)' if edit.remove else edit.value}"
