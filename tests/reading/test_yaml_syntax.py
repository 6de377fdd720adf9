"""What a coach is told about each slip; both parsers must lead to the same words."""

import pytest
import yaml

from strength_handbook.reading.yaml_complaint import Complaint
from strength_handbook.reading.yaml_source import read_source
from strength_handbook.reading.yaml_syntax import syntax_problems

QUOTE_IT = "put quotes around the whole value"

SLIPS = {
    # A colon or the space after it.
    "a: 1\nsets 3\nreps: 5\n": (
        "2:1: error missing-colon: a colon is missing after the key: write 'sets: 3'"
    ),
    "sets 3\nreps: 5\n": (
        "1:1: error missing-colon: a colon is missing after the key: write 'sets: 3'"
    ),
    "x:\n  a: 1\n  sets = 3  # three\n  reps: 5\n": (
        "3:3: error missing-colon: a colon is missing after the key: write 'sets: 3'"
    ),
    "- bench\n  reps: 5\n": (
        "1:3: error missing-colon: a colon is missing after the key: write 'bench: …'"
    ),
    "a: 1\ntwo of these\nb: 2\n": (
        "2:1: error missing-colon: a colon is missing after the key: write 'two: of these'"
    ),
    "a: 1\n'b'\nc: 2\n": "2:1: error missing-colon: a colon is missing: write 'key: value'",
    "hello\n": "1:1: error missing-colon: a colon is missing after the key: write 'hello: …'",
    f"a: 1\nnote {'x' * 40}\nb: 1\n": (
        "2:1: error missing-colon: a colon is missing after the key: write 'note: …'"
    ),
    "sets: 3\nreps:5\n": "2:1: error missing-space: write a space after the colon: 'reps: 5'",
    "reps:5\n": "1:1: error missing-space: write a space after the colon: 'reps: 5'",
    "x:\n  - reps:5\n    sets: 3\n": (
        "2:5: error missing-space: write a space after the colon: 'reps: 5'"
    ),
    "x: {sets: 4, reps:5}\n": (
        "1:14: error missing-space: write a space after the colon: 'reps: 5'"
    ),
    "a:\u00a05\nb: 1\n": (
        "1:1: error invisible-character: invisible character U+00A0 after the colon: use a space"
    ),
    # Quotes.
    'a: 1\ntitle: "Lift\nb: 2\n': (
        "2:8: error unclosed-quote: the quote that begins here is never closed"
    ),
    'a: "x\nb: "y"\n': (
        "1:4: error unclosed-quote: the quote that begins here ends only in line 2: close it"
    ),
    'a: "x\n---\n"': "1:4: error unclosed-quote: the quote that begins here is never closed",
    "cue: 'don't lean'\n": (
        "1:10: error needs-quotes: "
        "an apostrophe in single quotes is written '': or use double quotes"
    ),
    'title: "Lift" heavy\n': (
        f"1:15: error needs-quotes: text follows the closing quote: {QUOTE_IT}"
    ),
    r'cue: "30\dips"' + "\n": (
        "1:9: error escape: "
        "a backslash in double quotes begins an escape: use single quotes or write two of them"
    ),
    r'cue: "x \UFFFFFFFF"' + "\n": (
        "1:9: error escape: "
        "a backslash in double quotes begins an escape: use single quotes or write two of them"
    ),
    # Text that needs quotes.
    "title: Day 1: Lift\n": (
        '1:13: error needs-quotes: a value with a colon in it needs quotes: write "Day 1: Lift"'
    ),
    'title: Day "1": Lift\n': (
        f"1:15: error needs-quotes: a value with a colon in it needs quotes: {QUOTE_IT}"
    ),
    "load: %70\n": f"1:7: error needs-quotes: text cannot begin with '%': {QUOTE_IT}",
    "%load: 70\n": f"1:1: error needs-quotes: text cannot begin with '%': {QUOTE_IT}",
    "%load 70\na: 1\n": f"1:1: error needs-quotes: text cannot begin with '%': {QUOTE_IT}",
    "load: @70\n": f"1:7: error needs-quotes: text cannot begin with '@': {QUOTE_IT}",
    "load: `70\n": f"1:7: error needs-quotes: text cannot begin with '`': {QUOTE_IT}",
    "cue: **up**\n": f"1:6: error needs-quotes: text cannot begin with '*': {QUOTE_IT}",
    "cue: & up\n": f"1:6: error needs-quotes: text cannot begin with '&': {QUOTE_IT}",
    "load: >80 kg\n": f"1:7: error needs-quotes: text cannot begin with '>': {QUOTE_IT}",
    "cue: |up|\n": f"1:6: error needs-quotes: text cannot begin with '|': {QUOTE_IT}",
    "cue: ? up\n": f"1:6: error needs-quotes: text cannot begin with '? ': {QUOTE_IT}",
    "cue: , up\n": f"1:6: error needs-quotes: text cannot begin with ',': {QUOTE_IT}",
    "cue: ] up\n": f"1:6: error needs-quotes: text cannot begin with ']': {QUOTE_IT}",
    "load: - 5 kg\n": (
        f"1:7: error needs-quotes: text cannot begin with '- ': {QUOTE_IT}, "
        "or begin the list on a line of its own"
    ),
    "title: [A] Lift\n": (
        f"1:12: error needs-quotes: text follows the closing bracket: {QUOTE_IT}"
    ),
    '"a\nb": 1\n': "1:1: error missing-colon: a colon is missing: write 'key: value'",
    '"a\n b": 1\n': (
        "2:2: error indentation: "
        "deeper than '\"a' above, which has its value already: align the two"
    ),
    # Brackets.
    "a: [1, 2\n": "1:4: error unclosed-bracket: '[' is never closed: add ']'",
    "a: {b: [1, 2\n": "1:8: error unclosed-bracket: '[' is never closed: add ']'",
    "a: {b: 1,\n": "1:4: error unclosed-bracket: '{' is never closed: add '}'",
    "a: [[1],\n": "1:4: error unclosed-bracket: '[' is never closed: add ']'",
    "a: [1, 2\nb: 3\n": (
        "1:4: error unclosed-bracket: '[' is not closed, or a comma is missing, before line 2"
    ),
    "a: [1, 2}\n": "1:9: error unclosed-bracket: '}' stands where ']' belongs",
    "a: {x: 1 y: 2}\n": (
        "1:11: error missing-comma: "
        "a comma or '}' is missing before this, or quotes around the text before"
    ),
    "a: [,]\n": "1:5: error missing-value: a value is missing before ','",
    # Indentation.
    "a: 3\n  b: 5\n": (
        "2:3: error indentation: deeper than 'a: 3' above, which has its value already: "
        "align the two"
    ),
    "a: 3\n\n# note\n  b: 5\n": (
        "4:3: error indentation: deeper than 'a: 3' above, which has its value already: "
        "align the two"
    ),
    "a: 3\n\n\n  b: 5\n": (
        "4:3: error indentation: deeper than 'a: 3' above, which has its value already: "
        "align the two"
    ),
    "a:\n    b: 1\n  c: 2\n": (
        "3:3: error indentation: the indentation of this line fits no line above"
    ),
    "a:\n    - b\n   - c\n": (
        "3:4: error indentation: the indentation of this line fits no line above"
    ),
    " a: 1\nb: 2\n": ("2:1: error indentation: the indentation of this line fits no line above"),
    "a: 1\n- b\n": (
        "2:1: error indentation: a list item ('- ') stands among keys: indent it under its key"
    ),
    "a:\n  - b: 1\n  c: 2\n": (
        "3:3: error indentation: "
        "a key stands among list items: begin it with '- ' or indent it under the item above"
    ),
    ">\n*a\n": "2:1: error indentation: this line does not belong to the lines above",
    "a: 1\n: 5\n": "2:1: error empty-key: a key is missing before the colon",
    ": 5\n": "1:1: error empty-key: a key is missing before the colon",
    # Tabs.
    "a: 1\t# x\n": "1:5: error tab: a tab stands here: use spaces",
    "a:\tb\n": "1:3: error tab: a tab stands here: use spaces",
    "a: >\tb\n": "1:5: error tab: a tab stands here: use spaces",
    # Several documents, tags.
    "a: 1\n...\nb: 2\n": (
        "2:1: error several-documents: a file holds one document: delete this line"
    ),
    "a: !e!x 1\n": f"1:4: error tag: tags (!x) are not supported: {QUOTE_IT}",
    "a: !<\n": f"1:4: error tag: tags (!x) are not supported: {QUOTE_IT}",
}


