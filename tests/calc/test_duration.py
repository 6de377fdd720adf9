"""Session minutes against published sessions and a step-by-step simulation of shared stations."""

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from strength_handbook.calc.duration import (
    Block,
    block_seconds,
    cycle_seconds,
    gap_seconds,
    session_time,
)
from strength_handbook.calc.registry import OutOfRangeError
from strength_handbook.calc.set_duration import set_seconds


def straight(exercises: int, sets: int, reps: int, rest_s: float) -> list[Block]:
    return [Block(sets, (set_seconds(reps),), rest_s)] * exercises


def paired(exercises: int, sets: int, reps: int, rest_s: float) -> list[Block]:
    return [Block(sets, (set_seconds(reps),) * 2, rest_s)] * (exercises // 2)


def schoenfeld_2019(sets: int) -> list[Block]:
    """7 exercises, 90 s between sets and 2 min between exercises (value from memory)."""
    return [Block(sets, (set_seconds(10),), 90, change_s=120)] * 7


PUBLISHED = [
    # Schoenfeld 2019, Med Sci Sports Exerc 51(1):94–103: 13 min as printed, 40 and 68 value from
    # memory.
    ("one set", schoenfeld_2019(1), 13),
    ("three sets", schoenfeld_2019(3), 40),
    ("five sets", schoenfeld_2019(5), 68),
    # Schoenfeld 2014, J Strength Cond Res 28(10):2909–2918: value from memory.
    ("3 × 3 × 10", straight(3, 3, 10, 90), 17),
    ("3 × 7 × 3", straight(3, 7, 3, 180), 70),
    # Burke 2024, doi 10.51224/SRXIV.419: whole visits, so with all that is no training.
    ("straight sets, whole visit", straight(6, 4, 10, 120), 69),
    ("supersets, whole visit", paired(6, 4, 10, 120), 44),
    # Andersen 2022, Front Psychol 13:912368 and 13:1010596; 2 min rest assumed.
    ("eight exercises", straight(8, 3, 10, 120), 58),
    ("eight exercises, paired", paired(8, 3, 10, 120), 35),
    ("six exercises", straight(6, 3, 10, 120), 46),
]


def test_published_sessions() -> None:
    """One overhead, none, for all ten: eight within a tenth or 4 min, none off by a quarter.

    The two that miss were timed as whole visits: arriving and clearing up are in them.
    """
    off = {
        name: (session_time(blocks).total_min - observed, observed)
        for name, blocks, observed in PUBLISHED
    }
    missed = {name for name, (gap, seen) in off.items() if abs(gap) > max(4.0, 0.1 * seen)}
    assert missed == {"straight sets, whole visit", "supersets, whole visit"}
    assert all(-12 <= off[name][0] <= -9 for name in missed)
    assert all(abs(gap) < 0.25 * seen for gap, seen in off.values())


def test_an_added_set_costs_two_minutes() -> None:
    # Schoenfeld 2019: 1.93 and 2.00 min per set and exercise.
    one, three, five = (session_time(schoenfeld_2019(n)).training_min for n in (1, 3, 5))
    assert (three - one) / 14 == pytest.approx(1.93, abs=0.1)
    assert (five - three) / 14 == pytest.approx(2.00, abs=0.1)


@pytest.mark.parametrize("overhead_min", [0.0, 5.0, 10.0])
def test_time_saved_by_supersets(overhead_min: float) -> None:
    # Burke 2024: 36 % less time, ratio 0.64 ± 0.08. Iversen 2021, Sports Med 51(10):2079–2095:
    # about half the time, 0.4 to 0.65.
    superset = session_time(paired(6, 4, 10, 120), overhead_min).total_min
    ratio = superset / session_time(straight(6, 4, 10, 120), overhead_min).total_min
    assert ratio == pytest.approx(0.64, abs=0.08)
    assert 0.4 < ratio < 0.65


@pytest.mark.parametrize(
    ("sets_and_rests", "minutes", "last_rest_s"),
    [
        # Sheppard and Triplett, Essentials of Strength Training and Conditioning, 4th ed. 2016,
        # ch. 17: rest after every set of a Monday (50.0 min) and of a circuit (7.3 min).
        (
            [(4, 180), (4, 180), (3, 180), (3, 180), (2, 90), (2, 60), (2, 60), (3, 20)],
            50.0,
            20,
        ),
        ([(3, 30), (3, 30), (2, 20), (2, 20), (2, 20), (2, 20), (2, 20), (3, 20)], 7.33, 20),
    ],
    ids=["Monday", "circuit"],
)
def test_rest_of_a_worked_programme(
    sets_and_rests: list[tuple[int, float]], minutes: float, last_rest_s: float
) -> None:
    rest_only = [Block(sets, (0.0,), rest_s) for sets, rest_s in sets_and_rests]
    without_last = session_time(rest_only).training_min
    assert without_last == pytest.approx(minutes - last_rest_s / 60, abs=0.005)
    assert without_last + gap_seconds(rest_only[-1]) / 60 == pytest.approx(minutes, abs=0.005)


@pytest.mark.parametrize(
    ("sets", "rest_s", "minutes"),
    # McBride 2009, J Strength Cond Res 23(1):106–110: rest between sets.
    [(4, 90, 4.5), (11, 300, 50), (8, 180, 21)],
)
def test_rest_between_the_sets_of_one_exercise(sets: int, rest_s: float, minutes: float) -> None:
    assert block_seconds(Block(sets, (0.0,), rest_s)) == 60 * minutes


def test_interval_sets() -> None:
    # By hand: 8 × 2 every 60 s; the eighth starts after 7 min and lasts 6 s.
    speed = Block(8, (6.0,), interval_s=60)
    assert block_seconds(speed) == 426
    assert gap_seconds(speed) == 54
    # A clock that is too short is overrun.
    assert cycle_seconds(Block(8, (70.0,), interval_s=60)) == 70
    assert cycle_seconds(Block(8, (20.0,), interval_s=60, people=3, swap_s=10)) == 90


def test_session_by_hand() -> None:
    # 10 s set-up, 3 sets of 20 s with 100 s rest, 60 s change, then a timed 6-min block.
    blocks = [Block(3, (20.0,), 100, setup_s=10, change_s=60), Block(1, (360.0,))]
    time = session_time(blocks, overhead_min=5, warm_up_min=12)
    assert time.training_min == (10 + 260 + 60 + 360) / 60
    assert time.total_min == time.training_min + 17


def test_no_overhead_is_invented() -> None:
    # Published sessions fit best without one: 8 of 10 rows, against 5 with five minutes.
    assert session_time([Block(1, (60.0,))]).total_min == 1


def test_without_rest_one_round_follows_the_other() -> None:
    assert block_seconds(Block(3, (20.0,))) == 60
    assert cycle_seconds(Block(3, (0.5,))) == 0.5
    assert cycle_seconds(Block(3, (20.0,), people=2)) == 40


def test_blocks_without_rounds_leave_no_trace() -> None:
    real, dropped = Block(3, (20.0,), 100), Block(0, (20.0,), 100, setup_s=30)
    assert block_seconds(dropped) == 0
    assert session_time([real, dropped]) == session_time([real])
    assert session_time([dropped, real, dropped, real]) == session_time([real, real])
    assert session_time([]).training_min == 0


def test_impossible_blocks_are_refused() -> None:
    with pytest.raises(ValueError, match="exercise"):
        Block(3, ())
    with pytest.raises(ValueError, match="person"):
        Block(3, (20.0,), people=0)
    fields = ("rest_s", "transition_s", "setup_s", "swap_s", "interval_s", "change_s")
    for name in fields:
        wrong: dict[str, Any] = {name: -0.1}
        with pytest.raises(ValueError, match="negative"):
            Block(3, (20.0,), **wrong)
    with pytest.raises(ValueError, match="negative"):
        Block(3, (20.0, -0.1))
    with pytest.raises(ValueError, match="negative"):
        Block(-1, (20.0,))
    with pytest.raises(OutOfRangeError):
        session_time([], overhead_min=121)


def simulate(block: Block) -> float:
    """Everybody's last end when each takes the next free turn, starts spread over the stations.

    Who has done fewer sets goes first.
    """
    stations = len(block.work_s)
    free = [0.0] * stations
    ready = [0.0] * block.people
    done = [0] * block.people
    last_end = 0.0
    while min(done) < block.rounds * stations:
        waiting = (p for p in range(block.people) if done[p] < block.rounds * stations)
        start, _, person = min(
            (max(ready[p], free[(p + done[p]) % stations]), done[p], p) for p in waiting
        )
        station = (person + done[person]) % stations
        end = start + block.work_s[station]
        free[station] = end + (block.swap_s if block.people > 1 else 0)
        done[person] += 1
        round_over = done[person] % stations == 0
        ready[person] = end + (block.rest_s if round_over else block.transition_s)
        last_end = max(last_end, end)
    return last_end


times = st.floats(1, 120)


@given(st.integers(1, 8), times, st.floats(0, 240), st.integers(1, 6), st.floats(0, 60))
def test_one_shared_station_is_exact(
    rounds: int, work: float, rest: float, people: int, swap: float
) -> None:
    block = Block(rounds, (work,), rest, people=people, swap_s=swap)
    assert block_seconds(block) == pytest.approx(simulate(block), rel=1e-9)


@given(
    st.integers(1, 5),
    st.lists(times, min_size=2, max_size=4),
    st.floats(0, 30),
    st.floats(60, 240),
    st.integers(1, 6),
    st.floats(0, 60),
)
def test_shared_supersets_are_bounded(
    rounds: int, work: list[float], transition: float, rest: float, people: int, swap: float
) -> None:
    block = Block(rounds, tuple(work), rest, transition, people=people, swap_s=swap)
    simulated = simulate(block)
    assert block_seconds(block) <= simulated + 1e-6
    if people == 1:
        assert block_seconds(block) == pytest.approx(simulated, rel=1e-9)


@given(st.integers(1, 8), st.integers(2, 4), times, st.floats(30, 240), st.floats(0, 30))
def test_partners_at_different_stations_lose_no_time(
    rounds: int, stations: int, work: float, rest: float, swap: float
) -> None:
    # As many people as equal stations, moving round together: nobody waits.
    alone = Block(rounds, (work,) * stations, rest, transition_s=swap, swap_s=swap)
    full = replace(alone, people=stations)
    assert simulate(full) == pytest.approx(simulate(alone))
    assert block_seconds(full) == pytest.approx(block_seconds(alone))


blocks_strategy = st.builds(
    Block,
    rounds=st.integers(1, 8),
    work_s=st.lists(times, min_size=1, max_size=3).map(tuple),
    rest_s=st.floats(0, 240),
    transition_s=st.floats(0, 30),
    people=st.integers(1, 4),
    swap_s=st.floats(0, 60),
)


@given(blocks_strategy, st.floats(0, 60))
def test_more_of_anything_never_takes_less_time(block: Block, more: float) -> None:
    now = block_seconds(block)
    assert block_seconds(replace(block, rounds=block.rounds + 1)) > now
    assert block_seconds(replace(block, people=block.people + 1)) >= now - 1e-9
    assert block_seconds(replace(block, rest_s=block.rest_s + more)) >= now
    assert block_seconds(replace(block, work_s=(*block.work_s, more))) >= now
    assert gap_seconds(block) >= -1e-9


@given(st.lists(blocks_strategy, min_size=1, max_size=5))
def test_no_rest_after_the_last_set_of_the_session(blocks: list[Block]) -> None:
    longer = [*blocks[:-1], replace(blocks[-1], change_s=600)]
    assert session_time(longer) == session_time(blocks)
    spans = sum(map(block_seconds, blocks)) + sum(map(gap_seconds, blocks[:-1]))
    assert session_time(blocks).training_min == pytest.approx(spans / 60)
