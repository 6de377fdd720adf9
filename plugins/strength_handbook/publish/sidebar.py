"""Where generated pages stand: in the sidebar, and between which pages before and after."""

from collections.abc import Collection, Iterable, Iterator, Sequence
from typing import Any

from strength_handbook.pages.coach.frame import DRAFTS, TITLE
from strength_handbook.pages.page import Site
from strength_handbook.publish.front_matter import as_html

PLACE = "programs/"
"""The entry of `nav` in mkdocs.yml where the programs go."""

_FIRST = ("index.md",)
_THEN = (
    "my-numbers.md", "my-log.md", "exercises/index.md", "room.md", "cards.md", "safety.md",
    "numbers.md", "words.md",
)  # fmt: skip
_LAST = ("tags.md",)


def fill_nav(nav: Sequence[Any] | None, site: Site, pages: Collection[str]) -> list[Any]:
    """The nav of mkdocs.yml with the programs' chapters in place of the entry `programs/`.

    Args:
        nav: what mkdocs.yml says, or None where it says nothing: then a nav is made up.
        site: the generated site.
        pages: source paths of all pages that may stand in the sidebar, for the made-up one.
    """
    return list(_filled(_usual_nav(site, pages) if nav is None else nav, site))


def _filled(entries: Iterable[Any], site: Site) -> Iterator[Any]:
    chapters = [{as_html(chapter.title): list(chapter.uris)} for chapter in site.chapters]
    for entry in entries:
        if entry == PLACE:
            yield from chapters
        elif isinstance(entry, dict):
            yield {
                title: chapters
                if value == PLACE
                else list(_filled(value, site))
                if isinstance(value, list)
                else value
                for title, value in entry.items()
            }
        else:
            yield entry


def _usual_nav(site: Site, pages: Collection[str]) -> list[str]:
    """Home, programs, the fixed pages, whatever else there is, tags."""
    in_chapters = {uri for chapter in site.chapters for uri in chapter.uris}
    placed = {*_FIRST, *_THEN, *_LAST, *in_chapters}
    others = sorted(uri for uri in pages if uri not in placed)
    order = [*_FIRST, PLACE, *_THEN, *others, *_LAST]
    return [uri for uri in order if uri == PLACE or uri in pages]


def coach_chapter(drafts: Iterable[str]) -> list[dict[str, Any]]:
    """The coach's pages as the last chapter of the nav; empty where there are none.

    >>> coach_chapter(["coach/index.md", "coach/hill-run/changes.md"])
    [{"Coach's desk": ['coach/index.md', {'Hill run': ['coach/hill-run/changes.md']}]}]
    """
    for_all: list[Any] = []
    programs: dict[str, list[str]] = {}
    for uri in drafts:
        folder = uri.removeprefix(DRAFTS).rpartition("/")[0]
        (programs.setdefault(folder, []) if folder else for_all).append(uri)
    chapters = [{folder.replace("-", " ").capitalize(): uris} for folder, uris in programs.items()]
    entries = [*for_all, *chapters]
    return [{TITLE: entries}] if entries else []


def reading_order(in_nav: Sequence[str], in_site: Sequence[str]) -> list[str]:
    """All pages in the order in which somebody would leaf through them.

    The sidebar gives the order. Pages outside it follow the page that they follow among the
    generated pages; those before any page of the sidebar come last.

    >>> reading_order(["home", "week", "room"], ["week", "session", "room"])
    ['home', 'week', 'session', 'room']
    """
    followers: dict[str, list[str]] = {uri: [] for uri in in_nav}
    loose: list[str] = []
    run = loose
    for uri in in_site:
        if uri in followers:
            run = followers[uri]
        else:
            run.append(uri)
    ordered = [page for uri, after in followers.items() for page in (uri, *after)]
    return ordered + loose
