"""Queues at scarce equipment against an independent discrete-event engine, SimPy.

The engine knows nothing of the handbook: each pair is a process that asks for its station, holds it
and goes on. Waiting times must agree to the second; and the bounds of `calc.floor` must lie below
every simulated floor, with the distance that the list of formulas states.
"""

from collections.abc import Generator, Sequence
from dataclasses import replace
from random import Random
from statistics import median
from typing import Any

import pytest

from oracle import oracle
from strength_handbook.calc.floor import (
    least_minutes_held,
    least_minutes_held_often,
    least_minutes_shared,
)
from strength_handbook.floor.queue import Job, Turn, line_up

FLOORS = 150
Plan = list[list[Job]]
Units = dict[str, int]


def random_floor(
    chance: Random, *, kinds: int = 1, rotated: bool, uneven: bool = True
) -> tuple[Plan, Units]:
    """Pairs that do the same letters, each letter at stations of its own.

    `uneven` pairs differ by a tenth in their minutes, so that no two ask at the same moment.
    """
    letters = "ABCDE"[: chance.randint(2, 5)]
    units = {f"{letter}{n}": chance.randint(1, 4) for letter in letters for n in range(kinds)}
    jobs = [
        Job(
            chance.uniform(4, 14),
            1.0,
            {f"{letter}{n}": 1 for n in range(kinds) if not n or chance.random() < 0.5},
        )
        for letter in letters
    ]
    pairs = chance.randint(2, 14)
    turn = len(letters) if rotated else 1
    plan = [jobs[p % turn :] + jobs[: p % turn] for p in range(pairs)]
    if uneven:
        plan = [
            [replace(job, hold=job.hold * chance.uniform(0.9, 1.1)) for job in one] for one in plan
        ]
    return plan, units


def simulate(plan: Plan, units: Units, starts: Sequence[float]) -> list[list[Turn]]:
    """The same floor in SimPy; a pair that waits is told when anything comes back."""
    env = oracle("simpy").Environment()
    free = dict(units)
    waiting: list[Any] = []
    turns: list[list[Turn]] = [[] for _ in plan]

    def pair(number: int) -> Generator[Any, Any, None]:
        yield env.timeout(starts[number])
        for job in plan[number]:
            asked = env.now
            while any(free[key] < count for key, count in job.needs.items()):
                told = env.event()
                waiting.append(told)
                yield told
            for key, count in job.needs.items():
                free[key] -= count
            begun = env.now
            yield env.timeout(job.hold)
            for key, count in job.needs.items():
                free[key] += count
            turns[number].append(Turn(asked, begun, env.now))
            told_now, waiting[:] = list(waiting), []
            for told in told_now:
                told.succeed()
            yield env.timeout(job.gap)

    for number in range(len(plan)):
        env.process(pair(number))
    env.run()
    return turns


def simulate_with_resources(plan: Plan, units: Units) -> list[list[Turn]]:
    """Floors with one kind for each letter, with the engine's own queues."""
    simpy = oracle("simpy")
    env = simpy.Environment()
    stations = {key: simpy.Resource(env, capacity=count) for key, count in units.items()}
    turns: list[list[Turn]] = [[] for _ in plan]

    def pair(number: int) -> Generator[Any, Any, None]:
        for job in plan[number]:
            (key,) = job.needs
            asked = env.now
            with stations[key].request() as request:
                yield request
                begun = env.now
                yield env.timeout(job.hold)
            turns[number].append(Turn(asked, begun, env.now))
            yield env.timeout(job.gap)

    for number in range(len(plan)):
        env.process(pair(number))
    env.run()
    return turns


def flat(turns: list[list[Turn]]) -> list[float]:
    return [value for one in turns for turn in one for value in (turn.asked, turn.start, turn.end)]


