"""Files as they look after a slip of the hand: lines lost, keys renamed, values of other kinds."""

import re
from collections.abc import Callable

from hypothesis import strategies as st

TELLING = (
    "0", "1", "-1", "2", "61", "200", "201", "1e3", "1e308", "nan", ".inf", "true", "false", "~",
    '""', "''", "[]", "{}", "[1, 2]", "{a: b}", "[[]]", "9" * 400, "1" + "0" * 5000, "🏋️",
    "x" * 3000,
    "0 kg", "50 g", "1000 kg", "1001 kg", "9" * 400 + " kg", "1 lb", "20 KG", "300 kg", "1 %",
    "0 %",
    "150 %", "300 %", "500 %", "0 s", "1 s", "60 min", "24 h", "99:59", "0:00", "1 cm", "1000 m",
    "0-0-0-0", "30-30-30-30", "99-99-X-99", "1-60", "1-1", "61-62", "0RM", "1RM", "20RM", "none",
    "BW", "BW-200 kg", "1 units", "10000 units", "150 % of top", "150 % system", "0.5 % BM",
    "3x5", "50x200", "50x60 min", "50 -> 1000 m", "50x100 km", "50x240 min", "1x1 @ 150 %",
    "1x1 @ 0.01 %", "1x1 @ 20RM",
    "1x1 top 20RM @ 150 % of top", "ISO 50x60 min", "1x200, tempo 30-30-30-30",
    "50x200 ES @ BW-500 kg", "3x5" + " " * 400 + "x", "2000-01-03", "9999-12-31", "bar", "hands",
    "body-weight", "stack", "machine", "plate", "effort", "system", "lb", "up", "nearest", "P9",
    "Z9", "{x}", "{{x}}", "%s", '"\\u0000"', '"\\u2028"', "&a b", "*a", "!t b", "? x", "- x",
    "a: b",
    "|", ">", "# c", "@", "`",
)  # fmt: skip
"""Values at the edges of what is allowed, and of other kinds than expected."""

VALUES = st.one_of(
    st.sampled_from(TELLING),
    st.text(max_size=20),
    st.integers().map(str),
    st.floats().map(str),
    st.tuples(
        st.integers(0, 2000), st.sampled_from(("kg", "lb", "g", "s", "min", "m", "cm", "%"))
    ).map(lambda amount: f"{amount[0]} {amount[1]}"),
)
KEYS = (
    "name", "load", "kind", "mass", "from", "to", "by", "sets", "reps", "hold", "time", "distance",
    "rest", "every", "top", "last-set", "weeks", "dose", "base", "exercise", "order", "1", "2",
    "99",
    "01", "index", "<<", "x", "P1",
)  # fmt: skip

Lines = list[str]
Change = Callable[[Lines, int, str], None]


def _replace(pattern: str) -> Change:
    """A change that puts the value in place of a pattern's second group."""

    def change(lines: Lines, at: int, value: str) -> None:
        if found := re.search(pattern, lines[at]):
            lines[at] = lines[at][: found.start(2)] + value + lines[at][found.end(2) :]

    return change


def _rename(lines: Lines, at: int, value: str) -> None:
    key = KEYS[len(value) % len(KEYS)]
    lines[at] = re.sub(r"^(\s*(?:- )?)[\w-]+:", rf"\g<1>{key}:", lines[at])


def _delete(lines: Lines, at: int, _: str) -> None:
    lines[at : at + 1] = []


def _double(lines: Lines, at: int, _: str) -> None:
    lines.insert(at, lines[at])


def _move(lines: Lines, at: int, value: str) -> None:
    lines.insert(len(value) * 7 % len(lines), lines.pop(at))


def _indent(lines: Lines, at: int, value: str) -> None:
    lines[at] = " " * (1 + len(value) % 4) + lines[at]


def _outdent(lines: Lines, at: int, _: str) -> None:
    lines[at] = lines[at].removeprefix(" ")


def _insert(lines: Lines, at: int, value: str) -> None:
    middle = len(lines[at]) // 2
    lines[at] = lines[at][:middle] + value[:3] + lines[at][middle:]


CHANGES: dict[str, Change] = {
    "value": _replace(r"^(\s*(?:- )?[\w-]+:) (.+)$"),
    "value in braces": _replace(r"([\w-]+: )([^,{}\[\]]+)(?=[,}\]])"),
    "last value in braces": _replace(r"(.*[\w-]+: )([^,{}\[\]]+)(?=[,}\]])"),
    "value in a list": _replace(r"(- |\[)([^:{}\[\]]+)"),
    "key": _rename,
    "delete": _delete,
    "double": _double,
    "move": _move,
    "indent": _indent,
    "outdent": _outdent,
    "insert": _insert,
}

Edit = tuple[str, int, str]
EDITS = st.lists(
    st.tuples(st.sampled_from(tuple(CHANGES)), st.integers(0, 10_000), VALUES),
    min_size=1,
    max_size=3,
)


def damaged(content: bytes, edits: list[Edit]) -> bytes:
    lines = content.decode().split("\n")
    for name, at, value in edits:
        if lines:
            CHANGES[name](lines, at % len(lines), value)
    return "\n".join(lines).encode(errors="replace")
