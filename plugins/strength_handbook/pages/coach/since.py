"""The coach's draft page of what changed since an earlier publication of a program."""

from typing import Any

from strength_handbook.pages.change_words import HEADINGS, said, where
from strength_handbook.pages.coach.frame import coach_page, coach_uri, head_of
from strength_handbook.pages.member_lines import member_lines
from strength_handbook.pages.page import Heading, Page
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.record.change import Changes


def since_page(program: WorkedProgram, changes: Changes | None, units: str) -> Page | None:
    """Every change of a program, each with where; None where nothing is compared or different.

    Args:
        program: the program as it is now.
        changes: what is different, or None where there is nothing to compare with.
        units: of the room.
    """
    if changes is None or not changes.items:
        return None
    groups: dict[str, list[dict[str, Any]]] = {}
    for item in changes.items:
        line = {"where": where(item), "said": said(item, units)}
        groups.setdefault(HEADINGS[item.kind], []).append(line)
    anchors = {title: title.lower().replace(",", "").replace(" ", "-") for title in groups}
    return coach_page(
        coach_uri("since", program.id),
        f"Changes since version {changes.before}" if changes.before else "Changes",
        "coach_since.html",
        {
            **head_of(program),
            "unmarked": bool(changes.unmarked),
            "members": member_lines(changes),
            "groups": [(anchors[title], title, lines) for title, lines in groups.items()],
        },
        says=f"What is different in {program.program.program} since the last publication",
        headings=tuple(Heading(2, anchors[title], title) for title in groups),
    )
