"""Doses as notation and as words."""

from pathlib import Path
from typing import Any

import pytest

from books import EFFORT, KG_ROOM, base, exercise, slot, slots_of, work
from demo import PROGRAMS
from strength_handbook.dose.effort import tempo_in_words
from strength_handbook.dose.printing import in_words, notation, partial_notation
from strength_handbook.dose.texts import clock_words
from strength_handbook.model.dose import DosePart, complete
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.phases import PHASES
from strength_handbook.model.tempo import Tempo
from strength_handbook.phone.train import tempo_parts
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import WorkedSlot
from strength_handbook.reading.book import read_book

ROOM = {
    **KG_ROOM,
    "carriers": {"pack": {"name": "pack"}},
    "hand-weights": {"bell": {"name": "bell", "masses": [{"mass": "20 kg"}]}},
}
PACK = {"kind": "body-weight", "carrier": "pack"}
BELLS = {"kind": "hands", "weight": "bell", "hands": 2}


def plain(text: str) -> str:
    """With ordinary spaces, for reading."""
    return text.replace("\u00a0", " ")


def one(root: Path, dose: str, load: Any = EFFORT) -> WorkedSlot:
    if "system" in dose:
        load = PACK
    kind = "system" if load["kind"] == "body-weight" else "1RM"
    worked = work(
        root,
        room=ROOM,
        exercises={"lift": exercise(load=load)},
        sessions={"a": [slot("A", "lift", dose, base="best")]},
        bases={"best": base(kind=kind)},
    )
    return slots_of(worked)["A"]


@pytest.mark.parametrize(
    ("dose", "board"),
    [
        (
            "4x5 @ 78 %, tempo 5-1-X-0, RIR 1, rest 2:30",
            "4 × 5 @ 78 % · 5-1-X-0 · RIR 1 · rest 2:30",
        ),
        ("3x8-12, RIR 2", "3 × 8–12 · RIR 2"),
        ("3x8, RPE 8.5", "3 × 8 · RIR 1.5"),
        # Five left of a five is no number that anybody counts.
        ("3x5, RPE 6", "3 × 5 · RIR 4"),
        ("3x5, RPE 5", "3 × 5 · effort 5"),
        ("3x6 ES @ 5 % BM", "3 × 6 each side @ 5 % BM"),
        ("ISO 3x30 s, RPE 7", "3 × 30 s hold · effort 7"),
        ("ISO 3x90 s ES", "3 × 1:30 hold each side"),
        ("3x45 s, RPE 8, rest 45 s", "3 × 45 s · effort 8 · rest 45 s"),
        ("4 -> 40 m @ 25 % BM", "4 → 40 m @ 25 % BM"),
        ("8x2, every 60 s", "8 × 2 · every 1:00"),
        ("2x5 @ 90 % of top, top 5RM", "ramp to 5RM · 2 × 5 @ 90 % of top"),
        ("3x5, last set 5+ cap 10 RIR 1", "3 × 5 · last set 5+ (stop with 1 left, at most 10)"),
        ("3x5+, rest 1 min", "3 × 5+ · rest 1:00"),
        ("3x4 @ BW-10 kg", "3 × 4 @ BW−10 kg"),
    ],
)
def test_notation(tmp_path: Path, dose: str, board: str) -> None:
    assert plain(notation(one(tmp_path, dose).dose)) == board


def test_numbers_stay_with_their_units(tmp_path: Path) -> None:
    text = notation(one(tmp_path, "4x5 @ 78 %, RIR 1, rest 2:30").dose)
    assert text == "4\u00a0×\u00a05 @\u00a078\u00a0% · RIR\u00a01 · rest\u00a02:30"


@pytest.mark.parametrize(
    ("dose", "words"),
    [
        (
            "4x5 @ 78 %, tempo 5-1-X-0, RIR 1",
            (
                "Four sets of five at 78 % of your best single. "
                "Five seconds down, one second still, up fast. Stop with one good one left."
            ),
        ),
        ("1x8-12, RIR 2", "One set of eight to twelve. Stop with two good ones left."),
        ("3x5+, RIR 0", "Three sets of at least five. Stop when the next one would not be good."),
        ("3x5, RPE 6", "Three sets of five. Stop with four good ones left."),
        (
            "3x5, RPE 5",
            "Three sets of five. Effort 5 out of 10: light, at least as many again would go.",
        ),
        ("3x6 ES", "Three sets of six on each side."),
        (
            "ISO 1x30 s, RPE 7",
            "One hold of 30 seconds. Effort 7 out of 10, breathing all the time.",
        ),
        ("ISO 3x2:30 ES", "Three holds of 2½ minutes on each side. Talk in short words."),
        ("3x45 s", "Three sets of 45 seconds."),
        ("1 -> 40 m", "One walk of 40 metres."),
        ("4 -> 30 m ES", "Four walks of 30 metres on each side."),
        ("8x2, every 60 s", "Eight sets of two. Start a set every 60 seconds."),
        (
            "2x5 @ 90 % of top, top 5RM",
            "Work up to today's best five first. Then two sets of five at 90 % of it.",
        ),
        (
            "3x5, last set 5+ cap 10 RIR 1",
            (
                "Three sets of five. Last set: at least five, then go on while it stays good; "
                "stop with one left, or at ten."
            ),
        ),
        ("3x8 @ 8RM", "Three sets of eight with a load you could lift eight times."),
        ("3x5 @ BW", "Three sets of five with body weight only."),
        ("3x5 @ BW+10 kg", "Three sets of five with 10 kg added."),
        ("3x5 @ BW-10 kg", "Three sets of five with 10 kg taken off."),
        (
            "3x5 @ 70 % system",
            "Three sets of five at 70 % of your best total, body included.",
        ),
        ("3x10 @ 120 units", "Three sets of ten at 120 on the machine."),
        ("3x5, tempo 0-0-0-0", "Three sets of five."),
    ],
)
def test_words(tmp_path: Path, dose: str, words: str) -> None:
    found = one(tmp_path, dose)
    assert plain(in_words(found.dose, found.exercise)) == words


