"""A drawing as a file is that of the exercise's page, and shows the same without the page."""

import json
import re
from html import unescape
from xml.etree import ElementTree

import pytest

import demo
from strength_handbook.figures.sheet import figure_svg, figure_words
from strength_handbook.pages.figure_file import WORDS, figure_address
from strength_handbook.pages.page import Site
from strength_handbook.pages.site import write_pages
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book

STYLES = demo.PACKAGE / "theme/assets/strength-handbook"
_STYLE = re.compile(r"<style>(.*?)</style>", re.DOTALL)
_FALLBACK = re.compile(r"var\((--(?:sh|md)-[a-z-]+)(?:, (#[0-9a-f]+))?\)")


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


def test_every_drawing_is_a_file_and_the_same_as_on_the_page(worked: Worked, site: Site) -> None:
    drawn = 0
    for key, exercise in worked.book.exercises.items():
        text = site.data.get(figure_address(key))
        assert (text is None) == (exercise.figure is None)
        if text is None or exercise.figure is None:
            continue
        bare = _STYLE.sub("", text).replace('xmlns="http://www.w3.org/2000/svg" ', "").strip()
        assert bare == figure_svg(exercise.figure, exercise.name)
        assert bare in html_of(site, f"exercises/{key}.md")
        # A picture is read as XML, which forgives nothing.
        assert ElementTree.fromstring(text).tag == "{http://www.w3.org/2000/svg}svg"  # noqa: S314
        drawn += 1
    assert drawn > 30


def test_a_file_has_every_colour_in_it(site: Site) -> None:
    style = _STYLE.findall(site.data[figure_address("trap-bar-deadlift")])[0]
    rules = (STYLES / "handbook.css").read_text(encoding="utf-8")
    found = _FALLBACK.findall(style)
    assert len(found) >= 4
    for name, colour in found:
        if name.startswith("--sh-"):  # the ground is the theme's, white in light
            light = re.search(rf"{name}: (#[0-9a-f]+);", rules)
            assert light is not None
            assert colour == light[1], name
        else:
            assert colour == "#fff", name
    own = set(re.findall(r"(?<![\w-])(--[a-z-]+):", style))
    assert set(re.findall(r"var\((--(?!sh|md)[a-z-]+)\)", style)) <= own


def test_the_list_of_exercises_and_session_mode_say_what_is_drawn(
    worked: Worked, site: Site
) -> None:
    text = site.data[WORDS]
    words = json.loads(text[text.index("figures=") + 8 : text.rindex(";")])
    listed = html_of(site, "exercises/index.md")
    shown = dict(re.findall(r'<img [^>]*src="([^"]+)" alt="([^"]+)"', listed))
    for key, exercise in worked.book.exercises.items():
        if exercise.figure is None:
            assert key not in words
            assert f"{key}/figure.svg" not in shown
            continue
        said = figure_words(exercise.figure, exercise.name)
        assert words[key] == unescape(shown[f"{key}/figure.svg"]) == said
        assert listed.count('loading="lazy"') == len(words)
