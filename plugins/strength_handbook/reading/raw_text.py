"""Bytes to text: what must hold before a parser may look at a file.

A file is UTF-8 of at most 1 MB without control characters. Whatever line endings it has, the text
handed on has line feeds only, so that every later line and column is counted the same way.
"""

import re

from strength_handbook.reading.problem import Problem

MAX_BYTES = 1_000_000

# Control characters except tab and line feed; the three other line breaks of YAML 1.1, which no
# editor counts as lines; the byte order mark inside a text; code points that are no characters.
FORBIDDEN = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]")


def too_large(size: int, file: str) -> Problem:
    """What is said of a file with more bytes than `MAX_BYTES`, which nobody reads whole."""
    text = f"the file has {size:,} bytes, the limit is {MAX_BYTES:,}: split it"
    return Problem(file, 1, 1, "too-large", text)


def read_text(raw: bytes, file: str) -> tuple[str | None, list[Problem]]:
    """Decodes a file, or says why it is no readable text.

    Args:
        raw: the file's bytes, UTF-8 with or without byte order mark.
        file: path to show in problems.

    Returns:
        The text with line feeds as line ends, or None and the problems. Of unwanted characters the
        first of each line is reported.
    """
    if len(raw) > MAX_BYTES:
        return None, [too_large(len(raw), file)]
    if _looks_like_utf_16(raw):
        text = "the file is saved as UTF-16: save it with the encoding UTF-8"
        return None, [Problem(file, 1, 1, "utf-16", text)]
    try:
        text = _with_line_feeds(raw.decode())
    except UnicodeDecodeError as error:
        before = _with_line_feeds(raw[: error.start].decode())
        line, column = before.count("\n") + 1, len(before) - before.rfind("\n")
        words = f"byte {raw[error.start]:02X} is not UTF-8: save the file with the encoding UTF-8"
        return None, [Problem(file, line, column, "not-utf-8", words)]
    if not FORBIDDEN.search(text):
        return text, []
    problems = []
    for number, line_text in enumerate(text.split("\n"), start=1):
        if found := FORBIDDEN.search(line_text):
            words = f"invisible character {code_point(found.group())} is not allowed: delete it"
            problem = Problem(file, number, found.start() + 1, "control-character", words)
            problems.append(problem)
    return None, problems


def code_point(character: str) -> str:
    r"""A character's number in the standard notation.

    >>> code_point("\u00a0")
    'U+00A0'
    """
    return f"U+{ord(character):04X}"


def _looks_like_utf_16(raw: bytes) -> bool:
    """A byte order mark, or each second byte of the first four characters a NUL."""
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        return True
    head = raw[:8]
    return len(head) == 8 and (not any(head[::2]) or not any(head[1::2])) and any(head)


def _with_line_feeds(text: str) -> str:
    return text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
