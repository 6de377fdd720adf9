"""The MkDocs plugin: hands the generated pages to MkDocs, and does nothing else.

In a build the files are read, checked and worked out in `on_pre_build`, the last moment before
MkDocs empties the site folder: with an error in them the last good site stays as it is. In
`mkdocs serve` errors stop nothing; the last good pages are shown under a banner that lists them.
"""

from pathlib import Path
from typing import Literal

from jinja2 import Environment
from mkdocs.config import config_options as opt
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin, CombinedEvent, event_priority, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page as MkDocsPage
from mkdocs.structure.toc import get_toc
from mkdocs.utils.templates import TemplateContext

from strength_handbook.checked import check_folder, counted, errors_in, warnings_in
from strength_handbook.pages.coach import coach_pages
from strength_handbook.pages.coach_frame import DRAFTS
from strength_handbook.pages.inserts import UnknownInsertError, fill_inserts
from strength_handbook.pages.page import Page, Site
from strength_handbook.pages.site import write_pages
from strength_handbook.plugin_nav import add_chapter, lead_through
from strength_handbook.publish import offline
from strength_handbook.publish.bundle import bundled, theme_styles
from strength_handbook.publish.collect_later import collect_later
from strength_handbook.publish.contents import anchors, contents_tree
from strength_handbook.publish.front_matter import page_keys
from strength_handbook.publish.handwritten import check_handwritten
from strength_handbook.publish.search_text import search_text
from strength_handbook.publish.sidebar import coach_chapter, fill_nav
from strength_handbook.publish.since import read_since
from strength_handbook.publish.touch_up import (
    name_landmarks,
    packed,
    problem_banner,
    problem_page,
    with_banner,
    without_gaps,
)
from strength_handbook.reading.problem import Problem, Severity

THEME = Path(__file__).parent / "theme"
ASSETS = "assets/strength-handbook"

log = get_plugin_logger(__name__)


class HandbookConfig(Config):
    """Options under `strength-handbook` in mkdocs.yml."""

    programs = opt.Dir(exists=False, default="programs")
    """The folder with the program files, relative to mkdocs.yml."""

    since = opt.Optional(opt.FilesystemObject(exists=False))
    """`data/<program>.json` of the last publication, or a folder of such files; only read."""