@pytest.mark.parametrize("fast", [True, False], ids=["libyaml", "pure Python"])
@pytest.mark.parametrize("text", SLIPS)
def test_each_slip_has_its_place_and_words(text: str, *, fast: bool) -> None:
    source, problems = read_source(text.encode(), "a.yml", fast=fast)
    assert source is None
    assert [str(problem) for problem in problems] == [f"a.yml:{SLIPS[text]}"]


@pytest.mark.parametrize("fast", [True, False], ids=["libyaml", "pure Python"])
def test_windows_line_ends_change_no_place(*, fast: bool) -> None:
    for text, words in SLIPS.items():
        raw = text.replace("\n", "\r\n").encode()
        assert [str(p) for p in read_source(raw, "a.yml", fast=fast)[1]] == [f"a.yml:{words}"]


def test_all_lines_indented_with_tabs_are_shown() -> None:
    problems = read_source(b"a:\n\tb: 1\n  c: 2\n \td: 3\n", "a.yml")[1]
    assert [(p.line, p.column, p.slug) for p in problems] == [(2, 1, "tab"), (4, 2, "tab")]


@pytest.mark.parametrize(
    ("doing", "words"), [(None, "odd"), ("while reading", "while reading, odd")]
)
def test_what_is_not_recognised_keeps_the_parsers_words(doing: str | None, words: str) -> None:
    mark = yaml.Mark("", 0, 1, 2, None, 0)
    error = yaml.MarkedYAMLError(doing, None, "odd", mark)
    complaint = Complaint.of(error, ["a: 1", "b: 2"], last=None, bracket=None)
    assert [str(p) for p in syntax_problems(complaint, "a.yml")] == [
        f"a.yml:2:3: error syntax: {words}"
    ]


def test_problems_before_a_syntax_error_are_kept() -> None:
    problems = read_source(b"a: *x\na: 1\nb: [1\n", "a.yml")[1]
    assert [(p.line, p.slug) for p in problems] == [
        (1, "alias"),
        (2, "duplicate-key"),
        (3, "unclosed-bracket"),
    ]
