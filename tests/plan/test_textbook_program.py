"""A textbook's worked programme, written as program files in pounds and worked out whole.

Sheppard and Triplett 2016. Program design for resistance training. In: Essentials of Strength
Training and Conditioning, 4th ed. Human Kinetics, ch. 17: tests, percentages, loads "rounded to the
nearest 5 lb", and the sets and repetitions of a Monday. The totals of that Monday are worked out
from the printed prescription. The chapter does not say whether loads are rounded before or after
the 80 and 90 % of the lighter days; both ways are written here and both give its numbers.
"""

from pathlib import Path

import pytest

from books import EFFORT, LB_ROOM, base, exercise, slot, slots_of, work
from strength_handbook.calc.percent_load import one_rep_max_from_chart
from strength_handbook.model.quantities import GRAMS_PER_POUND
from strength_handbook.pages.load_html import load_line
from strength_handbook.plan.worked import Worked, WorkedSlot

LIFTS = ("hang-clean", "push-jerk", "front-squat", "incline-press")
HEAVY_PERCENT = dict(zip(LIFTS, (75, 75, 85, 85), strict=True))
# 3RM 115 lb and 110 lb, 1RM 185 lb and 100 lb.
TESTED = {
    "hang-clean": one_rep_max_from_chart(115, 3),
    "push-jerk": one_rep_max_from_chart(110, 3),
    "front-squat": 185,
    "incline-press": 100,
}
# Printed loads of the heavy, light (80 %) and medium (90 %) day, in lb.
HEAVY = (95, 90, 155, 85)
LIGHT = (75, 70, 125, 70)
MEDIUM = (85, 80, 140, 75)
# Assistance exercises of Monday: sets × reps @ lb.
ASSISTANCE = {"two-legs": "2x10 @ 90 lb", "two-arms": "2x10 @ 20 lb", "one-arm": "2x10 @ 40 lb"}
ROOM = {
    **LB_ROOM,
    "stacks": {
        "cable": {"name": "cable", "pins": {"from": "10 lb", "to": "200 lb", "by": "10 lb"}}
    },
}


@pytest.fixture(scope="module")
def worked(tmp_path_factory: pytest.TempPathFactory) -> Worked:
    on_bar = {"kind": "bar", "bar": "bar", "rounding": "nearest"}
    on_stack = {"kind": "stack", "stack": "cable", "rounding": "nearest"}
    exercises = {key: exercise(key, on_bar) for key in LIFTS}
    exercises |= {key: exercise(key, on_stack) for key in ASSISTANCE}
    exercises["crunch"] = exercise("Crunch", EFFORT)
    sets = dict(zip(LIFTS, ("4x5", "4x5", "3x6", "3x6"), strict=True))
    letters = "ABCDEFGH"

    def day(percent_of_heavy: int, base_of: str) -> list[dict[str, object]]:
        return [
            slot(
                letter,
                lift,
                f"{sets[lift]} @ {percent_of_heavy * HEAVY_PERCENT[lift] / 100:g} %"
                if base_of == "best"
                else f"{sets[lift]} @ {percent_of_heavy} %",
                base=f"{base_of}-{lift}",
            )
            for letter, lift in zip(letters, LIFTS, strict=False)
        ]

    monday = day(100, "best") + [
        slot(letter, key, dose)
        for letter, (key, dose) in zip(letters[4:], ASSISTANCE.items(), strict=False)
    ]
    bases = {f"best-{lift}": f"{round(TESTED[lift])} lb" for lift in LIFTS}
    bases |= {f"heavy-{lift}": f"{load} lb" for lift, load in zip(LIFTS, HEAVY, strict=True)}
    strip = {"from": "45 lb", "to": "245 lb", "by": "5 lb"}
    return work(
        tmp_path_factory.mktemp("textbook"),
        room=ROOM,
        exercises=exercises,
        sessions={
            "monday": [*monday, slot("H", "crunch", "3x20")],
            "light": day(80, "best"),
            "light-from-rounded": day(80, "heavy"),
            "medium": day(90, "best"),
            "medium-from-rounded": day(90, "heavy"),
        },
        bases={key: base(key.partition("-")[2], **strip) for key in bases},
        lifters={"P1": {"bodyweight": "170 lb", "bases": bases}},
    )


