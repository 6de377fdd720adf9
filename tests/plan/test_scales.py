"""Scales: every load that exists for a loading, against standards and enumeration."""

from itertools import pairwise, product
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter

from books import KG_ROOM, LB_ROOM, plates
from strength_handbook.calc.plates import PlateSize
from strength_handbook.model.loading import Loading, OnMachine
from strength_handbook.model.quantities import GRAMS_PER_POUND
from strength_handbook.model.room import Room
from strength_handbook.plan.scale import POUND_SLACK_G, Scale
from strength_handbook.plan.scales import scale_for, unit_scale

ON_BAR = {"kind": "bar", "bar": "bar"}
# Weightlifting disc set, one pair each, and 2.5 kg collars: IWF Technical and Competition Rules.
IWF = plates("kg", *((kg, 1) for kg in (25, 20, 15, 10, 5, 2.5, 2, 1.5, 1, 0.5)))


def scale(room: Any, loading: Any) -> Scale:
    adapter: TypeAdapter[Loading] = TypeAdapter(Loading)
    found = scale_for(Room.model_validate(room), adapter.validate_python(loading))
    assert found is not None
    return found


def with_plates(bar_kg: str, plate_rows: Any, **bar: Any) -> dict[str, Any]:
    return {
        **KG_ROOM,
        "bars": {"bar": {"name": "bar", "mass": bar_kg} | bar},
        "plates": plate_rows,
    }


def test_competition_bars() -> None:
    # IWF: men's bar 20 kg, women's 15 kg, collars 2.5 kg each; smallest step 1 kg.
    men = scale(with_plates("20 kg", IWF, collar="2.5 kg"), ON_BAR)
    women = scale(with_plates("15 kg", IWF, collar="2.5 kg"), ON_BAR)
    assert men.lightest_g == 25_000
    assert women.lightest_g == 20_000
    totals = [step.grams for step in men.steps]
    assert min(b - a for a, b in pairwise(totals)) == 1000
    assert men.best(101_000) == next(s for s in men.steps if s.grams == 101_000)


def test_101_kg_without_collars() -> None:
    # 40.5 kg a side = 25 + 15 + 0.5: published worked check of the disc set.
    best = scale(with_plates("20 kg", IWF), ON_BAR).best(101_000)
    assert best is not None
    assert (best.grams, best.parts) == (101_000, (25_000, 15_000, 500))


def test_powerlifting_step() -> None:
    # IPF Technical Rules: bar with collars 25 kg, smallest pair 1.25 kg, so steps of 2.5 kg.
    discs = plates("kg", (25, 4), *((kg, 1) for kg in (20, 15, 10, 5, 2.5, 1.25)))
    bar = scale(with_plates("20 kg", discs, collar="2.5 kg"), ON_BAR)
    assert bar.lightest_g == 25_000
    assert {step.grams % 2500 for step in bar.steps} == {0}


def test_two_hands_need_two_of_a_mass() -> None:
    bells = {"name": "bell", "masses": [
        {"mass": "12 kg", "count": 1}, {"mass": "16 kg", "count": 2}, {"mass": "24 kg", "count": 4},
    ]}  # fmt: skip
    room = KG_ROOM | {"hand-weights": {"bell": bells}}
    one, two = (
        scale(room, {"kind": "hands", "weight": "bell", "hands": hands}) for hands in (1, 2)
    )
    assert [step.grams for step in one.steps] == [12_000, 16_000, 24_000]
    assert [step.grams for step in two.steps] == [16_000, 24_000]
    assert (one.per_hand, two.per_hand) == (False, True)


def test_every_pin_with_and_without_the_small_weight() -> None:
    pins = {"from": "5 kg", "to": "20 kg", "by": "5 kg"}
    room = KG_ROOM | {"stacks": {"s": {"name": "stack", "pins": pins, "add-on": "2.5 kg"}}}
    found = scale(room, {"kind": "stack", "stack": "s"})
    assert [step.parts for step in found.steps] == [
        (5000,), (5000, 2500), (10_000,), (10_000, 2500), (15_000,), (15_000, 2500), (20_000,),
        (20_000, 2500),
    ]  # fmt: skip


def test_pins_in_pounds_are_whole() -> None:
    pins = {"from": "10 lb", "to": "200 lb", "by": "10 lb"}
    room = LB_ROOM | {"stacks": {"s": {"name": "stack", "pins": pins}}}
    found = scale(room, {"kind": "stack", "stack": "s"})
    pounds = [step.grams / GRAMS_PER_POUND for step in found.steps]
    assert pounds == pytest.approx(list(range(10, 201, 10)), abs=0.01)
    # Half of 100 lb is the 50 lb pin, whatever the whole grams of either.
    half = found.best(round(100 * GRAMS_PER_POUND) / 2)
    assert half == found.steps[4]


def test_plates_held_one_at_a_time() -> None:
    room = KG_ROOM | {"plates": plates("kg", (20, 1), (10, 1), (5, 0), (2.5, 1))}
    found = scale(room, {"kind": "plate", "limit": "15 kg"})
    assert [step.grams for step in found.steps] == [2500, 10_000]


def test_hung_plates_are_single_plates() -> None:
    room = KG_ROOM | {
        "plates": plates("kg", (10, 1), (5, 1)),
        "carriers": {"belt": {"name": "belt", "limit": "26 kg"}},
    }
    found = scale(room, {"kind": "body-weight", "carrier": "belt"})
    # A pair is two single plates: 5, 10, 15, 20 and 25 of the 30 kg that the belt may not carry.
    assert [step.grams for step in found.steps] == list(range(0, 25_001, 5000))


