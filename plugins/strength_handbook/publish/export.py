"""The generated pages as Markdown files, for any other site builder.

Each file is a block of keys and one HTML block. HTML inside Markdown stays as it is as long as it
begins with a block element and holds no blank line (CommonMark 0.31.2, section 4.6).
"""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

from strength_handbook.model.paper import Paper
from strength_handbook.pages.page import Page, Site
from strength_handbook.publish.bundle import bundled
from strength_handbook.publish.command_errors import MisuseError
from strength_handbook.publish.front_matter import front_matter
from strength_handbook.publish.touch_up import paper_class

LIST = ".strength-handbook-export"
"""File in an exported folder that names what the export wrote, so that it may replace it."""

THEME = Path(__file__).parent.parent / "theme"
ASSETS = "assets/strength-handbook"

_BLANK = re.compile(r"\n[ \t]*(?=\n)")
_PRE = re.compile(r"<pre\b.*?</pre>", re.DOTALL)


class ForeignFolderError(MisuseError):
    """A folder with files that no export wrote."""


def export(site: Site, out: Path) -> int:
    """Write pages, data and assets; files of an earlier export that are gone now are deleted.

    Args:
        site: the generated site.
        out: the folder, made if it is missing.

    Returns:
        How many files were written.

    Raises:
        ForeignFolderError: where the folder holds files that no export wrote; the message says
            what to do.
    """
    before = _written_before(out)
    texts = dict(_texts(site))
    out.mkdir(parents=True, exist_ok=True)
    for address, content in texts.items():
        path = out / address
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    for address in before - set(texts):
        (out / address).unlink(missing_ok=True)
        _remove_if_empty((out / address).parent, out)
    (out / LIST).write_text("".join(f"{address}\n" for address in sorted(texts)), encoding="utf-8")
    return len(texts)


def markdown(page: Page, paper: Paper) -> str:
    """A page as a Markdown file, for some paper."""
    html = _PRE.sub(lambda pre: pre[0].replace("\n", "&#10;"), page.html)
    block = _BLANK.sub("", html).strip()
    return f"{front_matter(page)}\n<div{paper_class(paper)}>\n{block}\n</div>\n"


def _texts(site: Site) -> Iterator[tuple[str, bytes]]:
    """Address and content of every file."""
    for page in site.pages:
        yield page.uri, markdown(page, site.paper).encode()
    for address, text in site.data.items():
        yield address, text.encode()
    for address, make in site.files.items():
        yield address, make()
    for path in sorted((THEME / "assets").rglob("*.*")):
        if path.suffix not in (".css", ".js"):
            yield path.relative_to(THEME).as_posix(), path.read_bytes()
    # Drafts are not exported, and the worker that offline.js asks for comes with our own build.
    for name, text in bundled(THEME / ASSETS, "coach.css", "offline.js", versions=False).items():
        yield f"{ASSETS}/{name}", text.encode()


def _written_before(out: Path) -> set[str]:
    """What an earlier export wrote into the folder."""
    if not out.is_dir() or not any(out.iterdir()):
        return set()
    if not (out / LIST).is_file():
        raise ForeignFolderError(
            f"'{out}' holds files that no export wrote; name an empty folder, or empty this one"
        )
    addresses = (out / LIST).read_text(encoding="utf-8").splitlines()
    root = out.resolve()
    return {address for address in addresses if root in (out / address).resolve().parents}


def _remove_if_empty(folder: Path, top: Path) -> None:
    while folder != top and folder.is_dir() and not any(folder.iterdir()):
        shutil.rmtree(folder)
        folder = folder.parent
