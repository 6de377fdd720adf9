"""The same program in another gym: its own name, pounds, other plates, other exercises.

The demo's files are read as plain data, changed, and written again. Then the whole handbook is made
from them, and every loaded bar is checked against an enumeration in pounds.
"""

import json
import re
from functools import cache
from itertools import product
from pathlib import Path
from typing import Any

import pytest

from books import EMERGENCY
from demo import PROGRAMS
from strength_handbook.pages.page import Site
from strength_handbook.pages.site import write_pages
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book
from strength_handbook.reading.yaml_source import read_source

GYM, GROUP = "Dockside Barbell Hall", "Evening crew"
PLATES = ((45, 4), (35, 1), (25, 1), (10, 2), (5, 2), (2.5, 1))
BARS = {"bar-20": 45, "bar-15": 35, "trap-bar": 55, "yoke-bar": 65}
HANDLE = 15
REMOVED = ("suitcase-carry", "copenhagen-side-plank")
ADDED = "bag-carry"
POUND_KG = 0.45359237

Data = dict[str, Any]


def in_pounds(value: Any) -> Any:
    """Every mass in a text, to the nearest 5 lb."""
    if isinstance(value, dict):
        return {key: in_pounds(one) for key, one in value.items()}
    if isinstance(value, list):
        return [in_pounds(one) for one in value]
    if isinstance(value, str):
        return re.sub(r"\b(\d+(?:\.\d+)?)\s*kg\b", _pounds, value)
    return value


def _pounds(found: re.Match[str]) -> str:
    return f"{max(5, 5 * round(float(found[1]) / POUND_KG / 5))} lb"


def without(value: Any, names: tuple[str, ...]) -> Any:
    """No door leads to these exercises, and no list has an entry about them."""
    if isinstance(value, dict):
        return {k: without(one, names) for k, one in value.items() if (k, one) not in _doors(names)}
    if isinstance(value, list):
        gone = [isinstance(one, dict) and one.get("exercise") in names for one in value]
        return [without(one, names) for one, out in zip(value, gone, strict=True) if not out]
    return value


def _doors(names: tuple[str, ...]) -> list[tuple[str, str]]:
    return [("to", name) for name in names]


def other_room(room: Data) -> Data:
    """The room with pound plates, and bars, dumbbells and a stack to go with them."""
    bars = room["bars"]
    for key, bar in bars.items():
        bar["mass"] = f"{BARS.get(key, HANDLE)} lb"
    dumbbells = {"name": "dumbbell", "masses": [{"from": "5 lb", "to": "100 lb", "by": "5 lb"}]}
    cable = {"name": "cable column", "pins": {"from": "10 lb", "to": "200 lb", "by": "10 lb"}}
    return room | {
        "gym": GYM,
        "group": GROUP,
        "units": "lb",
        "plates": [{"mass": f"{pounds:g} lb", "pairs": pairs} for pounds, pairs in PLATES],
        "loose-plates": [],
        "hand-weights": room["hand-weights"] | {"dumbbell": dumbbells},
        "stacks": dict.fromkeys(room["stacks"], cable),
        "emergency": EMERGENCY,
    }


def with_new_exercise(wave: Data) -> Data:
    """One more slot at the end of the first session, in every week."""
    session = next(iter(wave["sessions"].values()))
    last = max(slot["order"][0] for slot in session["slots"])
    weeks = {week for slot in session["slots"] for week in slot["weeks"]}
    session["slots"].append(
        {
            "order": chr(ord(last) + 1),
            "exercise": ADDED,
            "weeks": dict.fromkeys(sorted(weeks, key=int), "2 -> 20 m @ 30 lb, rest 1:00"),
        }
    )
    return wave


def without_lost_orders(wave: Data) -> Data:
    """Variants leave out only slots that are still there."""
    for session in wave["sessions"].values():
        orders = {slot["order"] for slot in session["slots"]}
        for variant in session.get("variants", ()):
            variant["leave-out"] = [o for o in variant.get("leave-out", ()) if o in orders]
    return wave


