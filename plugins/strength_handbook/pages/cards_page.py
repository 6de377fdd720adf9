"""Cards to print on A5 and hang at the stations: one for each exercise of each wave."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import timedelta
from typing import Any

from strength_handbook.model.book import Book
from strength_handbook.model.exercise import Cues
from strength_handbook.model.load import PercentOfSystem
from strength_handbook.model.loading import BodyWeightLift
from strength_handbook.model.program import Base
from strength_handbook.pages.dose_text import notation, partial_notation
from strength_handbook.pages.load_html import DASH, per_side_head, plates
from strength_handbook.pages.lookup import slot_lookup
from strength_handbook.pages.numbers import bare_mass, percent
from strength_handbook.pages.page import Heading, Page
from strength_handbook.pages.render import render, safe
from strength_handbook.pages.session_page import exercise_link
from strength_handbook.plan.tables import Cell, Strip, base_strip
from strength_handbook.plan.worked import Use, Worked, WorkedProgram, WorkedWeek

URL = "cards/"
CUES = 3
ROWS = 16
COLUMNS = 6
"""Loads in one strip; what is more goes into a strip of its own, to stay legible on a phone."""
COLUMNS_WITH_PLATES = 4


@dataclass(frozen=True, eq=False)
class _Part:
    """The weeks of one wave of one program."""

    program: WorkedProgram
    weeks: tuple[WorkedWeek, ...]

    @property
    def id(self) -> str:
        # Two hyphens stand in no id, so joined ids of different parts stay different.
        return f"{self.program.id}--{self.weeks[0].wave_id}"

    def uses(self, worked: Worked) -> Iterator[tuple[str, tuple[Use, ...]]]:
        """Each exercise of the wave, by name, with its uses in order of time."""
        for key in sorted(worked.uses, key=lambda key: worked.book.exercises[key].name):
            found = tuple(use for use in worked.uses[key] if use.week in self.weeks)
            if found:
                yield key, found


def cards_page(worked: Worked) -> Page:
    """All cards, by program and wave."""
    headings: list[Heading] = []
    waves = []
    for part in _parts(worked):
        title = part.weeks[0].wave.wave
        if len(worked.programs) > 1:
            title = f"{part.program.program.program}: {title}"
        cards = [_card(worked, part, key, uses) for key, uses in part.uses(worked)]
        headings.append(Heading(2, part.id, title))
        headings += [Heading(3, card["id"], card["x"].name) for card in cards]
        waves.append({"id": part.id, "title": title, "window": _window(part), "cards": cards})
    html = render("cards.html", {"waves": waves, "units": worked.book.room.units})
    return Page("cards.md", "Cards", html, tuple(headings), in_nav=True,
                description="Cards to print on A5 and hang at the stations")  # fmt: skip


def _parts(worked: Worked) -> Iterator[_Part]:
    for program in worked.programs:
        for wave_id in dict.fromkeys(week.wave_id for week in program.weeks):
            yield _Part(program, tuple(w for w in program.weeks if w.wave_id == wave_id))


def _window(part: _Part) -> str:
    """The weeks of a wave, with their dates where the program has a first Monday."""
    first, last = part.weeks[0].week, part.weeks[-1].week
    weeks = f"week {first}" if first == last else f"weeks {first} to {last}"
    start = part.program.program.start
    if start is None:
        return weeks
    begin, end = start + timedelta(weeks=first - 1), start + timedelta(weeks=last, days=-1)
    return f"{weeks}, {begin} to {end}"


def _card(worked: Worked, part: _Part, key: str, uses: tuple[Use, ...]) -> dict[str, Any]:
    book = worked.book
    exercise = book.exercises[key]
    program = part.program.program
    cautions = exercise.all_cautions()
    return {
        "id": f"{part.id}--{key}",
        "x": exercise,
        "wave": part.weeks[0].wave.wave,
        "window": _window(part),
        "doses": _doses(uses),
        "strips": list(_strips(uses, book.room.units)),
        "how": _how(uses, book.room.units),
        "blanks": _blanks(book, key),
        "cues": _cues(exercise.cues),
        "taken": _taken(book, uses),
        "caution": cautions[0] if exercise.spotting.safeties and cautions else "",
        "link": exercise_link(URL, key),
        "program": program.program,
        "version": program.version,
        "until": program.valid_until,
    }


def _doses(uses: tuple[Use, ...]) -> list[tuple[str, str]]:
    """Week and dose, and the session too where there are several."""
    sessions = {use.session.id for use in uses}
    twice = len({(use.week.week, use.session.id) for use in uses}) < len(uses)
    return [
        (
            f"Week {use.week.week}"
            + (f", {use.session.session.title}" if len(sessions) > 1 else "")
            + (f", {use.slot.order}" if twice else ""),
            notation(use.slot.dose),
        )
        for use in uses
    ]


def _cues(cues: Cues) -> list[str]:
    """The cues said aloud, then others in the order of the lift, to make three."""
    return list(dict.fromkeys((*cues.voice, *cues.spoken())))[:CUES]


def _blanks(book: Book, key: str) -> list[str]:
    """What to write on the card by hand, where the exercise is done in a rack."""
    exercise = book.exercises[key]
    needs = {*exercise.stations, *exercise.uses, getattr(exercise.load, "rack", None)}
    if not needs & book.room.racks.keys():
        return []
    return ["rack hole", "safeties hole"] if exercise.spotting.safeties else ["rack hole"]


def _taken(book: Book, uses: tuple[Use, ...]) -> list[str]:
    """Where to go when the station is taken: the slots' own words, or the exercise's."""
    lines = []
    for use in uses:
        door = use.slot.exercise.doors.taken
        words = use.slot.slot.doors.get("taken")
        if words is None:
            target = f"{book.exercises[door.to].name}: " if door.to else ""
            dose = f" {partial_notation(door.dose)}" if door.dose else ""
            words = f"{target}{door.how}{dose}"
        lines.append(words)
    return list(dict.fromkeys(lines))


def _strip_of(use: Use) -> Strip | None:
    """The strip of one use, where the load is read off from a tested value alone."""
    slot = use.slot
    by_body = isinstance(slot.dose.load, PercentOfSystem)
    if by_body or isinstance(slot.exercise.load, BodyWeightLift):
        return None
    if slot.base is None or slot.percent is None:
        return None
    return base_strip(slot.base, slot.scale, slot.percent)


def _how(uses: tuple[Use, ...], units: str) -> list[str]:
    """How to find the load, as the session pages say it."""
    lines = []
    for use in uses:
        found = slot_lookup(use.slot, units)
        elsewhere = bool(found.table) and _strip_of(use) is None
        where = " The table is on the exercise's page." if elsewhere else ""
        lines.append(found.sentence + where)
    return list(dict.fromkeys(lines))


def _strips(uses: tuple[Use, ...], units: str) -> Iterator[dict[str, Any]]:
    """Strips with a column for each week's load, one or more for each tested value."""
    columns: dict[Base, dict[tuple[int, float], Strip]] = {}
    for use in uses:
        strip = _strip_of(use)
        if strip is not None:
            columns.setdefault(strip.base, {})[(use.week.week, strip.percent)] = strip
    for several in columns.values():
        weeks = [(week, strip) for (week, _), strip in several.items()]
        for start in range(0, len(weeks), COLUMNS):
            yield _strip(weeks[start : start + COLUMNS], units)


