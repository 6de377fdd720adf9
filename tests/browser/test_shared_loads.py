"""At a shared bar everybody has the load, bands, chains and rests that each has alone.

The page's own plan, as session mode and the order of turns read it, is held against the program as
it was worked out for each lifter, and against the search of the build.
"""

from collections.abc import Callable, Iterator
from itertools import pairwise
from typing import Any

import pytest
from playwright.sync_api import Page

from phones import Gym, Opened
from stacks import BESTS, BODY, everybody
from strength_handbook.calc.shared_bar import share_bar
from strength_handbook.model.loading import OnBar
from strength_handbook.model.quantities import GRAMS_PER_POUND
from strength_handbook.plan.one_bar import can_share
from strength_handbook.plan.scales import bar_table
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Worked, WorkedSession, WorkedSlot
from strength_handbook.reading.book import read_book
from thorough import LONG

pytestmark = pytest.mark.browser

STEP = 1 if LONG else 16
"""One of so many bests is taken."""
SET_S = 40
"""Seconds between two taps: some set."""

SHARED = """({ groups, keys, body }) => {
    const { store, mine, lists, 'tools/one-bar': oneBar, dom: { all, json } } = strengthHandbook;
    const me = best => ({ body, bases: Object.fromEntries(keys.map(key => [key, best])) });
    return all('[data-sets]').map(slot => {
        const block = slot.querySelector('.sh-dose-data');
        return { order: slot.dataset.order, groups: groups.map(bests => {
            store.set('mine', me(bests[0]));
            store.set('together', { day: '', keep: true, people: bests.slice(1).map(me) });
            const { turns = null, moves, apart } = oneBar.at(block, lists);
            const own = mine.own(json(block), me(bests[0]), lists);
            const panel = oneBar.sharedLoad(block, own, lists);
            return { bests, moves, apart, panel: panel.parts, turns: turns && turns.map(
                ({ name, load, top }) => ({ place: ['me', 'B', 'C', 'D'].indexOf(name),
                    grams: load.grams, parts: load.parts, top: top && top.hangs ? top : null })) };
        }) };
    });
}"""

# Every set of a shared exercise, tapped one after the other: whose turn, and the clock before it.
LED = """({ bests, keys, body, seconds }) => {
    const { store, dom: { find, json }, ...others } = strengthHandbook;
    const [walk, steps, turns] = ['walk', 'steps', 'turns'].map(one => others['train/' + one]);
    const me = best => ({ body, bases: Object.fromEntries(keys.map(key => [key, best])) });
    store.set('mine', me(bests[0]));
    store.set('together', { day: '', keep: true, people: bests.slice(1).map(me) });
    const data = json(find('.sh-train-data'));
    const list = steps.list(data.slots, false);
    const slots = Object.fromEntries(data.slots.map(slot => [slot.o, slot]));
    return [...document.querySelectorAll('[data-sets]')].map(({ dataset: { order } }) => {
        const first = list.findIndex(({ o, kind }) => o === order && kind === 'set');
        const acts = [['go', first, 0]];
        const said = [];
        for (let now = 1e12; said.length < 200; now += seconds * 1000) {
            const app = { data, list, slots, acts, now: walk.play(list, acts) };
            app.step = list[app.now.at];
            app.turn = turns.at(app);
            if (!app.turn) break;
            const { turn: { name }, mine } = app.turn;
            said.push({ name, at: now / 1000, clock: turns.clock(app, now),
                ends: !mine || app.step.last,
                starts: app.step.part === 1 && app.step.side !== 'right' });
            acts.push(mine ? ['done', app.now.at, now] : ['turn', [order, name], now]);
        }
        return { order, rest: slots[order].r ?? null, every: slots[order].e ?? null, said };
    });
}"""


@pytest.fixture(scope="module")
def worked(gym: Gym) -> Worked:
    book = read_book(gym.programs).book
    assert book is not None
    return work_out(everybody(book, STEP))


def shared(worked: Worked) -> Iterator[tuple[str, WorkedSession, list[WorkedSlot]]]:
    """Addresses of sessions with a bar that can be shared, and the slots on such bars."""
    for program in worked.programs:
        for week in program.weeks:
            for session in week.sessions:
                slots = [one for one in session.slots if can_share(one)]
                if slots:
                    yield f"{program.id}/week-{week.week:02d}/{session.id}/", session, slots


def sampled(worked: Worked) -> list[tuple[str, WorkedSession, list[WorkedSlot]]]:
    """All of them, or a few with bands and chains among them."""
    every = [*shared(worked)]
    hung = [one for one in every if any(slot.on_top for slot in one[2])]
    assert hung
    return every if LONG else [every[0], hung[0], hung[-1]]


