"""A YAML parser's complaint in words that say what to write instead.

The parser says where it gave up and in its own terms why. The slips that happen in practice (a
colon forgotten, a quote left open, a value that begins with ``%``) each leave a mark in what it
says and in the lines around; here they are told apart. Whatever is not recognised keeps the
parser's words. The phrases matched are those of PyYAML's pure-Python parser.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

import yaml

from strength_handbook.reading.problem import Problem
from strength_handbook.reading.raw_text import code_point
from strength_handbook.reading.suggest import quoted

_LONGEST_EXAMPLE = 40

NO_KEY = "a key is missing before the colon"
QUOTE_IT = "put quotes around the whole value"


class _ParserMark(Protocol):
    """A position in terms of either parser."""

    @property
    def line(self) -> int: ...
    @property
    def column(self) -> int: ...


def place(mark: _ParserMark | None) -> tuple[int, int]:
    """0-based line and column of a parser's mark; the top of the file where it has none."""
    return (mark.line, mark.column) if mark else (0, 0)


@dataclass(frozen=True)
class Complaint:
    """What a parser said, and what it had read so far.

    Line and column are 0-based here, as in the parser's marks.

    Attributes:
        what: the complaint itself.
        doing: what the parser was doing, or "".
        line: line where it gave up.
        column: column where it gave up.
        begun: line and column where the thing it was reading began; where it gave up if unsaid.
        lines: the file's lines.
        last: the last scalar read before, if any.
        open_flow: line and column of the innermost ``[`` or ``{`` still open, if any.
    """

    what: str
    doing: str
    line: int
    column: int
    begun: tuple[int, int]
    lines: Sequence[str]
    last: yaml.ScalarEvent | None
    open_flow: tuple[int, int] | None

    @property
    def here(self) -> tuple[int, int]:
        """Line and column where the parser gave up."""
        return self.line, self.column

    @property
    def before(self) -> str:
        """The line up to where the parser gave up."""
        return self.lines[self.line][: self.column]

    @property
    def character(self) -> str:
        """The character at which the parser gave up, "" at the end of a line."""
        return self.lines[self.line][self.column : self.column + 1]


# Place (0-based), slug and text.
_Answer = tuple[tuple[int, int], str, str]


def syntax_problems(
    error: yaml.MarkedYAMLError,
    file: str,
    lines: Sequence[str],
    last: yaml.ScalarEvent | None = None,
    open_flow: tuple[int, int] | None = None,
) -> list[Problem]:
    """What to show for a syntax error.

    Args:
        error: what the parser raised.
        file: path to show.
        lines: the file's lines without line ends.
        last: the last scalar that was read before the error.
        open_flow: 0-based line and column of the innermost ``[`` or ``{`` still open.

    Returns:
        One problem, placed where the coach should look, which is not always where the parser
        gave up: for an open quote it is the quote. For a tab, one for each line indented with tabs,
        so that they are mended in one go.
    """
    line, column = place(error.problem_mark)
    begun = place(error.context_mark) if error.context_mark else (line, column)
    complaint = Complaint(
        what=error.problem or "",
        doing=error.context or "",
        line=line,
        column=column,
        begun=begun,
        lines=lines,
        last=last,
        open_flow=open_flow,
    )
    (line, column), slug, text = _answer(complaint)
    problems = [Problem(file, line + 1, column + 1, slug, text)]
    if slug == "tab":
        for number, content in enumerate(lines, start=1):
            if indent := re.match(r" *\t", content):
                problems.append(Problem(file, number, indent.end(), slug, text))
    return problems


