"""What happens next: every rule with its numbers, and steps that no plate can make."""

import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from books import EFFORT, KG_ROOM, LB_ROOM, base, exercise, slot, slots_of, work
from demo import PROGRAMS
from strength_handbook.model.dose import Hold
from strength_handbook.model.progress import progress_text
from strength_handbook.pages.method_html import method_html
from strength_handbook.plan.next_written import Following, what_follows
from strength_handbook.plan.progress import NextTarget, next_target
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book

BELT = {"kind": "body-weight", "carrier": "belt"}
BELLS = {"kind": "hands", "weight": "bell", "hands": 2}
THINGS: dict[str, Any] = {
    "carriers": {"belt": {"name": "belt"}},
    "hand-weights": {
        "bell": {"name": "bell", "masses": [{"from": "4 kg", "to": "36 kg", "by": "2 kg"}]}
    },
    "machines": {"press": {"name": "press", "to": 400, "by": 2}},
}


def worked(root: Path, rule: str, *doses: str, room: Any = KG_ROOM, **load: Any) -> Worked:
    weeks = {str(number): dose for number, dose in enumerate(doses, start=1)}
    body, best = ("160 lb", "200 lb") if room is LB_ROOM else ("72 kg", "140 kg")
    return work(
        root,
        room={**room, **THINGS},
        exercises={"lift": exercise(**load)},
        sessions={"a": [slot("A", "lift", weeks, progress=rule, base="best")]},
        bases={"best": base(kind="system" if load.get("load") == BELT else "1RM")},
        lifters={"P1": {"bodyweight": body, "bases": {"best": best}}},
    )


def target(root: Path, rule: str, *doses: str, room: Any = KG_ROOM, **load: Any) -> NextTarget:
    found = worked(root, rule, *doses, room=room, **load)
    today = slots_of(found)["A"]
    program = found.programs[0]
    after = what_follows(program, program.weeks[0].sessions[0], today)
    goal = next_target(today, "P1", after=after, units=room["units"])
    assert goal is not None
    return goal


def kilos(goal: NextTarget) -> list[float | None]:
    """The next load after each outcome, in kg."""
    return [
        None if one.load is None or one.load.actual_g is None else one.load.actual_g / 1000
        for one in goal.outcomes
    ]


def says(goal: NextTarget) -> list[tuple[str, str]]:
    return [(one.when, one.then) for one in goal.outcomes]


def test_linear(tmp_path: Path) -> None:
    goal = target(tmp_path, "linear +2.5 kg", "3x5 @ 60 kg, RIR 2")
    # Two misses: a tenth less is 54, and the plates make 52.5.
    assert says(goal) == [
        ("Every set done, at or under the planned effort", "62.5 kg."),
        ("Otherwise", "The same again."),
        ("Missed twice in a row", "Go back by a tenth: 52.5 kg."),
    ]
    assert kilos(goal) == [62.5, 60, 52.5]
    assert goal.warning == ""


def test_two_for_two(tmp_path: Path) -> None:
    # Sheppard and Triplett 2016, ch. 17: two over the goal in the last set of two sessions.
    goal = target(tmp_path, "two-for-two +5 kg", "3x8 @ 60 kg")
    assert says(goal)[0] == ("10 or more in the last set, two sessions in a row", "65 kg.")


def test_double(tmp_path: Path) -> None:
    goal = target(tmp_path, "double +2 kg", "3x8-12 @ 20 kg", load=BELLS)
    assert says(goal)[0] == ("Every set reaches 12", "22 kg in each hand. Begin again at 8.")
    assert kilos(goal) == [22, 20]
    assert goal.warning == ""


PAIRS: dict[str, Any] = {
    "bell": {"name": "bell", "masses": [{"from": "2 kg", "to": "10 kg", "by": "2 kg"}]}
}
ODD: dict[str, Any] = {
    "bell": {"name": "bell", "masses": [{"mass": f"{one} kg"} for one in (4, 8, 12, 20)]}
}


