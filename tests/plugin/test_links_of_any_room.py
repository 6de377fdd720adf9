"""Links from hand-written pages to generated ones hold in every room, however little is in it."""

import shutil
from pathlib import Path

import pytest

import demo
from tiny import write_tiny

ROOMS = {
    "one floor": "",
    "a bar and a rack, nothing measured": """\
bars: {bar: {name: bar, mass: 45 lb}}
plates: [{mass: 45 lb, pairs: 2}]
racks: {rack: {name: rack, hook-spacing: 43 in}}
units: lb
""",
}


@pytest.mark.parametrize("room", ROOMS)
@pytest.mark.parametrize("safety", [True, False], ids=["own safety page", "generated one"])
def test_a_strict_build_with_all_handwritten_pages_passes(
    tmp_path: Path, room: str, *, safety: bool
) -> None:
    root = write_tiny(tmp_path)
    shutil.rmtree(root / "handbook")
    shutil.copytree(demo.ROOT / "handbook", root / "handbook")
    shutil.copy(demo.ROOT / "mkdocs.yml", root)
    if not safety:
        (root / "handbook/safety.md").unlink()
    file = root / "programs/room.yml"
    file.write_text(file.read_text("utf-8") + ROOMS[room], encoding="utf-8")
    done = demo.mkdocs(root, "build", "--strict")
    assert done.returncode == 0, done.stderr
