"""A copy that opens from a file: every link leads to a file, and nothing else on a page changes."""

import json
import re
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urldefrag

import pytest

import demo
from strength_handbook.publish.file_copy.addresses import on_file
from strength_handbook.publish.file_copy.assembling import Copy, NoIndexError, file_copy
from strength_handbook.publish.file_copy.edition import (
    Edition,
    EditionProgram,
    archive_name,
    copy_line,
)
from strength_handbook.publish.file_copy.find_entries import groups
from strength_handbook.publish.file_copy.pages import Links, on_disk, with_article
from tiny import MKDOCS, write_tiny

FILES = {
    "index.html", "find/index.html", "room/index.html", "winter/index.html",
    "winter/week 1/index.html", "a.css", "data/x.js",
}  # fmt: skip


@pytest.mark.parametrize(
    ("value", "new"),
    [
        ("./", "index.html"),
        (".", "index.html"),
        ("../room/", "../room/index.html"),
        ("../room", "../room/index.html"),
        ("../room/?a=1&amp;b#bars", "../room/index.html?a=1&amp;b#bars"),
        ("week%201/", "week%201/index.html"),
        ("../", "../index.html"),
        ("../index.html#a", "../index.html#a"),
        ("..?search", "../find/index.html"),
        ("../?search#x", "../find/index.html"),
        ("/gym/room/#x", "../room/index.html#x"),
        ("/gym", "../index.html"),
        ("/gym/a.css", "../a.css"),
        ("#top", "#top"),
        ("?x", "?x"),
        ("", ""),
        ("mailto:a@example.org", "mailto:a@example.org"),
        ("//example.org/room/", "//example.org/room/"),
        ("https://example.org/room/", "https://example.org/room/"),
        ("blob:x", "blob:x"),
    ],
)
def test_addresses(value: str, new: str) -> None:
    page = "index.html" if value in ("./", ".") else "winter/index.html"
    assert on_file(value, page, FILES, "/gym/")[0] == new


@pytest.mark.parametrize("value", ["../nowhere/", "../../outside/", "/other/room/", "x.pdf"])
def test_what_leads_nowhere_is_told_apart(value: str) -> None:
    new, target = on_file(value, "winter/index.html", FILES, "/gym/")
    assert new == value
    assert target
    assert target not in FILES


PAGE = """<!DOCTYPE html>
<html><head><link rel="canonical" href="https://gym.example/winter/"><title>Winter</title>
<link rel=stylesheet href=../a.css></head>
<body><!-- <a href="../room/"> --><input id="__search" type="checkbox">
<label class="icon" for="__search"><svg><path d="M0 0"/></svg></label>
<div data-md-component="search"><div><label for="__search">x</label></div><p>gone</p></div>
<h1>Winter</h1><p title='a href="../room/"'>1 < 2 &amp; 3 <a href=../room/ >Room</a></p>
<script type="application/json">{"at":"../room/","html":"<a href=\\"../room/\\">"}</script>
<pre>
  <a
   href='../room/#x'>é</a>
</pre>
<script id="__config" type="application/json">{"base": ".."}</script>
<script type="text/plain" id="sh-later" src="../theme.js"></script>
<script src="../data/x.js"></script>
</body></html>
"""

ON_DISK = """<!DOCTYPE html>
<html><head><title>Winter</title>
<link rel=stylesheet href=../a.css><link rel="stylesheet" href="../assets/strength-handbook/copy.css">
</head>
<body><!-- <a href="../room/"> -->
<a href="../find/index.html" class="icon" aria-label="Find a page" title="Find a page"><svg><path d="M0 0"/></svg></a>

<h1>Winter</h1>
LINE<p title='a href="../room/"'>1 < 2 &amp; 3 <a href="../room/index.html" >Room</a></p>
<script type="application/json">{"at":"../room/","html":"<a href=\\"../room/\\">"}</script>
<pre>
  <a
   href='../room/index.html#x'>é</a>
</pre>


<script src="../assets/strength-handbook/copy.js"></script>
<script src="../data/x.js"></script>
</body></html>
"""  # noqa: E501


