"""MkDocs' list of files with the generated pages, data, scripts and styles in it."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.structure.files import File, Files, InclusionLevel

from strength_handbook.pages.coach.frame import DRAFTS
from strength_handbook.pages.page import Page, Site
from strength_handbook.publish.site_folder import SourceFolderError, refuse_sources
from strength_handbook.publish.where_there import where_there

ASSETS = "assets/strength-handbook"


def guard(config: MkDocsConfig, programs: Path) -> None:
    """Refuse a site's folder in which somebody's own files would be written over.

    Raises:
        PluginError: saying which.
    """
    project = Path(config.config_file_path).parent if config.config_file_path else Path.cwd()
    own = [Path(one) for one in (config.docs_dir, config.theme.custom_dir) if one]
    try:
        refuse_sources(Path(config.site_dir), project, [programs, *own])
    except SourceFolderError as wrong:
        raise PluginError(str(wrong)) from None


def put_assets(files: Files, assets: Mapping[str, str], config: MkDocsConfig) -> None:
    """The bundled scripts and styles in place of their sources.

    Args:
        files: changed in place.
        assets: text by file name.
        config: of the site.
    """
    for file in [one for one in files if one.src_uri.startswith(f"{ASSETS}/")]:
        if file.src_uri.endswith((".js", ".css")):
            files.remove(file)
    for name, text in assets.items():
        files.append(File.generated(config, f"{ASSETS}/{name}", content=text))


def put_site(
    files: Files, site: Site, drafts: Iterable[Page], config: MkDocsConfig
) -> dict[str, Page]:
    """Add pages, the coach's drafts, data and media.

    Returns:
        The pages that were added, by source path.
    """
    added = put_pages(files, (*site.pages, *drafts), config)
    put_data(files, site.data, config)
    put_media(files, site.files, config)
    return added


def put_pages(files: Files, pages: Iterable[Page], config: MkDocsConfig) -> dict[str, Page]:
    """Add generated pages; a hand-written page at the same address goes before them.

    Returns:
        Those that were added, by source path.
    """
    taken = {file.dest_uri for file in files}
    sources = {file.src_uri for file in files}
    added = {}
    for page in pages:
        file = File.generated(config, page.uri, content="", inclusion=_level(page))
        if file.dest_uri not in taken:
            added[page.uri] = replace(page, html=where_there(page.html, sources))
            files.append(file)
    return added


def put_data(files: Files, data: Mapping[str, str], config: MkDocsConfig) -> None:
    """Add data files, by address; a hand-written file at the same address goes before them."""
    taken = {file.dest_uri for file in files}
    for address, text in data.items():
        if address not in taken:
            files.append(File.generated(config, address, content=text))


def put_media(files: Files, media: Mapping[str, Callable[[], bytes]], config: MkDocsConfig) -> None:
    """Add photos and films, by address."""
    for address, make in media.items():
        files.append(File.generated(config, address, content=make()))


def put_only(files: Files, pages: Iterable[str], config: MkDocsConfig) -> None:
    """These pages in place of all others."""
    for file in files.documentation_pages():
        files.remove(file)
    for uri in pages:
        files.append(File.generated(config, uri, content=""))


def _level(page: Page) -> InclusionLevel:
    if page.uri.startswith(DRAFTS):
        return InclusionLevel.DRAFT
    return InclusionLevel.UNDEFINED if page.in_nav else InclusionLevel.NOT_IN_NAV
