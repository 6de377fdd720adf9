"""Doors and variants on a page: what to do instead, worked out for the day."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from strength_handbook.dose.printing import notation
from strength_handbook.model.loading import OnPivot
from strength_handbook.model.printed import percent
from strength_handbook.pages.dose_html import dose_html
from strength_handbook.pages.load_html import load_line
from strength_handbook.pages.lookup import example_lines
from strength_handbook.pages.page import link
from strength_handbook.pages.phone_html import load_data
from strength_handbook.pages.render import safe
from strength_handbook.plan.doors import DoorPlan, doors_of
from strength_handbook.plan.remembered import remembered
from strength_handbook.plan.tables import exercise_table
from strength_handbook.plan.variants import WorkedVariant, session_variants
from strength_handbook.plan.worked import Use, Worked, WorkedProgram, WorkedSession, WorkedSlot


def door_rows(
    worked: Worked, program: WorkedProgram, slot: WorkedSlot, url: str, *, examples: bool = True
) -> list[dict[str, Any]]:
    """The five doors of a slot, ready for the template.

    Args:
        worked: everything.
        program: the program of the slot.
        slot: the slot.
        url: address of the page.
        examples: with the loads of the example lifters.
    """
    plans = doors_of(worked, program, slot)
    return [_row(worked, plan, url, examples=examples) for plan in plans]


def _row(worked: Worked, plan: DoorPlan, url: str, *, examples: bool) -> dict[str, Any]:
    words = _look_up_words(worked, plan) if plan.look_up else ""
    there = link(url, f"exercises/{plan.to}/") if plan.to else ""
    loads = _loads(worked, plan) if examples else ""
    return {
        "key": plan.key,
        "name": plan.name,
        "how": plan.how,
        "target": plan.exercise.name if plan.to else "",
        "link": there,
        # Today's own dose stands right above.
        "dose": _dose(plan) if plan.changed else "",
        "note": _note(plan, loads),
        "loads": safe(loads),
        "look_up": link(url, f"exercises/{plan.to}/#by-body-weight") if words else "",
        "look_up_words": words,
    }


def _look_up_words(worked: Worked, plan: DoorPlan) -> str:
    """What the other exercise's page has to offer; empty where it has no table."""
    loading = plan.exercise.load
    if exercise_table(loading, plan.scale, worked.book.room.units) is not None:
        return "Starting loads"
    return "Loads in the hands" if isinstance(loading, OnPivot) else ""


_AS_TODAY = ("position", "push", "pause", "range_", "breathe", "intent", "height", "note")
"""What stands with today's dose and need not be said again with the same exercise."""


def _dose(plan: DoorPlan) -> str:
    """The dose of a door that is another than today's, as it is written."""
    if plan.dose is None:
        return ""
    if plan.to is not None:
        return notation(plan.dose)
    same = [name for name in _AS_TODAY if plan.own is None or getattr(plan.own, name) is None]
    said = plan.dose.said.model_copy(update=dict.fromkeys(same))
    return notation(replace(plan.dose, said=said))


def _note(plan: DoorPlan, loads: str) -> str:
    if plan.share is None:
        return "By effort, about:" if plan.estimate and loads else ""
    return "Same load." if plan.share == 100 else f"{percent(plan.share)} of today's load."


def _loads(worked: Worked, plan: DoorPlan) -> str:
    """Loads of the example lifters in one line; once for all where they are the same.

    Empty where nothing is different from today.
    """
    if plan.share == 100 and not plan.changed:
        return ""
    units, show_from = worked.book.room.units, worked.book.rule("show-planned-from")
    lines = {
        # The plan that a share comes to is no news: only what can be put on is printed.
        name: load_line(load, plan.scale, units, 100 if plan.share else show_from)
        for name, load in plan.loads.items()
    }
    same = set(lines.values())
    if len(lines) > 1 and len(same) == 1:
        return f"All: {same.pop()}"
    return "; ".join(f"{name}: {line}" for name, line in lines.items())


def less_than_written(worked: Worked, uses: Iterable[Use]) -> dict[str, str]:
    """What doors come to that ask less than is written, because these weeks' work is less.

    Empty where it is not the same in all weeks: then it stands with their sessions.
    """
    found: dict[str, set[str]] = {}
    lowered = set()
    for use in uses:
        for plan in doors_of(worked, use.program, use.slot):
            if plan.dose is not None:
                found.setdefault(plan.key, set()).add(_dose(plan))
                lowered |= {plan.key} if plan.lowered else set()
    return {key: "".join(found[key]) if len(found[key]) == 1 else "" for key in sorted(lowered)}


@remembered(512)  # the page and what session mode reads ask for the same session
def worked_variants(
    worked: Worked, program: WorkedProgram, session: WorkedSession
) -> tuple[WorkedVariant, ...]:
    """Every variant that a session offers, in the order of the page."""
    return session_variants(worked.book, program.program, session)


def variant_title(one: WorkedVariant) -> str:
    """When a variant is meant, and how long it takes."""
    return f"{one.variant.when}: about {round(one.minutes.total)} min"


def variant_rows(
    worked: Worked, program: WorkedProgram, session: WorkedSession
) -> list[dict[str, Any]]:
    """The variants of a session, ready for the template."""
    book = worked.book
    today = {slot.order: slot.dose for slot in session.slots}

    def as_today(slot: WorkedSlot) -> bool:
        """True where the load stands with the session's own slot already."""
        own = today[slot.order]
        return own.load == slot.dose.load and own.top == slot.dose.top

    return [
        {
            "title": variant_title(one),
            "slots": [
                {
                    "order": slot.order,
                    "name": slot.exercise.name,
                    "notation": dose_html(slot.dose),
                    "mine": "" if as_today(slot) else load_data(worked, slot),
                    # Loads stand with the session's own slots unless they differ.
                    "examples": []
                    if as_today(slot)
                    else [(name, safe(line)) for name, line in example_lines(slot, book)],
                }
                for slot in one.slots
            ],
            "left_out": [f"{slot.order} {slot.exercise.name}" for slot in one.left_out],
        }
        for one in worked_variants(worked, program, session)
    ]