@pytest.mark.parametrize(
    ("key", "words"),
    [
        ("box-jump", "Leave the floor as fast as you can."),
        ("farmer-carry", "Walk as fast as you can, without running."),
        ("kettlebell-swing", "Lift as fast as you can."),
    ],
)
def test_what_is_fast_where_nothing_is_lifted(key: str, words: str) -> None:
    book = read_book(PROGRAMS).book
    assert book is not None
    fast = [use.slot for use in work_out(book).uses[key] if use.slot.dose.said.intent == "fast"]
    assert fast
    assert all(words in in_words(slot.dose, slot.exercise) for slot in fast)


@pytest.mark.parametrize(
    ("load", "where"),
    [
        (BELLS, " in each hand"),
        (BELLS | {"hands": 1}, " in both hands"),
        (BELLS | {"hands": 1, "held": "one-hand"}, " in one hand"),
        (BELLS | {"hands": 1, "held": "both-arms"}, " in both arms"),
        (PACK, " on your back"),
        ({"kind": "bar", "bar": "bar"}, ""),
    ],
)
def test_where_a_load_is_carried(tmp_path: Path, load: Any, where: str) -> None:
    found = one(tmp_path, "3x5 @ 25 % BM", load)
    assert in_words(found.dose, found.exercise) == (
        f"Three sets of five with 25 % of your body weight{where}."
    )


@pytest.mark.parametrize(
    ("tempo", "words"),
    [
        ("3-1-X-0", "three seconds down, one second still, up fast"),
        ("2-0-1-2", "two seconds down, one second up, two seconds at the top"),
        ("0-0-X-0", "up fast"),
        ("5-0-0-0", "five seconds down"),
        ("15-0-2-0", "15 seconds down, two seconds up"),
    ],
)
def test_tempo_in_words(tempo: str, words: str) -> None:
    assert tempo_in_words(Tempo.parse(tempo), PHASES["up"]) == words


@pytest.mark.parametrize(
    ("pattern", "load", "lifts", "words"),
    [
        ("horizontal-pull", {"kind": "stack", "stack": "cable"}, None,
         "three seconds going back, one second still, pull fast"),
        ("vertical-pull", {"kind": "body-weight"}, None,
         "three seconds down, one second still, up fast"),
        ("horizontal-pull", {"kind": "hands", "weight": "kettle", "hands": 1}, None,
         "three seconds down, one second still, up fast"),
        ("horizontal-push", {"kind": "effort", "by": "Feet further back."}, "push",
         "three seconds bending the arms, one second still, push fast"),
        ("isolated", {"kind": "effort", "by": "A partner resists."}, "bend",
         "three seconds straightening, one second still, bend fast"),
        ("isolated", {"kind": "stack", "stack": "cable"}, None,
         "three seconds lowering the weight, one second still, lift fast"),
        ("squat", {"kind": "stack", "stack": "cable"}, None,
         "three seconds down, one second still, up fast"),
    ],
)  # fmt: skip
def test_the_words_of_a_tempo_follow_the_way_of_the_lift(
    pattern: str, load: dict[str, Any], lifts: str | None, words: str
) -> None:
    """On the page and, part by part, on the phone."""
    done = Exercise.model_validate(exercise(pattern=pattern, load=load, lifts=lifts))
    dose = complete(DosePart.model_validate({"sets": 2, "reps": 5, "tempo": "3-1-X-2"}))
    said = in_words(dose, done)
    assert f"{words}, two seconds {done.phases.top}." in said.lower()
    beats = {kind: word for kind, _, word in tempo_parts(dose, done)}
    told = dict(done.phases.beats)
    assert beats == {"down": told["down"], "still": "Still", "fast": told["fast"]}


@pytest.mark.parametrize(
    ("seconds", "words"),
    [
        (1, "1 second"),
        (30, "30 seconds"),
        (90, "90 seconds"),
        (120, "2 minutes"),
        (150, "2½ minutes"),
        (140, "2:20 minutes"),
    ],
)
def test_times_in_words(seconds: float, words: str) -> None:
    assert clock_words(seconds) == words


@pytest.mark.parametrize(
    ("part", "text"),
    [
        ({}, ""),
        ({"sets": 3, "reps": "8-12"}, "3 × 8–12"),
        ({"reps": 5}, "5"),
        ({"sets": 3, "hold": "30 s", "rpe": 7}, "3 × 30 s hold · effort 7"),
        ({"hold": "10 s", "rpe": 4}, "10 s hold · effort 4"),
        ({"sets": 3, "time": "45 s"}, "3 × 45 s"),
        ({"sets": 3, "distance": "20 m", "each-side": True}, "3 → 20 m · each side"),
        ({"load": "25 % BM", "tempo": "3-0-1-0"}, "@ 25 % BM · 3-0-1-0"),
        ({"rir": 0, "rest": "90 s"}, "RIR 0 · rest 1:30"),
        ({"sets": 6, "reps": 5, "every": "60 s"}, "6 × 5 · every 1:00"),
    ],
)
def test_part_of_a_dose_says_only_what_it_says(part: dict[str, Any], text: str) -> None:
    assert plain(partial_notation(DosePart.model_validate(part))) == text
