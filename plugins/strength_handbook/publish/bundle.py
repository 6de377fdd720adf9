"""The handbook's own scripts and styles as they go to a phone: few files, without comments.

One script and one style sheet hold what every page needs, and every page links them; one file packs
better than several. Session mode and the tools are a second script: `later.js` fetches it when the
first of them is used. A script does nothing on a page without its form.
"""

import hashlib
from collections import defaultdict
from collections.abc import Callable, Iterable
from functools import cache
from pathlib import Path

from minify_html import minify
from rjsmin import jsmin

from strength_handbook.publish.modules import (
    Module,
    ModuleError,
    as_function,
    in_order,
    read_module,
)

PAGES, TOOLS = "handbook", "tools"
"""How published files begin: for every page, and what is fetched later."""

_LATER = ("tools", "train")
"""Folders of the second script."""

_LAST = ("coach.css", "print.css")
"""What changes other styles' rules comes after them, in this order."""

_ADDRESS = "__TOOLS__"
"""Stands in a script for the name of the second one, beside it."""

_TAGS = {"js": "script", "css": "style"}
"""Kinds of file, and in which tag a page would hold their text."""


@cache
def bundled(folder: Path, *without: str, versions: bool = True) -> dict[str, str]:
    """Published text of every script and style sheet below a folder, by name.

    Args:
        folder: the folder with the sources.
        without: names of files that are left out.
        versions: whether names change with their text, so that no browser shows an old one with a
            new page; else people can link them by hand.
    """
    paths = [path for path in sorted(folder.rglob("*.*"), key=_order) if path.name not in without]
    styles = [path.read_text(encoding="utf-8") for path in paths if path.suffix == ".css"]
    joined = {key: _smaller("js", text) for key, text in _scripts(folder, paths).items()}
    joined[PAGES, "css"] = _smaller("css", "\n".join(styles))
    named: Callable[[str, str, str], str] = _versioned if versions else _plain
    found: dict[str, str] = {}
    for (name, kind), text in sorted(joined.items(), key=lambda one: one[0][0] != TOOLS):
        whole = text.replace(_ADDRESS, next(iter(found), ""))
        if whole:
            found[named(name, kind, whole)] = whole
    return found


def linked_script(folder: Path, *names: str) -> str:
    """Some modules with all that they import, as one classic script; nothing is made shorter.

    Args:
        folder: of all scripts.
        names: paths below the folder without ``.js``.
    """
    known = {one.name: one for one in _modules(folder, folder.rglob("*.js"))}
    wanted, found = list(names), set[str]()
    while wanted:
        name = wanted.pop()
        if name not in found:
            found.add(name)
            wanted += known[name].needs
    return "".join(map(as_function, in_order(known[name] for name in found)))


def linked(assets: Iterable[str], kind: str) -> list[str]:
    """Those of the published files that every page links.

    >>> linked(["tools.1f.js", "handbook.ab.css", "handbook.cd.js"], "js")
    ['handbook.cd.js']
    """
    return [name for name in assets if name.startswith(f"{PAGES}.") and name.endswith(f".{kind}")]


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


def _scripts(folder: Path, paths: Iterable[Path]) -> dict[tuple[str, str], str]:
    """The two scripts. What every page needs must do without the second one.

    Raises:
        ModuleError: where it does not.
    """
    ordered = in_order(_modules(folder, (path for path in paths if path.suffix == ".js")))
    texts: dict[tuple[str, str], str] = defaultdict(str)
    for module in ordered:
        later = _later(module.name)
        wrong = [] if later else list(filter(_later, module.needs))
        if wrong:
            raise ModuleError(f"{module.name}.js is on every page, and can't import {wrong[0]}.js")
        texts[TOOLS if later else PAGES, "js"] += as_function(module)
    return texts


def _modules(folder: Path, paths: Iterable[Path]) -> list[Module]:
    return [
        read_module(
            path.relative_to(folder).with_suffix("").as_posix(), path.read_text(encoding="utf-8")
        )
        for path in paths
    ]


def _later(name: str) -> bool:
    return name.partition("/")[0] in _LATER


def _smaller(kind: str, text: str) -> str:
    """No comments, no indents, shorter ways to say the same."""
    # The HTML minifier keeps a script's comments, so they go first.
    text = jsmin(text) if kind == "js" else text
    start, end = f"<{_TAGS[kind]}>", f"</{_TAGS[kind]}>"
    found = minify(start + text + end, minify_js=True, minify_css=True)
    return found.removeprefix(start).removesuffix(end)


def _plain(name: str, kind: str, _: str) -> str:
    return f"{name}.{kind}"


def _versioned(name: str, kind: str, text: str) -> str:
    return f"{name}.{hashlib.sha256(text.encode()).hexdigest()[:8]}.{kind}"


def _order(path: Path) -> tuple[int, int, str]:
    """Files at the top before those in folders; what changes others' rules comes last."""
    place = _LAST.index(path.name) + 1 if path.name in _LAST else 0
    return place, len(path.parts), path.as_posix()