class HandbookPlugin(BasePlugin[HandbookConfig]):
    """One object lives through all rebuilds of one `mkdocs serve`."""

    def __init__(self) -> None:
        self.serving = False
        self.last_good: Site | None = None
        self.errors: list[Problem] = []
        self.site: Site | None = None
        self.drafts: dict[str, Page] = {}
        self.pages: dict[str, Page] = {}
        self.content: str | None = None
        self.assets: dict[str, str] = {}

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:  # noqa: ARG002  # MkDocs' signature
        """Remember whether this is a build; its presence keeps this object between rebuilds."""
        self.serving = command == "serve"
        self.last_good = None
        self.drafts = {}

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Put the handbook's own templates, styles and scripts on the site."""
        if not config.use_directory_urls:
            raise PluginError(
                "the handbook's addresses end in '/': delete 'use_directory_urls: false'"
            )
        config.theme.dirs.insert(1 if config.theme.custom_dir else 0, str(THEME))
        # In serve pages change all day: nothing is kept on the machine that looks at them. Nobody
        # else sees the coach's drafts.
        self.assets = bundled(THEME / ASSETS, "offline.js" if self.serving else "coach.css")
        for kind, listed in (("css", config.extra_css), ("js", config.extra_javascript)):
            listed[:0] = [f"{ASSETS}/{name}" for name in self.assets if name.endswith(kind)]
        return config

    @collect_later
    def on_pre_build(self, *, config: MkDocsConfig) -> None:
        """Read, check and work out everything while the last site is still untouched."""
        self.pages = {}
        checked = check_folder(Path(self.config.programs))
        since = read_since(Path(self.config.since) if self.config.since else None, checked)
        problems = [*checked.problems, *since.problems]
        # In serve, MkDocs puts the address of this machine there: no address for a card on a wall.
        base = "" if self.serving else config.site_url or ""
        self.site = write_pages(checked.worked, since.changes, base) if checked.worked else None
        if self.site is not None:
            problems += check_handwritten(Path(config.docs_dir), tuple(self.site.inserts))
        self.errors = errors_in(problems)
        if self.errors and not self.serving:
            raise PluginError(_refusal("error", self.errors))
        warnings = warnings_in(problems)
        if warnings and config.strict and not self.serving:
            raise PluginError(_refusal("warning", warnings))
        for problem in problems:
            level = {Severity.ERROR: log.error, Severity.WARN: log.warning, Severity.NOTE: log.info}
            level[problem.severity](str(problem))
        if self.site is None:
            self.site = self.last_good
        self.last_good = self.site
        if self.serving and (checked.desk or self.drafts):
            drafts = {page.uri: page for page in coach_pages(checked, since.changes)}
            # Files that can't be read leave nothing to make the others from.
            self.drafts = drafts if checked.desk else self.drafts | drafts
        if self.site is not None:
            config.site_name = self.site.title

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Add the generated pages; a hand-written page at the same address goes before them."""
        for file in [one for one in files if one.src_uri.startswith(f"{ASSETS}/")]:
            if file.src_uri.endswith((".js", ".css")):
                files.remove(file)
        for name, text in self.assets.items():
            files.append(File.generated(config, f"{ASSETS}/{name}", content=text))
        if self.site is None:
            return self._only_problems(files, config)
        taken = {file.dest_uri for file in files}
        for page in (*self.site.pages, *self.drafts.values()):
            file = File.generated(config, page.uri, content="", inclusion=_level(page))
            if file.dest_uri not in taken:
                self.pages[page.uri] = page
                files.append(file)
        for address, text in self.site.data.items():
            if address not in taken:
                files.append(File.generated(config, address, content=text))
        shown = {
            file.src_uri
            for file in files.documentation_pages()
            if file.src_uri not in self.pages or self.pages[file.src_uri].in_nav
        }
        config.nav = fill_nav(config.nav, self.site, shown)
        return files

    def _only_problems(self, files: Files, config: MkDocsConfig) -> Files:
        """A site of one page, while nothing has been without errors yet."""
        for file in files.documentation_pages():
            files.remove(file)
        page = Page("index.md", "Problems", problem_page(self.errors))
        self.pages = {page.uri: page} | self.drafts
        for uri in self.pages:
            files.append(File.generated(config, uri, content=""))
        config.nav = [page.uri]
        return files

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> None:  # noqa: ARG002  # MkDocs' signature
        """Tell `lean.html` the names of the theme's styles, which change with its version."""
        env.globals["theme_styles"] = theme_styles(config.theme.dirs)

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> Navigation:
        """The coach's chapter; previous, next and breadcrumbs, also for pages outside the sidebar.

        In `config.nav` the drafts would each get a line on the terminal at every rebuild.
        """
        if self.drafts:
            add_chapter(nav, coach_chapter(self.drafts), self.drafts, files, config)
        shown = InclusionLevel.is_in_serve if self.serving else InclusionLevel.is_included
        every = files.documentation_pages(inclusion=shown)
        lead_through(nav, {file.src_uri: file.page for file in every if file.page}, self.pages)
        return nav

    @event_priority(100)  # before Material's tags and search, which read these keys
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
            return generated.html
        if self.site is None:
            return html
        try:
            return fill_inserts(html, page.url, self.site.inserts)
        except UnknownInsertError as error:
            if self.errors:  # it stands in the banner already
                return html
            raise PluginError(f"{page.file.src_uri}: {error}") from None

    @event_priority(100)
    def _before_search(
        self,
        context: TemplateContext,
        *,
        page: MkDocsPage,
        config: MkDocsConfig,  # noqa: ARG002  # MkDocs' signature
        nav: Navigation,  # noqa: ARG002  # MkDocs' signature
    ) -> TemplateContext:
        """Lend the search only what it keeps of a generated page."""
        if page.file.src_uri in self.pages:
            self.content, page.content = page.content, search_text(page.content or "")
        return context

    @event_priority(-100)
    def _after_search(
        self,
        context: TemplateContext,
        *,
        page: MkDocsPage,
        config: MkDocsConfig,  # noqa: ARG002  # MkDocs' signature
        nav: Navigation,  # noqa: ARG002  # MkDocs' signature
    ) -> TemplateContext:
        """The whole content back in its place."""
        if page.file.src_uri in self.pages:
            self.content, page.content = None, self.content
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

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """The worker that keeps the site on a phone; not in serve, where pages change all day."""
        if not self.serving:
            site = Path(config.site_dir)
            (site / offline.NAME).write_text(offline.worker_text(site), encoding="utf-8")

    def _touched_up(self, html: str) -> str:
        html = without_gaps(name_landmarks(html))
        if self.errors and self.site is not None:
            html = with_banner(html, problem_banner(self.errors))
        return html


def _refusal(kind: str, problems: list[Problem]) -> str:
    """Why nothing is built."""
    lines = "\n".join(map(str, problems))
    end = f"{counted(len(problems), kind)}: nothing was built, the last good site is untouched."
    how = " Mend each, or accept it with a reason in program.yml." if kind == "warning" else ""
    return f"The files have {kind}s.\n{lines}\n{end}{how}"


def _level(page: Page) -> InclusionLevel:
    if page.uri.startswith(DRAFTS):
        return InclusionLevel.DRAFT
    return InclusionLevel.UNDEFINED if page.in_nav else InclusionLevel.NOT_IN_NAV
