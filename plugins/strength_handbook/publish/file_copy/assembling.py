"""All files of a copy, made from a built site."""

import json
from dataclasses import dataclass
from fnmatch import fnmatchcase
from pathlib import Path

from strength_handbook.publish.command_errors import FailedError
from strength_handbook.publish.file_copy.addresses import FIND, FRONT
from strength_handbook.publish.file_copy.edition import Edition, copy_line, edition
from strength_handbook.publish.file_copy.find_entries import groups
from strength_handbook.publish.file_copy.find_page import TITLE, find_article
from strength_handbook.publish.file_copy.pages import (
    ASSETS,
    SCRIPT,
    STYLE,
    Links,
    on_disk,
    root_on_server,
    with_article,
)

HERE = Path(__file__).parent
OWN = {SCRIPT: "copy.js", STYLE: "copy.css", f"{ASSETS}/kept.html": "kept.html"}
INDEX = "search/search_index.json"
FRAME = "404.html"

NEVER = (FRAME, "sitemap.xml*", "sw.js", "offline/*", "search/*", "*.map")
"""What only a server, or a page from one, can use."""

IF_LINKED = ("assets/javascripts/*", "assets/images/favicon.png", "data/*.json", "tags.json")
"""What is for other programs, or for the theme's own script."""


class NoIndexError(FailedError):
    """The site was built without a search."""


@dataclass(frozen=True)
class Copy:
    """What is to be written.

    Attributes:
        files: content by address.
        known: which handbook it is.
        broken: page and address of each link that leads to no file of the copy.
    """

    files: dict[str, bytes]
    known: Edition
    broken: tuple[tuple[str, str], ...] = ()


def file_copy(site: Path) -> Copy:
    """The copy of a built site.

    Args:
        site: folder that `mkdocs build` wrote.

    Raises:
        NoIndexError: where the site has no search; the message says what to do.
    """
    if not (site / INDEX).is_file():
        text = "the copy's search is made from the site's: put 'search' under plugins in mkdocs.yml"
        raise NoIndexError(text)
    built = sorted(path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file())
    named = {one for one in built if not _fits(one, NEVER)}
    pages = {one: (site / one).read_text("utf-8") for one in sorted(named) if _is_page(one)}
    known = edition(
        (site / one).read_text("utf-8") for one in built if fnmatchcase(one, "data/*.json")
    )
    named |= {FIND, *OWN}
    frame = (site / FRAME).read_text("utf-8")
    base, links = root_on_server(frame), Links()
    pages[FIND] = with_article(_scoped(frame, base), TITLE, _article(site, pages, known))
    line = f'<p class="sh-note">{copy_line(known)}</p>'
    files = {
        page: on_disk(html, page, named, links, base, line if page == FRONT else "").encode()
        for page, html in pages.items()
    }
    files |= {address: (HERE / name).read_bytes() for address, name in OWN.items()}
    for address in sorted(named.difference(files)):
        if address in links.used or not _fits(address, IF_LINKED):
            files[address] = (site / address).read_bytes()
    return Copy(dict(sorted(files.items())), known, tuple(sorted(set(links.broken))))


def _article(site: Path, pages: dict[str, str], known: Edition) -> str:
    docs = json.loads((site / INDEX).read_text("utf-8"))["docs"]
    html = {page.removesuffix(FRONT): text for page, text in pages.items()}
    return find_article(groups(docs, html, [program.folder for program in known.programs]))


def _scoped(frame: str, base: str) -> str:
    """The theme keeps light or dark below the site's root, which this page names in full."""
    return frame.replace(f'new URL("{base}",location)', 'new URL("..",location)')


def _is_page(address: str) -> bool:
    return address.endswith(".html")


def _fits(address: str, patterns: tuple[str, ...]) -> bool:
    return any(fnmatchcase(address, pattern) for pattern in patterns)
