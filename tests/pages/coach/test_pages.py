"""The pages for the coach say what the files come to, whatever the program."""

import re
from collections.abc import Callable
from html import unescape
from pathlib import Path
from typing import Any

import pytest
import yaml

import books
import demo
from strength_handbook.checked import Checked, check_folder
from strength_handbook.dose.table import lessons_of
from strength_handbook.model.program import Accepted
from strength_handbook.pages.coach.drafts import coach_pages
from strength_handbook.pages.coach.findings import NO_REASON, entry_text
from strength_handbook.pages.coach.teach_in import sentences
from strength_handbook.pages.page import Page
from strength_handbook.reading.book import read_book
from strength_handbook.reading.yaml_source import read_source
from tiny import write_tiny

NBSP = "\u00a0"
Pages = dict[str, Page]

BAR_SLOT = books.slot(
    "A",
    "lift",
    {
        "1": "3x5 @ 70 %, tempo 3-0-1-0, RIR 3, rest 3:00",
        "2": "4x5 @ 75 %, tempo 4-0-1-0, RIR 2, rest 3:00",
        "3": "4x5 @ 75 %, tempo 4-0-1-0, RIR 2, rest 1:00",
    },
    base="best",
)
HOLD_SLOT = books.slot("B", "plank", {"1": "ISO 2x20 s, RPE 6", "2": "ISO 2x30 s, RPE 6"})
NEW_SLOT = books.slot("C", "late", {"3": "2x8, RIR 4"})


@pytest.fixture
def gym(tmp_path: Path) -> Callable[..., Path]:
    """Writes a program folder of three weeks."""

    def make(**more: Any) -> Path:
        parts: dict[str, Any] = {
            "exercises": {
                "lift": books.exercise("Big lift", uses=["box"]),
                "plank": books.exercise("Plank", books.EFFORT),
                "late": books.exercise("Late squat", books.EFFORT, cues={
                    "before": ["Stand tall."], "during": ["Sit back."], "voice": ["Sit back."],
                }),
            },
            "sessions": {"a": [BAR_SLOT, HOLD_SLOT, NEW_SLOT]},
            "bases": {"best": books.base()},
            "lifters": {"P1": {"bodyweight": "80 kg", "bases": {"best": "100 kg"}}},
            "room": books.KG_ROOM | {"kit": {
                "floor": {"name": "floor", "count": 20}, "box": {"name": "box", "count": 1},
            }},
            "group": {"members": 6, "sharing": 2},
        }  # fmt: skip
        return books.write_files(tmp_path / "gym", **(parts | more))

    return make


def pages_of(checked: Checked) -> Pages:
    return {page.uri.removeprefix("coach/").removesuffix(".md"): page
            for page in coach_pages(checked)}  # fmt: skip


def pages(folder: Path) -> Pages:
    return pages_of(check_folder(folder, "programs"))


def words(html: str) -> str:
    """The text of a page with single ordinary spaces."""
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", html)).split())


def part(page: Page, start: str, end: str = "<h2") -> str:
    return words(page.html.split(start, 1)[1].split(end, 1)[0])


def test_the_index_names_every_other_page(gym: Callable[..., Path]) -> None:
    found = pages(gym())
    text = words(found["index"].html)
    for uri, page in found.items():
        if uri != "index":
            assert f"{page.title} : {page.description}." in text


@pytest.mark.parametrize("which", ["demo", "tiny", "gym"])
def test_no_blank_line_and_every_heading_is_there(
    which: str, gym: Callable[..., Path], tmp_path: Path
) -> None:
    folder = demo.PROGRAMS
    if which != "demo":
        folder = gym() if which == "gym" else write_tiny(tmp_path) / "programs"
    for uri, page in pages(folder).items():
        assert "\n\n" not in page.html, uri
        assert all(f'id="{heading.id}"' in page.html for heading in page.headings), uri
        ids = re.findall(r'\sid="([^"]+)"', page.html)
        assert len(ids) == len(set(ids)), uri
        assert "None" not in words(page.html), uri


def test_a_finding_has_reason_source_place_and_change(gym: Callable[..., Path]) -> None:
    page = pages(gym())["findings"]
    text = words(page.html)
    # 75 % asks for 2:00 by the house rule `rest-medium`.
    assert "Warning: week 3, a A lift." in text
    assert "at least 2:00" in text
    assert re.search(r"Smallest change: write 'rest \d:\d\d'", text)
    assert "Why it matters:" in text
    assert "position stand 2009" in text
    assert "rest medium 120 s" in text
    assert "programs/plan/1-first.yml:" in text


