"""A YAML parser's complaint in words that say what to write instead.

The slips that happen in practice (a colon forgotten, a quote left open, a value that begins with
``%``) each leave their trace in what the parser says and in the lines around; here they are told
apart. Whatever is not recognised keeps the parser's words.
"""

import re

from strength_handbook.model.shape import quoted
from strength_handbook.reading.problem import Problem
from strength_handbook.reading.raw_text import code_point
from strength_handbook.reading.yaml_complaint import Complaint, place

NO_KEY = "a key is missing before the colon"
QUOTE_IT = "put quotes around the whole value"
_TAB = "a tab stands here: use spaces"
_LONGEST_EXAMPLE = 40

# Place (0-based), slug and text.
_Answer = tuple[tuple[int, int], str, str]


def syntax_problems(complaint: Complaint, file: str) -> list[Problem]:
    """What to show for a syntax error.

    Args:
        complaint: what the parser said.
        file: path to show.

    Returns:
        One problem, placed where the coach should look, which is not always where the parser
        gave up: for an open quote it is the quote. For a tab, one for each line indented with tabs,
        so that they are mended in one go.
    """
    (line, column), slug, text = _answer(complaint)
    problems = [Problem(file, line + 1, column + 1, slug, text)]
    if slug == "tab":
        for number, content in enumerate(complaint.lines, start=1):
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
            text = f"invisible character {character} after the colon: use a space"
            return "invisible-character", text
        return "missing-space", f"write a space after the colon: {_example(key, value)}"
    if apart := re.fullmatch(r"([\w-]+)(?: *= *| +:?)([^ ].*)", content):
        example = _example(*apart.groups())
        return "missing-colon", f"a colon is missing after the key: write {example}"
    if re.fullmatch(r"[\w-]+", content) and len(content) <= _LONGEST_EXAMPLE:
        return "missing-colon", f"a colon is missing after the key: write '{content}: …'"
    return "missing-colon", "a colon is missing: write 'key: value'"


_INDICATORS = (
    "while scanning an alias",
    "while scanning an anchor",
    "while scanning a block scalar",
)


def _answer(it: Complaint) -> _Answer:
    what, doing = it.what, it.doing
    if it.character == "\t":
        return it.here, "tab", _TAB
    if it.line.startswith("%") or doing == "while scanning a directive":
        return _cannot_begin((it.begun[0], 0), "%")
    if what.endswith("cannot start any token"):
        return _cannot_begin(it.here, it.character)
    if doing in _INDICATORS:
        return _cannot_begin(it.begun, it.character_at(it.begun))
    if doing.endswith("a tag") or what.startswith("found undefined tag"):
        return it.begun, "tag", f"tags (!x) are not supported: {QUOTE_IT}"
    if doing == "while scanning a quoted scalar":
        return it.begun, "unclosed-quote", "the quote that begins here is never closed"
    if doing == "while scanning a double-quoted scalar":
        return _escape(it)
    if what == "could not find expected ':'":
        line, column = it.begun
        return it.begun, *no_colon(it.lines[line][column:])
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


def _cannot_begin(where: tuple[int, int], sign: str) -> _Answer:
    return where, "needs-quotes", f"text cannot begin with '{sign}': {QUOTE_IT}"


def _escape(it: Complaint) -> _Answer:
    line, column = it.here
    backslash = it.line.rfind("\\", 0, column + 1)
    text = "a backslash in double quotes begins an escape: use single quotes or write two of them"
    return (line, max(backslash, 0)), "escape", text


def _example(key: str, value: str) -> str:
    whole = f"{key}: {value}"
    return quoted(whole if len(whole) <= _LONGEST_EXAMPLE else f"{key}: …")


def _unexpected_colon(it: Complaint) -> _Answer:
    """A second colon in a line, or a line that continues the text above without meaning to."""
    if ": " in it.before:
        value = it.line.split(": ", 1)[1].strip()
        plain = len(value) <= _LONGEST_EXAMPLE and not re.search(r"[\"\\]|\s#", value)
        write = f'write "{value}"' if plain else QUOTE_IT
        return it.here, "needs-quotes", f"a value with a colon in it needs quotes: {write}"
    above = _line_above(it)
    if above is not None:
        previous, start = it.lines[above], _content_start(it.line)
        if start == _content_start(previous) and not re.search(r":( |$)", previous):
            return (above, start), *no_colon(previous[start:])
    return _deeper(it) or (it.here, "needs-quotes", f"a colon cannot stand here: {QUOTE_IT}")


