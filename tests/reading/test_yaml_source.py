import pytest
import yaml

from strength_handbook.reading.problem import Problem, Severity
from strength_handbook.reading.yaml_build import MAX_DEPTH
from strength_handbook.reading.yaml_source import Mark, Source, read_source

WAVE = """\
# Winter
wave: Brakes
weeks: 1-4
sessions:
  a-lift:
    "title": 'Lift ä'
    slots:
      - order: A
        rest: 2:30
        weeks:
          1: 3x5 @ 70 %, tempo 3-1-X-0
          2: {sets: 4, reps: 5, cue: "say \\"up\\""}
      - order: B1
        note:
        text: |
          Two
          lines
        long: one
          two
        load: 72.5
"""

BOTH = pytest.mark.parametrize("fast", [True, False], ids=["libyaml", "pure Python"])


def source_of(text: str, *, fast: bool) -> Source:
    source, problems = read_source(text.encode(), "a.yml", fast=fast)
    assert problems == []
    assert source is not None
    return source


def complaints(text: str, *, fast: bool) -> list[str]:
    return [str(problem) for problem in read_source(text.encode(), "a.yml", fast=fast)[1]]


@BOTH
@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"], ids=["Unix", "Windows", "old Mac"])
def test_the_data_of_a_file(line_end: str, *, fast: bool) -> None:
    assert source_of(WAVE.replace("\n", line_end), fast=fast).data == {
        "wave": "Brakes",
        "weeks": "1-4",
        "sessions": {
            "a-lift": {
                "title": "Lift ä",
                "slots": [
                    {
                        "order": "A",
                        "rest": "2:30",
                        "weeks": {
                            "1": "3x5 @ 70 %, tempo 3-1-X-0",
                            "2": {"sets": 4, "reps": 5, "cue": 'say "up"'},
                        },
                    },
                    {
                        "order": "B1",
                        "note": None,
                        "text": "Two\nlines\n",
                        "long": "one two",
                        "load": 72.5,
                    },
                ],
            }
        },
    }


@BOTH
@pytest.mark.parametrize("line_end", ["\n", "\r\n"], ids=["Unix", "Windows"])
def test_the_places_of_a_file(line_end: str, *, fast: bool) -> None:
    source = source_of(WAVE.replace("\n", line_end), fast=fast)
    slots = ("sessions", "a-lift", "slots")
    assert source.at(()) == Mark(2, 1, None)
    assert source.at(("wave",)) == Mark(2, 7, 7)
    assert source.at(("sessions", "a-lift", "title")) == Mark(6, 14, 15)
    assert source.key_at(("sessions", "a-lift", "title")) == Mark(6, 5, 6)
    assert source.at(slots) == Mark(8, 7, None)
    assert source.at((*slots, 0)) == Mark(8, 9, None)
    assert source.at((*slots, 0, "weeks", "1")) == Mark(11, 14, 14)
    assert source.at((*slots, 0, "weeks", "2")) == Mark(12, 14, None)
    assert source.key_at((*slots, 0, "weeks", "2", "reps")) == Mark(12, 24, 24)
    assert source.at((*slots, 0, "weeks", "2", "reps")) == Mark(12, 30, 30)
    assert source.at((*slots, 0, "weeks", "2", "cue")) == Mark(12, 38, None)
    assert source.at((*slots, 1, "text")) == Mark(15, 15, None)
    assert source.at((*slots, 1, "long")) == Mark(18, 15, None)


@BOTH
def test_an_empty_value_stands_where_its_key_does(*, fast: bool) -> None:
    source = source_of("a:\nb: {c:, d}\ne: ''\nf:\n  -\n  - x\n", fast=fast)
    assert source.at(("a",)) == Mark(1, 1, None)
    assert source.at(("b", "c")) == Mark(2, 5, None)
    assert source.at(("b", "d")) == Mark(2, 9, None)
    assert source.at(("e",)) == Mark(3, 4, 5)
    assert source.at(("f", 0)) == Mark(5, 4, None)


