"""One load, one stack: a bar carries the same plates wherever its load is said.

Every session of the demo, in kilograms and in pounds, for every tested value from light to heavy:
the page's text, the published data, the look-up strip, the card, the end of the way up, and what
the phone says and draws.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from html import unescape
from pathlib import Path
from typing import Any

import pytest

import demo
from other_gym import write_programs
from phone_script import ask
from stacks import Stack, everybody, printed, stacks_of
from strength_handbook.model.dose import StripSet
from strength_handbook.model.loading import OnBar
from strength_handbook.model.printed import bare_mass
from strength_handbook.pages.cards.card import make_card, parts_of
from strength_handbook.pages.load_html import load_line, strip_html
from strength_handbook.phone.lists import phone_lists
from strength_handbook.phone.recipes import full_recipe, list_recipe
from strength_handbook.plan.apart import stacks_to_hold
from strength_handbook.plan.method_plan import method_plan
from strength_handbook.plan.scale import Scale
from strength_handbook.plan.tables import base_strip
from strength_handbook.plan.work_out import work_out
from strength_handbook.plan.worked import Use, Worked
from strength_handbook.reading.book import read_book
from strength_handbook.record.data import program_data

Said = dict[tuple[str, str], Stack]
"""Plates of one side as printed, by lift and load as printed."""


@dataclass
class Places:
    """What each place says, by lift and load; a place that says two things has failed already."""

    units: str
    said: dict[str, Said]

    def say(self, place: str, lift: str, load: str, stack: Stack) -> None:
        known = self.said.setdefault(place, {})
        assert known.setdefault((lift, load), stack) == stack, (place, lift, load)

    def grams(self, place: str, lift: str, load: int, parts: Any) -> None:
        self.say(place, lift, self.bare(load), tuple(self.bare(one) for one in parts))

    def bare(self, grams: float) -> str:
        return bare_mass(grams, self.units)


def on_bars(worked: Worked) -> Iterator[tuple[Use, Scale]]:
    """Every slot on a bar that has loads; one strip set's plates stand in their own order."""
    for program in worked.programs:
        for week in program.weeks:
            for session in week.sessions:
                for slot in session.slots:
                    strips = isinstance(slot.dose.work, StripSet)
                    if isinstance(slot.exercise.load, OnBar) and slot.scale and not strips:
                        yield Use(program, week, session, slot), slot.scale


def say_build(places: Places, worked: Worked) -> None:
    """Lines, steps and strips of every slot."""
    for use, scale in on_bars(worked):
        slot, lift = use.slot, use.slot.exercise_id
        ramps = method_plan(worked.book, slot, use.session, use.week).ramps
        for name, load in slot.loads.items():
            if load.step is not None:
                line = unescape(re.sub(r"<[^>]*>", "", load_line(load, scale, places.units, 999)))
                mass, _, how = line.partition(" – ")
                places.say("line", lift, printed(mass)[0], printed(how))
            if ramps and name in ramps.by_lifter:
                top = ramps.by_lifter[name][-1]
                places.grams("way up", lift, top.grams, top.parts)
        if slot.base is not None and slot.percent is not None:
            strip = strip_html(base_strip(slot.base, scale, slot.percent), places.units)
            for row in re.findall(r"<tr><th scope=\"row\">.*?</tr>", strip):
                _, mass, how = re.findall(r"<t[hd][^>]*>(.*?)</t[hd]>", row)
                if printed(mass):
                    places.say("strip", lift, printed(mass)[0], printed(how))


def say_cards(places: Places, worked: Worked) -> None:
    for part in parts_of(worked):
        for lift, uses in part.uses(worked):
            if not isinstance(worked.book.exercises[lift].load, OnBar):
                continue
            for strip in make_card(worked, part, lift, uses).strips:
                at = strip.of_plates
                for _, masses, how in strip.shown(99) if strip.plates_head else ():
                    if printed(masses[at]):
                        places.say("card", lift, masses[at], printed(how))


