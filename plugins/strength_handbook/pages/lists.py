"""Home, list of exercises, room and words: the pages that lead to the others."""

from collections import Counter
from collections.abc import Mapping
from typing import Any

from strength_handbook.figures.sheet import figure_words
from strength_handbook.model.printed import mass
from strength_handbook.model.room import Room
from strength_handbook.model.words import CAUTIONS
from strength_handbook.pages.exercise_filters import filters, left_out_by
from strength_handbook.pages.figure_file import figure_address
from strength_handbook.pages.glossary import GLOSSARY, notation
from strength_handbook.pages.member_lines import what_changed
from strength_handbook.pages.page import Heading, Page, link, url_of
from strength_handbook.pages.render import render, safe
from strength_handbook.pages.room_resistance import room_resistance
from strength_handbook.pages.session_page import exercise_link
from strength_handbook.pages.tools_html import today_values
from strength_handbook.pages.week_page import overview_uri, waves_html, week_links
from strength_handbook.plan.alone import alone_here
from strength_handbook.plan.worked import Worked
from strength_handbook.record.change import Changes


def this_week(worked: Worked, url: str, since: Mapping[str, Changes] | None = None) -> str:
    """The list of weeks and sessions of every program, and what changed, for the home page."""
    return render(
        "this_week.html",
        {
            "programs": [
                {
                    "title": program.program.program,
                    "link": link(url, url_of(overview_uri(program))),
                    "id": program.id,
                    "waves_list": week_links(program, url),
                    "wave_chart": waves_html(program),
                    "today": today_values(program, url),
                    "changed": what_changed((since or {}).get(program.id)),
                }
                for program in worked.programs
            ],
        },
    )


def home_page(worked: Worked, since: Mapping[str, Changes] | None = None) -> Page:
    """The home page, where no `handbook/index.md` is written."""
    room = worked.book.room
    html = render(
        "home.html",
        {
            "gym": room.gym,
            "group": room.group,
            "this_week": this_week(worked, "", since),
            "my_numbers": link("", "my-numbers/"),
            "my_log": link("", "my-log/"),
            "exercises": link("", "exercises/"),
            "safety": link("", "safety/"),
        },
    )
    return Page("index.md", room.gym, html, in_nav=True, description=f"Training at {room.gym}")


def exercise_list(worked: Worked) -> Page:
    """All exercises by movement."""
    url = "exercises/"
    groups: dict[str, list[dict[str, Any]]] = {}
    for key, exercise in sorted(worked.book.exercises.items(), key=lambda item: item[1].name):
        groups.setdefault(exercise.pattern.value.replace("-", " "), []).append(
            {
                "name": exercise.name,
                "figure": link(url, figure_address(key)) if exercise.figure else "",
                "shows": figure_words(exercise.figure, exercise.name) if exercise.figure else "",
                "also": exercise.also,
                "link": exercise_link(url, key),
                "used": key in worked.uses,
                "alone": alone_here(exercise, worked.book.room).answer == "fine",
                "not_for": left_out_by(worked.book.room, exercise),
            }
        )
    order = sorted(groups)
    html = render(
        "exercises.html",
        {
            "groups": [(name, groups[name]) for name in order],
            "filters": filters(worked.book.room),
        },
    )
    headings = tuple(Heading(2, name.replace(" ", "-"), name.capitalize()) for name in order)
    return Page(
        "exercises/index.md", "Exercises", html, headings, in_nav=True,
        description="Every exercise of the handbook, by movement",
    )  # fmt: skip


def room_page(worked: Worked) -> Page:
    """What is in the room."""
    room = worked.book.room
    units = room.units
    part = room_resistance(room)
    plates_title = "Plates at each rack" if room.racks else "Plates"
    html = render(
        "room.html",
        {
            "room": room,
            "resistance": safe(part.html),
            "units": units,
            "plates_title": plates_title,
            "plates": [
                {"mass": mass(plate.mass.grams, plate.mass.unit), "pairs": plate.pairs}
                for plate in room.plates
            ],
            "loose": [
                {"mass": mass(plate.mass.grams, plate.mass.unit), "pairs": plate.pairs}
                for plate in room.loose_plates
            ],
            "weights": [
                {"name": weights.name, "note": weights.note, "masses": _masses(room, key)}
                for key, weights in room.hand_weights.items()
            ],
        },
    )
    headings = tuple(
        Heading(2, anchor, title)
        for anchor, title in (("bars", "Bars"), ("plates", plates_title), *part.headings,
                              ("held", "Held in the hand"), ("rest", "Everything else"))
    )  # fmt: skip
    return Page("room.md", "The room", html, headings, in_nav=True,
                description=f"What is in {room.gym}, with counts")  # fmt: skip


def _masses(room: Room, key: str) -> str:
    """Every mass of a kind of hand weight, with how many where it isn't a pair."""
    counts: Counter[tuple[int, str]] = Counter()
    for row in room.hand_weights[key].masses:
        for one in row.each():
            counts[(one.grams, one.unit)] += row.count
    return ", ".join(
        mass(grams, unit) + ("" if count == 2 else f" (×{count})")
        for (grams, unit), count in sorted(counts.items())
    )


def words_page(worked: Worked) -> Page:
    """The notation and the words of the handbook."""
    written = notation(worked.book.room.units)
    html = render("words.html", {"notation": written, "glossary": GLOSSARY, "cautions": CAUTIONS})
    headings = (Heading(2, "notation", "How a dose is written"), Heading(2, "words", "Words"))
    return Page("words.md", "Words", html, headings, in_nav=True,
                description="How a dose is written, and what the words mean", boost=3)  # fmt: skip