def test_a_machine_has_its_own_settings() -> None:
    room = KG_ROOM | {"machines": {"press": {"name": "press", "from": 10, "to": 14, "by": 0.5}}}
    machine = OnMachine.model_validate({"kind": "machine", "machine": "press"})
    settings = unit_scale(Room.model_validate(room), machine)
    assert settings == (10, 10.5, 11, 11.5, 12, 12.5, 13, 13.5, 14)
    assert scale_for(Room.model_validate(room), machine) is None


small_rooms = st.lists(
    st.tuples(
        st.sampled_from(("25 kg", "20 kg", "10 kg", "5 kg", "1.25 kg", "45 lb", "35 lb", "2.5 lb")),
        st.integers(0, 2),
    ),
    max_size=4,
    unique_by=lambda row: row[0],
)


@given(
    small_rooms,
    st.sampled_from(("20 kg", "45 lb")),
    st.sampled_from(("down", "nearest", "up")),
    st.integers(0, 200_000),
)
def test_best_step_against_enumeration(
    rows: list[tuple[str, int]], bar: str, rounding: str, target: int
) -> None:
    found = scale(
        with_plates(bar, [{"mass": mass, "pairs": pairs} for mass, pairs in rows]),
        ON_BAR | {"rounding": rounding},
    )
    sizes = [PlateSize(_grams(mass), pairs) for mass, pairs in rows]
    choices = product(*(range(size.pairs + 1) for size in sizes))
    totals = {
        _grams(bar) + 2 * sum(n * size.grams for n, size in zip(each, sizes, strict=True))
        for each in choices
    }
    assert [step.grams for step in found.steps] == sorted(totals)
    assert all(step.grams == _grams(bar) + 2 * sum(step.parts) for step in found.steps)
    pounds = any("lb" in mass for mass in (bar, *(mass for mass, _ in rows)))
    slack = POUND_SLACK_G if pounds else 0
    below = [total for total in totals if total <= target + slack]
    above = [total for total in totals if total >= target - slack]
    best = found.best(target)
    lightest, *others = sorted(totals)
    gap = min(others[0] - lightest if others else lightest, lightest // 10)
    if rounding == "nearest":
        gap = min((others[0] - lightest if others else lightest) // 2, lightest // 10)
    if rounding != "down" and target + slack + gap < lightest:
        # Not what was planned: the page says what the lightest is.
        assert best is None
    elif rounding == "down":
        assert (best.grams if best else None) == max(below, default=None)
        assert best is None or best.grams <= target + slack
    elif rounding == "up":
        assert (best.grams if best else None) == min(above, default=None)
    else:
        assert best is not None
        nearest = min(abs(total - target) for total in totals)
        assert abs(best.grams - target) <= nearest + slack


def _grams(mass: str) -> int:
    amount, unit = mass.split()
    return round(float(amount) * (GRAMS_PER_POUND if unit == "lb" else 1000))


@pytest.mark.parametrize(
    ("rounding", "target", "taken"),
    [
        # Steps of 2.5 kg from 20 on: nearest takes the bar from 18.75, up from 18 (a tenth) on.
        ("nearest", 18_750, 20_000),
        ("nearest", 18_749, None),
        ("nearest", 15_000, None),
        ("up", 18_000, 20_000),
        ("up", 17_999, None),
        ("down", 19_999, None),
        ("up", 20_001, 22_500),
    ],
)
def test_the_lightest_is_none_where_it_is_far_above(
    rounding: str, target: int, taken: int | None
) -> None:
    bar = scale(KG_ROOM, {**ON_BAR, "rounding": rounding})
    assert getattr(bar.best(target), "grams", None) == taken


@pytest.mark.parametrize(
    ("masses", "rounding", "least"),
    [
        # One bag of 30 kg: a tenth of it. Bells of 8 and 12: a tenth, less than the gap.
        (["30 kg"], "nearest", 27_000),
        (["30 kg"], "up", 27_000),
        (["8 kg", "12 kg"], "up", 7_200),
        (["20 kg", "21 kg"], "nearest", 19_500),
        (["20 kg", "21 kg"], "up", 19_000),
    ],
)
def test_how_far_above_follows_from_the_first_two(
    masses: list[str], rounding: str, least: int
) -> None:
    rows = [{"mass": mass, "count": 2} for mass in masses]
    room = {**KG_ROOM, "hand-weights": {"bell": {"name": "bell", "masses": rows}}}
    bells = scale(room, {"kind": "hands", "weight": "bell", "hands": 1, "rounding": rounding})
    assert bells.best(least) == bells.steps[0]
    assert bells.best(least - 1) is None


def test_no_added_weight_is_always_there() -> None:
    room = {**KG_ROOM, "carriers": {"belt": {"name": "belt"}}}
    belt = {"kind": "body-weight", "carrier": "belt", "share": "95 %", "rounding": "nearest"}
    nothing = scale(room, belt).best(0)
    assert nothing is not None
    assert nothing.grams == 0


def test_a_plate_in_the_hands_weighs_nothing_beside_itself() -> None:
    held = scale(KG_ROOM, {"kind": "plate"})
    assert held.empty_g == 0
    assert all(step.parts == (step.grams,) for step in held.steps)
