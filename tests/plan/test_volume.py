"""Sets, repetitions, seconds, hard sets and tonnage of slots, sessions and weeks."""

from pathlib import Path
from typing import Any

import pytest

from books import EFFORT, KG_ROOM, exercise, slot, slots_of, work
from strength_handbook.plan.volume import Volume, add_up
from strength_handbook.plan.worked import Worked

MUSCLES = {"direct": ["quads", "glutes"], "helping": ["back-extensors"]}


def worked_doses(root: Path, *doses: Any, **parts: Any) -> Worked:
    """One session whose slots do the doses, all with one exercise."""
    return work(
        root,
        exercises={"lift": exercise(load=EFFORT, muscles=MUSCLES)},
        sessions={"a": [slot("ABCDEFGH"[n], "lift", dose) for n, dose in enumerate(doses)]},
        **parts,
    )


def volume(root: Path, dose: Any, **parts: Any) -> Volume:
    return slots_of(worked_doses(root, dose, **parts))["A"].volume


def test_direct_sets_count_one_and_helping_sets_half(tmp_path: Path) -> None:
    # Pelland 2025, Sports Med, doi 10.1007/s40279-025-02344-w: "fractional" sets fit best.
    found = volume(tmp_path, "4x5, RIR 2")
    assert found.hard_sets == {"quads": 4, "glutes": 4, "back-extensors": 2}


def test_worked_count_of_direct_and_helping_sets(tmp_path: Path) -> None:
    # 4 direct and 2 indirect sets are 5 fractional ones, after Pelland 2025.
    worked = work(
        tmp_path,
        exercises={
            "direct": exercise(load=EFFORT, muscles={"direct": ["triceps"]}),
            "helping": exercise(load=EFFORT, muscles={"direct": ["chest"], "helping": ["triceps"]}),
        },
        sessions={"a": [slot("A", "direct", "4x8, RIR 1"), slot("B", "helping", "2x8, RIR 1")]},
    )
    assert worked.programs[0].week(1).volume.hard_sets == {"triceps": 5, "chest": 2}


@pytest.mark.parametrize(
    ("dose", "hard"),
    [
        ("3x8, RIR 4", 3),
        ("3x8, RIR 5", 0),
        ("3x8, RPE 6", 3),  # an effort of 6 leaves four
        ("3x8, RPE 5.5", 0),
        ("3x8", 3),  # nothing said: taken as hard
        ("3x8 ES, RIR 2", 3),  # a set for each leg is one hard set
        ("ISO 3x30 s, RPE 7", 3),
        ("ISO 3x30 s, RPE 6", 0),
        ("ISO 3x30 s", 0),  # nothing said: not known to be hard
        ("3 -> 40 m, RPE 8", 3),
        ("3 -> 40 m", 0),
        ("3x45 s, RPE 7", 3),
        ("3x45 s, RPE 6.5", 0),
        ("8x2, tempo 1-0-X-0, every 60 s", 0),  # speed on an interval is practice
        ("8x2, tempo 1-0-1-0, every 60 s", 8),
        ("3x2, tempo 1-0-X-0, rest 3:00", 3),
    ],
)
def test_which_sets_are_hard(tmp_path: Path, dose: str, hard: int) -> None:
    expected = {"quads": hard, "glutes": hard, "back-extensors": hard / 2} if hard else {}
    assert volume(tmp_path, dose).hard_sets == expected


def test_house_rules_take_effect(tmp_path: Path) -> None:
    rules = {"hard-set-reserve": "2 reps", "hard-hold-effort": "6 RPE"}
    assert volume(tmp_path, "3x8, RIR 3", rules=rules).hard_sets == {}
    assert volume(tmp_path, "3x8, RIR 2", rules=rules).hard_sets["quads"] == 3
    assert volume(tmp_path, "ISO 3x30 s, RPE 6", rules=rules).hard_sets["quads"] == 3


