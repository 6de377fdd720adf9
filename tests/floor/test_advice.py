"""What ends a queue or saves minutes, the smallest change first."""

from dataclasses import replace
from pathlib import Path

import pytest

from books import EFFORT, exercise, slot
from floors import GROUP, LETTERS, PRESS, ROOM, THREE, clock_of, timed
from strength_handbook.floor.advice import (
    Advice,
    Cut,
    advice,
    apart_that_clears,
    cut_that_fits,
    met_shortages,
    own_shortages,
    rotation_that_fits,
    with_cut,
)
from strength_handbook.floor.floor import session_floor, written_plan
from strength_handbook.floor.group import members_that_fit, one_more_sharing


def test_start_groups_meet_or_do_not(tmp_path: Path) -> None:
    group = {"members": 1, "starts": 2, "apart": "9 min"}
    clock = clock_of(tmp_path, LETTERS, exercises=THREE, group=group)
    plan = written_plan(clock.program, clock.session)
    assert own_shortages(clock, plan) == ()
    (short,) = met_shortages(clock, plan)
    assert (short.thing, short.minute, short.needed) == ("press", 9, 2)
    # The press is free at minute 10, to the second: then nobody meets.
    assert met_shortages(clock, replace(plan, apart=10.0)) == ()
    assert apart_that_clears([clock], lambda one, p: bool(met_shortages(one, p))) == 10
    assert advice(clock) == (Advice(apart=10.0),)
    assert session_floor(clock).evening == 9 + 26


@pytest.mark.parametrize(("free", "expected"), [(115, 115), (120, 120), (121, None)])
def test_starts_are_never_advised_more_than_two_hours_apart(
    tmp_path: Path, free: int, expected: float | None
) -> None:
    group = {"members": 1, "starts": 2, "apart": "9 min"}
    clock = clock_of(tmp_path, LETTERS, exercises=THREE, group=group)
    assert apart_that_clears([clock], lambda _, plan: plan.apart < free) == expected


def test_the_advice_is_the_shortest_rotation_of_late_letters(tmp_path: Path) -> None:
    letters = [timed("A", "plank", 6), timed("B", "roll", 8), timed("C", "press", 8)]
    group = {"members": 2}
    helpers = {key: one | {"role": "assistance"} for key, one in THREE.items()}
    clock = clock_of(tmp_path, letters, exercises=helpers, group=group)
    assert [short.thing for short in session_floor(clock).shortages] == ["press"]
    assert advice(clock) == (Advice(rotate=("B", "C")),)
    fits = session_floor(
        clock, replace(written_plan(clock.program, clock.session), rotate=("B", "C"))
    )
    assert fits.shortages == ()


@pytest.mark.parametrize("main", ["press", "roll", None])
def test_a_main_lift_is_never_turned(tmp_path: Path, main: str | None) -> None:
    letters = [timed("A", "plank", 6), timed("B", "roll", 8), timed("C", "press", 8)]
    exercises = {
        key: one | {"role": "main" if key == main else "assistance"} for key, one in THREE.items()
    }

    def run(**more: list[str]) -> tuple[str, ...]:
        folder = tmp_path / "-".join(map(str, (*more.get("rotate", ()), main)))
        clock = clock_of(folder, letters, exercises=exercises, group={"members": 2}, **more)
        return rotation_that_fits([clock], {"C"}, lambda floor: not floor.shortages)

    assert run() == (() if main else ("B", "C"))
    # Where the coach turns it already, that is the coach's choice.
    assert run(rotate=["B", "C"]) == ("B", "C")


def test_the_first_letter_keeps_its_place(tmp_path: Path) -> None:
    letters = [timed("A", "press", 8), timed("B", "roll", 8)]
    helpers = {key: one | {"role": "assistance"} for key, one in THREE.items()}
    clock = clock_of(tmp_path, letters, exercises=helpers, group={"members": 2})
    assert rotation_that_fits([clock], {"A"}, lambda floor: not floor.shortages) == ()


