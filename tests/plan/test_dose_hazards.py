"""Cautions and set-up follow the week's dose: what it brings comes first, the rest where it is."""

from pathlib import Path
from typing import Any

import pytest

from books import exercise, slot, slots_of, work
from phone_rooms import LOADS, room
from strength_handbook.model.words import CAUTIONS, HAZARD_NAMES, ON_TOP_STEPS, Hazard
from strength_handbook.plan.dose_hazards import cautions_of, hazards_of, set_up_steps

BAR = LOADS["bar"]
OWN = ["heavy-pull", "band", "chain"]


def hazards(root: Path, dose: Any, load: Any = BAR) -> list[str]:
    worked = work(
        root, room=room("kg"), exercises={"lift": exercise(load=load, hazards=OWN)},
        sessions={"a": [slot("A", "lift", dose)]},
    )  # fmt: skip
    found = slots_of(worked)["A"]
    return [one.value for one in hazards_of(found.exercise, found.dose)]


@pytest.mark.parametrize(
    ("dose", "expected"),
    [
        ("3x5 @ 60 kg", ["heavy-pull"]),
        ("8x2 @ 60 kg, bands 22-a 22-c", ["band", "heavy-pull"]),
        ("8x2 @ 60 kg, chains 2 pairs", ["chain", "heavy-pull"]),
        ("ISO 3x6 s, push at pin 9", ["push-on-pins", "heavy-pull"]),
    ],
)
def test_a_week_has_its_own_hazards(tmp_path: Path, dose: str, expected: list[str]) -> None:
    assert hazards(tmp_path, dose) == expected


def test_a_band_that_helps_is_there_every_week(tmp_path: Path) -> None:
    assert hazards(tmp_path, "3x5 @ BW", LOADS["belt"]) == ["heavy-pull", "band", "chain"]


def test_the_first_caution_is_of_what_the_weeks_bring(tmp_path: Path) -> None:
    worked = work(
        tmp_path, room=room("kg"), exercises={"lift": exercise(load=BAR, hazards=OWN)},
        sessions={"a": [slot("A", "lift", "3x5 @ 60 kg"),
                        slot("B", "lift", "8x2 @ 60 kg, bands 22-a 22-c")]},
    )  # fmt: skip
    both = [found.dose for found in slots_of(worked).values()]
    lift = slots_of(worked)["A"].exercise
    assert cautions_of(lift, both)[0] == CAUTIONS[Hazard.BAND]
    assert cautions_of(lift, both[:1])[0] == CAUTIONS[Hazard.HEAVY_PULL]
    assert [set_up_steps(dose) for dose in both] == [(), (ON_TOP_STEPS[Hazard.BAND],)]


def test_every_hazard_has_a_short_name_and_a_caution() -> None:
    assert set(HAZARD_NAMES) == set(CAUTIONS) == set(Hazard)
