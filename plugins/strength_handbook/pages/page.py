"""A page, ready to be put on a site."""

import posixpath
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from strength_handbook.model.paper import Paper
from strength_handbook.pages.inserts import Insert

Name = tuple[str | int, ...]
"""Says what is made, the same after an edit: ``("session", "winter", 3, "a-lift")``."""


@dataclass(frozen=True, slots=True)
class Heading:
    """One entry of a page's table of contents (headings of level 2 and 3)."""

    level: int
    id: str
    title: str


@dataclass(frozen=True)
class Page:
    """One generated page.

    Attributes:
        uri: path of its source, such as ``winter/week-03/a-lift.md``.
        title: its title, also its first heading.
        html: the whole content, first heading included.
        headings: for the table of contents.
        description: one sentence for the page's head.
        tags: words to find it by.
        in_nav: stands in the sidebar; other pages are reached from lists.
        parent: uri of the page above it, for the breadcrumbs; empty for the top.
        boost: weight in the search.
        jumps: it begins with links to its own parts; no table of contents stands beside it, and it
            is packed.
        aside: belongs to the page above it: no other leads on to it, and the search passes it over.
    """

    uri: str
    title: str
    html: str
    headings: tuple[Heading, ...] = ()
    description: str = ""
    tags: tuple[str, ...] = ()
    in_nav: bool = False
    parent: str = ""
    boost: float = 1.0
    jumps: bool = False
    aside: bool = False

    @property
    def url(self) -> str:
        """Its address below the site's root, such as ``winter/week-03/a-lift/``."""
        return url_of(self.uri)


@dataclass(frozen=True)
class Chapter:
    """A part of the sidebar: a title and the pages below it, in order."""

    title: str
    uris: tuple[str, ...]


@dataclass(frozen=True)
class Site:
    """All generated pages, data files and sidebar chapters.

    Attributes:
        title: the handbook's name.
        paper: what its pages are printed on.
        pages: in reading order: previous and next follow it.
        data: address of each data file and its text.
        chapters: the sidebar's program chapters.
        inserts: the parts that hand-written pages may take in, by name.
        files: address of each photo and film, and what makes its content.
        parts: source paths of the pages that are made together, by the name of what makes them.
    """

    title: str
    paper: Paper
    pages: tuple[Page, ...]
    data: dict[str, str] = field(default_factory=dict)
    chapters: tuple[Chapter, ...] = ()
    inserts: Mapping[str, Insert] = field(default_factory=dict)
    files: Mapping[str, Callable[[], bytes]] = field(default_factory=dict)
    parts: Mapping[Name, tuple[str, ...]] = field(default_factory=dict)


def url_of(uri: str) -> str:
    """Address of a page with directory addresses.

    >>> url_of("winter/week-03/a-lift.md"), url_of("winter/index.md"), url_of("index.md")
    ('winter/week-03/a-lift/', 'winter/', '')
    """
    stem = uri.removesuffix(".md")
    if stem == "index":
        return ""
    return stem.removesuffix("/index") + "/"


def link(from_url: str, to_url: str) -> str:
    """Relative address from one page to another; works from any sub-path and from files.

    >>> link("winter/week-03/a-lift/", "exercises/step-down/#week-3")
    '../../../exercises/step-down/#week-3'
    >>> link("", "winter/")
    'winter/'
    >>> link("winter/", "")
    '../'
    """
    path, mark, fragment = to_url.partition("#")
    if path == from_url:
        return mark + fragment if fragment else "./"
    relative = posixpath.relpath("/" + path, "/" + from_url)
    if relative == ".":
        relative = "./"
    elif path.endswith("/") or not path:
        relative += "/"
    return relative + mark + fragment
