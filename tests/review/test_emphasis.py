"""What a wave comes to in a usual week, against the others. Worked by hand from the base folder."""

from pathlib import Path

import pytest

import desks
from strength_handbook.plan.worked import WorkedProgram
from strength_handbook.review.emphasis import wave_emphases


def program(tmp_path: Path, edits: desks.Edits | None = None) -> WorkedProgram:
    desk = desks.check(desks.edited(edits or {}), tmp_path).desk
    assert desk is not None
    return desk.worked.programs[0]


def test_the_means_are_those_of_training_weeks(tmp_path: Path) -> None:
    slow, quick = wave_emphases(program(tmp_path))
    # Repetitions times seconds of lowering, week by week; the lighter week 4 is left out.
    week_1 = 15 * 3 + 8 * 3 + 20 * 3 + 15 * 3 + 10 * 3 + 16 * 3
    week_2 = 20 * 4 + 12 * 4 + 30 * 4 + 20 * 4 + 15 * 3 + 24 * 4
    week_3 = 20 * 5 + 12 * 5 + 30 * 5 + 20 * 5 + 15 * 3 + 24 * 4
    assert [week_1, week_2, week_3] == [252, 469, 551]
    assert slow.means["eccentric"] == pytest.approx((week_1 + week_2 + week_3) / 3)
    # Squats 8 × 2, deadlifts 6 × 2, jumps 3 × 3, pull-ups 3 × 3, presses 3 × 3, all fast.
    assert quick.means["speed"] == 16 + 12 + 9 + 9 + 9
    assert quick.shares["speed"] == pytest.approx(55 / ((30 + 40 + 40) / 3))
    assert [week.trains for week in slow.weeks] == [True, True, True, False]


def test_the_sentences_say_it(tmp_path: Path) -> None:
    slow, quick = wave_emphases(program(tmp_path))
    assert slow.sentence == "Slow: 424 s of lowering a week, 4.7 times the other waves."
    assert quick.sentence == "Quick: 55 fast repetitions a week, 1.5 times the other waves."


def test_a_wave_for_something_else_tells_what_stands_out(tmp_path: Path) -> None:
    edits = {"brook/1-slow.yml": {"emphasis": "strength"}}
    slow, _ = wave_emphases(program(tmp_path, edits))
    assert slow.shown == "eccentric"


def test_without_other_waves_nothing_is_compared(tmp_path: Path) -> None:
    files = desks.edited({"brook/program.yml": {"goals.1.base": "REMOVE"}})
    del files["brook/2-quick.yml"]
    desk = desks.check(files, tmp_path).desk
    assert desk is not None
    (slow,) = wave_emphases(desk.worked.programs[0])
    assert slow.shares == {}
    assert slow.sentence == "Slow: 424 s of lowering a week."


def test_where_the_others_have_none_it_says_so(tmp_path: Path) -> None:
    plain = "6x2 @ 50 %, every 60 s"
    edits = {
        "brook/2-quick.yml": {
            "sessions.a-lift.slots.2": "REMOVE",
            "sessions.a-lift.slots.1.weeks": {"5": plain, "6": plain},
            "sessions.b-squat.slots.0.weeks": {"5": plain, "6": plain},
            "sessions.b-squat.slots.1.weeks": {"5": "3x3 @ 70 %", "6": "3x3 @ 70 %"},
            "sessions.b-squat.slots.2.weeks": {"5": "3x6, RIR 3", "6": "3x6, RIR 3"},
        }
    }
    slow, _ = wave_emphases(program(tmp_path, edits))
    assert slow.sentence == "Slow: 424 s of lowering a week, and none in the other waves."
