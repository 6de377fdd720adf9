"""The handbook's own scripts and styles as they go to a phone: few files, without comments.

All of it becomes one script and one style sheet, which every page links: most pages need most of
it, and one file packs better than several. Only what few pages need is a file of its own.
"""

import hashlib
from collections import defaultdict
from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path

from minify_html import minify
from rjsmin import jsmin

_APART = ("train",)
"""Folders whose scripts a page loads when it needs them."""

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
    texts: dict[tuple[str, str], list[str]] = defaultdict(list)
    for path in sorted(folder.rglob("*.*"), key=_order):
        kind = path.suffix.removeprefix(".")
        if kind in _TAGS and path.name not in without:
            name = path.parent.name if path.parent.name in _APART else "handbook"
            texts[name, kind].append(path.read_text(encoding="utf-8"))
    joined = {(name, kind): _smaller(kind, parts) for (name, kind), parts in texts.items()}
    versions = {kind: _version(joined, kind) for kind in _TAGS}
    return {f"{name}.{versions[kind]}.{kind}": text for (name, kind), text in joined.items()}


def on_every_page(published: Mapping[str, str], kind: str) -> list[str]:
    """Names of what every page links: ``js`` or ``css``."""
    return [name for name in published if name.startswith("handbook.") and name.endswith(kind)]


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


def _version(joined: Mapping[tuple[str, str], str], kind: str) -> str:
    """With another text under another name, no browser shows an old one with a new page.

    All of a kind share it, so that a script knows the names of the others from its own.
    """
    digest = hashlib.sha256()
    for key in sorted(joined):
        if key[1] == kind:
            digest.update(f"{key[0]}\n{joined[key]}\n".encode())
    return digest.hexdigest()[:8]


def _order(path: Path) -> tuple[int, int, str]:
    """Files at the top before those in folders, which use them."""
    place = _LAST.index(path.name) + 1 if path.name in _LAST else 0
    return len(path.parts), place, path.as_posix()
