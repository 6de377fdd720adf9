"""The page of words speaks in the units of its gym."""

from pathlib import Path

import pytest

import shelf_gym
from strength_handbook.checked import check_folder
from strength_handbook.pages.lists import words_page


@pytest.mark.parametrize(("units", "other"), [("kg", "lb"), ("lb", "kg")])
def test_the_words_are_in_the_units_of_the_gym(units: str, other: str, tmp_path: Path) -> None:
    worked = check_folder(shelf_gym.begun(tmp_path / "gym", units)).worked
    assert worked is not None
    html = words_page(worked).html
    assert f"10 {units} more" in html
    assert f" {other}" not in html