def open_entries(page: Page) -> list[dict[str, Any]]:
    found = []
    for block in re.findall(r"<pre><code>(.*?)</code></pre>", page.html, re.DOTALL):
        data = yaml.safe_load(unescape(block))
        found += data["accepted"] if isinstance(data, dict) else data
    return found


def test_the_entry_that_is_copied_silences_its_finding_once_it_has_a_reason(
    gym: Callable[..., Path],
) -> None:
    folder = gym()
    before = check_folder(folder)
    entries = [one for one in open_entries(pages_of(before)["findings"])
               if one["finding"] == "rest-short"]  # fmt: skip
    assert [one["at"] for one in entries] == ["week 3, a A lift"]
    assert {one["reason"] for one in entries} == {NO_REASON}
    # Copied as it stands it is refused: a reason has to be written.
    refused = check_folder(gym(accepted=entries))
    assert refused.desk is None, refused.problems
    assert "plan/program.yml" in refused.problems[0].file
    good = [one | {"reason": "Two share a bar here."} for one in entries]
    after = check_folder(gym(accepted=good))
    assert [finding.at.text for finding, _ in after.accepted] == ["week 3, a A lift"]
    assert len(after.findings) == len(before.findings) - 1
    text = words(pages_of(after)["findings"].html)
    assert "Accepted because: Two share a bar here." in text


def test_an_entry_is_indented_and_is_yaml() -> None:
    text = entry_text("rest-short", "exercise lift: odd, #1", "Because 'it' is.", None, head=True)
    source, problems = read_source(text.encode(), "program.yml")
    assert source is not None, problems
    assert source.data == {"accepted": [
        {"finding": "rest-short", "at": "exercise lift: odd, #1", "reason": "Because 'it' is."}
    ]}  # fmt: skip


def test_a_second_entry_goes_below_the_first(gym: Callable[..., Path]) -> None:
    entry = {"finding": "rest-short", "at": "week 3, a A lift", "reason": "Two share a bar here."}
    page = pages(gym(accepted=[entry]))["findings"]
    blocks = re.findall(r"<pre><code>(.*?)</code></pre>", page.html, re.DOTALL)
    assert blocks
    assert not [block for block in blocks if block.startswith("accepted:")]


def test_no_entry_is_offered_for_an_error(gym: Callable[..., Path]) -> None:
    for check in (check_folder(gym()), check_folder(demo.PROGRAMS)):
        page = pages_of(check)["findings"]
        for item in re.findall(r"<li><b>Error: .*?</li>", page.html, re.DOTALL):
            assert "Let it stand" not in item


def test_an_accepted_finding_ends_with_its_wave_where_no_day_is_written(
    gym: Callable[..., Path],
) -> None:
    entry = {"finding": "rest-short", "at": "week 3, a A lift", "reason": "Two share a bar here."}
    from datetime import date

    folder = gym(accepted=[entry], start="2027-01-04")
    page = pages_of(check_folder(folder, today=date(2026, 12, 1)))["findings"]
    # Three weeks from Monday 4 January end on Sunday 24 January.
    assert "Look at it again by 2027-01-24." in words(page.html)


def test_what_cannot_be_read_leaves_one_page_with_the_problems(gym: Callable[..., Path]) -> None:
    folder = gym()
    demo.change(folder / "room.yml", '"gym"', '"gim"')
    found = pages(folder)
    assert set(found) == {"findings"}
    assert "programs/room.yml:2:2" in words(found["findings"].html)


def test_the_sheet_has_the_weeks_the_doses_and_the_sums(gym: Callable[..., Path]) -> None:
    html = pages(gym())["plan/one-page"].html
    text = words(html)
    assert "Week 1 Week 2 Week 3" in text
    # What all weeks share stands with the name; two of three rests are the same.
    assert "A Big lift rest 3:00" in text.replace(NBSP, " ")
    row = text.replace(NBSP, " ")
    assert "3×5 @70% 3-0-1-0 RIR 3 4×5 @75% 4-0-1-0 RIR 2 4×5 @75% 4-0-1-0 RIR 2 rest 1:00" in row
    # 3 · 5 · 3 s, and 4 · 5 · 4 s twice.
    assert "Lower, s 45 80 80" in text
    # 2 · 20 s, 2 · 30 s, nothing.
    assert "Hold, s 40 60 0" in text
    assert html.count('class="sh-sheet"') == 1