def say_data(places: Places, worked: Worked) -> None:
    for program in worked.programs:
        for week in program_data(worked, program)["weeks"]:
            for session in week["sessions"]:
                for slot in session["slots"]:
                    if slot["method"] == "strip":
                        continue
                    for load in slot["by_lifter"].values():
                        if "bar_kg" in load:
                            grams = round(load["load_kg"] * 1000)
                            parts = [round(kg * 1000) for kg in load["plates_per_side_kg"]]
                            places.grams("data", slot["exercise"], grams, parts)


def say_phone(places: Places, worked: Worked) -> int:
    """What the phone says: load, way up, test steps, doors, next time; one process for all."""
    lists = phone_lists(worked)
    cases: list[Any] = []
    lifts: list[str] = []
    seen = set()
    for use, _ in on_bars(worked):
        program, week, session, slot = use.program, use.week, use.session, use.slot
        for recipe in (
            full_recipe(worked, lists, program, week, session, slot),
            list_recipe(worked, lists, slot),
        ):
            if recipe is None or "b" not in recipe or repr(recipe) in seen:
                continue
            seen.add(repr(recipe))
            for lifter in worked.book.lifters.values():
                bases = {key: mass.grams for key, mass in lifter.bases.items()}
                tops = [mass.grams for mass in lifter.bases.values()][:1] if "t" in recipe else []
                cases.append([recipe, {"body": 75_000, "bases": bases}, tops])
                lifts.append(slot.exercise_id)
    for lift, answer in zip(lifts, ask({"lists": lists.data, "cases": cases}), strict=True):
        for place in ("load", "mine"):
            found = answer[place]
            if found and found["grams"] is not None and found["grams"] >= 0:
                places.grams(f"phone: {place}", lift, found["grams"], found["parts"])
                how = found["made"].partition(" + ")[2]
                says = printed(how.rpartition(" + ")[2]) if "a side" in how else ()
                places.say("phone: words", lift, places.bare(found["grams"]), says)
        for step in answer["ramp"][-1:]:
            places.grams("phone: way up", lift, step["grams"], step["parts"])
        for found in answer["back_off"] or []:
            if found and found["grams"]:
                places.grams("phone: back-off", lift, found["grams"], found["parts"])
    return len(cases)


@pytest.mark.slow
@pytest.mark.parametrize("units", ["kg", "lb"])
def test_one_stack_wherever_a_load_is_said(units: str, tmp_path: Path) -> None:
    folder = demo.PROGRAMS if units == "kg" else write_programs(tmp_path / "programs")
    book = read_book(folder).book
    assert book is not None
    assert book.room.units == units
    worked = work_out(everybody(book))
    places = Places(units, {})
    say_build(places, worked)
    say_cards(places, worked)
    say_data(places, worked)
    assert say_phone(places, worked) > 1000
    every = {"line", "strip", "card", "data", "way up", "phone: load", "phone: mine"}
    assert every <= places.said.keys()
    # The scale is what everything is picked from.
    whole = stacks_of(worked)
    different = {
        (place, *key): (stack, whole[key])
        for place, said in places.said.items()
        for key, stack in said.items()
        if stack != whole[key]
    }
    assert different == {}
    assert all(len(said) > 20 for said in places.said.values()), places.said.keys()


def test_a_bar_is_taken_apart_from_the_same_stack() -> None:
    """Whether somebody holds the bar is known for every pair of every load there is."""
    book = read_book(demo.PROGRAMS).book
    assert book is not None
    worked = work_out(book)
    asked = 0
    for lift, scale in worked.scales.items():
        held = stacks_to_hold(worked, lift)
        if held is None or scale is None:
            continue
        prefixes = {
            step.parts[:count] for step in scale.steps for count in range(1, len(step.parts) + 1)
        }
        assert set(held) <= prefixes
        asked += len(prefixes)
    assert asked > 50
