"""Findings in a room of pounds speak pounds, as its plates and pages do."""

import re
from pathlib import Path

from books import LB_ROOM, base, exercise, slot, write_files
from strength_handbook.checked import check_folder

BELT = {"kind": "body-weight", "carrier": "belt"}


def test_no_finding_of_a_room_in_pounds_says_kilograms(tmp_path: Path) -> None:
    strip = {"from": "90 lb", "to": "400 lb", "by": "10 lb"}
    lines = ("3x5 @ 90 %", "3x3 @ 100 %", "3x5 @ 80 %, RIR 2", "3x5 @ 30 %")
    root = write_files(
        tmp_path,
        room={**LB_ROOM, "carriers": {"belt": {"name": "belt"}}},
        exercises={"lift": exercise(), "chin": exercise(load=BELT, pattern="vertical-pull")},
        sessions={
            "a": [
                slot("ABCD"[place], "lift", line, base="best") for place, line in enumerate(lines)
            ]
            + [slot("E", "chin", "3x5 @ 60 %", base="pull")]
        },
        bases={"best": base() | strip, "pull": base("chin", kind="system") | strip},
        lifters={
            "P1": {"bodyweight": "180 lb", "bases": {"best": "1000 lb", "pull": "190 lb"}},
            "P2": {"bodyweight": "150 lb", "bases": {"best": "90 lb", "pull": "150 lb"}},
        },
    )
    texts = [one.text for one in check_folder(root).problems]
    with_mass = [text for text in texts if re.search(r"\d (?:lb|kg)\b", text)]
    assert len(with_mass) >= 3, texts
    assert [text for text in with_mass if re.search(r"\d kg\b", text)] == []
