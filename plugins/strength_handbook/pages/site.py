"""All pages of the handbook, in reading order."""

import json

from strength_handbook.pages.after_pages import missed_page, test_day_page
from strength_handbook.pages.cards_page import cards_page
from strength_handbook.pages.exercise_page import exercise_page
from strength_handbook.pages.lists import (
    exercise_list,
    home_page,
    room_page,
    this_week,
    words_page,
)
from strength_handbook.pages.numbers_page import numbers_page
from strength_handbook.pages.page import Chapter, Page, Site
from strength_handbook.pages.session_page import emergency_panel, session_page
from strength_handbook.pages.week_page import overview_page, overview_uri, week_page
from strength_handbook.plan.data import program_data
from strength_handbook.plan.worked import Worked


def write_pages(worked: Worked) -> Site:
    """The whole handbook: pages, data files and sidebar chapters."""
    room = worked.book.room
    pages: list[Page] = [home_page(worked)]
    chapters = []
    for program in worked.programs:
        pages.append(overview_page(program))
        in_nav = [overview_uri(program)]
        for week in program.weeks:
            page = week_page(worked, program, week)
            pages.append(page)
            in_nav.append(page.uri)
            pages += [session_page(worked, program, week, session) for session in week.sessions]
        pages += [missed_page(program), test_day_page(worked, program)]
        chapters.append(Chapter(program.program.program, tuple(in_nav)))
    pages.append(exercise_list(worked))
    by_name = sorted(worked.book.exercises, key=lambda key: worked.book.exercises[key].name)
    pages += [exercise_page(worked, key) for key in by_name]
    pages += [room_page(worked), cards_page(worked), numbers_page(worked), words_page()]
    data = {
        f"data/{program.id}.json": json.dumps(
            program_data(worked.book, program), ensure_ascii=False, indent=1, allow_nan=False
        )
        + "\n"
        for program in worked.programs
    }
    return Site(
        title=room.gym,
        pages=tuple(pages),
        data=data,
        chapters=tuple(chapters),
        inserts={
            "gym": lambda _: room.gym,
            "this-week": lambda url: this_week(worked, url),
            "emergency": lambda _: emergency_panel(room.emergency),
        },
    )