def _strip(columns: list[tuple[int, Strip]], units: str) -> dict[str, Any]:
    """One strip with a column for each week and load."""
    strips = [strip for _, strip in columns]
    scale = strips[0].scale
    heaviest = max(range(len(strips)), key=lambda index: strips[index].percent)
    how = per_side_head(scale) if len(columns) <= COLUMNS_WITH_PLATES else ""
    rows = []
    for index in shown_rows(len(strips[0].rows)):
        cells = [strip.rows[index][1] for strip in strips]
        step = cells[heaviest].step
        rows.append(
            {
                "best": bare_mass(strips[0].rows[index][0], units),
                "loads": [_cell(cell, units) for cell in cells],
                "plates": plates(scale, step, units) if how and scale and step else "",
            }
        )
    return {
        "base": strips[0].base.name,
        "heads": [(f"Week {week}", percent(strip.percent)) for week, strip in columns],
        "how": safe(f"{how}, week {columns[heaviest][0]}") if how else "",
        "rows": rows,
    }


def shown_rows(count: int) -> range:
    """Every second row of a strip, at most sixteen: of more, the middle ones.

    >>> list(shown_rows(5)), len(shown_rows(41)), shown_rows(41)[0], shown_rows(41)[-1]
    ([0, 2, 4], 16, 4, 34)
    """
    every_second = range(0, count, 2)
    start = max(0, len(every_second) - ROWS) // 2
    return every_second[start : start + ROWS]


def _cell(cell: Cell, units: str) -> str:
    return DASH if cell.grams is None else bare_mass(cell.grams, units)
