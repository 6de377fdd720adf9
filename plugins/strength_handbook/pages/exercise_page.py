"""The page of one exercise, in three layers: glance, read, study."""

from collections.abc import Mapping
from typing import Any

from strength_handbook.dose.printing import partial_notation
from strength_handbook.figures.sheet import figure_svg
from strength_handbook.model.doors import HURTS
from strength_handbook.model.exercise import IF_IT_STAYS, DraftExercise, Exercise
from strength_handbook.model.going import Going
from strength_handbook.model.loading import (
    BodyWeightLift,
    ByEffort,
    Endurance,
    InHands,
    OnBar,
    OnCarrier,
    OnMachine,
)
from strength_handbook.model.printed import clock, mass, percent
from strength_handbook.pages.cards.page import card_codes
from strength_handbook.pages.instead_html import less_than_written
from strength_handbook.pages.load_html import table_html
from strength_handbook.pages.media_html import media_html
from strength_handbook.pages.page import Heading, Page, link, url_of
from strength_handbook.pages.render import render, safe
from strength_handbook.pages.resistance_html import resistance_html
from strength_handbook.pages.session_page import exercise_link
from strength_handbook.pages.set_up_fields import set_up_fields
from strength_handbook.pages.use_html import use_html, uses_address, uses_by_session
from strength_handbook.pages.working_html import working_html
from strength_handbook.plan.alone import ANSWERS, alone_here
from strength_handbook.plan.doors import NAMES, STOP
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.tables import Table, exercise_table
from strength_handbook.plan.worked import Use, Worked
from strength_handbook.workings.tables import table_working
from strength_handbook.workings.working import rounding_rule

HEADINGS = (
    ("today", "In the program"),
    ("by-body-weight", "{loads}"),
    ("set-up", "Set up"),
    ("cues", "Cues"),
    ("stop", "Stop"),
    ("cautions", "Cautions"),
    ("help", "Spotting, alone, breathing"),
    ("instead", "Instead"),
    ("faults", "Faults and fixes"),
    ("why", "Why, and what works"),
)


def exercise_page(worked: Worked, key: str) -> Page:
    """One exercise page."""
    exercise = worked.book.exercises[key]
    uri = f"exercises/{key}.md"
    url = url_of(uri)
    units = worked.book.room.units
    uses = worked.uses.get(key, ())
    names = worked.book.room.names()
    alone = alone_here(exercise, worked.book.room)
    table = exercise_table(exercise.load, worked.scales[key], units)
    unweighed = "Pace" if exercise.going is not None else "Loads"
    loads = unweighed if table is None else "Loads by body weight"
    html = render(
        "exercise.html",
        {
            "loads_title": loads,
            "x": exercise,
            "alone": alone,
            "answer": ANSWERS[alone.answer],
            "figure": safe(figure_svg(exercise.figure, exercise.name)) if exercise.figure else "",
            "media": safe(media_html(worked, exercise, url)),
            "key": key,
            "set_up_fields": set_up_fields(exercise, worked.book.room),
            "missing": exercise.missing if isinstance(exercise, DraftExercise) else (),
            "stays": IF_IT_STAYS,
            "pattern": exercise.pattern.value.replace("-", " "),
            "first": use_html(worked, uses[0], url) if uses else "",
            "programs": uses_by_session(uses, url),
            "uses_address": link(url, uses_address(key)),
            "table": safe(_table(exercise, table, units)),
            "table_note": _table_note(exercise, worked.scales[key]),
            "table_working": safe(
                working_html(table_working(exercise.load, worked.scales[key], units), url)
            ),
            "resistance": safe(resistance_html(worked, key)),
            "stations": [names[key] for key in (*exercise.stations, *exercise.uses)],
            "doors": _doors(worked, exercise, url, uses),
            "cautions": exercise.all_cautions(),
            "safety": link(url, "safety/"),
            "list": link(url, "exercises/"),
            "numbers": link(url, "numbers/"),
            "cards": [(title, code, link(url, at)) for title, code, at in card_codes(worked, key)],
            "versions": _versions(uses),
        },
    )
    tags = [exercise.pattern.value.replace("-", " "), exercise.role]
    if alone.answer == "fine":
        tags.append("fine alone")
    return Page(
        uri,
        exercise.name,
        html,
        tuple(Heading(2, anchor, title.format(loads=loads)) for anchor, title in HEADINGS),
        description=f"{exercise.name}: {exercise.why}",
        tags=tuple(tags),
        parent="exercises/index.md",
        boost=2.0,
    )


