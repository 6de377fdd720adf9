"""Marks and open places in hand-written pages, checked before anything is built.

A mark with a wrong name would otherwise come to light when the old site is already gone.
"""

import re
from collections.abc import Collection, Iterator
from pathlib import Path

from strength_handbook.checked import shown_path
from strength_handbook.reading.problem import Problem, Severity
from strength_handbook.reading.raw_text import read_text
from strength_handbook.reading.suggest import did_you_mean
from strength_handbook.reading.unfilled import asking, unfilled

_MARK = re.compile(r"<!--\s*handbook:([\w-]+)\s*-->")
_FENCE = re.compile(r" {0,3}(`{3,}|~{3,})")
_CODE = re.compile(r"(`+)(?!`).*?(?<!`)\1(?!`)")


_DOCS = re.compile(r"^docs_dir:\s*[\"']?([^\"'#\n]+?)[\"']?\s*(?:#.*)?$", re.MULTILINE)


def open_places(programs: Path) -> list[Problem]:
    """What is not yet filled in, in the hand-written pages beside a program folder.

    Args:
        programs: the folder; mkdocs.yml beside it says where the pages are.
    """
    config = programs.resolve().parent / "mkdocs.yml"
    if not config.is_file():
        return []
    said = _DOCS.search(config.read_text(encoding="utf-8", errors="replace"))
    folder = config.parent / (said[1] if said else "docs")
    return check_handwritten(folder, None) if folder.is_dir() else []


def check_handwritten(folder: Path, names: Collection[str] | None) -> list[Problem]:
    """Every mark in the folder's Markdown files that names no part; what is not yet filled in.

    Args:
        folder: the folder with the hand-written pages.
        names: the parts that exist; None where only open places are looked for.
    """
    problems: list[Problem] = []
    for path in sorted(folder.rglob("*.md")):
        shown = shown_path(path)
        raw = path.read_bytes()
        try:
            text = raw.decode("utf-8-sig")
        except UnicodeDecodeError:
            problems += read_text(raw, shown)[1]
            continue
        for name, line, column in marks(text):
            if names is not None and name not in names:
                says = f"there is no part called '{name}'{did_you_mean(name, names)}"
                problems.append(Problem(shown, line, column, "unknown-part", says))
        for row, words in _without_code(text):
            for start, what in unfilled(words):
                place, says = (shown, row, start + 1), asking(what)
                problems.append(Problem(*place, "not-filled-in", says, Severity.WARN))
    return problems


def written_pages(folder: Path) -> dict[str, str]:
    """Source path of each hand-written page, by its name in problems."""
    return {shown_path(path): path.relative_to(folder).as_posix() for path in folder.rglob("*.md")}


def marks(text: str) -> Iterator[tuple[str, int, int]]:
    r"""Name, line and column of each mark, leaving out those shown as code.

    >>> list(marks("# Home\n<!-- handbook:this-week -->\n`<!-- handbook:x -->`"))
    [('this-week', 2, 1)]
    """
    for number, line in _without_code(text):
        for found in _MARK.finditer(line):
            yield found[1], number, found.start() + 1


def _without_code(text: str) -> Iterator[tuple[int, str]]:
    """Number and text of each line, with spaces for what is shown as code."""
    fence = ""
    for number, line in enumerate(text.splitlines(), start=1):
        mark = _FENCE.match(line)
        if mark and not fence:
            fence = mark[1]
        elif mark and mark[1].startswith(fence):
            fence = ""
        elif not fence:
            yield number, _CODE.sub(lambda code: " " * len(code[0]), line)
