"""Addresses between pages, written so that they also work where no server knows folders.

A server answers an address that ends in a folder with its `index.html`; a file system shows the
folder. Everything here is text: which files there are comes as a set of addresses.
"""

import posixpath
import re
from collections.abc import Set as AbstractSet
from html import escape, unescape
from urllib.parse import quote, unquote

_SCHEME = re.compile(r"[a-zA-Z][a-zA-Z0-9+.-]*:|//")
_TAIL = re.compile(r"[?#]")

FRONT = "index.html"
FIND = "find/index.html"
"""The page that stands in for the theme's search."""


def on_file(value: str, page: str, files: AbstractSet[str], base: str = "/") -> tuple[str, str]:
    """An attribute's address as it must be written to work from a file, and the file it leads to.

    The file is empty for what is no file of the site: another host, a mail address, a place on
    the same page; and it is not in `files` where the link leads nowhere.

    Args:
        value: the attribute as it is written in HTML.
        page: address of the file it stands in, below the root.
        files: addresses of all files of the site.
        base: path of the site's root on its server; links may begin with it.

    >>> files = {"index.html", "winter/index.html", "room/index.html", "a.css"}
    >>> on_file("../room/#bars", "winter/index.html", files)
    ('../room/index.html#bars', 'room/index.html')
    >>> on_file("..", "winter/index.html", files)
    ('../index.html', 'index.html')
    >>> on_file("?x=1&amp;y=2", "winter/index.html", files)
    ('?x=1&amp;y=2', '')
    >>> on_file("/gym/room/?x=1&amp;y=2", "winter/index.html", files, "/gym/")
    ('../room/index.html?x=1&amp;y=2', 'room/index.html')
    >>> on_file("../a.css", "winter/index.html", files)
    ('../a.css', 'a.css')
    >>> on_file("https://example.org/", "winter/index.html", files)
    ('https://example.org/', '')
    """
    path, tail = _split(value.strip())
    if not path or _SCHEME.match(path):
        return value, ""
    plain = unquote(unescape(path))
    wanted = _target(plain, page, base)
    if wanted is None:
        return value, plain
    front = posixpath.join(wanted, FRONT)
    # A folder is also meant where its '/' is missing: servers add it.
    target = wanted if wanted in files or front not in files else front
    if _asks_to_search(tail, target) and FIND in files:
        return _relative(FIND, page), FIND
    if target == wanted and not plain.startswith("/"):
        return value, target
    return _relative(target, page) + tail, target


def _split(value: str) -> tuple[str, str]:
    """Path, and query with place, as they are written."""
    found = _TAIL.search(value)
    return (value[: found.start()], value[found.start() :]) if found else (value, "")


def _target(path: str, page: str, base: str) -> str | None:
    """Where a path leads, below the root; None for what lies outside it."""
    if path.startswith("/"):
        root = base.rstrip("/") + "/"
        if not f"{path}/".startswith(root):
            return None
        joined = path[len(root) :]
    else:
        joined = posixpath.join(posixpath.dirname(page), path)
    normal = posixpath.normpath(joined or ".")
    if normal == ".." or normal.startswith("../"):
        return None
    return "" if normal == "." else normal


def _asks_to_search(tail: str, target: str) -> bool:
    """The front page opens the theme's search where its address ends in ``?search``."""
    return target == FRONT and re.match(r"\?search\b", tail) is not None


def _relative(target: str, page: str) -> str:
    path = posixpath.relpath(f"/{target}", f"/{posixpath.dirname(page)}")
    return escape(quote(path, safe="/:@!$&'()*+,;=~"))
