"""What pages carry for the phone: recipes in whole numbers, and lists that fit their page."""

import gzip
import json
import re
from pathlib import Path
from typing import Any

import demo
from books import KG_ROOM, base, exercise, slot, slots_of, work
from strength_handbook.pages.my_numbers_page import my_numbers_page
from strength_handbook.pages.phone_html import dose_data, lists_script
from strength_handbook.pages.session_page import session_page
from strength_handbook.phone.lists import phone_lists
from strength_handbook.phone.recipes import full_recipe, list_recipe
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book

BLOCK = re.compile(r'<script type="application/json" class="sh-dose-data">([^<]*)</script>')


def worked(root: Path, dose: Any, room: Any = KG_ROOM, **more: Any) -> Worked:
    return work(
        root,
        room=room,
        exercises={"lift": exercise()},
        sessions={"a": [slot("A", "lift", dose, base="best", **more)]},
        bases={"best": base()},
    )


def recipe(found: Worked) -> dict[str, Any]:
    program = found.programs[0]
    week = program.weeks[0]
    lists = phone_lists(found)
    made = full_recipe(found, lists, program, week, week.sessions[0], slots_of(found)["A"])
    assert made is not None
    return made


def only_whole(value: Any) -> bool:
    if isinstance(value, dict):
        return all(only_whole(one) for one in value.values())
    if isinstance(value, list):
        return all(only_whole(one) for one in value)
    return not isinstance(value, float)


def test_a_recipe_is_whole_numbers(tmp_path: Path) -> None:
    # 82.5 % of a training max of 92.5 % is 76.3125 % of the best: finer than thousandths.
    made = recipe(worked(tmp_path, "3x5 @ 82.5 % TM, TM 92.5 %"))
    assert (made["b"], made["p"], made["r"]) == ("best", 76_312_500, 76_312_500)
    assert only_whole(made)


def test_effort_alone_is_no_recipe(tmp_path: Path) -> None:
    found = work(
        tmp_path,
        exercises={"lift": exercise()},
        sessions={"a": [slot("A", "lift", "3x5, RIR 3"), slot("B", "lift", "3x5")]},
    )
    program = found.programs[0]
    week = program.weeks[0]
    for one in slots_of(found).values():
        lists = phone_lists(found)
        assert full_recipe(found, lists, program, week, week.sessions[0], one) is None


def test_a_list_of_doses_does_not_ask_for_the_top(tmp_path: Path) -> None:
    found = worked(tmp_path, "ramp to 5RM, 2x5 @ 90 % of top")
    made = list_recipe(found, phone_lists(found), slots_of(found)["A"])
    assert made is not None
    assert {"t", "o"}.isdisjoint(made)
    assert {"t", "o"} <= recipe(found).keys()


def test_other_plates_make_another_name(tmp_path: Path) -> None:
    one = recipe(worked(tmp_path / "a", "3x5 @ 70 %"))
    other_room = {**KG_ROOM, "plates": KG_ROOM["plates"][:-1]}
    other = recipe(worked(tmp_path / "b", "3x5 @ 70 %", other_room))
    assert one["s"] != other["s"]
    assert one["s"] == recipe(worked(tmp_path / "c", "3x5 @ 72 %"))["s"]


def test_no_text_ends_the_block(tmp_path: Path) -> None:
    found = worked(tmp_path, {"1": "3x5 @ 70 %", "2": "3x5 @ 75 %"}, progress="listed")
    program = found.programs[0]
    week = program.weeks[0]
    html = dose_data(found, program, week, week.sessions[0], slots_of(found)["A"])
    inside = BLOCK.fullmatch(str(html))
    assert inside is not None
    assert json.loads(inside[1]) == recipe(found)


def test_the_file_of_lists_is_one_statement(tmp_path: Path) -> None:
    text = lists_script(worked(tmp_path, "3x5 @ 70 %"))
    start = "(globalThis.strengthHandbook=globalThis.strengthHandbook||{}).lists="
    assert text.startswith(start)
    lists = json.loads(text.removeprefix(start).removesuffix(";\n"))
    assert only_whole(lists)
    name, kind, share, scale = lists["bases"]["best"]
    assert (name, kind, share) == ("Best lift", "1RM", 0)
    assert scale in lists["scales"]


def test_a_session_page_carries_less_than_a_kilobyte() -> None:
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    found = work_out(book)
    for week in found.programs[0].weeks:
        for session in week.sessions:
            html = session_page(found, found.programs[0], week, session).html
            with_ = len(gzip.compress(html.encode(), 9, mtime=0))
            without = len(gzip.compress(BLOCK.sub("", html).encode(), 9, mtime=0))
            assert with_ - without < 1000


def test_every_tested_value_has_a_field() -> None:
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    html = my_numbers_page(work_out(book)).html
    names = set(re.findall(r'<input id="sh-([^"]+)" name="\1"', html))
    assert names == {"body"} | {f"base-{key}" for key in book.programs[0].program.bases}
    # Each field is named, explained, and has a place for what is wrong.
    for name in names:
        assert f'<label for="sh-{name}">' in html
        assert f'aria-describedby="sh-{name}-hint sh-{name}-error"' in html
