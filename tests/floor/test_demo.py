"""The demo's evening: two start groups of three pairs, and plans that nobody has written."""

from dataclasses import replace
from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from demo import PROGRAMS
from strength_handbook.floor.floor import FloorClock, session_clock, session_floor, written_plan
from strength_handbook.floor.needs import slot_needs
from strength_handbook.floor.use import Floor, Stay
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book


@cache
def demo() -> Worked:
    book = read_book(PROGRAMS).book
    assert book is not None
    return work_out(book)


def demo_clocks() -> list[FloorClock]:
    worked = demo()
    return [
        session_clock(worked.book, program.program, session)
        for program in worked.programs
        for week in program.weeks
        for session in week.sessions
    ]


def test_without_a_rotation_the_floor_agrees_with_the_session_page() -> None:
    for clock in demo_clocks():
        plan = replace(written_plan(clock.program, clock.session), rotate=())
        floor = session_floor(clock, plan)
        assert floor.minutes == pytest.approx(clock.session.minutes.total)
        starts = {one.order[0]: one.start for one in reversed(floor.intervals) if one.group == 1}
        assert starts == pytest.approx(dict(clock.session.minutes.starts))


def test_the_evening_has_enough_of_everything() -> None:
    for clock in demo_clocks():
        floor = session_floor(clock)
        assert floor.shortages == (), (clock.session.week, clock.session.id)
        assert floor.short_sizes == ()


def test_bands_on_the_trap_bar_take_a_rack_for_its_pegs() -> None:
    for clock in demo_clocks():
        for slot in clock.session.slots:
            if slot.exercise_id == "trap-bar-deadlift":
                things = slot_needs(clock.book, slot, 0, 2).things
                assert ("rack" in things) == (slot.dose.said.bands is not None)


def demo_floor(week: int, session: str, **changes: Any) -> Floor:
    (clock,) = [c for c in demo_clocks() if (c.session.week, c.session.id) == (week, session)]
    return session_floor(clock, replace(written_plan(clock.program, clock.session), **changes))


def test_both_start_groups_at_the_same_hour() -> None:
    floor = demo_floor(2, "b-descend", apart=0.0)
    short = {one.thing: one for one in floor.shortages}["yoke-bar"]
    assert (short.minute, short.needed, short.owned) == (11, 6, 3)


def test_one_leg_press_and_one_pair_of_thick_handles_without_a_rotation() -> None:
    short = {one.thing: one for one in demo_floor(6, "b-descend", rotate=(), starts=1).shortages}
    assert {"leg-press", "thick-handle"} == set(short)
    assert (short["thick-handle"].needed, short["thick-handle"].owned) == (6, 2)


def overlapping(one: Stay, other: Stay) -> bool:
    return one.start < other.end - 1e-6 and other.start < one.end - 1e-6


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(range(36)),
    st.integers(1, 16),
    st.integers(1, 3),
    st.integers(1, 3),
    st.integers(0, 90),
    st.sets(st.sampled_from("ABCDE"), max_size=4),
)
def test_any_plan_of_the_demo(
    number: int, members: int, sharing: int, starts: int, apart: int, rotate: set[str]
) -> None:
    clocks = demo_clocks()
    clock = clocks[number % len(clocks)]
    plan = replace(
        written_plan(clock.program, clock.session),
        members=members, sharing=sharing, starts=starts, apart=float(apart),
        rotate=tuple(sorted(rotate)),
    )  # fmt: skip
    floor = session_floor(clock, plan)
    letters = set(clock.letters)
    straight = sum(sum(clock.letters[letter]) for letter in letters)
    for group in range(1, starts + 1):
        for pair in range(1, floor.pairs + 1):
            own = [one for one in floor.intervals if (one.group, one.pair) == (group, pair)]
            # Everybody does everything once, and never two letters at once.
            assert len(own) == len(clock.session.slots)
            firsts = {one.order[0]: one for one in own}
            assert set(firsts) == letters
            stays = list(firsts.values())
            assert not any(overlapping(a, b) for a in stays for b in stays if a is not b)
    assert (
        floor.minutes
        >= (clock.program.warm_up + clock.program.close) / 60
        + straight
        - max(gap for _, gap in clock.letters.values())
        - 1e-6
    )
    assert floor.evening == pytest.approx(floor.minutes + (starts - 1) * apart)
    for one in floor.intervals:
        assert one.wait >= -1e-9
