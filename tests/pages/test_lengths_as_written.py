"""Feet, inches, yards and miles stand on the pages as they were written.

The foot has 0.3048 m, the yard 0.9144 m, the mile 1,609.344 m by the international yard and pound
agreement of 1959.
"""

import copy
import re
from pathlib import Path

import pytest

import tiny
from strength_handbook.checked import check_folder
from strength_handbook.model.length import Length, length_text
from strength_handbook.model.quantities import read_length
from strength_handbook.pages.page import Site
from strength_handbook.pages.site import write_pages

ROOM = (
    tiny.ROOM
    + """\
units: lb
bars: {bar: {name: bar, mass: 45 lb, between-collars: 51.5 in}}
plates: [{mass: 45 lb, pairs: 2}]
racks: {rack: {name: rack, hook-spacing: 43 in, hole-spacing: 2 in, holes: 20}}
lanes: {bay: {name: boat bay, length: 60 ft}}
bands:
  b: {width: 1.75 in, pulls: {12 in: 7 lb, 24 in: 15 lb, 36 in: 22 lb}}
  c: {width: 41 mm, pulls: {30 cm: 3 kg, 60 cm: 7 kg}}
chains: {chain: {name: chain, pairs: 1, length: 6 ft, mass-per-metre: 3 kg, leader: 8 in}}
"""
)


def site(root: Path, first: str, second: str) -> Site:
    tiny.write_tiny(root)
    programs = root / "programs"
    (programs / "room.yml").write_text(ROOM, encoding="utf-8")
    wave = tiny.WAVE.replace("2x8", f"{first} @ BW").replace("3x8", f"{second} @ BW")
    (programs / "spring/1-start.yml").write_text(wave, encoding="utf-8")
    exercise = next((programs / "exercises").glob("*.yml"))
    text = exercise.read_text(encoding="utf-8")
    exercise.write_text(re.sub(r"stations: .*", "stations: [bay]", text), encoding="utf-8")
    checked = check_folder(programs)
    assert checked.worked is not None, [str(problem) for problem in checked.problems]
    return write_pages(checked.worked)


def html(of: Site, address: str) -> str:
    found = next(page.html for page in of.pages if page.uri.startswith(address))
    found = re.sub(r"<script.*?</script>", "", found, flags=re.DOTALL)  # data, in metres
    return found.replace("\u00a0", " ").replace("&nbsp;", " ")


def test_a_walk_in_feet_and_one_in_yards(tmp_path: Path) -> None:
    made = site(tmp_path, "4x100 ft", "4 -> 50 yd")
    first, second = (html(made, f"spring/week-0{week}/a-squat") for week in (1, 2))
    assert "4 → 100 ft" in first
    assert "walks of 100 feet" in first
    assert "ne length of the boat bay and 40 ft more" in first
    assert "4 → 50 yd" in second
    assert "walks of 50 yards" in second
    assert "wo lengths of the boat bay and 10 yd more" in second
    for text in (first, second):
        assert not re.search(r"30\.48|45\.72|12\.19|9\.14", text)


def test_the_room(tmp_path: Path) -> None:
    room = html(site(tmp_path, "2x8", "3x8"), "room")
    for said in (
        "hooks 43 in apart", "every 2 in", "<td>1.75 in</td>", "<td>41 mm</td>",
        "7 at 12 in, 15 at 24 in, 22 at 36 in", "at 30, ", "6 ft long", "leader 8 in",
    ):  # fmt: skip
        assert said in room
    assert not re.search(r"1\.09|44\.45|1\.83|20\.32|30\.48", room)


@pytest.mark.parametrize(
    ("text", "metres"),
    [("100 ft", 30.48), ("43 in", 1.0922), ("50 yd", 45.72), ("0.5 mi", 804.672), ("30 cm", 0.3)],
)
def test_a_length_is_counted_in_metres_and_said_as_written(text: str, metres: float) -> None:
    length = read_length(text)
    assert length == pytest.approx(metres, abs=1e-9)
    assert length_text(length, "cm") == text
    assert length_text(copy.deepcopy(length), "cm") == text
    assert not isinstance(length + length, Length)