def no_colon(content: str) -> tuple[str, str]:
    """Slug and text for a line among keys that is not ``key: value``.

    >>> no_colon("reps:5")
    ('missing-space', "write a space after the colon: 'reps: 5'")
    >>> no_colon("sets 3")
    ('missing-colon', "a colon is missing after the key: write 'sets: 3'")
    """
    content = re.split(r"\s#", content)[0].strip(" ")
    if tight := re.fullmatch(r"([\w-]+):([^ ].*)", content):
        key, value = tight.groups()
        if value[0].isspace():
            character = code_point(value[0])
            return (
                "invisible-character",
                f"invisible character {character} after the colon: use a space",
            )
        return "missing-space", f"write a space after the colon: {_example(key, value)}"
    if apart := re.fullmatch(r"([\w-]+)(?: *= *| +:?)([^ ].*)", content):
        example = _example(*apart.groups())
        return "missing-colon", f"a colon is missing after the key: write {example}"
    if re.fullmatch(r"[\w-]+", content) and len(content) <= _LONGEST_EXAMPLE:
        return "missing-colon", f"a colon is missing after the key: write '{content}: …'"
    return "missing-colon", "a colon is missing: write 'key: value'"


TAB = "a tab stands here: use spaces"


def _answer(it: Complaint) -> _Answer:
    what, doing = it.what, it.doing
    if it.character == "\t":
        return it.here, "tab", TAB
    if it.lines[it.line].startswith("%") or doing == "while scanning a directive":
        return _cannot_begin((it.begun[0], 0), "%")
    if what.endswith("cannot start any token"):
        return _cannot_begin(it.here, it.character)
    if doing in ("while scanning an alias", "while scanning an anchor"):
        return _cannot_begin(it.begun, it.lines[it.begun[0]][it.begun[1]])
    if doing == "while scanning a block scalar":
        return _cannot_begin(it.begun, it.lines[it.begun[0]][it.begun[1]])
    if doing.endswith("a tag") or what.startswith("found undefined tag"):
        return it.begun, "tag", f"tags (!x) are not supported: {QUOTE_IT}"
    if doing == "while scanning a quoted scalar":
        return it.begun, "unclosed-quote", "the quote that begins here is never closed"
    if doing == "while scanning a double-quoted scalar":
        return _escape(it)
    if what == "could not find expected ':'":
        return it.begun, *no_colon(it.lines[it.begun[0]][it.begun[1] :])
    if what == "mapping values are not allowed here":
        return _unexpected_colon(it)
    if what == "sequence entries are not allowed here":
        return _unexpected_dash(it)
    if what == "mapping keys are not allowed here":
        return _cannot_begin(it.here, "? ")
    if what.startswith("expected ','"):
        return _flow(it)
    if what.startswith("expected the node content"):
        return _no_value(it)
    if what.startswith(("expected <block end>", "expected '<document start>'")):
        return _does_not_fit(it)
    return it.here, "syntax", f"{doing}, {what}" if doing else what


def _cannot_begin(place: tuple[int, int], sign: str) -> _Answer:
    return place, "needs-quotes", f"text cannot begin with '{sign}': {QUOTE_IT}"


def _escape(it: Complaint) -> _Answer:
    backslash = it.lines[it.line].rfind("\\", 0, it.column + 1)
    text = "a backslash in double quotes begins an escape: use single quotes or write two of them"
    return (it.line, max(backslash, 0)), "escape", text


def _example(key: str, value: str) -> str:
    whole = f"{key}: {value}"
    return quoted(whole if len(whole) <= _LONGEST_EXAMPLE else f"{key}: …")


def _unexpected_colon(it: Complaint) -> _Answer:
    """A second colon in a line, or a line that continues the text above without meaning to."""
    if ": " in it.before:
        value = it.lines[it.line].split(": ", 1)[1].strip()
        plain = len(value) <= _LONGEST_EXAMPLE and not re.search(r"[\"\\]|\s#", value)
        write = f'write "{value}"' if plain else QUOTE_IT
        return it.here, "needs-quotes", f"a value with a colon in it needs quotes: {write}"
    above = it.line - 1
    while above >= 0 and not re.match(r"\s*[^\s#]", it.lines[above]):
        above -= 1
    start = _content_start(it.lines[it.line])
    if above >= 0:
        previous = it.lines[above]
        above_start = _content_start(previous)
        if start == above_start and not re.search(r":( |$)", previous):
            return (above, start), *no_colon(previous[start:])
        if start >= above_start:
            text = f"this line stands deeper than {quoted(previous.strip(), limit=30)} above, "
            return (
                (it.line, start),
                "indentation",
                text + "which has a value already: align the two",
            )
    return it.here, "needs-quotes", f"a colon cannot stand here: {QUOTE_IT}"


