"""Whatever stands in the files, a coach gets lines to mend or a book that can be worked out.

Files are filled with anything at all, and with files of real folders that somebody has damaged:
lines lost or doubled, keys renamed, values of other kinds, wrong indentation.
"""

import re
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

import base_folder
import demo
from strength_handbook.model.loading import OnMachine
from strength_handbook.plan.data import program_data
from strength_handbook.plan.scales import unit_scale
from strength_handbook.plan.tables import base_strip, exercise_table, loading_table
from strength_handbook.plan.worked import Worked, work_out
from strength_handbook.reading.book import Reading, read_book
from strength_handbook.reading.explain import EXPLANATIONS

LONGEST_TEXT = 700
MOST_STEPS = 20_000
"""Loads of one exercise; many more would mean that a search has no bound."""


@dataclass(frozen=True)
class Folder:
    """A folder to damage, and its files as they were."""

    path: Path
    files: dict[str, bytes]

    @contextmanager
    def with_files(self, changed: dict[str, bytes]) -> Iterator[Path]:
        for name, content in changed.items():
            (self.path / name).write_bytes(content)
        yield self.path
        for name in changed:
            (self.path / name).write_bytes(self.files[name])


def _folder(source: Path, to: Path) -> Folder:
    path = Path(shutil.copytree(source, to))
    files = {p.relative_to(path).as_posix(): p.read_bytes() for p in sorted(path.rglob("*.yml"))}
    return Folder(path, files)


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> Folder:
    return _folder(base_folder.BASE, tmp_path_factory.mktemp("base") / base_folder.SHOWN)


@pytest.fixture(scope="module")
def winter(tmp_path_factory: pytest.TempPathFactory) -> Folder:
    return _folder(demo.PROGRAMS, tmp_path_factory.mktemp("winter") / base_folder.SHOWN)


def check(folder: Path) -> None:
    """Everything that must hold for any folder."""
    reading = read_book(folder, base_folder.SHOWN)
    for problem in reading.problems:
        assert problem.line >= 1, problem
        assert problem.column >= 1, problem
        assert problem.slug in EXPLANATIONS, problem
        assert problem.text.strip(), problem
        assert "\n" not in problem.text, problem
        assert len(problem.text) <= LONGEST_TEXT, problem
        assert "does not belong here" not in problem.text, problem
        check_place(folder.parent / problem.file, problem.line, problem.column)
    check_book(reading)


def check_place(file: Path, line: int, column: int) -> None:
    """The place is one of the file, or just behind the end of a line."""
    if not file.is_file():
        assert (line, column) == (1, 1)
        return
    text = file.read_bytes().decode(errors="replace").replace("\r\n", "\n").replace("\r", "\n")
    lines = text.removeprefix("\ufeff").split("\n")
    assert line <= len(lines), (file.name, line)
    if "\ufffd" not in text:
        assert column <= len(lines[line - 1]) + 1, (file.name, line, column)


def check_book(reading: Reading) -> None:
    if reading.book is None:
        assert reading.problems
        return
    worked = work_out(reading.book)
    for scale in worked.scales.values():
        assert scale is None or len(scale.steps) <= MOST_STEPS
    check_tables(worked)


def check_tables(worked: Worked) -> None:
    room = worked.book.room
    for key, exercise in worked.book.exercises.items():
        exercise_table(exercise.load, worked.scales[key], room.units)
        if isinstance(exercise.load, OnMachine):
            assert unit_scale(room, exercise.load)
    for program in worked.programs:
        program_data(worked.book, program)
        for slot in (s for w in program.weeks for session in w.sessions for s in session.slots):
            if slot.percent is not None:
                loading_table(slot.exercise.load, slot.scale, slot.percent, room.units)
                if slot.base is not None:
                    base_strip(slot.base, slot.scale, slot.percent)


TELLING = (
    "0", "1", "-1", "2", "61", "200", "201", "1e3", "1e308", "nan", ".inf", "true", "false", "~",
    '""', "''", "[]", "{}", "[1, 2]", "{a: b}", "[[]]", "9" * 400, "1" + "0" * 5000, "🏋️", "x" * 3000,
    "0 kg", "50 g", "1000 kg", "1001 kg", "9" * 400 + " kg", "1 lb", "20 KG", "300 kg", "1 %", "0 %",
    "150 %", "300 %", "500 %", "0 s", "1 s", "60 min", "24 h", "99:59", "0:00", "1 cm", "1000 m",
    "0-0-0-0", "30-30-30-30", "99-99-X-99", "1-60", "1-1", "61-62", "0RM", "1RM", "20RM", "none",
    "BW", "BW-200 kg", "1 units", "10000 units", "150 % of top", "150 % system", "0.5 % BM",
    "3x5", "50x200", "50x60 min", "50 -> 1000 m", "1x1 @ 150 %", "1x1 @ 0.01 %", "1x1 @ 20RM",
    "1x1 top 20RM @ 150 % of top", "ISO 50x60 min", "1x200, tempo 30-30-30-30",
    "50x200 ES @ BW-500 kg", "3x5" + " " * 400 + "x", "2000-01-03", "9999-12-31", "bar", "hands",
    "body-weight", "stack", "machine", "plate", "effort", "system", "lb", "up", "nearest", "P9",
    "Z9", "{x}", "{{x}}", "%s", '"\\u0000"', '"\\u2028"', "&a b", "*a", "!t b", "? x", "- x", "a: b",
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
    "rest", "every", "top", "last-set", "weeks", "dose", "base", "exercise", "order", "1", "2", "99",
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


NO_LIMITS = settings(deadline=None, max_examples=150, suppress_health_check=[HealthCheck.too_slow])


@NO_LIMITS
@given(
    which=st.integers(0, 100),
    content=st.binary(max_size=300) | st.text(max_size=300).map(str.encode),
)
@example(which=0, content=b"\xff\xfe")
@example(which=0, content=b'{"gym": ' + b"[" * 500)
def test_anything_in_a_file(base: Folder, which: int, content: bytes) -> None:
    name = list(base.files)[which % len(base.files)]
    with base.with_files({name: content}) as folder:
        check(folder)


@NO_LIMITS
@given(which=st.integers(0, 100), edits=EDITS)
def test_a_damaged_file_of_the_small_folder(base: Folder, which: int, edits: list[Edit]) -> None:
    name = list(base.files)[which % len(base.files)]
    with base.with_files({name: damaged(base.files[name], edits)}) as folder:
        check(folder)


@settings(NO_LIMITS, max_examples=20)
@given(which=st.integers(0, 100), edits=EDITS)
def test_a_damaged_file_of_the_demo(winter: Folder, which: int, edits: list[Edit]) -> None:
    name = list(winter.files)[which % len(winter.files)]
    with winter.with_files({name: damaged(winter.files[name], edits)}) as folder:
        check(folder)