def _table(exercise: Exercise, table: Table | None, units: str) -> str:
    if table is None:
        return ""
    load = exercise.load
    match table.kind:
        case "carry":
            each = " in each hand" if getattr(load, "hands", None) == 2 else ""
            caption = f"Load{each}, {units}. Columns: percent of body weight."
        case "system":
            caption = (
                f"What to add (+) or take off (−), {units}. Columns: percent of what your body "
                "alone weighs in this lift."
            )
        case "start":
            each = " in each hand" if getattr(load, "hands", None) == 2 else ""
            caption = f"Where to start{each}, {units}, if you have no tested value."
        case _:
            caption = f"What your own body weighs in this lift, {units}."
    return table_html(table, caption, units)


def _table_note(exercise: Exercise, scale: Scale | None) -> list[str]:
    """What stands under the table: what it is made from, how it is rounded, who decides."""
    load = exercise.load
    notes: list[str] = []
    if isinstance(load, OnBar | InHands | OnCarrier) and load.body_mass_shares:
        notes.append("Made from body weight times the percentage.")
    elif isinstance(load, BodyWeightLift):
        notes.append(
            f"Made from {percent(load.share)} of body weight moved ({load.share_source}), times "
            "the percentage, less that share. Help is rounded up to a whole number."
        )
    elif isinstance(load, ByEffort):
        notes.append(load.by)
        if load.share is not None:
            notes.append(f"{percent(load.share)} of body weight moves ({load.share_source}).")
    elif isinstance(load, Endurance):
        notes += _pace_notes(load.going)
    elif isinstance(load, OnMachine):
        notes.append(
            "This machine has its own units. They are not kilograms, and other machines count "
            "differently."
        )
    if load.start is not None and not getattr(load, "body_mass_shares", None):
        start = load.start
        shares = ", ".join(f"{name} {percent(share)}" for name, share in start.shares.items())
        notes.append(
            f"Made from the coach's starting shares ({shares} of body weight at "
            f"{mass(start.at.grams, start.at.unit)}), scaled with body weight to the power "
            f"{start.power:g}."
        )
    if scale is not None:
        notes.append(rounding_rule(scale))
    notes.append("The coach's eye and the effort limit come first.")
    return notes


def _pace_notes(going: Going) -> list[str]:
    """Over what a pace is counted, and how fast the minutes take members to be."""
    if not going.per:
        return ["It is done by time: no pace, no distance."]
    return [
        f"A pace is the time for {going.per}.",
        f"Minutes are reckoned at {clock(going.pace)} for {going.per}: that is nobody's aim.",
    ]


def _doors(
    worked: Worked, exercise: Exercise, url: str, uses: tuple[Use, ...]
) -> list[Mapping[str, Any]]:
    rows: list[Mapping[str, Any]] = []
    less = less_than_written(worked, uses)
    stop = exercise.doors.hurts.stop
    for name, door in exercise.doors.each():
        if stop is not None and name.startswith(HURTS):
            nothing: dict[str, Any] = {
                "target": "",
                "link": "",
                "load": None,
                "dose": "",
            }
            rows.append(nothing | {"name": NAMES[STOP], "how": stop})
            stop = None
        target = worked.book.exercises[door.to] if door.to else None
        dose = partial_notation(door.dose) if door.dose else ""
        rows.append(
            {
                "name": NAMES[name],
                "how": door.how,
                "target": target.name if target else "",
                "link": exercise_link(url, door.to) if door.to else "",
                "load": door.load,
                "dose": less.get(name, dose),
            }
        )
    return rows


def _versions(uses: tuple[Use, ...]) -> list[str]:
    """Versions of the programs that use the exercise."""
    seen: dict[str, None] = {}
    for use in uses:
        program = use.program.program
        until = f", until {program.valid_until}" if program.valid_until else ""
        seen[f"{program.program}, version {program.version}{until}"] = None
    return list(seen)
