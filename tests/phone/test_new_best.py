"""The best single after a test: the phone's whole numbers against the build's formulas."""

import random
from typing import Any

import pytest

import demo
from phone_script import ask
from strength_handbook.phone.lists import phone_lists
from strength_handbook.plan.loads import achieved
from strength_handbook.plan.new_best import factors, new_best
from strength_handbook.plan.work_out import work_out
from strength_handbook.reading.book import read_book


@pytest.mark.parametrize("units", ["kg", "lb"])
def test_the_same_single(units: str) -> None:
    rng = random.Random(units)
    cases = [[rng.randrange(1_000, 400_000), rng.randint(1, 15)] for _ in range(3000)]
    lists = {"singles": factors(), "units": units}
    answers = ask({"lists": lists, "singles": cases})
    for (grams, reps), answer in zip(cases, answers, strict=True):
        found = new_best(grams, reps, units)
        assert answer["grams"] == found.best_g, (grams, reps)
        assert answer["caution"] == found.caution
        assert answer["low"] / 1000 == pytest.approx(found.low_g, abs=1)
        assert answer["high"] / 1000 == pytest.approx(found.high_g, abs=1)
    assert ask({"lists": lists, "singles": [[100_000, 16], [100_000, 0], [0, 3]]}) == [None] * 3


def test_what_the_old_best_lets_expect_says_nothing_new() -> None:
    """The load that exists for the old best: bests from 40 to 240 kg, one to ten repetitions."""
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    worked = work_out(book)
    lists = phone_lists(worked)
    key = "trap-bar-1rm"
    scale = worked.scales[lists.bases[key].exercise]
    cases: list[list[Any]] = []
    wanted: list[bool] = []
    for best in range(40_000, 240_001, 2_500):
        for reps in (1, 3, 5, 10):
            percent = factors()[reps - 1][0] / 1e6
            grams = achieved(best * percent / 100, scale, best, 0, "kg").actual_g
            assert grams is not None
            for total in (grams, grams + 2_500):
                cases.append([total, reps, best, key, {}])
                wanted.append(total == grams)
    assert ask({"lists": lists.data, "expected": cases}) == wanted