def test_weeks_of_a_sheet_are_marked() -> None:
    text = words(pages(demo.PROGRAMS)["winter/one-page"].html)
    assert "Week 4 easy" in text
    assert "Week 12 tests" in text


def test_small_print_is_owned_up_to(gym: Callable[..., Path]) -> None:
    assert "take A3 if you can" not in words(pages(gym())["plan/one-page"].html)
    text = words(pages(demo.PROGRAMS)["winter/one-page"].html)
    size = re.search(r"The print is ([\d.]+) pt on A4, which is small: take A3 if you can", text)
    assert size is not None
    assert float(size[1]) < 7


def test_the_first_week_has_no_empty_headings(gym: Callable[..., Path]) -> None:
    html = pages(gym())["plan/changes"].html
    first = html.split('<h2 id="week-1">', 1)[1].split("<h2", 1)[0]
    assert "<h3" not in first
    assert "This is where it starts: A ." in words(first)


def test_the_floor_says_what_every_pair_does_at_every_moment() -> None:
    html = pages(demo.PROGRAMS)["winter/floor"].html
    table = html.split("<tbody>", 1)[1].split("</tbody>", 1)[0]
    rows = re.findall(r"<tr>(.*?)</tr>", table)
    cells = [re.findall(r"<td>(.*?)</td>", row) for row in rows]
    assert all(cell for row in cells for cell in row)
    assert re.fullmatch(r"<b>A</b> to 0:\d\d", cells[0][0])
    # The second start group comes 45 minutes later, and everybody is through at the end.
    assert cells[0][-1] == "not here"
    assert set(cells[-1]) == {"done"}
    column = [row[-1] for row in cells]
    assert column.index("warm-up") > 0
    assert [word for word in ("not here", "warm-up", "done") if word in column] == [
        "not here", "warm-up", "done",
    ]  # fmt: skip
    # What is begun at one moment goes on at the next ones, until its end.
    for index, row in enumerate(cells):
        for pair, cell in enumerate(row):
            if begun := re.fullmatch(r"<b>(.+)</b> to (\d:\d\d)", cell):
                end = begun[2]
                for later, after in zip(rows[index + 1 :], cells[index + 1 :], strict=True):
                    minute = re.findall(r'<th scope="row">(.*?)</th>', later)[0]
                    assert (minute >= end) == (after[pair] != begun[1]), (minute, cell)
                    if minute >= end:
                        break


def test_things_of_a_tie_are_all_named(gym: Callable[..., Path]) -> None:
    # The bar and the box are in use together at A, three at a time; there are three of each.
    room = books.KG_ROOM | {"kit": {
        "floor": {"name": "floor", "count": 20}, "box": {"name": "box", "count": 3},
    }}  # fmt: skip
    bars = {key: one | {"count": 3} for key, one in books.KG_ROOM["bars"].items()}
    text = words(pages(gym(room=room | {"bars": bars}))["plan/floor"].html)
    assert re.search(r"First to run short if the group grows: bar and box,", text), text[-400:]


def test_changes_are_in_words(gym: Callable[..., Path]) -> None:
    page = pages(gym())["plan/changes"]
    two = part(page, '<h2 id="week-2">')
    assert "heavier: 75 % instead of 70 %" in two
    assert "more sets: 4 instead of 3" in two
    assert "slower: 4-0-1-0 instead of 3-0-1-0" in two
    assert "harder: RIR 2 instead of RIR 3" in two
    assert "longer: 30 s instead of 20 s" in two
    three = part(page, '<h2 id="week-3">', "</article")
    assert "shorter between sets: rest 1:00 instead of 3:00" in three
    assert "C Late squat new:" in three
    assert "B Plank gone" in three


def test_only_what_is_new_is_taught(gym: Callable[..., Path]) -> None:
    page = pages(gym())["plan/teach-in"]
    one = part(page, '<h2 id="week-1">')
    assert "8 min for 2 things" in one
    assert "Big lift new exercise" in one
    assert "Nothing new." in part(page, '<h2 id="week-2">')
    three = part(page, '<h2 id="week-3">', "</article")
    assert "4 min for 1 thing" in three
    # Set-up, what is said aloud, and another cue; the first fault with its fix.
    assert "Clear the floor." in three
    assert "Sit back." in three
    assert "Stand tall." in three
    assert "The form goes. Then: Take less." in three
    assert "When does a set end? Answer: End the set when the form goes." in three


