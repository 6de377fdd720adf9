"""Workings of particular methods, and every equation in a working comes out."""

import ast
import operator
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

import demo
from books import EFFORT, KG_ROOM, LB_ROOM, base, exercise, slot, slots_of, work
from phone_rooms import example_book
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked, WorkedSession
from strength_handbook.reading.book import read_book
from strength_handbook.workings.minutes import minutes_working
from strength_handbook.workings.tables import table_working
from strength_handbook.workings.volume import slot_working, week_working
from strength_handbook.workings.working import Working

NBSP = "\u00a0"
OPERATORS: dict[type[ast.operator], Callable[[float, float], float]] = {
    ast.Add: operator.add, ast.Sub: operator.sub, ast.Mult: operator.mul,
    ast.Div: operator.truediv, ast.Pow: operator.pow,
}  # fmt: skip
MOST = re.compile(r"the largest of ([^=]+?) =")


def evaluate(node: ast.expr) -> float:
    if isinstance(node, ast.BinOp):
        return OPERATORS[type(node.op)](evaluate(node.left), evaluate(node.right))
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
        return -evaluate(node.operand)
    assert isinstance(node, ast.Constant)
    assert isinstance(node.value, int | float)
    return float(node.value)


def calculated(text: str) -> float | None:
    """The value of one side of an equation, or None where it is not plain arithmetic."""
    text = re.sub(r"([\d.]+)\s*%", r"(\1/100)", text)
    text = text.replace("×", "*").replace("÷", "/").replace("−", "-").replace("^", "**")
    text = re.sub(r"[^\W\d_]+(?:[- /][^\W\d_]+)*", "", text).replace("'", "")
    try:
        return evaluate(ast.parse(text.strip(), mode="eval").body)
    except SyntaxError:
        return None


def equations(text: str) -> Iterator[tuple[float, float, float]]:
    """Both sides of every equation in a line, with what rounding the right one may cost.

    Nothing where it says ``=``; where it says ``≈`` half of its last place and of the terms'.
    """
    line = text = text.replace(NBSP, " ")
    if text.startswith("Warm-up 1") or " + close " in text:
        return  # its hand-worked sum is checked elsewhere
    exact = " = " in text
    text = text.replace(" ≈ ", " = ")
    several = MOST.search(text)
    if several is not None:
        terms = [calculated(term) for term in re.split(", | and ", several[1])]
        assert None not in terms, text
        text = (
            f"{max(term for term in terms if term is not None)} = {text[several.end() :].strip()}"
        )
    for part in re.split(r"; |: ", text):
        left, mark, right = part.partition(" = ")
        found = re.match(r"(−?[\d.]+)\s*(%?)", right)
        value = calculated(left) if mark and found else None
        if found is None or value is None:
            continue
        number = found[1].replace("−", "-")
        unit = 100 if found[2] else 1
        decimals = len(number.partition(".")[2])
        # Terms are rounded too: 8.7 × 0.7 stands for 8.667 × 0.7.
        slack = 1e-6 if exact and " ≈ " not in line else 0.55 * 10**-decimals + 0.05
        if about := re.search(r"about ([\d.]+) %", left):
            slack += value * 0.5 / float(about[1])  # a percentage that is printed whole
        yield value, float(number) / unit, slack / unit


@pytest.fixture(scope="module")
def handbook() -> Worked:
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    return work_out(book)


def test_every_equation_of_the_handbook_comes_out(handbook: Worked) -> None:
    book, checked = handbook.book, 0
    workings: list[Working | None] = [
        table_working(thing.load, handbook.scales[key], book.room.units)
        for key, thing in book.exercises.items()
    ]
    for program in handbook.programs:
        for week in program.weeks:
            workings.append(week_working(book, week))
            for session in week.sessions:
                workings.append(minutes_working(book, program.program, session))
                workings += [slot_working(book, slot) for slot in session.slots]
    for working in filter(None, workings):
        for line in working.lines:
            for left, right, slack in equations(line.text):
                assert left == pytest.approx(right, abs=slack), line.text
                checked += 1
    assert checked > 400


def test_every_equation_of_the_written_examples_comes_out(tmp_path: Path) -> None:
    """Each dose of tests/methods/doses.yml, in the room in kilograms."""
    worked, checked = work_out(example_book(tmp_path)), 0
    program = worked.programs[0]
    for week in program.weeks:
        for session in week.sessions:
            workings = [minutes_working(worked.book, program.program, session)]
            workings += filter(None, (slot_working(worked.book, one) for one in session.slots))
            for line in (line for working in workings for line in working.lines):
                for left, right, slack in equations(line.text):
                    assert left == pytest.approx(right, abs=slack), line.text
                    checked += 1
    assert checked > 300


