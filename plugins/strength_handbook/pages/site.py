"""All pages of the handbook, in reading order."""

import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from html import escape
from typing import Any

from strength_handbook.pages.cards.page import cards_pages
from strength_handbook.pages.day_of_tests import day_of_tests_page, day_of_tests_uri
from strength_handbook.pages.exercise_page import exercise_page
from strength_handbook.pages.figure_file import (
    WORDS,
    figure_address,
    figure_file,
    figures_script,
)
from strength_handbook.pages.inserts import Insert
from strength_handbook.pages.lists import (
    exercise_list,
    home_page,
    room_page,
    this_week,
    words_page,
)
from strength_handbook.pages.loads_page import loads_page
from strength_handbook.pages.media_html import media_files
from strength_handbook.pages.missed_page import missed_page, missed_uri
from strength_handbook.pages.my_log_page import my_log_page
from strength_handbook.pages.my_numbers_page import my_numbers_page
from strength_handbook.pages.numbers_page import numbers_page
from strength_handbook.pages.page import Chapter, Name, Page, Site
from strength_handbook.pages.phone_html import LISTS, lists_script
from strength_handbook.pages.safety_page import safety_page
from strength_handbook.pages.session_page import emergency_panel, session_page, week_uri
from strength_handbook.pages.spellings_html import spellings_list
from strength_handbook.pages.use_html import uses_address, uses_script
from strength_handbook.pages.week_page import overview_page, overview_uri, week_page
from strength_handbook.plan.worked import Worked, WorkedProgram
from strength_handbook.record.change import Changes
from strength_handbook.record.data import program_data


@dataclass(frozen=True)
class SitePart:
    """One page, or several that are made together.

    Attributes:
        name: what it is.
        make: makes the pages.
    """

    name: Name
    make: Callable[[], Sequence[Page]]


def write_pages(worked: Worked, since: Mapping[str, Changes] | None = None, base: str = "") -> Site:
    """The whole handbook: pages, data files and sidebar chapters.

    Args:
        worked: the programs.
        since: what changed since an earlier publication, by program.
        base: address of the site, for the codes on its cards; empty where it is not known.
    """
    made = {part.name: tuple(part.make()) for part in site_parts(worked, since, base)}
    return Site(
        title=worked.book.room.gym,
        paper=worked.book.room.printed_on(),
        pages=tuple(page for pages in made.values() for page in pages),
        data={address: make() for address, make in data_files(worked).items()},
        chapters=chapters(worked),
        inserts=inserts(worked, since),
        files=media_files(worked),
        parts={name: tuple(page.uri for page in pages) for name, pages in made.items()},
    )


def site_parts(
    worked: Worked, since: Mapping[str, Changes] | None = None, base: str = ""
) -> Iterator[SitePart]:
    """All pages in reading order, each to be made when it is wanted; arguments as above."""
    since = since or {}

    def one(name: Name, page: Callable[..., Page], *about: Any) -> SitePart:
        return SitePart(name, lambda: (page(*about),))

    yield one(("home",), home_page, worked, since)
    for program in worked.programs:
        yield one(("overview", program.id), overview_page, program, since.get(program.id))
        for week in program.weeks:
            named = (program.id, week.week)
            yield one(("week", *named), week_page, worked, program, week)
            for session in week.sessions:
                about = (worked, program, week, session)
                yield one(("session", *named, session.id), session_page, *about)
                yield one(("loads", *named, session.id), loads_page, *about)
        yield one(("missed", program.id), missed_page, program)
        yield one(("tests", program.id), day_of_tests_page, worked, program)
    yield one(("exercises",), exercise_list, worked)
    for key in sorted(worked.book.exercises, key=lambda key: worked.book.exercises[key].name):
        yield one(("exercise", key), exercise_page, worked, key)
    yield one(("my numbers",), my_numbers_page, worked)
    yield one(("my log",), my_log_page, worked)
    yield one(("room",), room_page, worked)
    yield SitePart(("cards",), lambda: cards_pages(worked, base))
    yield one(("numbers",), numbers_page, worked)
    yield one(("words",), words_page, worked)
    yield one(("safety",), safety_page, worked)


def data_files(worked: Worked) -> dict[str, Callable[[], str]]:
    """The data files by address, each to be made when it is wanted."""

    def data(program: WorkedProgram) -> Callable[[], str]:
        return lambda: (
            json.dumps(program_data(worked, program), ensure_ascii=False, indent=1, allow_nan=False)
            + "\n"
        )

    programs = {f"data/{program.id}.json": data(program) for program in worked.programs}
    uses = {uses_address(key): partial(uses_script, worked, key) for key in sorted(worked.uses)}
    figures = {
        figure_address(key): partial(figure_file, exercise)
        for key, exercise in sorted(worked.book.exercises.items())
        if exercise.figure is not None
    }
    words = {WORDS: partial(figures_script, worked)}
    return {**programs, LISTS: lambda: lists_script(worked), **uses, **words, **figures}


def chapters(worked: Worked) -> tuple[Chapter, ...]:
    """The sidebar's chapters: each program with its weeks, what to do after missing some, tests."""
    return tuple(
        Chapter(
            program.program.program,
            (
                overview_uri(program),
                *(week_uri(program, week.week) for week in program.weeks),
                missed_uri(program),
                day_of_tests_uri(program),
            ),
        )
        for program in worked.programs
    )


def inserts(worked: Worked, since: Mapping[str, Changes] | None = None) -> dict[str, Insert]:
    """The parts that hand-written pages may take in, by name."""
    room = worked.book.room
    return {
        "gym": lambda _: escape(room.gym, quote=False),
        "this-week": lambda url: this_week(worked, url, since or {}),
        "emergency": lambda _: emergency_panel(room.emergency),
        "spellings": lambda _: spellings_list(),
    }
