"""Exported Markdown: the same HTML comes out of a Markdown processor, whatever its extensions."""

from pathlib import Path

import markdown
import pytest
import yaml

import demo
from strength_handbook.checked import check_folder
from strength_handbook.model.paper import A4, LETTER
from strength_handbook.pages.page import Page, Site
from strength_handbook.pages.site import write_pages
from strength_handbook.publish.export import LIST, ForeignFolderError, export
from strength_handbook.publish.export import markdown as as_markdown

EXTENSIONS = [
    "admonition",
    "attr_list",
    "md_in_html",
    "toc",
    "tables",
    "smarty",
    "abbr",
    "def_list",
]


@pytest.fixture(scope="module")
def site() -> Site:
    """The demo's pages."""
    worked = check_folder(demo.PROGRAMS).worked
    assert worked is not None
    return write_pages(worked)


def _taken_apart(text: str) -> tuple[dict[str, object], str]:
    _, keys, body = text.split("---\n", 2)
    return yaml.safe_load(keys), body


def test_every_page_of_the_demo_survives_python_markdown(site: Site) -> None:
    assert len(site.pages) > len(demo.EXERCISES)
    for page in site.pages:
        keys, body = _taken_apart(as_markdown(page, A4))
        assert keys["title"] == page.title
        html = markdown.markdown(body, extensions=EXTENSIONS)
        assert html.strip() == f"<div>\n{page.html.strip()}\n</div>", page.uri


def test_blank_lines_would_end_the_block_and_are_taken_out() -> None:
    html = '<h1 id="top">A</h1>\n\n  \n<p>b</p>\n<pre>one\n\n  two</pre>'
    _, body = _taken_apart(as_markdown(Page("a.md", "A", html), A4))
    block = body.strip().split("\n")
    assert "" not in [line.strip() for line in block]
    assert "<pre>one&#10;&#10;  two</pre>" in body


def test_a_page_says_its_paper() -> None:
    page = Page("a.md", "A", "<p>x</p>")
    assert '\n<div class="sh-letter">\n' in as_markdown(page, LETTER)
    assert "\n<div>\n" in as_markdown(page, A4)


@pytest.mark.parametrize(
    "title", ["Week 3: Lift", "- a", "#1", "2027", "no", "a \"b\" 'c'", "a\nb"]
)
def test_titles_come_back_as_they_were(title: str) -> None:
    page = Page("a.md", title, "<p>x</p>", description=f"{title}: y")
    keys, _ = _taken_apart(as_markdown(page, A4))
    assert keys == {"title": title, "description": f"{title}: y"}


def _pages(*uris: str) -> Site:
    return Site("Gym", A4, tuple(Page(uri, uri, "<p>x</p>") for uri in uris))


def test_scripts_and_styles_are_few_files(tmp_path: Path) -> None:
    export(_pages("a.md"), tmp_path / "out")
    assets = tmp_path / "out/assets/strength-handbook"
    names = {path.name for path in assets.iterdir()}
    assert names == {"handbook.css", "handbook.js", "tools.js", "icon.svg"}
    assert "serviceWorker" not in (assets / "handbook.js").read_text(encoding="utf-8")


def test_a_second_export_takes_away_what_is_gone_and_nothing_else(tmp_path: Path) -> None:
    out = tmp_path / "out"
    export(_pages("a.md", "old/week/b.md"), out)
    (out / "mine.txt").write_text("kept", encoding="utf-8")
    export(_pages("a.md"), out)
    assert not (out / "old").exists()
    assert (out / "mine.txt").read_text(encoding="utf-8") == "kept"
    assert "old/week/b.md" not in (out / LIST).read_text(encoding="utf-8")


def test_a_list_that_points_outside_deletes_nothing_there(tmp_path: Path) -> None:
    out = tmp_path / "out"
    precious = tmp_path / "precious.md"
    precious.write_text("kept", encoding="utf-8")
    export(_pages("a.md"), out)
    with (out / LIST).open("a", encoding="utf-8") as file:
        file.write(f"../precious.md\n{precious}\n")
    export(_pages("b.md"), out)
    assert precious.read_text(encoding="utf-8") == "kept"
    assert not (out / "a.md").exists()


def test_a_foreign_folder_is_refused_and_an_empty_one_taken(tmp_path: Path) -> None:
    (tmp_path / "notes").mkdir()
    (tmp_path / "notes/a.md").write_text("mine", encoding="utf-8")
    with pytest.raises(ForeignFolderError, match="empty folder"):
        export(_pages("a.md"), tmp_path / "notes")
    assert (tmp_path / "notes/a.md").read_text(encoding="utf-8") == "mine"
    (tmp_path / "empty").mkdir()
    export(_pages("a.md"), tmp_path / "empty")
    assert (tmp_path / "empty/a.md").is_file()
