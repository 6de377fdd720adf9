"""Whatever stands in the files, a coach gets lines to mend or a book that can be worked out.

Files are filled with anything at all, and with files of real folders that somebody has damaged:
lines lost or doubled, keys renamed, values of other kinds, wrong indentation.
"""

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

import base_folder
import demo
from damage import EDITS, Edit, damaged
from strength_handbook.checked import check_folder, errors_in
from strength_handbook.model.loading import OnMachine
from strength_handbook.plan.scales import unit_scale
from strength_handbook.plan.tables import base_strip, exercise_table, loading_table
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.explain import EXPLANATIONS
from strength_handbook.record.data import program_data
from strength_handbook.review.catalogue import EXPLAINED
from thorough import tries

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
        try:
            yield self.path
        finally:
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
    checked = check_folder(folder, base_folder.SHOWN)
    for problem in checked.problems:
        assert problem.line >= 1, problem
        assert problem.column >= 1, problem
        assert problem.slug in {*EXPLANATIONS, *EXPLAINED}, problem
        assert problem.text.strip(), problem
        assert "\n" not in problem.text, problem
        assert len(problem.text) <= LONGEST_TEXT, problem
        assert "does not belong here" not in problem.text, problem
        check_place(folder.parent / problem.file, problem.line, problem.column)
    assert (checked.worked is None) == bool(errors_in(checked.problems))
    if checked.worked is not None:
        check_tables(checked.worked)


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


def check_tables(worked: Worked) -> None:
    room = worked.book.room
    for scale in worked.scales.values():
        assert scale is None or len(scale.steps) <= MOST_STEPS
    for key, exercise in worked.book.exercises.items():
        exercise_table(exercise.load, worked.scales[key], room.units)
        if isinstance(exercise.load, OnMachine):
            assert unit_scale(room, exercise.load)
    for program in worked.programs:
        program_data(worked, program)
        for slot in (s for w in program.weeks for session in w.sessions for s in session.slots):
            if slot.percent is not None:
                loading_table(slot.exercise.load, slot.scale, slot.percent, room.units)
                if slot.base is not None:
                    base_strip(slot.base, slot.scale, slot.percent)


ODD_PLATES = "plates:\n" + "".join(
    f"  - {{mass: {20 + number}.{number * 37 % 1000:03} kg, pairs: 20}}\n" for number in range(24)
)
# Each of these once raised, or ran for minutes.
EDGES = {
    "a mass of 400 digits": ("room.yml", "handle, mass: 8 kg", f"handle, mass: {'9' * 400} kg"),
    "a search without end": ("room.yml", "plates:\n", ODD_PLATES),
    "steps too small to count": ("room.yml", "to: 200, by: 5", "to: 1e308, by: 1e-300"),
    "a body mass of nothing": ("exercises/goblet-squat.yml", "at: 75 kg", "at: 0 kg"),
    "a rule that is no number": ("house-rules.yml", "45 s", "nan s"),
    "walking without speed": ("house-rules.yml", "change-time: {value: 45 s",
                              "walking-speed: {value: 0 m/s"),
    "an endless repetition": ("harbour/1-climb.yml", "tempo: 3-1-X-0", "tempo: 99-99-99-99"),
    "an endless set": ("harbour/1-climb.yml", "reps: 5, load: 75 %, tempo: 3-1-X-0",
                       "reps: 200, load: 75 %, tempo: 30-30-30-30"),
    "a longest set for a deload": (
        "harbour/2-hold.yml", "5: {sets: 2, hold: 10 s, push: {at: chest height}}",
        "4: {sets: 2, hold: 40 min}\n          5: {deload-of: 4, keep-hold: 150 %}",
    ),
    "a longest walk": ("harbour/1-climb.yml", "1: 3 -> 20 m", "1: 50 -> 1000 m"),
    "a maximum of no repetition": ("harbour/1-climb.yml", "top: 5RM", "top: 0RM"),
    "a number too long for Python": ("harbour/1-climb.yml", "last set 5+",
                                     f"last set {'9' * 5000}+"),
    "an endless gap in a dose": ("harbour/1-climb.yml", "last set 5+ cap",
                                 f"last set 5+{' ' * 100_000}cap"),
    "a week with two numbers": ("harbour/1-climb.yml", "          1: 3x5 @ 70 %",
                                "          01: 3x5\n          1: 3x5 @ 70 %"),
    "a dose of nothing": ("exercises/handle-walk.yml", "dose:\n  rest: 1:00", "dose: ~"),
    "a load that is a word": ("exercises/box-squat.yml", "  kind: bar", "  kind: {bar: bar}"),
}  # fmt: skip


def test_the_folders_are_good_before_they_are_damaged(base: Folder, winter: Folder) -> None:
    for folder in (base, winter):
        assert check_folder(folder.path, base_folder.SHOWN).desk is not None


@pytest.mark.parametrize(("file", "old", "new"), EDGES.values(), ids=EDGES)
def test_an_edge(base: Folder, file: str, old: str, new: str) -> None:
    text = base.files[file].decode()
    assert text.count(old) == 1
    with base.with_files({file: text.replace(old, new).encode()}) as folder:
        check(folder)


@pytest.mark.parametrize("edge", ["a longest walk", "a longest set for a deload"])
def test_the_far_end_of_what_is_allowed_is_worked_out(base: Folder, edge: str) -> None:
    file, old, new = EDGES[edge]
    changed = base.files[file].decode().replace(old, new).encode()
    with base.with_files({file: changed}) as folder:
        assert check_folder(folder, base_folder.SHOWN).desk is not None


NO_LIMITS = settings(
    deadline=None, max_examples=tries(60, 1000), suppress_health_check=[HealthCheck.too_slow]
)


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


@settings(NO_LIMITS, max_examples=tries(12, 120))
@given(which=st.integers(0, 100), edits=EDITS)
def test_a_damaged_file_of_the_demo(winter: Folder, which: int, edits: list[Edit]) -> None:
    name = list(winter.files)[which % len(winter.files)]
    with winter.with_files({name: damaged(winter.files[name], edits)}) as folder:
        check(folder)
