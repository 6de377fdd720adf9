"""The same program in another gym: the whole handbook is made from its files.

Every loaded bar is checked against an enumeration in pounds.
"""

import json
import re
from functools import cache
from itertools import product
from pathlib import Path

import pytest

from demo import PROGRAMS
from other_gym import ADDED, BARS, GYM, HANDLE, PLATES, POUND_KG, REMOVED, write_programs
from strength_handbook.pages.page import Site
from strength_handbook.pages.site import write_pages
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked
from strength_handbook.reading.book import read_book


@pytest.fixture(scope="module")
def programs(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return write_programs(tmp_path_factory.mktemp("other") / "programs")


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
