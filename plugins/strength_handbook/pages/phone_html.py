"""What a page carries for the member's own phone: small blocks of data, and one file of lists.

The blocks are no program: a browser reads them only where a script of ours asks, and a site's
rules on scripts need no exception for them.
"""

import json
from typing import Any

from markupsafe import Markup

from strength_handbook.pages.render import safe
from strength_handbook.phone.lists import PhoneLists, phone_lists
from strength_handbook.phone.recipes import full_recipe, list_recipe
from strength_handbook.plan.remembered import remembered
from strength_handbook.plan.worked import (
    Worked,
    WorkedProgram,
    WorkedSession,
    WorkedSlot,
    WorkedWeek,
)

LISTS = "data/scales.js"
"""Address of the file of lists. A plain script: it also loads from a file on a disk."""


@remembered(4)  # every page of a site asks
def lists_of(worked: Worked) -> PhoneLists:
    """The lists of a site."""
    return phone_lists(worked)


def lists_script(worked: Worked) -> str:
    """The file of lists, which puts them beside the handbook's scripts."""
    place = "(globalThis.strengthHandbook=globalThis.strengthHandbook||{}).lists"
    return f"{place}={_json(lists_of(worked).data)};\n"


@remembered(4096)  # session page and exercise page ask for the same slot
def dose_data(
    worked: Worked,
    program: WorkedProgram,
    week: WorkedWeek,
    session: WorkedSession,
    slot: WorkedSlot,
) -> Markup:
    """The block of a dose with everything that follows from its load; empty where nothing does."""
    return _block(full_recipe(worked, lists_of(worked), program, week, session, slot))


def load_data(worked: Worked, slot: WorkedSlot) -> Markup:
    """The block of a dose's load alone, for lists of doses."""
    return _block(list_recipe(worked, lists_of(worked), slot))


def _block(recipe: dict[str, Any] | None) -> Markup:
    if not recipe:
        return safe("")
    # No text of a coach's may end the element.
    text = _json(recipe).replace("<", "\\u003c")
    return safe(f'<script type="application/json" class="sh-dose-data">{text}</script>')


def _json(data: Any) -> str:
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
