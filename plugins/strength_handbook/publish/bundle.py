"""The handbook's own scripts and styles as they go to a phone: few files, without comments.

What stands at the top of the folder is needed on every page and becomes one script and one style
sheet; files in folders below it are loaded by the pages that use them.
"""

import hashlib
from collections.abc import Mapping
from functools import cache
from pathlib import Path

from rcssmin import cssmin
from rjsmin import jsmin

_LAST = "print.css"
"""Rules for paper come after those for the screen, which they change."""


@cache
def bundled(folder: Path, without: str = "") -> dict[str, str]:
    """Published text of every script and style sheet below a folder, by path.

    Args:
        folder: the folder with the sources.
        without: name of a script that is left out.
    """
    scripts, styles = [], []
    published: dict[str, str] = {}
    for path in sorted(folder.rglob("*"), key=_order):
        name = path.relative_to(folder).as_posix()
        if path.suffix == ".js" and name != without:
            text = str(jsmin(path.read_text(encoding="utf-8")))
            scripts.append(text) if path.parent == folder else published.update({name: text})
        elif path.suffix == ".css":
            text = str(cssmin(path.read_text(encoding="utf-8")))
            styles.append(text) if path.parent == folder else published.update({name: text})
    for text, kind in ((";\n".join(scripts), "js"), ("\n".join(styles), "css")):
        # With another text under another name, no browser shows an old one with a new page.
        published[f"handbook.{hashlib.sha256(text.encode()).hexdigest()[:8]}.{kind}"] = text
    return published


def on_every_page(published: Mapping[str, str], kind: str) -> list[str]:
    """Names of what every page links: ``js`` or ``css``."""
    return [name for name in published if name.startswith("handbook.") and name.endswith(kind)]


def _order(path: Path) -> tuple[bool, str]:
    return path.name == _LAST, path.as_posix()
