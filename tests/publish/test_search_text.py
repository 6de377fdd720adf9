"""The search says the same of a page whether it reads the whole page or what is lent to it."""

import re

from material.plugins.search.plugin import Parser, void  # type: ignore[import-untyped]

import demo
from strength_handbook.checked import check_folder
from strength_handbook.pages.site import write_pages
from strength_handbook.publish.search_text import search_text

_TABLES = re.compile(r'<table class="sh-(?:strip|grid).*?</table>', re.DOTALL)

Attributes = list[tuple[str, str | None]]


class Reader(Parser):  # type: ignore[misc]  # Material has no types
    """Material's own, except that what is left out ends where it ends.

    Material counts by the names of tags: of a left-out `div`, what follows the first `div` inside
    would be searched.
    """

    def __init__(self) -> None:
        super().__init__()
        self.inside = 0

    def handle_starttag(self, tag: str, attrs: Attributes) -> None:
        if self.skip.intersection(self.context):
            self.inside += tag not in void
        else:
            super().handle_starttag(tag, attrs)

    def handle_endtag(self, tag: str) -> None:
        if self.inside:
            self.inside -= 1
        else:
            super().handle_endtag(tag)


Section = tuple[str | None, str, str]


def sections(html: str) -> list[Section]:
    """Id, title and text of every section that goes into the index."""
    reader = Reader()
    reader.feed(html)
    reader.close()
    return [
        (section.id, "".join(section.title).strip(), "".join(section.text).strip())
        for section in reader.data
        if not section.is_excluded()
    ]


def test_every_page_of_the_demo_is_found_by_the_same_words() -> None:
    worked = check_folder(demo.PROGRAMS).worked
    assert worked is not None
    whole = lent = 0
    for page in write_pages(worked).pages:
        text = search_text(page.html)
        assert sections(text) == sections(_TABLES.sub("", page.html)), page.uri
        whole += page.html.count("<")
        lent += text.count("<")
    assert lent < whole / 3


def test_spaces_between_tags_stay_single() -> None:
    html = "<p>a</p>\n<dl>\n <dt>b</dt>\n <dd><b>c</b>\n <i>d</i></dd>\n</dl>\n<form>\n<p>e</p>"
    assert sections(search_text(html)) == sections(html)


def test_a_section_ends_with_the_part_its_heading_stands_in() -> None:
    html = '<h1 id="a">A</h1><div class="x"><h2 id="b">B</h2><p>in b</p></div><p>in a</p>'
    found = {title: text for _, title, text in sections(search_text(html))}
    assert found == {"A": "<p>in a</p>", "B": "<p>in b</p>"}


def test_left_out_parts_are_left_out_to_their_end() -> None:
    html = '<p>a</p><div class="x" data-search-exclude><div>b</div>c</div><p>d</p>'
    assert search_text(html) == "<p>a</p><p>d</p>"
