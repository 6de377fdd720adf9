"""Session minutes: published sessions written as programs, rests, pairs and shared stations."""

from dataclasses import replace
from functools import cache
from itertools import pairwise
from math import ceil
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from books import EFFORT, base, build_book, exercise, slot, slots_of, work
from demo import PROGRAMS
from strength_handbook.model.book import Book
from strength_handbook.model.count import Count
from strength_handbook.model.dose import Dose, Hold, Reps
from strength_handbook.plan.minutes import (
    Minutes,
    TimedSlot,
    session_blocks,
    session_minutes,
    work_seconds,
)
from strength_handbook.plan.ramps import slot_ramps
from strength_handbook.plan.work_out import work_out
from strength_handbook.reading.book import read_book


def minutes(
    root: Path, doses: dict[str, Any], *, change: str = "60 s", swap: str = "0 s", **program: Any
) -> Minutes:
    """A session of sets with no set-up time; `doses` by order letter."""
    keys = {order: f"lift-{order.lower()}" for order in doses}
    worked = work(
        root,
        exercises={key: exercise(key, EFFORT) for key in keys.values()},
        sessions={"a": [slot(order, keys[order], dose) for order, dose in doses.items()]},
        rules={"change-time": change, "swap-time": swap},
        **program,
    )
    return worked.programs[0].week(1).sessions[0].minutes


def straight(exercises: int, dose: str) -> dict[str, str]:
    return {"ABCDEFGH"[number]: dose for number in range(exercises)}


