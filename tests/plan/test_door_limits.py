"""No door asks for more sets or effort than the work it stands for, in any week.

That an easier way is not more work is what the word says; that several short sets may stand for
one long piece of work is common practice, no source.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path

import pytest

import demo
from books import EFFORT, exercise, slot, slots_of, work
from strength_handbook.dose.printing import notation
from strength_handbook.model.dose import Hold, Reps
from strength_handbook.pages.cards.card import make_card, parts_of
from strength_handbook.pages.exercise_page import exercise_page
from strength_handbook.pages.instead_html import door_rows
from strength_handbook.plan.door_limits import IN_EASY_WEEK
from strength_handbook.plan.doors import DoorPlan, doors_of
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Use, Worked
from strength_handbook.reading.book import read_book

STAY = {"how": "As it is."}


@pytest.fixture(scope="module")
def handbook() -> Worked:
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    return work_out(book)


def doors(
    root: Path, dose: object, taken: Mapping[str, object], *, easy: bool = False
) -> list[str]:
    """The dose, else the words, of the doors 'harder' and 'taken' of one slot."""
    asked: dict[str, Mapping[str, object]] = {
        **dict.fromkeys(("easier", "hurts", "no-partner"), STAY),
        "taken": {"how": "Elsewhere.", "to": "other", **taken},
        "harder": {"how": "More.", "dose": "6x9, RIR 0"},
    }
    worked = work(
        root,
        exercises={
            "lift": exercise(load=EFFORT, doors=asked), "other": exercise("Other", load=EFFORT),
        },
        sessions={"a": [slot("A", "lift", dose)]},
    )  # fmt: skip
    today = replace(slots_of(worked)["A"], easy=easy)
    found = {plan.key: plan for plan in doors_of(worked, worked.programs[0], today)}
    return [_said(found[key]) for key in ("harder", "taken")]


def _said(plan: DoorPlan) -> str:
    return plan.how if plan.dose is None else notation(plan.dose).replace("\N{NO-BREAK SPACE}", " ")


@pytest.mark.parametrize(
    ("today", "asked", "comes_to"),
    [
        ("2x5, RIR 4", "3x8, RIR 4", "2 × 8 · RIR 4"),
        ("4x5, RIR 1", "3x8, RIR 4", "3 × 8 · RIR 4"),
        ("2x5, RIR 4", "2x8, RIR 2", "2 × 8 · RIR 4"),
        # Half a repetition is none: an effort of 6.5 leaves 3.5.
        ("2x5, RPE 6.5", "2x8, RIR 2", "2 × 8 · RIR 4"),
        ("2x5, RIR 4", "ISO 3x20 s, RPE 7", "2 × 20 s hold · effort 6"),
        ("ISO 1x45 s, RPE 9", "ISO 2x15 s, RPE 5", "1 × 15 s hold · effort 5"),
        ("2-3x5, RIR 3", "3-4x8, RIR 4", "3 × 8 · RIR 4"),
        # Today's top is a set as well.
        ("ramp to 5RM, 2x5", "4x8, RIR 4", "3 × 8 · RIR 4"),
        # 200 m at a metre a second are 200 s: ten sets of 20 s, and no eleventh.
        ("1 -> 200 m", "ISO 4x20 s, RPE 4", "4 × 20 s hold · effort 4"),
        ("1 -> 200 m", "ISO 11x20 s, RPE 4", "10 × 20 s hold · effort 4"),
        # Six minutes between two are three for each.
        ("6 min AMRAP, pace 5/min, shared by 2", "4x20 s", "4 × 20 s"),
        ("6 min AMRAP, pace 5/min, shared by 2", "10x20 s", "9 × 20 s"),
        # A leg has its own work only: 40 s a side.
        ("1 -> 40 m ES", "ISO 4x20 s ES, RPE 4", "2 × 20 s hold each side · effort 4"),
    ],
)
def test_a_door_asks_for_no_more_than_its_day(
    tmp_path: Path, today: str, asked: str, comes_to: str
) -> None:
    assert doors(tmp_path, today, {"dose": asked})[1] == comes_to


def test_harder_is_more_on_purpose_but_not_in_an_easy_week(tmp_path: Path) -> None:
    dose, taken = "2x5, RIR 4", {"dose": "3x8, RIR 2"}
    assert doors(tmp_path / "1", dose, taken) == ["6 × 9 · RIR 0", "2 × 8 · RIR 4"]
    assert doors(tmp_path / "2", dose, taken, easy=True) == [IN_EASY_WEEK, "2 × 8 · RIR 4"]


def _uses(worked: Worked) -> Iterator[Use]:
    for uses in worked.uses.values():
        yield from uses


def test_no_door_of_the_demo_asks_for_more_in_any_week(handbook: Worked) -> None:
    looked_at, lowered, over = 0, 0, []
    for use in _uses(handbook):
        today = use.slot.dose
        most = today.sets.high + (1 if today.top is not None else 0)
        by_sets = isinstance(today.work, Reps | Hold) and today.said.density is None
        for plan in doors_of(handbook, use.program, use.slot):
            place = use.slot.exercise_id, plan.key, use.week.week
            if plan.dose is None:
                continue
            if plan.key == "harder":
                over += [place] if use.slot.easy else []
                continue
            looked_at += 1
            lowered += plan.lowered
            if by_sets and plan.dose.sets.high > most:
                over.append(place)
            if (plan.dose.reserve or 9) < (today.reserve or 0):
                over.append(place)
    assert over == []
    assert looked_at > 800
    assert lowered > 30


def test_each_session_s_page_says_what_its_week_asks(handbook: Worked) -> None:
    """Written is 'ISO 3x30 s', for weeks of one, two and three sets of Nordics.

    The exercise's page leaves out what is not the same in all weeks: it stands with the sessions.
    """
    doses = {}
    for use in handbook.uses["nordic-lower"]:
        rows = door_rows(handbook, use.program, use.slot, "winter/")
        (row,) = (one for one in rows if one["name"] == "No partner")
        doses[use.week.week] = row["dose"].replace("\N{NO-BREAK SPACE}", " ")[
            : len("1 × 30 s hold")
        ]
    assert list(doses.values()) == [
        f"{use.slot.dose.sets.high} × 30 s hold" for use in handbook.uses["nordic-lower"]
    ]
    assert set(doses.values()) == {"1 × 30 s hold", "2 × 30 s hold", "3 × 30 s hold"}
    html = exercise_page(handbook, "nordic-lower").html
    (line,) = (one for one in html.split("<dt>") if one.startswith("No partner"))
    assert "30" not in line.split("</dl>")[0]


def test_the_card_says_what_its_weeks_ask(handbook: Worked) -> None:
    """Swings in place of jumps: six sets are written, and the weeks have four."""
    part = next(one for one in parts_of(handbook) if one.wave == "go")
    uses = dict(part.uses(handbook))
    card = make_card(handbook, part, "box-jump", uses["box-jump"])
    assert "4 × 5 @ 20 % BM" in card.taken.replace("\N{NO-BREAK SPACE}", " ")
    # A test is not done on another machine, and the card says in which week.
    lift = make_card(handbook, part, "trap-bar-deadlift", uses["trap-bar-deadlift"])
    assert "Week 12: Wait for it" in lift.taken