@BOTH
def test_columns_count_characters_not_bytes(*, fast: bool) -> None:
    source = source_of("\ufeff{ä: 'ö🏋', b: x}", fast=fast)
    assert source.at(("ä",)) == Mark(1, 5, 6)
    assert source.key_at(("b",)) == Mark(1, 11, 11)


def test_a_place_that_is_not_known_is_that_of_the_nearest_part_around_it() -> None:
    source = source_of("a:\n  - b: 1\n", fast=True)
    assert source.at(("a", 0, "union-tag", "x")) == source.marks["a", 0]
    assert source.key_at(("a", 7)) == source.marks["a",]
    assert source.at(("z",)) == Mark(1, 1, None)
    assert Source("a.yml", {}, {}, {}).key_at(("z", 3)) == Mark(1, 1, None)


def test_a_problem_stands_at_the_value_or_at_its_key() -> None:
    source = source_of("a:\n  rep: 5\n", fast=True)
    assert source.problem(("a", "rep"), "range", "x") == Problem("a.yml", 2, 8, "range", "x")
    assert str(source.problem(("a", "rep"), "unknown-key", "x", key=True)) == (
        "a.yml:2:3: error unknown-key: x"
    )
    note = source.problem((), "x", "y", severity=Severity.NOTE)
    assert note.severity is Severity.NOTE


@BOTH
def test_keys_are_the_text_that_is_written(*, fast: bool) -> None:
    keys = ("1", "01", "1.50", "null", "~", "true", "no", "2:30", "a b")
    text = "".join(f"{key}: 0\n" for key in keys)
    assert source_of(text, fast=fast).data == dict.fromkeys(keys, 0)


@BOTH
def test_question_marks_in_text_are_text(*, fast: bool) -> None:
    text = "a: Ready? Go ? or not??\nb: {cue: Ready?, c: [What?]}\n# Why?\nd: 'x?'\ne?: 1\n"
    assert source_of(text, fast=fast).data == {
        "a": "Ready? Go ? or not??",
        "b": {"cue": "Ready?", "c": ["What?"]},
        "d": "x?",
        "e?": 1,
    }


ALIAS = "anchors and aliases (& *) are not supported: write it out, or put quotes around the text"
TAG = "tags (!x) are not supported: leave it out, or put quotes around the whole value"
NOT_A_KEY = "a list or mapping cannot be a key: put quotes around a text in brackets"

ESCAPE = "an escape stands for {}, which is not allowed: delete it"
SECOND = "a file holds one document: delete this line or begin another file"
LIST = "the file is a list: begin it with a key and indent the list under it"

REFUSED = {
    "a: 1\nb: 2\na: 3\n'a': 4\n": [
        "3:1: error duplicate-key: key 'a' stands already in line 1: delete one",
        "4:1: error duplicate-key: key 'a' stands already in line 1: delete one",
    ],
    "w:\n  1: x\n  '1': {y: 1, y: 2}\n": [
        "3:3: error duplicate-key: key '1' stands already in line 2: delete one",
        "3:15: error duplicate-key: key 'y' stands already in line 3: delete one",
    ],
    "a: &k [1]\n? *k\n: *d\n*k : [*k]\n": [
        f"1:4: error anchor: {ALIAS}",
        f"2:3: error alias: {ALIAS}",
        f"3:3: error alias: {ALIAS}",
        f"4:1: error alias: {ALIAS}",
        f"4:7: error alias: {ALIAS}",
    ],
    "*k\n": [f"1:1: error alias: {ALIAS}"],
    "a: !x 1\n!!str b: !\nc: !!map {}\nd: &q !y 1\n": [
        f"1:4: error tag: {TAG}",
        f"2:1: error tag: {TAG}",
        f"2:10: error tag: {TAG}",
        f"3:4: error tag: {TAG}",
        f"4:4: error anchor: {ALIAS}",
        f"4:7: error tag: {TAG}",
    ],
    "a:\n  <<: {b: 1}\n  '<<': 1\n": [
        "2:3: error merge-key: merge keys (<<) are not supported: write the keys out"
    ],
    "a: {{ x }}\n[b]: 1\n": [
        f"1:5: error key-not-text: {NOT_A_KEY}",
        f"2:1: error key-not-text: {NOT_A_KEY}",
    ],
    "'': 1\nb: {: 2}\n": [
        "1:1: error empty-key: a key is missing before the colon",
        "2:5: error empty-key: a key is missing before the colon",
    ],
    "a:\n\u00a0\u00a0b: 1\nc: x\u200b\nd: '\u00a0'\n": [
        "2:1: error invisible-character: invisible character U+00A0 beside the text: use spaces",
        "3:4: error invisible-character: invisible character U+200B beside the text: use spaces",
    ],
    'a: "\\0"\nb: "\\uD800"\n"\\e": 1\nc: "\\t\\n\\u00e9"\n': [
        f"1:4: error control-character: {ESCAPE.format('U+0000')}",
        f"2:4: error control-character: {ESCAPE.format('U+D800')}",
        f"3:1: error control-character: {ESCAPE.format('U+001B')}",
    ],
    "---\na: 1\n---\nb: 2\n---\n": [
        f"3:1: error several-documents: {SECOND}",
    ],
    "# x\n- b: 1\n  b: 2\n": [
        f"2:1: error not-a-mapping: {LIST}",
        "3:3: error duplicate-key: key 'b' stands already in line 2: delete one",
    ],
}


