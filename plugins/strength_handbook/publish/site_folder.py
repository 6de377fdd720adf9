"""Which folder a site may be written to: never one that a person's own files are in."""

from collections.abc import Iterable
from pathlib import Path


class SourceFolderError(ValueError):
    """A site folder whose files a build must not replace; the message says what to do."""


def refuse_sources(site: Path, project: Path, sources: Iterable[Path]) -> None:
    """Make sure that a site in this folder replaces nothing that somebody wrote.

    Links are followed, and names are compared as the file system compares them.

    Args:
        site: where the site is to be written.
        project: the folder with the configuration; a site may lie in it.
        sources: folders of a person's own files.

    Raises:
        SourceFolderError: where the site is one of these, holds one, or lies in one.
    """
    if site.exists() and not site.is_dir():
        raise SourceFolderError(f"the site can't be written to '{site}', which is a file")
    if _within(project, site):
        raise _refusal(site, "holds the whole project")
    for source in sources:
        if _within(source, site):
            raise _refusal(site, f"holds files that you write ('{source}')")
        if _within(site, source):
            raise _refusal(site, f"lies among files that you write ('{source}')")


def _refusal(site: Path, why: str) -> SourceFolderError:
    text = f"the site can't be written to '{site}': that folder {why}, and a build replaces what is"
    return SourceFolderError(f"{text} in it; name another, such as 'site_dir: site'")


def _within(inner: Path, outer: Path) -> bool:
    """Whether a folder is another one, or lies in it, by whatever names and links."""
    inner, outer = inner.resolve(), outer.resolve()
    if outer == inner or outer in inner.parents:
        return True
    if not outer.exists():
        return False
    return any(one.exists() and one.samefile(outer) for one in (inner, *inner.parents))
