"""One save of a program file on its way to the site that `mkdocs serve` shows.

The files are read and worked out first. Each page is made when somebody asks for it, or later in
turn, and goes through MkDocs only where it is another than before; then come the data files and
the checks. What changes more than the inside of pages (a new page, a title, a tag, an error) is
left to a whole build.
"""

from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Protocol

from strength_handbook.checked import Checked, Drafted, check_drafted, draft_folder
from strength_handbook.pages.coach.drafts import coach_pages
from strength_handbook.pages.coach.frame import DRAFTS
from strength_handbook.pages.coach.on_page import Notes, noted
from strength_handbook.pages.media_html import media_files
from strength_handbook.pages.page import Name, Page, Site
from strength_handbook.pages.site import SitePart, chapters, data_files, inserts, site_parts
from strength_handbook.plugin_built import Built, Marked, SearchEntries, report
from strength_handbook.plugin_config import HandbookConfig
from strength_handbook.publish.handwritten import check_handwritten, written_pages
from strength_handbook.publish.since import Since
from strength_handbook.publish.where_there import where_there
from strength_handbook.reading.problem import Problem


class Handbook(Protocol):
    """What is shown, and where it came from: the plugin."""

    config: HandbookConfig
    errors: list[Problem]
    site: Site | None
    last_good: Site | None
    drafts: dict[str, Page]
    pages: dict[str, Page]
    marked: Marked
    notes: Notes
    found: SearchEntries
    built: Built | None

    @property
    def programs(self) -> Path:
        """The folder with the program files."""

    def compared(self, checked: Checked) -> Since:
        """What changed since an earlier publication."""


def begin(handbook: Handbook, leave: Callable[[], None]) -> "ServedEdition | None":
    """Read and work out what was saved; None where it takes a whole build.

    Args:
        handbook: what is shown; from now on its inserts are those of the new state.
        leave: called as soon as it comes to light that it takes a whole build.
    """
    built, site = handbook.built, handbook.site
    if built is None or site is None or handbook.errors:
        return None
    drafted = draft_folder(handbook.programs)
    if drafted.desk is None:
        return None
    worked = drafted.desk.worked
    since = handbook.compared(Checked(None, (), drafted.desk))
    parts = {part.name: part for part in site_parts(worked, since.changes)}
    room, files = worked.book.room, (*data_files(worked), *media_files(worked))
    frame = (room.gym, room.printed_on(), chapters(worked), tuple(parts), files)
    shown = (site.title, site.paper, site.chapters, tuple(site.parts), (*site.data, *site.files))
    if frame != shown:
        return None
    handbook.site = site = replace(site, inserts=inserts(worked, since.changes))
    return ServedEdition(handbook, built, site, drafted, since, parts, leave)


class ServedEdition:
    """One state of the program files."""

    def __init__(
        self,
        handbook: Handbook,
        built: Built,
        site: Site,
        drafted: Drafted,
        since: Since,
        parts: dict[Name, SitePart],
        leave: Callable[[], None],
    ) -> None:
        """Begin with nothing made; arguments as in `begin`, and what came out of the files."""
        self._handbook, self._built, self._site = handbook, built, site
        self._drafted, self._since, self._todo, self._leave = drafted, since, parts, leave
        self._names = {uri: name for name, uris in site.parts.items() for uri in uris}
        self._made: dict[Name, tuple[Page, ...]] = {}
        self._sources = built.sources
        self._left = False
        self.noted: frozenset[str] = frozenset()
        """Pages on which the checks say something else than before, once they have come to their
        end."""

    def make(self, uri: str) -> None:
        """Bring one page up to date."""
        name = self._names.get(uri)
        if name is not None and name in self._todo:
            self._make(name)
        elif name is None and not uri.startswith(DRAFTS):
            self._fill(uri)

    def steps(self, pause: Callable[[], None] = lambda: None) -> Iterator[str]:
        """All that is left to do, in steps between which a browser is answered.

        Args:
            pause: called now and then inside long steps.
        """
        for name in list(self._todo):
            if name in self._todo:
                self._make(name)
                yield "page"
        desk = self._drafted.desk
        assert desk is not None  # noqa: S101  # else it had not begun
        data = {}
        for address, text in data_files(desk.worked).items():
            data[address] = text()
            self._built.write(address, data[address])
            yield "data"
        for uri in self._handbook.marked:
            self._fill(uri)
            yield "hand-written page"
        may = self._handbook.config.drafts
        checked = check_drafted(self._drafted, lambda _: pause(), drafts=may)
        yield "checks"
        drafts = {page.uri: page for page in coach_pages(checked, self._since.changes)}
        yield "coach's pages"
        self._end(checked, data, drafts)

    def _fill(self, uri: str) -> None:
        """Build a hand-written page again where a part that it takes in is another."""
        if self._handbook.marked.differs(uri, self._site.inserts):
            self._built.again(uri)

    def _make(self, name: Name) -> None:
        pages = tuple(self._todo[name].make())
        self._made[name] = pages
        del self._todo[name]
        for page in pages:
            self._put(page)

    def _put(self, page: Page) -> None:
        """Build a page again where it is another; all where others show it differently."""
        page = replace(page, html=where_there(page.html, self._sources))
        shown = self._handbook.pages.get(page.uri)
        if shown is None and page.uri in self._names:
            return  # a hand-written page stands in its place
        if shown is None or _frame(shown) != _frame(page):
            self._whole()
        elif shown != page:
            self._handbook.pages[page.uri] = page
            self._built.again(page.uri)

    def _end(self, checked: Checked, data: dict[str, str], drafts: dict[str, Page]) -> None:
        """What the checks say, and what is made of all pages."""
        handbook = self._handbook
        docs = Path(self._built.config.docs_dir)
        written = check_handwritten(docs, tuple(self._site.inserts))
        problems = [*checked.problems, *self._since.problems]
        if checked.shown is None or drafts.keys() != handbook.drafts.keys():
            self._whole()
        if self._left:
            return
        report(problems)
        before, handbook.notes = (
            handbook.notes,
            noted(checked, [*problems, *written], written_pages(docs)),
        )
        self.noted = frozenset(handbook.notes.others(before) & set(self._built.uris))
        for uri in sorted(self.noted):
            self._built.again(uri)
        for page in drafts.values():
            self._put(page)
        handbook.drafts = drafts
        pages = tuple(page for name in self._site.parts for page in self._made[name])
        handbook.site = handbook.last_good = replace(self._site, pages=pages, data=data)
        handbook.found.write(self._built.config, self._built.uris)
        self._built.check_anchors()

    def _whole(self) -> None:
        self._left = True
        self._leave()


def _frame(page: Page) -> tuple[object, ...]:
    """What other pages show of a page: in lists, paths and leaves before and after."""
    return page.title, page.tags, page.in_nav, page.parent
