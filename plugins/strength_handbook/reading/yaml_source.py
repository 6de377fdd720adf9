"""YAML text to plain data, with the line and column of everything in it.

The parser is libyaml where PyYAML has it, for speed. The pure-Python parser words its complaints
better and has the last word: what libyaml refuses is read again with it.
"""

import re
from collections.abc import Iterator

import yaml

from strength_handbook.reading.problem import Problem
from strength_handbook.reading.raw_text import read_text
from strength_handbook.reading.source import Mark, Path, Plain, Source
from strength_handbook.reading.yaml_build import Builder

__all__ = ["Mark", "Path", "Plain", "Source", "read_source"]

# Where the two parsers differ: tabs, directives, tags, a question mark at the start of a word or in
# an anchor, a comment that touches a block scalar's indicator. The first pattern saves time.
_RARE = re.compile(r"[\t?!|>&*]")
_DIFFERS = re.compile(r"\t|(?<![^\s\[{,:-])[?!]|[|>][-+0-9]*#|[&*][\w-]+\?")

# PyYAML ends an unquoted text inside brackets at a question mark, YAML 1.2 and libyaml do not.
# Such a mark is hidden from it behind a private character of the same width.
_MARK_IN_TEXT = re.compile(r"(?<=[^\s\[{,:?-])[ ?]*\?")
_HIDDEN_MARK = "\ue000"


def read_source(raw: bytes, file: str, *, fast: bool = True) -> tuple[Source | None, list[Problem]]:
    """Reads a YAML file; whatever the bytes are, nothing is raised.

    Args:
        raw: the file's bytes.
        file: path to show in problems.
        fast: use libyaml where it is installed.

    Returns:
        The source and the problems found, in order. The source is None where the data would not be
        what the file says: after a syntax error, or where an alias, a refused key or too deep
        nesting leaves a hole. Of a key written twice it has the first value; tags are ignored.
    """
    text, problems = read_text(raw, file)
    if text is None:
        return None, problems
    if fast and yaml.__with_libyaml__ and not _parsers_may_differ(text):
        try:
            return Builder(file, text).build(yaml.parse(text, Loader=yaml.CSafeLoader))
        except yaml.YAMLError:
            pass  # the pure-Python parser says it better
    builder = Builder(file, text)
    try:
        return builder.build(_exact_events(text))
    except yaml.MarkedYAMLError as error:
        return None, builder.problems_with(error)


def _parsers_may_differ(text: str) -> bool:
    return "\n%" in f"\n{text}" or bool(_RARE.search(text) and _DIFFERS.search(text))


def _exact_events(text: str) -> Iterator[yaml.Event]:
    """Events of the pure-Python parser, with all its failures made YAML errors."""
    hide = "?" in text and _HIDDEN_MARK not in text
    if hide:
        text = _MARK_IN_TEXT.sub(lambda found: found[0].replace("?", _HIDDEN_MARK), text)
    loader = yaml.SafeLoader(text)
    try:
        while loader.check_event():
            event = loader.get_event()  # type: ignore[no-untyped-call]  # bare in the stubs
            if hide and isinstance(event, yaml.ScalarEvent):
                event.value = event.value.replace(_HIDDEN_MARK, "?")
            yield event
    except (ValueError, OverflowError) as error:
        # The number of a \U escape reaches chr() unchecked.
        doing = "while scanning a double-quoted scalar"
        raise yaml.MarkedYAMLError(doing, None, str(error), loader.get_mark()) from error
    finally:
        loader.dispose()
