"""Whatever a coach writes: checks never fail, order does not matter, accepting silences one."""

import random
import tempfile
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import desks
from strength_handbook.checked import Checked
from strength_handbook.reading.problem import Severity
from strength_handbook.review.catalogue import CHECKS, review

pytestmark = pytest.mark.slow  # whole programs are read and checked for every example

DOSES = (
    "3x5 @ 70 %, tempo 3-1-X-0, RIR 3", "5x3 @ 87 %, RIR 1", "4x8 @ 85 %, tempo 5-1-X-0",
    "3x5+ @ 80 %, cap 8, RIR 1", "2x(3+2+1)/20 s @ 80 %", "10x2 @ 50 %, tempo 1-0-X-0, every 45 s",
    "3x8-12, RIR 2", "3x10 @ 8RM", "ISO 3x30 s, RPE 8", "4 -> 20 m", "3x40 s, RPE 6",
    "2x5 @ 90 % of top, top 5RM, RIR 1", "1x20 @ 65 %", "9x9 @ 66 %, RIR 0",
)  # fmt: skip
"""Good, odd and foolish doses; most exercises take most of them."""
RESTS = ("0:20", "1:00", "2:30", "6:00")
WAVES = {"brook/1-slow.yml": (1, 2, 3, 4), "brook/2-quick.yml": (5, 6)}


@st.composite
def programs(draw: st.DrawFn) -> desks.Files:
    """The base folder with some doses, rests, exercises and rules changed."""
    files = desks.edited({})
    chance = draw(st.randoms(use_true_random=False))
    exercises = sorted(Path(name).stem for name in files if name.startswith("exercises/"))
    for name, weeks in WAVES.items():
        for session in files[name]["sessions"].values():
            for slot in session["slots"]:
                _change(slot, weeks, exercises, chance)
            if chance.random() < 0.3:
                session["optional"] = True
        if chance.random() < 0.3:
            files[name]["emphasis"] = chance.choice(["strength", "size", "isometric", "general"])
    if chance.random() < 0.3:
        files["brook/program.yml"]["start"] = "2026-12-07"
    if chance.random() < 0.3:
        files["brook/program.yml"]["group"] = {"members": chance.randint(1, 30), "sharing": 3}
    return files


def _change(
    slot: dict[str, Any], weeks: tuple[int, ...], exercises: list[str], chance: random.Random
) -> None:
    for week in weeks:
        if chance.random() < 0.2:
            slot["weeks"][str(week)] = chance.choice(DOSES)
        elif chance.random() < 0.05:
            slot["weeks"].pop(str(week), None)
    slot["weeks"] = slot["weeks"] or {str(weeks[0]): DOSES[0]}
    if chance.random() < 0.2:
        slot["rest"] = chance.choice(RESTS)
    if chance.random() < 0.1:
        slot["exercise"] = chance.choice(exercises)


def check(files: desks.Files) -> Checked:
    with tempfile.TemporaryDirectory() as folder:
        return desks.check(files, Path(folder))


def said(checked: Checked) -> set[tuple[str, str, str]]:
    return {(one.slug, one.at.text, one.text) for one in checked.findings}


@settings(max_examples=60, deadline=None)
@given(programs())
def test_checks_never_fail_and_their_order_does_not_matter(files: desks.Files) -> None:
    checked = check(files)
    if checked.desk is None:  # a dose that its exercise does not take: said by the reading
        assert checked.problems
        return
    backwards = review(checked.desk, list(CHECKS.values())[::-1])
    assert [(one.slug, one.at, one.text) for one in backwards] == [
        (one.slug, one.at, one.text) for one in checked.findings
    ]


@settings(max_examples=30, deadline=None)
@given(programs(), st.randoms(use_true_random=False))
def test_the_order_of_keys_does_not_matter(files: desks.Files, chance: random.Random) -> None:
    def shuffled(data: Any) -> Any:
        if not isinstance(data, dict):
            return [shuffled(one) for one in data] if isinstance(data, list) else data
        keys = list(data)
        chance.shuffle(keys)
        return {key: shuffled(data[key]) for key in keys}

    before, after = check(files), check({name: shuffled(data) for name, data in files.items()})
    assert said(before) == said(after)


@settings(max_examples=40, deadline=None)
@given(programs(), st.randoms(use_true_random=False))
def test_accepting_a_warning_silences_exactly_it(files: desks.Files, chance: random.Random) -> None:
    before = check(files)
    warnings = [one for one in before.findings if one.severity is Severity.WARN]
    if not warnings:
        return
    one = chance.choice(warnings)
    entry = {"finding": one.slug, "at": one.at.text, "reason": "It was looked at in a test."}
    files["brook/program.yml"]["accepted"] = [entry]
    after = check(files)
    assert {finding.slug for finding, _ in after.accepted} == {one.slug}
    assert {finding.at for finding, _ in after.accepted} == {one.at}
    gone = said(before) - said(after)
    assert {(slug, at) for slug, at, _ in gone} == {(one.slug, one.at.text)}
    assert said(after) <= said(before)
