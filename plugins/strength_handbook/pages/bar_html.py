"""What pages carry for a bar: shared by two or three lifters, and taken apart in the rack."""

import json

from markupsafe import Markup

from strength_handbook.pages.phone_html import lists_of
from strength_handbook.pages.render import safe
from strength_handbook.phone.recipes import Recipe, has_load, list_recipe
from strength_handbook.plan.apart import Stack, stacks_to_hold
from strength_handbook.plan.minutes import work_seconds
from strength_handbook.plan.one_bar import can_share
from strength_handbook.plan.worked import Worked, WorkedSession, WorkedSlot


def bar_attributes(worked: Worked, slot: WorkedSlot) -> Markup:
    """Sets on a bar that can be shared, seconds of one and of an interval; empty for all else."""
    if _shared(worked, slot) is None:
        return safe("")
    every = "" if slot.dose.every is None else f' data-every="{slot.dose.every:g}"'
    work = work_seconds(worked.book, slot.dose)
    return safe(f' data-sets="{slot.dose.sets.high}" data-work="{work:g}"{every}')


def has_shared_bar(worked: Worked, session: WorkedSession) -> bool:
    """True where a session has a bar that can be shared; which numbers that takes, recipes say."""
    return any(_shared(worked, slot) is not None for slot in session.slots)


def _shared(worked: Worked, slot: WorkedSlot) -> Recipe | None:
    """The recipe of a load on a bar that differs from lifter to lifter; else None."""
    if not can_share(slot):
        return None
    recipe = list_recipe(worked, lists_of(worked), slot)
    return recipe if recipe and has_load(recipe) and "f" not in recipe else None


def apart_data(worked: Worked, slot: WorkedSlot) -> tuple[tuple[Stack, ...], str] | None:
    """Stacks whose outer pair asks for a hand, and what comes off first; None without a bar's load.

    It is for the order in which one's own load comes off a bar in the rack.
    """
    stacks = stacks_to_hold(worked, slot.exercise_id)
    recipe = list_recipe(worked, lists_of(worked), slot)
    if stacks is None or not recipe or not has_load(recipe):
        return None
    if slot.on_top is None:
        return stacks, ""
    return stacks, "Bands off first. " if slot.on_top.chain is None else "Chains off first. "


def apart_drawer(worked: Worked, slot: WorkedSlot) -> Markup:
    """An empty drawer for that order."""
    data = apart_data(worked, slot)
    if data is None:
        return safe("")
    held = json.dumps(data[0], separators=(",", ":"))
    return safe(
        f'<details class="sh-heavy" data-sh-apart="{held}" data-first="{data[1]}" hidden>'
        "<summary>Unloading my bar, step by step</summary></details>"
    )