@BOTH
@pytest.mark.parametrize("text", REFUSED)
def test_all_that_is_refused_is_shown_at_once(text: str, *, fast: bool) -> None:
    assert complaints(text, fast=fast) == [f"a.yml:{words}" for words in REFUSED[text]]


@BOTH
@pytest.mark.parametrize("text", ["", "\n\n", "# nothing\n", "---\n", "---\n...\n", "\ufeff"])
def test_an_empty_file(text: str, *, fast: bool) -> None:
    words = "the file is empty: begin it with 'key: value'"
    assert complaints(text, fast=fast) == [f"a.yml:1:1: error empty-file: {words}"]


@BOTH
def test_what_leaves_the_data_as_meant_leaves_a_source(*, fast: bool) -> None:
    source, problems = read_source(b"a: &x 1\nb: !t 2\na: {c: 3}\n", "a.yml", fast=fast)
    assert [problem.slug for problem in problems] == ["anchor", "tag", "duplicate-key"]
    assert source is not None
    assert source.data == {"a": 1, "b": 2}
    assert set(source.marks) == {(), ("a",), ("b",)}
    assert source.at(("a",)).line == 1


@BOTH
@pytest.mark.parametrize("hole", ["*x", "{[k]: 1}", "{<<: {}}", "{'': 1}", '"\\0"', "{b:1}"])
def test_what_leaves_a_hole_leaves_no_source(hole: str, *, fast: bool) -> None:
    source, problems = read_source(f"a: {hole}\n".encode(), "a.yml", fast=fast)
    assert source is None
    assert len(problems) == 1


@BOTH
def test_the_deepest_nesting(*, fast: bool) -> None:
    fits = "a: " + "[" * (MAX_DEPTH - 1) + "]" * (MAX_DEPTH - 1)
    assert source_of(fits, fast=fast).data
    words = f"nesting is deeper than {MAX_DEPTH} levels: simplify"
    assert complaints(fits.replace("[]", "[[]]"), fast=fast) == [
        f"a.yml:1:{3 + MAX_DEPTH}: error too-deep: {words}"
    ]


@BOTH
@pytest.mark.parametrize("opening", ["[", "{", "{a: ", "- ", "? ", "[{a: "])
def test_nesting_without_end_is_refused(opening: str, *, fast: bool) -> None:
    text = (opening * 100_000)[:300_000]
    source, problems = read_source(text.encode(), "a.yml", fast=fast)
    assert source is None
    assert problems


def test_without_libyaml_the_pure_python_parser_reads(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(yaml, "__with_libyaml__", False)
    monkeypatch.delattr(yaml, "CSafeLoader", raising=False)
    assert source_of(WAVE, fast=True) == source_of(WAVE, fast=False)
