"""The handbook's own scripts and styles as they go to a phone: few files, without comments.

All of it becomes one script and one style sheet, which every page links: most pages need most of
it, and one file packs better than several. A script does nothing on a page without its form.
"""

import hashlib
from collections import defaultdict
from collections.abc import Iterable
from functools import cache
from pathlib import Path

from minify_html import minify
from rjsmin import jsmin

_LAST = ("views.js", "screen.js", "coach.css", "print.css")
"""What builds on others of its folder, or changes their rules, comes after them, in this order."""

_TAGS = {"js": "script", "css": "style"}
"""Kinds of file, and in which tag a page would hold their text."""


@cache
def bundled(folder: Path, *without: str) -> dict[str, str]:
    """Published text of every script and style sheet below a folder, by name.

    Args:
        folder: the folder with the sources.
        without: names of files that are left out.
    """
    texts: dict[str, list[str]] = defaultdict(list)
    for path in sorted(folder.rglob("*.*"), key=_order):
        kind = path.suffix.removeprefix(".")
        if kind in _TAGS and path.name not in without:
            texts[kind].append(path.read_text(encoding="utf-8"))
    joined = {kind: _smaller(kind, parts) for kind, parts in texts.items()}
    return {f"handbook.{_version(text)}.{kind}": text for kind, text in joined.items()}


def theme_styles(folders: Iterable[str]) -> list[str]:
    """Addresses of the theme's own style sheets: its names change with its version.

    Args:
        folders: where templates and assets come from, the theme's among them.
    """
    return [
        path.relative_to(folder).as_posix()
        for folder in folders
        for kind in ("main", "palette")
        for path in sorted(Path(folder).glob(f"assets/stylesheets/{kind}.*.min.css"))
    ]


def _smaller(kind: str, parts: list[str]) -> str:
    """One text of several: no comments, no indents, shorter ways to say the same."""
    # The HTML minifier keeps a script's comments, so they go first.
    text = ";\n".join(map(jsmin, parts)) if kind == "js" else "\n".join(parts)
    start, end = f"<{_TAGS[kind]}>", f"</{_TAGS[kind]}>"
    found = minify(start + text + end, minify_js=True, minify_css=True)
    return found.removeprefix(start).removesuffix(end)


def _version(text: str) -> str:
    """With another text under another name, no browser shows an old one with a new page."""
    return hashlib.sha256(text.encode()).hexdigest()[:8]


def _order(path: Path) -> tuple[int, int, str]:
    """Files at the top before those in folders, which use them."""
    place = _LAST.index(path.name) + 1 if path.name in _LAST else 0
    return len(path.parts), place, path.as_posix()