def _deeper(it: Complaint) -> _Answer | None:
    """A line that is indented as if it belonged to the one above, which takes nothing more."""
    above, start = _line_above(it), _content_start(it.line)
    if above is None or start < _content_start(it.lines[above]):
        return None
    shown = quoted(it.lines[above].strip(), limit=30)
    text = f"deeper than {shown} above, which has its value already: align the two"
    return (it.here[0], start), "indentation", text


def _line_above(it: Complaint) -> int | None:
    """The nearest line above that is neither blank nor a comment."""
    numbers = range(it.here[0] - 1, -1, -1)
    return next((n for n in numbers if it.lines[n].lstrip()[:1] not in ("", "#")), None)


def _content_start(line: str) -> int:
    """Column of the first character after the indentation and any list dashes."""
    indent = re.match(r" *(?:- +)*", line)
    return indent.end() if indent else 0


def _unexpected_dash(it: Complaint) -> _Answer:
    if it.before.strip(" -"):
        where, slug, text = _cannot_begin(it.here, "- ")
        return where, slug, f"{text}, or begin the list on a line of its own"
    return it.here, "indentation", "a list item ('- ') cannot stand here: check the indentation"


_CLOSING = {"[": "]", "{": "}"}
_ENDS = ("'<stream end>'", "'<document start>'", "'<document end>'")


def _flow(it: Complaint) -> _Answer:
    """Inside ``[ ]`` or ``{ }``: a comma missing, or never closed."""
    opening = "[" if it.doing == "while parsing a flow sequence" else "{"
    closing = _CLOSING[opening]
    if it.what.endswith(_ENDS):
        return it.begun, "unclosed-bracket", f"'{opening}' is never closed: add '{closing}'"
    if it.character in ("]", "}"):
        return it.here, "unclosed-bracket", f"'{it.character}' stands where '{closing}' belongs"
    if it.here[0] == it.begun[0]:
        text = f"a comma or '{closing}' is missing before this, or quotes around the text before"
        return it.here, "missing-comma", text
    text = f"'{opening}' is not closed, or a comma is missing, before line {it.here[0] + 1}"
    return it.begun, "unclosed-bracket", text


def _no_value(it: Complaint) -> _Answer:
    if it.bracket and it.what.endswith(_ENDS):
        opening = it.character_at(it.bracket)
        text = f"'{opening}' is never closed: add '{_CLOSING[opening]}'"
        return it.bracket, "unclosed-bracket", text
    if it.character == ":":
        return it.here, "empty-key", NO_KEY
    if it.bracket or not it.character:
        return it.here, "missing-value", f"a value is missing before '{it.character}'"
    return _cannot_begin(it.here, it.character)


def _does_not_fit(it: Complaint) -> _Answer:
    """Something stands where the lines above leave no room for it."""
    if answer := _after_quote(it):
        return answer
    if it.before.rstrip().endswith(("]", "}")):
        return it.here, "needs-quotes", f"text follows the closing bracket: {QUOTE_IT}"
    for number, line in enumerate(it.lines[: it.here[0]]):
        if line.startswith("%"):
            return _cannot_begin((number, 0), "%")
        if line.startswith("..."):
            return (number, 0), "several-documents", "a file holds one document: delete this line"
    if it.character == ":":
        return it.here, "empty-key", NO_KEY
    if it.before.strip(" -"):
        return it.here, "needs-quotes", f"this cannot follow on the same line: {QUOTE_IT}"
    if it.what.endswith("'-'"):
        text = "a list item ('- ') stands among keys: indent it under its key"
        return it.here, "indentation", text
    if it.what.endswith("'?'") and it.doing == "while parsing a block collection":
        text = "a key stands among list items: begin it with '- ' or indent it under the item above"
        return it.here, "indentation", text
    if it.what.endswith("'<block mapping start>'") and (answer := _deeper(it)):
        return answer
    if it.doing or "<block" in it.what:
        return it.here, "indentation", "the indentation of this line fits no line above"
    return it.here, "indentation", "this line does not belong to the lines above"


def _after_quote(it: Complaint) -> _Answer | None:
    """A quote that ended too early or too late, if one ends just before the place."""
    if not it.last or it.last.style not in ("'", '"'):
        return None
    begin, (line, column) = place(it.last.start_mark), place(it.last.end_mark)
    if line != it.here[0] or it.before[column:].strip():
        return None
    if begin[0] < line:
        text = f"the quote that begins here ends only in line {line + 1}: close it"
        return begin, "unclosed-quote", text
    if it.last.style == "'" and column == it.here[1]:
        text = "an apostrophe in single quotes is written '': or use double quotes"
        return (line, column - 1), "needs-quotes", text
    return it.here, "needs-quotes", f"text follows the closing quote: {QUOTE_IT}"
