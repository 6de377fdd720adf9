"""A round of all who share a bar, and what the phone is told of that bar."""

from pathlib import Path
from typing import Any

import pytest

from books import BAR, KG_ROOM, base, exercise, slot, slots_of, work
from strength_handbook.phone.scales import scale_data
from strength_handbook.plan.one_bar import Round, can_share, rounds
from strength_handbook.plan.worked import Worked

COLLARS = {"bar": {"name": "bar", "mass": "20 kg", "collar": "2.5 kg"}}
CHAINS = {"chain": {"name": "chain", "pairs": 2, "mass-per-metre": "5 kg", "length": "1.5 m"}}
SQUAT = BAR | {"chains": "chain", "travel": {"bottom": "45 cm", "top": "125 cm"}}


def shared(folder: Path, dose: Any, *bests: str, load: Any = BAR, bars: Any = COLLARS) -> Worked:
    return work(
        folder,
        room={**KG_ROOM, "bars": bars, "chains": CHAINS},
        exercises={"lift": exercise(load=load)},
        sessions={"a": [slot("A", "lift", {"1": dose}, base="best")]},
        bases={"best": base()},
        lifters={
            f"P{number}": {"bodyweight": "80 kg", "bases": {"best": best}}
            for number, best in enumerate(bests, 1)
        },
        rules={"swap-time": "15 s", "plate-time": "5 s", "band-time": "10 s"},
    )


def round_of(worked: Worked) -> Round:
    (found,) = rounds(worked.book, slots_of(worked)["A"], 2)
    return found


def test_two_with_one_load_only_change_places(tmp_path: Path) -> None:
    """Two sets of 2 × 2 s, and twice 15 s from one to the other: nothing else is touched."""
    worked = shared(tmp_path, "3x2 @ 70 %, tempo 1-0-X-0, RIR 3", "100 kg", "100 kg")
    assert round_of(worked) == Round(("P1", "P2"), 2 * (4 + 15), 0, 0)


def test_the_same_chains_stay_where_no_plate_moves(tmp_path: Path) -> None:
    dose = "3x2 @ 70 %, tempo 1-0-X-0, RIR 3, chains 1 pair"
    alike = round_of(shared(tmp_path / "a", dose, "100 kg", "100 kg", load=SQUAT))
    assert (alike.plates, alike.hung) == (0, 0)
    # With other plates they come off before and go on after, at each of the two changes.
    apart = round_of(shared(tmp_path / "b", dose, "100 kg", "120 kg", load=SQUAT))
    assert apart.plates > 0
    assert apart.hung == 4
    assert apart.seconds == alike.seconds + 5 * apart.plates + 10 * apart.hung


def test_one_plate_that_moves_takes_chains_off_and_on_again(tmp_path: Path) -> None:
    """60 and 62.5 kg: 20 a side, and 20 and 1.25. One plate goes on, and then off again."""
    dose = "3x2 @ 100 %, tempo 1-0-X-0, RIR 3, chains 1 pair"
    bare = {"bar": {"name": "bar", "mass": "20 kg"}}
    found = round_of(shared(tmp_path, dose, "60 kg", "62.5 kg", load=SQUAT, bars=bare))
    assert (found.plates, found.hung) == (2, 4)


def test_who_cannot_lift_the_bar_is_in_no_round(tmp_path: Path) -> None:
    """70 % of 20 kg are less than the bar."""
    worked = shared(tmp_path, "3x2 @ 70 %, RIR 3", "100 kg", "20 kg")
    assert slots_of(worked)["A"].loads["P2"].actual_g is None
    assert rounds(worked.book, slots_of(worked)["A"], 2) == ()


def test_of_many_who_may_meet_evenly_spaced_rounds_are_enough(tmp_path: Path) -> None:
    """Ten lifters make 45 pairs; the middle of 23 of them is near that of all."""
    bests = [f"{kg} kg" for kg in range(60, 160, 10)]
    worked = shared(tmp_path, "3x2 @ 70 %, tempo 1-0-X-0, RIR 3", *bests)
    lift = slots_of(worked)["A"]
    every, some = rounds(worked.book, lift, 2), rounds(worked.book, lift, 2, 24)
    assert (len(every), some) == (45, every[::2])
    assert rounds(worked.book, lift, 2, 45) == every
    middles = [sorted(one.seconds for one in found)[len(found) // 2] for found in (every, some)]
    assert abs(middles[0] - middles[1]) <= 10  # one plate more or less, on and off again


@pytest.mark.parametrize(
    ("load", "dose", "expected"),
    [
        (BAR, "3x5 @ 60 %, RIR 3", True),
        (BAR, "1x strip 3 loads -20 % to 36 reps within 3 min @ 70 %", False),
        (BAR | {"hands": 2}, "3x5 @ 20 %, RIR 3", False),
    ],
)
def test_handles_and_strips_are_not_shared(
    tmp_path: Path, load: dict[str, Any], dose: str, *, expected: bool
) -> None:
    worked = shared(tmp_path, dose, "100 kg", "100 kg", load=load)
    one = slots_of(worked)["A"]
    assert can_share(one) is expected
    assert bool(rounds(worked.book, one, 2)) is expected
    assert rounds(worked.book, one, 1) == ()


def test_the_phone_is_told_of_both_collars_and_of_the_plates_of_one_side(tmp_path: Path) -> None:
    worked = shared(tmp_path, "3x5 @ 60 %, RIR 3", "100 kg")
    scale = worked.scales["lift"]
    assert scale is not None
    data = scale_data(worked.book, worked.book.exercises["lift"], scale)
    assert data["collars"] == 5_000
    # The room's plates, of which one of a pair goes on each side: no widths are written.
    assert [(grams, len(each)) for grams, *each in data["plates"]] == [
        (1_250, 2), (2_500, 2), (5_000, 2), (10_000, 2), (15_000, 1), (20_000, 2), (25_000, 2)
    ]  # fmt: skip


def test_the_phone_is_told_nothing_of_plates_that_nobody_shares(tmp_path: Path) -> None:
    worked = shared(tmp_path, "3x5 @ 20 %, RIR 3", "100 kg", load=BAR | {"hands": 2})
    scale = worked.scales["lift"]
    assert scale is not None
    assert "plates" not in scale_data(worked.book, worked.book.exercises["lift"], scale)
