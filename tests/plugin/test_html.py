"""Every built page: nothing from other hosts, no dead link inside, no id twice."""

from collections import Counter
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest

FETCHED = {"audio", "embed", "iframe", "image", "img", "link", "script", "source", "use", "video"}


class Links(HTMLParser):
    """Ids, addresses that a page fetches, and addresses that it links to."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.ids: list[str] = []
        self.fetched: list[str] = []
        self.linked: list[str] = []
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        for name, value in attrs:
            if name == "id":
                self.ids.append(value or "")
            elif name in ("href", "src", "srcset", "data", "xlink:href") and value is not None:
                (self.fetched if tag in FETCHED else self.linked).append(value)


@pytest.fixture(scope="module")
def pages(demo_site: Path) -> dict[Path, Links]:
    return {
        page.resolve(): Links(page.read_text(encoding="utf-8"))
        for page in demo_site.rglob("*.html")
    }


def test_the_reader_of_pages_sees_what_is_there() -> None:
    page = Links('<a href="//x.org/"><img src="https://x.org/a.png"/></a><p id=a><p id=a>')
    assert (page.linked, page.fetched, page.ids) == (
        ["//x.org/"], ["https://x.org/a.png"], ["a", "a"]
    )  # fmt: skip


def test_no_page_fetches_anything_from_another_host(pages: dict[Path, Links]) -> None:
    assert len(pages) > 40
    far = {
        (page.parent.name, address)
        for page, links in pages.items()
        for address in links.fetched
        if urlsplit(address).netloc or urlsplit(address).scheme not in ("", "data")
    }
    assert not far


def test_every_link_inside_the_site_leads_somewhere(
    pages: dict[Path, Links], demo_site: Path
) -> None:
    dead = [
        f"{page.relative_to(demo_site.resolve())}: {address}"
        for page, links in pages.items()
        for address in links.linked + links.fetched
        if not _leads_somewhere(pages, demo_site.resolve(), page, address)
    ]
    assert not dead, "\n".join(dead[:20])


def _leads_somewhere(pages: dict[Path, Links], site: Path, page: Path, address: str) -> bool:
    parts = urlsplit(address)
    if parts.scheme or parts.netloc:
        return True
    path = unquote(parts.path)
    # Only the page for wrong addresses starts at the root: it is shown at any depth.
    start = site if path.startswith("/") else page.parent
    target = (start / path.lstrip("/")).resolve() if path else page
    if target.is_dir():
        target /= "index.html"
    if not target.is_file():
        return False
    there = pages.get(target)
    return there is None or not parts.fragment or unquote(parts.fragment) in there.ids


def test_no_id_stands_twice_on_a_page(pages: dict[Path, Links], demo_site: Path) -> None:
    twice = {
        f"{page.relative_to(demo_site.resolve())}: {name}"
        for page, links in pages.items()
        for name, number in Counter(links.ids).items()
        if number > 1
    }
    assert not twice, "\n".join(sorted(twice)[:20])
