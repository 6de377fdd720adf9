"""A bar for two or three, and a bar taken apart: the phone's plans against independent searches."""

import random
from collections.abc import Callable
from operator import attrgetter
from typing import Any

import pytest

import demo
from strength_handbook.calc.plates import LoadTable, PlateSize, load_table
from strength_handbook.calc.shared_bar import share_bar
from strength_handbook.model.book import Book
from strength_handbook.model.loading import OnBar
from strength_handbook.phone.scales import scale_data
from strength_handbook.plan.apart import stacks_to_hold
from strength_handbook.plan.scales import bar_table
from strength_handbook.plan.tipover import fits, unloading
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book
from tools_page import tools_page

pytestmark = pytest.mark.browser

Stack = tuple[int, ...]
Data = dict[str, Any]
_grams: Callable[[PlateSize], int] = attrgetter("grams")


@pytest.fixture(scope="module")
def worked() -> Worked:
    result = read_book(demo.PROGRAMS)
    assert isinstance(result.book, Book)
    return work_out(result.book)


def on_bars(worked: Worked) -> list[tuple[str, OnBar]]:
    return [
        (key, exercise.load)
        for key, exercise in worked.book.exercises.items()
        if isinstance(exercise.load, OnBar) and exercise.load.hands is None
    ]


def other_racks() -> list[LoadTable]:
    """A gym in pounds, one with a short sleeve, and one with four pairs of everything."""
    pounds = ((20_412, 3, 45.0), (15_876, 1, 40.0), (11_340, 2, 35.0), (4_536, 2, 25.0),
              (2_268, 2, 18.0), (1_134, 2, 15.0))  # fmt: skip
    kilos = ((25_000, 60.0), (20_000, 54.0), (15_000, 42.0), (10_000, 34.0), (5_000, 26.0),
             (2_500, 19.0), (1_250, 16.0))  # fmt: skip
    return [
        load_table(20_412, tuple(PlateSize(*one) for one in pounds), sleeve_mm=380),
        load_table(15_000, tuple(PlateSize(g, 2, mm) for g, mm in kilos), sleeve_mm=140),
        load_table(20_000, tuple(PlateSize(g, 4, mm) for g, mm in kilos), sleeve_mm=415),
    ]


@pytest.mark.slow
def test_the_phone_plans_as_the_build(worked: Worked) -> None:
    """Same order, same plates, same moves, for two, three and four lifters."""
    rng = random.Random(7)
    cases: list[tuple[Data, LoadTable, tuple[int, ...], int]] = []
    for key, load in on_bars(worked):
        scale = worked.scales[key]
        assert scale is not None
        data = scale_data(worked.book, worked.book.exercises[key], scale)
        table = bar_table(worked.book.room, load)
        for people in (2, 2, 2, 3, 3, 4):
            totals = rng.choices([one.total_g for one in table.loads], k=people)
            cases.append((data, table, tuple(totals), rng.randint(1, 8)))
    for table in other_racks():
        for people in (2, 2, 2, 3):
            totals = rng.choices([one.total_g for one in table.loads], k=people)
            cases.append((rack_data(table), table, tuple(totals), rng.randint(1, 8)))
    expected: list[Data] = []
    asked: list[Any] = []
    for rack, table, grams, sets in cases:
        plan = share_bar(table, grams, sets)
        assert plan is not None
        own = [table.loads[[one.total_g for one in table.loads].index(g)].side_g for g in grams]
        asked.append([rack, own, sets])
        stacks = [list(stack) for stack in plan.stacks]
        expected.append(
            {"order": list(plan.order), "stacks": stacks, "moves": plan.moves, "alone": plan.alone}
        )
    assert sum(one["moves"] < one["alone"] for one in expected) >= len(expected) // 3
    with tools_page("tools/share-bar") as page:
        found = page.evaluate(
            "all => all.map(one => strengthHandbook['tools/share-bar'].plan(...one))", asked
        )
    assert found == expected


def rack_data(table: LoadTable) -> Data:
    """The part of a scale's data that a shared bar needs."""
    plates = [[one.grams, *[one.width_um] * one.pairs] for one in sorted(table.sizes, key=_grams)]
    assert table.sleeve_mm is not None
    return {"plates": plates, "sleeve": round(table.sleeve_mm * 1000)}


def test_no_more_than_four_at_a_bar() -> None:
    with tools_page("tools/share-bar") as page:
        says = page.evaluate(
            """() => { const { plan } = strengthHandbook['tools/share-bar'];
                try { plan({plates: []}, Array(12).fill([]), 3); }
                catch (error) { return error.message; } }"""
        )
    assert says == "too many for one bar: 12"


def test_what_changes_makes_the_next_load(worked: Worked) -> None:
    rng = random.Random(11)
    pairs: list[tuple[Stack, Stack]] = []
    for key, _ in on_bars(worked):
        scale = worked.scales[key]
        assert scale is not None
        for _ in range(200):
            before, after = rng.choices(scale.steps, k=2)
            pairs.append((before.parts, after.parts))
    with tools_page("ramps") as page:
        found = page.evaluate(
            "all => all.map(([one, other]) => strengthHandbook.ramps.plateChange(one, other))",
            pairs,
        )
    for (one, other), change in zip(pairs, found, strict=True):
        off, on = change["off"], change["on"]
        # Outermost first; what is left stays as it was.
        assert list(reversed(one))[: len(off)] == off
        assert [*one[: len(one) - len(off)], *on] == list(other)
        assert not (off and on and off[-1] == on[0])


def test_a_bar_comes_apart_as_the_statics_say(worked: Worked) -> None:
    """Every load of every bar in a rack: the whole way off, worked out at once by the build."""
    room = worked.book.room
    cases, expected = [], []
    for key, load in on_bars(worked):
        stacks = stacks_to_hold(worked, key)
        scale = worked.scales[key]
        if stacks is None or scale is None or load.rack is None:
            continue
        assert fits(room.bars[load.bar], room.racks[load.rack])
        for parts in (step.parts for step in scale.steps):
            order = unloading(room.bars[load.bar], room.racks[load.rack], room.plates, parts)
            assert [one.move.side for one in order.steps] == ["left", "right"] * len(parts)
            cases.append([parts, stacks])
            expected.append(
                [
                    {"plate": round(left.load * 1000), "hold": left.hold or right.hold}
                    for left, right in zip(order.steps[::2], order.steps[1::2], strict=True)
                ]
            )
    assert len(cases) >= 200
    assert any(pair["hold"] for pairs in expected for pair in pairs)
    with tools_page("apart") as page:
        found = page.evaluate(
            "all => all.map(([parts, held]) => strengthHandbook.apart.apart(parts, held))", cases
        )
    assert found == expected


def test_only_measured_bars_in_a_rack_have_an_order(worked: Worked) -> None:
    assert stacks_to_hold(worked, "trap-bar-deadlift") is None
    assert stacks_to_hold(worked, "nordic-lower") is None
    # The 20 kg bar tips with the largest plates alone on one side; the heavier one does not.
    assert (25_000,) in (stacks_to_hold(worked, "standing-press") or ())
    assert stacks_to_hold(worked, "yoke-bar-box-squat") == ()