def test_what_is_said_stands_in_the_order_in_which_it_is_done() -> None:
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    # Pushing comes before setting down, whichever of the two is also said aloud.
    deadlift = sentences(book.exercises["trap-bar-deadlift"])
    assert deadlift[1:] == ["Push the floor away.", "Set it down like a sleeping casualty."]
    for key, exercise in book.exercises.items():
        cues = exercise.cues
        page = [*exercise.set_up, *cues.before, *cues.during, *cues.finish]
        places = [page.index(one) for one in sentences(exercise)]
        assert places == sorted(places), key


def test_teaching_time_is_a_house_rule(gym: Callable[..., Path]) -> None:
    page = pages(gym(rules={"teaching-time": "6 min"}))["plan/teach-in"]
    assert "12 min for 2 things" in words(page.html)


def test_a_new_way_to_do_a_known_exercise_is_taught_too(gym: Callable[..., Path]) -> None:
    slot = books.slot("A", "plank", {"1": "2x8, RIR 4", "2": "ISO 2x20 s, RPE 6"})
    page = pages(gym(sessions={"a": [slot]}))["plan/teach-in"]
    assert "known; new: holds" in part(page, '<h2 id="week-2">')


def test_put_out_counts_for_the_group_and_says_what_is_short(gym: Callable[..., Path]) -> None:
    page = pages(gym())["plan/put-out"]
    text = words(page.html)
    # Three pairs want a box each at A; there is one.
    assert "3 × box A only 1 here: take turns" in text
    # 75 % of 100 kg is 75 kg: 20 kg bar and 27.5 kg a side, 25 and 2.5.
    # 70 kg is 25 a side. So at most one pair each.
    assert f"plates at each station: 1 pair of 25{NBSP}kg, 1 pair of 2.5{NBSP}kg" in unescape(
        re.sub(r"<[^>]+>", " ", page.html)
    )
    assert re.search(r"Put away After A: bar, box", text)


def test_what_is_fixed_is_neither_put_out_nor_away(gym: Callable[..., Path]) -> None:
    def text(**box: object) -> str:
        kit = {"floor": {"name": "floor", "count": 20}, "box": {"name": "box", "count": 1} | box}
        return words(pages(gym(room=books.KG_ROOM | {"kit": kit}))["plan/put-out"].html)

    assert "3 × box A only 1 here" in text()
    fixed = text(fixed=True)
    assert "Keep free: 3 × box (A), only 1 here" in fixed.replace(" ,", ",")
    assert "Put away After A: bar After" in fixed


def test_by_effort_the_ends_of_the_row_are_named(gym: Callable[..., Path]) -> None:
    room = books.KG_ROOM | {"hand-weights": {"bell": {"name": "bell", "masses": [
        {"from": "8 kg", "to": "24 kg", "by": "4 kg"}
    ]}}}  # fmt: skip
    lift = books.exercise("Swing", {"kind": "hands", "weight": "bell", "hands": 1})
    folder = gym(room=room, exercises={"swing": lift}, bases={}, lifters={},
                 sessions={"a": [books.slot("A", "swing", {"1": "2x8, RPE 6"})]})  # fmt: skip
    text = words(pages(folder)["plan/put-out"].html).replace(NBSP, " ")
    assert "bell: any of 8 to 24 kg, by effort" in text


