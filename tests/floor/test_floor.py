"""The floor of a session: who uses what at which minute, and what is short.

Expected minutes are worked out by hand beside each case; queues are held against another engine in
`test_floor_simulation.py`.
"""

from pathlib import Path

import pytest

from floors import GROUP, LETTERS, THREE, clock_of, timed
from strength_handbook.calc.floor import (
    least_minutes_held,
    least_minutes_held_often,
    least_minutes_shared,
)
from strength_handbook.floor.floor import session_floor
from strength_handbook.floor.queue import Job, line_up
from strength_handbook.floor.use import demand


def test_without_a_rotation_everybody_goes_by_the_clock(tmp_path: Path) -> None:
    clock = clock_of(tmp_path, LETTERS, exercises=THREE, group=GROUP, warm_up="10 min")
    floor = session_floor(clock)
    assert floor.pairs == 3
    # 10 min of warm-up, then 10, 8 and 6 min with a minute between.
    assert [(one.order, one.start, one.end) for one in floor.intervals if one.pair == 2] == [
        ("A", 10, 20), ("B", 21, 29), ("C", 30, 36)
    ]  # fmt: skip
    assert (floor.minutes, floor.evening) == (36, 36)
    (short,) = floor.shortages
    assert (short.thing, short.minute, short.needed, short.owned) == ("press", 10, 3, 1)
    assert short.orders == ("A",)
    assert demand(floor.intervals, "press") == ((10, 3), (20, 0))
    assert demand(floor.intervals, "mat") == ((21, 3), (29, 0))


def test_a_rotation_ends_the_queue_and_its_waits_are_counted(tmp_path: Path) -> None:
    clock = clock_of(
        tmp_path, LETTERS, exercises=THREE, rotate=["A", "B", "C"], group=GROUP, warm_up="10 min"
    )
    floor = session_floor(clock)
    assert floor.shortages == ()
    # Pair 1: press 10-20, roll 21-29, plank 30-36. Pair 2: roll 10-18, plank 19-25, then the press
    # is taken by pair 3, who began with the plank 10-16, asked at 17 and has it 20-30: 30-40.
    presses = [
        (one.pair, one.start, one.end, one.wait) for one in floor.intervals if one.order == "A"
    ]
    assert presses == [(1, 10, 20, 0), (2, 30, 40, 4), (3, 20, 30, 3)]
    assert floor.minutes == 40
    waited = floor.longest_wait
    assert waited is not None
    assert (waited.pair, waited.order, waited.wait) == (2, "A", 4)
    # Three times ten minutes at one press, in a training of thirty.
    assert floor.bottleneck is not None
    assert (floor.bottleneck.thing, floor.bottleneck.busy, floor.bottleneck.least) == (
        "press", 1.0, 30.0
    )  # fmt: skip


def test_letters_between_those_of_a_rotation_come_after_it(tmp_path: Path) -> None:
    clock = clock_of(tmp_path, LETTERS, exercises=THREE, rotate=["A", "C"], group=GROUP)
    first = [one.order for one in session_floor(clock).intervals if one.pair == 1]
    second = [one.order for one in session_floor(clock).intervals if one.pair == 2]
    assert (first, second) == (["A", "C", "B"], ["C", "A", "B"])


def test_those_who_share_have_one_of_each_thing(tmp_path: Path) -> None:
    letters = [timed("A1", "press", 5), timed("A2", "press", 5)]
    clock = clock_of(tmp_path, letters, exercises=THREE, group={"members": 2, "sharing": 2})
    assert session_floor(clock).shortages == ()


# The bounds with a worked example: 20 pairs on 5 racks, 10.7 min each, need four rounds of 10.7.
@pytest.mark.parametrize(("pairs", "expected"), [(6, 30.1), (12, 32.1), (20, 42.8), (30, 64.2)])
def test_the_bound_of_held_stations(pairs: int, expected: float) -> None:
    assert least_minutes_held(30.1, pairs, 5, 10.7) == pytest.approx(expected)
    press = Job(10.7, 0.0, {"rack": 1})
    turns = line_up([[press]] * pairs, {"rack": 5}, [0.0] * pairs)
    assert max(one[-1].end for one in turns) <= least_minutes_held(0, pairs, 5, 10.7) + 1e-9


def test_the_bounds_of_several_letters_and_of_sharing() -> None:
    assert least_minutes_held_often(20, 6, 2, (8, 6)) == 42
    assert least_minutes_shared(20, 30, 5, 8) == 48
    assert least_minutes_shared(50, 30, 5, 8) == 50