@pytest.fixture(scope="module")
def programs(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("other") / "programs"
    for path in sorted(PROGRAMS.rglob("*.yml")):
        if path.parent.name == "exercises" and path.stem in REMOVED:
            continue
        source, problems = read_source(path.read_bytes(), path.name)
        assert source is not None
        assert problems == []
        data = without(in_pounds(source.data), REMOVED)
        if path.name == "room.yml":
            data = other_room(data)
        if path.name[0].isdigit():
            data = without_lost_orders(data)
        if path.name.startswith("1-"):
            data = with_new_exercise(data)
        write(root / path.relative_to(PROGRAMS), data)
        if path.stem == "farmer-carry":
            hands = {"kind": "hands", "weight": "dumbbell", "hands": 2}
            renamed = data | {"name": "Bag carry", "also": "Two bags", "load": hands}
            write(root / "exercises" / f"{ADDED}.yml", renamed)
    return root


def write(path: Path, data: Data) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(json.dumps(data, ensure_ascii=False, indent=1), encoding="utf-8")


@pytest.fixture(scope="module")
def worked(programs: Path) -> Worked:
    reading = read_book(programs)
    assert reading.problems == []
    assert reading.book is not None
    return work_out(reading.book)


@pytest.fixture(scope="module")
def site(worked: Worked) -> Site:
    return write_pages(worked)


def test_all_pages_are_written(site: Site) -> None:
    urls = {page.url for page in site.pages}
    assert "" in urls
    assert f"exercises/{ADDED}/" in urls
    assert not {f"exercises/{name}/" for name in REMOVED} & urls
    assert len(urls) == len(site.pages)


def test_the_new_name_and_not_the_old_one(site: Site) -> None:
    old = read_book(PROGRAMS).book
    assert old is not None
    assert old.room.group
    assert site.title == GYM
    assert GYM in next(page.html for page in site.pages if page.url == "")
    for page in site.pages:
        for name in (old.room.gym, old.room.group, old.room.emergency.address):
            assert name not in page.html + page.title + page.description


def test_pages_speak_of_pounds(site: Site) -> None:
    # Formulas and the legend of the notation keep their own units.
    pages = [page for page in site.pages if page.url not in ("numbers/", "words/")]
    for page in pages:
        seen = re.sub(r"<[^>]+>", " ", page.html)
        assert not re.search(r"\bkg\b", seen), f"{page.url}: {_around(seen, 'kg')}"
    sessions = [page for page in pages if re.search(r"week-\d+/.+", page.url)]
    assert any("your best, lb" in page.html for page in sessions)
    assert any("body, lb" in page.html for page in sessions)
    # The exercise that was added is on the first session of every week of the first wave.
    assert "Bag carry" in next(page.html for page in sessions)


def _around(text: str, word: str) -> str:
    at = text.find(word)
    return text[max(0, at - 60) : at + 40]


def test_no_load_is_printed_with_odd_pounds(site: Site) -> None:
    """Plates of 2.5 lb and more make steps of 5 lb on a bar; help comes in whole pounds."""
    for page in site.pages:
        for table in re.findall(r'<table class="sh-strip">.*?</table>', page.html, re.DOTALL):
            if "plates each side" not in table or "handle" in table:
                continue
            for load in re.findall(r"<td><b>([\d.]+)</b></td>", table):
                assert float(load) % 5 == 0


@cache
def sums_of_a_side(share: int) -> frozenset[float]:
    counts = product(*(range(pairs // share + 1) for _, pairs in PLATES))
    return frozenset(
        sum(n * pounds for n, (pounds, _) in zip(each, PLATES, strict=True)) for each in counts
    )


def test_loads_against_enumeration_in_pounds(site: Site, programs: Path, worked: Worked) -> None:
    lifters = json.loads((programs / "lifters.yml").read_text(encoding="utf-8"))["lifters"]
    checked = 0
    for program in worked.programs:
        data = json.loads(site.data[f"data/{program.id}.json"])
        for week in data["weeks"]:
            for session in week["sessions"]:
                for slot in session["slots"]:
                    load = worked.book.exercises[slot["exercise"]].load
                    percent = re.fullmatch(r"([\d.]+) %( BM)?", slot["load"] or "")
                    if load.kind != "bar" or percent is None:
                        continue
                    for name, found in slot["by_lifter"].items():
                        lifter = lifters[name]
                        of = lifter["bodyweight"] if percent[2] else lifter["bases"][slot["base"]]
                        planned = float(of.removesuffix(" lb")) * float(percent[1]) / 100
                        side = sums_of_a_side(2 if load.hands == 2 else 1)
                        bar = BARS.get(load.bar, HANDLE)
                        totals = (bar + 2 * one for one in side)
                        if load.rounding == "nearest":
                            best = min(totals, key=lambda t: (abs(t - planned), t), default=None)
                        else:
                            best = max((t for t in totals if t <= planned + 1e-6), default=None)
                        assert found["planned_kg"] / POUND_KG == pytest.approx(planned, abs=0.05)
                        if best is None:
                            assert found["load_kg"] is None
                        else:
                            assert found["load_kg"] / POUND_KG == pytest.approx(best, abs=0.05)
                        checked += 1
    assert checked >= 10
