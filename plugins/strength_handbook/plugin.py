"""The MkDocs plugin: hands the generated pages to MkDocs, and does nothing else.

In a build the files are read, checked and worked out first; then the site is written beside the
last one and takes its place at the very end: whatever goes wrong, the last good site stays as it
is. In `mkdocs serve` errors stop nothing: what the checks find stands on the pages; a file that
can't be read is shown as it was before, under a banner, and all others as they are.
"""

import logging
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Literal

from jinja2 import Environment
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, CombinedEvent, event_priority
from mkdocs.structure.files import Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as MkDocsPage
from mkdocs.structure.toc import get_toc
from mkdocs.utils.templates import TemplateContext

from strength_handbook.checked import Checked, check_folder, errors_in, warnings_in
from strength_handbook.pages.coach.drafts import coach_pages
from strength_handbook.pages.coach.on_page import Notes, noted
from strength_handbook.pages.inserts import UnknownInsertError
from strength_handbook.pages.page import Page, Site
from strength_handbook.pages.site import write_pages
from strength_handbook.plugin_built import Built, Marked, SearchEntries, report
from strength_handbook.plugin_config import HandbookConfig
from strength_handbook.plugin_files import ASSETS, guard, put_assets, put_only, put_site
from strength_handbook.plugin_nav import add_chapter, lead_through, leave_coaches_out
from strength_handbook.plugin_serve import Preview
from strength_handbook.publish import offline
from strength_handbook.publish.bundle import bundled, linked, theme_styles
from strength_handbook.publish.collect_later import collect_later
from strength_handbook.publish.contents import anchors, contents_tree
from strength_handbook.publish.front_matter import as_html, page_keys
from strength_handbook.publish.handwritten import check_handwritten, written_pages
from strength_handbook.publish.publication import Publication, UnpublishedError
from strength_handbook.publish.refusal import disk_refusal, refusal, theme_refusal
from strength_handbook.publish.sidebar import coach_chapter, fill_nav
from strength_handbook.publish.since import Since, read_since
from strength_handbook.publish.touch_up import packed, problem_banner, problem_page, touched_up
from strength_handbook.reading.problem import Problem

THEME = Path(__file__).parent / "theme"

EARLY, LATE = 100, -1000
"""Before and after what other plugins do at the same moment."""