def test_the_check_itself_finds_a_wrong_sum() -> None:
    assert next(equations("140 kg × 78 % = 109.2 kg"))[:2] == pytest.approx((109.2, 109.2))
    left, right, slack = next(equations("25 kg trap bar + 2 × (25 + 15) = 107.5 kg, the most"))
    assert abs(left - right) > slack
    left, right, _ = next(equations("A: the largest of 30 + 90 and 2 × (30 + 15) = 120 s"))
    assert (left, right) == (120, 120)


BANDS = {
    key: {"pulls": {"45 cm": f"{low} kg", "75 cm": f"{low + 6} kg", "105 cm": f"{low + 10} kg"}}
    for key, low in (("22-a", 4), ("22-b", 4))
}
SPEED = {
    "sets": 8, "reps": 2, "load": "50 %", "tempo": "1-0-X-0", "every": "60 s",
    "bands": {"pair": ["22-a", "22-b"]},
}  # fmt: skip


def texts(root: Path, dose: Any, load: Any, room: Any = KG_ROOM, best: str = "120 kg") -> list[str]:
    lifter = {"bodyweight": "160 lb" if room is LB_ROOM else "72 kg", "bases": {"best": best}}
    worked = work(
        root, room=room, exercises={"lift": exercise(load=load)},
        sessions={"a": [slot("A", "lift", {"1": dose}, base="best")]},
        bases={"best": base()}, lifters={"P1": lifter},
    )  # fmt: skip
    found = slot_working(worked.book, slots_of(worked)["A"])
    assert found is not None
    return [line.text.replace(NBSP, " ") for line in found.lines]


def test_bands_on_the_bar(tmp_path: Path) -> None:
    load = {"kind": "bar", "bar": "bar", "travel": {"bottom": "45 cm", "top": "105 cm"}}
    found = texts(tmp_path, SPEED, load, {**KG_ROOM, "bands": BANDS})
    # Two bands of 4 kg at the bottom, 10 kg half-way, 14 kg at the top; 28 of 88 kg is 32 %.
    assert (
        "60 kg with bands 22-a and 22-b: 68 kg at the bottom, 80 kg half-way, 88 kg at the top, "
        "32 % of it from what hangs on the bar" in found
    )
    assert "Fast sets on an interval: not counted as hard sets" in found


def test_push_up_on_the_floor(tmp_path: Path) -> None:
    found = texts(tmp_path, "3x8 @ BW", {"kind": "push-up"})
    # Ebben 2011: 64.1 % of body mass with hands and feet on the floor; 46.15 kg of 72 kg.
    assert "Of 72 kg of body about 64 % move: 46.15 kg" in found


def test_pounds(tmp_path: Path) -> None:
    found = texts(tmp_path, "4x5 @ 78 %", {"kind": "bar", "bar": "bar"}, LB_ROOM, "225 lb")
    # 175.5 lb; a 45 lb bar and 2 × (45 + 10 + 10) make 175 lb.
    assert "225 lb × 78 % = 175.5 lb" in found
    assert "45 lb bar + 2 × (45 + 10 + 10) = 175 lb, the most up to 175.5 lb" in found
    assert "175 lb ÷ 225 lb ≈ 78 %" in found


@pytest.mark.parametrize(
    ("dose", "line"),
    [
        # Three parts of two, 3 s each, two pauses of 20 s.
        ("3x(2+2+2)/20 s", "A: 6 × 3 s + 2 × 20 s = 58 s a set"),
        # 36 repetitions, and twice 10 s to take plates off.
        ("2x strip 3 loads -20 % to 36 reps", "A: 36 × 3 s + 2 × 10 s = 128 s a set"),
        ("ISO 3x30 s ES", "A: 2 × (30 s) + 5 s = 65 s a set"),
        ("6x40 s, rest 80 s", "A: 40 s a set"),
    ],
)
def test_seconds_of_a_set(tmp_path: Path, dose: str, line: str) -> None:
    worked = work(
        tmp_path,
        exercises={"lift": exercise(load=EFFORT)},
        sessions={"a": [slot("A", "lift", dose)]},
    )
    program = worked.programs[0]
    session: WorkedSession = program.week(1).sessions[0]
    found = minutes_working(worked.book, program.program, session)
    assert found.lines[0].text.replace(NBSP, " ") == line
