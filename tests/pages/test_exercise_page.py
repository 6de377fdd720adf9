"""An exercise's page shows one use and links to the others, where all that it leaves out stands."""

import json
import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

import pytest

import demo
from books import base, build_book, exercise, slot
from strength_handbook.pages.instead_html import door_rows
from strength_handbook.pages.lookup import example_lines, slot_lookup
from strength_handbook.pages.method_html import method_html
from strength_handbook.pages.method_parts import only_examples, without_examples
from strength_handbook.pages.page import Site, url_of
from strength_handbook.pages.session_page import loads_uri, session_uri, slot_anchor, use_anchor
from strength_handbook.pages.site import write_pages
from strength_handbook.pages.use_html import use_data, uses_address
from strength_handbook.pages.variable_html import unloading_line
from strength_handbook.pages.working_html import working_html
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Use, Worked
from strength_handbook.reading.book import read_book
from strength_handbook.workings.volume import slot_working

MOST = 60_000
"""Bytes of an exercise's page: our own limit."""


@pytest.fixture(scope="module")
def worked() -> Worked:
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    return work_out(book)


@pytest.fixture(scope="module")
def site(worked: Worked) -> Site:
    return write_pages(worked)


def html_of(site: Site, uri: str) -> str:
    return next(page.html for page in site.pages if page.uri == uri)


def uses_of(worked: Worked) -> Iterator[Use]:
    return (use for uses in worked.uses.values() for use in uses)


def part_of(html: str, anchor: str) -> str:
    """What stands on a page from one slot to the next."""
    found = html[html.index(f'id="{anchor}"') :]
    return found[: found.find('<h2 id="', 10)]


class _Outline(HTMLParser):
    """Tags and texts of a page without its links to uses."""

    def __init__(self) -> None:
        super().__init__()
        self.left: list[str] = []
        self.links = self.inside = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if "data-week" in dict(attrs):
            self.links += 1
            self.inside = 1
        elif not self.inside:
            self.left.append(f"{tag} {attrs}")

    def handle_endtag(self, tag: str) -> None:
        self.inside = 0 if tag == "a" else self.inside

    def handle_data(self, data: str) -> None:
        if not self.inside and data.strip():
            self.left.append(" ".join(data.split()))


def outline(html: str) -> _Outline:
    parser = _Outline()
    parser.feed(html)
    return parser


def page_of_program(root: Path, weeks: int) -> tuple[str, str]:
    """The page of a lift that is done twice a week, and the file with its uses."""
    doses = {str(week): f"3x5 @ {60 + week % 4 * 5} %, RIR 3" for week in range(1, weeks + 1)}
    book = build_book(
        root,
        exercises={"lift": exercise(), "other": exercise("Other")},
        sessions={
            "a": [slot("A", "lift", doses, base="best"), slot("B", "other", "3x5")],
            "b": [slot("A", "lift", doses, base="best")],
        },
        bases={"best": base()},
        lifters={"P1": {"bodyweight": "80 kg", "bases": {"best": "100 kg"}}},
    )
    made = write_pages(work_out(book))
    return html_of(made, "exercises/lift.md"), made.data[uses_address("lift")]


def test_a_program_four_times_as_long_adds_links_only(tmp_path: Path) -> None:
    (short, few), (long, many) = (
        page_of_program(tmp_path / str(weeks), weeks) for weeks in (3, 12)
    )
    assert (outline(short).links, outline(long).links) == (6, 24)
    # At the foot stand the codes of the cards, each with a link.
    codes = re.compile(r'<p class="sh-foot sh-card-codes">.*?</p>', re.DOTALL)
    assert outline(codes.sub("", short)).left == outline(codes.sub("", long)).left
    long, short = codes.sub("", long), codes.sub("", short)
    assert len(long) - len(short) < 18 * 150
    assert len(many) > 3 * len(few)


def test_no_exercise_page_is_large(site: Site) -> None:
    sizes = {p.uri: len(p.html.encode()) for p in site.pages if p.uri.startswith("exercises/")}
    assert len(sizes) > 30
    assert {uri: size for uri, size in sizes.items() if size > MOST} == {}


def test_no_page_of_a_session_s_loads_is_large(site: Site) -> None:
    sizes = {page.uri: len(page.html.encode()) for page in site.pages if page.aside}
    assert len(sizes) > 30
    assert {uri: size for uri, size in sizes.items() if size > MOST} == {}


def test_every_use_has_a_link_to_its_slot(worked: Worked, site: Site) -> None:
    for key, uses in worked.uses.items():
        html = html_of(site, f"exercises/{key}.md")
        for use in uses:
            anchor = use_anchor(use.program.id, use.week.week, use.session.id, use.slot.order)
            uri = session_uri(use.program, use.week.week, use.session.id)
            to = f"../../{url_of(uri)}#{slot_anchor(use.slot.order)}"
            assert f'<a id="{anchor}" href="{to}" data-week="{use.week.week}"' in html
            assert f'<h2 id="{slot_anchor(use.slot.order)}"' in html_of(site, uri)


def test_what_an_exercise_page_leaves_out_stands_with_the_session(
    worked: Worked, site: Site
) -> None:
    seen = set()
    for use in uses_of(worked):
        program, week, session, slot_ = use.program, use.week, use.session, use.slot
        anchor = slot_anchor(slot_.order)
        at = part_of(html_of(site, session_uri(program, week.week, session.id)), anchor)
        uri = loads_uri(program, week.week, session.id)
        loads = part_of(html_of(site, uri), anchor)
        found = slot_lookup(slot_, worked.book.room.units)
        whole = method_html(worked, program, week, session, slot_)
        for title, html in whole.parts:
            # What the open set tells waits whole until somebody asks.
            if title == "What the open set tells":
                assert html in loads, uri
            else:
                assert without_examples(html) in at, (uri, title)
                assert only_examples(html) in loads, (uri, title)
            seen.add(title)
        assert found.table in at
        assert found.by_body in loads
        assert working_html(slot_working(worked.book, slot_), url_of(uri)) in loads
        assert unloading_line(slot_, worked.book.room) in loads
        assert all(line in loads for _, line in example_lines(slot_, worked.book))
        for door in door_rows(worked, program, slot_, url_of(uri)):
            assert str(door["loads"]) in loads
        seen |= {name for name in ("table", "by_body") if getattr(found, name)}
    assert {"table", "by_body", "Warm-up steps", "What the open set tells"} <= seen


def test_a_phone_is_given_every_use(worked: Worked, site: Site) -> None:
    for key, uses in worked.uses.items():
        text = site.data[uses_address(key)]
        found = json.loads(text[text.index("uses=") + 5 : text.rindex(";")])
        assert len(found) == len(uses)
        for use, (anchor, one) in zip(uses, found.items(), strict=True):
            assert f'id="{anchor}"' in html_of(site, f"exercises/{key}.md")
            own = json.loads(json.dumps(use_data(worked, use, f"exercises/{key}/")))
            assert own.items() <= one.items()
            for to, _, _ in one["ways"]:
                page, _, place = to.removeprefix("../../").partition("#")
                html = html_of(site, f"{page.removesuffix('/')}.md")
                assert f'id="{place}"' in html