@pytest.mark.parametrize("rotated", [False, True])
def test_queues_at_one_kind_each(rotated: bool) -> None:  # noqa: FBT001  # a parameter
    chance = Random(7)
    for _ in range(FLOORS):
        plan, units = random_floor(chance, rotated=rotated)
        ours = line_up(plan, units, [0.0] * len(plan))
        assert flat(ours) == pytest.approx(flat(simulate_with_resources(plan, units)))


def test_queues_for_several_things_at_once() -> None:
    chance = Random(11)
    for _ in range(FLOORS):
        plan, units = random_floor(chance, kinds=3, rotated=True)
        starts = [chance.uniform(0, 20) for _ in plan]
        assert flat(line_up(plan, units, starts)) == pytest.approx(
            flat(simulate(plan, units, starts))
        )


def test_nobody_ever_holds_more_than_there_is() -> None:
    chance = Random(13)
    for _ in range(FLOORS):
        plan, units = random_floor(chance, kinds=3, rotated=True)
        turns = line_up(plan, units, [0.0] * len(plan))
        stays = [
            (turn, job)
            for jobs, several in zip(plan, turns, strict=True)
            for job, turn in zip(jobs, several, strict=True)
        ]
        for moment, _ in stays:
            for key, owned in units.items():
                held = sum(
                    job.needs.get(key, 0)
                    for turn, job in stays
                    if turn.start <= moment.start < turn.end
                )
                assert held <= owned


def above_the_bound(chance: Random, *, rotated: bool) -> float:
    """How many times the bound a random floor takes."""
    plan, units = random_floor(chance, rotated=rotated, uneven=False)
    turns = line_up(plan, units, [0.0] * len(plan))
    took = max(one[-1].end for one in turns)
    own = sum(job.hold + job.gap for job in plan[0]) - plan[0][-1].gap
    least = max(
        bound
        for job in plan[0]
        for (key,) in [job.needs]
        for bound in (
            least_minutes_held_often(own, len(plan), units[key], [job.hold]),
            least_minutes_held(own, len(plan), units[key], job.hold),
        )
    )
    return took / least


def test_rotated_floors_lie_at_the_bound() -> None:
    chance = Random(17)
    above = [above_the_bound(chance, rotated=True) for _ in range(10 * FLOORS)]
    # Sums in another order may differ by a hair.
    assert min(above) >= 1 - 1e-9
    assert median(above) <= 1.001
    assert max(above) <= 1.33


def test_floors_that_all_begin_alike_lie_far_above_it() -> None:
    chance = Random(17)
    above = [above_the_bound(chance, rotated=False) for _ in range(10 * FLOORS)]
    assert min(above) >= 1 - 1e-9
    assert median(above) >= 1.25
    assert max(above) <= 1.9


def test_the_bound_for_stations_shared_between_sets() -> None:
    """Everybody does some sets at each of several kinds, and rests away from the station."""
    chance = Random(19)
    above = []
    for _ in range(2 * FLOORS):
        letters = "ABC"[: chance.randint(1, 3)]
        units = {letter: chance.randint(1, 4) for letter in letters}
        sets = [
            Job(chance.uniform(0.5, 1.2), chance.uniform(1, 3), {letter: 1})
            for letter in letters
            for _ in range(chance.randint(3, 5))
        ]
        members = chance.randint(2, 16)
        begins = [
            next(i for i, job in enumerate(sets) if letters[m % len(letters)] in job.needs)
            for m in range(members)
        ]
        plan = [sets[begin:] + sets[:begin] for begin in begins]
        turns = line_up(plan, units, [0.0] * members)
        took = max(one[-1].end for one in turns)
        own = sum(job.hold + job.gap for job in sets) - max(job.gap for job in sets)
        least = max(
            least_minutes_shared(
                own, members, units[key], sum(job.hold for job in sets if key in job.needs)
            )
            for key in letters
        )
        above.append(took / least)
    assert min(above) >= 1 - 1e-9
    assert median(above) <= 1.1
    assert max(above) <= 1.5