class HandbookPlugin(BasePlugin[HandbookConfig]):
    """One object lives through all rebuilds of one `mkdocs serve`."""

    def __init__(self) -> None:
        self.serving = self.in_place = False
        self.publication = Publication(logging.getLogger("mkdocs"))
        self.last_good: Site | None = None
        self.errors: list[Problem] = []
        self.kept: Mapping[str, bytes] = {}
        self.held: frozenset[str] = frozenset()
        self.site: Site | None = None
        self.drafts: dict[str, Page] = {}
        self.pages: dict[str, Page] = {}
        self.found = SearchEntries()
        self.marked = Marked()
        self.notes = Notes()
        self.built: Built | None = None
        self.assets: dict[str, str] = {}

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Remember whether this is a build; its presence keeps this object between rebuilds."""
        self.serving = command == "serve"
        self.in_place = self.serving or dirty  # only looked at, on this computer
        self.last_good = self.built = None
        self.drafts, self.kept = {}, {}

    def on_serve(
        self, server: LiveReloadServer, *, config: MkDocsConfig, builder: Callable[[], None]
    ) -> LiveReloadServer:
        """After a save only what it changes is built again."""
        whole = not self.serving or self.built is None
        return server if whole else Preview(self, server, builder).attach(config)

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Put the handbook's own templates, styles and scripts on the site."""
        if not config.use_directory_urls:
            raise PluginError(
                "the handbook's addresses end in '/': delete 'use_directory_urls: false'"
            )
        if wrong := theme_refusal(config.theme.dirs):
            raise PluginError(wrong)
        guard(config, self.programs)
        self.publication.watch()
        config.theme.dirs.insert(1 if config.theme.custom_dir else 0, str(THEME))
        # In serve pages change all day: nothing is kept on the machine that looks at them. Nobody
        # else sees the coach's drafts.
        self.assets = bundled(THEME / ASSETS, "offline.js" if self.serving else "coach.css")
        for kind, listed in (("css", config.extra_css), ("js", config.extra_javascript)):
            listed[:0] = [f"{ASSETS}/{name}" for name in linked(self.assets, kind)]
        return config

    @collect_later
    def on_pre_build(self, *, config: MkDocsConfig) -> None:
        """Read, check and work out everything while the last site is still untouched."""
        self.pages, self.marked, self.built = {}, Marked(), None
        kept = self.kept if self.serving else None
        checked = check_folder(self.programs, drafts=self.config.drafts, kept=kept)
        self.kept = checked.raw or self.kept
        since = self.compared(checked)
        problems = [*checked.problems, *since.problems]
        # In serve, MkDocs puts the address of this machine there: no address for a card on a wall.
        base = "" if self.serving else config.site_url or ""
        worked = checked.shown if self.serving else checked.worked
        self.site = write_pages(worked, since.changes, base) if worked else None
        if self.site is not None:
            problems += check_handwritten(Path(config.docs_dir), tuple(self.site.inserts))
        # In serve only what can't be read holds something back, and only what is made of that file.
        self.errors = [
            problem
            for problem in errors_in(problems)
            if not (self.serving and worked) or problem.file in checked.held
        ]
        self.held = checked.held
        if self.errors and not self.serving:
            raise PluginError(refusal("error", self.errors))
        if config.strict and not self.serving and (warnings := warnings_in(problems)):
            raise PluginError(refusal("warning", warnings))
        report(problems)
        self.last_good = self.site = self.site or self.last_good
        if self.serving:
            # What is wrong in files that are not shown as they are stands in the banner.
            here = [problem for problem in problems if problem.file not in checked.held]
            self.notes = noted(checked, here, written_pages(Path(config.docs_dir)))
        if self.serving and (checked.desk or self.drafts):
            drafts = {page.uri: page for page in coach_pages(checked, since.changes)}
            # Files that can't be read leave nothing to make the others from.
            self.drafts = drafts if checked.desk else self.drafts | drafts
        if self.site is not None:
            config.site_name = as_html(self.site.title)
        if not self.in_place:
            config.site_dir = self.publication.begin(Path(config.site_dir))

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Add the generated pages; a hand-written page at the same address goes before them."""
        put_assets(files, self.assets, config)
        if self.site is None:  # nothing has been without errors yet
            page = Page("index.md", "Problems", problem_page(self.errors))
            self.pages = {page.uri: page} | self.drafts
            put_only(files, self.pages, config)
            config.nav = [page.uri]
            return files
        if not self.serving and self.config.publish != "coaches":
            leave_coaches_out(files, config)
        self.pages = put_site(files, self.site, self.drafts.values(), config)
        shown = {
            file.src_uri
            for file in files.documentation_pages()
            if file.src_uri not in self.pages or self.pages[file.src_uri].in_nav
        }
        config.nav = fill_nav(config.nav, self.site, shown)
        return files

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> None:  # noqa: ARG002  # MkDocs' signature
        """Tell `lean.html` the names of the theme's styles, which change with its version."""
        env.globals["theme_styles"] = theme_styles(config.theme.dirs)
        if self.built is not None:
            self.built.env = env

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> Navigation:
        """The coach's chapter; previous, next and breadcrumbs, also for pages outside the sidebar.

        In `config.nav` the drafts would each get a line on the terminal at every rebuild.
        """
        if self.drafts:
            add_chapter(nav, coach_chapter(self.drafts), self.drafts, files, config)
        shown = InclusionLevel.is_in_serve if self.serving else InclusionLevel.is_included
        every = files.documentation_pages(inclusion=shown)
        lead_through(nav, {file.src_uri: file.page for file in every if file.page}, self.pages)
        self.built = Built(config, files, nav) if self.serving else None
        return nav

    @event_priority(EARLY)  # before Material's tags and search, which read these keys
    def on_page_markdown(
        self,
        markdown: str,
        *,
        page: MkDocsPage,
        config: MkDocsConfig,  # noqa: ARG002  # MkDocs' signature
        files: Files,  # noqa: ARG002  # MkDocs' signature
    ) -> str:
        """Give a generated page its title and keys; faster than a block of YAML in its text."""
        generated = self.pages.get(page.file.src_uri)
        if generated is not None:
            page.meta.update(page_keys(generated, pasted=True))
        return markdown

    def on_page_content(
        self,
        html: str,
        *,
        page: MkDocsPage,
        config: MkDocsConfig,  # noqa: ARG002  # MkDocs' signature
        files: Files,  # noqa: ARG002  # MkDocs' signature
    ) -> str:
        """Put our HTML in place of what MkDocs made of the empty text."""
        generated = self.pages.get(page.file.src_uri)
        if generated is not None:
            page.toc = get_toc(contents_tree(generated))
            page.present_anchor_ids = anchors(generated)
            return self.notes.on(page.file.src_uri, generated.html)
        if self.site is None:
            return html
        html = self.notes.on(page.file.src_uri, html)
        try:
            return self.marked.filled(html, page, self.site.inserts)
        except UnknownInsertError as error:
            if self.serving:  # it stands on the page already
                return html
            raise PluginError(f"{page.file.src_uri}: {error}") from None

    @event_priority(EARLY)
    def _before_search(
        self,
        context: TemplateContext,
        *,
        page: MkDocsPage,
        config: MkDocsConfig,
        nav: Navigation,  # noqa: ARG002  # MkDocs' signature
    ) -> TemplateContext:
        """Lend the search what it keeps of a page."""
        self.found.lend(page, config, generated=page.file.src_uri in self.pages)
        return context

    @event_priority(-100)
    def _after_search(
        self,
        context: TemplateContext,
        *,
        page: MkDocsPage,
        config: MkDocsConfig,
        nav: Navigation,  # noqa: ARG002  # MkDocs' signature
    ) -> TemplateContext:
        """The whole content back in its place."""
        self.found.take_back(page, config, generated=page.file.src_uri in self.pages)
        return context

    on_page_context = CombinedEvent(_before_search, _after_search)

    def on_post_template(self, output: str, *, template_name: str, config: MkDocsConfig) -> str:
        """The same touches on the page for wrong addresses, and no empty sitemap."""
        if template_name == "sitemap.xml" and not config.site_url:
            return ""  # it lists nothing without a base address, and its archive holds the date
        return self._touched_up(output) if template_name.endswith(".html") else output

    def on_post_page(self, output: str, *, page: MkDocsPage, config: MkDocsConfig) -> str:  # noqa: ARG002  # MkDocs' signature
        """Names for screen readers, and the banner."""
        output = self._touched_up(output)
        return packed(output) if page.meta.get("packed") else output

    @event_priority(LATE)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """The worker that keeps the site on a phone; then the site takes the last one's place."""
        if not self.serving:  # there pages change all day
            site = Path(config.site_dir)
            (site / offline.NAME).write_text(offline.worker_text(site), encoding="utf-8")
        try:  # others may ask after the build where the site is
            config.site_dir = self.publication.finish(strict=config.strict) or config.site_dir
        except UnpublishedError as wrong:
            raise PluginError(str(wrong)) from None
        self.publication.end()

    @event_priority(LATE)
    def on_build_error(self, *, error: Exception) -> None:
        """Nothing is left of a site that did not come to its end; a full disk is said in words."""
        self.publication.end()
        if isinstance(error, OSError) and not self.serving:
            raise PluginError(disk_refusal(error)) from None

    def on_shutdown(self) -> None:
        """Also when somebody stops the build."""
        self.publication.end()

    @property
    def programs(self) -> Path:
        """The folder with the program files."""
        return Path(self.config.programs)

    def compared(self, checked: Checked) -> Since:
        """What changed since the earlier publication that mkdocs.yml names."""
        return read_since(Path(self.config.since) if self.config.since else None, checked)

    def _touched_up(self, html: str) -> str:
        if self.site is None:
            return touched_up(html)
        banner = problem_banner(self.errors, self.held) if self.errors else ""
        return touched_up(html, self.site.paper, banner)
