"""Pairs that go through stations in an order of their own and wait where one is taken.

Whoever has waited longest goes first; somebody whose things are all free does not wait for others.
A pair takes all of its things at once, so that two pairs can never wait for each other for ever.
"""

from bisect import insort
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from heapq import heappop, heappush


@dataclass(frozen=True, slots=True)
class Job:
    """One stay at a station.

    Attributes:
        hold: minutes from set-up to the last set.
        gap: minutes until the next job may begin.
        needs: things taken meanwhile.
    """

    hold: float
    gap: float
    needs: Mapping[str, int]


@dataclass(frozen=True, slots=True)
class Turn:
    """When a job was asked for, begun and ended.

    Attributes:
        asked: minute at which the pair was ready.
        start: minute at which all things were free.
        end: minute at which they were given back.
    """

    asked: float
    start: float
    end: float

    @property
    def wait(self) -> float:
        """Minutes spent waiting."""
        return self.start - self.asked


def line_up(
    jobs: Sequence[Sequence[Job]], units: Mapping[str, int], starts: Sequence[float]
) -> list[list[Turn]]:
    """Turns of every pair in the order of its jobs.

    Things of which nothing is known never run short. What a pair needs more of than there is, it
    takes whenever all of it is free.

    Args:
        jobs: of each pair, in order.
        units: how many there are of each thing.
        starts: minute at which each pair is ready.

    Example:
        >>> press = Job(10, 1, {"press": 1})
        >>> [one.start for (one,) in line_up([[press]] * 3, {"press": 1}, [0, 0, 0])]
        [0, 10, 20]
    """
    free = dict(units)
    turns: list[list[Turn]] = [[] for _ in jobs]
    waiting: list[tuple[float, int]] = []
    # Kinds of events at one minute: things come back (0) before pairs ask for them (1).
    events: list[tuple[float, int, int]] = []
    for pair, minute in enumerate(starts):
        if jobs[pair]:
            heappush(events, (minute, 1, pair))
    while events:
        minute, kind, pair = heappop(events)
        if kind == 0:
            _give_back(free, units, jobs[pair][len(turns[pair]) - 1].needs)
            done = len(turns[pair])
            if done < len(jobs[pair]):
                heappush(events, (minute + jobs[pair][done - 1].gap, 1, pair))
        else:
            insort(waiting, (minute, pair))
        if events and events[0][:2] == (minute, 0):
            continue
        # Who needs the same as somebody who has just been refused need not be asked.
        refused: set[frozenset[tuple[str, int]]] = set()
        left: list[tuple[float, int]] = []
        for asked, one in waiting:
            job = jobs[one][len(turns[one])]
            wanted = frozenset(job.needs.items())
            if wanted in refused or not _take(free, units, job.needs):
                refused.add(wanted)
                left.append((asked, one))
                continue
            turns[one].append(Turn(asked, minute, minute + job.hold))
            heappush(events, (minute + job.hold, 0, one))
        waiting = left
    return turns


def _take(free: dict[str, int], units: Mapping[str, int], needs: Mapping[str, int]) -> bool:
    asked = {key: min(count, units[key]) for key, count in needs.items() if key in units}
    if any(free[key] < count for key, count in asked.items()):
        return False
    for key, count in asked.items():
        free[key] -= count
    return True


def _give_back(free: dict[str, int], units: Mapping[str, int], needs: Mapping[str, int]) -> None:
    for key, count in needs.items():
        if key in units:
            free[key] += min(count, units[key])
