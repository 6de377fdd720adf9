"""A bar for two or three, and a bar taken apart: the phone's plans against independent searches."""

import random
from itertools import permutations

import pytest

import demo
from strength_handbook.calc.plates import LoadTable
from strength_handbook.calc.stacks import fewest_moves
from strength_handbook.model.book import Book
from strength_handbook.model.loading import OnBar
from strength_handbook.plan.apart import stacks_to_hold
from strength_handbook.plan.ramps import ramp_to
from strength_handbook.plan.scales import bar_table
from strength_handbook.plan.tipover import fits, unloading
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book
from tools_page import tools_page

pytestmark = pytest.mark.browser

Stack = tuple[int, ...]


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


def handled(lifts: list[Stack]) -> int:
    """Plates handled on one side from the empty bar, plate by plate, as somebody would do it."""
    bar: list[int] = []
    touched = 0
    for wanted in lifts:
        while bar != list(wanted[: len(bar)]):
            bar.pop()
            touched += 1
        for plate in wanted[len(bar) :]:
            bar.append(plate)
            touched += 1
    return touched


def test_the_order_with_the_fewest_plate_moves(worked: Worked) -> None:
    rng = random.Random(7)
    cases: list[tuple[list[Stack], int, LoadTable, list[int]]] = []
    for key, load in on_bars(worked):
        scale = worked.scales[key]
        assert scale is not None
        for _ in range(120):
            steps = rng.choices(scale.steps, k=rng.choice((2, 3)))
            stacks = [step.parts for step in steps]
            table = bar_table(worked.book.room, load)
            cases.append((stacks, rng.randint(1, 6), table, [step.grams for step in steps]))
    assert len(cases) >= 400
    with tools_page("../loads", "../tools/together") as page:
        found = page.evaluate(
            "all => all.map(([stacks, sets]) => strengthHandbook.together.plan(stacks, sets))",
            [[stacks, sets] for stacks, sets, *_ in cases],
        )
    for number, ((stacks, sets, table, grams), plan) in enumerate(zip(cases, found, strict=True)):
        every = {
            order: handled([stacks[place] for place in order] * sets)
            for order in permutations(range(len(stacks)))
        }
        assert plan["moves"] == every[tuple(plan["order"])] == min(every.values())
        assert plan["most"] == max(every.values())
        if number % 40 == 0 and sets <= 3:
            # Other plates for the same loads may need fewer moves; they can't need more.
            free = fewest_moves(table, [grams[place] for place in plan["order"]] * sets)
            assert free is not None
            assert free.moves <= plan["moves"]


def test_what_changes_makes_the_next_load(worked: Worked) -> None:
    rng = random.Random(11)
    pairs: list[tuple[Stack, Stack]] = []
    for key, _ in on_bars(worked):
        scale = worked.scales[key]
        assert scale is not None
        for _ in range(200):
            before, after = rng.choices(scale.steps, k=2)
            pairs.append((before.parts, after.parts))
    with tools_page("../loads", "../tools/together") as page:
        found = page.evaluate(
            "all => all.map(([one, other]) => strengthHandbook.loads.change(one, other))", pairs
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
        table = bar_table(room, load)
        # As the loads are listed, and as the steps on the way up build them.
        ramps = [ramp_to(table, step.grams)[-1:] for step in scale.steps]
        built = {one.parts for ramp in ramps for one in ramp}
        for parts in {step.parts for step in scale.steps} | built:
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
            "all => all.map(([parts, held]) => strengthHandbook.apart(parts, held))", cases
        )
    assert found == expected


def test_only_measured_bars_in_a_rack_have_an_order(worked: Worked) -> None:
    assert stacks_to_hold(worked, "trap-bar-deadlift") is None
    assert stacks_to_hold(worked, "nordic-lower") is None
    # The 20 kg bar tips with the largest plates alone on one side; the heavier one does not.
    assert (25_000,) in (stacks_to_hold(worked, "standing-press") or ())
    assert stacks_to_hold(worked, "yoke-bar-box-squat") == ()
