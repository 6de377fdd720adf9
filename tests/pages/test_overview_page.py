"""The page of a whole program."""

from pathlib import Path

import pytest

from books import exercise, slot, work
from strength_handbook.pages.week_page import overview_page, week_page


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


def test_what_opens_in_a_week_looks_like_the_handbook_s(tmp_path: Path) -> None:
    """Without a class of ours the theme gives it its own border and halo."""
    found = work(
        tmp_path, exercises={"lift": exercise()}, sessions={"a": [slot("A", "lift", "3x5, RIR 2")]}
    )
    (program,) = found.programs
    html = week_page(found, program, program.week(1)).html
    assert "<summary>Hard sets per muscle</summary>" in html
    assert "<details>" not in html
