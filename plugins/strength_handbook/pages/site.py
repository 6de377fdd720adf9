"""All pages of the handbook, in reading order."""

import json
from collections.abc import Mapping

from strength_handbook.pages.after_pages import missed_page, test_day_page
from strength_handbook.pages.cards_page import cards_pages
from strength_handbook.pages.exercise_page import exercise_page
from strength_handbook.pages.lists import (
    exercise_list,
    home_page,
    room_page,
    this_week,
    words_page,
)
from strength_handbook.pages.my_log_page import my_log_page
from strength_handbook.pages.my_numbers_page import my_numbers_page
from strength_handbook.pages.numbers_page import numbers_page
from strength_handbook.pages.page import Chapter, Page, Site
from strength_handbook.pages.phone_html import LISTS, lists_script
from strength_handbook.pages.safety_page import safety_page
from strength_handbook.pages.session_page import emergency_panel, session_page
from strength_handbook.pages.week_page import overview_page, overview_uri, week_page
from strength_handbook.plan.change import Changes
from strength_handbook.plan.data import program_data
from strength_handbook.plan.worked import Worked


def write_pages(worked: Worked, since: Mapping[str, Changes] | None = None, base: str = "") -> Site:
    """The whole handbook: pages, data files and sidebar chapters.

    Args:
        worked: the programs.
        since: what changed since an earlier publication, by program.
        base: address of the site, for the codes on its cards; empty where it is not known.
    """
    room = worked.book.room
    since = since or {}
    pages: list[Page] = [home_page(worked, since)]
    chapters = []
    for program in worked.programs:
        pages.append(overview_page(program, since.get(program.id)))
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
    pages += [my_numbers_page(worked), my_log_page(worked), room_page(worked)]
    pages += cards_pages(worked, base)
    pages += [numbers_page(worked), words_page(), safety_page(worked)]
    data = {
        f"data/{program.id}.json": json.dumps(
            program_data(worked, program), ensure_ascii=False, indent=1, allow_nan=False
        )
        + "\n"
        for program in worked.programs
    }
    data[LISTS] = lists_script(worked)
    return Site(
        title=room.gym,
        pages=tuple(pages),
        data=data,
        chapters=tuple(chapters),
        inserts={
            "gym": lambda _: room.gym,
            "this-week": lambda url: this_week(worked, url, since),
            "emergency": lambda _: emergency_panel(room.emergency),
        },
    )
