"""What MkDocs made of the handbook in its last whole build, to build single pages of it again."""

from collections.abc import Iterable, Iterator, Mapping, MutableMapping
from pathlib import Path
from typing import Any

from jinja2 import Environment
from mkdocs.commands.build import _build_page, _populate_page
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.plugins import get_plugin_logger
from mkdocs.structure.files import Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as MkDocsPage

from strength_handbook.pages.inserts import Insert, fill_inserts
from strength_handbook.publish.search_text import search_text
from strength_handbook.publish.search_words import with_words
from strength_handbook.reading.problem import Problem, Severity

log = get_plugin_logger(__name__)


def report(problems: Iterable[Problem]) -> None:
    """Say on the terminal what was found."""
    level = {Severity.ERROR: log.error, Severity.WARN: log.warning, Severity.NOTE: log.info}
    for problem in problems:
        level[problem.severity](str(problem))


class SearchEntries:
    """What the search keeps of each page: lent a shorter content, and kept by the page."""

    def __init__(self) -> None:
        self._entries: dict[str, list[Any]] = {}
        self._content: str | None = None
        self._meta: MutableMapping[str, Any] = {}
        self._before = 0

    def lend(self, page: MkDocsPage, config: MkDocsConfig, *, generated: bool) -> None:
        """Lend the search what it keeps of a page, and more words to find it by."""
        self._before = len(_index_entries(config))
        self._meta, page.meta = (
            page.meta,
            with_words(page.meta, page.file.src_uri, page.title or ""),
        )
        self._content = page.content
        if generated:
            page.content = search_text(page.content or "")

    def take_back(self, page: MkDocsPage, config: MkDocsConfig, *, generated: bool) -> None:
        """The whole content back in its place; what the search has found stays beside the page."""
        page.meta = self._meta
        if generated:
            page.content = self._content
        self._content = None
        self._entries[page.file.src_uri] = _index_entries(config)[self._before :]

    def write(self, config: MkDocsConfig, uris: list[str]) -> None:
        """Write the search index of these pages, as the search does after a build."""
        plugin = _search(config)
        if plugin is not None:
            entries = [entry for uri in uris for entry in self._entries.get(uri, ())]
            plugin.search_index.entries[:] = entries
            plugin.on_post_build(config=config)


class Marked:
    """Hand-written pages that take in parts of the handbook, as they were and as they are shown."""

    def __init__(self) -> None:
        self._pages: dict[str, tuple[str, str, str]] = {}

    def __iter__(self) -> Iterator[str]:
        return iter(tuple(self._pages))

    def filled(self, html: str, page: MkDocsPage, inserts: Mapping[str, Insert]) -> str:
        """A page with the parts that it takes in.

        Raises:
            UnknownInsertError: where it asks for one that there is not.
        """
        filled = fill_inserts(html, page.url, inserts)
        if filled != html:
            self._pages[page.file.src_uri] = (page.url, html, filled)
        return filled

    def differs(self, uri: str, inserts: Mapping[str, Insert]) -> bool:
        """True where these parts make another page of it."""
        if uri not in self._pages:
            return False
        url, html, filled = self._pages[uri]
        return fill_inserts(html, url, inserts) != filled


class Built:
    """One whole build."""

    def __init__(self, config: MkDocsConfig, files: Files, nav: Navigation) -> None:
        self.config, self.files, self.nav = config, files, nav
        self.env: Environment | None = None

    @property
    def sources(self) -> frozenset[str]:
        """Paths of all files that the site is made from, in their folder."""
        return frozenset(file.src_uri for file in self.files)

    @property
    def uris(self) -> list[str]:
        """Source paths of all pages, in the order in which they are built."""
        shown = self.files.documentation_pages(inclusion=InclusionLevel.is_in_serve)
        return [file.src_uri for file in shown]

    def uri_at(self, address: str) -> str | None:
        """Source path of the page at an address below the site's root; None where there is none."""
        shown = self.files.documentation_pages(inclusion=InclusionLevel.is_in_serve)
        return next(
            (file.src_uri for file in shown if file.url in (address, address or "./")), None
        )

    def again(self, uri: str) -> None:
        """Build one page as a whole build would."""
        file = self.files.get_file_from_path(uri)
        assert file is not None  # noqa: S101  # its frame is the last build's
        assert file.page is not None  # noqa: S101
        assert self.env is not None  # noqa: S101
        shown = self.files.documentation_pages(inclusion=InclusionLevel.is_in_serve)
        _populate_page(file.page, self.config, self.files)
        _build_page(
            file.page, self.config, shown, self.nav, self.env,
            excluded=file.inclusion.is_excluded(),
        )  # fmt: skip

    def write(self, address: str, text: str) -> None:
        """Write a data file, where its text is another than what stands there."""
        path, content = Path(self.config.site_dir) / address, text.encode()
        if not path.is_file() or path.read_bytes() != content:
            path.write_bytes(content)

    def check_anchors(self) -> None:
        """Say which links lead to nothing."""
        level = self.config.validation.links.anchors
        for file in self.files.documentation_pages(inclusion=InclusionLevel.is_in_serve):
            if file.page is not None:
                file.page.validate_anchor_links(files=self.files, log_level=level)


def _search(config: MkDocsConfig) -> Any:
    """The search plugin that stands in mkdocs.yml, or None."""
    found = (one for one in config.plugins.values() if hasattr(one, "search_index"))
    return next((one for one in found if hasattr(one.search_index, "entries")), None)


def _index_entries(config: MkDocsConfig) -> list[Any]:
    plugin = _search(config)
    entries: list[Any] = [] if plugin is None else plugin.search_index.entries
    return entries
