import pytest

from strength_handbook.reading.raw_text import MAX_BYTES, read_text


def complaints(raw: bytes) -> list[str]:
    text, problems = read_text(raw, "a.yml")
    assert text is None
    return [str(problem) for problem in problems]


@pytest.mark.parametrize(
    "raw",
    [b"a: 1\nb: 2\n", b"a: 1\r\nb: 2\r\n", b"a: 1\rb: 2\r", b"\xef\xbb\xbfa: 1\nb: 2\n"],
    ids=["line feeds", "Windows", "carriage returns", "byte order mark"],
)
def test_line_ends_and_byte_order_mark_make_no_difference(raw: bytes) -> None:
    assert read_text(raw, "a.yml") == ("a: 1\nb: 2\n", [])


def test_the_last_line_may_lack_its_end() -> None:
    assert read_text(b"a: 1", "a.yml") == ("a: 1", [])


def test_accents_dashes_and_tabs_are_text() -> None:
    text = "cue: Knie – über 90°\t🏋 \u00a0%\n"
    assert read_text(text.encode(), "a.yml") == (text, [])


@pytest.mark.parametrize(
    ("raw", "line", "column", "byte"),
    [
        (b"\xfc", 1, 1, "FC"),
        ("a: ö\nb: ö".encode() + b"\xe9", 2, 5, "E9"),
        (b"\xef\xbb\xbfa\xff", 1, 2, "FF"),
        (b"a: 1\r\nb\xff", 2, 2, "FF"),
        (b"a: 1\rb\xff", 2, 2, "FF"),
        (b"a: \xed\xa0\x80", 1, 4, "ED"),
        (b"a: 1\n\xc3", 2, 1, "C3"),
    ],
    ids=["alone", "after accents", "after mark", "Windows", "old Mac", "surrogate", "cut off"],
)
def test_a_byte_that_is_not_utf_8_is_shown_at_its_place(
    raw: bytes, line: int, column: int, byte: str
) -> None:
    words = f"byte {byte} is not UTF-8: save the file with the encoding UTF-8"
    assert complaints(raw) == [f"a.yml:{line}:{column}: error not-utf-8: {words}"]


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le", "utf-16-be"])
def test_utf_16_is_recognised(encoding: str) -> None:
    assert complaints("wave: Brakes\n".encode(encoding)) == [
        "a.yml:1:1: error utf-16: the file is saved as UTF-16: save it with the encoding UTF-8"
    ]


def test_the_limit_of_size() -> None:
    fits = b"#" * MAX_BYTES
    assert read_text(fits, "a.yml") == (fits.decode(), [])
    assert complaints(fits + b"#") == [
        "a.yml:1:1: error too-large: the file has 1,000,001 bytes, the limit is 1,000,000: split it"
    ]


@pytest.mark.parametrize(
    ("character", "shown"),
    [
        ("\0", "U+0000"),
        ("\x07", "U+0007"),
        ("\x0b", "U+000B"),
        ("\x7f", "U+007F"),
        ("\x85", "U+0085"),
        ("\u2028", "U+2028"),
        ("\ufeff", "U+FEFF"),
        ("\uffff", "U+FFFF"),
    ],
)
def test_invisible_characters_are_refused(character: str, shown: str) -> None:
    assert complaints(f"cue: Füße\nb: ä{character}\n".encode()) == [
        f"a.yml:2:5: error control-character: invisible character {shown} is not allowed: delete it"
    ]


def test_the_first_of_each_line_is_reported() -> None:
    places = [(p.line, p.column) for p in read_text(b"a\x01\x02\nb\n\x03", "a.yml")[1]]
    assert places == [(1, 2), (3, 1)]


def test_nul_bytes_alone_are_not_taken_for_utf_16() -> None:
    assert complaints(b"\0" * 8)[0].startswith("a.yml:1:1: error control-character: ")
