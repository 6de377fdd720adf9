"""What the printer puts on cards and sessions: the same load and the same plates as everywhere."""

import re
from collections.abc import Callable, Iterator
from io import BytesIO

import pytest
from playwright.sync_api import Page
from pypdf import PdfReader

from phones import Gym, Opened
from stacks import printed, stacks_of
from strength_handbook.model.loading import OnBar
from strength_handbook.model.printed import bare_mass, percent
from strength_handbook.pages.cards.card import parts_of
from strength_handbook.pages.load_html import plates
from strength_handbook.plan.tables import base_strip
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book
from thorough import LONG

pytestmark = pytest.mark.browser

_ROW = re.compile(r"(\d[\d.]*) (.+)")
CARDS = slice(None) if LONG else slice(0, 1)
SESSIONS = slice(None) if LONG else slice(None, None, 9)


@pytest.fixture(scope="module")
def worked(gym: Gym) -> Worked:
    book = read_book(gym.programs).book
    assert book is not None
    return work_out(book)


def papers(page: Page) -> list[str]:
    """The text of every sheet, in the order of the page."""
    pdf = PdfReader(BytesIO(page.pdf(prefer_css_page_size=True)))
    return [sheet.extract_text().replace("\u00a0", " ") for sheet in pdf.pages]


def rows(text: str) -> Iterator[tuple[str, str]]:
    """Lines that begin with a number: the first number, and all the rest."""
    for line in text.splitlines():
        if found := _ROW.fullmatch(line.strip()):
            yield found[1], " ".join(found[2].split())


TABLES = """one => [...one.querySelectorAll('table')].map(table => ({
    best: table.caption.innerText,
    shares: [...table.tHead.rows[0].cells].slice(1).map(th => th.innerText.split('\\n')[1]),
    how: /plates/.test(table.tHead.innerText),
    rows: [...table.tBodies[0].rows].map(row => [...row.cells].map(cell => cell.innerText)) }))"""


def test_a_printed_card_has_the_loads_and_plates_of_the_scale(
    phone: Callable[..., Opened], gym: Gym, worked: Worked
) -> None:
    opened, compared = phone(scripts=False, base=gym.base), 0
    whole, units = stacks_of(worked), worked.book.room.units
    for part in [*parts_of(worked)][CARDS]:
        page = opened.go(part.url)
        cards = page.locator(".sh-station").all()
        lifts = {worked.book.exercises[lift].name: (lift, uses) for lift, uses in part.uses(worked)}
        for card, text in zip(cards, papers(page), strict=True):
            lift, uses = lifts[card.locator("h2").inner_text().partition(":")[0]]
            bar = isinstance(worked.book.exercises[lift].load, OnBar)
            shares = {percent(use.slot.percent): use.slot for use in uses if use.slot.percent}
            seen = [*rows(text)]
            for table in card.evaluate(TABLES):
                for first, *cells in table["rows"]:
                    # What is printed is what the page says,
                    assert (first, " ".join(filter(None, cells))) in seen, (part.url, lift, cells)
                    loads = cells[:-1] if table["how"] else cells
                    # the loads are those of everybody's best,
                    for share, load in zip(table["shares"], loads, strict=False):
                        slot = shares.get(share)
                        if slot is not None and slot.base and table["best"] == slot.base.name:
                            strip = base_strip(slot.base, slot.scale, slot.percent or 0)
                            grams = {bare_mass(v, units): cell.grams for v, cell in strip.rows}[
                                first
                            ]
                            assert load == ("–" if grams is None else bare_mass(grams, units))
                            compared += 1
                    # and the plates are those of the heaviest.
                    known = [load for load in loads if load != "–"]
                    if bar and table["how"] and known:
                        heaviest = max(known, key=float)
                        assert printed(cells[-1]) == whole[lift, heaviest], (part.url, lift, first)
                        compared += 1
    assert compared > 50


def test_a_printed_session_has_the_loads_and_plates_of_the_scale(
    phone: Callable[..., Opened], gym: Gym, worked: Worked
) -> None:
    opened, compared = phone(base=gym.base), 0
    every = [(p, w, s) for p in worked.programs for w in p.weeks for s in w.sessions]
    for program, week, session in every[SESSIONS]:
        page = opened.go(f"{program.id}/week-{week.week:02d}/{session.id}/")
        # A long row of plates takes two lines.
        text = " ".join(" ".join(papers(page)).split())
        for slot in session.slots:
            scale = slot.scale
            if (
                slot.base is None
                or slot.percent is None
                or scale is None
                or slot.on_top is not None
            ):
                continue
            if not isinstance(slot.exercise.load, OnBar):
                continue
            units = worked.book.room.units
            # Every second row of the page's table is printed.
            for value, cell in base_strip(slot.base, scale, slot.percent).rows[::2]:
                if cell.step is None:
                    continue
                how = plates(scale, cell.step, units)
                line = f"{bare_mass(value, units)} {bare_mass(cell.step.grams, units)} {how}"
                assert f" {line} " in text, (week.week, session.id, line)
                compared += 1
    assert compared > 50
