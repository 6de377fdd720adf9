"""The page of a whole program."""

from pathlib import Path

import pytest

from books import exercise, slot, work
from strength_handbook.pages.week_page import overview_page


@pytest.mark.parametrize(
    ("weeks", "length", "wave"), [(1, "one week", "week 1"), (3, "three weeks", "weeks 1 to 3")]
)
def test_how_long_it_is(tmp_path: Path, weeks: int, length: str, wave: str) -> None:
    doses = {f"{number}": "3x5 @ 60 kg" for number in range(1, weeks + 1)}
    found = work(
        tmp_path, exercises={"lift": exercise()}, sessions={"a": [slot("A", "lift", doses)]}
    )
    html = overview_page(found.programs[0]).html
    assert f"<span>{length}</span>" in html
    assert f"<span>{wave}</span>" in html