def paired(exercises: int, dose: str, rest: str) -> dict[str, str]:
    """Pairs back to back: no rest inside, `rest` after each round."""
    letters = "ABCDEFGH"[: exercises // 2]
    both = ((f"{letter}1", f"{letter}2") for letter in letters)
    return {
        order: f"{dose}, rest {after}"
        for pair in both
        for order, after in zip(pair, ("0 s", rest), strict=True)
    }


TWO_MIN = "2 min"
PUBLISHED = [
    # Schoenfeld 2019, Med Sci Sports Exerc 51(1):94–103: 7 exercises, 8–12RM, 90 s between sets and
    # 2 min between exercises (value from memory). 13 min as printed, 40 and 68 value from memory.
    ("one set", straight(7, "1x8-12, rest 90 s"), TWO_MIN, 13),
    ("three sets", straight(7, "3x8-12, rest 90 s"), TWO_MIN, 40),
    ("five sets", straight(7, "5x8-12, rest 90 s"), TWO_MIN, 68),
    # Schoenfeld 2014, J Strength Cond Res 28(10):2909–2918: value from memory.
    ("3 × 3 × 10", straight(3, "3x10, rest 90 s"), "90 s", 17),
    ("3 × 7 × 3", straight(3, "7x3, rest 3:00"), "3 min", 70),
    # Burke 2024, doi 10.51224/SRXIV.419: whole visits, 8–12RM.
    ("straight, whole visit", straight(6, "4x8-12, rest 2:00"), TWO_MIN, 69),
    ("pairs, whole visit", paired(6, "4x8-12", "2:00"), TWO_MIN, 44),
    # Andersen 2022, Front Psychol 13:912368 and 13:1010596; 2 min rest assumed.
    ("eight exercises", straight(8, "3x10, rest 2:00"), TWO_MIN, 58),
    ("eight exercises, pairs", paired(8, "3x10", "2:00"), TWO_MIN, 35),
    ("six exercises", straight(6, "3x10, rest 2:00"), TWO_MIN, 46),
]


def test_published_sessions(tmp_path: Path) -> None:
    """Without a warm-up or a close: eight of ten within a tenth or 4 min.

    The two that miss were timed as whole visits, and come out 10 and 11 min short.
    """
    missed = {}
    for place, (name, doses, change, observed) in enumerate(PUBLISHED):
        # The change takes the place of a rest, so it is written in seconds as a house rule.
        amount, unit = change.split()
        seconds = int(amount) * (60 if unit == "min" else 1)
        total = minutes(tmp_path / str(place), doses, change=f"{seconds} s").total
        if abs(total - observed) > max(4.0, 0.1 * observed):
            missed[name] = total - observed
    assert missed == {
        "straight, whole visit": pytest.approx(-11, abs=0.5),
        "pairs, whole visit": pytest.approx(-10, abs=0.5),
    }


def test_each_further_set_costs_what_was_published(tmp_path: Path) -> None:
    # Schoenfeld 2019: 1.93 and 2.00 min for each further set of one exercise.
    one, five = (
        minutes(tmp_path, straight(7, f"{sets}x8-12, rest 90 s"), change="120 s").total
        for sets in (1, 5)
    )
    assert (five - one) / 4 / 7 == pytest.approx(1.97, abs=0.05)


def test_pairs_take_two_thirds_of_the_time(tmp_path: Path) -> None:
    # Burke 2024: 36 % less time (69 against 44 min of the whole visit).
    singles = minutes(tmp_path, straight(6, "4x8-12, rest 2:00"), change="120 s", warm_up="10 min")
    pairs = minutes(tmp_path, paired(6, "4x8-12", "2:00"), change="120 s", warm_up="10 min")
    assert pairs.total / singles.total == pytest.approx(0.64, abs=0.08)


def test_no_rest_after_the_last_set(tmp_path: Path) -> None:
    # Four sets of 10 × 3 s and three rests of two minutes.
    assert minutes(tmp_path, {"A": "4x10, rest 2:00"}).total == pytest.approx(8)
    # One set, no rest at all.
    assert minutes(tmp_path, {"A": "1x10, rest 5:00"}).total == pytest.approx(0.5)
    # Two exercises of one set: one change between them, none after the second.
    assert minutes(tmp_path, straight(2, "1x10, rest 5:00"), change="60 s").total == 2
    # A round of two with 30 s between and two minutes after: B1, 30 s, B2, 2:00, B1, 30 s, B2.
    pair = {"B1": "2x10, rest 30 s", "B2": "2x10, rest 2:00"}
    assert minutes(tmp_path, pair).total == pytest.approx((4 * 30 + 2 * 30 + 120) / 60)


def test_warm_up_and_close_are_added(tmp_path: Path) -> None:
    found = minutes(tmp_path, {"A": "4x10, rest 2:00"}, warm_up="10 min", close="5 min")
    assert (found.training, found.total) == (8, 23)
    assert found.starts == (("A", 10),)


def test_a_ramp_comes_before_the_sets(tmp_path: Path) -> None:
    plain = minutes(tmp_path, {"A": "2x5, rest 2:00"})
    ramp = minutes(tmp_path, {"A": "2x5, rest 2:00, top 5RM"})
    # By the house rules: 4 sets of 5 × 3 s on the way up, a minute after each.
    assert ramp.total - plain.total == pytest.approx((4 * 15 + 4 * 60) / 60)
    assert ramp.starts == plain.starts


def test_sets_on_an_interval(tmp_path: Path) -> None:
    # Eight starts a minute apart, the last set of 2 × 2 s ends after seven minutes and 4 s.
    found = minutes(tmp_path, {"A": "8x2, tempo 1-0-X-0, every 60 s"})
    assert found.total == pytest.approx(7 + 4 / 60)


def test_a_range_of_sets_is_reckoned_up(tmp_path: Path) -> None:
    for sets, whole in (("2-3", 3), ("3-4", 4), ("4-5", 5)):
        ranged = minutes(tmp_path, {"A": {"1": {"sets": sets, "reps": 10, "rest": "90 s"}}})
        assert ranged == minutes(tmp_path, {"A": f"{whole}x10, rest 90 s"})


@pytest.mark.parametrize(
    ("dose", "seconds"),
    [
        ("1x5, tempo 5-1-X-0", 35),
        ("1x5", 15),
        ("1x8-12", 30),
        ("1x5 ES", 2 * 15 + 5),
        ("ISO 1x30 s", 30),
        ("ISO 1x30 s ES", 65),
        ("1x45 s", 45),
        ("1 -> 40 m", 40),
        ("1 -> 30 m ES", 65),
    ],
)
def test_one_set(tmp_path: Path, dose: str, seconds: float) -> None:
    assert minutes(tmp_path, {"A": dose}).total * 60 == pytest.approx(seconds)


def test_a_team_walks_together(tmp_path: Path) -> None:
    """Four times 100 m at 1 m/s and three rests: 4 × 100 + 3 × 180 s, for two as for one."""
    team = "4 -> 100 m, team 6 x 100 kg, rest 3:00"
    both = {"sharing": 2, "members": 6}
    found = minutes(tmp_path, {"A": team}, swap="15 s", group=both)
    assert found.training == pytest.approx(940 / 60)
    alone = minutes(tmp_path, {"A": "4 -> 100 m, rest 3:00"}, swap="15 s", group=both)
    assert alone.training == pytest.approx((3 * 280 + 2 * 100 + 15) / 60)


def test_a_hold_before_each_walk(tmp_path: Path) -> None:
    dose = "5 -> 10 m, team 6 x 100 kg, pause 20 s at arms straight, rest 2:00"
    assert minutes(tmp_path, {"A": dose}).total == pytest.approx((5 * 30 + 4 * 120) / 60)


def test_steps_of_a_later_lift(tmp_path: Path) -> None:
    """The first lift's steps are part of the warm-up; a later one's take their time.

    Each step three repetitions of 3 s, then a minute: by the house rules.
    """
    bar = {"kind": "bar", "bar": "bar"}
    lifters = {"P1": {"bodyweight": "72 kg", "bases": {"best": "140 kg"}}}

    def found(root: Path, *, role: str) -> tuple[float, int]:
        worked = work(
            root,
            exercises={"one": exercise(load=bar), "two": exercise(load=bar, role=role)},
            sessions={
                "a": [slot(x, y, "2x3 @ 80 %, rest 2:00", base="best")
                      for x, y in (("A", "one"), ("B", "two"))]
            },
            bases={"best": base("one")},
            lifters=lifters,
            rules={"change-time": "0 s"},
        )  # fmt: skip
        ramps = slot_ramps(worked.book.room, slots_of(worked)["A"])
        assert ramps is not None
        session = worked.programs[0].week(1).sessions[0]
        return session.minutes.training * 60, len(ramps.by_lifter["P1"]) - 1

    plain, steps = found(tmp_path / "1", role="assistance")
    more, _ = found(tmp_path / "2", role="main")
    assert steps >= 3
    assert more - plain == pytest.approx(steps * (9 + 60))


@cache
def demo_book() -> Book:
    book = read_book(PROGRAMS).book
    assert book is not None
    return book


def test_house_rules_take_effect() -> None:
    book = demo_book()
    dose = Dose(Count(3, 3), Reps(Count(10, 10)))
    slower = replace(book, rule_values={**book.rule_values, "seconds-per-rep": 4})
    assert work_seconds(book, dose) == 30
    assert work_seconds(slower, dose) == 40


def test_starts_rise_through_the_demo() -> None:
    sessions = [s for p in work_out(demo_book()).programs for w in p.weeks for s in w.sessions]
    assert sessions
    for session in sessions:
        starts = session.minutes.starts
        assert [letter for letter, _ in starts] == sorted({slot.order[0] for slot in session.slots})
        moments = [moment for _, moment in starts]
        assert all(later > earlier for earlier, later in pairwise(moments))
        assert moments[-1] < session.minutes.total


@given(
    st.lists(
        st.tuples(
            st.integers(1, 5),
            st.integers(5, 60),
            st.integers(0, 240),
            st.integers(1, 3),
        ),
        min_size=1,
        max_size=5,
    ),
    st.integers(2, 4),
)
def test_sharing(blocks: list[tuple[int, int, int, int]], sharing: int) -> None:
    """Partners cost their turns, unless they fit into the rest; then only the last one's end."""
    book = demo_book()
    swap = book.rule("swap-time")
    program = book.programs[0].program
    ready = next(iter(book.exercises.values())).model_copy(update={"setup_seconds": 0})
    slots = [
        TimedSlot(
            "ABCDE"[letter] + (str(number + 1) if size > 1 else ""),
            ready,
            Dose(Count(sets, sets), Hold(seconds), rest=rest),
        )
        for letter, (sets, seconds, rest, size) in enumerate(blocks)
        for number in range(size)
    ]

    def shared_by(people: int) -> Minutes:
        group = program.group.model_copy(update={"sharing": people})
        return session_minutes(book, program.model_copy(update={"group": group}), slots)

    alone, together = shared_by(1), shared_by(sharing)
    assert together.total >= alone.total - 1e-9
    # Worked out by hand: a round lasts as long as its work and rest, or as everybody's turns.
    longer = 0.0
    for sets, seconds, rest, size in blocks:
        own = size * (seconds + rest)
        turns = sharing * (seconds + swap)
        last_one = max(0.0, turns - swap - (size * seconds + (size - 1) * rest))
        longer += (sets - 1) * max(0.0, turns - own) + last_one
    assert (together.total - alone.total) * 60 == pytest.approx(longer)


def test_those_who_share_an_amrap_work_in_turns_inside_it(tmp_path: Path) -> None:
    """Six minutes are six minutes for both; a second pair comes after the first and a swap."""
    doses = {"A": "6 min AMRAP, pace 5/min, shared by 2"}
    two = minutes(tmp_path, doses, swap="15 s", group={"sharing": 2})
    four = minutes(tmp_path, doses, swap="15 s", group={"sharing": 4})
    own = minutes(tmp_path, {"A": "6 min AMRAP, pace 5/min"}, swap="15 s", group={"sharing": 2})
    assert two.total * 60 == pytest.approx(360)
    assert four.total * 60 == pytest.approx(2 * 360 + 15)
    # Not shared, each of the two has six minutes.
    assert own.total * 60 == pytest.approx(2 * 360 + 15)


def test_a_free_station_costs_only_the_last_partners_turn(tmp_path: Path) -> None:
    doses = {"A": "4x10, rest 2:00"}
    alone = minutes(tmp_path, doses, swap="15 s")
    two = minutes(tmp_path, doses, swap="15 s", group={"sharing": 2})
    four = minutes(tmp_path, doses, swap="15 s", group={"sharing": 4})
    # Two of 30 s and a swap fit into 30 s of work and two minutes of rest; four don't.
    assert (two.total - alone.total) * 60 == pytest.approx(30 + 15)
    assert (four.total - alone.total) * 60 == pytest.approx(3 * (4 * 45 - 150) + 3 * 45)


def at_one_bar(root: Path, dose: str, *bests: int, sharing: int = 2) -> float:
    """Seconds of one lift whose example lifters share a bar, with 15 s from one to the next."""
    worked = work(
        root,
        exercises={"lift": exercise()},
        sessions={"a": [slot("A", "lift", dose, base="best")]},
        bases={"best": base()},
        lifters={
            f"P{number}": {"bodyweight": "72 kg", "bases": {"best": f"{best} kg"}}
            for number, best in enumerate(bests, 1)
        },
        rules={"swap-time": "15 s", "plate-time": "5 s", "seconds-per-rep": "3 s"},
        group={"members": 4, "sharing": sharing},
    )
    return 60 * worked.programs[0].week(1).sessions[0].minutes.total


def test_plates_that_change_on_a_shared_bar_take_time(tmp_path: Path) -> None:
    """Counted by hand; seconds for a plate are the house's: common practice, no source."""
    short, long = "4x10 @ 50 %, rest 20 s", "4x10 @ 50 %, rest 3:00"
    # 50 kg are 15 a side, 100 kg 15 and 25: the 25 goes on and comes off, 10 s in a round of two.
    # Four turns of 30 s and 15 s each without it, and no turn after the last.
    assert at_one_bar(tmp_path / "1", short, 100, 100) == pytest.approx(3 * 90 + 75)
    assert at_one_bar(tmp_path / "2", short, 100, 200) == pytest.approx(3 * 100 + 80)
    # A rest of three minutes has room for it: only the last one's turn comes later.
    assert at_one_bar(tmp_path / "3", long, 100, 100) == pytest.approx(3 * 210 + 75)
    assert at_one_bar(tmp_path / "4", long, 100, 200) == pytest.approx(3 * 210 + 80)
    # Nobody waits who lifts alone, and nobody knows who is written nowhere.
    assert at_one_bar(tmp_path / "5", short, 100, 200, sharing=1) == pytest.approx(3 * 50 + 30)
    assert at_one_bar(tmp_path / "6", short, 100) == pytest.approx(3 * 90 + 75)
    # Of three pairs the one in the middle counts: the same, 25 more, 25 more.
    assert at_one_bar(tmp_path / "7", short, 100, 100, 200) == pytest.approx(3 * 100 + 80)


def test_speed_sets_on_a_shared_bar_start_when_it_is_ready(tmp_path: Path) -> None:
    """A minute is too short for two turns of 6 s, two swaps and four plates a side."""
    dose = "8x2 @ 80 %, every 40 s"
    # 80 kg are 30 a side, 160 kg 70: 25 and 5, then 25, 25 and 20. Together they begin with 25.
    alike, apart = (at_one_bar(tmp_path / name, dose, 100, best) for name, best in
                    (("1", 100), ("2", 200)))  # fmt: skip
    assert alike == pytest.approx(7 * 42 + 27)  # 2 × (6 + 15), then 6 + 15 + 6
    assert apart > alike + 7 * 10


def test_unequal_sets_in_a_pair_make_as_many_rounds_as_the_longer(tmp_path: Path) -> None:
    book = build_book(
        tmp_path,
        exercises={"lift": exercise(load=EFFORT)},
        sessions={
            "a": [slot("A1", "lift", "4x10, rest 0 s"), slot("A2", "lift", "2x10, rest 60 s")]
        },
    )
    found = work_out(book).programs[0].week(1).sessions[0].minutes
    # An upper bound: the two rounds without A2 are reckoned with it.
    assert ceil(found.training * 60) == 4 * 60 + 3 * 60


def test_partners_set_up_a_pair_of_stations_together(tmp_path: Path) -> None:
    def training(doses: list[dict[str, Any]], sharing: int) -> float:
        worked = work(
            tmp_path,
            exercises={"lift": exercise(load=EFFORT, setup_seconds=60)},
            sessions={"a": doses},
            rules={"swap-time": "0 s"},
            group={"sharing": sharing},
        )
        return worked.programs[0].week(1).sessions[0].minutes.training

    alone = [slot("A", "lift", "1x10, rest 60 s")]
    pair = [slot("A1", "lift", "1x10, rest 0 s"), slot("A2", "lift", "1x10, rest 60 s")]
    # One station is set up once, whoever does it; of two stations each partner takes one.
    assert [training(alone, people) for people in (1, 2)] == pytest.approx([1.5, 2])
    assert [training(pair, people) for people in (1, 2, 3)] == pytest.approx([3, 2, 2.5])


def test_a_single_step_up_is_a_block_of_its_own(tmp_path: Path) -> None:
    worked = work(
        tmp_path, exercises={"lift": exercise()}, sessions={"a": [slot("A", "lift", "2x3")]}
    )
    one = slots_of(worked)["A"]
    timed = [TimedSlot("A", one.exercise, one.dose, steps=steps) for steps in (0, 1)]
    program = worked.programs[0].program
    kinds = [[block.kind for block in session_blocks(worked.book, program, [t])] for t in timed]
    assert kinds == [["sets"], ["steps", "sets"]]
