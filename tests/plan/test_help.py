"""Bands that take weight off: which exercises have them, and which is the next easier one."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from books import BAR, KG_ROOM, build_book, exercise, slot, slots_of, work
from strength_handbook.model.resistance import Band
from strength_handbook.plan.help import help_bands, next_easier, takes_bands
from strength_handbook.plan.scale import Scale, Step

CHIN = {"kind": "body-weight", "carrier": "belt"}
BANDS: dict[str, Any] = {
    "green": {"width": "29 mm", "help": "21 kg"},
    "red": {"width": "22 mm", "help": "14 kg"},
    "unread": {"width": "44 mm"},
}
ROOM = {**KG_ROOM, "carriers": {"belt": {"name": "belt"}}, "bands": BANDS}
LIFTERS = {"P1": {"bodyweight": "80 kg"}}


def bands(**of: tuple[str | None, str | None]) -> dict[str, Band]:
    """Bands from width and help."""
    return {
        key: Band.model_validate(
            {name: one for name, one in (("width", width), ("help", helps)) if one is not None}
        )
        for key, (width, helps) in of.items()
    }


@pytest.mark.parametrize(
    ("load", "hazards", "expected"),
    [(CHIN, ["band"], True), (CHIN, [], False), (BAR, ["band"], False)],
)
def test_only_a_lift_of_the_body_with_a_band_is_helped(
    tmp_path: Path, load: dict[str, Any], hazards: list[str], *, expected: bool
) -> None:
    book = build_book(
        tmp_path,
        room=ROOM,
        exercises={"lift": exercise(load=load, hazards=hazards)},
        sessions={"a": [slot("A", "lift", "3x5, RIR 2")]},
    )
    assert takes_bands(book.exercises["lift"]) is expected


def test_bands_whose_help_was_read_from_the_weakest() -> None:
    read = help_bands(bands(b=("22 mm", "14 kg"), none=("44 mm", None), a=("13 mm", "7 kg")))
    assert [(one.number, one.grams) for one in read] == [("a", 7000), ("b", 14_000)]


@pytest.mark.parametrize(
    ("others", "expected"),
    [
        # A second band of the same width is no step, however far it lies above by chance.
        ({"twin": ("22 mm", "18 kg"), "wide": ("29 mm", "21 kg")}, "wide"),
        # 1.15 times 14 kg is 16.1 kg: the first band that helps noticeably more.
        ({"near": ("25 mm", "16 kg"), "wide": ("29 mm", "21 kg")}, "wide"),
        ({"just": ("25 mm", "16.1 kg"), "wide": ("29 mm", "21 kg")}, "just"),
        # Bands of which nobody wrote the width may be of any width.
        ({"bare": (None, "21 kg")}, "bare"),
        ({"weak": ("13 mm", "7 kg"), "unread": ("44 mm", None)}, None),
    ],
)
def test_the_next_easier_band(
    others: dict[str, tuple[str | None, str | None]], expected: str | None
) -> None:
    found = next_easier(bands(own=("22 mm", "14 kg"), **others), "own")
    assert (found.number if found else None) == expected


def test_of_two_bands_without_a_width_one_may_be_the_next() -> None:
    found = next_easier(bands(own=(None, "14 kg"), other=(None, "21 kg")), "own")
    assert found is not None
    assert found.number == "other"


@pytest.mark.parametrize("own", ["unread", "nowhere"])
def test_a_band_whose_help_nobody_read_has_no_next(own: str) -> None:
    assert next_easier(bands(unread=("22 mm", None), wide=("29 mm", "21 kg")), own) is None


def helped(folder: Path, dose: dict[str, Any], hazards: tuple[str, ...] = ("band",)) -> Any:
    worked = work(
        folder,
        room=ROOM,
        lifters=LIFTERS,
        exercises={"lift": exercise(load=CHIN, hazards=list(hazards))},
        sessions={"a": [slot("A", "lift", {"1": {"sets": 3, "reps": 5} | dose})]},
    )
    return slots_of(worked)["A"]


def test_a_band_alone_is_the_load(tmp_path: Path) -> None:
    worked = helped(tmp_path, {"assist": {"band": "red"}})
    assert worked.loads["P1"].actual_g == -14_000
    assert worked.assisted.band.grams == 14_000
    assert worked.assisted.easier.number == "green"


def test_a_band_whose_help_nobody_read_gives_no_load(tmp_path: Path) -> None:
    worked = helped(tmp_path, {"assist": {"band": "unread"}})
    assert worked.loads == {}
    assert worked.assisted is None


def test_a_load_that_is_written_beside_a_band_stays(tmp_path: Path) -> None:
    """Ten kilos less are asked for; the band that is named is the nearest there is."""
    own = helped(tmp_path, {"load": "BW - 10 kg", "assist": {"band": "red"}})
    assert own.loads["P1"].planned_g == pytest.approx(-10_000)
    assert own.loads["P1"].actual_g == -14_000


def test_a_belt_that_weighs_something_is_no_help() -> None:
    """Three kilos are to come off: the band takes 14 off, the belt of 2 kg none."""
    belt = Scale(
        "hung", "belt", 2_000, per_hand=False, rounding="up",
        steps=(Step(2_000), Step(4_500)), helps=(Step(-14_000, (), "red"),),
    )  # fmt: skip
    found = belt.help_for(3_000)
    assert found is not None
    assert found.band == "red"
    bare = replace(belt, empty_g=0, steps=(Step(0), Step(2_500))).help_for(3_000)
    assert bare is not None
    assert bare.grams == 0
