"""How a member finds the load of a slot: the sentence, and which table stands under it."""

import re
from pathlib import Path
from typing import Any

import pytest

from books import EFFORT, KG_ROOM, LB_ROOM, base, exercise, slot, slots_of, work
from demo import PROGRAMS
from strength_handbook.pages.lookup import Lookup, example_lines, slot_lookup
from strength_handbook.plan.work_out import work_out
from strength_handbook.reading.book import read_book

ON_BAR = {"kind": "bar", "bar": "bar"}
BELT = {"kind": "body-weight", "carrier": "belt"}
BELLS = {"kind": "hands", "weight": "bell", "hands": 2}
MACHINE = {"kind": "machine", "machine": "press"}
THINGS: dict[str, Any] = {
    "carriers": {"belt": {"name": "belt"}},
    "hand-weights": {
        "bell": {"name": "bell", "masses": [{"from": "4 kg", "to": "36 kg", "by": "2 kg"}]}
    },
    "machines": {"press": {"name": "press", "to": 400, "by": 2}},
}


def find(root: Path, load: Any, dose: str, *, based: bool = False, room: Any = KG_ROOM) -> Lookup:
    kind = "system" if load["kind"] == "body-weight" else "1RM"
    on_base = {"base": "best"} if based else {}
    worked = work(
        root,
        room={**room, **THINGS},
        exercises={"lift": exercise("Neutral-grip chin", load)},
        sessions={"a": [slot("A", "lift", dose, **on_base)]},
        bases={"best": base(kind=kind)},
    )
    return slot_lookup(slots_of(worked)["A"], room["units"])


def caption(html: str) -> str:
    found = re.search(r"<caption>(.*?)</caption>", html)
    assert found
    return found[1].replace("\u00a0", " ")


def test_percent_of_a_base_has_a_strip(tmp_path: Path) -> None:
    found = find(tmp_path, ON_BAR, "4x5 @ 78 %", based=True)
    assert found.sentence == "Find your best in the first column."
    assert 'class="sh-strip"' in found.table
    assert "78 %" in caption(found.table)
    # The exercise names no base of its own, so there is no table by body weight.
    assert found.by_body == ""
    assert not found.by_body_below


def test_a_range_of_percent_is_read_off_at_its_middle(tmp_path: Path) -> None:
    found = find(tmp_path / "base", ON_BAR, "4x5 @ 70-75 %", based=True)
    assert found.sentence.replace("\u00a0", " ") == (
        "Find your best in the first column. The loads are those of 72.5 %, the middle of the "
        "range."
    )
    assert "72.5 %" in caption(found.table)
    one = find(tmp_path / "one", ON_BAR, "4x5 @ 72.5 %", based=True)
    assert found.table == one.table
    ranged = find(tmp_path / "top", ON_BAR, "2x5 @ 85-95 % of top, top 5RM", based=True)
    plain = find(tmp_path / "plain", ON_BAR, "2x5 @ 90 % of top, top 5RM", based=True)
    assert ranged.table == plain.table


@pytest.mark.parametrize(
    ("rounding", "said"),
    [("down", ""), ("nearest", " takes the nearest load"), ("up", " takes the next load up")],
)
def test_how_this_lift_rounds(tmp_path: Path, rounding: str, said: str) -> None:
    found = find(tmp_path, ON_BAR | {"rounding": rounding}, "4x5 @ 78 %", based=True)
    assert bool(said) == ("This lift" in found.sentence)
    assert said in found.sentence


def test_who_has_no_best_reads_by_body_weight(tmp_path: Path) -> None:
    found = find(tmp_path, ON_BAR | {"base": "best"}, "4x5 @ 78 %")
    assert 'class="sh-strip"' in found.table
    assert 'class="sh-grid"' in found.by_body
    assert "multiple of your body weight" in caption(found.by_body)


def test_the_top_of_the_day_comes_before_the_strip(tmp_path: Path) -> None:
    found = find(tmp_path, ON_BAR, "2x5 @ 90 % of top, top 5RM", based=True)
    assert "top" in found.sentence
    # 90 % of the 87 % that five repetitions allow (Sheppard and Triplett 2016): 78.3.
    assert "78 %" in caption(found.table)


def test_system_loads_go_by_body_weight_and_best(tmp_path: Path) -> None:
    found = find(tmp_path, BELT, "4x4 @ 70 % system", based=True)
    assert found.sentence == "Find your body weight, then your best neutral-grip chin."
    assert "70 % of your best total" in caption(found.table)
    assert 'class="sh-grid"' in found.table