def test_grip_is_held_against_the_usual_day() -> None:
    html = pages(demo.PROGRAMS)["winter/stress"].html
    found = re.findall(r"<b>Grip:</b> (\d+) s, (much|usual|little)", html)
    assert {word for _, word in found} == {"much", "usual", "little"}
    usual = sorted(float(seconds) for seconds, _ in found)
    middle = (usual[len(usual) // 2] + usual[(len(usual) - 1) // 2]) / 2
    assert f"the usual day of this program has {middle:.0f} s" in words(html)
    for seconds, word in found:
        share = float(seconds) / middle
        assert word == ("much" if share > 1.25 else "little" if share < 0.75 else "usual")


def test_substitutes_lead_where_the_doors_lead(gym: Callable[..., Path]) -> None:
    doors = books.exercise()["doors"] | {
        "easier": {"to": "plank", "how": "Hold it.", "load": "80 %"}
    }
    html = pages(gym(exercises={
        "lift": books.exercise("Big lift", doors=doors),
        "plank": books.exercise("Plank", books.EFFORT),
        "late": books.exercise("Late squat", books.EFFORT),
    }))["substitutes"].html  # fmt: skip
    row = html.split("Big lift</a>", 1)[1].split("</tr>", 1)[0]
    first = row.split("<td ", 2)[1]
    assert first.startswith('data-door="Easier"')
    assert "Plank" in first
    assert "Hold it." in first
    assert "of the load" in first
    assert row.count("<td ") == 5


def test_the_calendar_is_in_order_and_says_who_uses_what(gym: Callable[..., Path]) -> None:
    band = {"pulls": {"20 cm": "3 kg", "80 cm": "9 kg"}, "help": "10 kg"}
    room = books.KG_ROOM | {
        "kit": {"floor": {"name": "floor", "count": 20}, "box": {"name": "box"}},
        "bands": {
            "late": band | {"until": "2027-05-01"},
            "soon": band | {"until": "2027-02-01"},
            "never": band,
        },
    }
    pull = {"kind": "body-weight", "share": "100 %"}
    exercises = {
        "lift": books.exercise("Big lift", uses=["box"]),
        "pull": books.exercise("Pull-up", pull, stations=["floor"]),
    }
    slots = [BAR_SLOT, books.slot("B", "pull", "2x5", assist={"band": "soon"})]
    folder = gym(room=room, exercises=exercises, sessions={"a": slots}, valid_until="2027-04-01")
    page = pages(folder)["calendar"]
    text = words(page.html)
    assert text.index("2027-02-01") < text.index("2027-05-01")
    first = part(page, "<h3>2027-02-01</h3>", "</section>")
    assert first == "band soon , before the end of Plan : Pull-up"
    assert "before the end" not in part(page, "<h3>2027-05-01</h3>", "</section>")
    assert "band never : no exercise takes it by name" in part(page, '<h2 id="none">', "</article")


def test_the_handover_has_rules_reasons_and_open_points(gym: Callable[..., Path]) -> None:
    entry = {"finding": "rest-short", "at": "week 3, a A lift", "reason": "Two share a bar here."}
    folder = gym(accepted=[entry], rules={"change-time": "90 s", "ramp-rest": "60 s"})
    page = pages(folder)["plan/handover"]
    text = words(page.html)
    assert "Owner: Head coach. Last looked at: 2026-01-01." in text
    assert "Change time: 90 s , the handbook's own is 60 s." in text
    # Set to the handbook's own value: nothing has changed, and that is said apart.
    assert "Ramp rest" not in text
    assert "Looked at and kept: ramp rest 60 s" in text
    dates = part(page, '<h2 id="dates">')
    assert "floor" not in dates
    assert "Two share a bar here." in part(page, '<h2 id="accepted">')
    assert "Be strong." in part(page, '<h2 id="goals">')
    opened = part(page, '<h2 id="open">', "By hand")
    for finding in check_folder(folder).findings:
        assert finding.at.text in opened


def test_each_program_has_its_own_handover(tmp_path: Path) -> None:
    folder = write_tiny(tmp_path) / "programs"
    (folder / "summer").mkdir()
    for file in ("program.yml", "1-start.yml"):
        text = (folder / "spring" / file).read_text(encoding="utf-8")
        (folder / "summer" / file).write_text(text.replace("Spring", "Summer"), encoding="utf-8")
    found = pages(folder)
    assert "Handover: Summer" in words(found["summer/handover"].html)
    assert "Handover: Spring" in words(found["spring/handover"].html)


def test_what_anybody_wrote_is_escaped(gym: Callable[..., Path]) -> None:
    odd = "Big <i>lift</i> & more"
    entry = {
        "finding": "rest-short",
        "at": "week 3, a A lift",
        "reason": "Because <b>I</b> say so.",
    }
    found = pages(gym(
        exercises={"lift": books.exercise(odd), "plank": books.exercise("Plank", books.EFFORT),
                   "late": books.exercise("Late", books.EFFORT)},
        accepted=[entry],
    ))  # fmt: skip
    for uri, page in found.items():
        assert "<i>lift" not in page.html, uri
        assert "<b>I</b> say" not in page.html, uri


def test_the_accepted_entry_is_the_models_own() -> None:
    assert set(Accepted.model_fields) == {"finding", "at", "reason", "until"}


def test_every_way_to_do_a_set_has_its_sentence() -> None:
    folder = check_folder(demo.PROGRAMS)
    assert folder.desk is not None
    taught = {way for at in folder.desk.slots for way in lessons_of(at.slot.dose)}
    assert all(way.say.endswith(".") for way in taught)
    names = {way.name for way in taught}
    assert {"cluster sets", "bands on the bar", "a test", "lifting fast"} <= names