@pytest.mark.parametrize(
    ("rule", "dose", "bells", "then"),
    [
        # The same for everybody: the load itself, one that this room owns.
        ("double +1 kg", "3x8-12 @ 4 kg", PAIRS, "6 kg in each hand. Begin again at 8."),
        ("double next dumbbell", "3x8-12 @ 4 kg", PAIRS, "6 kg in each hand. Begin again at 8."),
        ("linear next", "3x8 @ 12 kg", ODD, "20 kg in each hand."),
        # Chosen by effort: how much more the next one is here.
        ("double +1 kg", "3x8-12, RIR 2", PAIRS,
         "The next heavier one here, 2 kg more in each hand. Begin again at 8."),
        ("double +2 kg", "3x8-12, RIR 2", PAIRS, "2 kg more. Begin again at 8."),
        ("double +4 kg", "3x8-12, RIR 2", PAIRS, "4 kg more. Begin again at 8."),
        ("linear +1 kg", "3x8, RIR 2", ODD,
         "The next heavier one here, 4 kg to 8 kg more in each hand."),
        ("two-for-two next kettlebell", "3x8, RIR 2", ODD,
         "The next heavier one here, 4 kg to 8 kg more in each hand."),
        ("linear next load", "3x8, RIR 2", PAIRS,
         "The next heavier one here, 2 kg more in each hand."),
    ],
)  # fmt: skip
def test_what_comes_next_is_a_load_of_this_room(
    tmp_path: Path, rule: str, dose: str, bells: Any, then: str
) -> None:
    room = {**KG_ROOM, "hand-weights": bells}
    found = work(
        tmp_path,
        room=room,
        exercises={"lift": exercise(load=BELLS)},
        sessions={"a": [slot("A", "lift", {"1": dose}, progress=rule)]},
    )
    goal = next_target(slots_of(found)["A"], units="kg")
    assert goal is not None
    assert goal.outcomes[0].then == then
    written = slots_of(found)["A"].slot.progress
    assert written is not None
    assert rule.startswith(progress_text(written))


def test_in_pounds_equal_steps_are_one_number(tmp_path: Path) -> None:
    """5 lb are 2268 g, and some steps come to a gram less."""
    masses = [{"from": "5 lb", "to": "50 lb", "by": "5 lb"}]
    found = work(
        tmp_path,
        room={**LB_ROOM, "hand-weights": {"bell": {"name": "bell", "masses": masses}}},
        exercises={"lift": exercise(load=BELLS)},
        sessions={
            "a": [
                slot("A", "lift", {"1": "3x8, RIR 2"}, progress="linear +2 lb"),
                slot("B", "lift", {"1": "3x8, RIR 2"}, progress="linear +5 lb"),
            ]
        },
    )
    goals = [next_target(one, units="lb") for one in slots_of(found).values()]
    assert [goal and goal.outcomes[0].then for goal in goals] == [
        "The next heavier one here, 5 lb more in each hand.",
        "5 lb more.",
    ]


def test_the_heaviest_here_says_so_and_a_large_jump_too(tmp_path: Path) -> None:
    goal = target(tmp_path / "1", "linear next", "3x5 @ 36 kg", load=BELLS)
    assert goal.warning == "This is the heaviest load here."
    goal = target(tmp_path / "2", "linear next", "3x5 @ 10 kg", load=BELLS)
    assert goal.outcomes[0].then == "12 kg in each hand."
    assert goal.warning == "The step is 20 % of this load: expect fewer repetitions at first."


def test_open_set(tmp_path: Path) -> None:
    # Over the floor by 0 or 1: the same; by 2 to 4: a step; by 5 and more: two.
    goal = target(tmp_path, "open-set +2.5 kg", "2x5 @ 50 kg, last set 5+ cap 12 RIR 1")
    assert [one.when for one in goal.outcomes] == [
        "10 or more", "7 to 9", "5 or 6", "Under 5, twice in a row"
    ]  # fmt: skip
    assert kilos(goal) == [55, 52.5, 50, 45]