def test_only_links_and_the_search_change_on_a_page() -> None:
    links = Links()
    assert on_disk(PAGE, "winter/index.html", FILES, links, line="LINE") == ON_DISK
    assert {"a.css", "room/index.html", "data/x.js"} <= links.used
    assert links.broken == []


def test_a_page_without_optional_tags_gets_style_and_script_too() -> None:
    html = on_disk("<title>x</title><body><p>y<a href=room/>z", "index.html", FILES, Links())
    assert html.index("copy.css") < html.index("<body")
    assert '<a href="room/index.html">z' in html
    assert html.endswith('<script src="assets/strength-handbook/copy.js"></script>\n')


def test_an_article_is_replaced_once() -> None:
    page = "<title>Gym</title><svg><title>x</title></svg><article a><article>1</article></article>"
    assert with_article("<title>Gym</title><article a>1</article>", "Find", "<p>2</p>") == (
        "<title>Find - Gym</title><article a>\n<p>2</p>\n</article>"
    )
    assert with_article(page, "Find", "2").count("Find - ") == 1


class _Addresses(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.links: list[str] = []
        self.ids: set[str] = set()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:  # noqa: ARG002
        for name, value in attrs:
            if name in ("href", "src", "action"):
                self.links.append(value or "")
            elif name in ("id", "name"):
                self.ids.add(value or "")


@pytest.fixture(scope="module")
def copied(demo_site: Path) -> Copy:
    return file_copy(demo_site)


def test_every_link_of_the_demo_leads_to_a_file_and_a_place_in_it(copied: Copy) -> None:
    assert copied.broken == ()
    pages = {}
    for address, content in copied.files.items():
        if address.endswith(".html"):
            pages[address] = _Addresses()
            pages[address].feed(content.decode())
    lost = []
    for address, page in pages.items():
        for link in page.links:
            if not link or re.match(r"[a-z]+:", link):
                continue
            path, place = urldefrag(link)
            where = Path("/", address).parent / unquote(path.partition("?")[0])
            parts: list[str] = []
            for part in where.parts[1:]:
                parts = parts[:-1] if part == ".." else [*parts, part]
            target = "/".join(parts) if path else address
            known = target in copied.files
            if not known or (place and unquote(place) not in pages[target].ids):
                lost.append((address, link))
    assert lost == []


def test_blocks_of_data_stay_as_they_are(copied: Copy, demo_site: Path) -> None:
    # Without the settings of the theme's script, which is left out.
    block = re.compile(
        r"<script(?![^>]*__config)[^>]*application/json[^>]*>(.*?)</script>", re.DOTALL
    )
    number = 0
    for address, content in copied.files.items():
        if address.endswith("index.html") and address != "find/index.html":
            before = block.findall((demo_site / address).read_text(encoding="utf-8"))
            assert block.findall(content.decode()) == before
            number += len(before)
            assert all(json.loads(text) for text in before)
    assert number > 400


def test_what_only_a_server_can_use_stays_behind(copied: Copy) -> None:
    for part in ("404.html", "sw.js", "sitemap", "search/", "offline/", "javascripts", ".map"):
        assert not [address for address in copied.files if part in address]
    pages = [one.decode() for name, one in copied.files.items() if name.endswith("index.html")]
    for part in (
        'id="__search"',
        "sh-later",
        "?search",
        'rel="canonical"',
        "md-search",
        "__config",
    ):
        assert not [page for page in pages if part in page]


def test_the_find_page_is_small_enough_for_a_phone(copied: Copy) -> None:
    import gzip

    assert len(gzip.compress(copied.files["find/index.html"], 9)) < 60_000


def test_the_find_page_lists_every_page(copied: Copy) -> None:
    html = copied.files["find/index.html"].decode()
    pages = {name for name in copied.files if name.endswith("/index.html")} - {"find/index.html"}
    # The loads of a session are found through its page.
    pages -= {page for page in pages if page.endswith("/loads/index.html")}
    assert {page for page in pages if f'href="../{page}"' not in html} == set()
    assert 'href="../index.html"' in html


def test_a_site_below_a_path_gives_the_same_find_page(tmp_path: Path) -> None:
    pages = []
    for at, address in enumerate(["", "site_url: https://gym.example/a/handbook/\n"]):
        root = write_tiny(tmp_path / str(at), address + MKDOCS)
        (root / "handbook/safety.md").write_text("# Safety\n", encoding="utf-8")
        copy = file_copy(demo.build_site(root, root / "site"))
        assert copy.broken == ()
        pages.append(copy.files["find/index.html"])
        assert not [one for one in copy.files.values() if b"canonical" in one]
    assert pages[0] == pages[1]


def test_a_link_to_nothing_is_told(tmp_path: Path) -> None:
    root = write_tiny(tmp_path)
    (root / "handbook/safety.md").write_text("# Safety\n", encoding="utf-8")
    (root / "handbook/note.md").write_text("# A note\n\n[Old](/wiki/)\n", encoding="utf-8")
    copy = file_copy(demo.build_site(root, root / "site"))
    assert copy.broken == (("note/index.html", "/wiki/"),)


def test_without_a_search_there_is_nothing_to_make_it_from(tmp_path: Path) -> None:
    root = write_tiny(tmp_path, MKDOCS.replace("  - search\n", ""))
    with pytest.raises(NoIndexError, match="put 'search' under plugins"):
        file_copy(demo.build_site(root, root / "site"))


def _doc(location: str, title: str, text: str = "", **more: object) -> dict[str, object]:
    return {"location": location, "title": title, "text": text, **more}


def test_headings_of_pages_of_one_shape_are_words_and_others_are_lines() -> None:
    docs = [
        _doc("", "Gym"),
        _doc("safety/", "Safety &amp; help", "<p>Keep calm.</p>"),
        _doc("safety/#hurt", "If someone is hurt", "<p>Call <b>112</b>.</p>"),
        _doc("safety/racks/", "Racks"),
        *[_doc(f"safety/{at}/#sources", "Sources", "Élan 2015") for at in range(5)],
        _doc("exercises/", "Exercises"),
        _doc("exercises/dip/", "Dip", "<p>Down.</p>", tags=["push"]),
        _doc("exercises/dip/#cues", "Cues", "<p>Elbows in</p>"),
        _doc("winter/", "Winter"),
        _doc("winter/week-01/a/", "Week 1: Pull-up", "Monday"),
        _doc("winter/week-01/a/#slot-a", "A Dip", "4 × 8, words of the exercise"),
    ]
    html = {"exercises/dip/": '<p class="sh-also">Up and down</p>'}
    found = groups(docs, html, ["winter"])
    assert [group.title for group in found] == ["Exercises", "Winter", "The handbook",
                                                "Safety & help"]  # fmt: skip
    dip = found[0].entries[1]
    assert (dip.note, dip.words, dip.below) == ("Up and down; push", ("cues", "elbows", "in"), ())
    session = found[1].entries[1]
    assert session.words == ("dip", "monday", "pullup")
    safety, _, *others = found[3].entries
    assert [entry.title for entry in safety.below] == ["If someone is hurt"]
    assert safety.below[0].words == ("call",)
    assert others[0].words == ("elan",)
    assert others[0].below == ()


def test_the_copy_names_its_version_and_the_first_last_day() -> None:
    two = (
        EditionProgram("a", "Winter", "2026.1", "2027-03-31"),
        EditionProgram("b", "S & C", "7", "2026-12-31"),
    )
    known = Edition("Räume / Halle 3", two)
    assert archive_name(known) == "raume-halle-3-2026.1-7.zip"
    assert copy_line(known) == (
        "A copy: Winter, version 2026.1; S &amp; C, version 7. It does not update itself. "
        "Remove it after 2026-12-31."
    )
    nameless = Edition("深蹲", (EditionProgram("a", "深蹲", "../../x"),))
    assert archive_name(nameless) == "handbook-x.zip"
    assert "newest" in copy_line(nameless)
