"""Sensible programs are left in peace: a rule that finds fault with them is a bad rule.

Invented programs in the demo's room, with its exercises and some of their own: beginners who lift
three days a week, four days of strength with heavy weeks and easy ones, two days that only keep
what is there, fives that grow in a line, a block of strength that tapers, a class past sixty,
rowers in winter, and under-18s. What is rightly found of them is listed: a check that finds more is
noticed, and so is one that has fallen silent.
"""

import shutil
from datetime import date
from pathlib import Path

import pytest

import demo
from strength_handbook.checked import Checked, check_folder, errors_in
from strength_handbook.reading.problem import Severity
from strength_handbook.review.finding import Reported

SENSIBLE = Path(__file__).parent / "sensible"
RIGHT: dict[str, list[tuple[str, str]]] = {
    # Nobody looks whether the goals are met, and whole steps are large for small lifts.
    "first-steps": [
        ("rule-step", "week 1, a-pull B1 dumbbell-floor-press"),
        ("rule-step", "week 1, a-pull B2 cable-row"),
        ("rule-step", "week 1, b-squat B1 standing-press"),
        ("rule-step", "week 1, b-squat B2 cable-row"),
        ("rule-step", "week 1, c-all B1 cable-row"),
        ("tests-week", "goal standing-press"),
        ("tests-week", "goal trap-bar-deadlift"),
    ],
    # The press of the lightest example lifter, 32.5 kg, is too light for steps of 2.5 kg.
    "heavy": [("progress-lost", "weeks 5-7, b-press A standing-press")],
    "keep": [],
    # Nine sets of pressing to two of rowing; one leg at a time never; goals that nobody tests; and
    # two single fives near the limit for the back of the thighs, which is worth a note.
    "novice": [
        ("knee-hip", "program"),
        ("pattern-missing", "wave fives"),
        ("push-pull", "wave fives push and pull"),
        ("rule-step", "week 1, a-first B standing-press"),
        ("rule-step", "week 1, b-second B dumbbell-floor-press"),
        ("rule-step", "week 1, b-second C cable-row"),
        ("rule-step", "week 1, c-third B standing-press"),
        ("sets-few", "wave fives hamstrings"),
        ("tests-week", "goal trap-bar-deadlift"),
        ("tests-week", "goal yoke-bar-box-squat"),
    ],
    # Friday's bench comes the day after ten hard presses from the floor.
    "strength-block": [
        ("next-day", "weeks 1-3, d-bench"),
        ("next-day", "weeks 5-7, d-bench"),
    ],
    # Chair stands twice a week, and one easy lift from a box.
    "over-sixty": [("knee-hip", "program")],
    # Three lifts beside rowing and running: they are no whole program of strength.
    "rowing-club": [("knee-hip", "program"), ("pattern-missing", "wave base")],
    "young": [("young-group", "week 7, t-floor A trap-bar-deadlift")],
}
"""What is rightly found in each program: the check, and what it is about."""
NOTED = {
    "first-steps": {"tests-week"},
    "novice": {"knee-hip", "pattern-missing", "sets-few", "tests-week"},
    "over-sixty": {"knee-hip"},
    "rowing-club": {"knee-hip", "pattern-missing"},
}
"""What of it is only a note."""
OF_THE_ROOM = {"plates-coarse"}
"""What speaks of the steps of plates and bands in the demo's room has its own tests."""


def check(name: str, folder: Path) -> Checked:
    for file in ("room.yml", "lifters.yml"):
        shutil.copy(demo.PROGRAMS / file, folder / file)
    shutil.copytree(demo.PROGRAMS / "exercises", folder / "exercises")
    shutil.copytree(SENSIBLE / name, folder / name, ignore=shutil.ignore_patterns("exercises"))
    for own in (SENSIBLE / name).glob("exercises/*.yml"):
        shutil.copy(own, folder / "exercises" / own.name)
    # The demo's own house rules are its own; these programs meet the handbook's.
    rules = "owner: Head coach\ndate: 2026-11-02\nrules: {}\n"
    (folder / "house-rules.yml").write_text(rules, encoding="utf-8")
    return check_folder(folder, "programs", date(2026, 12, 1))


def test_every_program_is_looked_at() -> None:
    assert sorted(RIGHT) == sorted(path.name for path in SENSIBLE.iterdir())


@pytest.mark.parametrize("name", RIGHT)
def test_a_sensible_program_has_what_is_right_and_nothing_else(name: str, tmp_path: Path) -> None:
    problems = check(name, tmp_path).problems
    assert [str(one) for one in errors_in(problems)] == []
    found = [one for one in problems if one.slug not in OF_THE_ROOM]
    about = sorted((one.slug, one.at) for one in found if isinstance(one, Reported))
    assert about == RIGHT[name], [str(one) for one in found]
    assert len(about) == len(found)
    noted = {one.slug for one in found if one.severity is Severity.NOTE}
    assert noted == NOTED.get(name, set())


@pytest.mark.parametrize(
    ("name", "old", "new", "gone"),
    [
        ("novice", "2x8, tempo 2-0-1-0, RIR 3", "9x8, tempo 2-0-1-0, RIR 3", "push-pull"),
        ("strength-block", "    day: friday\n", "    day: saturday\n", "next-day"),
        ("young", "test 3RM", "test 5RM", "young-group"),
    ],
)
def test_a_mended_program_no_longer_has_what_was_found(
    name: str, old: str, new: str, gone: str, tmp_path: Path
) -> None:
    """So each of these findings speaks of the lines that it seems to speak of."""
    before = check(name, tmp_path)
    assert gone in {one.slug for one in before.findings}
    for file in (tmp_path / name).glob("?-*.yml"):
        file.write_text(file.read_text(encoding="utf-8").replace(old, new), encoding="utf-8")
    after = check_folder(tmp_path, "programs", date(2026, 12, 1))
    assert after.desk is not None, after.problems
    assert gone not in {one.slug for one in after.findings}


def test_an_exercise_that_no_program_uses_may_wait_for_its_base(tmp_path: Path) -> None:
    """A library of exercises goes from one program to the next."""
    bench = SENSIBLE / "strength-block" / "exercises" / "bench-press.yml"
    check("keep", tmp_path)
    shutil.copy(bench, tmp_path / "exercises")
    checked = check_folder(tmp_path, "programs", date(2026, 12, 1))
    assert [str(one) for one in errors_in(checked.problems)] == []
    wave = tmp_path / "keep" / "1-keep.yml"
    text = wave.read_text(encoding="utf-8").replace("dumbbell-floor-press", "bench-press")
    wave.write_text(text, encoding="utf-8")
    used = check_folder(tmp_path, "programs", date(2026, 12, 1)).problems
    assert {one.slug for one in errors_in(used)} == {"unknown-base"}


def test_a_lost_step_is_not_answered_with_a_load_at_the_limit(tmp_path: Path) -> None:
    """5 x 5 with two left at 85 % is 7 of the 6 that most can do there, and asks for more rest."""
    lost = next(one for one in check("heavy", tmp_path).findings if one.slug == "progress-lost")
    assert lost.change is not None
    assert "%" not in lost.change.words
    assert lost.change.edits == ()
