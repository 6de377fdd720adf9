"""Boxes to write in on a printed session: one for every set, counted as somebody would."""

import pytest

from books import part_of
from strength_handbook.model.dose import complete
from strength_handbook.pages.paper_html import box_names


@pytest.mark.parametrize(
    ("line", "boxes"),
    [
        ("3x6 @ 60 kg", "1 2 3"),
        ("3-4x6", "1 2 3 4"),
        # Both sides are one set.
        ("3x6 ES", "1 2 3"),
        ("3x(2+2+2)/20 s", "1 2 3"),
        ("2x strip 3 loads -20 %", "1a 1b 1c 2a 2b 2c"),
        ("ramp to 5RM, 2x5 @ 90 % of top", "top 1 2"),
        ("ramp to 5RM", "top"),
        ("test 3RM in 4 attempts", "1 2 3 4"),
        ("4 -> 40 m @ 25 % BM", "1 2 3 4"),
    ],
)
def test_a_box_for_every_set(line: str, boxes: str) -> None:
    assert " ".join(box_names(complete(part_of(line)))) == boxes