def test_how_many_the_room_holds_and_what_more_at_a_station_comes_to(tmp_path: Path) -> None:
    # One press: one pair. Six minutes for one are 18 for three who take turns.
    group = {"members": 3, "sharing": 2}
    clock = clock_of(tmp_path, [timed("A", "press", 6)], exercises=THREE, group=group)
    assert members_that_fit([clock]) == 2
    shared = one_more_sharing([clock])
    assert shared is not None
    assert (shared.sharing, shared.short) == (3, ())
    assert shared.minutes >= 18
    most = clock_of(tmp_path / "4", [timed("A", "press", 6)], exercises=THREE,
                    group={"members": 9, "sharing": 4})  # fmt: skip
    assert one_more_sharing([most]) is None


def test_no_rotation_of_one_letter(tmp_path: Path) -> None:
    clock = clock_of(tmp_path, [timed("A", "press", 6)], exercises=THREE, group=GROUP)
    assert rotation_that_fits([clock], {"A"}, lambda floor: not floor.shortages) == ()
    assert advice(clock) == ()


def test_a_rotation_cannot_lend_what_is_not_there(tmp_path: Path) -> None:
    room = ROOM | {"kit": ROOM["kit"] | {"mat": {"name": "mat", "count": 0}}}
    clock = clock_of(tmp_path, LETTERS, exercises=THREE, rotate=["A", "B"], group=GROUP, room=room)
    assert "mat" in {short.thing for short in session_floor(clock).shortages}


def test_cuts_are_tried_from_the_smallest_on(tmp_path: Path) -> None:
    letters = [
        slot("A", "press", {"1": "3x1 min, RPE 6, rest 1:00"}),
        slot("B", "plank", {"1": "3x1 min, RPE 6, rest 1:00"}),
    ]
    helper = exercise("Plank", EFFORT, role="assistance")
    clock = clock_of(tmp_path, letters, exercises={"press": PRESS, "plank": helper})
    # Two letters of 3 + 2 min and a minute between.
    assert session_floor(clock).minutes == 11

    def cut_to(most: float) -> Cut | None:
        return cut_that_fits(clock, lambda floor: floor.minutes <= most, lambda _: True)

    cuts = {most: cut_to(most) for most in (10.5, 9.5, 8.5, 5.0)}
    assert cuts == {
        10.5: Cut(("B",), rest=45.0),  # two rests of a quarter of a minute less
        9.5: Cut(("B",), sets=2),
        8.5: Cut(("B",), sets=1),
        5.0: None,
    }
    assert session_floor(with_cut(clock, Cut(("B",), sets=2))).minutes == 9


@pytest.mark.parametrize(("members", "expected"), [(2, ("B", "C")), (1, ())])
def test_groups_that_begin_with_other_letters_may_meet(
    tmp_path: Path, members: int, expected: tuple[str, ...]
) -> None:
    """Two presses. Two groups of two need four of them at once; turned, two and two.

    One alone in each group begins with the same letter as the other, whatever is turned.
    """
    letters = [timed("A", "plank", 6), timed("B", "roll", 8), timed("C", "press", 8)]
    helpers = {key: one | {"role": "assistance"} for key, one in THREE.items()}
    presses = {"press": {"name": "leg press", "count": members}}
    clock = clock_of(
        tmp_path, letters, exercises=helpers, room=ROOM | {"machines": presses},
        group={"members": members, "sharing": 1, "starts": 2, "apart": "0 min"},
    )  # fmt: skip
    plan = written_plan(clock.program, clock.session)
    assert own_shortages(clock, plan) == ()
    (short,) = met_shortages(clock, plan)
    assert (short.thing, short.needed) == ("press", 2 * members)
    run = rotation_that_fits([clock], {"C"}, lambda floor: not floor.shortages, together=True)
    assert run == expected
    if run:
        assert session_floor(clock, replace(plan, rotate=run)).shortages == ()