def test_a_low_cap_leaves_no_room_for_two_steps(tmp_path: Path) -> None:
    goal = target(tmp_path, "open-set +2.5 kg", "2x5 @ 50 kg, last set 5+ cap 8 RIR 1")
    assert [one.when for one in goal.outcomes] == ["7 to 8", "5 or 6", "Under 5, twice in a row"]


@pytest.mark.parametrize(
    ("seconds", "then"),
    [
        (30, "35 s."),
        (58, "60 s."),  # never beyond the cap
        (60, "60 s is enough: more load or a longer position, and begin shorter."),
    ],
)
def test_hold(tmp_path: Path, seconds: int, then: str) -> None:
    goal = target(tmp_path, "hold +5 s to 60 s", f"ISO 3x{seconds} s", load=EFFORT)
    assert says(goal)[0] == ("Every hold complete, breathing steadily", then)


def test_distance(tmp_path: Path) -> None:
    goal = target(tmp_path, "distance +10 m", "3 -> 30 m @ 25 % BM", load=BELLS)
    assert says(goal)[0] == ("Every walk without setting down", "40 m.")
    assert kilos(goal) == [18, 18]


def test_speed(tmp_path: Path) -> None:
    # 52 % of 140 kg is 72.8.
    goal = target(tmp_path, "speed +2 %", "8x2 @ 50 %, tempo 1-0-X-0, every 60 s")
    assert goal.outcomes[0].then == "52 %."
    assert kilos(goal) == [72.5, 70]
    assert goal.outcomes[1].then.startswith("Stop these sets for today.")


def test_what_the_next_week_says_counts(tmp_path: Path) -> None:
    """A page never sends anybody to another number than the next week's page shows."""
    speed = "{} @ {} %, tempo 1-0-X-0, every 60 s"
    goal = target(tmp_path / "1", "speed +2 %", speed.format("8x2", 50), speed.format("8x2", 53))
    # 53 % of 140 kg are 74.2.
    assert goal.outcomes[0].then == "53 %, as the next week is written."
    assert kilos(goal) == [72.5, 70]
    goal = target(tmp_path / "2", "speed +2 %", speed.format("8x2", 50), speed.format("8x2", 52))
    assert goal.outcomes[0].then == "52 %."
    goal = target(tmp_path / "3", "hold +5 s", "ISO 3x20 s", "ISO 3x20 s", load=EFFORT)
    assert goal.outcomes[0].then == "20 s, as the next week is written."
    goal = target(tmp_path / "4", "hold +5 s to 60 s", "ISO 3x60 s", "ISO 2x20 s", load=EFFORT)
    assert goal.outcomes[0].then == "20 s, as the next week is written."
    walks = ("3 -> 30 m @ 25 % BM", "3 -> 20 m @ 50 % BM")
    goal = target(tmp_path / "5", "distance +10 m", *walks, load=BELLS)
    assert goal.outcomes[0].then == "20 m, as the next week is written."
    assert kilos(goal) == [36, 18]


def test_a_load_that_is_written_anew_counts(tmp_path: Path) -> None:
    goal = target(tmp_path, "linear +2.5 kg", "3x5 @ 60 kg", "3x5 @ 50 kg")
    says_so = ("Done as planned", "As the next week is written: 3 × 5 with 50 kg.")
    assert says(goal) == [says_so]
    assert kilos(goal) == [50]
    assert goal.warning == ""


def test_the_same_load_leaves_it_to_the_rule(tmp_path: Path) -> None:
    goal = target(tmp_path, "linear +2.5 kg", "3x5 @ 60 kg", "4x5 @ 60 kg")
    assert kilos(goal)[0] == 62.5