def pounds(slots: dict[str, WorkedSlot]) -> list[float]:
    loads = (slot.loads["P1"].actual_g for slot in slots.values() if slot.loads)
    return [round((grams or 0) / GRAMS_PER_POUND, 1) for grams in loads]


def test_estimated_maxima_as_printed() -> None:
    assert round(TESTED["hang-clean"]) == 124
    assert round(TESTED["push-jerk"]) == 118


def test_heavy_day(worked: Worked) -> None:
    slots = slots_of(worked, "monday")
    assert pounds(slots) == [*HEAVY, 90, 20, 40]
    # Raw values before rounding, worked out from the printed rules.
    planned = [slots[letter].loads["P1"].planned_g / GRAMS_PER_POUND for letter in "ABCD"]
    assert planned == pytest.approx([93, 88.5, 157.25, 85], abs=0.01)


@pytest.mark.parametrize(
    ("day", "printed"),
    [
        ("light", LIGHT),
        ("light-from-rounded", LIGHT),
        ("medium", MEDIUM),
        ("medium-from-rounded", MEDIUM),
    ],
)
def test_light_and_medium_days(worked: Worked, day: str, printed: tuple[int, ...]) -> None:
    assert pounds(slots_of(worked, day)) == list(printed)


def test_plates_make_the_loads(worked: Worked) -> None:
    for slot_ in slots_of(worked, "monday").values():
        step = slot_.loads["P1"].step if slot_.loads else None
        if step is not None and slot_.scale is not None and slot_.scale.kind == "bar":
            assert step.grams == slot_.scale.empty_g + 2 * sum(step.parts)
    squat = slots_of(worked, "monday")["C"]
    assert load_line(squat.loads["P1"], squat.scale, "lb").startswith(
        "<b>155\u00a0lb</b> – 45 · 10"
    )


def test_volume_load_of_monday(worked: Worked) -> None:
    slots = slots_of(worked, "monday")
    loaded = [slot_ for slot_ in slots.values() if slot_.loads]
    assert sum(slot_.volume.reps for slot_ in loaded) == 136
    assert slots["H"].volume.reps == 60
    monday = worked.programs[0].week(1).sessions[0]
    assert monday.volume.reps == 196
    volume_load_lb = monday.volume.tonnage_kg["P1"] * 1000 / GRAMS_PER_POUND
    assert volume_load_lb == pytest.approx(11_020, abs=1)
    # Mean load per repetition.
    assert volume_load_lb / 136 == pytest.approx(81.03, abs=0.01)


def test_volume_load_does_not_depend_on_the_split(tmp_path: Path) -> None:
    # 2 sets × 10 reps × 50 lb = 1000 lb (454 kg), from the same chapter.
    slots = slots_of(
        work(
            tmp_path,
            room=ROOM,
            exercises={"lift": exercise(load={"kind": "stack", "stack": "cable"})},
            sessions={"a": [slot("A", "lift", "2x10 @ 50 lb"), slot("B", "lift", "4x5 @ 50 lb")]},
            lifters={"P1": {"bodyweight": "170 lb"}},
        )
    )
    assert slots["A"].volume.tonnage_kg == slots["B"].volume.tonnage_kg
    assert slots["A"].volume.tonnage_kg["P1"] == pytest.approx(454, abs=0.5)


def test_down_never_goes_above_the_plan_where_nearest_does(tmp_path: Path) -> None:
    slots = slots_of(
        work(
            tmp_path,
            room=ROOM,
            exercises={"lift": exercise(load={"kind": "bar", "bar": "bar"})},
            sessions={"a": [slot("A", "lift", "4x5 @ 75 %", base="best-lift")]},
            bases={"best-lift": base(**{"from": "45 lb", "to": "245 lb", "by": "5 lb"})},
            lifters={"P1": {"bodyweight": "170 lb", "bases": {"best-lift": "124 lb"}}},
        )
    )
    assert pounds(slots) == [90]