@pytest.mark.parametrize(
    ("dose", "sets", "reps", "eccentric", "isometric", "fast"),
    [
        # 4 × 5 repetitions of 5 s down, 1 s still, up fast: 100 s, 20 s, 20 fast ones.
        ("4x5, tempo 5-1-X-0", 4, 20, 100, 20, 20),
        # 3 × 6 on each leg, 3 s down and 2 s at the top.
        ("3x6 ES, tempo 3-0-1-2", 3, 36, 108, 72, 0),
        ("3x8-12, tempo 2-1-1-0", 3, 30, 60, 30, 0),
        ("3x8", 3, 24, 0, 0, 0),
        ("ISO 3x30 s", 3, 0, 0, 90, 0),
        ("ISO 2x20 s ES", 2, 0, 0, 80, 0),
        ("3x45 s", 3, 0, 0, 0, 0),
        ("4 -> 40 m ES", 4, 0, 0, 0, 0),
        # The load is held for 20 s before each of five walks.
        ("5 -> 10 m, pause 20 s at arms straight", 5, 0, 0, 100, 0),
        # A pause inside each repetition: 9 of 2 s.
        ("3x3, tempo 2-0-X-0, pause 2 s at mid-shin", 3, 9, 18, 18, 9),
    ],
)
def test_seconds_by_hand(
    tmp_path: Path, dose: str, sets: int, reps: int, eccentric: int, isometric: int, fast: int
) -> None:
    found = volume(tmp_path, dose)
    assert (found.sets, found.reps) == (sets, reps)
    assert (found.eccentric_s, found.isometric_s) == (eccentric, isometric)
    assert found.fast_reps == fast


def test_a_session_is_the_sum_of_its_slots(tmp_path: Path) -> None:
    session = (
        worked_doses(tmp_path, "4x5, tempo 5-1-X-0", "ISO 3x30 s, RPE 8").programs[0].week(1)
    ).sessions[0]
    assert session.volume == add_up(one.volume for one in session.slots)
    assert session.volume.sets == 7
    assert (session.volume.eccentric_s, session.volume.isometric_s) == (100, 110)
    assert session.volume.hard_sets["quads"] == 7


def test_optional_sessions_do_not_count_in_the_week(tmp_path: Path) -> None:
    sessions: dict[str, Any] = {
        key: {"optional": key == "b", "slots": [slot("A", "lift", "3x5")]} for key in "ab"
    }
    worked = work(tmp_path, exercises={"lift": exercise(load=EFFORT)}, sessions=sessions)
    week = worked.programs[0].week(1)
    assert [session.volume.sets for session in week.sessions] == [3, 3]
    assert week.volume.sets == 3


def test_tonnage(tmp_path: Path) -> None:
    room = {**KG_ROOM, "carriers": {"belt": {"name": "belt"}}}
    worked = work(
        tmp_path,
        room=room,
        exercises={
            "squat": exercise(),
            "chin": exercise(load={"kind": "body-weight", "carrier": "belt"}),
            "push": exercise(load={"kind": "body-weight", "share": "65 %"}),
            "effort": exercise(load=EFFORT),
        },
        sessions={
            "a": [
                slot("A", "squat", "3x5 @ 60 kg"),
                slot("B", "squat", "3x5 ES @ 60 kg"),
                slot("C", "chin", "2x4 @ BW+10 kg"),
                slot("D", "chin", "2x4 @ BW-10 kg"),
                slot("E", "push", "2x10 @ BW"),
                slot("F", "effort", "3x10"),
                slot("G", "squat", "3x5 @ 10 kg"),  # below the bar: nobody can do it
            ]
        },
        lifters={"P1": {"bodyweight": "80 kg"}, "P2": {"bodyweight": "60 kg"}},
    )
    tonnage = {order: one.volume.tonnage_kg for order, one in slots_of(worked).items()}
    assert tonnage["A"] == {"P1": 900, "P2": 900}
    assert tonnage["B"] == {"P1": 1800, "P2": 1800}
    # Bodies move with the belt, and less of them with help.
    assert tonnage["C"] == {"P1": 8 * 90, "P2": 8 * 70}
    assert tonnage["D"] == {"P1": 8 * 70, "P2": 8 * 50}
    assert tonnage["E"] == {"P1": 20 * 52, "P2": 20 * 39}
    assert tonnage["F"] == tonnage["G"] == {}
    week = worked.programs[0].week(1).volume.tonnage_kg
    assert week == {"P1": 900 + 1800 + 720 + 560 + 1040, "P2": 900 + 1800 + 560 + 400 + 780}


