"""ES modules of the pages' scripts as classic scripts, which also run where a page is a file.

Browsers load no module into a page that was opened from a file. So each module becomes a function,
and what it exports stands under its name in one object that all share. What is read here is the
part of ECMAScript's modules (ECMA-262, chapter 16.2) that the scripts use: imports by name or of
everything from a file beside, at the beginning of a line, and one list of exports at the end.
Anything else is refused. Exports are values: what changes later is exported as a function.
"""

import posixpath
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

HOLDER = "strengthHandbook"
"""Global object with every module's exports under its name; data files put theirs there too."""

TAKEN = "lists"
"""What `data/scales.js` is called there."""

_IMPORT = re.compile(
    r"^import (?:(\* as (\w+)|\{([^}]*)\}) from )?'(\.[^']*)\.js';\n", re.MULTILINE
)
_EXPORT = re.compile(r"^export \{([^}]*)\};\n\s*\Z", re.MULTILINE)
_OTHER = re.compile(r"^(?:import|export)\b.*", re.MULTILINE)
_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_NAME = re.compile(r"(\w+)(?: as (\w+))?")


class ModuleError(ValueError):
    """A script that is no module of the kind described above; the message says which and why."""


@dataclass(frozen=True)
class Module:
    """A script, taken apart.

    Attributes:
        name: path below the folder of all scripts, without ``.js``.
        needs: names of the modules it imports, in order.
        opening: statements that take what it imports out of the shared object.
        body: the rest, without imports and exports.
        exports: names in the module, by exported name.
    """

    name: str
    needs: tuple[str, ...]
    opening: str
    body: str
    exports: Mapping[str, str]


def read_module(name: str, text: str) -> Module:
    """A script taken apart.

    Args:
        name: path below the folder of all scripts, without ``.js``.
        text: of the file.

    Raises:
        ModuleError: where it imports or exports in another way, or has a name that is taken.
    """
    if name == TAKEN:
        raise ModuleError(f"{name}.js: a data file has this name; call the script something else")
    needs: list[str] = []
    opening: list[str] = []
    for found in _IMPORT.finditer(text):
        other = posixpath.normpath(posixpath.join(posixpath.dirname(name), found[4]))
        needs.append(other)
        if found[2]:
            opening.append(f"const {found[2]} = modules['{other}'];")
        elif found[3] is not None:
            names = ", ".join(f"{a}: {b}" for a, b in _pairs(found[3]).items())
            opening.append(f"const {{ {names} }} = modules['{other}'];")
    body = _IMPORT.sub("", text)
    exported = _EXPORT.search(body)
    body = _EXPORT.sub("", body)
    if wrong := _OTHER.search(body):
        raise ModuleError(f"{name}.js: this import or export can't be published: {wrong[0]}")
    exports = {b: a for a, b in _pairs(exported[1] if exported else "").items()}
    return Module(name, tuple(needs), "\n".join(opening), body, exports)


def in_order(modules: Iterable[Module]) -> list[Module]:
    """Modules after those that they import, else by name.

    Raises:
        ModuleError: where one is missing, or where some import each other in a ring.
    """
    known = {one.name: one for one in sorted(modules, key=lambda one: one.name)}
    done: dict[str, Module] = {}

    def visit(name: str, way: tuple[str, ...]) -> None:
        if name in done:
            return
        if name in way:
            ring = " → ".join((*way[way.index(name) :], name))
            raise ModuleError(f"scripts import each other in a ring: {ring}")
        if name not in known:
            raise ModuleError(f"{way[-1]}.js imports {name}.js, which is not there")
        for other in known[name].needs:
            visit(other, (*way, name))
        done[name] = known[name]

    for name in known:
        visit(name, ())
    return list(done.values())


def as_function(module: Module) -> str:
    """A module as a statement of a classic script; empty where nothing runs.

    One that fails leaves the others alone, and the browser still reports its error.
    """
    exports = ", ".join(f"{name}: {own}" for name, own in module.exports.items())
    keep = f"modules['{module.name}'] = {{ {exports} }};\n" if exports else ""
    if not _COMMENT.sub("", module.body).strip() and not keep:  # types alone
        return ""
    return (
        "try {\n((modules) => {\n'use strict';\n"
        f"{module.opening}\n{module.body}\n{keep}"
        f"}})(globalThis.{HOLDER} = globalThis.{HOLDER} || {{}});\n"
        "} catch (failed) { setTimeout(() => { throw failed; }); }\n"
    )


def _pairs(listed: str) -> dict[str, str]:
    """Names in a list of imports or exports: the other module's, and how it is called here."""
    found = {}
    for one in filter(None, (part.strip() for part in listed.split(","))):
        name = _NAME.fullmatch(one)
        if name is None:
            raise ModuleError(f"no name: {one}")
        found[name[1]] = name[2] or name[1]
    return found
