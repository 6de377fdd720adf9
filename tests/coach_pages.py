"""What the pages for coaches tell somebody to do, as steps that a test can follow.

A comment before a block says what the block is:

    <!-- example: FILE -->        the file begins with this block
    <!-- example: FILE more -->   it goes on with this one
    <!-- example: FILE find -->   this stands in it once; the next block of the file, `write`,
    <!-- example: FILE write -->  goes in its place, indented as deep
    <!-- answer -->               what `strength-handbook check` says now
    <!-- promise: ADDRESS -->     each `code` in the next paragraph stands on that page now
"""

import re
from dataclasses import dataclass
from pathlib import Path
from textwrap import indent

import demo

FOLDER = demo.ROOT / "handbook" / "for-coaches"

_COMMENT = re.compile(r"<!-- (example|promise|answer)(?:: (\S+))?(?: (more|find|write))? -->\n")
_FENCE = re.compile(r"```\w+\n(.*?)^```", re.DOTALL | re.MULTILINE)
_CODE = re.compile(r"`([^`]+)`")


@dataclass(frozen=True)
class Step:
    """One marked block.

    Attributes:
        kind: example, answer or promise.
        target: the file or the address.
        how: begin, more, find or write; of an example.
        text: the block; of a promise the paragraph.
    """

    kind: str
    target: str
    how: str
    text: str

    @property
    def promised(self) -> list[str]:
        return _CODE.findall(self.text)


def steps(page: str) -> list[Step]:
    """The marked blocks of a page, in order."""
    text = (FOLDER / page).read_text(encoding="utf-8")
    return [_step(mark, text[mark.end() :]) for mark in _COMMENT.finditer(text)]


def _step(mark: re.Match[str], after: str) -> Step:
    kind, target, how = mark[1], mark[2] or "", mark[3] or "begin"
    if kind == "promise":
        return Step(kind, target, how, after.split("\n\n", 1)[0])
    block = _FENCE.match(after)
    assert block is not None, f"no block follows {mark[0]!r}"
    return Step(kind, target, how, block[1])


def follow(step: Step, root: Path, find: str) -> str:
    """Do what an example says; returns what to look for when the next one says `write`."""
    file = root / step.target
    if step.how == "find":
        return step.text
    if step.how == "begin":
        file.parent.mkdir(parents=True, exist_ok=True)
        with file.open("x", encoding="utf-8") as new:
            new.write(step.text)
    elif step.how == "more":
        with file.open("a", encoding="utf-8") as there:
            there.write(step.text)
    else:
        replace(file, find, step.text)
    return ""


def replace(file: Path, old: str, new: str) -> None:
    """Put whole lines in the place of others, which are there once, at their indentation."""
    text = file.read_text(encoding="utf-8")
    first = old.split("\n", 1)[0]
    depths = set(re.findall(rf"^( *){re.escape(first)}$", text, re.MULTILINE))
    times = {depth: ("\n" + text).count("\n" + indent(old, depth)) for depth in depths}
    assert sum(times.values()) == 1, f"{first!r} is {sum(times.values())} times in {file.name}"
    (depth,) = (depth for depth, number in times.items() if number)
    changed = ("\n" + text).replace("\n" + indent(old, depth), "\n" + indent(new, depth))
    file.write_text(changed[1:], encoding="utf-8")


def commands() -> list[tuple[str, str]]:
    """Every command of every page, with its page."""
    found = []
    for path in sorted(FOLDER.glob("*.md")):
        for block in re.findall(r"```sh\n(.*?)^```", path.read_text("utf-8"), re.DOTALL | re.M):
            found += [(path.name, line) for line in block.strip().split("\n")]
    return found