def test_no_open_set_no_words_about_one(tmp_path: Path) -> None:
    goal = target(
        tmp_path, "open-set +2.5 kg", "2x5 @ 75 %", "2x5 @ 75 %, last set 5+ cap 10 RIR 1"
    )
    assert says(goal) == [("Done as planned", "As the next week is written: 2 × 5 at 75 %.")]


def test_before_an_easy_week(tmp_path: Path) -> None:
    found = worked(tmp_path, "double +2 kg", "3x8-12, RIR 2", "2x8, RIR 4", load=BELLS)
    today, following = slots_of(found)["A"], replace(slots_of(found, week=2)["A"], easy=True)
    goal = next_target(today, after=Following(following))
    assert goal is not None
    assert says(goal) == [("Done as planned", "An easy week comes next: 2 × 8.")]


def test_the_demo_never_contradicts_its_next_week() -> None:
    book = read_book(PROGRAMS).book
    assert book is not None
    worked_book, seen = work_out(book), 0
    ended = []
    for program in worked_book.programs:
        for week in program.weeks:
            for session in week.sessions:
                for one in session.slots:
                    after = what_follows(program, session, one)
                    later = after.slot
                    goal = next_target(one, after=after)
                    if goal is None:
                        continue
                    if later is None:
                        ended.append((week.week, one.exercise_id, goal.outcomes))
                        continue
                    seen += 1
                    first = goal.outcomes[0].then
                    if goal.rule == "speed":
                        assert f"{later.percent:g} %" in first
                    elif goal.rule == "hold" and isinstance(later.dose.work, Hold):
                        assert first.startswith(f"{later.dose.work.seconds:g} s")
                    elif goal.rule not in ("listed", "effort") and later.easy and not one.easy:
                        assert first.startswith("An easy week comes next")
                    if goal.rule == "open-set" and one.dose.last_set is None:
                        assert len(goal.outcomes) == 1
    assert seen > 20
    # The last time of each: the program does something else with it, or goes on without it.
    assert {place[:2] for place in ended} >= {(4, "standing-press"), (8, "romanian-deadlift")}
    for number, key, outcomes in ended:
        (only,) = outcomes
        assert only.move is None, (number, key)
        assert only.then.startswith(("Week ", "It ends here.")), (number, key)


def test_points_that_no_plate_can_show(tmp_path: Path) -> None:
    """Two points more of 100 kg are two kilograms; the smallest step of these plates is 2.5."""
    rooms = {**KG_ROOM, **THINGS}
    found = work(
        tmp_path,
        room=rooms,
        exercises={"lift": exercise()},
        sessions={
            "a": [slot("A", "lift", {"1": "6x2 @ 60 %", "2": "6x2 @ 62 %"},
                       progress="speed +2 %", base="best")]
        },
        bases={"best": base()},
        lifters={"P1": {"bodyweight": "72 kg", "bases": {"best": "100 kg"}}},
    )  # fmt: skip
    week = found.programs[0].weeks[0]
    html = method_html(found, found.programs[0], week, week.sessions[0], slots_of(found)["A"])
    text = re.sub("<[^>]*>", "", html.parts[-1][1]).replace("\u00a0", " ")
    assert "P1: 60 kg, the same plates as today." in text


def test_effort(tmp_path: Path) -> None:
    # 6 with 3 left is a load for 9, 77 % (107.8 kg); with 2 left one for 8, 80 % (112 kg).
    goal = target(tmp_path, "effort", "3x6, RIR 3", "3x6, RIR 2")
    assert kilos(goal) == [110]
    assert goal.outcomes[0].then == "2 left instead of 3: about 2.5 kg more."


def test_effort_without_a_base(tmp_path: Path) -> None:
    goal = target(tmp_path, "effort", "3x6, RIR 3", load=EFFORT)
    assert goal.outcomes[0].then == "The same load, 2 left instead of 3."


def test_listed(tmp_path: Path) -> None:
    goal = target(tmp_path, "listed", "3x5 @ 70 %", "4x5 @ 74 %")
    assert says(goal) == [("Done as planned", "The next week says 74 %.")]
    assert kilos(goal) == [102.5]  # 103.6