def test_tonnage_of_push_ups(tmp_path: Path) -> None:
    """64.1 % of the body is at the hands, with them 30 cm higher 54.5 %: Ebben 2011."""
    doses = ("2x10 @ BW", "2x10 @ BW, box 30 cm")
    worked = work(
        tmp_path,
        exercises={"push": exercise(load={"kind": "push-up", "plate-limit": "15 kg"})},
        sessions={"a": [slot("AB"[place], "push", dose) for place, dose in enumerate(doses)]},
        lifters={"P1": {"bodyweight": "80 kg"}},
    )
    found = {order: one.volume.tonnage_kg["P1"] for order, one in slots_of(worked).items()}
    assert found == pytest.approx({"A": 20 * 80 * 0.641, "B": 20 * 80 * 0.545}, rel=1e-3)


def test_tonnage_is_of_the_load_that_exists(tmp_path: Path) -> None:
    worked = work(
        tmp_path,
        exercises={"lift": exercise()},
        sessions={"a": [slot("A", "lift", "3x5 @ 34 % BM")]},
        lifters={"P1": {"bodyweight": "100 kg"}},
    )
    assert slots_of(worked)["A"].volume.tonnage_kg == {"P1": 15 * 32.5}


def test_tonnage_is_what_the_hands_pull(tmp_path: Path) -> None:
    """A two-to-one pulley halves what is on the pin; a lever gives less than its plates and bar.

    The lever: a bar of 20 kg and 1.31 + 2 · 0.41 + two shoulders of 3 cm = 2.19 m, held 2 m from
    its end, which is 3 cm from the joint. The bar: 20 · 1.125 ÷ 2.03 = 11.1 kg at the hands. The
    plates lie against the far shoulder, 1.78 to 1.9 m from the end: 20 · 1.81 to 1.93 ÷ 2.03.
    """
    pins = {"from": "5 kg", "to": "80 kg", "by": "5 kg"}
    room = {
        **KG_ROOM,
        "stacks": {"cable": {"name": "cable", "pins": pins, "ratio": 2},
                   "plain": {"name": "plain", "pins": pins}},
        "bars": {"bar": {"name": "bar", "mass": "20 kg", "sleeve": "41 cm",
                         "between-collars": "131 cm"}},
        "pivots": {"pivot": {"name": "pivot", "offset": "3 cm", "height": "6 cm"}},
    }  # fmt: skip
    lever = {"kind": "pivot", "bar": "bar", "pivot": "pivot",
             "reach": {"grip": "2 m", "bottom": "60 cm", "top": "1.4 m"}}  # fmt: skip
    worked = work(
        tmp_path,
        room=room,
        exercises={
            "row": exercise(load={"kind": "stack", "stack": "cable"}),
            "other": exercise(load={"kind": "stack", "stack": "plain"}),
            "press": exercise(load=lever),
        },
        sessions={
            "a": [
                slot("A", "row", "3x8 @ 40 kg"),
                slot("B", "other", "3x8 @ 40 kg"),
                slot("C", "row", "strip 2 loads -10 kg 6 a load @ 40 kg"),
                slot("D", "press", "2x5 @ 20 kg"),
            ]
        },
        lifters={"P1": {"bodyweight": "80 kg"}},
    )
    tonnage = {order: one.volume.tonnage_kg["P1"] for order, one in slots_of(worked).items()}
    assert tonnage["A"] == 24 * 20
    assert tonnage["B"] == 24 * 40
    # Six at 40 and six at 30 on the pin.
    assert tonnage["C"] == pytest.approx(6 * 20 + 6 * 15)
    assert 10 * (11.1 + 17.8) < tonnage["D"] < 10 * (11.1 + 19.1)


def test_nothing_adds_up_to_nothing() -> None:
    assert add_up([]) == Volume()
