"""A room in which nobody trains alone: no page says that something is fine alone."""

import re
from pathlib import Path

import demo
from strength_handbook.checked import check_folder
from strength_handbook.pages.site import write_pages
from tiny import write_tiny

SAYS = "Nobody trains alone here."


def pages(root: Path) -> dict[str, str]:
    worked = check_folder(root / "programs").worked
    assert worked is not None
    site = write_pages(worked)
    tags = {page.uri: " ".join(page.tags) for page in site.pages}
    return {page.uri: f"{page.html} {tags[page.uri]}" for page in site.pages} | site.data


def test_every_page_says_it_and_none_says_anything_else(tmp_path: Path) -> None:
    root = write_tiny(tmp_path)
    fine = {uri for uri, html in pages(root).items() if re.search("fine alone|Fine alone", html)}
    assert {"exercises/chair-squat.md", "exercises/index.md"} <= fine
    demo.change(root / "programs/room.yml", "  roles:", "  nobody-alone: yes\n  roles:")
    now = pages(root)
    assert [uri for uri, html in now.items() if re.search("[Ff]ine alone|<b>Fine", html)] == []
    cards = next(uri for uri in now if uri.startswith("cards/spring/"))
    for uri in ("exercises/chair-squat.md", "spring/week-01/a-squat.md", cards):
        assert SAYS in now[uri], uri
