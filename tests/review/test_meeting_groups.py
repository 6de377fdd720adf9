"""Start groups that meet at a station: the hint to turn letters is there where that is enough."""

from pathlib import Path
from typing import Any

import desks
from strength_handbook.review.finding import Finding

ROOM = {
    "bars.trap-bar.count": "4", "bars.yoke-bar.count": "4", "racks.rack.count": "4",
    "kit.box-30.count": "4", "kit.box-40.count": "4",
}  # fmt: skip
GROUP = {"group.members": "4", "group.starts": "2", "group.apart": "1 min"}


HINT = "or write 'rotate: [B, C]' in a-lift, so that they begin with other letters"


def found(
    root: Path, *, benches: str = "2", role: str = "assistance", apart: str = "1 min",
    **wave: Any,
) -> list[Finding]:  # fmt: skip
    """What is short on Mondays, with two groups of two pairs a minute apart.

    Args:
        root: an empty folder.
        benches: how many there are; two pairs of either group want one.
        role: of the pull-up, which is done before.
        apart: between the starts.
        wave: what is written into the Monday of the first wave.
    """
    edits: dict[str, dict[str, Any]] = {
        "room.yml": ROOM | {"kit.back-bench.count": benches},
        "brook/program.yml": GROUP | {"group.apart": apart},
        "exercises/neutral-grip-pull-up.yml": {"role": role},
        "brook/1-slow.yml": {f"sessions.a-lift.{key}": value for key, value in wave.items()},
    }
    checked = desks.check(desks.edited(edits, {}), root)
    assert checked.desk is not None, checked.problems
    return [one for one in desks.findings(checked, "floor-short") if "a-lift" in one.at.text]


def words(finding: Finding) -> str:
    assert finding.change is not None
    return finding.change.words


def test_a_rotation_is_named_where_it_is_enough(tmp_path: Path) -> None:
    (short,) = found(tmp_path / "1")
    assert "4 of 'back-extension bench' are needed at once, the room has 2" in short.text
    assert words(short) == f"write 'apart: 10 min', {HINT}"
    # Both of them end it.
    assert found(tmp_path / "2", rotate=["B", "C"]) == []
    assert found(tmp_path / "3", apart="10 min") == []


def test_none_is_named_where_it_is_not(tmp_path: Path) -> None:
    # One bench: in either group two pairs want it within ten minutes, however they turn.
    for one in found(tmp_path / "1", benches="1"):
        assert HINT not in words(one)
    assert found(tmp_path / "2", benches="1", rotate=["B", "C"]) != []
    # A main lift keeps its place.
    (short,) = found(tmp_path / "3", role="main")
    assert words(short) == "write 'apart: 10 min'"
