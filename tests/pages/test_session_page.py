"""The page of one session: in the order in which it is done, and true about training alone."""

import re
from pathlib import Path
from typing import Any

import pytest

from books import EFFORT, exercise, slot, work
from strength_handbook.pages.site import write_pages


def session(root: Path, *doses: str, **more: Any) -> str:
    """HTML of the only session; the exercises are named one, two and so on."""
    names = ("one", "two", "three")[: len(doses)]
    worked = work(
        root,
        exercises={
            name: exercise(name.title(), EFFORT, spotting=alone(more.get(name, "fine")))
            for name in names
        },
        sessions={
            "a": {
                "warm-up": ["Walk for five minutes."],
                "slots": [
                    slot("ABC"[place], name, dose)
                    for place, (name, dose) in enumerate(zip(names, doses, strict=True))
                ],
            }
        },
    )
    return next(page.html for page in write_pages(worked).pages if page.url.endswith("/a/"))


def alone(how: str) -> dict[str, Any]:
    return {"spotters": 0, "where": "None.", "alone": how, "alone-how": "With a strap only."}


def test_it_stands_in_the_order_in_which_it_is_done(tmp_path: Path) -> None:
    html = session(tmp_path, "3x8, RIR 3", "3x8, RIR 3")
    marks = ('id="warm-up"', "Walk for five minutes.", 'data-order="A"', 'data-order="B"',
             'id="alone"', 'class="sh-foot"')  # fmt: skip
    places = [html.index(mark) for mark in marks]
    assert places == sorted(places)


@pytest.mark.parametrize(
    ("doses", "how", "rest"),
    [
        # A test is never done alone: where all are tests there is no rest of it.
        (["test 3RM in 3 attempts", "test 5RM in 3 attempts"], {}, False),
        (["test 3RM in 3 attempts", "3x8, RIR 3"], {}, True),
        (["3x8, RIR 3", "3x8, RIR 3"], {"one": "no", "two": "changed"}, False),
        (["3x8, RIR 3", "3x8, RIR 3"], {"two": "changed"}, True),
    ],
)
def test_what_is_fine_alone(
    tmp_path: Path, doses: list[str], how: dict[str, str], *, rest: bool
) -> None:
    text = re.sub(r"<[^>]+>", " ", session(tmp_path, *doses, **how))
    assert ("The rest is fine alone." in text) is rest
    assert "Everything in this session is fine alone." not in text


def test_everything_is_fine_alone(tmp_path: Path) -> None:
    assert "Everything in this session is fine alone." in session(tmp_path, "3x8, RIR 3")
