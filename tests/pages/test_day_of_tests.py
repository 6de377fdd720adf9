"""The page about test day says what belongs to the tests that the program has."""

import json
from pathlib import Path

import pytest

from books import BAR, EFFORT, KG_ROOM, base, exercise, slot, write_files
from strength_handbook.pages.day_of_tests import day_of_tests_page
from strength_handbook.plan.work_out import work_out
from strength_handbook.reading.book import read_book

HEAVY = ("heavy single", "look at the plates", "ground-out", "data-sh-judge", 'id="real"')
COUNTED = "the same chair or box and its height"


@pytest.mark.parametrize(
    ("doses", "heavy", "counted"),
    [
        (["60 s AMRAP"], False, True),
        (["ISO 1x30 s"], False, True),
        (["test 1RM in 3 attempts"], True, False),
        (["test 1RM in 3 attempts", "2 min AMRAP"], True, True),
        (["3x5"], True, False),
    ],
)
def test_each_part_stands_where_its_kind_of_test_is(
    tmp_path: Path, doses: list[str], *, heavy: bool, counted: bool
) -> None:
    slots = [
        slot("AB"[number], "lift" if "RM" in dose.replace("AMRAP", "") else "stand", dose)
        for number, dose in enumerate(doses)
    ]
    root = write_files(
        tmp_path,
        room=KG_ROOM,
        exercises={
            "lift": exercise(load=BAR | {"base": "best"}),
            "stand": exercise("Chair stand", load=EFFORT),
        },
        sessions={"a": slots},
        bases={"best": base()},
    )
    wave = root / "plan" / "1-first.yml"
    wave.write_text(json.dumps(json.loads(wave.read_text()) | {"tests": [1]}))
    reading = read_book(root)
    assert reading.book is not None, "\n".join(map(str, reading.problems))
    worked = work_out(reading.book)
    page = day_of_tests_page(worked, worked.programs[0])
    assert [part in page.html for part in HEAVY] == [heavy] * len(HEAVY)
    assert ("Chair stand:" in page.html) is any("AMRAP" in one for one in doses)
    assert (COUNTED in page.html) is counted
    assert ("real" in [heading.id for heading in page.headings]) is heavy
    for heading in page.headings:
        assert f'id="{heading.id}"' in page.html
