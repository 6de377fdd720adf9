"""MkDocs' nav with the generated pages: chapters, previous and next, breadcrumbs."""

from collections.abc import Iterable, Mapping
from typing import Any

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure import StructureItem
from mkdocs.structure.files import Files
from mkdocs.structure.nav import Navigation, Section
from mkdocs.structure.pages import Page as MkDocsPage

from strength_handbook.pages.page import Page
from strength_handbook.publish.for_coaches import FOR_COACHES, without_coaches
from strength_handbook.publish.sidebar import reading_order


def leave_coaches_out(files: Files, config: MkDocsConfig) -> None:
    """No hand-written page for coaches, and no entry of the nav for one; both changed in place."""
    for file in [one for one in files if one.src_uri.startswith(FOR_COACHES)]:
        files.remove(file)
    config.nav = config.nav and without_coaches(config.nav)


def add_chapter(
    nav: Navigation, chapter: Iterable[Any], uris: Iterable[str], files: Files, config: MkDocsConfig
) -> None:
    """Put a chapter at the end.

    Args:
        nav: changed in place.
        chapter: entries as `nav` in mkdocs.yml has them.
        uris: source paths of its pages, in order.
        files: all files of the site.
        config: of the site.
    """
    nav.items.extend(_items(chapter, files, config))
    found = map(files.get_file_from_path, uris)
    nav.pages.extend(file.page for file in found if file and file.page)


def lead_through(
    nav: Navigation, known: Mapping[str, MkDocsPage], generated: Mapping[str, Page]
) -> None:
    """Previous, next and breadcrumbs, also for pages outside the sidebar.

    Args:
        nav: the sidebar.
        known: pages that are shown, by source path; changed in place.
        generated: pages that the plugin writes, by source path.
    """
    in_nav = [page.file.src_uri for page in nav.pages]
    order = reading_order(
        in_nav, [uri for uri, page in generated.items() if not page.aside and uri in known]
    )
    pages = [None, *(known[uri] for uri in order), None]
    for before, page, after in zip(pages, pages[1:], pages[2:], strict=False):
        if page is not None:
            page.previous_page, page.next_page = before, after
    for uri in set(known).intersection(generated).difference(in_nav):
        above = known.get(generated[uri].parent)
        known[uri].parent = _section_of(above) if above else None


def _items(entries: Iterable[Any], files: Files, config: MkDocsConfig) -> list[StructureItem]:
    """Entries of a nav as MkDocs' own sections and pages."""
    found: list[StructureItem] = []
    for entry in entries:
        if isinstance(entry, dict):
            for title, inside in entry.items():
                section = Section(title, _items(inside, files, config))
                for child in section.children:
                    child.parent = section
                found.append(section)
        elif file := files.get_file_from_path(entry):
            found.append(file.page or MkDocsPage(None, file, config))
    return found


def _section_of(above: MkDocsPage) -> Any:
    """The section that a page is the front of, else the page: breadcrumbs show either once."""
    section = above.parent
    if isinstance(section, Section) and above.is_index and section.children[0] is above:
        return section
    return above
