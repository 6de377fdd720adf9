"""Order, in any order: what fires depends on what stands before, and on nothing else."""

from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import desks
from strength_handbook.checked import Checked

pytestmark = pytest.mark.slow  # whole programs are read and checked for every example

SLOTS: dict[str, dict[str, Any]] = {
    "tired": {
        "exercise": "trap-bar-deadlift",
        "base": "trap-bar-1rm",
        "weeks": {"5": "3x5 @ 77 %, tempo 2-0-1-0, RIR 1, rest 2:30"},
    },
    "many": {
        "exercise": "split-squat-hold",
        "position": "front knee at 90°",
        "weeks": {"5": "ISO 7x20 s ES, RPE 5, rest 1:00"},
    },
    "other": {
        "exercise": "dumbbell-floor-press",
        "weeks": {"5": "3x8, tempo 2-0-1-0, RIR 1, rest 1:30"},
    },
    "jump": {
        "exercise": "box-jump",
        "height": "45 cm",
        "weeks": {"5": "3x3, rest 1:30"},
    },
    "trunk": {
        "exercise": "back-extension-hold",
        "position": "body in one line",
        "weeks": {"5": "ISO 2x30 s, RPE 9, rest 0:45"},
    },
}
LETTERS = "ABCDE"
orders = st.permutations(list(SLOTS))


def checked(order: list[str]) -> Checked:
    slots = [{"order": letter, **SLOTS[name]} for letter, name in zip(LETTERS, order, strict=False)]
    with TemporaryDirectory() as folder:
        return desks.check(
            desks.edited({"brook/2-quick.yml": {"sessions.a-lift.slots": slots}}), Path(folder)
        )


def before(order: list[str], one: str, other: str) -> bool:
    return order.index(one) < order.index(other)


@settings(max_examples=20, deadline=None)
@given(orders)
def test_only_what_stands_before_tires(order: list[str]) -> None:
    after = checked(order)
    assert bool(desks.findings(after, "speed-tired")) == before(order, "tired", "jump")
    # Seven sets of holds are more than six; three sets of deadlift are not.
    assert bool(desks.findings(after, "jump-late")) == before(order, "many", "jump")
    assert bool(desks.findings(after, "brace-tired")) == before(order, "trunk", "tired")


@settings(max_examples=10, deadline=None)
@given(orders)
def test_the_change_that_is_offered_is_enough(order: list[str]) -> None:
    first = ["jump", *(name for name in order if name not in ("jump", "trunk")), "trunk"]
    after = checked(first)
    for slug in ("speed-tired", "jump-late", "brace-tired"):
        assert desks.findings(after, slug) == []