def test_listed_with_a_large_step(tmp_path: Path) -> None:
    # 78 of 65 % is a fifth more; above ten per cent it is said.
    goal = target(tmp_path, "listed", "3x5 @ 65 %", "4x5 @ 78 %")
    assert goal.outcomes[0].then.endswith("That is 20 % more load: a large step.")


def test_listed_at_the_end(tmp_path: Path) -> None:
    assert target(tmp_path, "listed", "3x5 @ 70 %").outcomes[0].then.startswith("It ends here.")


@pytest.mark.parametrize(
    ("rule", "dose", "load", "warning", "next_kg"),
    [
        ("linear +1 kg", "3x5 @ 60 kg", {}, "Plates here go up by 2.5 kg, not by 1 kg.", 62.5),
        (
            "double +1 kg", "3x8-12 @ 20 kg", {"load": BELLS},
            "Weights here go up by 2 kg in each hand, not by 1 kg.", 22,
        ),
        # 2 of 12 kg are 17 %.
        (
            "double +2 kg", "3x8-12 @ 12 kg", {"load": BELLS},
            "The step is 17 % of this load: expect fewer repetitions at first.", 14,
        ),
        (
            "double +2 kg", "3x8-12 @ 36 kg", {"load": BELLS}, "This is the heaviest load here.",
            None,
        ),
        (
            "linear +2.5 kg", "3x5, RIR 2", {"load": EFFORT},
            "Nothing here goes up by 2.5 kg: the coach shows what is harder.", None,
        ),
        (
            "linear +2.5 kg", "3x10 @ 42 units", {"load": {"kind": "machine", "machine": "press"}},
            "This machine has its own units: take its smallest step instead.", None,
        ),
    ],
)  # fmt: skip
def test_steps_that_are_not_there(
    tmp_path: Path, rule: str, dose: str, load: Any, warning: str, next_kg: float | None
) -> None:
    goal = target(tmp_path, rule, dose, **load)
    assert goal.warning == warning
    assert kilos(goal)[0] == next_kg


def test_body_and_belt(tmp_path: Path) -> None:
    goal = target(tmp_path, "linear +2.5 kg", "3x5 @ BW+5 kg", load=BELT)
    # A tenth less of 72 + 5 is 69.3: 2.7 kg of help, rounded up. A tenth less of the belt would be
    # nothing.
    assert kilos(goal) == [7.5, 5, -3]
    assert goal.outcomes[0].then == "Body weight +7.5 kg."
    assert goal.outcomes[2].then == "Go back by a tenth: 3 kg of help."


def test_less_help_is_a_step_up(tmp_path: Path) -> None:
    goal = target(tmp_path, "linear +2.5 kg", "3x5 @ BW-15 kg", load=BELT)
    # 12.5 kg of help, rounded towards more.
    assert goal.outcomes[0].then == "13 kg of help."


def test_pounds(tmp_path: Path) -> None:
    goal = target(tmp_path, "linear +5 lb", "3x5 @ 135 lb", room=LB_ROOM)
    assert goal.outcomes[0].then == "140 lb."
    assert goal.warning == ""


def test_without_a_rule_nothing_is_said(tmp_path: Path) -> None:
    found = work(
        tmp_path, exercises={"lift": exercise()}, sessions={"a": [slot("A", "lift", "3x5")]}
    )
    assert next_target(slots_of(found)["A"]) is None


def test_without_a_lifter_the_rule_alone(tmp_path: Path) -> None:
    today = slots_of(worked(tmp_path, "linear +1 kg", "3x5 @ 70 %"))["A"]
    goal = next_target(today)
    assert goal is not None
    assert goal.outcomes[0].then == "The next heavier one here, 2.5 kg more."
    assert goal.warning == "Plates here go up by 2.5 kg, not by 1 kg."
