"""Which warm-up steps a session's clock counts beside the session's own warm-up."""

from pathlib import Path

import pytest

from books import EFFORT, base, exercise, slot, slots_of, work
from strength_handbook.plan.timed import timed_slots

LIFT, FREE = "3x5 @ 80 %, RIR 1", "3x8, RIR 3"


def steps(folder: Path, *slots: tuple[str, str]) -> list[int]:
    """Steps that are counted, of slots from exercise and dose; a lift's best is 100 kg."""
    worked = work(
        folder,
        exercises={"lift": exercise(), "free": exercise(load=EFFORT, role="assistance")},
        sessions={
            "a": [
                slot(letter, key, dose, **({"base": "best"} if key == "lift" else {}))
                for letter, (key, dose) in zip("ABC", slots, strict=False)
            ]
        },
        bases={"best": base()},
        lifters={"P1": {"bodyweight": "80 kg", "bases": {"best": "100 kg"}}},
    )
    found = timed_slots(worked.book, 1, slots_of(worked).values())
    return [one.steps for one in found]


def test_the_first_lift_with_steps_is_part_of_the_warm_up(tmp_path: Path) -> None:
    """80 kg after 40, 55 and 70: three steps, and the load itself is none."""
    assert steps(tmp_path, ("lift", LIFT), ("lift", LIFT)) == [0, 3]


def test_what_has_no_steps_leaves_the_warm_up_to_the_next(tmp_path: Path) -> None:
    free, first, second = steps(tmp_path, ("free", FREE), ("lift", LIFT), ("lift", LIFT))
    assert (free, first) == (0, 0)
    assert second > 0


def test_nothing_without_a_load_has_steps(tmp_path: Path) -> None:
    assert steps(tmp_path, ("lift", LIFT), ("free", FREE))[1] == 0


@pytest.mark.parametrize("place", [0, 1])
def test_a_test_has_the_textbooks_three(tmp_path: Path, place: int) -> None:
    """Sheppard and Triplett 2016, ch. 17: two or three sets on the way up."""
    order = [("lift", LIFT), ("lift", "test 3RM in 3 attempts")]
    found = steps(tmp_path, *(order if place else order[::-1]))
    assert found[place] == (3 if place else 0)