def _content_start(line: str) -> int:
    """Column of the first character after the indentation and any list dashes."""
    indent = re.match(r" *(?:- +)*", line)
    return indent.end() if indent else 0


def _unexpected_dash(it: Complaint) -> _Answer:
    if it.before.strip(" -"):
        place, slug, text = _cannot_begin(it.here, "- ")
        return place, slug, f"{text}, or begin the list on a line of its own"
    return it.here, "indentation", "a list item ('- ') cannot stand here: check the indentation"


def _flow(it: Complaint) -> _Answer:
    """Inside ``[ ]`` or ``{ }``: a comma missing, or never closed."""
    opening, closing = ("[", "]") if "flow sequence" in it.doing else ("{", "}")
    at_end = it.what.endswith(("'<stream end>'", "'<document start>'", "'<document end>'"))
    if at_end:
        return it.begun, "unclosed-bracket", f"'{opening}' is never closed: add '{closing}'"
    if it.character in ("]", "}"):
        return it.here, "unclosed-bracket", f"'{it.character}' stands where '{closing}' belongs"
    if it.line == it.begun[0]:
        text = f"a comma or '{closing}' is missing before this, or quotes around the text before"
        return it.here, "missing-comma", text
    text = f"'{opening}' is not closed, or a comma is missing, before line {it.line + 1}"
    return it.begun, "unclosed-bracket", text


def _no_value(it: Complaint) -> _Answer:
    if it.open_flow and it.what.endswith(("'<stream end>'", "'<document start>'")):
        line, column = it.open_flow
        opening = it.lines[line][column]
        closing = "]" if opening == "[" else "}"
        return it.open_flow, "unclosed-bracket", f"'{opening}' is never closed: add '{closing}'"
    if it.open_flow:
        return it.here, "missing-value", f"a value is missing before '{it.character}'"
    return _cannot_begin(it.here, it.character)


def _does_not_fit(it: Complaint) -> _Answer:
    """Something stands where the lines above leave no room for it."""
    if answer := _after_quote(it):
        return answer
    if it.before.rstrip().endswith(("]", "}")):
        return it.here, "needs-quotes", f"text follows the closing bracket: {QUOTE_IT}"
    if any(line.startswith("...") for line in it.lines[: it.line]):
        return it.here, "several-documents", "nothing may follow '...': delete that line"
    for number, line in enumerate(it.lines[: it.line]):
        if line.startswith("%"):
            return _cannot_begin((number, 0), "%")
    if it.character == ":":
        return it.here, "empty-key", NO_KEY
    if it.before.strip(" -"):
        return it.here, "needs-quotes", f"this cannot follow on the same line: {QUOTE_IT}"
    if it.what.endswith("'-'"):
        text = (
            "a list item ('- ') stands among keys: indent it under its key, or write 'key: value'"
        )
        return it.here, "indentation", text
    if it.what.endswith("'?'") and it.doing == "while parsing a block collection":
        text = "a key stands among list items: indent it like the keys of the item above, or begin "
        return it.here, "indentation", text + "the line with '- '"
    if it.doing or "<block" in it.what:
        return it.here, "indentation", "the indentation of this line fits no line above"
    return it.here, "indentation", "this line does not belong to the lines above"


def _after_quote(it: Complaint) -> _Answer | None:
    """A quote that ended too early or too late, if one ends just before the place."""
    if not it.last or it.last.style not in ("'", '"'):
        return None
    begin, (line, column) = place(it.last.start_mark), place(it.last.end_mark)
    if line != it.line or it.before[column:].strip():
        return None
    if begin[0] < line:
        text = f"the quote that begins here ends only in line {line + 1}: close it"
        return begin, "unclosed-quote", text
    if it.last.style == "'" and column == it.column:
        text = "an apostrophe in single quotes is written '': or use double quotes"
        return (line, column - 1), "needs-quotes", text
    return it.here, "needs-quotes", f"text follows the closing quote: {QUOTE_IT}"
