"""Where somebody without a tested value starts: the phone against formula and table."""

from typing import Any

import pytest

import demo
from phone_script import ask
from strength_handbook.model.loading import BodyWeightLift
from strength_handbook.phone.lists import PhoneLists, phone_lists
from strength_handbook.phone.recipes import slot_recipe
from strength_handbook.plan.tables import body_masses, start_table
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book

Answer = list[tuple[str, int]]


@pytest.fixture(scope="module")
def made() -> tuple[Worked, PhoneLists]:
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    worked = work_out(book)
    return worked, phone_lists(worked)


def starts(
    made: tuple[Worked, PhoneLists], keys: list[str], bodies: list[int]
) -> dict[Any, Answer]:
    """What the phone answers for each exercise and body mass."""
    worked, lists = made
    cases, recipes = [], []
    for key in keys:
        scale = worked.scales[key]
        recipe: dict[str, Any] = {"y": key}
        if scale is not None:
            recipe["s"] = lists.scale_ids[scale]
        loading = worked.book.exercises[key].load
        if isinstance(loading, BodyWeightLift):
            recipe["w"] = round(loading.share * 1e6)
        for body in bodies:
            recipes.append((key, body))
            cases.append([recipe, {"body": body, "bases": {}}])
    answers = ask({"lists": lists.data, "starts": cases})
    return {
        place: [(label, grams) for label, grams in one]
        for place, one in zip(recipes, answers, strict=True)
    }


def test_every_row_of_every_starting_table(made: tuple[Worked, PhoneLists]) -> None:
    worked, lists = made
    keys = list(lists.data["starts"])
    assert {"trap-bar-deadlift", "yoke-bar-box-squat", "standing-press"} <= set(keys)
    bodies = list(body_masses("kg"))
    found = starts(made, keys, bodies)
    for key in keys:
        table = start_table(worked.book.exercises[key].load, worked.scales[key], "kg")
        assert table is not None
        for body, cells in table.rows:
            pairs = zip(table.columns[:2], cells[:2], strict=True)
            wanted = [(label, cell.grams) for label, cell in pairs if cell.grams is not None]
            assert found[key, body] == wanted, (key, body)


def test_never_more_than_the_formula_and_more_for_a_heavier_body(
    made: tuple[Worked, PhoneLists],
) -> None:
    """Jaric 2002: strength goes with body mass to the power of two thirds."""
    worked, lists = made
    bodies = [*range(45_000, 130_000, 700)]
    for key, data in lists.data["starts"].items():
        start = worked.book.exercises[key].load.start
        scale = worked.scales[key]
        if "r" not in data or start is None or scale is None or scale.rounding != "down":
            continue
        found = starts(made, [key], bodies)
        share = next(iter(start.shares.values())) / 100
        before = 0
        for body in bodies:
            loads = [grams for label, grams in found[key, body] if label == data["n"][0]]
            formula = start.at.kg * share * (body / start.at.grams) ** start.power
            for grams in loads:
                assert before <= grams <= 1000 * formula + 1
                before = grams


def test_nobody_without_a_body_weight_or_below_the_table(made: tuple[Worked, PhoneLists]) -> None:
    _, lists = made
    key = "trap-bar-deadlift"
    people = [{"bases": {}}, {"body": 44_999, "bases": {}}]
    assert ask({"lists": lists.data, "starts": [[{"y": key}, one] for one in people]}) == [[], []]


def test_hard_sets_of_the_program_have_a_start_and_speed_has_none(
    made: tuple[Worked, PhoneLists],
) -> None:
    worked, lists = made
    found: dict[tuple[str, int], bool] = {}
    for program in worked.programs:
        for week in program.weeks:
            for session in week.sessions:
                for slot in session.slots:
                    if slot.exercise_id in lists.data["starts"]:
                        recipe = slot_recipe(worked, lists, slot) or {}
                        found[slot.exercise_id, week.week] = "y" in recipe
    # Three slow ones down, and up fast: hard all the same, at 70 to 77.5 %.
    for number in (1, 2, 3, 4):
        assert found["trap-bar-deadlift", number], number
        assert found["yoke-bar-box-squat", number], number
    assert found["trap-bar-deadlift", 6]
    # Fast sets at about 55 %, and a test.
    assert not found["yoke-bar-box-squat", 11]
    assert not found["trap-bar-deadlift", 12]
