"""The service worker that keeps a built site on a phone: which files, and in which version.

Browsers run it on https and on localhost only. On plain http pages need a signal; `offline.js`
says so.
"""

import hashlib
import json
from pathlib import Path

from strength_handbook.model.media import FOLDER
from strength_handbook.pages.media_html import KEPT

WORKER = Path(__file__).parent.parent / "theme" / "offline" / "worker.js"
NAME = "sw.js"

_LEFT_OUT = (".map", ".gz", ".xml")


def worker_text(site: Path) -> str:
    """The service worker of a built site.

    The version is a hash of all files, so that the same site gives the same worker.

    Args:
        site: folder of the built site.
    """
    files = {
        _address(path.relative_to(site).as_posix()): _hash(path.read_bytes())
        for path in sorted(site.rglob("*"))
        if path.is_file() and _wanted(path.relative_to(site))
    }
    listed = json.dumps(files, ensure_ascii=False, separators=(",", ":"))
    text = WORKER.read_text(encoding="utf-8")
    return text.replace("__FILES__", listed).replace("__VERSION__", _hash(listed.encode()))


def _wanted(path: Path) -> bool:
    """Everything a reader needs; not the data for other programs, not the worker itself."""
    if path.name == NAME or path.suffix in _LEFT_OUT:
        return False
    if path.parts[0] == "data":
        return path.suffix == ".js"
    if path.parts[0] == FOLDER:  # photos and films only where somebody asked for it
        return path.as_posix().startswith(f"{KEPT}/")
    # Word stemmers of other languages; English is built in.
    return "lunr" not in path.parts


def _address(path: str) -> str:
    """Address of a file below the root: a page's is its folder.

    >>> _address("winter/index.html"), _address("index.html"), _address("404.html")
    ('winter/', './', '404.html')
    """
    if path == "index.html":
        return "./"
    return path.removesuffix("index.html") if path.endswith("/index.html") else path


def _hash(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()[:12]