def groups(units: str) -> list[list[int]]:
    """Bests of pairs, threes and fours: neighbours, the ends, and far apart."""
    bests = [mass.grams for mass in BESTS[units]][::STEP]
    far = [[one, other] for one, other in zip(bests, bests[::-1], strict=True)]
    several = [[bests[0], bests[2], bests[-1]], [bests[1], bests[1], bests[4], bests[2]]]
    return [*([one, other] for one, other in pairwise(bests)), *far, *several]


def asked(worked: Worked, **more: Any) -> dict[str, Any]:
    keys = sorted({key for one in worked.programs for key in one.program.bases})
    return {"keys": keys, "body": BODY, **more}


def ready(opened: Opened, address: str) -> Page:
    page = opened.go(address)
    page.evaluate("strengthHandbook.mine.withLists(() => {})")
    page.wait_for_function("!!strengthHandbook.lists")
    # What leads through a session, and the plan of a bar, comes with the first tap.
    page.locator(".sh-train-open").tap()
    page.wait_for_function("['train/turns', 'tools/one-bar'].every(one => strengthHandbook[one])")
    return page


def test_everybody_has_the_load_bands_and_chains_of_their_own(
    phone: Callable[..., Opened], gym: Gym, worked: Worked
) -> None:
    opened, compared, hung = phone(base=gym.base), 0, 0
    units = worked.book.room.units
    names = {mass.grams: f"B{place}" for place, mass in enumerate(BESTS[units])}
    for address, session, slots in sampled(worked):
        page = ready(opened, address)
        known = {slot.order: slot for slot in slots}
        for found in page.evaluate(SHARED, asked(worked, groups=groups(units))):
            slot = known[found["order"]]
            loading = slot.exercise.load
            assert isinstance(loading, OnBar)
            table = bar_table(worked.book.room, loading)
            for group in found["groups"]:
                lifters = [names[best] for best in group["bests"]]
                own = [slot.loads[name].actual_g for name in lifters]
                if group["turns"] is None:
                    assert sum(bool(grams) for grams in own) < 2, (address, slot.order, group)
                    continue
                here = [place for place, grams in enumerate(own) if grams]
                plan = share_bar(
                    table, tuple(own[place] or 0 for place in here), slot.dose.sets.high
                )
                assert plan is not None
                turns = group["turns"]
                assert [one["place"] for one in turns] == [here[place] for place in plan.order]
                for one in turns:
                    place = one["place"]
                    assert one["grams"] == own[place], (address, slot.order, lifters[place])
                    assert one["parts"] == list(plan.stacks[here.index(place)])
                    assert table.empty_g + table.sides * sum(one["parts"]) == own[place]
                    above = slot.variable.get(lifters[place])
                    if above is None or not above.load.top_share:
                        assert one["top"] is None
                    else:
                        load = above.load
                        assert one["top"]["what"] == above.what
                        # Counted in half kilograms or in pounds on the phone.
                        grain = {"kg": 0.5, "lb": GRAMS_PER_POUND / 1000}[units]
                        for end in ("bottom", "middle", "top"):
                            off = one["top"][end] * grain - getattr(load, end)
                            assert abs(off) <= grain / 2 + 1e-6
                        hung += 1
                    compared += 1
                if own[0] and not group["apart"]:
                    (mine,) = (one for one in turns if one["place"] == 0)
                    assert group["panel"] == mine["parts"]
        assert session.slots
    assert compared > 60
    assert hung > 10
    assert opened.complaints == []


def test_everybody_has_the_sets_and_rests_of_their_own(
    phone: Callable[..., Opened], gym: Gym, worked: Worked
) -> None:
    opened, compared = phone(base=gym.base), 0
    bests = [[120_000, 90_000], [90_000, 150_000, 120_000]]
    for address, _, slots in sampled(worked):
        known = {slot.order: slot for slot in slots}
        for group in bests:
            page = ready(opened, address)
            for led in page.evaluate(LED, asked(worked, bests=group, seconds=SET_S)):
                dose = known[led["order"]].dose
                assert (led["rest"], led["every"]) == (dose.rest, dose.every)
                last: dict[str, float] = {}
                sets: dict[str, int] = {}
                for one in led["said"]:
                    name, clock = one["name"], one["clock"]
                    if one["starts"] and dose.rest and not dose.every and name in last:
                        # A rest as long as alone, from the end of one's own set.
                        left = dose.rest - (one["at"] - last[name])
                        assert clock["left"] == pytest.approx(left), (address, led["order"], one)
                        compared += 1
                    if one["ends"]:
                        last[name] = one["at"]
                        sets[name] = sets.get(name, 0) + 1
                # Nobody is led where a pair is done in turn, or a bar is too slow for its interval.
                assert set(sets.values()) <= {dose.sets.high}, (address, led["order"], sets)
                assert not sets or len(sets) == len(group)
    assert compared > 10
    assert opened.complaints == []