def test_carries_go_by_body_weight(tmp_path: Path) -> None:
    found = find(tmp_path, BELLS, "4 -> 40 m @ 25 % BM")
    assert found.sentence == "Find your body weight."
    assert caption(found.table) == "25 % of body weight, each hand, kg"
    rows = re.findall(r'<th scope="row">([\d.]+)</th><td>([^<]*)</td>', found.table)
    assert ("80", "20") in rows
    assert ("95", "22") in rows  # 23.75 kg
    assert [row[0] for row in rows] == [str(kg) for kg in range(45, 131, 5)]


def test_pounds(tmp_path: Path) -> None:
    found = find(tmp_path, ON_BAR, "3x5 @ 60 %", based=True, room=LB_ROOM)
    assert "your best, lb" in found.table
    assert "kg" not in found.table


@pytest.mark.parametrize(
    ("load", "dose", "sentence"),
    [
        (ON_BAR, "3x5 @ 60 kg", "60 kg for everybody."),
        (
            ON_BAR,
            "3x5 @ 60-65 kg",
            "60 kg to 65 kg for everybody; what is worked out here is for 62.5 kg.",
        ),
        (BELT, "3x5 @ BW", "Body weight only; nothing added."),
        (BELT, "3x5 @ BW+10 kg", "Body weight plus 10 kg."),
        (BELT, "3x5 @ BW-10 kg", "Body weight less 10 kg."),
        (MACHINE, "3x10 @ 120 units", "120 units: work up to it by feel."),
        (ON_BAR, "3x8 @ 8RM", "8RM: work up to it by feel."),
        (ON_BAR, "3x5, RIR 2", "Choose a load for 5 good repetitions with 2 left. Write it down."),
        (
            ON_BAR,
            "3x8-12, RIR 2",
            "Choose a load for 8 to 12 good repetitions with 2 left. Write it down.",
        ),
        (
            ON_BAR,
            "strip 3 loads -20 % to 36 reps, RIR 1",
            "Choose a first load for 8 to 12 good repetitions with 1 left. Write it down.",
        ),
        (
            ON_BAR,
            "2x(8+4+3)/20 s, RIR 1",
            "Choose a load for 8 good repetitions with 1 left. Write it down.",
        ),
        (ON_BAR, "test 3RM in 4 attempts", "The steps below lead up to the first attempt."),
        (ON_BAR, "3x5", "Choose a load that lets every repetition look the same."),
        (ON_BAR, "ISO 3x30 s, RPE 7", "Choose a load that feels like 7 out of 10 by the end."),
        (EFFORT, "3x5", "How hard you push."),
    ],
)
def test_sentences(tmp_path: Path, load: Any, dose: str, sentence: str) -> None:
    found = find(tmp_path, load, dose)
    assert found.sentence.replace("\u00a0", " ") == sentence
    assert found.table == found.by_body == ""


def test_where_the_exercises_own_table_helps(tmp_path: Path) -> None:
    shares = {"start": {"at": "75 kg", "shares": {"new": "40 %"}}}
    assert find(tmp_path, ON_BAR | shares, "3x5, RIR 2").by_body_below
    # Nothing is promised that is not there.
    assert not find(tmp_path, ON_BAR, "3x5, RIR 2").by_body_below
    assert not find(tmp_path, MACHINE, "3x10 @ 120 units").by_body_below
    assert not find(tmp_path, EFFORT, "3x5").by_body_below
    assert not find(tmp_path, MACHINE, "3x5, RIR 2").by_body_below
    assert not find(tmp_path, ON_BAR, "3x5 @ 60 kg").by_body_below


def test_every_slot_of_the_demo_says_how_heavy() -> None:
    book = read_book(PROGRAMS).book
    assert book is not None
    slots = [
        one
        for program in work_out(book).programs
        for week in program.weeks
        for session in week.sessions
        for one in session.slots
    ]
    assert slots
    for one in slots:
        found = slot_lookup(one, "kg")
        assert re.fullmatch(r".{3,}[.!]", found.sentence, re.DOTALL)
        assert [name for name, _ in example_lines(one, book)] == list(one.loads)
        # A percentage always has something to read it off from.
        assert one.percent is None or one.base is None or found.table
