"""Session mode's list of steps and its clock, as a browser makes them from plain data."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

import demo
from books import BAR, exercise, part_of, slot
from strength_handbook.model.dose import Clock, Dose, Hold, complete
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.session import Slot
from strength_handbook.model.slot_dose import slot_dose
from strength_handbook.model.span import ends
from strength_handbook.phone.train import dose_guide
from strength_handbook.publish.bundle import linked_script
from strength_handbook.reading.yaml_source import read_source

pytestmark = pytest.mark.browser

SCRIPTS = demo.PACKAGE / "theme" / "assets" / "strength-handbook"
Data = dict[str, Any]
START = 1_800_000_000_000
"""Some moment, in milliseconds."""


def examples() -> list[Data]:
    path = Path(__file__).parent.parent / "methods" / "doses.yml"
    source, problems = read_source(path.read_bytes(), path.name)
    assert source is not None, problems
    assert isinstance(source.data, dict)
    doses: Any = source.data["doses"]
    return list(doses)


EXAMPLES = examples()


def dose_of(one: Data) -> Dose:
    keys = {key: one[key] for key in ("sides", "hazards") if key in one}
    lift = Exercise.model_validate(exercise(load=one.get("load", BAR), **keys))
    if "week-3" not in one:
        return complete(part_of(one["line"]), each_side=lift.sides == "each")
    weeks = {"3": part_of(one["week-3"]), "4": part_of(one["line"])}
    return slot_dose(Slot.model_validate(slot("A", "lift", weeks)), lift, 4)


@pytest.fixture(scope="module")
def page(browser: Browser) -> Iterator[Page]:
    """An empty page with the pure scripts."""
    opened = browser.new_page()
    opened.add_script_tag(
        content=linked_script(SCRIPTS, "train/steps", "train/walk", "train/clock")
    )
    yield opened
    opened.close()


def steps_of(page: Page, *slots: Data) -> list[Data]:
    found: list[Data] = page.evaluate(
        "slots => { const steps = strengthHandbook['train/steps'];"
        " return steps.list(slots, false).map(one => ({ ...one, name: steps.name(one) })); }",
        list(slots),
    )
    return found


def ask(page: Page, call: str, *given: Any) -> Any:
    """What a function of the scripts gives, such as ``walk.undo``."""
    module, name = call.split(".")
    return page.evaluate(
        f"given => strengthHandbook['train/{module}'].{name}(...given) ?? null", list(given)
    )


def walked(page: Page, steps: list[Data], seconds: int = 40) -> list[Data]:
    """Everything done one after the other, a set every so many seconds; the state after each."""
    acts: list[Any] = []
    states = []
    for number in range(len(steps) - 1):
        now = START + 1000 * seconds * (number + 1)
        at = ask(page, "walk.play", steps, acts)["at"]
        acts.append(["done", at, now])
        states.append(ask(page, "walk.play", steps, acts))
    return states


@pytest.mark.parametrize("one", EXAMPLES, ids=[f"{one['v']}: {one['line']}" for one in EXAMPLES])
def test_every_method_gives_steps(page: Page, one: Data) -> None:
    dose, long = dose_of(one), one["long"]
    guide = dose_guide(dose)
    steps = steps_of(page, {"o": "A"} | guide)
    assert steps.pop()["kind"] == "end"
    names = [step["name"] for step in steps]
    assert len(set(names)) == len(names)
    # As somebody would count them on a board.
    tops = 1 if dose.top else 0
    only_top = bool(tops) and "sets" not in long
    sets = 0 if only_top else long.get("test", {}).get("attempts") or dose.sets.high
    sides = 2 if dose.each_side else 1
    parts = len(long.get("cluster", {}).get("parts", "1")) * long.get("strip", {}).get("loads", 1)
    assert len(steps) == tops + sets * sides * parts
    assert sum(bool(step["last"]) for step in steps) == tops + sets
    if "cluster" in long:
        reps = [step["reps"] for step in steps]
        assert reps == long["cluster"]["parts"] * sets * sides
        assert {step["rest"] for step in steps if step["part"] < parts} == {20}
    for step in steps[tops:]:
        if dose.reps is None and "distance" not in long:
            most = ends(dose.work.seconds)[1] if isinstance(dose.work, Hold | Clock) else None
            assert step["work"] == most
        assert (step.get("every") or None) == dose.every
        assert step["strip"] == ("strip" in long)
    assert steps_of(page, {"o": "A"} | guide)[-1]["name"] == "The end"
    assert [state["at"] for state in walked(page, [*steps, {"kind": "end", "o": ""}])] == list(
        range(1, len(steps) + 1)
    )


@pytest.mark.parametrize(
    ("line", "first", "last"),
    [
        ("3x6 @ 60 kg", "Set 1 of 3", "Set 3 of 3"),
        ("3-4x6", "Set 1 of 3 to 4", "Set 4 of 3 to 4"),
        ("3x6 ES", "Set 1 of 3, left", "Set 3 of 3, right"),
        ("ISO 3x30 s ES", "Set 1 of 3, left", "Set 3 of 3, right"),
        ("3x(2+2+2)/20 s", "Set 1 of 3, part 1 of 3", "Set 3 of 3, part 3 of 3"),
        ("2x strip 3 loads -20 %", "Set 1 of 2, load 1 of 3", "Set 2 of 2, load 3 of 3"),
        ("ramp to 5RM, 2x5 @ 90 % of top", "Today’s top set of 5", "Set 2 of 2"),
        ("ramp to 5RM", "Today’s top set of 5", "Today’s top set of 5"),
        ("test 3RM in 4 attempts", "Attempt 1 of 4", "Attempt 4 of 4"),
        ("4 -> 40 m @ 25 % BM", "Set 1 of 4", "Set 4 of 4"),
    ],
)
def test_steps_are_named(page: Page, line: str, first: str, last: str) -> None:
    steps = steps_of(page, {"o": "A"} | dose_guide(complete(part_of(line))))
    assert (steps[0]["name"], steps[-2]["name"]) == (first, last)


def test_the_last_set_left_open_is_the_last_one_only(page: Page) -> None:
    steps = steps_of(
        page, {"o": "A"} | dose_guide(complete(part_of("2x5, last set 5+ cap 12 RIR 1")))
    )
    assert [step.get("open") for step in steps[:2]] == [None, [5, 12]]


def orders(steps: list[Data]) -> str:
    return " ".join(f"{step['o']}{step.get('side') or ''}" for step in steps[:-1])


def test_pairs_go_in_turn_and_uneven_rounds_end_earlier(page: Page) -> None:
    slots = [
        {"o": "A", "s": 1},
        {"o": "B1", "s": 3},
        {"o": "B2", "s": 2, "b": 1},
        {"o": "C", "s": 1},
    ]
    steps = steps_of(page, *slots)
    assert orders(steps) == "A B1 B2left B2right B1 B2left B2right B1 C"


def test_steps_up_come_before_the_first_round(page: Page) -> None:
    steps = steps_of(page, {"o": "A1", "s": 2, "g": 1}, {"o": "A2", "s": 2, "p": 5})
    assert [(step["o"], step["kind"]) for step in steps[:4]] == [
        ("A1", "up"), ("A2", "top"), ("A1", "set"), ("A2", "set"),
    ]  # fmt: skip


def clock(page: Page, steps: list[Data], acts: list[Any], seconds: float) -> Any:
    played = ask(page, "walk.play", steps, acts)
    return ask(page, "walk.clock", steps, played, START + 1000 * seconds)


def test_rest_runs_from_the_tap_whatever_happens_between(page: Page) -> None:
    steps = steps_of(page, {"o": "A", "s": 3, "r": 150})
    acts = [["done", 0, START]]
    assert clock(page, steps, acts, 0) == {"word": "Rest", "left": 150}
    assert clock(page, steps, acts, 149) == {"word": "Rest", "left": 1}
    # Three hours with a dark screen.
    assert clock(page, steps, acts, 10_800) == {"word": "Ready when you are", "left": -10_650}
    assert clock(page, steps, [], 5) is None


def test_without_a_rest_the_clock_counts_up(page: Page) -> None:
    steps = steps_of(page, {"o": "A", "s": 2})
    assert clock(page, steps, [["done", 0, START]], 45) == {
        "word": "Since the last one",
        "since": 45,
    }


def test_pauses_inside_a_set_and_rest_after_it(page: Page) -> None:
    steps = steps_of(page, {"o": "A", "s": 2, "c": [[2, 2], 20], "r": 90})
    assert clock(page, steps, [["done", 0, START]], 0) == {"word": "Pause", "left": 20}
    acts = [["done", 0, START], ["done", 1, START + 30_000]]
    assert clock(page, steps, acts, 30) == {"word": "Rest", "left": 90}


def test_no_rest_between_sides_or_strips(page: Page) -> None:
    steps = steps_of(page, {"o": "A", "s": 1, "b": 1, "r": 60})
    assert clock(page, steps, [["done", 0, START]], 1) is None
    steps = steps_of(page, {"o": "A", "s": 2, "l": 3, "r": 60})
    assert clock(page, steps, [["done", 0, START]], 1) is None
    # A set may end before the last load.
    ended = ask(page, "walk.play", steps, [["done", 0, START], ["set", 1, START]])
    assert (ended["at"], ended["rest"]["until"]) == (3, START + 60_000)


def test_a_hold_gets_ready_runs_and_is_done_by_itself(page: Page) -> None:
    steps = steps_of(page, {"o": "A", "s": 2, "w": 30, "h": 1, "r": 45})
    assert ask(page, "walk.waits", steps, ask(page, "walk.play", steps, [])) is True
    acts = [["start", 0, START]]
    assert clock(page, steps, acts, 1) == {"word": "Get ready", "left": 4}
    assert clock(page, steps, acts, 6) == {"word": "Hold", "left": 29}
    played = ask(page, "walk.play", steps, acts)
    assert ask(page, "walk.due", steps, played, START + 34_999) is None
    # Seen late, it still ended when it ended.
    done = ask(page, "walk.due", steps, played, START + 60_000)
    assert done == ["done", 0, START + 35_000]
    assert clock(page, steps, [*acts, done], 60) == {"word": "Rest", "left": 20}
    assert ask(page, "walk.undo", [*acts, done]) == []


def test_a_hold_of_a_range_runs_to_its_most_and_says_when_it_is_enough(page: Page) -> None:
    steps = steps_of(page, {"o": "A", "s": 2, "w": 30, "W": 20, "h": 1, "r": 45})
    acts = [["start", 0, START]]
    assert clock(page, steps, acts, 5 + 19) == {"word": "Hold", "left": 11}
    assert clock(page, steps, acts, 5 + 20) == {"word": "Enough: end it or go on", "left": 10}
    played = ask(page, "walk.play", steps, acts)
    assert ask(page, "walk.due", steps, played, START + 34_999) is None
    assert ask(page, "walk.due", steps, played, START + 35_000) == ["done", 0, START + 35_000]


def test_a_clock_that_is_ended_early_counts_to_the_tap(page: Page) -> None:
    """Tapped at 12 s of 30; the next one runs to its end; one that never began counts nothing."""
    steps = steps_of(page, {"o": "A", "s": 3, "w": 30, "h": 1, "r": 45})
    acts = [
        ["start", 0, START],
        ["done", 0, START + 5_000 + 12_700],
        ["start", 1, START + 60_000],
        ["done", 1, START + 95_000],
        ["start", 2, START + 150_000],
        ["done", 2, START + 153_000],
    ]
    assert ask(page, "walk.play", steps, acts)["held"] == {"0": 12, "2": 0}
    # Taken back and done again: the later one counts.
    again = [*acts[:1], ["start", 0, START], ["done", 0, START + 35_000]]
    assert ask(page, "walk.play", steps, again)["held"] == {}


def test_sets_that_start_by_the_clock(page: Page) -> None:
    steps = steps_of(page, {"o": "A", "s": 3, "e": 60})
    assert ask(page, "walk.waits", steps, ask(page, "walk.play", steps, [])) is True
    acts = [["start", 0, START], ["done", 0, START + 12_000]]
    assert clock(page, steps, acts, 12) == {"word": "Next start", "left": 48}
    assert ask(page, "walk.waits", steps, ask(page, "walk.play", steps, acts)) is False
    # The second set began at 60 s, however late its end is tapped.
    acts.append(["done", 1, START + 80_000])
    assert clock(page, steps, acts, 80) == {"word": "Next start", "left": 40}
    # Later than the next start: it is now.
    acts[-1] = ["done", 1, START + 130_000]
    assert clock(page, steps, acts, 130) == {"word": "Start now", "left": 0}


def test_both_sides_belong_to_one_interval(page: Page) -> None:
    steps = steps_of(page, {"o": "A", "s": 2, "e": 90, "b": 1})
    acts = [["start", 0, START], ["done", 0, START + 20_000], ["done", 1, START + 40_000]]
    assert clock(page, steps, acts, 40) == {"word": "Next start", "left": 50}


def test_work_by_the_clock_starts_by_itself_only_where_somebody_sees_it(page: Page) -> None:
    steps = steps_of(page, {"o": "A", "s": 3, "w": 40, "e": 60})
    acts: list[Any] = [["start", 0, START]]
    acts.append(ask(page, "walk.due", steps, ask(page, "walk.play", steps, acts), START + 46_000))
    played = ask(page, "walk.play", steps, acts)
    # Work from 5 s to 45 s, the next from 65 s.
    assert clock(page, steps, acts, 46) == {"word": "Next start", "left": 19}
    assert ask(page, "walk.due", steps, played, START + 65_100) == ["start", 1, START + 60_000]
    assert ask(page, "walk.due", steps, played, START + 300_000) is None


def marks(page: Page, steps: list[Data], acts: list[Any]) -> tuple[int, list[str | None]]:
    played = ask(page, "walk.play", steps, acts)
    found = played["marks"]
    return played["at"], [
        found[place] if place < len(found) else None for place in range(len(steps) - 1)
    ]


def test_leaving_out_one_set_less_and_another_order(page: Page) -> None:
    steps = steps_of(page, {"o": "A", "s": 2}, {"o": "B1", "s": 2}, {"o": "B2", "s": 2})
    done, out = "done", "out"
    assert marks(page, steps, [["less", "A", 0]]) == (0, [None, out, None, None, None, None])
    assert marks(page, steps, [["out", "A", 0]]) == (2, [out, out, None, None, None, None])
    acts: list[Any] = [["out", "A", 0], ["done", 2, START], ["in", "A", 0]]
    assert marks(page, steps, acts) == (3, [None, None, done, None, None, None])
    # Another one first; what was passed over comes after it.
    acts = [["go", 2, 0]]
    acts += [["done", place, START] for place in (2, 3, 4, 5)]
    assert marks(page, steps, acts)[0] == 0
    everything = [*acts, ["done", 0, START], ["done", 1, START]]
    assert marks(page, steps, everything)[0] == 6
    assert marks(page, steps, [["out", order, 0] for order in ("A", "B1", "B2")])[0] == 6


def test_a_variant_leaves_out_what_is_beyond_it(page: Page) -> None:
    steps = steps_of(
        page,
        {"o": "A", "s": 3, "g": 1, "v": [{"of": 2}, {"of": 0}]},
        {"o": "B", "s": 1, "v": [{"of": 0}, {"of": 1}]},
    )
    done, out = "done", "out"
    assert marks(page, steps, [["vary", 0, 0]]) == (0, [None, None, None, out, out])
    assert marks(page, steps, [["vary", 1, 0]]) == (4, [out, out, out, out, None])
    # What is done stays, and what was left out by hand.
    acts: list[Any] = [["go", 1, 0], *(["done", place, START] for place in (1, 2, 3))]
    assert marks(page, steps, [*acts, ["vary", 0, 0]]) == (0, [None, done, done, done, out])
    acts = [["out", "B", 0], ["vary", 0, 0], ["vary", 1, 0]]
    assert marks(page, steps, acts)[1] == [out, out, out, out, None]
    acts = [["out", "B", 0], ["vary", 1, 0], ["vary", -1, 0]]
    assert marks(page, steps, acts)[1] == [None, None, None, None, out]
    assert marks(page, steps, [["vary", 0, 0], ["in", "B", 0]])[1][-1] is None
    assert ask(page, "walk.play", steps, [["vary", 1, 0]])["vary"] == 1


def test_a_missed_attempt_is_over_too(page: Page) -> None:
    steps = steps_of(page, {"o": "A", "s": 3, "a": "kg", "r": 180})
    acts = [["done", 0, START], ["miss", 1, START]]
    assert marks(page, steps, acts) == (2, ["done", "miss", None])
    assert clock(page, steps, acts, 60) == {"word": "Rest", "left": 120}


DOWN_FIRST = [["down", 5, "Down"], ["still", 1, "Still"], ["fast", 1, "Up, fast"]]
FROM_THE_FLOOR = [["hold", 2, "Hold"], ["fast", 1, "Up, fast"], ["down", 2, "Down"]]
A_ROW = [["up", 1, "Pull"], ["still", 3, "Still"], ["down", 2, "Back"]]


@pytest.mark.parametrize(
    ("parts", "at", "word", "left", "rep"),
    [
        (DOWN_FIRST, 0, "Down", 5, 1),
        (DOWN_FIRST, 4.5, "Down", 1, 1),
        (DOWN_FIRST, 5, "Still", 1, 1),
        (DOWN_FIRST, 6, "Up, fast", 1, 1),
        (DOWN_FIRST, 7, "Down", 5, 2),
        # 2 + 1 + 2 s, the planned pause among them.
        (FROM_THE_FLOOR, 0, "Hold", 2, 1),
        (FROM_THE_FLOOR, 2, "Up, fast", 1, 1),
        (FROM_THE_FLOOR, 3, "Down", 2, 1),
        (FROM_THE_FLOOR, 14.9, "Down", 1, 3),
        (A_ROW, 1, "Still", 3, 1),
        (A_ROW, 4, "Back", 2, 1),
    ],
)
def test_the_tempo_second_by_second(
    page: Page, parts: list[Any], at: float, word: str, left: int, rep: int
) -> None:
    found = ask(page, "clock.tempo", parts, 3, at)
    assert (found["word"], found["left"], found["rep"]) == (word, left, rep)


def test_the_tempo_ends_with_the_last_repetition(page: Page) -> None:
    assert ask(page, "clock.tempo", FROM_THE_FLOOR, 3, 15) == "over"
    # Where nobody knows how many, it goes on.
    assert ask(page, "clock.tempo", FROM_THE_FLOOR, 0, 15)["rep"] == 4


def test_a_weight_that_is_held_stays_where_it_is(page: Page) -> None:
    top = ask(page, "clock.tempo", A_ROW, 1, 2)
    assert (top["from"], top["to"]) == (1, 1)
    low = ask(page, "clock.tempo", DOWN_FIRST, 1, 5.5)
    assert (low["from"], low["to"]) == (0, 0)


def test_a_tempo_of_nothing_is_none(page: Page) -> None:
    assert ask(page, "clock.tempo", [], 5, 1) is None


def test_what_is_no_step_is_passed_over(page: Page) -> None:
    steps = steps_of(page, {"o": "A", "s": 2})
    acts = [["done", 99, START], ["go", 40, START], ["set", -1, START], ["done", 0, START]]
    assert ask(page, "walk.play", steps, acts)["at"] == 1


def test_the_shape_of_a_session_is_its_steps(page: Page) -> None:
    def shape(slot: Data) -> Any:
        return ask(page, "steps.shape", steps_of(page, slot))

    plain = {"o": "A", "s": 3, "r": 60, "x": "Stop."}
    assert shape(plain) == shape(plain | {"r": 90, "x": "Stop early."})
    assert shape(plain) != shape(plain | {"s": 4})
    assert shape(plain) != shape(plain | {"b": 1})
    assert shape(plain) != shape(plain | {"o": "B"})


def test_who_cannot_see_the_clock_is_told_three_times(page: Page) -> None:
    called = [ask(page, "clock.passed", left + 1, left) for left in range(40, -3, -1)]
    assert [call for call in called if call is not None] == [30, 10, 0]
    # The page slept over some of it: only the last is news.
    assert [ask(page, "clock.passed", 100, left) for left in (25, 5, -20)] == [30, 10, 0]
